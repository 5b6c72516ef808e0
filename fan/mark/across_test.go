package mark_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan/mark"
)

// What goes wrong between the lines is named, with the lines measured or
// not. Rows from the end: diagonal from the bass nut, from the treble nut, nut
// offset.
func TestAcrossSlips(t *testing.T) {
	l := layout(t)
	for _, c := range []struct {
		name  string
		move  func(*board)
		spoil func(across []mark.Reading)
		kind  mark.SlipKind
		mm    float64
		line  mark.Line
		off   float64 // the nut offset's error
	}{
		{"nut offset", func(b *board) { b.offset = -2 }, nil, mark.OffsetOff, -2, mark.Treble, -2},
		{"first diagonal", nil, func(a []mark.Reading) { a[0].Measured += unit.MM(3) }, mark.DiagonalSlip, 3, mark.Treble, 0},
		{"second diagonal", nil, func(a []mark.Reading) { a[1].Measured -= unit.MM(3) }, mark.DiagonalSlip, -3, mark.Bass, 0},
		{"offset reading", nil, func(a []mark.Reading) { a[2].Measured += unit.MM(2) }, mark.OffsetSlip, 2, mark.Treble, 0},
	} {
		for _, lines := range []bool{true, false} {
			t.Run(c.name, func(t *testing.T) {
				s, rng := coarseShop, rand.New(rand.NewPCG(41, 42))
				b := s.draw(l, rng)
				if c.move != nil {
					c.move(&b)
				}
				across := s.measureAcross(b, l, rng)
				if c.spoil != nil {
					c.spoil(across)
				}
				readings := across
				if lines {
					readings = append(s.measure(b, mark.Bass, rng), s.measure(b, mark.Treble, rng)...)
					readings = append(readings, across...)
				}
				report := check(t, l, readings, s.options())
				require.Len(t, report.Slips, 1)
				slip := report.Slips[0]
				assert.Equal(t, c.kind, slip.Kind)
				assert.Equal(t, c.line, slip.Line)
				assert.InDelta(t, c.mm, slip.Size.MM(), 4*slip.U.MM())
				assert.Empty(t, slip.Others)
				assert.InDelta(t, c.off, report.Across.Error.MM(), 4*report.Across.U.MM())
				assert.Equal(t, c.off != 0, report.Across.Verdict == mark.Outside)
				assert.Equal(t, slip.Row >= 0, slip.IsReading())
				require.Len(t, report.Across.Diagonals, 2)
				for _, d := range report.Across.Diagonals {
					assert.InDelta(t, d.Nominal.MM(), d.Expected.MM(), 0.3, "the marks are where they belong")
				}
			})
		}
	}
}

// A diagonal is held against where its end mark really is, so a mark that is off does
// not count twice.
func TestDiagonalKnowsItsMark(t *testing.T) {
	l, s, rng := layout(t), shop{ruler: 0.001, caliper: 0.001}, rand.New(rand.NewPCG(45, 46))
	b := s.draw(l, rng)
	b.marks[mark.Treble][24] += 3
	report := check(t, l, s.measureAll(b, l, rng), s.options())
	require.Len(t, report.Slips, 1)
	assert.Equal(t, mark.MarkOff, report.Slips[0].Kind)
	assert.Equal(t, mark.Within, report.Across.Verdict)
	for _, d := range report.Across.Diagonals {
		assert.InDelta(t, d.Expected.MM(), d.Measured.MM(), 0.003)
	}
	assert.Greater(t, report.Across.Diagonals[0].Expected, report.Across.Diagonals[0].Nominal+unit.MM(2.5))
}

// A diagonal alone cannot tell a wrong nut from a wrong reading.
func TestOneDiagonalLeavesItOpen(t *testing.T) {
	l, s, rng := layout(t), coarseShop, rand.New(rand.NewPCG(47, 48))
	b := s.draw(l, rng)
	b.offset = 3
	report := check(t, l, s.measureAcross(b, l, rng)[:1], s.options())
	require.Len(t, report.Slips, 1)
	assert.Equal(t, mark.OffsetOff, report.Slips[0].Kind)
	assert.Len(t, report.Slips[0].Others, 1)
	assert.False(t, report.Pass)
}

// The zero of a tool counts for what it measures: the ruler's for diagonals, the
// calipers' for the offset.
func TestZeroOfTheToolAcross(t *testing.T) {
	l, s, rng := layout(t), shop{ruler: 0.001, caliper: 0.001}, rand.New(rand.NewPCG(49, 50))
	across := s.measureAcross(s.draw(l, rng), l, rng)
	for _, c := range []struct {
		zero     mark.Options
		readings []mark.Reading
		counts   bool
	}{
		{mark.Options{RulerZero: unit.MM(3)}, across[:1], true},
		{mark.Options{RulerZero: unit.MM(3)}, across[2:], false},
		{mark.Options{CaliperZero: unit.MM(3)}, across[:1], false},
		{mark.Options{CaliperZero: unit.MM(3)}, across[2:], true},
	} {
		assert.Equal(t, c.counts, check(t, l, c.readings, c.zero).Across.U > unit.MM(1.7))
	}
}
