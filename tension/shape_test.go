package tension_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/tension"
)

func mustBend(t require.TestingT, w wire, at bendAt) bent {
	bend, err := bendString(w, at)
	require.NoError(t, err)
	return bend
}

func TestBendDistanceDoesNotAskForTheGauge(t *testing.T) {
	at := wholeTone()
	thin := mustBend(t, steel(0.2e-3), at)
	for _, d := range []float64{0.23e-3, 0.254e-3, 0.3e-3, 0.4318e-3, 0.6e-3} {
		w := steel(d)
		bend := mustBend(t, w, at)
		// EA/w is E/rho in every gauge but for its rounding.
		assert.InEpsilon(t, thin.Distance, bend.Distance, 1e-14)
		assert.InEpsilon(t, thin.Force*math.Pow(d/0.2e-3, 2), bend.Force, 1e-13, "bending force goes with the area")
	}
}

func TestBendGrowsWithLength(t *testing.T) {
	for _, tail := range []float64{0, 0.085, 0.3} {
		for _, fret := range []float64{5, 12} {
			at := wholeTone()
			at.TanSlant, at.Fret, at.Reach, at.Tails = 0, fret, 0.2, ends{Nut: tail}
			lnForce := func(length float64) float64 {
				at.Length = length
				return math.Log(mustBend(t, steel(0.254e-3), at).Force)
			}
			const h = 1e-4
			power := (lnForce(0.648*(1+h)) - lnForce(0.648*(1-h))) / (2 * h)
			// About: the law is that of small bends.
			assert.InDelta(t, 2.5+0.5*0.648/(0.648+tail), power, 0.05, "tail %v, fret %v", tail, fret)
		}
	}
}

// The slant's effect at fret 24 of a 700/650 fan whose fret 24 stands at a
// tangent of 0.45, which a neutral fret near 3 makes on a narrow neck.
func TestSlantChangesThePush(t *testing.T) {
	for _, length := range []float64{0.65, 0.70} {
		at := wholeTone()
		at.Length, at.Pitch, at.Fret, at.Reach = length, 247.0*0.65/length, 24, 0.2
		bendingForce := func(tan float64) float64 {
			at.TanSlant = tan
			return mustBend(t, steel(0.254e-3), at).Force
		}
		assert.InDelta(t, -0.20, bendingForce(0.45)/bendingForce(0)-1, 0.005)
		assert.InDelta(t, +0.29, bendingForce(-0.45)/bendingForce(0)-1, 0.005)
	}
}

func TestAwayFromTheSaddleThePitchFallsFirst(t *testing.T) {
	w, at := steel(0.254e-3), wholeTone()
	at.TanSlant, at.Fret, at.Rise = -0.5, 24, 5
	contact := tension.NewContact(at.real())
	strain := contact.Strain(w.real())
	assert.Less(t, contact.Rise(strain, 1e-3), 0.0)
	bend := mustBend(t, w, at)
	assert.InDelta(t, 5, contact.Rise(strain, bend.Distance), 1e-9)

	at.Reach = 1e-3 // the edge lies in the fall
	var edge *tension.NotReachableError
	_, err := bendString(w, at)
	require.ErrorAs(t, err, &edge)
	assert.Less(t, edge.EdgeRise.Value(), 0.0)
}

func TestTheEdgeOfTheBoard(t *testing.T) {
	w, at := steel(0.254e-3), wholeTone()
	distance := mustBend(t, w, at).Distance
	at.Reach = distance * (1 + 1e-9)
	assert.InEpsilon(t, distance, mustBend(t, w, at).Distance, 1e-12, "just inside")
	for _, reach := range []float64{distance * (1 - 1e-7), distance / 2, 0} {
		at.Reach = reach
		_, err := bendString(w, at)
		var edge *tension.NotReachableError
		require.ErrorAs(t, err, &edge)
		require.ErrorIs(t, err, tension.ErrNotReachable)
		assert.False(t, edge.Breaks)
		assert.Equal(t, reach, edge.Edge.M())
		o := newOracle(w, at)
		assert.InDelta(t, 1200*math.Log2(o.freq(reach)/o.freq(0)), edge.EdgeRise.Value(), 1e-9)
	}
	at.Reach = 0.009
	_, err := bendString(w, at)
	assert.Regexp(t, `^a bend of 200 cents is not reachable: at the board's edge, 9\.0 mm away, it has risen \d+ cents$`, err)
}

// On a steep crown the contact reaches the saddle or the nut before the edge.
func TestTheEndOfTheString(t *testing.T) {
	for _, c := range []struct{ fret, tan, end float64 }{
		{24, 2, 0.648 / 4 / 2},
		{1, -2, 0.648 * (1 - math.Pow(2, -1.0/12)) / 2},
	} {
		w, at := steel(0.254e-3), wholeTone()
		at.Fret, at.TanSlant, at.Reach, at.Rise = c.fret, c.tan, 1.5*c.end, 6000
		var edge *tension.NotReachableError
		_, err := bendString(w, at)
		require.ErrorAs(t, err, &edge)
		assert.InEpsilon(t, c.end, edge.Edge.M(), 1e-12)
		o := newOracle(w, at)
		assert.InDelta(t, 1200*math.Log2(o.freq(c.end)/o.freq(0)), edge.EdgeRise.Value(), 1e-6)
	}
}

func TestPastBreaking(t *testing.T) {
	w, at := steel(0.254e-3), wholeTone()
	bent := mustBend(t, w, at).Tension / w.CoreArea
	w.Strength = bent * 1.001
	mustBend(t, w, at)
	w.Strength = bent / 1.25
	_, err := bendString(w, at)
	var snap *tension.NotReachableError
	require.ErrorAs(t, err, &snap)
	assert.True(t, snap.Breaks)
	assert.InEpsilon(t, 1.25, float64(snap.Breaking), 1e-12)
	assert.EqualError(t, err, "a bend of 200 cents is not reachable: the core would stand at 125 % of its breaking stress")
}

func TestBendRefuses(t *testing.T) {
	for ea, want := range map[float64]error{0: tension.ErrNoStiffness, 1: tension.ErrStretch} {
		w := steel(0.254e-3)
		w.EA = ea
		bend, err := bendString(w, wholeTone())
		assert.ErrorIs(t, err, want)
		assert.Zero(t, bend)
	}
}
