package fan_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/fan"
)

func inside(b fan.Blank, p fan.Point) bool {
	return p.X >= b.MinX-close9 && p.X <= b.MaxX+close9 && p.Y >= b.MinY-close9 && p.Y <= b.MaxY+close9
}

func TestBoardAndBlank(t *testing.T) {
	overNecks(t, nil, func(t *rapid.T, l *fan.Layout) {
		spec := l.Spec
		board, blank := l.Board(), l.Blank()
		touched := [4]float64{math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1)}
		for _, p := range board.Corners {
			require.True(t, inside(blank, p))
			for i, room := range []float64{p.X - blank.MinX, blank.MaxX - p.X, p.Y - blank.MinY, blank.MaxY - p.Y} {
				touched[i] = math.Min(touched[i], room)
			}
		}
		for _, room := range touched {
			require.InDelta(t, spec.SawAllowanceMM, room, close9, "no smaller rectangle holds it")
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
		require.InDelta(t, l.Spec.NutShelfMM, off(p, l.Nut), close9)
	}
	last := l.Frets[l.Spec.Frets]
	bodyEnd := []fan.Point{board.Corners[1], board.Corners[2]}
	if !l.Spec.BodyEndSquare {
		for _, p := range bodyEnd {
			require.InDelta(t, l.Spec.BodyEndOverhangMM, off(p, last.Line), close9)
		}
		return
	}
	require.InDelta(t, bodyEnd[0].X, bodyEnd[1].X, close9)
	rear := math.Max(last.Slot.Bass.X, last.Slot.Treble.X)
	require.InDelta(t, rear+l.Spec.BodyEndOverhangMM, bodyEnd[0].X, close9)
}

func TestServe(t *testing.T) {
	l := mustLayout(t, sixStrings())
	b := l.Blank()
	got := b.Serve([]fan.Offer{
		{Name: "just", LengthMM: b.LengthMM, WidthMM: b.WidthMM},
		{Name: "roomy", LengthMM: b.LengthMM + 30, WidthMM: b.WidthMM + 8, ThicknessMM: 6},
		{Name: "short", LengthMM: b.LengthMM - 0.5, WidthMM: 100},
		{Name: "narrow", LengthMM: 900, WidthMM: b.WidthMM - 1},
		{Name: "none", LengthMM: math.NaN(), WidthMM: 90},
	})
	oks := []bool{}
	for _, s := range got {
		oks = append(oks, s.OK)
	}
	require.Equal(t, []bool{true, true, false, false, false}, oks)
	require.InDelta(t, 30, got[1].SpareLengthMM, close9)
	require.InDelta(t, 8, got[1].SpareWidthMM, close9)
	require.InDelta(t, -0.5, got[2].SpareLengthMM, close9)
	require.InDelta(t, -1, got[3].SpareWidthMM, close9)
	// Laid as told, the board's corners keep the allowance and half the spare.
	roomy := got[1]
	for _, p := range l.Board().Corners {
		x, y := roomy.NutCrossFromEndMM+p.X, roomy.CentreFromBassEdgeMM-p.Y
		require.GreaterOrEqual(t, x, 2+15-close9)
		require.LessOrEqual(t, x, roomy.Offer.LengthMM-2-15+close9)
		require.GreaterOrEqual(t, y, 2+4-close9)
		require.LessOrEqual(t, y, roomy.Offer.WidthMM-2-4+close9)
	}
	requireSound(t, got[:4])
}

func TestWire(t *testing.T) {
	l := mustLayout(t, sixStrings())
	w, err := l.Wire(3, 0.25)
	require.NoError(t, err)
	require.Len(t, w.Cuts, 24)
	sum := 0.0
	for i, cut := range w.Cuts {
		require.Equal(t, i+1, cut.Fret)
		require.InDelta(t, l.Frets[i+1].Slot.LengthMM+6, cut.LengthMM, close9)
		sum += cut.LengthMM
	}
	require.InDelta(t, sum, w.SumMM, close9)
	require.InDelta(t, 1.25*sum, w.TotalMM, close9)
	withZero := *l
	withZero.Spec.ZeroFret = true
	zero, err := withZero.Wire(3, 0)
	require.NoError(t, err)
	require.Len(t, zero.Cuts, 25)
	require.InDelta(t, w.SumMM+l.NutBlankMM+6, zero.TotalMM, close9)
	_, err = l.Wire(-1, math.Inf(1))
	require.ErrorContains(t, err, "wire.overhang")
	require.ErrorContains(t, err, "wire.spare")
	_, err = l.Wire(3, 3)
	require.ErrorContains(t, err, "the spare share is out of range")
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
	face, side := l.FaceDots(), l.SideDots()
	require.Equal(t, common, frets(face))
	require.Equal(t, common, frets(side))
	for i, d := range face {
		before, after := l.Frets[d.Fret-1].Line, l.Frets[d.Fret].Line
		a, b := before.CrossMM+d.At.Y*before.TanSlant, after.CrossMM+d.At.Y*after.TanSlant
		require.InDelta(t, (a+b)/2, d.At.X, close9, "midway between the fret lines")
		if d.Fret%12 != 0 {
			require.Zero(t, d.At.Y)
			continue
		}
		pair := face[i-i%2:][:2]
		require.InDelta(t, pair[0].At.Y, -pair[1].At.Y, close9)
		mid, err := l.LineAt((before.CrossMM+after.CrossMM)/2, 0)
		require.NoError(t, err)
		require.InDelta(t, (mid.Bass.Y-mid.Treble.Y)/4, math.Abs(d.At.Y), close9, "a quarter of the outer strings' distance")
	}
	corners := l.Board().Corners
	slope := (corners[1].Y - corners[0].Y) / (corners[1].X - corners[0].X)
	for _, d := range side {
		require.InDelta(t, corners[0].Y+slope*(d.At.X-corners[0].X), d.At.Y, close9, "on the bass edge")
		require.Greater(t, d.At.X, l.Frets[d.Fret-1].Slot.Bass.X)
		require.Less(t, d.At.X, l.Frets[d.Fret].Slot.Bass.X)
	}
}

func TestDotsOfOnesOwn(t *testing.T) {
	spec := sixStrings()
	spec.Frets, spec.Neutral = 14, fan.Neutral{Fret: 5}
	l := mustLayout(t, spec)
	face := l.FaceDotsAt([]int{5, 10, 24, 0}, []int{10})
	side := l.SideDotsAt([]int{5, 10, 24, 0}, []int{10})
	for _, dots := range [][]fan.Dot{face, side} {
		require.Len(t, dots, 3, "fret 24 and the nut are not on the board")
		require.Equal(t, [3]int{5, 10, 10}, [3]int{dots[0].Fret, dots[1].Fret, dots[2].Fret})
	}
	require.Zero(t, face[0].At.Y)
	require.Positive(t, face[1].At.Y)
}

func TestFences(t *testing.T) {
	l := mustLayout(t, sixStrings())
	exact, err := l.Fences(0)
	require.NoError(t, err)
	sawn, err := l.Fences(0.6)
	require.NoError(t, err)
	zero := l.Frets[0].Slot
	for i, f := range sawn {
		slot := l.Frets[i+1].Slot
		require.Equal(t, i+1, f.Fret)
		require.InDelta(t, math.Hypot(slot.Bass.X-zero.Bass.X, slot.Bass.Y-zero.Bass.Y), f.BassAlongEdgeMM, close9)
		require.InDelta(t, math.Hypot(slot.Treble.X-zero.Treble.X, slot.Treble.Y-zero.Treble.Y), f.TrebleAlongEdgeMM, close9)
		require.InDelta(t, exact[i].BassAlongEdgeMM, exact[i].FenceBassMM, close9, "no kerf: the fence is the slot")
		// The fence is parallel to the slot, 0.3 mm off, square to it.
		d := number(f.FenceBass) - number(f.FenceTreble)
		v := number(slot.Bass) - number(f.FenceTreble)
		require.InDelta(t, 0.3, (real(v)*imag(d)-imag(v)*real(d))/math.Hypot(real(d), imag(d)), close9)
		require.InDelta(t, l.Frets[i+1].Line.TanSlant, real(d)/imag(d), close9)
		require.Less(t, f.FenceBassMM, f.BassAlongEdgeMM, "nearer the nut")
		require.InDelta(t, math.Hypot(real(d), imag(d)), slot.LengthMM, 0.1)
	}
	_, err = l.Fences(5)
	require.ErrorContains(t, err, "fret_wire.kerf")
}

func TestSaddles(t *testing.T) {
	l := mustLayout(t, sixStrings())
	backs := []fan.Compensation{{1, 1.4}, {1.5, 2}, {2, 2.6}, {1.8, 2.4}, {2.2, 3}, {3, 4.2}}
	s, err := l.Saddles(backs)
	require.NoError(t, err)
	require.InDelta(t, -1, s.ForwardMM, close9)
	require.InDelta(t, 5.2, s.RearMM, close9)
	require.InDelta(t, 6.2, s.NeedMM, close9)
	for i, p := range s.Points {
		line := l.Strings[i]
		from := func(q fan.Point) float64 { return math.Hypot(q.X-line.Nut.X, q.Y-line.Nut.Y) }
		require.InDelta(t, line.LengthMM+backs[i].LoMM, from(p.Least), close9)
		require.InDelta(t, line.LengthMM+backs[i].HiMM, from(p.Most), close9)
		require.InDelta(t, line.LengthMM-1, from(p.Foremost), close9)
		require.InDelta(t, p.FromNutMM, from(p.At), close9)
		require.InDelta(t, p.FromNutMM, line.LengthMM+backs[i].Middle(), close9)
		require.Equal(t, p.At.Y, p.OutMM)
		require.InDelta(t, p.At.X-l.Frets[12].Line.CrossMM, p.Along12MM, close9)
		require.InDelta(t, p.At.X-l.Frets[24].Line.CrossMM, p.AlongLastMM, close9)
		require.InDelta(t, p.At.X-l.Board().BodyEnd.CrossMM, p.AlongBodyEndMM, close9)
	}
	forward, err := l.Saddles([]fan.Compensation{{-2, 0}, {0, 1}, {0, 1}, {0, 1}, {0, 1}, {0, 1}})
	require.NoError(t, err)
	assert.InDelta(t, -3, forward.ForwardMM, close9)
	_, err = l.Saddles(backs[:5])
	require.ErrorContains(t, err, "another number than the strings")
	backs[2] = fan.Compensation{LoMM: 3, HiMM: 2}
	backs[3] = fan.Compensation{LoMM: math.NaN(), HiMM: 60}
	_, err = l.Saddles(backs)
	for _, want := range []string{"string 3 has its ends exchanged", "string 4 is not a number", "string 4 is out of range"} {
		require.ErrorContains(t, err, want)
	}
}
