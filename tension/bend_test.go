package tension_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/tension"
)

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
		contact := tension.NewContact(at.real())
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
