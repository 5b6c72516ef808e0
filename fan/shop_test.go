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

func inside(b fan.Rectangle, p fan.Point) bool {
	return p.X.MM() >= b.MinX.MM()-close9 && p.X.MM() <= b.MaxX.MM()+close9 && p.Y.MM() >= b.MinY.MM()-close9 && p.Y.MM() <= b.MaxY.MM()+close9
}

func TestBoardAndBlank(t *testing.T) {
	overNecks(t, nil, func(t *rapid.T, l *fan.Layout) {
		spec := l.Spec
		board, blank := l.Board(), l.LeastBlank()
		touched := [4]float64{math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1)}
		for _, p := range board.Corners {
			require.True(t, inside(blank, p))
			for i, room := range []float64{p.X.MM() - blank.MinX.MM(), blank.MaxX.MM() - p.X.MM(), p.Y.MM() - blank.MinY.MM(), blank.MaxY.MM() - p.Y.MM()} {
				touched[i] = math.Min(touched[i], room)
			}
		}
		for _, room := range touched {
			require.InDelta(t, spec.SawAllowance.MM(), room, close9, "no smaller rectangle holds it")
		}
		for _, fret := range l.Frets {
			require.True(t, inside(blank, fret.Slot.Bass) && inside(blank, fret.Slot.Treble))
		}
		checkEnds(t, l, board)
	})
}

// checkEnds measures the nut shelf square to the nut line, and the body end's
// overhang square to the body end.
func checkEnds(t *rapid.T, l *fan.Layout, board fan.Board) {
	off := func(p fan.Point, line fan.Across) float64 {
		d := number(line.Bass) - number(line.Treble)
		v := number(p) - number(line.Treble)
		return math.Abs(real(v)*imag(d)-imag(v)*real(d)) / math.Hypot(real(d), imag(d))
	}
	for _, p := range []fan.Point{board.Corners[0], board.Corners[3]} {
		require.InDelta(t, l.Spec.NutShelf.MM(), off(p, l.Nut), close9)
	}
	last := l.Frets[l.Spec.Frets]
	bodyEnd := []fan.Point{board.Corners[1], board.Corners[2]}
	if l.Spec.BodyEnd == fan.AlongLastFret {
		for _, p := range bodyEnd {
			require.InDelta(t, l.Spec.BodyEndOverhang.MM(), off(p, last.Line), close9)
		}
		return
	}
	require.InDelta(t, bodyEnd[0].X.MM(), bodyEnd[1].X.MM(), close9)
	rear := math.Max(last.Slot.Bass.X.MM(), last.Slot.Treble.X.MM())
	require.InDelta(t, rear+l.Spec.BodyEndOverhang.MM(), bodyEnd[0].X.MM(), close9)
}

func TestFit(t *testing.T) {
	l := mustLayout(t, sixStrings())
	b := l.LeastBlank()
	got := b.Fit([]fan.Blank{
		{Name: "just", Length: b.Length, Width: b.Width},
		{Name: "roomy", Length: unit.MM(b.Length.MM() + 30), Width: unit.MM(b.Width.MM() + 8), Thickness: unit.MM(6)},
		{Name: "short", Length: unit.MM(b.Length.MM() - 0.5), Width: unit.MM(100)},
		{Name: "narrow", Length: unit.MM(900), Width: unit.MM(b.Width.MM() - 1)},
		{Name: "none", Length: unit.MM(math.NaN()), Width: unit.MM(90)},
		{Name: "of no length", Width: unit.MM(90)},
	})
	oks := []bool{}
	for _, s := range got {
		oks = append(oks, s.Fits)
	}
	require.Equal(t, []bool{true, true, false, false, false, false}, oks)
	require.Equal(t, [2]unit.Length{}, [2]unit.Length{got[5].SpareLength, got[5].SpareWidth}, "nothing is said of no blank")
	require.Equal(t, [2]bool{true, true}, [2]bool{got[2].Near, got[3].Near}, "within the saw allowance of 2 mm a side")
	require.InDelta(t, 30, got[1].SpareLength.MM(), close9)
	require.InDelta(t, 8, got[1].SpareWidth.MM(), close9)
	require.InDelta(t, -0.5, got[2].SpareLength.MM(), close9)
	require.InDelta(t, -1, got[3].SpareWidth.MM(), close9)
	// Laid as said, the board's corners keep the allowance and half the spare.
	roomy := got[1]
	for _, p := range l.Board().Corners {
		x, y := roomy.NutCrossFromEnd.MM()+p.X.MM(), roomy.CentreFromBassEdge.MM()-p.Y.MM()
		require.GreaterOrEqual(t, x, 2+15-close9)
		require.LessOrEqual(t, x, roomy.Blank.Length.MM()-2-15+close9)
		require.GreaterOrEqual(t, y, 2+4-close9)
		require.LessOrEqual(t, y, roomy.Blank.Width.MM()-2-4+close9)
	}
	requireSound(t, got[:4])
}

func TestWire(t *testing.T) {
	l := mustLayout(t, sixStrings())
	wire := fan.FretWire{Overhang: unit.MM(3), Spare: unit.Percent(25)}
	w, err := l.Wire(wire)
	require.NoError(t, err)
	require.Len(t, w.Cuts, 24)
	sum := 0.0
	for i, cut := range w.Cuts {
		require.Equal(t, i+1, cut.Fret)
		require.InDelta(t, l.Frets[i+1].Slot.Length.MM()+6, cut.Length.MM(), close9)
		sum += cut.Length.MM()
	}
	require.InDelta(t, sum, w.Sum.MM(), close9)
	require.InDelta(t, 1.25*sum, w.Total.MM(), close9)
	withZero := *l
	withZero.Spec.ZeroFret = true
	zero, err := withZero.Wire(fan.FretWire{Overhang: unit.MM(3)})
	require.NoError(t, err)
	require.Len(t, zero.Cuts, 25)
	require.InDelta(t, w.Sum.MM()+l.NutBlank.MM()+6, zero.Total.MM(), close9)
	_, err = l.Wire(fan.FretWire{Overhang: unit.MM(-1), Spare: unit.Ratio(math.Inf(1))})
	require.ErrorContains(t, err, "wire.overhang")
	require.ErrorContains(t, err, "wire.spare")
}

// The dots every builder knows: common practice, no source.
func TestDots(t *testing.T) {
	spec := sixStrings()
	l := mustLayout(t, spec)
	frets := func(dots []fan.Dot) (list []int) {
		for _, d := range dots {
			list = append(list, d.Fret)
		}
		return list
	}
	common := []int{3, 5, 7, 9, 12, 12, 15, 17, 19, 21, 24, 24}
	face, side := l.FaceDots(fan.CommonDots(l.Spec.Frets)), l.SideDots(fan.CommonDots(l.Spec.Frets))
	require.Equal(t, common, frets(face))
	require.Equal(t, common, frets(side))
	for i, d := range face {
		before, after := l.Frets[d.Fret-1].Line, l.Frets[d.Fret].Line
		a, b := before.Cross.MM()+d.At.Y.MM()*before.TanSlant, after.Cross.MM()+d.At.Y.MM()*after.TanSlant
		require.InDelta(t, (a+b)/2, d.At.X.MM(), close9, "midway between the fret lines")
		if d.Fret%12 != 0 {
			require.Zero(t, d.At.Y.MM())
			continue
		}
		pair := face[i-i%2:][:2]
		require.InDelta(t, pair[0].At.Y.MM(), -pair[1].At.Y.MM(), close9)
		mid, err := l.LineAt(unit.MM((before.Cross.MM()+after.Cross.MM())/2), 0)
		require.NoError(t, err)
		require.InDelta(t, (mid.Bass.Y.MM()-mid.Treble.Y.MM())/4, math.Abs(d.At.Y.MM()), close9, "a quarter of the outer strings' distance")
	}
	corners := l.Board().Corners
	slope := (corners[1].Y.MM() - corners[0].Y.MM()) / (corners[1].X.MM() - corners[0].X.MM())
	for _, d := range side {
		require.InDelta(t, corners[0].Y.MM()+slope*(d.At.X.MM()-corners[0].X.MM()), d.At.Y.MM(), close9, "on the bass edge")
		require.Greater(t, d.At.X.MM(), l.Frets[d.Fret-1].Slot.Bass.X.MM())
		require.Less(t, d.At.X.MM(), l.Frets[d.Fret].Slot.Bass.X.MM())
	}
}

func TestDotsOfOnesOwn(t *testing.T) {
	spec := sixStrings()
	spec.Frets, spec.Neutral = 14, fan.Neutral{Fret: 5}
	l := mustLayout(t, spec)
	own := fan.Dots{Face: []int{5, 10, 24, 0}, Side: []int{5, 10, 24, 0}, Double: []int{10}}
	face, side := l.FaceDots(own), l.SideDots(own)
	for _, dots := range [][]fan.Dot{face, side} {
		require.Len(t, dots, 3, "fret 24 and the nut are not on the board")
		require.Equal(t, [3]int{5, 10, 10}, [3]int{dots[0].Fret, dots[1].Fret, dots[2].Fret})
	}
	require.Zero(t, face[0].At.Y.MM())
	require.Positive(t, face[1].At.Y.MM())
}

func TestFences(t *testing.T) {
	l := mustLayout(t, sixStrings())
	exact, err := l.Fences(0)
	require.NoError(t, err)
	sawn, err := l.Fences(unit.MM(0.6))
	require.NoError(t, err)
	zero := l.Frets[0].Slot
	for i, f := range sawn {
		slot := l.Frets[i+1].Slot
		require.Equal(t, i+1, f.Fret)
		require.InDelta(t, math.Hypot(slot.Bass.X.MM()-zero.Bass.X.MM(), slot.Bass.Y.MM()-zero.Bass.Y.MM()), f.BassAlongEdge.MM(), close9)
		require.InDelta(t, math.Hypot(slot.Treble.X.MM()-zero.Treble.X.MM(), slot.Treble.Y.MM()-zero.Treble.Y.MM()), f.TrebleAlongEdge.MM(), close9)
		require.InDelta(t, exact[i].BassAlongEdge.MM(), exact[i].FaceBassAlongEdge.MM(), close9, "no kerf: the fence is the slot")
		// The fence is parallel to the slot, 0.3 mm off, square to it.
		d := number(f.FenceBass) - number(f.FenceTreble)
		v := number(slot.Bass) - number(f.FenceTreble)
		require.InDelta(t, 0.3, (real(v)*imag(d)-imag(v)*real(d))/math.Hypot(real(d), imag(d)), close9)
		require.InDelta(t, l.Frets[i+1].Line.TanSlant, real(d)/imag(d), close9)
		require.Less(t, f.FaceBassAlongEdge.MM(), f.BassAlongEdge.MM(), "nearer the nut")
		require.InDelta(t, math.Hypot(real(d), imag(d)), slot.Length.MM(), 0.1)
	}
	_, err = l.Fences(unit.MM(-5))
	require.ErrorContains(t, err, "fret_wire.kerf")
}

func TestSaddles(t *testing.T) {
	l := mustLayout(t, sixStrings())
	backs := []fan.Compensation{{unit.MM(1), unit.MM(1.4)}, {unit.MM(1.5), unit.MM(2)}, {unit.MM(2), unit.MM(2.6)}, {unit.MM(1.8), unit.MM(2.4)}, {unit.MM(2.2), unit.MM(3)}, {unit.MM(3), unit.MM(4.2)}}
	s, err := l.Saddles(backs)
	require.NoError(t, err)
	require.InDelta(t, -1, s.Forward.MM(), close9)
	require.InDelta(t, 5.2, s.Rear.MM(), close9)
	require.InDelta(t, 6.2, s.Need.MM(), close9)
	for i, p := range s.Points {
		line := l.Strings[i]
		from := func(q fan.Point) float64 { return math.Hypot(q.X.MM()-line.Nut.X.MM(), q.Y.MM()-line.Nut.Y.MM()) }
		require.InDelta(t, line.Length.MM()+backs[i].Lo.MM(), from(p.Least), close9)
		require.InDelta(t, line.Length.MM()+backs[i].Hi.MM(), from(p.Most), close9)
		require.InDelta(t, line.Length.MM()-1, from(p.Foremost), close9)
		require.InDelta(t, p.FromNut.MM(), from(p.At), close9)
		require.InDelta(t, p.FromNut.MM(), line.Length.MM()+backs[i].Middle().MM(), close9)
		require.Equal(t, p.At.Y.MM(), p.Out.MM())
		require.InDelta(t, p.At.X.MM()-l.Frets[12].Line.Cross.MM(), p.Along12.MM(), close9)
		require.InDelta(t, p.At.X.MM()-l.Frets[24].Line.Cross.MM(), p.AlongLast.MM(), close9)
		require.InDelta(t, p.At.X.MM()-l.Board().BodyEnd.Cross.MM(), p.AlongBodyEnd.MM(), close9)
	}
	forward, err := l.Saddles([]fan.Compensation{{unit.MM(-2), 0}, {0, unit.MM(1)}, {0, unit.MM(1)}, {0, unit.MM(1)}, {0, unit.MM(1)}, {0, unit.MM(1)}})
	require.NoError(t, err)
	assert.InDelta(t, -3, forward.Forward.MM(), close9)
	_, err = l.Saddles(backs[:5])
	require.ErrorContains(t, err, "another number than the strings")
	backs[2] = fan.Compensation{Lo: unit.MM(3), Hi: unit.MM(2)}
	backs[3] = fan.Compensation{Lo: unit.MM(math.NaN()), Hi: unit.MM(60)}
	_, err = l.Saddles(backs)
	for _, want := range []string{"string 3 has its ends exchanged", "string 4 is not a number", "string 4 is out of range"} {
		require.ErrorContains(t, err, want)
	}
}
