package unit_test

import (
	"fmt"

	"scalepair/data/unit"
)

func ExampleParseLength() {
	for _, s := range []string{`25 1/2"`, "64.8 cm", "648", "648,5 mm"} {
		l, err := unit.ParseLength(s)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(l)
	}
	// Output:
	// 647.7 mm
	// 648 mm
	// a length needs a unit ("648"); write "648 mm" or "648 in"
	// a comma is not read as a decimal point ("648,5 mm"); write "648.5 mm"
}
