package fan_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/unit"
	"scalepair/fan"
)

func TestDropIsASegmentOfACircle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(30, 2000).Draw(t, "radius")
		y := rapid.Float64Range(0, 29).Draw(t, "y")
		drop := fan.Drop(unit.MM(r), unit.MM(y)).MM()
		// The edge lies on the circle about the point r below the middle.
		require.InDelta(t, r, math.Hypot(y, r-drop), 1e-9)
		require.Equal(t, drop, fan.Drop(unit.MM(r), unit.MM(-y)).MM())
	})
	require.Zero(t, fan.Drop(0, unit.MM(30)).MM(), "flat")
}

// sawn is sawing with the board's radii.
type sawn struct {
	fan.Sawing
	RadiusNut, RadiusLast unit.Length
}

func (s sawn) on(l *fan.Layout) *fan.Layout {
	l.Spec.RadiusNut, l.Spec.RadiusLast = s.RadiusNut, s.RadiusLast
	return l
}

func (s sawn) depths(l *fan.Layout) ([]fan.SlotDepth, error) { return s.on(l).Depths(s.Sawing) }

func (s sawn) least(l *fan.Layout) (unit.Length, error) { return s.on(l).LeastThickness(s.Sawing) }

func sawing() sawn {
	s := sawn{RadiusNut: unit.MM(300), RadiusLast: unit.MM(400)}
	s.FretWire = fan.DefaultFretWire()
	s.TangDepth, s.Thickness = unit.MM(1.6), unit.MM(6.5)
	return s
}

func TestDepths(t *testing.T) {
	l := mustLayout(t, sixStrings())
	depths, err := sawing().depths(l)
	require.NoError(t, err)
	require.Len(t, depths, 24)
	last := l.Frets[24].Line.Cross.MM()
	for i, d := range depths {
		fret := l.Frets[i+1]
		require.Equal(t, i+1, d.Fret)
		require.InDelta(t, 2.0, d.Middle.MM(), close9)
		end := func(p fan.Point) float64 {
			r := 300 + 100*p.X.MM()/last
			return r - math.Sqrt(r*r-p.Y.MM()*p.Y.MM())
		}
		require.InDelta(t, end(fret.Slot.Bass), d.BassDrop.MM(), close9)
		require.InDelta(t, end(fret.Slot.Treble), d.TrebleDrop.MM(), close9)
		require.InDelta(t, 2+end(fret.Slot.Bass), d.Bass.MM(), close9)
		require.InDelta(t, math.Max(d.Bass.MM(), d.Treble.MM()), d.Saw.MM(), close9)
		require.InDelta(t, 6.5-d.Saw.MM(), d.LeftUnder.MM(), close9)
		require.InDelta(t, 6.5-d.BassDrop.MM(), d.LeftAtBass.MM(), close9)
		require.InDelta(t, 6.5-d.TrebleDrop.MM(), d.LeftAtTreble.MM(), close9)
	}
	require.InDelta(t, 400, depths[23].Radius.MM(), close9)
}

func TestFlatBoardNeedsOneDepth(t *testing.T) {
	s := sawing()
	s.RadiusNut, s.RadiusLast, s.Thickness = 0, 0, 0
	depths, err := s.depths(mustLayout(t, sixStrings()))
	require.NoError(t, err)
	for _, d := range depths {
		require.InDelta(t, 2.0, d.Saw.MM(), close9)
		require.Zero(t, d.LeftUnder.MM())
		require.Zero(t, d.Radius.MM())
	}
}

func TestDepthsRefused(t *testing.T) {
	l := mustLayout(t, sixStrings())
	for name, c := range map[string]struct {
		change func(*sawn)
		wants  []string
	}{
		"radius under half the width": {func(s *sawn) { s.RadiusNut, s.RadiusLast = unit.MM(25), unit.MM(25) },
			[]string{"neck.radius_nut: the fretboard radius is not greater than half the board's width", "take a greater radius"}},
		"compound radius turning under": {func(s *sawn) { s.RadiusNut, s.RadiusLast = unit.MM(400), unit.MM(25) },
			[]string{"not greater than half the board's width"}},
		"one radius only":            {func(s *sawn) { s.RadiusLast = 0 }, []string{"neck.radius_last: "}},
		"one of two radii in inches": {func(s *sawn) { s.RadiusNut, s.RadiusLast = unit.MM(400), unit.MM(12) }, []string{"the fretboard radius is out of range (\"12 mm\")"}},
		"radius in inches":           {func(s *sawn) { s.RadiusNut, s.RadiusLast = unit.MM(12), unit.MM(12) }, []string{"neck.radius_nut: "}},
		"board too thin":             {func(s *sawn) { s.Thickness = unit.MM(4) }, []string{"left under the slot of fret", "radius first, then saw to tang and clearance (2.00 mm) along the curve"}},
		"edges too thin":             {func(s *sawn) { s.RadiusNut, s.RadiusLast, s.Thickness = unit.MM(60), unit.MM(60), unit.MM(7) }, []string{"nothing is left at the board's edge after radiusing", "goes through the board, by"}},
		"several at once":            {func(s *sawn) { s.TangDepth, s.Clearance, s.Thickness = 0, unit.MM(-1), unit.MM(math.NaN()) }, []string{"fret_wire.tang_depth: ", "fret_wire.clearance: ", "blanks.thickness: the board's thickness is not a number"}},
		"barbs within web":           {func(s *sawn) { s.TangWidth, s.BarbWidth = unit.MM(0.6), unit.MM(0.5) }, []string{"fret_wire.barb_width: "}},
		"kerf below 0":               {func(s *sawn) { s.Kerf = unit.MM(-4) }, []string{"fret_wire.kerf: "}},
	} {
		t.Run(name, func(t *testing.T) {
			s := sawing()
			c.change(&s)
			depths, err := s.depths(l)
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
		s.RadiusNut, s.RadiusLast, s.RadiusFirst = unit.MM(radius), unit.MM(radius), i >= 4
		least, err := s.least(l)
		require.NoError(t, err)
		s.Thickness = least + unit.MM(1e-9)
		_, err = s.depths(l)
		require.NoError(t, err)
		s.Thickness = least - unit.MM(1e-6)
		_, err = s.depths(l)
		require.ErrorContains(t, err, "too little is left")
	}
	_, err := l.LeastThickness(fan.Sawing{})
	require.ErrorContains(t, err, "fret_wire.tang_depth")
}

// With a shallow tang it is the edge that asks for the thickness: 2 mm must be
// left where the crown has fallen farthest, which is the widest corner.
func TestTheEdgeAsksForThickness(t *testing.T) {
	l := mustLayout(t, sixStrings())
	s := sawing()
	s.TangDepth, s.Clearance, s.RadiusNut, s.RadiusLast, s.RadiusFirst = unit.MM(0.7), unit.MM(0.2), unit.MM(120), unit.MM(120), true
	widest := 0.0
	for _, c := range l.Board().Corners {
		widest = math.Max(widest, math.Abs(c.Y.MM()))
	}
	least, err := s.least(l)
	require.NoError(t, err)
	require.InEpsilon(t, 2+120-math.Sqrt(120*120-widest*widest), least.MM(), 1e-12)
	s.Thickness = least - unit.MM(1e-6)
	_, err = s.depths(l)
	require.ErrorContains(t, err, "left at the board's edge")
}

// A board that is radiused first is sawn to one depth along the curve: less to
// saw, the same left at the slot's ends, and there less is enough.
func TestRadiusFirst(t *testing.T) {
	l := mustLayout(t, sixStrings())
	flat := sawing()
	flat.RadiusNut, flat.RadiusLast, flat.Thickness = unit.MM(250), unit.MM(250), unit.MM(5.5)
	curved := flat
	curved.RadiusFirst = true
	a, err := flat.depths(l)
	require.NoError(t, err)
	b, err := curved.depths(l)
	require.NoError(t, err)
	for i := range a {
		require.Equal(t, flat.TangDepth.MM()+flat.Clearance.MM(), b[i].Saw.MM())
		require.Equal(t, [2]float64{b[i].Saw.MM(), b[i].Saw.MM()}, [2]float64{b[i].Bass.MM(), b[i].Treble.MM()})
		require.Equal(t, [2]float64{a[i].BassDrop.MM(), a[i].LeftUnder.MM()}, [2]float64{b[i].BassDrop.MM(), b[i].LeftUnder.MM()})
		require.Greater(t, a[i].Saw.MM(), b[i].Saw.MM())
	}
	flat.Thickness, curved.Thickness = unit.MM(4.8), unit.MM(4.8)
	_, err = flat.depths(l)
	require.ErrorContains(t, err, "radius first")
	_, err = curved.depths(l)
	require.NoError(t, err)
	flat.Thickness, curved.Thickness = unit.MM(3.3), unit.MM(3.3)
	for _, s := range []sawn{flat, curved} {
		_, err = s.depths(l)
		require.ErrorContains(t, err, "take a thicker board")
		require.NotContains(t, err.Error(), "radius first")
	}
}

// The board is widest at its body end, where there is no slot.
func TestRadiusMustReachTheBodyEnd(t *testing.T) {
	spec := sixStrings()
	spec.BodyEndOverhang = unit.MM(80)
	l := mustLayout(t, spec)
	s := sawing()
	s.Thickness = 0
	s.RadiusNut = unit.MM(l.Board().Corners[1].Y.MM() - 0.1)
	s.RadiusLast = s.RadiusNut
	require.Greater(t, s.RadiusNut.MM(), l.Frets[24].Slot.Bass.Y.MM())
	_, err := s.depths(l)
	require.ErrorContains(t, err, "neck.radius_nut: the fretboard radius is not greater than half the board's width")
	for key, ends := range map[string][2]float64{"neck.radius_nut": {12, 300}, "neck.radius_last": {300, 20}} {
		s.RadiusNut, s.RadiusLast = unit.MM(ends[0]), unit.MM(ends[1])
		_, err = s.depths(l)
		require.ErrorContains(t, err, key+": the fretboard radius", "the end that is too round is named")
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
		got := fan.FretWire{Kerf: unit.MM(c.kerf), TangWidth: unit.MM(c.tang), BarbWidth: unit.MM(c.barbs)}.TangInCut()
		assert.Equal(t, c.want, got, c.name)
	}
}
