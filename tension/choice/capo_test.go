package choice

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension"
)

// withCapo is the baritone's detail on 700/650 with a capo.
func withCapo(t *testing.T, fret int, change func(r *Request)) (*Plan, *Detail) {
	t.Helper()
	req := baritone()
	req.Limits = Limits{}
	req.Cases[0].CapoFret = fret
	if change != nil {
		change(&req)
	}
	p := must(t, req)
	d := p.drawn(unit.MM(700), unit.MM(650), indexesOf(req.Stock, "p13", "p17", "w26", "w36", "w46", "w62"))
	return p, d
}

func TestACapoLeavesTheTensionAlone(t *testing.T) {
	_, open := withCapo(t, 0, nil)
	_, under := withCapo(t, 3, nil)
	assert.Equal(t, open.Totals[0].Tension, under.Totals[0].Tension)
	assert.NotEqual(t, open.Error, under.Error, "bends count from the capo")
	for i, s := range under.Strings {
		a, b := open.Strings[i].Tunings[0], s.Tunings[0]
		assert.Equal(t, a.Breaking, b.Breaking)
		assert.Equal(t, a.Pitch, b.Pitch)
		assert.Equal(t, open.Strings[i].Length, s.Length)
		assert.InEpsilon(t, a.Pitch.Hz()*math.Pow(2, 0.25), b.SoundingPitch.Hz(), 1e-14)
		assert.InEpsilon(t, s.Length.M()*math.Pow(2, -0.25), b.Sounding.M(), 1e-14)
		// B goes with 1/L^2 at equal tension: cents = 600 log2(1 + 100 B).
		bOpen := (math.Exp2(a.Inharmonicity.Value()/600) - 1) / 100
		assert.InEpsilon(t, bOpen*math.Pow(2, 0.5), (math.Exp2(b.Inharmonicity.Value()/600)-1)/100, 1e-9)
		assert.Equal(t, open.Strings[i].Compensation, s.Compensation, "the saddle is set without the capo")
	}
}

// The bend under a capo by plain bisection on the run from post to ball, with
// nothing of package tension in it but the open tension.
func TestABendUnderACapo(t *testing.T) {
	const capo, fret = 2, 7
	p, d := withCapo(t, capo, func(r *Request) { r.Feel.BendFrets = []int{fret} })
	frame, err := fan.NewFrame(d.Spec)
	require.NoError(t, err)
	for _, i := range []int{0, 1} {
		g := p.req.Stock[d.Gauges[i]]
		length, ea := d.Strings[i].Length.M(), g.EA.N()
		k := func(n float64) float64 { return 1 - math.Pow(2, -n/12) }
		hidden, x, s := length*k(capo), length*(k(fret)-k(capo)), length*(1-k(fret))
		tan := frame.TanSlant(fret)
		force := tension.Open(nil, WireOf(g), d.Strings[i].Length, p.req.Cases[0].Pitches[i]).N()
		run := func(y float64) float64 {
			return hidden + math.Hypot(x+y*tan, y) + math.Hypot(s-y*tan, y) + 0.06 + 0.025
		}
		slack := run(0) / (1 + force/ea)
		pull := func(y float64) float64 { return ea * (run(y)/slack - 1) }
		pitch := func(y float64) float64 {
			return math.Sqrt(pull(y)/(g.LinearDensity.KgPerM()*slack/run(y))) / (2 * math.Hypot(s-y*tan, y))
		}
		lo, hi := 0.0, 0.06
		for range 80 {
			if mid := (lo + hi) / 2; 1200*math.Log2(pitch(mid)/pitch(0)) < 200 {
				lo = mid
			} else {
				hi = mid
			}
		}
		slope := (run(lo+1e-6) - run(lo-1e-6)) / 2e-6
		b := d.Strings[i].Tunings[0].Bends[0]
		require.NoError(t, b.Err)
		assert.InEpsilon(t, lo, b.Bend.Distance.M(), 1e-6)
		assert.InEpsilon(t, pull(lo)*slope, b.Bend.Force.N(), 1e-6)
		wire, at, err := p.StringAt(d, 0, i, fret)
		require.NoError(t, err)
		again, err := tension.BendString(nil, wire, at)
		require.NoError(t, err)
		assert.Equal(t, b.Bend, again, "the work shown is that of the same bend")
	}
}

func TestAFretBehindTheCapo(t *testing.T) {
	p, d := withCapo(t, 5, nil)
	assert.ErrorIs(t, d.Strings[0].Tunings[0].Bends[0].Err, ErrBehindCapo)
	assert.NoError(t, d.Strings[0].Tunings[0].Bends[1].Err)
	assert.False(t, d.ErrorUnknown)
	_, _, err := p.StringAt(d, 0, 0, 5)
	assert.ErrorIs(t, err, ErrBehindCapo)

	p, d = withCapo(t, 12, nil)
	assert.False(t, d.ErrorUnknown, "only tensions are left")
	assert.Contains(t, p.LeftOut(), LeftOut{Term: BendingForceTerm, Why: "a capo leaves no room at the frets of the bends"})
}
