package tension_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/unit"
)

// drawWire is any wire that could be on an instrument.
func drawWire(t *rapid.T) wire {
	d := rapid.Float64Range(0.15e-3, 0.8e-3).Draw(t, "d")
	w := plain(d, rapid.Float64Range(2e9, 210e9).Draw(t, "E"), rapid.Float64Range(900, 9000).Draw(t, "rho"))
	w.ULinearDensity = w.LinearDensity * rapid.Float64Range(0, 0.02).Draw(t, "u(w)/w")
	w.UCoreDia = w.CoreDia * rapid.Float64Range(0, 0.02).Draw(t, "u(d)/d")
	return w
}

// drawStrain is a pitch that stretches the wire by a share from 0.02 to 2 %.
func drawFreq(t *rapid.T, w wire, lengthM float64) float64 {
	strain := rapid.Float64Range(2e-4, 2e-2).Draw(t, "strain")
	return pitchAt(w, lengthM, w.EA*strain)
}

func drawLength(t *rapid.T) float64 { return rapid.Float64Range(0.4, 1.0).Draw(t, "L") }

func TestOpenSolvesTheStretchedLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, l := drawWire(t), drawLength(t)
		f := drawFreq(t, w, l)
		got := openAt(w, l, f)
		v := 2 * l * f
		// A handful of roundings, each 1.1e-16.
		assert.InEpsilon(t, w.LinearDensity*v*v, got*(1+got/w.EA), 1e-14)
		assert.Less(t, got, w.LinearDensity*v*v, "a stretched string needs less")
		assert.InEpsilon(t, f, pitchAt(w, l, got), 1e-14, "FreqAt turns Open round")
	})
}

func TestOpenWithoutStretchIsTheTextbookLaw(t *testing.T) {
	w := steel(0.254e-3)
	q := textbook(w.LinearDensity, 0.648, 329.63)
	unknown := w
	unknown.EA = 0
	assert.Equal(t, q, openAt(unknown, 0.648, 329.63), "core not known")
	stiff := w
	stiff.EA = 1e25
	assert.Equal(t, q, openAt(stiff, 0.648, 329.63), "a core that hardly stretches")
	assert.InEpsilon(t, q*(1-q/w.EA), openAt(w, 0.648, 329.63), 2*math.Pow(q/w.EA, 2), "first order in q/EA")
}

func TestSensitivitiesAgainstDifferences(t *testing.T) {
	const h = 1e-5
	rapid.Check(t, func(t *rapid.T) {
		w, l := drawWire(t), drawLength(t)
		f := drawFreq(t, w, l)
		slope := func(at func(factor float64) float64) float64 {
			return (math.Log(at(1+h)) - math.Log(at(1-h))) / (math.Log1p(h) - math.Log1p(-h))
		}
		by := sensitivities(openAt(w, l, f) / w.EA)
		assert.InDelta(t, by.LinearDensity, slope(func(x float64) float64 {
			v := w
			v.LinearDensity *= x
			return openAt(v, l, f)
		}), 1e-8)
		assert.InDelta(t, 2*by.LinearDensity, slope(func(x float64) float64 { return openAt(w, l*x, f) }), 1e-8)
		assert.InDelta(t, 2*by.LinearDensity, slope(func(x float64) float64 { return openAt(w, l, f*x) }), 1e-8)
		assert.InDelta(t, by.CoreDia, slope(func(x float64) float64 {
			v := w
			v.EA *= x * x
			return openAt(v, l, f)
		}), 1e-8)
	})
}

func TestTheUncertaintyCombines(t *testing.T) {
	w := steel(0.254e-3)
	w.ULinearDensity, w.UCoreDia = 0.01*w.LinearDensity, 0.02*w.CoreDia
	force := openAt(w, 0.648, 329.63)
	e := force / w.EA
	require.Greater(t, e, 0.005)
	u := w.real().WithU(nil, unit.Force(force))
	assert.Equal(t, force, u.Value.N())
	assert.InEpsilon(t, math.Hypot(force*2*e/(1+2*e)*0.02, force*(1+e)/(1+2*e)*0.01), u.U.N(), 1e-12)

	unknown := wire{LinearDensity: 1e-3, ULinearDensity: 1e-5}
	assert.InEpsilon(t, 0.5, unknown.real().WithU(nil, 50).U.N(), 1e-12, "core not known: the linear density alone")
}
