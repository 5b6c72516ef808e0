package fan_test

import (
	"fmt"
	"math"

	"scalepair/data/unit"
	"scalepair/fan"
)

// A whole layout: what the bench wants to know of one fan.
func ExampleNew() {
	spec := fan.Spec{Strings: 6, Neck: fan.DefaultNeck()}
	spec.Bass, spec.Treble = unit.MM(690), unit.MM(650)
	spec.NutSpread, spec.SaddleSpread = unit.MM(38), unit.MM(54)
	layout, err := fan.New(spec)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("fret 12 on the bass line: %.2f mm from the nut\n", layout.Frets[12].Bass.FromNut.MM())
	fmt.Printf("treble nut end: %.2f mm back from the square line at fret 7\n", layout.Neutral.TrebleFromNut.MM())
	fmt.Printf("nut line slants %.1f degrees\n", layout.Nut.Slant.Rad()*180/math.Pi)
	// Output:
	// fret 12 on the bass line: 345.00 mm from the nut
	// treble nut end: 216.18 mm back from the square line at fret 7
	// nut line slants -19.3 degrees
}
