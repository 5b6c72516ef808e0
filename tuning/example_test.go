package tuning_test

import (
	"fmt"

	"scalepair/tuning"
)

func ExampleParse() {
	b, err := tuning.Parse("baritone B")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(b)
	for i, pitch := range b.Pitches(tuning.ConcertA) {
		fmt.Printf("string %d %s %.2f Hz\n", i+1, b.OfString(i+1), pitch.Hz())
	}
	// Output:
	// B1 E2 A2 D3 F#3 B3
	// string 1 B3 246.94 Hz
	// string 2 F#3 185.00 Hz
	// string 3 D3 146.83 Hz
	// string 4 A2 110.00 Hz
	// string 5 E2 82.41 Hz
	// string 6 B1 61.74 Hz
}

func ExampleParse_slip() {
	_, err := tuning.Parse("baritne B")
	fmt.Println(err)
	// Output:
	// no tuning of that name ("baritne B"); did you mean "baritone B"? or write its notes, low string first
}
