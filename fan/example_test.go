package fan_test

import (
	"fmt"
	"math"

	"scalepair/data/unit"
	"scalepair/fan"
)

// A whole layout: what the bench wants to know of one fan.
func ExampleNew() {
	spec := fan.DefaultSpec()
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

// Many pairs on one neck: the neck is checked once, a pair costs no memory.
func ExampleBase_Frame() {
	spec := fan.DefaultSpec()
	spec.NutSpread, spec.SaddleSpread = unit.MM(38), unit.MM(54)
	base, err := fan.NewBase(spec)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, bass := range []float64{640, 670, 700} {
		frame, reason := base.Frame(unit.MM(bass), unit.MM(650))
		if reason != fan.Fits {
			fmt.Println(bass, reason)
			continue
		}
		fmt.Printf("%.0f: string 5 is %.2f mm, first step %.2f mm\n", bass, frame.Length(4).MM(), frame.NutToFret1().MM())
	}
	// Output:
	// 640 the bass is shorter than the treble
	// 670: string 5 is 665.97 mm, first step 37.60 mm
	// 700: string 5 is 689.97 mm, first step 39.29 mm
}
