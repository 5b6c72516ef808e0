package mark_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// A slip of three times a tool's resolution, on a line drawn by lot: the mark
// named first is the right one, and the right kind is named or stands beside it,
// on at least 97 % of boards.
func TestSlipsAreNamed(t *testing.T) {
	l := layout(t)
	for _, s := range []shop{coarseShop, fineShop} {
		for i, kind := range []mark.SlipKind{mark.MarkOff, mark.StepSlip, mark.RulerSlip, mark.MarksOff, mark.RulerMoved} {
			t.Run(fmt.Sprintf("%v, calipers to %v", kind, s.caliper), func(t *testing.T) {
				t.Parallel()
				boards, found := testutil.Times(100, 30), 0
				rng := seeded(uint64(i))
				for range boards {
					want, readings := s.slipped(l, kind, rng)
					slips := check(t, l, readings, s.options()).Slips
					if len(slips) > 0 && slips[0].Fret == want.Fret && slips[0].Line == want.Line &&
						slices.ContainsFunc(named(slips[0]), func(f mark.Finding) bool { return f.Kind == want.Kind }) {
						found++
					}
				}
				assert.GreaterOrEqual(t, found, boards*97/100)
			})
		}
	}
}

// slipped gives a board with one slip and what it is. What is off from the last
// mark on is that mark's own.
func (s shop) slipped(l *fan.Layout, kind mark.SlipKind, rng *rand.Rand) (mark.Finding, []mark.Reading) {
	n, last := 1+rng.IntN(24), 24
	if kind == mark.MarksOff || kind == mark.RulerMoved {
		n = 2 + rng.IntN(21)
	} else {
		last = n
	}
	line, sign := mark.Line(rng.IntN(2)), float64(2*rng.IntN(2)-1)
	b := s.draw(l, rng)
	if kind == mark.MarkOff || kind == mark.MarksOff {
		move(b.marks[line], n, last, sign*3*s.caliper)
	}
	lines := [2][]mark.Reading{s.measure(b, mark.Bass, rng), s.measure(b, mark.Treble, rng)}
	switch kind {
	case mark.StepSlip:
		spoil(lines[line], mark.Step, n, last, sign*3*s.caliper)
	case mark.RulerSlip, mark.RulerMoved:
		spoil(lines[line], mark.FromNut, n, last, sign*3*s.ruler)
	}
	return mark.Finding{Kind: kind, Line: line, Fret: n}, slices.Concat(lines[0], lines[1], s.measureAcross(b, l, rng))
}

// Clean marking passes, and raises no alarm, on at least 95 % of boards,
// whatever limits the measuring.
func TestCleanMarkingPasses(t *testing.T) {
	l := layout(t)
	for _, s := range []shop{coarseShop, fineShop, handShop, {ruler: 0.5, caliper: 0.05}} {
		t.Run(fmt.Sprint(s), func(t *testing.T) {
			t.Parallel()
			boards, quiet, pass := testutil.Times(150, 40), 0, 0
			rng := rand.New(rand.NewPCG(3, 4))
			for range boards {
				report := check(t, l, s.all(l, rng), s.options())
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

// Places are as uncertain as is stated, also on the boards where the readings make
// a hand likeliest that scatters by nothing, and a mark is about as likely beyond
// two standard uncertainties as a normal error, 4.6 %.
func TestMarksAreAsUncertainAsStated(t *testing.T) {
	l := layout(t)
	for _, s := range []shop{coarseShop, {ruler: 0.5, caliper: 0.05, hand: 0.04, scatter: 0.04}, {ruler: 0.5, caliper: 0.01, hand: 0.04, scatter: 0.05}} {
		t.Run(fmt.Sprint(s), func(t *testing.T) {
			t.Parallel()
			squares, beyond, n, rng := 0.0, 0.0, 0.0, seeded(14)
			for range testutil.Times(60, 30) {
				b := s.draw(l, rng)
				report := check(t, l, s.measureAll(b, l, rng), s.options())
				for line, x := range b.marks {
					for _, m := range report.Lines[line].Marks {
						z := (m.Measured.MM() - (x[m.Fret] - x[0])) / m.U.MM()
						squares, n = squares+z*z, n+1
						if math.Abs(z) > 2 {
							beyond++
						}
					}
				}
			}
			assert.InDelta(t, 1, math.Sqrt(squares/n), 0.2)
			assert.InDelta(t, 0.046, beyond/n, 0.034)
		})
	}
}

// A mark that is off is off by what its own result says, among the others that
// explain the readings as well.
func TestAMarkHasOneSize(t *testing.T) {
	l, rng, found := layout(t), seeded(12), 0
	for i := range 24 {
		s := []shop{coarseShop, fineShop, handShop}[i%3]
		_, readings := s.slipped(l, mark.MarkOff, rng)
		if i%2 == 1 {
			readings = keep(readings, func(r mark.Reading) bool { return r.Kind == mark.FromNut })
		}
		report := check(t, l, readings, s.options())
		for _, slip := range report.Slips {
			for _, f := range named(slip) {
				if f.Kind == mark.MarkOff {
					found++
					m := report.Lines[f.Line].Marks[f.Fret-1]
					assert.Equal(t, [2]unit.Length{*m.Error, *m.U}, [2]unit.Length{f.Size, f.U})
				}
			}
		}
	}
	assert.Greater(t, found, 5)
}

// A slip as large as Shows is named in about 95 % of cases, a third of it seldom.
func TestShowsIsWhatShows(t *testing.T) {
	l, s, rng := layout(t), shop{ruler: 0.5, caliper: 0.05, hand: 0.03, scatter: 0.03}, seeded(7)
	clean := check(t, l, s.all(l, rng), s.options())
	boards := testutil.Times(60, 30)
	shown := func(share float64) (found int) {
		for range boards {
			n := 1 + rng.IntN(24)
			b := s.draw(l, rng)
			b.marks[mark.Bass][n] += share * clean.Lines[mark.Bass].Marks[n-1].Shows.MM()
			report := check(t, l, s.measureAll(b, l, rng), s.options())
			if len(report.Slips) > 0 && report.Slips[0].Fret == n {
				found++
			}
		}
		return found
	}
	assert.GreaterOrEqual(t, shown(1), boards*85/100)
	assert.Less(t, shown(1./3), boards/2)
}

// A treble nut that lies wrong, with all treble marks set out from it, shows on
// neither line, and in the diagonals, with the offset's own reading or without.
func TestNutOffsetShowsInTheDiagonals(t *testing.T) {
	l, s, rng := layout(t), coarseShop, seeded(9)
	boards := testutil.Times(40, 20)
	for _, left := range []int{0, 1} {
		found := 0
		for range boards {
			b := s.draw(l, rng)
			b.offset = 1.5
			readings := s.measureAll(b, l, rng)
			report := check(t, l, readings[:len(readings)-left], s.options())
			require.NotNil(t, report.Across)
			assert.False(t, report.Pass)
			assert.InDelta(t, 1.5, report.Across.Error.MM(), 4*report.Across.U.MM())
			if len(report.Slips) == 1 && report.Slips[0].Kind == mark.OffsetOff {
				found++
			}
		}
		assert.GreaterOrEqual(t, found, boards*95/100)
	}
}

// Marks that scatter about as far as the tolerance is wide: a verdict is sure
// just where two standard uncertainties lie between error and tolerance, and
// such verdicts, the nearest of them too, are wrong about as seldom as that
// promises, 2.3 % one-sided.
func TestASureVerdictIsSeldomWrong(t *testing.T) {
	l, rng := layout(t), seeded(41)
	s := shop{ruler: 0.5, caliper: 0.1, hand: 0.03, scatter: 0.1}
	const bound = 0.1
	o := s.options()
	o.Tolerance, o.ToleranceCents = unit.MM(bound), 0
	sure, near, wrong := 0, 0, 0
	for range 60 {
		b := s.draw(l, rng)
		report := check(t, l, s.measureAll(b, l, rng), o)
		if len(report.Slips) > 0 {
			continue // what is off as a whole has another datum
		}
		for line, result := range report.Lines {
			for n, m := range result.Marks {
				require.Equal(t, math.Abs(m.Error.MM()) <= bound, m.Verdict == mark.Within)
				apart := math.Abs(math.Abs(m.Error.MM())-bound) / m.U.MM()
				require.Equal(t, apart >= 2, m.Sure, "%v uncertainties apart", apart)
				if !m.Sure {
					continue
				}
				truth := b.marks[line][n+1] - b.marks[line][0] - m.Nominal.MM()
				if sure++; apart < 3 {
					near++
				}
				if (math.Abs(truth) <= bound) != (m.Verdict == mark.Within) {
					wrong++
				}
			}
		}
	}
	assert.Greater(t, near, 100)
	assert.Less(t, float64(wrong), 0.023*float64(sure)+3*math.Sqrt(0.023*float64(sure)))
}
