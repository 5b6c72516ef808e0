package mark_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan/mark"
)

// What goes wrong between the lines is named, with the lines measured or not.
func TestAcrossSlips(t *testing.T) {
	l, s := layout(t), coarseShop
	for _, c := range []struct {
		name        string
		offset      float64   // of the treble nut
		of          mark.Kind // the reading that is off
		mm          float64
		kind        mark.SlipKind
		line        mark.Line
		measuredOff bool
	}{
		{"nut offset", -2, -1, -2, mark.OffsetOff, mark.Treble, true},
		{"first diagonal", 0, mark.FromBassNut, 3, mark.DiagonalSlip, mark.Treble, false},
		{"second diagonal", 0, mark.FromTrebleNut, -3, mark.DiagonalSlip, mark.Bass, false},
		{"offset reading", 0, mark.NutOffset, 2, mark.OffsetSlip, mark.Treble, false},
	} {
		for _, lines := range []bool{true, false} {
			t.Run(c.name, func(t *testing.T) {
				rng := seeded(41)
				b := s.draw(l, rng)
				b.offset = c.offset
				readings := s.measureAll(b, l, rng)
				spoil(readings, c.of, 0, 24, c.mm)
				if !lines {
					readings = readings[len(readings)-3:]
				}
				report := check(t, l, readings, s.options())
				require.Len(t, report.Slips, 1)
				slip := report.Slips[0]
				assert.Equal(t, []any{c.kind, c.line}, []any{slip.Kind, slip.Line})
				assert.InDelta(t, c.mm, slip.Size.MM(), 4*slip.U.MM())
				assert.Empty(t, slip.Others)
				assert.InDelta(t, c.offset, report.Across.Error.MM(), 4*report.Across.U.MM())
				assert.Equal(t, c.measuredOff, report.Across.Verdict == mark.Outside)
				assert.Equal(t, slip.Reading != nil, slip.IsReading())
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
	l, rng := layout(t), seeded(45)
	b := exactShop.draw(l, rng)
	b.marks[mark.Treble][24] += 3
	report := check(t, l, exactShop.measureAll(b, l, rng), exactShop.options())
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
	l, rng := layout(t), seeded(47)
	b := coarseShop.draw(l, rng)
	b.offset = 3
	report := check(t, l, coarseShop.measureAcross(b, l, rng)[:1], coarseShop.options())
	require.Len(t, report.Slips, 1)
	assert.Equal(t, mark.OffsetOff, report.Slips[0].Kind)
	assert.Len(t, report.Slips[0].Others, 1)
	assert.False(t, report.Pass)
	// Rounding to 0.5 mm, a hand of 0.05 mm at both ends, and a mark as far off; the
	// diagonal runs at less than six degrees to the line.
	assert.InDelta(t, math.Sqrt(0.25/12+3*0.05*0.05), report.Across.Diagonals[0].U.MM(), 0.001)
}

// The zero of a tool counts for what it measures: the ruler's for diagonals, the
// calipers' for the offset.
func TestZeroOfTheToolAcross(t *testing.T) {
	l := layout(t)
	across := exactShop.all(l, seeded(49))[96:]
	for i, zero := range []mark.Options{{RulerZero: unit.MM(3)}, {CaliperZero: unit.MM(3)}} {
		assert.Equal(t, i == 0, check(t, l, across[:1], zero).Across.U > unit.MM(1.7))
		assert.Equal(t, i == 1, check(t, l, across[2:], zero).Across.U > unit.MM(1.7))
	}
}
