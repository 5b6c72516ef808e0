package mark_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// exact gives both passes of one line as laid out, to the micrometre, with the
// marks moved as said.
func exact(l *fan.Layout, line mark.Line, move func(x []float64)) []mark.Reading {
	s := shop{ruler: 0.001, caliper: 0.001}
	b := s.draw(l, rand.New(rand.NewPCG(1, 1)))
	if move != nil {
		move(b.marks[line])
	}
	return s.measure(b, line, rand.New(rand.NewPCG(1, 1)))
}

func keep(readings []mark.Reading, want func(mark.Reading) bool) []mark.Reading {
	var out []mark.Reading
	for _, r := range readings {
		if want(r) {
			out = append(out, r)
		}
	}
	return out
}

// One kind of slip after another, large against the tools: it is named, with
// its size, and nothing beside it.
func TestEveryKindOfSlipIsNamed(t *testing.T) {
	l := layout(t)
	spoil := func(kind mark.Kind, fret int, mm float64) func([]mark.Reading) {
		return func(rs []mark.Reading) {
			for i, r := range rs {
				if r.Kind == kind && (fret == 0 || r.Fret == fret) {
					rs[i].Measured += unit.MM(mm)
				}
			}
		}
	}
	for _, c := range []struct {
		name   string
		move   func(x []float64)
		spoil  func([]mark.Reading)
		kind   mark.SlipKind
		fret   int
		mm     float64
		within float64
	}{
		{"mark", func(x []float64) { x[9] += 0.8 }, nil, mark.MarkOff, 9, 0.8, 0.1},
		{"last mark", func(x []float64) { x[24] -= 0.8 }, nil, mark.MarkOff, 24, -0.8, 0.1},
		{"ruler reading", nil, spoil(mark.FromNut, 9, 2), mark.RulerSlip, 9, 2, 0.5},
		{"caliper step", nil, spoil(mark.Step, 9, 2), mark.StepSlip, 9, 2, 0.2},
		{"step while marking", func(x []float64) {
			for n := 9; n < len(x); n++ {
				x[n] += 0.8
			}
		}, nil, mark.MarksOff, 9, 0.8, 0.1},
		{"nut mark", func(x []float64) { x[0] -= 0.8 }, nil, mark.MarksOff, 1, 0.8, 0.2},
		{"ruler not at zero", nil, spoil(mark.FromNut, 0, 1.5), mark.RulerMoved, 1, 1.5, 0.3},
		{"ruler moved after its first reading", nil, func(rs []mark.Reading) {
			for i, r := range rs {
				if r.Kind == mark.FromNut && r.Fret >= 2 {
					rs[i].Measured += unit.MM(1.5)
				}
			}
		}, mark.RulerMoved, 2, 1.5, 0.3},
		{"ruler moved", nil, func(rs []mark.Reading) {
			for i, r := range rs {
				if r.Kind == mark.FromNut && r.Fret >= 13 {
					rs[i].Measured += unit.MM(1.5)
				}
			}
		}, mark.RulerMoved, 13, 1.5, 0.3},
		{"ruler moved before its last two readings", nil, func(rs []mark.Reading) {
			spoil(mark.FromNut, 23, 2)(rs)
			spoil(mark.FromNut, 24, 2)(rs)
		}, mark.RulerMoved, 23, 2, 0.4},
		{"ruler moved before its last", nil, spoil(mark.FromNut, 24, 2), mark.RulerSlip, 24, 2, 0.5},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, rng := coarseShop, rand.New(rand.NewPCG(31, 32))
			b := s.draw(l, rng)
			if c.move != nil {
				c.move(b.marks[mark.Bass])
			}
			readings := s.measure(b, mark.Bass, rng)
			if c.spoil != nil {
				c.spoil(readings)
			}
			for i := range readings {
				readings[i].Place = fault.Place{Input: "m.csv", Line: i + 2}
			}
			report := check(t, l, readings, s.options())
			require.Len(t, report.Slips, 1, "%+v", report.Slips)
			slip := report.Slips[0]
			assert.Equal(t, c.kind, slip.Kind)
			assert.Equal(t, c.fret, slip.Fret)
			assert.InDelta(t, c.mm, slip.Size.MM(), c.within)
			assert.InDelta(t, c.mm, slip.Size.MM(), 4*slip.U.MM())
			assert.Greater(t, slip.Ratio, slip.Limit)
			assert.True(t, slip.Matters)
			assert.False(t, report.Pass)
			if slip.IsReading() {
				if slip.Row >= 0 {
					assert.Equal(t, readings[slip.Row].Place, slip.Place)
					assert.Equal(t, []string{readings[slip.Row].Name()}, report.Lines[mark.Bass].LeftOut)
				}
				assert.Zero(t, report.Outside, "the marks themselves are good")
			}
		})
	}
}

// A ruler that moved where a mark was not read is said once, at the next.
func TestRulerMovedAtAGap(t *testing.T) {
	l, s, rng := layout(t), coarseShop, rand.New(rand.NewPCG(33, 34))
	readings := keep(s.measure(s.draw(l, rng), mark.Bass, rng), func(r mark.Reading) bool { return r.Kind == mark.Step || r.Fret != 13 })
	for i, r := range readings {
		if r.Kind == mark.FromNut && r.Fret > 13 {
			readings[i].Measured += unit.MM(2)
		}
	}
	report := check(t, l, readings, s.options())
	require.Len(t, report.Slips, 1)
	assert.Equal(t, []any{mark.RulerMoved, 14}, []any{report.Slips[0].Kind, report.Slips[0].Fret})
	for _, f := range report.Slips[0].Others {
		assert.NotEqual(t, 13, f.Fret)
	}
}

// What would show, by hand: two ruler readings scatter as (v + 2 s^2) 1 + s^2 11',
// v the resolution's variance and s the 0.05 mm that few readings are taken to
// scatter by; eleven slips are looked for (two marks, two readings, two shifts, a
// ruler that moved, four across); Phi(2.908) is 1 - 0.04/22.
func TestShowsByHand(t *testing.T) {
	l := layout(t)
	readings := keep(exact(l, mark.Bass, nil), func(r mark.Reading) bool { return r.Kind == mark.FromNut && (r.Fret == 5 || r.Fret == 9) })
	report := check(t, l, readings, mark.Options{RulerResolution: unit.MM(0.5)})
	a, s2 := 0.25/12+2*0.0025, 0.0025
	u := math.Sqrt(a * (a + 2*s2) / (a + s2))
	for _, n := range []int{5, 9} {
		assert.InDelta(t, (2.908+1.645)*u, report.Lines[mark.Bass].Marks[n-1].Shows.MM(), 0.001)
	}
	assert.Zero(t, report.Lines[mark.Bass].Marks[5].Shows)
	report = check(t, l, readings, mark.Options{RulerResolution: unit.MM(0.5), Tolerance: unit.MM(0.3)})
	assert.Equal(t, 2, report.Unsure, "0.3 mm are less than two of 0.17 mm")
}

// Two slips on one line are both named.
func TestTwoSlipsAreBothNamed(t *testing.T) {
	l, s, rng := layout(t), coarseShop, rand.New(rand.NewPCG(33, 34))
	b := s.draw(l, rng)
	b.marks[mark.Bass][5] += 0.6
	b.marks[mark.Bass][17] -= 0.5
	report := check(t, l, s.measureAll(b, l, rng), s.options())
	require.Len(t, report.Slips, 2)
	got := map[int]mark.SlipKind{report.Slips[0].Fret: report.Slips[0].Kind, report.Slips[1].Fret: report.Slips[1].Kind}
	assert.Equal(t, map[int]mark.SlipKind{5: mark.MarkOff, 17: mark.MarkOff}, got)
}

// With one pass only, a wrong reading and a wrong mark look alike: both are
// said, the mark is disputed and nothing is left out.
func TestOnePassLeavesReadingOrMarkOpen(t *testing.T) {
	l, s, rng := layout(t), shop{ruler: 0.1, caliper: 0.1}, rand.New(rand.NewPCG(35, 36))
	b := s.draw(l, rng)
	b.marks[mark.Bass][9] += 1
	ruler := keep(s.measure(b, mark.Bass, rng), func(r mark.Reading) bool { return r.Kind == mark.FromNut })
	report := check(t, l, ruler, s.options())
	require.Len(t, report.Slips, 1)
	assert.Equal(t, mark.MarkOff, report.Slips[0].Kind)
	require.Len(t, report.Slips[0].Others, 1)
	assert.Equal(t, mark.RulerSlip, report.Slips[0].Others[0].Kind)
	assert.True(t, report.Lines[mark.Bass].Marks[8].Disputed)
	assert.False(t, report.Lines[mark.Bass].Marks[8].Sure)
	assert.False(t, report.Lines[mark.Bass].Marks[7].Disputed)
	assert.Empty(t, report.Lines[mark.Bass].LeftOut)
}

// A step that slipped while marking is within two cents at its own mark, and
// beyond them at the last: it matters.
func TestAShiftMattersWhereItIsTightest(t *testing.T) {
	l := layout(t)
	const shift = 0.45
	require.Less(t, shift, 2*l.Frets[7].Bass.OneCent.MM())
	require.Greater(t, shift, 2*l.Frets[24].Bass.OneCent.MM())
	report := check(t, l, exact(l, mark.Bass, func(x []float64) {
		for n := 7; n < len(x); n++ {
			x[n] += shift
		}
	}), mark.Options{RulerResolution: unit.MM(0.001), CaliperResolution: unit.MM(0.001), ToleranceCents: 2})
	require.Len(t, report.Slips, 1)
	assert.Equal(t, mark.MarksOff, report.Slips[0].Kind)
	assert.True(t, report.Slips[0].Matters)
	assert.False(t, report.Pass)
}

// Errors in millimetres and cents: a mark too near the bridge is sharp, by
// 1200 log2 of the sounding lengths, which the neighbours' definition says in
// another way: a whole fret's step is a hundred cents.
func TestErrorInCents(t *testing.T) {
	l := layout(t)
	step := l.Frets[13].Bass.Step.MM()
	readings := exact(l, mark.Bass, func(x []float64) { x[12] += step })
	readings = keep(readings, func(r mark.Reading) bool { return r.Kind == mark.FromNut && r.Fret == 12 })
	o := mark.Options{RulerResolution: unit.MM(0.001), ToleranceCents: 2}
	m := check(t, l, readings, o).Lines[mark.Bass].Marks[11]
	assert.InDelta(t, step, m.Error.MM(), 0.0006)
	assert.InDelta(t, 100, m.ErrorCents.Value(), 0.01)
	assert.Equal(t, mark.Outside, m.Verdict)
	assert.True(t, m.Disputed, "one reading alone may be wrong itself")
}

func TestVerdictsAndTolerances(t *testing.T) {
	l := layout(t)
	readings := keep(exact(l, mark.Bass, func(x []float64) { x[12] += 0.3 }),
		func(r mark.Reading) bool { return r.Kind == mark.FromNut && r.Fret == 12 })
	for _, c := range []struct {
		name string
		tol  mark.Options
		want mark.Verdict
	}{
		{"two cents", mark.Options{ToleranceCents: 2}, mark.Within},
		{"one cent", mark.Options{ToleranceCents: 1}, mark.Outside},
		{"0.4 mm", mark.Options{Tolerance: unit.MM(0.4)}, mark.Within},
		{"0.2 mm", mark.Options{Tolerance: unit.MM(0.2)}, mark.Outside},
	} {
		t.Run(c.name, func(t *testing.T) {
			// Few readings: a hand of 0.05 mm is assumed beside the ruler's step.
			c.tol.RulerResolution = unit.MM(0.001)
			report := check(t, l, readings, c.tol)
			m := report.Lines[mark.Bass].Marks[11]
			assert.Equal(t, c.want, m.Verdict)
			assert.Equal(t, c.want == mark.Within, report.Pass)
			assert.InDelta(t, 0.05, m.U.MM(), 1e-4)
			assert.Equal(t, 47, report.Unmeasured)
			assert.Equal(t, mark.NotMeasured, report.Lines[mark.Treble].Marks[0].Verdict)
			assert.Equal(t, mark.NotMeasured, report.Lines[mark.Bass].Marks[10].Verdict)
		})
	}
}

// Gaps: a missing ruler reading or step is bridged by the other pass; a chain
// that hangs in the air is undecided, not passed.
func TestGaps(t *testing.T) {
	l := layout(t)
	o := mark.Options{RulerResolution: unit.MM(0.001), CaliperResolution: unit.MM(0.001), ToleranceCents: 2}
	all := exact(l, mark.Treble, nil)
	bridged := keep(all, func(r mark.Reading) bool {
		return !(r.Kind == mark.FromNut && r.Fret%5 != 0 || r.Kind == mark.Step && r.Fret == 8)
	})
	report := check(t, l, bridged, o)
	assert.True(t, report.Pass)
	assert.Equal(t, 24, report.Unmeasured, "the bass line only")
	floating := keep(all, func(r mark.Reading) bool { return r.Kind == mark.Step && r.Fret != 8 })
	report = check(t, l, floating, o)
	assert.False(t, report.Pass)
	assert.Equal(t, 17, report.Undecided)
	m := report.Lines[mark.Treble].Marks
	assert.Equal(t, mark.Within, m[6].Verdict)
	assert.Equal(t, mark.Undecided, m[7].Verdict)
	assert.Nil(t, m[23].Measured)
	// A step over two marks takes the chain up again.
	over := append(floating, mark.Reading{Kind: mark.Step, Line: mark.Treble, Fret: 9, From: 7,
		Measured: unit.MM(toStep(l.Frets[9].Treble.FromNut.MM()-l.Frets[7].Treble.FromNut.MM(), 0.001))})
	assert.True(t, check(t, l, over, o).Pass)
}

// A stated zero of the calipers adds up along the chain; a ruler's does not.
func TestZeroOfTheToolsIsCommon(t *testing.T) {
	l := layout(t)
	all := exact(l, mark.Bass, nil)
	steps := keep(all, func(r mark.Reading) bool { return r.Kind == mark.Step })
	ruler := keep(all, func(r mark.Reading) bool { return r.Kind == mark.FromNut })
	o := mark.Options{RulerResolution: unit.MM(0.001), RulerZero: unit.MM(0.3), CaliperResolution: unit.MM(0.001), CaliperZero: unit.MM(0.03), ToleranceCents: 2}
	u := check(t, l, steps, o).Lines[mark.Bass].Marks
	assert.InDelta(t, 24*0.03/math.Sqrt(3), u[23].U.MM(), 0.01)
	assert.InDelta(t, 0.03/math.Sqrt(3), u[0].U.MM(), 0.001)
	u = check(t, l, ruler, o).Lines[mark.Bass].Marks
	assert.InDelta(t, 0.3/math.Sqrt(3), u[23].U.MM(), 0.01)
}

// The same numbers come whatever the order of the rows.
func TestRowOrderDoesNotMatter(t *testing.T) {
	l, s, rng := layout(t), fineShop, rand.New(rand.NewPCG(37, 38))
	readings := s.measureAll(s.draw(l, rng), l, rng)
	want := check(t, l, readings, s.options())
	rng.Shuffle(len(readings), func(i, j int) { readings[i], readings[j] = readings[j], readings[i] })
	got := check(t, l, readings, s.options())
	for line := range want.Lines {
		for i, m := range want.Lines[line].Marks {
			assert.InDelta(t, m.Measured.MM(), got.Lines[line].Marks[i].Measured.MM(), 1e-6)
		}
	}
	assert.Equal(t, want.Pass, got.Pass)
}

// Readings that have nothing to do with the board, by tools finer than any:
// the report is still finite, and does not pass.
func TestWildReadingsGiveFiniteNumbers(t *testing.T) {
	l := layout(t)
	reached := 0
	rapid.Check(t, func(rt *rapid.T) {
		var readings []mark.Reading
		at := 0.0
		both := rapid.Bool().Draw(rt, "both passes")
		for n := 1; n <= 24; n++ {
			step := rapid.Float64Range(0.001, 120).Draw(rt, "step")
			at += step
			if rapid.IntRange(0, 9).Draw(rt, "gap") > 0 {
				readings = append(readings, mark.Reading{Kind: mark.FromNut, Line: mark.Bass, Fret: n, Measured: unit.MM(at)})
			}
			if both {
				readings = append(readings, mark.Reading{Kind: mark.Step, Line: mark.Bass, Fret: n, From: n - 1, Measured: unit.MM(step)})
			}
		}
		o := mark.Options{RulerResolution: unit.MM(0.0005), RulerZero: unit.MM(5), CaliperResolution: unit.MM(0.0005), CaliperZero: unit.MM(2), ToleranceCents: 2}
		report, err := mark.Check(l, readings, o)
		if err != nil {
			return // some look like inches by chance
		}
		reached++
		assert.False(rt, report.Pass)
		for _, m := range report.Lines[mark.Bass].Marks {
			if m.Error == nil {
				continue
			}
			sum := m.Measured.MM() + m.U.MM() + m.ErrorCents.Value() + m.Shows.MM()
			require.False(rt, math.IsNaN(sum) || math.IsInf(sum, 0), "%+v", m)
			require.GreaterOrEqual(rt, m.U.MM(), 0.0)
		}
		for _, s := range report.Slips {
			require.False(rt, math.IsNaN(s.Size.MM()+s.U.MM()+s.Ratio+s.Limit), "%+v", s)
		}
	})
	assert.Greater(t, reached, 5)
}
