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

func TestCompensationLimitsAndOrder(t *testing.T) {
	compensation := func(d, h, scale float64) float64 {
		w := steel(d)
		w.EI *= scale
		lo, _, err := compensation(w, 0.648, 329.63*0.254e-3/d, h, ends{Nut: 0.06, Saddle: 0.025})
		require.NoError(t, err)
		return lo
	}
	assert.InDelta(t, 0, compensation(0.254e-3, 0, 1e-9), 1e-12, "no height, no stiffness: nothing to set back")
	assert.Greater(t, compensation(0.254e-3, 1.6e-3, 1e-9), 1e-4, "the raised tension outweighs the longer run")
	assert.Greater(t, compensation(0.254e-3, 1.6e-3, 1), compensation(0.254e-3, 1.6e-3, 1e-9), "stiffness asks for more")
	assert.Greater(t, compensation(0.254e-3, 2e-3, 1), compensation(0.254e-3, 1.6e-3, 1), "a higher string asks for more")
	assert.Greater(t, compensation(0.4318e-3, 1.6e-3, 1), compensation(0.254e-3, 1.6e-3, 1), "a thicker core asks for more")
}

func TestCompensationOfRubber(t *testing.T) {
	w := plain(2e-3, 2e6, 1000)
	w.EI *= 1e-6
	f := pitchAt(w, 0.6, 0.9*w.EA)
	lo, _, err := compensation(w, 0.6, f, 5e-3, ends{Nut: 1.2})
	require.NoError(t, err)
	assert.Less(t, lo, -1e-6, "a longer way, hardly more tension: the saddle stands in front")
	assert.InDelta(t, 2, octave(w, 0.6, f, 5e-3, 1.2, lo, 0), 1e-9)
}

func TestCompensationRefuses(t *testing.T) {
	w := steel(0.254e-3)
	for _, c := range []struct {
		name         string
		w            wire
		l, f, height float64
		tail         float64
		want         error
	}{
		{"core not known", wire{LinearDensity: 4e-4}, 0.648, 329.63, 1.6e-3, 0.06, tension.ErrNoStiffness},
		{"bending stiffness not known", wire{LinearDensity: 4e-4, EA: 1e4}, 0.648, 329.63, 1.6e-3, 0.06, tension.ErrNoStiffness},
		{"no length", w, 0, 329.63, 1.6e-3, 0.06, tension.ErrInput},
		{"pitch nan", w, 0.648, math.NaN(), 1.6e-3, 0.06, tension.ErrInput},
		{"height below 0", w, 0.648, 329.63, -1e-3, 0.06, tension.ErrInput},
		{"height nan", w, 0.648, 329.63, math.NaN(), 0.06, tension.ErrInput},
		{"height in the wrong unit", w, 0.648, 329.63, 1.6, 0.06, tension.ErrInput},
		{"no saddle reaches so far", w, 0.648, 329.63, 0.3, 0.06, tension.ErrInput},
		{"tail below 0", w, 0.648, 329.63, 1.6e-3, -0.06, tension.ErrInput},
	} {
		t.Run(c.name, func(t *testing.T) {
			lo, hi, err := compensation(c.w, c.l, c.f, c.height, ends{Nut: c.tail})
			assert.ErrorIs(t, err, c.want)
			assert.Zero(t, lo)
			assert.Zero(t, hi)
		})
	}
}
