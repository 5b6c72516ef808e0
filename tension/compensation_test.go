package tension_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/tension"
)

// octave is the note at fret 12 over the open one by another route: one
// spring, one lump of mass, and a bent beam's first partial; shorten is what
// clamped ends take from each sounding length.
func octave(w wire, lengthM, freq, height, tails, s, shorten float64) float64 {
	open := lengthM + s
	all := open + tails
	force := openAt(w, open, freq)
	slack := all / (1 + force/w.EA)
	mass := w.LinearDensity * slack
	note := func(run, sounding float64) float64 {
		pull := w.EA * (run - slack) / slack
		b := math.Pi * math.Pi * w.EI / pull / (sounding * sounding)
		return math.Sqrt(pull*run/mass*(1+b)) / (2 * (sounding - shorten))
	}
	behind := math.Sqrt(math.Pow(lengthM/2+s, 2) + height*height)
	pressed := math.Sqrt(lengthM*lengthM/4+height*height) + behind + tails
	return note(pressed, behind) / note(all, open)
}

func TestCompensationMakesTheOctave(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, l := drawWire(t), drawLength(t)
		f := drawFreq(t, w, l)
		height := rapid.Float64Range(0, 4e-3).Draw(t, "h")
		tails := ends{Nut: rapid.Float64Range(0, 0.2).Draw(t, "nut"), Saddle: rapid.Float64Range(0, 0.2).Draw(t, "saddle")}
		lo, _, err := compensation(w, l, f, height, tails)
		require.NoError(t, err)
		assert.Greater(t, lo, 0.0)
		// The octave takes the stretch as a difference of two lengths, which
		// leaves it some 1e-16 over the strain.
		assert.InDelta(t, 2, octave(w, l, f, height, tails.Nut+tails.Saddle, lo, 0), 1e-11)
	})
}

// Clamped ends take the same from both sounding lengths, and the saddle gives
// it back to both.
func TestCompensationOfClampedEnds(t *testing.T) {
	const l, f, h, tails = 0.648, 329.63, 1.6e-3, 0.085
	for _, d := range []float64{0.2e-3, 0.254e-3, 0.4e-3} {
		w := steel(d)
		lo, hi, err := compensation(w, l, f, h, ends{Nut: 0.06, Saddle: 0.025})
		require.NoError(t, err)
		clamp := math.Sqrt(w.EI / openAt(w, l+lo, f))
		assert.InEpsilon(t, 2*clamp, hi-lo, 1e-12)
		// A tenth of a cent: the longer string is tuned a little tighter.
		assert.InDelta(t, 2, octave(w, l, f, h, tails, hi, 2*clamp), 1e-4)
		assert.Less(t, octave(w, l, f, h, tails, hi, 0), 2-1e-4)
	}
}

// To first order s = L/2 (k d + 3 B), with d the stretch of a string pressed
// by h and B twice hinged.
func TestCompensationToFirstOrder(t *testing.T) {
	const l, f, h, tails = 0.648, 329.63, 1.2e-3, 0.085
	w := steel(0.254e-3)
	force := openAt(w, l, f)
	d := 2 * h * h / l / (l + tails)
	b := spreadB(w, force, l)
	lo, _, err := compensation(w, l, f, h, ends{Nut: 0.06, Saddle: 0.025})
	require.NoError(t, err)
	want := l / 2 * (w.EA/force*d + 3*b)
	assert.InEpsilon(t, want, lo, 0.02)

	// A fret 12 that stands c cents sharp asks for about c L ln2/1200.
	sharp := 1200 * math.Log2(octave(w, l, f, h, tails, 0, 0)/2)
	assert.InEpsilon(t, sharp*l*math.Ln2/1200, lo, 0.01)
}

func TestCompensationRefuses(t *testing.T) {
	for _, w := range []wire{{LinearDensity: 4e-4}, {LinearDensity: 4e-4, EA: 1e4}} {
		lo, hi, err := compensation(w, 0.648, 329.63, 1.6e-3, ends{Nut: 0.06})
		assert.ErrorIs(t, err, tension.ErrNoStiffness)
		assert.Zero(t, lo)
		assert.Zero(t, hi)
	}
}
