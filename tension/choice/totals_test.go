package choice

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/gauges"
	"scalepair/tension"
)

// The total's uncertainty by differences: every gauge's linear density and core
// moved by their own uncertainty, on all strings that have the gauge at once.
func TestUncertaintyOfTheTotal(t *testing.T) {
	req := baritone()
	for i := range req.Stock {
		g := &req.Stock[i]
		g.UCore = 0.1 * g.Core
		g.CoreParts = gauges.Parts{{Source: gauges.CoreSource(g.Label), U: g.UCore.M()}}
	}
	set := indexesOf(req.Stock, "p13", "p17", "w26", "w26", "w46", "w62")
	req.Ordering, req.Limits = false, Limits{}
	for _, densities := range []bool{true, false} {
		for i := range req.Stock {
			g := &req.Stock[i]
			if g.U, g.Indep = 0.01*g.LinearDensity, 0.01*g.LinearDensity; !densities {
				g.U, g.Indep = 0, 0 // the cores alone
			}
		}
		p := must(t, req)
		d := p.drawn(unit.MM(700), unit.MM(650), set)
		total := func(changed int, density, core float64) (sum float64) {
			for i, s := range d.Strings {
				w := p.wires[s.Gauge]
				if s.Gauge == changed {
					w.LinearDensity *= unit.LinearDensity(density)
					w.EA *= unit.Force(core * core)
				}
				sum += tension.Open(nil, w, s.Length, req.Cases[0].Pitches[i]).N()
			}
			return sum
		}
		squares := 0.0
		for _, g := range []int{set[0], set[1], set[2], set[4], set[5]} {
			core := (total(g, 1, 1.1) - total(g, 1, 0.9)) / 2
			density := (total(g, 1.01, 1) - total(g, 0.99, 1)) / 2
			if !densities {
				density = 0
			}
			squares += core*core + density*density
		}
		assert.InEpsilon(t, math.Sqrt(squares), d.Totals[0].Tension.U.N(), 0.02)
	}
}

// 'Even' wants every tuning's own mean of all strings, whatever capo it has.
func TestEvenInSeveralTunings(t *testing.T) {
	req := baritone()
	req.Given = indexesOf(req.Stock, "p13", "p17", "w26", "w36", "w46", "w62")
	req.Reference, req.Limits = nil, Limits{}
	req.Feel = DefaultFeel(false, true)
	req.Feel.BendingForce, req.Feel.Inharmonicity = Target{}, 0
	dropped := slices.Clone(req.Cases[0].Pitches)
	dropped[5] /= 1.25
	req.Cases = append(req.Cases, Case{Name: "down, with a capo", Weight: 2, CapoFret: 3, Pitches: hz(57, 52, 47, 43, 37, 32)},
		Case{Name: "one string lower", Weight: 1, Pitches: dropped})
	d, err := must(t, req).Detail(unit.MM(700), unit.MM(650), req.Given)
	require.NoError(t, err)
	deviations := make([]float64, 6)
	for c := range req.Cases {
		mean, squares := 0.0, 0.0
		for _, s := range d.Strings {
			mean += math.Log(s.Tunings[c].Tension.Value.N()) / 6
		}
		for i, s := range d.Strings {
			x := math.Log(s.Tunings[c].Tension.Value.N()) - mean
			squares += x * x / 6
			deviations[i] += x * []float64{0.25, 0.5, 0.25}[c]
		}
		assert.InEpsilon(t, math.Sqrt(squares), float64(d.Totals[c].Error), 1e-9)
	}
	for i, s := range d.Strings {
		assert.InDelta(t, math.Expm1(deviations[i]), float64(s.Deviation), 1e-9)
	}
}

// A saddle goes from the compensation of the highest tuning, which asks for the
// least, to that of the lowest. Both are worked out by package tension alone.
func TestCompensationOverTheTunings(t *testing.T) {
	req := baritone()
	low := req.Cases[0]
	low.Pitches = slices.Clone(low.Pitches)
	for i := range low.Pitches {
		low.Pitches[i] *= unit.Frequency(math.Exp2(-2.0 / 12))
	}
	req.Cases = append(req.Cases, low)
	p := must(t, req)
	d := p.drawn(unit.MM(700), unit.MM(650), indexesOf(req.Stock, "p13", "p17", "w26", "w36", "w46", "w62"))
	most := unit.Length(0)
	for i, s := range d.Strings {
		var want [2]fan.Compensation
		for c, one := range req.Cases {
			lo, hi, err := tension.Compensation(nil, WireOf(req.Stock[s.Gauge]), s.Length, one.Pitches[i], req.Action[i], req.Tails[i])
			require.NoError(t, err)
			want[c] = fan.Compensation{Lo: lo, Hi: hi}
			assert.Equal(t, want[c], s.Tunings[c].Compensation)
		}
		assert.Less(t, want[0].Hi, want[1].Hi)
		assert.Equal(t, fan.Compensation{Lo: want[0].Lo, Hi: want[1].Hi}, s.Compensation)
		most = max(most, want[1].Hi)
	}
	l, err := fan.New(d.Spec)
	require.NoError(t, err)
	var all []fan.Compensation
	for _, s := range d.Strings {
		all = append(all, s.Compensation)
	}
	assert.InDelta(t, (most + 2*saddleSpare).M(), l.Saddles(all).Need.M(), 1e-12, "1 mm to spare before the line and behind the most")
}
