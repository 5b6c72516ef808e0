package mark_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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

// A slip of three times the caliper's step, on a line drawn by lot: the mark
// named first is the right one in at least 95 % of boards. A slip of the ruler
// is three of the ruler's steps, since a half millimetre hides smaller ones.
func TestSlipsAreNamed(t *testing.T) {
	l := layout(t)
	for _, s := range []shop{coarseShop, fineShop} {
		for _, kind := range []mark.SlipKind{mark.MarkOff, mark.StepSlip, mark.RulerSlip, mark.Shifted} {
			t.Run(fmt.Sprintf("%v, calipers to %v", kind, s.caliper), func(t *testing.T) {
				t.Parallel()
				const boards = 40
				rng := rand.New(rand.NewPCG(2, uint64(kind)))
				right, kindListed := 0, 0
				for range boards {
					want, readings := s.slipped(l, kind, rng)
					report := check(t, l, readings, s.options())
					if len(report.Slips) == 0 {
						continue
					}
					if got := report.Slips[0]; got.Fret == want.Fret && got.Line == want.Line {
						right++
						kindListed += listed(got, want.Kind)
					}
				}
				assert.GreaterOrEqual(t, right, boards*95/100, "right mark")
				assert.GreaterOrEqual(t, kindListed, boards*95/100, "right kind named, or named as not told apart")
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
				z := (m.MM - b.marks[line][m.Fret]) / m.U
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

// A mark that stands off is told to stand off by what its own result says, among
// the others that it cannot be told from as well.
func TestAMarkHasOneSize(t *testing.T) {
	l := layout(t)
	rng := rand.New(rand.NewPCG(12, 13))
	told := 0
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
				told++
				m := report.Lines[f.Line].Marks[f.Fret-1]
				assert.Equal(t, [2]float64{m.ErrorMM, m.U}, [2]float64{f.MM, f.U})
			}
		}
	}
	assert.Greater(t, told, 5)
}

func listed(s mark.Slip, kind mark.SlipKind) int {
	for _, f := range append([]mark.Finding{s.Finding}, s.Others...) {
		if f.Kind == kind {
			return 1
		}
	}
	return 0
}

// slipped gives a board with one slip and what it is. A shift from mark 1 on
// is the nut mark's, one from the last mark on is that mark's own: those are
// not drawn for Shifted.
func (s shop) slipped(l *fan.Layout, kind mark.SlipKind, rng *rand.Rand) (mark.Finding, []mark.Reading) {
	last := len(l.Frets) - 1
	n := 1 + rng.IntN(last)
	if kind == mark.Shifted {
		n = 2 + rng.IntN(last-2)
	}
	want := mark.Finding{Kind: kind, Line: mark.Line(rng.IntN(2)), Fret: n, MM: 3 * s.caliper}
	if rng.IntN(2) == 0 {
		want.MM = -want.MM
	}
	b := s.draw(l, rng)
	for i := range b.marks[want.Line] {
		if kind == mark.MarkOff && i == n || kind == mark.Shifted && i >= n {
			b.marks[want.Line][i] += want.MM
		}
	}
	readings := s.measureAll(b, l, rng)
	for i, r := range readings {
		switch {
		case r.Line != want.Line || r.Fret != n:
		case kind == mark.StepSlip && r.Kind == mark.Step:
			readings[i].MM += want.MM
		case kind == mark.RulerSlip && r.Kind == mark.FromNut:
			readings[i].MM += want.MM / s.caliper * s.ruler
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
			const boards = 80
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
			for range 40 {
				b := s.draw(l, rng)
				report := check(t, l, s.measureAll(b, l, rng), s.options())
				for line, x := range b.marks {
					for _, m := range report.Lines[line].Marks {
						all++
						if d := m.MM - (x[m.Fret] - x[0]); d >= -2*m.U && d <= 2*m.U {
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
	const boards = 60
	named := 0
	for range boards {
		n := 1 + rng.IntN(24)
		b := s.draw(l, rng)
		b.marks[mark.Bass][n] += clean.Lines[mark.Bass].Marks[n-1].ShowsMM
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
		b.marks[mark.Bass][n] += clean.Lines[mark.Bass].Marks[n-1].ShowsMM / 3
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
	const boards = 40
	withOffset, diagonalsOnly := 0, 0
	for range boards {
		b := s.draw(l, rng)
		b.offset = 1.5
		all := s.measureAll(b, l, rng)
		report := check(t, l, all, s.options())
		require.NotNil(t, report.Across)
		withOffset += offsetNamed(report)
		assert.False(t, report.Pass)
		assert.InDelta(t, 1.5, report.Across.ErrorMM, 4*report.Across.U)
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
