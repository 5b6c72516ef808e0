package gauges

import (
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data"
	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/gauges/reading"
)

func TestPublishedUncertainty(t *testing.T) {
	checks := map[string]func(testutil.Published) float64{
		"bound":      func(r testutil.Published) float64 { return BoundU(r.Input(t, "a")) },
		"bound part": func(r testutil.Published) float64 { return r.Input(t, "sensitivity") * BoundU(r.Input(t, "a")) },
		"weighing": func(r testutil.Published) float64 {
			return RootSum(BoundU(r.Input(t, "a")), StepU(r.Input(t, "step")), r.Input(t, "part"))
		},
		"root sum": func(r testutil.Published) float64 {
			return RootSum(r.Input(t, "part"), r.Input(t, "part2"), r.Input(t, "part3"))
		},
		"gauge block": func(r testutil.Published) float64 {
			return RootSum(r.Input(t, "part"), 16.599, RootSum(5.8, 3.9, 6.7), 2.88679)
		},
		"coverage factor": func(r testutil.Published) float64 {
			return Value{Bounded: r.Input(t, "part"), Indep: r.Input(t, "part")}.Coverage95()
		},
		"chi-squared tail":        func(r testutil.Published) float64 { return ChanceBeyond(r.Input(t, "part"), int(r.Input(t, "dof"))) },
		"normal quantile":         nil, // of package fit
		"inverse normal quantile": nil,
	}
	checkPublished(t, "uncertainty.csv", checks)
}

func TestPublishedWireWeights(t *testing.T) {
	wire := func(r testutil.Published, d float64) float64 {
		w := wound{core: diameter{d: d}, shape: reading.Round, coreMat: data.Material{DensityKgM3: r.Input(t, "density_kg_m3")}}
		total, _ := w.weight(nil)
		return total
	}
	checkPublished(t, "wire_weight.csv", map[string]func(testutil.Published) float64{
		"pounds per foot": func(r testutil.Published) float64 {
			return unit.LinearDensity(wire(r, r.Input(t, "diameter_in")*unit.Inch)).PoundsPerInch() * 12
		},
		"kg per metre": func(r testutil.Published) float64 { return wire(r, r.Input(t, "diameter_m")) },
		"weighed": func(r testutil.Published) float64 {
			w, _ := Instruments{}.Value(reading.Reading{Mass: unit.Mass(r.Input(t, "mass_kg")), Length: unit.Length(r.Input(t, "length_m"))}, 0, 0)
			return w.W
		},
		"hung": func(r testutil.Published) float64 {
			tools := Instruments{Gravity: r.Input(t, "gravity_m_s2")}
			w, _ := tools.Value(reading.Reading{Kind: reading.Hung, HungMass: unit.Mass(r.Input(t, "mass_kg")), Speaking: unit.Length(r.Input(t, "length_m")), Pitch: unit.Frequency(r.Input(t, "freq_hz"))}, 0, 0)
			return w.W
		},
	})
}

// checkPublished holds every row of a file against the formula of its
// quantity.
func checkPublished(t *testing.T, file string, checks map[string]func(testutil.Published) float64) {
	for _, r := range testutil.LoadPublished(t, file) {
		check, ok := checks[r.Quantity]
		require.True(t, ok, "no check for %q", r.Quantity)
		if check != nil {
			r.Check(t, check(r))
		}
	}
}
