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
		drop := fan.Drop(unit.MM(r), unit.MM(y))
		// The edge lies on the circle about the point r below the middle.
		require.InDelta(t, r, math.Hypot(y, r-drop.MM()), 1e-9)
		require.Equal(t, drop, fan.Drop(unit.MM(r), unit.MM(-y)))
	})
	require.Zero(t, fan.Drop(0, unit.MM(30)), "flat")
}

// radiused gives the six strings' layout with a fretboard radius, or two, mm.
func radiused(t require.TestingT, nut, last float64) *fan.Layout {
	spec := sixStrings()
	spec.RadiusNut, spec.RadiusLast = unit.MM(nut), unit.MM(last)
	l, err := fan.New(spec)
	require.NoError(t, err)
	return l
}

// sawing has a tang and its clearance of 2 mm together.
func sawing(first bool) fan.Sawing {
	s := fan.Sawing{FretWire: fan.DefaultFretWire(), RadiusFirst: first}
	s.TangDepth = unit.MM(1.6)
	return s
}

func depths(t require.TestingT, l *fan.Layout, s fan.Sawing) []fan.SlotDepth {
	list, err := l.Depths(s)
	require.NoError(t, err)
	return list
}

func TestDepths(t *testing.T) {
	l := radiused(t, 300, 400)
	flat, curved := depths(t, l, sawing(false)), depths(t, l, sawing(true))
	require.Len(t, flat, 24)
	drop := func(p fan.Point) unit.Length {
		r := 300 + 100*float64(p.X/l.Frets[24].Line.Cross)
		return unit.MM(r - math.Sqrt(r*r-p.Y.MM()*p.Y.MM()))
	}
	for i, d := range flat {
		slot := l.Frets[i+1].Slot
		require.Equal(t, i+1, d.Fret)
		near(t, max(drop(slot.Bass), drop(slot.Treble)), d.Drop)
		near(t, unit.MM(2)+d.Drop, d.Saw)
		// Radiused first, it is one depth along the curve.
		near(t, unit.MM(2), curved[i].Saw)
		near(t, d.Drop, curved[i].Drop)
	}
	for _, d := range depths(t, radiused(t, 0, 0), sawing(false)) {
		near(t, unit.MM(2), d.Saw, "a flat board needs one depth")
	}
}

// The board is widest at its body end, where there is no slot.
func TestRadiusMustReachTheBodyEnd(t *testing.T) {
	l := radiused(t, 0, 0)
	corner := l.Board().Corners[1].Y.MM()
	require.Greater(t, corner-0.01, l.Frets[24].Slot.Bass.Y.MM())
	for key, radii := range map[string][3]float64{"neck.radius": {corner - 0.01}, "neck.radius_nut": {0, 12, 300}, "neck.radius_last": {0, 300, 20}} {
		l.Spec.Radius, l.Spec.RadiusNut, l.Spec.RadiusLast = unit.MM(radii[0]), unit.MM(radii[1]), unit.MM(radii[2])
		_, err := l.Depths(sawing(false))
		require.ErrorContains(t, err, key+": the fretboard radius is not greater than half the board's width", "the end that is too round is named")
	}
	l.Spec.Radius, l.Spec.RadiusNut, l.Spec.RadiusLast = unit.MM(corner+0.01), 0, 0
	depths(t, l, sawing(false))
}

// Enough is left under every slot, 1.5 mm, or 0.8 mm under its ends where it is sawn
// along the curve, and 2 mm at the widest corner after radiusing; nowhere more than
// needed.
func TestLeastThickness(t *testing.T) {
	for _, radius := range []float64{0, 35, 60, 120, 400, 2000} {
		l := radiused(t, radius, radius)
		fall := func(y unit.Length) unit.Length {
			if radius == 0 {
				return 0
			}
			return unit.MM(radius - math.Sqrt(radius*radius-y.MM()*y.MM()))
		}
		for _, tang := range []float64{1.6, 0.5} {
			s := sawing(false)
			s.TangDepth = unit.MM(tang)
			deep, slot, edge := s.TangDepth+s.Clearance, fall(l.Frets[24].Slot.Bass.Y), unit.MM(2)+fall(l.Board().Corners[1].Y)
			near(t, max(edge, deep+unit.MM(1.5)+slot), l.LeastThickness(s, depths(t, l, s)), "%v", radius)
			s.RadiusFirst = true
			near(t, max(edge, deep+unit.MM(1.5), deep+unit.MM(0.8)+slot), l.LeastThickness(s, depths(t, l, s)), "%v", radius)
		}
	}
}

func TestBlanksTooThin(t *testing.T) {
	l := radiused(t, 250, 250)
	for _, c := range []struct {
		thick float64
		first bool
		want  string
	}{
		{5.5, false, ""}, {4.8, true, ""}, {0, false, ""},
		{4.8, false, `blanks.thickness: too thin for slots and radius, which take at least 5.1`},
		{4.8, false, `; radius first, then saw along the curve (--radius-first), which takes 4.4`},
		{3.3, false, "; take a thicker board"}, {3.3, true, "; take a thicker board"},
	} {
		s := sawing(c.first)
		fit := l.FitBlanks([]fan.Blank{{Length: 1, Width: 1, Thickness: unit.MM(c.thick)}}, s, depths(t, l, s))[0]
		require.Equal(t, c.want == "", fit.Enough())
		if c.want != "" {
			require.ErrorContains(t, fit.Thin, c.want)
			last := depths(t, l, s)[23]
			near(t, unit.MM(c.thick-2)-last.Drop, fit.LeftUnder)
			near(t, unit.MM(c.thick)-last.Drop, fit.LeftAtEdge)
		}
	}
	require.True(t, l.FitBlanks([]fan.Blank{{Length: 1, Width: 1, Thickness: unit.MM(1)}}, sawing(false), nil)[0].Enough(), "the tang is not known")
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

func TestWire(t *testing.T) {
	l := mustLayout(t, sixStrings())
	w, err := l.Wire(fan.FretWire{Overhang: unit.MM(3), Spare: unit.Percent(25)})
	require.NoError(t, err)
	require.Len(t, w.Cuts, 24)
	sum := unit.Length(0)
	for i, cut := range w.Cuts {
		require.Equal(t, i+1, cut.Fret)
		near(t, l.Frets[i+1].Slot.Length+unit.MM(6), cut.Length)
		sum += cut.Length
	}
	near(t, sum, w.Sum)
	near(t, 1.25*sum, w.Total)
	_, err = l.Wire(fan.FretWire{TangWidth: unit.MM(0.6), BarbWidth: unit.MM(0.5)})
	require.ErrorContains(t, err, "fret_wire.barb_width: the barbs are narrower than the tang")
}

func TestFences(t *testing.T) {
	l := mustLayout(t, sixStrings())
	exact, zero := l.Fences(0), l.Frets[0].Slot
	for i, f := range l.Fences(unit.MM(0.6)) {
		slot := l.Frets[i+1].Slot
		require.Equal(t, i+1, f.Fret)
		near(t, slot.Bass.Distance(zero.Bass), f.BassAlongEdge)
		near(t, slot.Treble.Distance(zero.Treble), f.TrebleAlongEdge)
		near(t, exact[i].BassAlongEdge, exact[i].FaceBassAlongEdge, "no kerf: the fence is the slot")
		// The fence's face is parallel to the slot, 0.3 mm nearer the nut, square to it.
		along := func(from, to fan.Point, way unit.Length) complex128 {
			v := number(to) - number(from)
			return number(from) + v*complex(float64(way/from.Distance(to)), 0)
		}
		b, tr := along(zero.Bass, slot.Bass, f.FaceBassAlongEdge), along(zero.Treble, slot.Treble, f.FaceTrebleAlongEdge)
		d, v := b-tr, number(slot.Bass)-tr
		require.InDelta(t, 0.3, (real(v)*imag(d)-imag(v)*real(d))/math.Hypot(real(d), imag(d)), close9)
		require.InDelta(t, l.Frets[i+1].Line.TanSlant, real(d)/imag(d), close9)
	}
}

func TestZeroFretIsSawnLikeTheOthers(t *testing.T) {
	spec := sixStrings()
	spec.ZeroFret, spec.NutShelf, spec.RadiusNut, spec.RadiusLast = true, unit.MM(8), unit.MM(250), unit.MM(400)
	l := mustLayout(t, spec)
	require.Len(t, l.Slotted(), 25)
	require.Equal(t, l.Nut, l.Slotted()[0].Line, "on the nut line")

	fences := l.Fences(unit.MM(0.6))
	require.Len(t, fences, 25)
	require.Equal(t, [3]float64{}, [3]float64{float64(fences[0].Fret), fences[0].BassAlongEdge.MM(), fences[0].TrebleAlongEdge.MM()})
	require.Negative(t, fences[0].FaceBassAlongEdge, "behind the nut line")
	require.Negative(t, fences[0].FaceTrebleAlongEdge)

	first := depths(t, l, sawing(false))[0]
	require.Zero(t, first.Fret)
	slot := l.Frets[0].Slot
	near(t, unit.MM(2)+fan.Drop(unit.MM(250-150*float64(-slot.Bass.X/l.Frets[24].Line.Cross)), slot.Bass.Y), first.Saw)

	wire, err := l.Wire(fan.FretWire{Overhang: unit.MM(3)})
	require.NoError(t, err)
	require.Len(t, wire.Cuts, 25)
	near(t, slot.Length+unit.MM(6), wire.Cuts[0].Length)
}
