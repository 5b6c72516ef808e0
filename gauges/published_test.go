package gauges

import (
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data"
	"scalepair/data/testutil"
	"scalepair/data/unit"
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
			return coverage95(value{bounded: r.Input(t, "part"), indep: r.Input(t, "part")}.excess())
		},
		"normal quantile":         func(r testutil.Published) float64 { return normalQuantile(r.Input(t, "p")) },
		"inverse normal quantile": func(r testutil.Published) float64 { return 1 / normalQuantile(r.Input(t, "p")) },
		"chi-squared tail":        func(r testutil.Published) float64 { return chi2Tail(r.Input(t, "part"), r.Input(t, "dof")) },
	}
	checkPublished(t, "uncertainty.csv", checks)
}

func TestPublishedWireWeights(t *testing.T) {
	wire := func(r testutil.Published, d float64) float64 {
		w := wound{core: diameter{d: d}, shape: Round, coreMat: data.Material{DensityKgM3: r.Input(t, "density_kg_m3")}}
		return w.weight()
	}
	checkPublished(t, "wire_weight.csv", map[string]func(testutil.Published) float64{
		"pounds per foot": func(r testutil.Published) float64 {
			return unit.LinearDensity(wire(r, r.Input(t, "diameter_in")*unit.Inch)).PoundsPerInch() * 12
		},
		"kg per metre": func(r testutil.Published) float64 { return wire(r, r.Input(t, "diameter_m")) },
		"weighed": func(r testutil.Published) float64 {
			w, _ := Instruments{}.Work(Reading{MassKg: r.Input(t, "mass_kg"), LengthM: r.Input(t, "length_m")}, 0, 0)
			return w
		},
		"hung": func(r testutil.Published) float64 {
			tools := Instruments{Gravity: r.Input(t, "gravity_m_s2")}
			w, _ := tools.Work(Reading{Kind: Hung, HungKg: r.Input(t, "mass_kg"), SpeakingM: r.Input(t, "length_m"), FreqHz: r.Input(t, "freq_hz")}, 0, 0)
			return w
		},
	})
}

// checkPublished holds every row of a file against the formula of its
// quantity.
func checkPublished(t *testing.T, file string, checks map[string]func(testutil.Published) float64) {
	for _, r := range testutil.LoadPublished(t, file) {
		check, ok := checks[r.Quantity]
		require.True(t, ok, "no check for %q", r.Quantity)
		r.Check(t, check(r))
	}
}
