package choice_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/fan"
	"scalepair/tension"
	"scalepair/tension/choice"
)

// withCapo is the baritone's detail on 700/650 with a capo.
func withCapo(t *testing.T, fret int, change func(r *choice.Request)) (choice.Request, *choice.Detail) {
	t.Helper()
	req := baritone()
	req.Limits = choice.Limits{}
	req.Cases[0].CapoFret = fret
	if change != nil {
		change(&req)
	}
	p, err := choice.Prepare(req)
	require.NoError(t, err)
	d, err := p.Detail(700, 650, indexes(req.Stock, "p13", "p17", "w26", "w36", "w46", "w62"))
	require.NoError(t, err)
	return req, d
}

func TestACapoLeavesTheTensionAlone(t *testing.T) {
	_, open := withCapo(t, 0, nil)
	_, under := withCapo(t, 3, nil)
	assert.Equal(t, open.Totals[0].TensionN, under.Totals[0].TensionN)
	assert.Equal(t, open.Totals[0].UTensionN, under.Totals[0].UTensionN)
	assert.Equal(t, open.Totals[0].TensionMisfit, under.Totals[0].TensionMisfit)
	assert.NotEqual(t, open.Totals[0].BendingForceMisfit, under.Totals[0].BendingForceMisfit)
	for i, s := range under.Strings {
		a, b := open.Strings[i].Cases[0], s.Cases[0]
		assert.Equal(t, a.ShareOpen, b.ShareOpen)
		assert.Equal(t, a.FreqHz, b.FreqHz)
		assert.Equal(t, open.Strings[i].LengthM, s.LengthM)
		assert.InEpsilon(t, a.FreqHz*math.Pow(2, 0.25), b.SoundingHz, 1e-14)
		assert.InEpsilon(t, s.LengthM*math.Pow(2, -0.25), b.SoundingM, 1e-14)
		// B goes with 1/L^2 at equal tension: cents = 600 log2(1 + 100 B).
		bOpen := (math.Exp2(a.InharmonicityCents/600) - 1) / 100
		assert.InEpsilon(t, bOpen*math.Pow(2, 0.5), (math.Exp2(b.InharmonicityCents/600)-1)/100, 1e-9)
		assert.Equal(t, open.Strings[i].CompensationM, s.CompensationM, "the saddle is set without the capo")
	}
}

// The bend under a capo by plain bisection on the run from post to ball, with
// nothing of package tension in it but the open tension.
func TestABendUnderACapo(t *testing.T) {
	const capo, fret = 2, 7
	req, d := withCapo(t, capo, func(r *choice.Request) { r.Feel.BendFrets = []float64{fret} })
	frame, err := fan.NewFrame(d.Spec)
	require.NoError(t, err)
	for _, i := range []int{0, 1} {
		g := req.Stock[d.Gauges[i]]
		length := d.Strings[i].LengthM
		k := func(n float64) float64 { return 1 - math.Pow(2, -n/12) }
		hidden, x, s := length*k(capo), length*(k(fret)-k(capo)), length*(1-k(fret))
		tan := frame.TanSlant(fret)
		force := tension.Open(choice.WireOf(g), length, req.Cases[0].FreqsHz[i])
		run := func(y float64) float64 {
			return hidden + math.Hypot(x+y*tan, y) + math.Hypot(s-y*tan, y) + 0.06 + 0.025
		}
		slack := run(0) / (1 + force/float64(g.EA))
		pull := func(y float64) float64 { return float64(g.EA) * (run(y)/slack - 1) }
		pitch := func(y float64) float64 {
			return math.Sqrt(pull(y)/(float64(g.LinearDensity)*slack/run(y))) / (2 * math.Hypot(s-y*tan, y))
		}
		assert.InEpsilon(t, req.Cases[0].FreqsHz[i]*math.Pow(2, fret/12.0), pitch(0), 1e-9)
		lo, hi := 0.0, 0.06
		for range 80 {
			if mid := (lo + hi) / 2; 1200*math.Log2(pitch(mid)/pitch(0)) < 200 {
				lo = mid
			} else {
				hi = mid
			}
		}
		const h = 1e-6
		bendingForce := pull(lo) * (run(lo+h) - run(lo-h)) / (2 * h)
		bend := d.Strings[i].Cases[0].Bends[0]
		require.NoError(t, bend.Err)
		assert.InEpsilon(t, lo, bend.Bend.BendDistanceM, 1e-7, "travel of string %d", i+1)
		assert.InEpsilon(t, bendingForce, bend.Bend.BendingForceN, 1e-6, "bending force of string %d", i+1)
	}
}

func TestABendBehindTheCapoIsLeftOut(t *testing.T) {
	_, d := withCapo(t, 5, nil)
	bends := d.Strings[0].Cases[0].Bends
	require.Len(t, bends, 2)
	assert.ErrorIs(t, bends[0].Err, choice.ErrBehindCapo, "fret 5")
	assert.Zero(t, bends[0].TargetN)
	assert.NoError(t, bends[1].Err, "fret 12")
	assert.Empty(t, d.Broken)

	req, d := withCapo(t, 12, nil)
	assert.Zero(t, d.BendingForceMisfit)
	p, err := choice.Prepare(req)
	require.NoError(t, err)
	assert.False(t, p.HasTerm(choice.BendingForceTerm))
}

// With two tunings, of which one cannot bend at a fret, the other alone counts
// there.
func TestWhatACapoLeavesOutTheOtherTuningsCarry(t *testing.T) {
	bendingForce := func(capos ...int) float64 {
		req := baritone()
		req.Limits = choice.Limits{}
		req.Feel.BendFrets = []float64{5}
		req.Cases = nil
		for _, c := range capos {
			req.Cases = append(req.Cases, choice.Case{Name: "b", FreqsHz: baritoneB, CapoFret: c, Weight: 1 + float64(c)})
		}
		p, err := choice.Prepare(req)
		require.NoError(t, err)
		d, err := p.Detail(700, 650, indexes(req.Stock, "p13", "p17", "w26", "w36", "w46", "w62"))
		require.NoError(t, err)
		return d.BendingForceMisfit
	}
	assert.InEpsilon(t, bendingForce(0), bendingForce(0, 7), 1e-12)
	assert.InEpsilon(t, bendingForce(2), bendingForce(2, 7, 9), 1e-12)
	assert.NotEqual(t, bendingForce(0), bendingForce(2), "the capo changes the bending force")
}

func TestSearchUnderCaposIsTheStraightforwardOne(t *testing.T) {
	for name, by := range map[string]choice.Combining{"mean": choice.Mean, "worst": choice.Worst} {
		t.Run(name, func(t *testing.T) {
			req := threeTunings(workload(9))
			req.By = by
			req.Cases[1].CapoFret, req.Cases[2].CapoFret = 3, 7
			r := choice.RequireSameAsPlain(t, req)
			assert.Positive(t, r.Kept)
		})
	}
}

func TestACapoOffTheBoardIsRefused(t *testing.T) {
	for _, fret := range []int{-1, 99} {
		req := baritone()
		req.Cases[0].CapoFret = fret
		_, err := choice.Prepare(req)
		assert.ErrorContains(t, err, "the capo is off the board")
	}
}
