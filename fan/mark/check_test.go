package mark_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// exact gives both passes of one line as laid out, to the micrometre, with marks
// moved as said.
func exact(l *fan.Layout, line mark.Line, from, to int, mm float64) []mark.Reading {
	b := exactShop.draw(l, seeded(1))
	move(b.marks[line], from, to, mm)
	return exactShop.measure(b, line, seeded(1))
}

func exactly(cents float64) mark.Options {
	return mark.Options{RulerResolution: unit.MM(0.001), CaliperResolution: unit.MM(0.001), ToleranceCents: unit.Cents(cents)}
}

// One kind of slip after another, large against the tools: it is named, with
// its size, and nothing beside it.
func TestEveryKindOfSlipIsNamed(t *testing.T) {
	l := layout(t)
	const marks mark.Kind = -1
	for _, c := range []struct {
		name     string
		of       mark.Kind // the readings that are off, or the marks
		from, to int
		mm       float64
		kind     mark.SlipKind
		fret     int
		within   float64
	}{
		{"mark", marks, 9, 9, 0.8, mark.MarkOff, 9, 0.1},
		{"last mark", marks, 24, 24, -0.8, mark.MarkOff, 24, 0.1},
		{"step while marking", marks, 9, 24, 0.8, mark.MarksOff, 9, 0.1},
		{"nut mark", marks, 0, 0, 0.8, mark.MarksOff, 1, 0.2},
		{"ruler reading", mark.FromNut, 9, 9, 2, mark.RulerSlip, 9, 0.5},
		{"caliper step", mark.Step, 9, 9, 2, mark.StepSlip, 9, 0.2},
		{"ruler not at zero", mark.FromNut, 1, 24, 1.5, mark.RulerMoved, 1, 0.3},
		{"ruler moved after its first reading", mark.FromNut, 2, 24, 1.5, mark.RulerMoved, 2, 0.3},
		{"ruler moved", mark.FromNut, 13, 24, 1.5, mark.RulerMoved, 13, 0.3},
		{"ruler moved before its last two readings", mark.FromNut, 23, 24, 2, mark.RulerMoved, 23, 0.4},
		{"ruler moved before its last", mark.FromNut, 24, 24, 2, mark.RulerSlip, 24, 0.5},
	} {
		t.Run(c.name, func(t *testing.T) {
			rng, size := seeded(31), c.mm
			b := coarseShop.draw(l, rng)
			if c.of == marks {
				move(b.marks[mark.Bass], c.from, c.to, c.mm)
			}
			if c.from == 0 {
				size = -c.mm // the other marks are off against the nut's
			}
			readings := coarseShop.measure(b, mark.Bass, rng)
			spoil(readings, c.of, c.from, c.to, c.mm)
			report := check(t, l, readings, coarseShop.options())
			require.Len(t, report.Slips, 1, "%+v", report.Slips)
			slip := report.Slips[0]
			assert.Equal(t, []any{c.kind, c.fret}, []any{slip.Kind, slip.Fret})
			assert.InDelta(t, size, slip.Size.MM(), min(c.within, 4*slip.U.MM()))
			assert.True(t, slip.Matters)
			assert.False(t, report.Pass)
			if slip.IsReading() {
				assert.Zero(t, report.Outside, "the marks themselves are good")
			}
			if slip.Reading != nil {
				assert.Equal(t, c.fret, slip.Reading.Fret)
				assert.Equal(t, []string{slip.Reading.Name()}, report.Lines[mark.Bass].LeftOut)
			}
		})
	}
}

// A ruler that moved where a mark was not read is said once, at the next.
func TestRulerMovedAtAGap(t *testing.T) {
	l, rng := layout(t), seeded(33)
	readings := keep(coarseShop.measure(coarseShop.draw(l, rng), mark.Bass, rng), func(r mark.Reading) bool { return r.Kind == mark.Step || r.Fret != 13 })
	spoil(readings, mark.FromNut, 14, 24, 2)
	report := check(t, l, readings, coarseShop.options())
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
	readings := keep(exact(l, mark.Bass, 0, 0, 0), func(r mark.Reading) bool { return r.Kind == mark.FromNut && (r.Fret == 5 || r.Fret == 9) })
	report := check(t, l, readings, mark.Options{RulerResolution: unit.MM(0.5), Tolerance: unit.MM(0.3)})
	a, s2 := 0.25/12+2*0.0025, 0.0025
	u := math.Sqrt(a * (a + 2*s2) / (a + s2))
	for _, n := range []int{5, 9} {
		assert.InDelta(t, (2.908+1.645)*u, report.Lines[mark.Bass].Marks[n-1].Shows.MM(), 0.001)
	}
	assert.Zero(t, report.Lines[mark.Bass].Marks[5].Shows)
	assert.Equal(t, 2, report.Unsure, "0.3 mm are less than two of 0.17 mm")
}

// Two slips on one line are both named.
func TestTwoSlipsAreBothNamed(t *testing.T) {
	l, rng := layout(t), seeded(33)
	b := coarseShop.draw(l, rng)
	b.marks[mark.Bass][5] += 0.6
	b.marks[mark.Bass][17] -= 0.5
	report := check(t, l, coarseShop.measureAll(b, l, rng), coarseShop.options())
	require.Len(t, report.Slips, 2)
	got := map[int]mark.SlipKind{report.Slips[0].Fret: report.Slips[0].Kind, report.Slips[1].Fret: report.Slips[1].Kind}
	assert.Equal(t, map[int]mark.SlipKind{5: mark.MarkOff, 17: mark.MarkOff}, got)
}

// With one pass only, a wrong reading and a wrong mark look alike: both are
// said, the mark is disputed and nothing is left out.
func TestOnePassLeavesReadingOrMarkOpen(t *testing.T) {
	ruler := keep(exact(layout(t), mark.Bass, 9, 9, 1), func(r mark.Reading) bool { return r.Kind == mark.FromNut })
	report := check(t, layout(t), ruler, shop{ruler: 0.1}.options())
	require.Len(t, report.Slips, 1)
	require.Len(t, report.Slips[0].Others, 1)
	assert.Equal(t, [2]mark.SlipKind{mark.MarkOff, mark.RulerSlip}, [2]mark.SlipKind{report.Slips[0].Kind, report.Slips[0].Others[0].Kind})
	line := report.Lines[mark.Bass]
	assert.Equal(t, [3]bool{true, false, false}, [3]bool{line.Marks[8].Disputed, line.Marks[8].Sure, line.Marks[7].Disputed})
	assert.Empty(t, line.LeftOut)
}

// A step that slipped while marking is within two cents at its own mark, and
// beyond them at the last: it matters.
func TestAShiftMattersWhereItIsTightest(t *testing.T) {
	l := layout(t)
	const shift = 0.45
	require.Less(t, shift, 2*l.Frets[7].Bass.OneCent.MM())
	require.Greater(t, shift, 2*l.Frets[24].Bass.OneCent.MM())
	report := check(t, l, exact(l, mark.Bass, 7, 24, shift), exactly(2))
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
	readings := keep(exact(l, mark.Bass, 12, 12, step), func(r mark.Reading) bool { return r.Kind == mark.FromNut && r.Fret == 12 })
	m := check(t, l, readings, exactly(2)).Lines[mark.Bass].Marks[11]
	assert.InDelta(t, step, m.Error.MM(), 0.0006)
	assert.InDelta(t, 100, m.ErrorCents.Value(), 0.01)
	assert.Equal(t, mark.Outside, m.Verdict)
	assert.True(t, m.Disputed, "one reading alone may be wrong itself")
}

func TestVerdictsAndTolerances(t *testing.T) {
	l := layout(t)
	readings := keep(exact(l, mark.Bass, 12, 12, 0.3), func(r mark.Reading) bool { return r.Kind == mark.FromNut && r.Fret == 12 })
	for tolerance, want := range map[mark.Options]mark.Verdict{
		{ToleranceCents: 2}: mark.Within, {ToleranceCents: 1}: mark.Outside, {Tolerance: unit.MM(0.4)}: mark.Within, {Tolerance: unit.MM(0.2)}: mark.Outside,
	} {
		// Few readings: a hand of 0.05 mm is assumed beside the ruler's step.
		tolerance.RulerResolution = unit.MM(0.001)
		report := check(t, l, readings, tolerance)
		m := report.Lines[mark.Bass].Marks[11]
		assert.Equal(t, want, m.Verdict)
		assert.Equal(t, want == mark.Within, report.Pass)
		assert.InDelta(t, 0.05, m.U.MM(), 1e-4)
		assert.Equal(t, 47, report.Unmeasured)
		assert.Equal(t, mark.NotMeasured, report.Lines[mark.Treble].Marks[0].Verdict)
	}
}

// Gaps: a missing ruler reading or step is bridged by the other pass; a chain
// that hangs in the air is undecided, not passed.
func TestGaps(t *testing.T) {
	l, o := layout(t), exactly(2)
	all := exact(l, mark.Treble, 0, 0, 0)
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
	assert.Equal(t, [2]mark.Verdict{mark.Within, mark.Undecided}, [2]mark.Verdict{m[6].Verdict, m[7].Verdict})
	assert.Nil(t, m[23].Measured)
	// A step over two marks takes the chain up again.
	over := append(floating, mark.Reading{Kind: mark.Step, Line: mark.Treble, Fret: 9, From: 7,
		Measured: unit.MM(toStep((l.Frets[9].Treble.FromNut - l.Frets[7].Treble.FromNut).MM(), 0.001))})
	assert.True(t, check(t, l, over, o).Pass)
}

// A stated zero of the calipers adds up along the chain; a ruler's does not.
func TestZeroOfTheToolsIsCommon(t *testing.T) {
	l, o := layout(t), exactly(2)
	o.RulerZero, o.CaliperZero = unit.MM(0.3), unit.MM(0.03)
	for kind, want := range map[mark.Kind][2]float64{mark.Step: {0.03, 24 * 0.03}, mark.FromNut: {0.3, 0.3}} {
		pass := keep(exact(l, mark.Bass, 0, 0, 0), func(r mark.Reading) bool { return r.Kind == kind })
		marks := check(t, l, pass, o).Lines[mark.Bass].Marks
		assert.InDelta(t, want[0]/math.Sqrt(3), marks[0].U.MM(), 0.001)
		assert.InDelta(t, want[1]/math.Sqrt(3), marks[23].U.MM(), 0.01)
	}
}

// The same numbers come whatever the order of the rows.
func TestRowOrderDoesNotMatter(t *testing.T) {
	l, rng := layout(t), seeded(37)
	readings := fineShop.all(l, rng)
	want := check(t, l, readings, fineShop.options())
	rng.Shuffle(len(readings), func(i, j int) { readings[i], readings[j] = readings[j], readings[i] })
	got := check(t, l, readings, fineShop.options())
	for line := range want.Lines {
		for i, m := range want.Lines[line].Marks {
			assert.InDelta(t, m.Measured.MM(), got.Lines[line].Marks[i].Measured.MM(), 1e-6)
		}
	}
}

// Readings that have nothing to do with the board, by tools finer than any:
// the report is still finite, and does not pass.
func TestWildReadingsGiveFiniteNumbers(t *testing.T) {
	l := layout(t)
	reached := 0
	rapid.Check(t, func(rt *rapid.T) {
		var readings []mark.Reading
		at := unit.Length(0)
		both := rapid.Bool().Draw(rt, "both passes")
		for n := 1; n <= 24; n++ {
			step := unit.MM(rapid.Float64Range(0.001, 120).Draw(rt, "step"))
			at += step
			if rapid.IntRange(0, 9).Draw(rt, "gap") > 0 {
				readings = append(readings, mark.Reading{Kind: mark.FromNut, Fret: n, Measured: at})
			}
			if both {
				readings = append(readings, mark.Reading{Kind: mark.Step, Fret: n, From: n - 1, Measured: step})
			}
		}
		o := mark.Options{RulerResolution: unit.MM(0.0005), RulerZero: unit.MM(5), CaliperResolution: unit.MM(0.0005), CaliperZero: unit.MM(2)}
		report, err := mark.Check(l, readings, o)
		if err != nil {
			return // some look like inches by chance
		}
		reached++
		assert.False(rt, report.Pass)
		testutil.CheckFinite(rt, report)
	})
	assert.Greater(t, reached, 5)
}
