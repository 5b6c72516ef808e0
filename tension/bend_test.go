package tension_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/tension"
)

func contactOf(t require.TestingT, at bendAt) tension.Contact {
	contact, err := tension.NewContact(at.real())
	require.NoError(t, err)
	return contact
}

// drawBend is a bend that any instrument could ask for, with room to reach it.
func drawBend(t *rapid.T) (wire, bendAt) {
	w := drawWire(t)
	at := bendAt{
		Length:   drawLength(t),
		Fret:     float64(rapid.IntRange(1, 24).Draw(t, "fret")),
		TanSlant: rapid.Float64Range(-0.5, 0.5).Draw(t, "t"),
		Rise:     rapid.Float64Range(1, 400).Draw(t, "cents"),
		Tails: ends{
			Nut:    rapid.Float64Range(0, 0.3).Draw(t, "nut tail"),
			Saddle: rapid.Float64Range(0, 0.3).Draw(t, "saddle tail"),
		},
		Reach: 0.3,
	}
	at.Pitch = drawFreq(t, w, at.Length)
	return w, at
}

func TestBendAgainstTheOtherRoute(t *testing.T) {
	reached := 0
	rapid.Check(t, func(t *rapid.T) {
		w, at := drawBend(t)
		bend, err := bendString(w, at)
		if err != nil {
			require.ErrorIs(t, err, tension.ErrNotReachable)
			return
		}
		reached++
		o := newOracle(w, at)
		// The other route subtracts lengths: its pull is good to about 1e-16/e.
		assert.InDelta(t, at.Rise, 1200*math.Log2(o.freq(bend.Distance)/o.freq(0)), 1e-8, "the pitch rises as asked")
		assert.InEpsilon(t, bend.Tension, o.pull(o.run(bend.Distance)), 1e-10)
		assert.InDelta(t, bend.Force, o.bendingForce(bend.Distance), 1e-6*bend.Tension, "the slope of the stored energy")
	})
	assert.Greater(t, reached, 50, "most bends drawn can be reached")
}

func TestBendDistanceAgainstHalving(t *testing.T) {
	for _, tan := range []float64{-0.45, -0.1, 0, 0.1, 0.45} {
		for _, fret := range []float64{1, 5, 12, 17.5, 24} {
			w, at := steel(0.33e-3), wholeTone()
			at.Pitch, at.TanSlant, at.Fret, at.Reach = 246.94, tan, fret, 0.1
			bend, err := bendString(w, at)
			require.NoError(t, err)
			o := newOracle(w, at)
			assert.InEpsilon(t, o.distance(at.Rise, 1e-3, 0.1), bend.Distance, 1e-11, "fret %v, t %v", fret, tan)
		}
	}
}

func TestAtRestTheBendIsTheOpenString(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, at := drawBend(t)
		at.Rise = 0
		bend, err := bendString(w, at)
		require.NoError(t, err)
		assert.Zero(t, bend.Force)
		assert.Zero(t, bend.Distance)
		assert.InEpsilon(t, openAt(w, at.Length, at.Pitch), bend.Tension, 1e-15)
	})
}

// The closed form for a string held at its middle without tails, from
// encyclopedia pages citing D. R. Grimes, PLOS ONE 9(7): e102088 (2014):
// f = (1/2L) sqrt((EA + cos(theta) (T - EA))/mu), T and mu before the bend.
// The wanted figures are its arithmetic, no published values. It counts the
// strain from the tuned length, ours from the slack one: its EA is our EA + T.
func TestMidpointBendIsTheClosedForm(t *testing.T) {
	const ea, mu, t0, l = 10306.43, 3.977654e-4, 72.5923, 0.648
	w := wire{LinearDensity: mu * (1 + t0/(ea-t0)), EA: ea - t0, CoreArea: 5.067075e-8}
	require.InEpsilon(t, t0, openAt(w, l, 329.63), 1e-6)
	for _, c := range []struct{ h, freq, cents, tension, bendingForce float64 }{
		{2e-3, 330.0724, 2.322, 72.7886, 0.8986},
		{5e-3, 332.3847, 14.408, 73.8194, 2.2781},
		{10e-3, 340.5094, 56.217, 77.5001, 4.7817},
	} {
		at := midpoint()
		contact := contactOf(t, at)
		at.Rise = contact.Rise(contact.Strain(w.real()), c.h)
		assert.InDelta(t, c.cents, at.Rise, 0.0005)

		theta := math.Atan(2 * c.h / l)
		closed := math.Sqrt((ea+math.Cos(theta)*(t0-ea))/mu) / (2 * l)
		assert.InDelta(t, c.freq, closed, 1e-4)
		assert.InEpsilon(t, closed, 329.63*math.Pow(2, at.Rise/1200), 1e-6)
		// The same formula is about in print with 'T +' for 'EA +': at rest it
		// has the root of a number below 0.
		assert.Less(t, t0+math.Cos(0)*(t0-ea), 0.0)

		bend, err := bendString(w, at)
		require.NoError(t, err)
		assert.InDelta(t, c.h, bend.Distance, 1e-9)
		assert.InDelta(t, c.tension, bend.Tension, 1e-4)
		assert.InDelta(t, c.bendingForce, bend.Force, 1e-4)
		assert.InEpsilon(t, 2*math.Sin(theta)*(t0+ea*(1/math.Cos(theta)-1)), bend.Force, 1e-6)
	}
}

func TestSmallBends(t *testing.T) {
	w, at := steel(0.254e-3), wholeTone()
	o := newOracle(w, at)
	contact := contactOf(t, at)
	e := contact.Strain(w.real())
	// d(ln f)/d(strain) of a straight string: (1/2)(1/e) (1 + e) + 1/2, less the
	// lengthening of what sounds; at y = 1 um only rounding is left of that.
	for _, y := range []float64{1e-4, 1e-6, 1e-8} {
		straight := at
		straight.TanSlant = 0
		c := contactOf(t, straight)
		x := at.Length * (1 - math.Pow(2, -at.Fret/12))
		s := at.Length - x
		growth := y * y / 2 * (1/x + 1/s) / (at.Length + 0.085)
		want := 600 / math.Ln2 * (growth*((1+e)/e+1) - y*y/(s*s))
		assert.InEpsilon(t, want, c.Rise(e, y), 1e-3)
	}
	// On a slanted crown the first effect is the shorter length, linear in y.
	s := at.Length / math.Pow(2, at.Fret/12)
	assert.InEpsilon(t, 1200/math.Ln2*1e-8*at.TanSlant/s, contact.Rise(e, 1e-8), 1e-4)
	assert.InEpsilon(t, o.freq(1e-3)/o.freq(0), math.Pow(2, contact.Rise(e, 1e-3)/1200), 1e-12)
}

func TestStifferWireBendsInLess(t *testing.T) {
	last := math.Inf(1)
	for _, factor := range []float64{1, 10, 1e3, 1e5, 1e7} {
		w, at := steel(0.254e-3), wholeTone()
		at.TanSlant = 0
		w.EA *= factor
		bend, err := bendString(w, at)
		require.NoError(t, err)
		assert.Less(t, bend.Distance, last)
		last = bend.Distance
		if factor >= 1e5 {
			// y^2 = (r - 1) 2 x s R/(k L), all of it tension.
			x := at.Length * (1 - math.Pow(2, -5.0/12))
			s := at.Length - x
			k := w.EA / openAt(w, at.Length, at.Pitch)
			gain := math.Pow(2, 200.0/600) - 1
			assert.InEpsilon(t, math.Sqrt(gain*2*x*s*(at.Length+0.085)/(k*at.Length)), bend.Distance, 1e-4)
			assert.InEpsilon(t, openAt(w, at.Length, at.Pitch)*(1+gain), bend.Tension, 1e-4)
		}
	}
}
