package tension_test

import (
	"errors"
	"fmt"
	"math"

	"scalepair/data/unit"
	"scalepair/tension"
)

// exampleWire is plain wire of a quarter of a millimetre, weighed.
func exampleWire() tension.Wire {
	const d, youngs = 0.254e-3, 203.4e9
	area := math.Pi / 4 * d * d
	w := tension.Wire{
		LinearDensity: 0.3978e-3, ULinearDensity: 0.004e-3, Plain: true,
		CoreArea: area, CoreDia: d, EA: unit.Force(youngs * area), EI: youngs * math.Pi / 64 * d * d * d * d,
	}
	w.Strength, w.OutsideTable = tension.MinStrength(d)
	return w
}

func ExampleOpen() {
	w := exampleWire()
	t := tension.Open(w, 648*unit.Millimetre, 329.63)
	fmt.Printf("%.1f N, give or take %.1f N\n", t.N(), w.WithU(nil, t).U.N())
	fmt.Printf("%.0f %% of breaking\n", w.Breaking(t).Percent())
	// Output:
	// 72.1 N, give or take 0.7 N
	// 53 % of breaking
}

func ExampleBend() {
	at := tension.BendAt{
		Length: 0.648, Pitch: 329.63, Fret: 5, TanSlant: 0.05, Rise: 200,
		Tails: tension.Tails{Nut: 0.06, Saddle: 0.025}, Reach: 0.045,
	}
	bend, err := tension.BendString(nil, exampleWire(), at)
	fmt.Printf("%.1f N over %.1f mm, %v\n", bend.Force.N(), bend.Distance.MM(), err)

	at.Reach = 0.010
	_, err = tension.BendString(nil, exampleWire(), at)
	fmt.Println(errors.Is(err, tension.ErrNotReachable), err)
	// Output:
	// 13.1 N over 17.8 mm, <nil>
	// true a bend of 200 cents is not reachable: at the board's edge, 10.0 mm away, it has risen 69 cents
}

func ExampleExplain() {
	steps, _ := tension.Explain(exampleWire(), tension.BendAt{Length: 0.648, Pitch: 329.63})
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
