package tension_test

import (
	"errors"
	"fmt"
	"math"

	"scalepair/tension"
)

// exampleWire is plain wire of a quarter of a millimetre, weighed.
func exampleWire() tension.Wire {
	const d, youngs = 0.254e-3, 203.4e9
	area := math.Pi / 4 * d * d
	w := tension.Wire{
		LinearDensity: 0.3978e-3, ULinearDensity: 0.004e-3, Plain: true,
		CoreAreaM2: area, CoreDiaM: d, EA: youngs * area, EI: youngs * math.Pi / 64 * d * d * d * d,
	}
	w.StrengthPa, w.OutsideTable = tension.MinStrength(d)
	return w
}

func ExampleOpen() {
	w := exampleWire()
	t := tension.Open(w, 0.648, 329.63)
	_, u := tension.OpenWithU(w, 0.648, 0, 329.63, 0)
	fmt.Printf("%.1f N, give or take %.1f N\n", t, u)
	fmt.Printf("%.0f %% of breaking\n", 100*tension.BreakingShare(t, w.CoreAreaM2, w.StrengthPa))
	// Output:
	// 72.1 N, give or take 0.7 N
	// 53 % of breaking
}

func ExampleBend() {
	at := tension.BendAt{
		LengthM: 0.648, FreqHz: 329.63, Fret: 5, TanSlant: 0.05, Cents: 200,
		Tails: tension.Tails{NutM: 0.06, SaddleM: 0.025}, ReachM: 0.045,
	}
	bend, err := tension.BendingForce(exampleWire(), at)
	fmt.Printf("%.1f N over %.1f mm, %v\n", bend.BendingForceN, 1000*bend.BendDistanceM, err)

	at.ReachM = 0.010
	_, err = tension.BendingForce(exampleWire(), at)
	fmt.Println(errors.Is(err, tension.ErrNotReachable), err)
	// Output:
	// 13.1 N over 17.8 mm, <nil>
	// true a bend of 200 cents is not reachable: at the board's edge, 10.0 mm away, it has risen 69 cents
}

func ExampleSpot() {
	// Many gauges at one place: set the place out once.
	spot, _ := tension.NewSpot(12, 200)
	contact, _ := spot.Contact(tension.BendAt{LengthM: 0.648, FreqHz: 329.63, ReachM: 0.05})
	for _, scale := range []float64{1, 1.2} { // a wire and one of a fifth more area
		w := exampleWire()
		w.LinearDensity, w.EA = scale*w.LinearDensity, scale*w.EA
		shape, ok := contact.Shape(w.StretchSpeed2())
		fmt.Printf("%v: %.2f mm, %.2f N\n", ok, 1000*shape.BendDistanceM, shape.Bend(w.EA).BendingForceN)
	}
	// Output:
	// true: 19.56 mm, 10.97 N
	// true: 19.56 mm, 13.16 N
}

func ExampleCompensation() {
	lo, hi, _ := tension.Compensation(exampleWire(), 0.648, 329.63, 1.6e-3, tension.Tails{NutM: 0.06, SaddleM: 0.025})
	fmt.Printf("%.1f to %.1f mm behind the theoretical line\n", 1000*lo, 1000*hi)
	// Output:
	// 0.5 to 2.0 mm behind the theoretical line
}

func ExampleExplain() {
	steps, _ := tension.Explain(exampleWire(), tension.BendAt{LengthM: 0.648, FreqHz: 329.63}, 0, 0)
	for _, s := range steps[:7] {
		fmt.Printf("%-2s = %-26s = %.5g %s\n", s.Symbol, s.Formula, s.Value, s.Unit)
	}
	// Output:
	// w  =                            = 0.0003978 kg/m
	// L  =                            = 0.648 m
	// f  =                            = 329.63 Hz
	// q  = w (2 L f)^2                = 72.599 N
	// d  =                            = 0.000254 m
	// EA =                            = 10306 N
	// T  = 2 q/(1 + sqrt(1 + 4 q/EA)) = 72.094 N
}
