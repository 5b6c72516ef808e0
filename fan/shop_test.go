package fan_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/fan"
)

func TestBoardAndBlank(t *testing.T) {
	overNecks(t, nil, func(t *rapid.T, l *fan.Layout) {
		board, blank := l.Board(), l.LeastBlank()
		inside := func(p fan.Point) (room [4]float64) {
			room = [4]float64{(p.X - blank.MinX).MM(), (blank.MaxX - p.X).MM(), (p.Y - blank.MinY).MM(), (blank.MaxY - p.Y).MM()}
			for _, r := range room {
				require.Greater(t, r, -close9)
			}
			return room
		}
		touched := inside(board.Corners[0])
		for _, p := range board.Corners[1:] {
			for i, room := range inside(p) {
				touched[i] = min(touched[i], room)
			}
		}
		for _, room := range touched {
			require.InDelta(t, l.Spec.SawAllowance.MM(), room, close9, "no smaller rectangle holds it")
		}
		for _, fret := range l.Frets {
			inside(fret.Slot.Bass)
			inside(fret.Slot.Treble)
		}
		checkEnds(t, l, board)
	})
}

// checkEnds measures the nut shelf square to the nut line, and the body end's
// overhang square to the body end.
func checkEnds(t *rapid.T, l *fan.Layout, board fan.Board) {
	off := func(p fan.Point, line fan.Across) unit.Length {
		d := number(line.Bass) - number(line.Treble)
		v := number(p) - number(line.Treble)
		return unit.MM(math.Abs(real(v)*imag(d)-imag(v)*real(d)) / math.Hypot(real(d), imag(d)))
	}
	last := l.Frets[l.Spec.Frets]
	rear := max(last.Slot.Bass.X, last.Slot.Treble.X) + l.Spec.BodyEndOverhang
	for i := range 2 {
		near(t, l.Spec.NutShelf, off(board.Corners[3*i], l.Nut))
		if p := board.Corners[1+i]; l.Spec.BodyEnd == fan.AlongLastFret {
			near(t, l.Spec.BodyEndOverhang, off(p, last.Line))
		} else {
			near(t, rear, p.X)
		}
	}
}

func TestFit(t *testing.T) {
	l := mustLayout(t, sixStrings())
	b := l.LeastBlank()
	got := b.Fit([]fan.Blank{
		{Name: "just", Length: b.Length, Width: b.Width},
		{Name: "roomy", Length: b.Length + unit.MM(30), Width: b.Width + unit.MM(8)},
		{Name: "short", Length: b.Length - unit.MM(0.5), Width: unit.MM(100)},
		{Name: "narrow", Length: unit.MM(900), Width: b.Width - unit.MM(3)},
		{Name: "far too narrow", Length: unit.MM(900), Width: b.Width - unit.MM(5)},
	})
	for i, want := range [][2]bool{{true, false}, {true, false}, {false, true}, {false, true}, {false, false}} {
		require.Equal(t, want, [2]bool{got[i].Fits, got[i].Near}, "%s: within the saw allowance of 2 mm a side", got[i].Blank.Name)
	}
	near(t, unit.MM(30), got[1].SpareLength)
	near(t, unit.MM(8), got[1].SpareWidth)
	near(t, unit.MM(-0.5), got[2].SpareLength)
	near(t, unit.MM(-3), got[3].SpareWidth)
	// Laid as said, the board's corners keep the allowance and half the spare.
	roomy := got[1]
	for _, p := range l.Board().Corners {
		x, y := (roomy.NutCrossFromEnd + p.X).MM(), (roomy.CentreFromBassEdge - p.Y).MM()
		require.GreaterOrEqual(t, x, 2+15-close9)
		require.LessOrEqual(t, x, roomy.Blank.Length.MM()-2-15+close9)
		require.GreaterOrEqual(t, y, 2+4-close9)
		require.LessOrEqual(t, y, roomy.Blank.Width.MM()-2-4+close9)
	}
	testutil.CheckFinite(t, got)
}

func TestAdviseBlank(t *testing.T) {
	spec := sixStrings()
	blank := fan.Blank{Name: "ebony", Length: unit.MM(530), Width: unit.MM(72)}
	fits := func(l *fan.Layout) bool { return l.LeastBlank().Fit([]fan.Blank{blank})[0].Fits }
	got, err := fan.AdviseBlank(spec, blank, func(f *fan.Frame) bool { return f.Difference() < unit.MM(10) })
	require.NoError(t, err)
	require.NotNil(t, got.LongestBass)
	assert.Equal(t, spec.Treble, got.LongestBass.Spec.Treble)
	assert.Equal(t, got.LongestStraight.Spec.Bass, got.LongestStraight.Spec.Treble)
	for _, l := range []*fan.Layout{got.LongestBass, got.LongestStraight} {
		assert.True(t, fits(l))
		longer := l.Spec
		longer.Bass += unit.MM(0.2)
		if l == got.LongestStraight {
			longer.Treble = longer.Bass
		}
		assert.False(t, fits(mustLayout(t, longer)), "0.2 mm longer")
		assert.Equal(t, mustLayout(t, l.Spec).Frets, l.Frets)
	}
	assert.Equal(t, fan.BlankLength, got.BassStop)
	assert.Equal(t, fan.BrokenLimit, got.LimitsStop)
	assert.InDelta(t, 10, (got.WithinLimits.Spec.Bass - spec.Treble).MM(), 0.11)

	// A straight board of a scale L, its nut square and no shelf, is L k(24) long,
	// with the body end's 6 mm and 2 mm of allowance at either end.
	got, err = fan.AdviseBlank(spec, fan.Blank{Length: unit.MM(0.75*640 + 10), Width: unit.MM(90)}, nil)
	require.NoError(t, err)
	assert.InDelta(t, 640, got.LongestStraight.Spec.Bass.MM(), 0.1)
	assert.Nil(t, got.LongestBass, "650 mm of treble are longer already")
	assert.Equal(t, fan.BlankLength, got.BassStop)

	spec.NutSpacing.Rule = fan.LikeNut
	_, err = fan.AdviseBlank(spec, blank, nil)
	require.ErrorContains(t, err, "neck.nut_spacing")
}

// The dots every builder knows: common practice, no source.
func TestDots(t *testing.T) {
	l := mustLayout(t, sixStrings())
	frets := func(dots []fan.Dot) (list []int) {
		for _, d := range dots {
			list = append(list, d.Fret)
		}
		return list
	}
	common := []int{3, 5, 7, 9, 12, 12, 15, 17, 19, 21, 24, 24}
	face, side := l.FaceDots(fan.CommonDots(24)), l.SideDots(fan.CommonDots(24))
	require.Equal(t, common, frets(face))
	require.Equal(t, common, frets(side))
	for i, d := range face {
		before, after := l.Frets[d.Fret-1].Line, l.Frets[d.Fret].Line
		near(t, (before.Cross+after.Cross+d.At.Y*unit.Length(before.TanSlant+after.TanSlant))/2, d.At.X, "midway between the fret lines")
		if d.Fret%12 != 0 {
			require.Zero(t, d.At.Y)
			continue
		}
		pair := face[i-i%2:][:2]
		near(t, pair[0].At.Y, -pair[1].At.Y)
		near(t, width(t, l, (before.Cross+after.Cross)/2)/4, abs(d.At.Y), "a quarter of the outer strings' distance")
	}
	corners := l.Board().Corners
	for i, d := range side {
		a, b := l.Frets[d.Fret-1].Slot.Bass, l.Frets[d.Fret].Slot.Bass
		near(t, corners[0].Distance(corners[1]), corners[0].Distance(d.At)+d.At.Distance(corners[1]), "on the bass edge")
		share := 1. / 2
		switch {
		case d.Fret%12 == 0 && side[i-1].Fret == d.Fret:
			share = 2. / 3
		case d.Fret%12 == 0:
			share = 1. / 3
		}
		require.InDelta(t, share, float64((d.At.X-a.X)/(b.X-a.X)), 1e-9)
	}
	own := fan.Dots{Face: []int{5, 10, 25, 0}, Side: []int{5, 10, 25, 0}, Double: []int{10}}
	require.Equal(t, []int{5, 10, 10}, frets(l.FaceDots(own)), "fret 25 and the nut are not on the board")
	require.Equal(t, []int{5, 10, 10}, frets(l.SideDots(own)))
}

func abs(l unit.Length) unit.Length { return max(l, -l) }

func TestSaddles(t *testing.T) {
	l := mustLayout(t, sixStrings())
	var backs []fan.Compensation
	for _, b := range [][2]float64{{1, 1.4}, {1.5, 2}, {2, 2.6}, {1.8, 2.4}, {2.2, 3}, {3, 4.2}} {
		backs = append(backs, fan.Compensation{Lo: unit.MM(b[0]), Hi: unit.MM(b[1])})
	}
	s := l.Saddles(backs)
	near(t, unit.MM(-1), s.Forward)
	near(t, unit.MM(5.2), s.Rear)
	near(t, unit.MM(6.2), s.Need)
	for i, p := range s.Points {
		line := l.Strings[i]
		for at, behind := range map[fan.Point]unit.Length{p.Least: backs[i].Lo, p.Most: backs[i].Hi, p.Foremost: unit.MM(-1), p.At: (backs[i].Lo + backs[i].Hi) / 2} {
			near(t, line.Length+behind, line.Nut.Distance(at))
		}
		require.Equal(t, p.At.Y, p.Out)
		near(t, p.At.X, l.Frets[12].Line.Cross+p.Along12)
		near(t, p.At.X, l.Frets[24].Line.Cross+p.AlongLast)
		near(t, p.At.X, l.Board().BodyEnd.Cross+p.AlongBodyEnd)
	}
	backs[0] = fan.Compensation{Lo: unit.MM(-2)}
	near(t, unit.MM(-3), l.Saddles(backs).Forward)
}
