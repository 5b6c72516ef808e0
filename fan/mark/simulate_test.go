package mark_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// The shops of the simulations. In the first two the tools' steps are what
// limits the measuring, with a hand and marks that scatter by a fifth of the
// calipers' step; in the third the hand is coarser than the calipers.
var (
	coarseShop = shop{ruler: 0.5, caliper: 0.1, hand: 0.02, scatter: 0.02}
	fineShop   = shop{ruler: 0.5, caliper: 0.05, hand: 0.01, scatter: 0.01}
	handShop   = shop{ruler: 0.5, caliper: 0.01, hand: 0.03, scatter: 0.03}
)

// A slip of three times a tool's resolution, on a line drawn by lot: the mark
// named first is the right one, and the right kind is named or stands beside it,
// on at least 97 % of boards.
func TestSlipsAreNamed(t *testing.T) {
	l := layout(t)
	for _, s := range []shop{coarseShop, fineShop} {
		for _, kind := range []mark.SlipKind{mark.MarkOff, mark.StepSlip, mark.RulerSlip, mark.MarksOff, mark.RulerMoved} {
			t.Run(fmt.Sprintf("%v, calipers to %v", kind, s.caliper), func(t *testing.T) {
				t.Parallel()
				boards := testutil.Times(100, 30)
				rng := rand.New(rand.NewPCG(2, uint64(kind)))
				named := 0
				for range boards {
					want, readings := s.slipped(l, kind, rng)
					report := check(t, l, readings, s.options())
					if len(report.Slips) > 0 && report.Slips[0].Fret == want.Fret && report.Slips[0].Line == want.Line {
						named += listed(report.Slips[0], want.Kind)
					}
				}
				assert.GreaterOrEqual(t, named, boards*97/100)
			})
		}
	}
}

// Places are as uncertain as is stated, also on the boards where the readings make
// a hand likeliest that scatters by nothing, and a mark is as likely beyond two
// standard uncertainties as a normal error, 4.6 %.
func TestMarksAreAsUncertainAsStated(t *testing.T) {
	l, s, rng := layout(t), shop{ruler: 0.5, caliper: 0.01, hand: 0.04, scatter: 0.05}, rand.New(rand.NewPCG(14, 15))
	squares, beyond, n := 0.0, 0, 0.0
	for range 60 {
		b := s.draw(l, rng)
		b.marks[mark.Bass][0], b.marks[mark.Treble][0] = 0, 0
		report := check(t, l, s.measureAll(b, l, rng), s.options())
		for line, result := range report.Lines {
			for _, m := range result.Marks {
				z := (m.Measured.MM() - b.marks[line][m.Fret]) / m.U.MM()
				squares, n = squares+z*z, n+1
				if math.Abs(z) > 2 {
					beyond++
				}
			}
		}
	}
	assert.InDelta(t, 1, math.Sqrt(squares/n), 0.2)
	assert.InDelta(t, 0.046, float64(beyond)/n, 0.025)
}

// A mark that is off is off by what its own result says, among the others that
// explain the readings as well.
func TestAMarkHasOneSize(t *testing.T) {
	l := layout(t)
	rng := rand.New(rand.NewPCG(12, 13))
	named := 0
	for i := range 24 {
		s := []shop{coarseShop, fineShop, handShop}[i%3]
		_, readings := s.slipped(l, mark.MarkOff, rng)
		if i%2 == 1 {
			readings = keep(readings, func(r mark.Reading) bool { return r.Kind == mark.FromNut })
		}
		report := check(t, l, readings, s.options())
		for _, slip := range report.Slips {
			for _, f := range append([]mark.Finding{slip.Finding}, slip.Others...) {
				if f.Kind != mark.MarkOff {
					continue
				}
				named++
				m := report.Lines[f.Line].Marks[f.Fret-1]
				assert.Equal(t, [2]unit.Length{*m.Error, *m.U}, [2]unit.Length{f.Size, f.U})
			}
		}
	}
	assert.Greater(t, named, 5)
}

func listed(s mark.Slip, kind mark.SlipKind) int {
	for _, f := range append([]mark.Finding{s.Finding}, s.Others...) {
		if f.Kind == kind {
			return 1
		}
	}
	return 0
}

// slipped gives a board with one slip and what it is. What is off from the last
// mark on is that mark's own.
func (s shop) slipped(l *fan.Layout, kind mark.SlipKind, rng *rand.Rand) (mark.Finding, []mark.Reading) {
	last := len(l.Frets) - 1
	n := 1 + rng.IntN(last)
	if kind == mark.MarksOff || kind == mark.RulerMoved {
		n = 2 + rng.IntN(last-3)
	}
	want := mark.Finding{Kind: kind, Line: mark.Line(rng.IntN(2)), Fret: n, Size: unit.MM(3 * s.caliper)}
	if rng.IntN(2) == 0 {
		want.Size = -want.Size
	}
	b := s.draw(l, rng)
	for i := range b.marks[want.Line] {
		if kind == mark.MarkOff && i == n || kind == mark.MarksOff && i >= n {
			b.marks[want.Line][i] += want.Size.MM()
		}
	}
	readings := s.measureAll(b, l, rng)
	for i, r := range readings {
		switch {
		case kind == mark.RulerMoved && r.Kind == mark.FromNut && r.Line == want.Line && r.Fret >= n:
			readings[i].Measured += want.Size * unit.Length(s.ruler/s.caliper)
		case r.Line != want.Line || r.Fret != n:
		case kind == mark.StepSlip && r.Kind == mark.Step:
			readings[i].Measured += want.Size
		case kind == mark.RulerSlip && r.Kind == mark.FromNut:
			readings[i].Measured += want.Size * unit.Length(s.ruler/s.caliper)
		}
	}
	return want, readings
}

// Clean marking passes, and raises no alarm, on at least 95 % of boards,
// whatever limits the measuring.
func TestCleanMarkingPasses(t *testing.T) {
	l := layout(t)
	for _, s := range []shop{coarseShop, fineShop, handShop, {ruler: 0.5, caliper: 0.05}} {
		t.Run(fmt.Sprint(s), func(t *testing.T) {
			t.Parallel()
			boards := testutil.Times(150, 40)
			rng := rand.New(rand.NewPCG(3, 4))
			quiet, pass := 0, 0
			for range boards {
				report := check(t, l, s.measureAll(s.draw(l, rng), l, rng), s.options())
				if len(report.Slips) == 0 {
					quiet++
				}
				if report.Pass {
					pass++
				}
			}
			assert.GreaterOrEqual(t, quiet, boards*95/100, "no alarm")
			assert.GreaterOrEqual(t, pass, boards*95/100, "passed")
		})
	}
}

// What the report says of itself holds: two standard uncertainties hold the
// truth in about 95 % of cases, and a slip as large as ShowsMM is named in
// about 95 %.
func TestStatedUncertaintyHolds(t *testing.T) {
	l := layout(t)
	for _, s := range []shop{coarseShop, {ruler: 0.5, caliper: 0.05, hand: 0.04, scatter: 0.04}} {
		t.Run(fmt.Sprint(s), func(t *testing.T) {
			t.Parallel()
			rng := rand.New(rand.NewPCG(5, 6))
			held, all := 0, 0
			for range testutil.Times(40, 15) {
				b := s.draw(l, rng)
				report := check(t, l, s.measureAll(b, l, rng), s.options())
				for line, x := range b.marks {
					for _, m := range report.Lines[line].Marks {
						all++
						if d := m.Measured.MM() - (x[m.Fret] - x[0]); math.Abs(d) <= 2*m.U.MM() {
							held++
						}
					}
				}
			}
			assert.GreaterOrEqual(t, held, all*92/100)
			assert.LessOrEqual(t, held, all*99/100)
		})
	}
}

func TestShowsIsWhatShows(t *testing.T) {
	l, s := layout(t), shop{ruler: 0.5, caliper: 0.05, hand: 0.03, scatter: 0.03}
	rng := rand.New(rand.NewPCG(7, 8))
	clean := check(t, l, s.measureAll(s.draw(l, rng), l, rng), s.options())
	boards := testutil.Times(60, 30)
	named := 0
	for range boards {
		n := 1 + rng.IntN(24)
		b := s.draw(l, rng)
		b.marks[mark.Bass][n] += clean.Lines[mark.Bass].Marks[n-1].Shows.MM()
		report := check(t, l, s.measureAll(b, l, rng), s.options())
		if len(report.Slips) > 0 && report.Slips[0].Fret == n {
			named++
		}
	}
	assert.GreaterOrEqual(t, named, boards*85/100)
	half := 0
	for range boards {
		n := 1 + rng.IntN(24)
		b := s.draw(l, rng)
		b.marks[mark.Bass][n] += clean.Lines[mark.Bass].Marks[n-1].Shows.MM() / 3
		report := check(t, l, s.measureAll(b, l, rng), s.options())
		if len(report.Slips) > 0 && report.Slips[0].Fret == n {
			half++
		}
	}
	assert.Less(t, half, boards/2, "a third of it must not show as a rule, or ShowsMM says too much")
}

// A treble nut that lies wrong, with all treble marks set out from it, shows on
// neither line, and in the diagonals and the offset.
func TestNutOffsetShowsInTheDiagonals(t *testing.T) {
	l, s := layout(t), coarseShop
	rng := rand.New(rand.NewPCG(9, 10))
	boards := testutil.Times(40, 20)
	withOffset, diagonalsOnly := 0, 0
	for range boards {
		b := s.draw(l, rng)
		b.offset = 1.5
		all := s.measureAll(b, l, rng)
		report := check(t, l, all, s.options())
		require.NotNil(t, report.Across)
		withOffset += offsetNamed(report)
		assert.False(t, report.Pass)
		assert.InDelta(t, 1.5, report.Across.Error.MM(), 4*report.Across.U.MM())
		diagonalsOnly += offsetNamed(check(t, l, all[:len(all)-1], s.options()))
	}
	assert.GreaterOrEqual(t, withOffset, boards*95/100)
	assert.GreaterOrEqual(t, diagonalsOnly, boards*95/100)
}

func offsetNamed(r mark.Report) int {
	if len(r.Slips) == 1 && r.Slips[0].Kind == mark.OffsetOff {
		return 1
	}
	return 0
}
