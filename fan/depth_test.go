package fan_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/fan"
)

func TestDropIsASegmentOfACircle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(30, 2000).Draw(t, "radius")
		y := rapid.Float64Range(0, 29).Draw(t, "y")
		drop := fan.Drop(r, y)
		// The edge lies on the circle about the point r below the middle.
		require.InDelta(t, r, math.Hypot(y, r-drop), 1e-9)
		require.Equal(t, drop, fan.Drop(r, -y))
	})
	require.Zero(t, fan.Drop(0, 30), "flat")
}

func sawing() fan.Sawing {
	return fan.Sawing{RadiusNutMM: 300, RadiusLastMM: 400, TangMM: 1.6, ClearanceMM: fan.DefaultClearanceMM, ThicknessMM: 6.5}
}

func TestDepths(t *testing.T) {
	l := mustLayout(t, sixStrings())
	depths, err := l.Depths(sawing())
	require.NoError(t, err)
	require.Len(t, depths, 24)
	last := l.Frets[24].Line.CrossMM
	for i, d := range depths {
		fret := l.Frets[i+1]
		require.Equal(t, i+1, d.Fret)
		require.InDelta(t, 2.0, d.MiddleMM, close9)
		end := func(p fan.Point) float64 {
			r := 300 + 100*p.X/last
			return r - math.Sqrt(r*r-p.Y*p.Y)
		}
		require.InDelta(t, end(fret.Slot.Bass), d.BassDropMM, close9)
		require.InDelta(t, end(fret.Slot.Treble), d.TrebleDropMM, close9)
		require.InDelta(t, 2+end(fret.Slot.Bass), d.BassMM, close9)
		require.InDelta(t, math.Max(d.BassMM, d.TrebleMM), d.SawMM, close9)
		require.InDelta(t, 6.5-d.SawMM, d.LeftUnderMM, close9)
		require.InDelta(t, 6.5-d.BassDropMM, d.LeftAtBassMM, close9)
		require.InDelta(t, 6.5-d.TrebleDropMM, d.LeftAtTrebleMM, close9)
	}
	require.InDelta(t, 400, depths[23].RadiusMM, close9)
}

func TestFlatBoardNeedsOneDepth(t *testing.T) {
	s := sawing()
	s.RadiusNutMM, s.RadiusLastMM, s.ThicknessMM = 0, 0, 0
	depths, err := mustLayout(t, sixStrings()).Depths(s)
	require.NoError(t, err)
	for _, d := range depths {
		require.InDelta(t, 2.0, d.SawMM, close9)
		require.Zero(t, d.LeftUnderMM)
		require.Zero(t, d.RadiusMM)
	}
}

func TestDepthsRefused(t *testing.T) {
	l := mustLayout(t, sixStrings())
	for name, c := range map[string]struct {
		change func(*fan.Sawing)
		wants  []string
	}{
		"radius under half the width": {func(s *fan.Sawing) { s.RadiusNutMM, s.RadiusLastMM = 25, 25 },
			[]string{"neck.radius: the crown's radius is not greater than half the board's width", "take a greater radius"}},
		"compound radius turning under": {func(s *fan.Sawing) { s.RadiusNutMM, s.RadiusLastMM = 400, 25 },
			[]string{"not greater than half the board's width"}},
		"one radius only":   {func(s *fan.Sawing) { s.RadiusLastMM = 0 }, []string{"neck.radius_last: "}},
		"radius in inches":  {func(s *fan.Sawing) { s.RadiusNutMM, s.RadiusLastMM = 12, 12 }, []string{"neck.radius: ", "looks like inches"}},
		"board too thin":    {func(s *fan.Sawing) { s.ThicknessMM = 4 }, []string{"left under the slot of fret", "radius first, then saw to tang and clearance (2.00 mm) along the curve"}},
		"edges too thin":    {func(s *fan.Sawing) { s.RadiusNutMM, s.RadiusLastMM, s.ThicknessMM = 60, 60, 7 }, []string{"nothing is left at the board's edge after radiusing", "goes through the board, by"}},
		"several at once":   {func(s *fan.Sawing) { s.TangMM, s.ClearanceMM, s.ThicknessMM = 0, -1, math.NaN() }, []string{"fret_wire.tang_depth: ", "fret_wire.clearance: ", "blanks.thickness: the board's thickness is not a number"}},
		"barbs within web":  {func(s *fan.Sawing) { s.TangWidthMM, s.BarbWidthMM = 0.6, 0.5 }, []string{"fret_wire.barb_width: "}},
		"kerf of a bandsaw": {func(s *fan.Sawing) { s.KerfMM = 4 }, []string{"fret_wire.kerf: "}},
	} {
		t.Run(name, func(t *testing.T) {
			s := sawing()
			c.change(&s)
			depths, err := l.Depths(s)
			require.Nil(t, depths)
			for _, want := range c.wants {
				require.ErrorContains(t, err, want)
			}
			require.NotContains(t, err.Error(), "NaN")
		})
	}
}

func TestLeastThickness(t *testing.T) {
	l := mustLayout(t, sixStrings())
	for i, radius := range []float64{0, 35, 60, 400, 0, 60, 400, 2000} {
		s := sawing()
		s.RadiusNutMM, s.RadiusLastMM, s.RadiusFirst = radius, radius, i >= 4
		least, err := l.LeastThickness(s)
		require.NoError(t, err)
		s.ThicknessMM = least + 1e-9
		_, err = l.Depths(s)
		require.NoError(t, err)
		s.ThicknessMM = least - 1e-6
		_, err = l.Depths(s)
		require.ErrorContains(t, err, "too little is left")
	}
	_, err := l.LeastThickness(fan.Sawing{})
	require.ErrorContains(t, err, "fret_wire.tang_depth")
}

// With a shallow tang it is the edge that asks for the thickness: 2 mm must be
// left where the crown has fallen farthest, which is the widest corner.
func TestTheEdgeAsksForThickness(t *testing.T) {
	l := mustLayout(t, sixStrings())
	s := fan.Sawing{TangMM: 0.7, ClearanceMM: 0.2, RadiusNutMM: 120, RadiusLastMM: 120, RadiusFirst: true}
	widest := 0.0
	for _, c := range l.Board().Corners {
		widest = math.Max(widest, math.Abs(c.Y))
	}
	least, err := l.LeastThickness(s)
	require.NoError(t, err)
	require.InEpsilon(t, 2+120-math.Sqrt(120*120-widest*widest), least, 1e-12)
	s.ThicknessMM = least - 1e-6
	_, err = l.Depths(s)
	require.ErrorContains(t, err, "left at the board's edge")
}

// A board that is radiused first is sawn to one depth along the curve: less to
// saw, the same left at the slot's ends, and there less will do.
func TestRadiusFirst(t *testing.T) {
	l := mustLayout(t, sixStrings())
	flat := sawing()
	flat.RadiusNutMM, flat.RadiusLastMM, flat.ThicknessMM = 250, 250, 5.5
	curved := flat
	curved.RadiusFirst = true
	a, err := l.Depths(flat)
	require.NoError(t, err)
	b, err := l.Depths(curved)
	require.NoError(t, err)
	for i := range a {
		require.Equal(t, flat.TangMM+flat.ClearanceMM, b[i].SawMM)
		require.Equal(t, [2]float64{b[i].SawMM, b[i].SawMM}, [2]float64{b[i].BassMM, b[i].TrebleMM})
		require.Equal(t, [2]float64{a[i].BassDropMM, a[i].LeftUnderMM}, [2]float64{b[i].BassDropMM, b[i].LeftUnderMM})
		require.Greater(t, a[i].SawMM, b[i].SawMM)
	}
	flat.ThicknessMM, curved.ThicknessMM = 4.8, 4.8
	_, err = l.Depths(flat)
	require.ErrorContains(t, err, "radius first")
	_, err = l.Depths(curved)
	require.NoError(t, err)
	flat.ThicknessMM, curved.ThicknessMM = 3.3, 3.3
	for _, s := range []fan.Sawing{flat, curved} {
		_, err = l.Depths(s)
		require.ErrorContains(t, err, "take a thicker board")
		require.NotContains(t, err.Error(), "radius first")
	}
}

// The board is widest at its body end, where there is no slot.
func TestCrownMustReachTheHeel(t *testing.T) {
	spec := sixStrings()
	spec.BodyEndOverhangMM = 80
	l := mustLayout(t, spec)
	s := sawing()
	s.ThicknessMM = 0
	s.RadiusNutMM = l.Board().Corners[1].Y - 0.1
	s.RadiusLastMM = s.RadiusNutMM
	require.Greater(t, s.RadiusNutMM, l.Frets[24].Slot.Bass.Y)
	_, err := l.Depths(s)
	require.ErrorContains(t, err, "neck.radius: the crown's radius is not greater than half the board's width")
	for key, ends := range map[string][2]float64{"neck.radius_nut": {12, 300}, "neck.radius_last": {300, 20}} {
		s.RadiusNutMM, s.RadiusLastMM = ends[0], ends[1]
		_, err = l.Depths(s)
		require.ErrorContains(t, err, key+": the crown's radius", "the end that is too round is named")
	}
}

func TestKerf(t *testing.T) {
	for _, c := range []struct {
		name              string
		kerf, tang, barbs float64
		want              fan.KerfFit
	}{
		{"all three", 0.58, 0.5, 0.8, fan.KerfHolds},
		{"barbs not known", 0.58, 0.5, 0, fan.KerfHolds},
		{"a hair narrower", 0.58, 0.6, 0.8, fan.KerfHolds},
		{"wedges", 0.5, 0.58, 0.8, fan.KerfWedges},
		{"loose", 0.8, 0.58, 0.8, fan.KerfLoose},
		{"web not known, loose", 0.9, 0, 0.8, fan.KerfLoose},
		{"web not known", 0.58, 0, 0.8, fan.KerfUnknown},
		{"no kerf", 0, 0.58, 0.8, fan.KerfUnknown},
		{"no wire", 0.58, 0, 0, fan.KerfUnknown},
	} {
		got := fan.Sawing{KerfMM: c.kerf, TangWidthMM: c.tang, BarbWidthMM: c.barbs}.Kerf()
		assert.Equal(t, c.want, got, c.name)
		assert.NotEmpty(t, got.String())
	}
}
