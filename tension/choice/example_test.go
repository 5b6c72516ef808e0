package choice

import (
	"context"
	"fmt"
	"strings"
)

// A six-string in B that is to feel like a straight 635 mm guitar in E.
func ExamplePlan_Search() {
	req := baritone()
	p, err := Prepare(req)
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := p.Search(context.Background())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d of %d pairs kept, %d as good as the best\n", r.Kept, r.Tried, r.AsGood)
	for _, k := range r.Picks {
		fmt.Printf("%-12s %.0f / %.0f mm, feel error %.1f %%, %s\n", k.Kind, k.Bass.MM(), k.Treble.MM(), k.Error.Percent(), strings.Join(labels(req.Stock, k.Gauges), " "))
	}
	// Output:
	// 42 of 42 pairs kept, 29 as good as the best
	// smallest fan 670 / 660 mm, feel error 5.1 %, p13 p17 p22 w32 w46 w56
	// middle       700 / 660 mm, feel error 4.8 %, p13 p16 p22 w32 w46 w56
	// longest bass 720 / 650 mm, feel error 5.1 %, p13 p17 p22 w32 w42 w56
}
