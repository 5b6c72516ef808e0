package choice

import (
	"context"
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/reading"
)

// hexGauge is a wound string on a hexagonal core: the rest of the given density
// fills the ring from the core's corners out.
func hexGauge(outerThou, coreThou, wrapKgM3 float64) gauges.Gauge {
	d, core := outerThou*thouM, coreThou*thouM
	area := 0.8660 * core * core
	w := steelKgM3*area + wrapKgM3*math.Pi/4*(d*d-1.1547*1.1547*core*core)
	return gauges.Gauge{
		Label: fmt.Sprintf("w%g", outerThou), Family: "wound", Material: data.MusicWire,
		Outer: unit.Length(d), Core: unit.Length(core), Shape: reading.Hex, AreaM2: area,
		EA: unit.Force(steelPa * area), EI: steelPa * 0.06014 * math.Pow(core, 4), LinearDensity: unit.LinearDensity(w),
	}
}

// denseStock has plain steel of 8 to 22 thousandths of an inch, by half
// thousandths to 12, and 13.5, and wound steel of 20 to 90 by two.
func denseStock() []gauges.Gauge {
	var out []gauges.Gauge
	for d := 8.0; d <= 22; d += 0.5 {
		if d <= 12 || d == 13.5 || d == math.Trunc(d) {
			out = append(out, plainGauge(d))
		}
	}
	for d := 20.0; d <= 90; d += 2 {
		out = append(out, hexGauge(d, 11+0.16*d, 6270))
	}
	return out
}

// bassStock has wound steel of 20 to 145 thousandths.
func bassStock() []gauges.Gauge {
	var out []gauges.Gauge
	for d := 20.0; d <= 145; d++ {
		if d <= 50 || int(d)%2 == 0 || int(d)%5 == 0 {
			out = append(out, hexGauge(d, 16+0.16*d, 6400))
		}
	}
	return out
}

// Tunings, string 1 first.
var (
	sevenB  = hz(64, 59, 55, 50, 45, 40, 35)
	eightF  = hz(64, 59, 55, 50, 45, 40, 35, 30)
	baritoA = hz(57, 52, 48, 43, 38, 33)
	bassE   = hz(43, 38, 33, 28)
	bassB   = hz(43, 38, 33, 28, 23)
)

// prototype is a choice against a straight reference, with saddle slants up to
// 30 degrees.
func prototype(stock []gauges.Gauge, ref float64, refPitches []unit.Frequency, refGauges []string, bass, treble []unit.Length, nut, saddle float64, tunings ...[]unit.Frequency) Request {
	n := len(tunings[0])
	r := Request{
		Stock: stock, Ordering: true, Neck: neck(), Bass: bass, Treble: treble, Tails: sameTails(n), Action: heights(n),
		Feel: DefaultFeel(true, false), Limits: DefaultLimits(),
		Reference: &Reference{Neck: straight(ref), Pitches: refPitches, Tails: sameTails(len(refPitches)), Gauges: indexesOf(stock, refGauges...)},
	}
	r.Neck.NutSpread, r.Neck.SaddleSpread = unit.MM(nut), unit.MM(saddle)
	r.Limits.SaddleSlant = unit.Degrees(30)
	for i, t := range tunings {
		r.Cases = append(r.Cases, Case{Name: fmt.Sprint(i), Pitches: t, Weight: 1})
	}
	return r
}

// guitarLike is a prototype against a straight 648 mm guitar in E.
func guitarLike(bass, treble []unit.Length, nut, saddle float64, tunings ...[]unit.Frequency) Request {
	r := prototype(denseStock(), 648, standardE, []string{"p10", "p13", "p17", "w26", "w36", "w46"}, bass, treble, nut, saddle, tunings...)
	r.Feel.BendStrings = []int{1, 2, 3}
	return r
}

// with joins lengths that rise.
func with(a, b []unit.Length) []unit.Length {
	out := append(slices.Clone(a), b...)
	slices.Sort(out)
	return slices.CompactFunc(out, func(x, y unit.Length) bool { return rounded(x.M()) == rounded(y.M()) })
}

// The picks of a prototype of this model, made apart from it, with a stock that
// is described in the same words. A builder's decisions stood there within 8 mm
// when the grid was five times as fine, so that is the room here.
func TestPrototypes(t *testing.T) {
	six, low := span(610, 648, 5), span(620, 648, 5)
	long, bari := with(span(640, 720, 5), low[len(low)-1:]), with(span(650, 730, 5), span(640, 648, 5))
	bassTreble := span(800, 864, 5)
	five := prototype(bassStock(), 864, bassE, []string{"w45", "w65", "w85", "w105"}, with(span(840, 945, 5), bassTreble[len(bassTreble)-1:]), bassTreble, 36, 72, bassB)
	five.Feel.BendStrings = []int{}
	five.Reference.Neck.NutSpread, five.Reference.Neck.SaddleSpread = unit.MM(36), unit.MM(72)
	oneSet := guitarLike(bari, low, 36, 52, baritoneB, baritoA)
	oneSet.Usable = indexesOf(oneSet.Stock, "p10", "p11", "p13", "p16", "p17", "p20", "w24", "w28", "w32", "w36", "w42", "w46", "w52", "w60")
	for _, c := range []struct {
		name                      string
		req                       Request
		smallest, middle, longest [2]float64 // bass, treble, mm
		notRemovable              float64    // percentage points
	}{
		{"six in E", guitarLike(with(span(620, 690, 5), six[len(six)-1:]), six, 36, 52, standardE), [2]float64{648, 648}, [2]float64{665, 648}, [2]float64{680, 648}, 0},
		{"seven in B", guitarLike(long, low, 44, 64, sevenB), [2]float64{648, 648}, [2]float64{675, 648}, [2]float64{695, 640}, 0},
		{"eight in F#", guitarLike(long, low, 52, 75, eightF), [2]float64{645, 645}, [2]float64{675, 648}, [2]float64{705, 645}, 0},
		{"baritone B", guitarLike(bari, low, 36, 52, baritoneB), [2]float64{648, 648}, [2]float64{670, 648}, [2]float64{690, 648}, 0},
		{"baritone A", guitarLike(bari, low, 36, 52, baritoA), [2]float64{640, 640}, [2]float64{665, 648}, [2]float64{690, 648}, 0},
		{"B and A with one set", oneSet, [2]float64{660, 648}, [2]float64{675, 648}, [2]float64{690, 648}, 11.6},
		{"five in B", five, [2]float64{864, 864}, [2]float64{895, 864}, [2]float64{925, 864}, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, err := must(t, c.req).Search(context.Background())
			require.NoError(t, err)
			assert.InDelta(t, c.notRemovable, r.NotRemovable.Percent(), 0.05)
			for kind, wanted := range map[PickKind][2]float64{SmallestFan: c.smallest, MiddlePick: c.middle, LongestBass: c.longest} {
				pick := r.Pick(kind)
				require.NotNil(t, pick)
				assert.InDelta(t, wanted[0], pick.Bass.MM(), 8, "bass of the %s: %v", kind, labels(c.req.Stock, pick.Gauges))
				assert.InDelta(t, wanted[1], pick.Treble.MM(), 8, "treble of the %s", kind)
				t.Log(kind, pick.Bass, pick.Treble, labels(c.req.Stock, pick.Gauges), pick.Error.Percent())
			}
		})
	}
}
