package mark_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// What goes wrong between the lines is told apart, with the lines measured or
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
		{"first diagonal", nil, func(a []mark.Reading) { a[0].MM += 3 }, mark.DiagonalSlip, 3, mark.Treble, 0},
		{"second diagonal", nil, func(a []mark.Reading) { a[1].MM -= 3 }, mark.DiagonalSlip, -3, mark.Bass, 0},
		{"offset reading", nil, func(a []mark.Reading) { a[2].MM += 2 }, mark.OffsetSlip, 2, mark.Treble, 0},
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
				assert.Equal(t, c.kind, slip.Kind, slip.Words())
				assert.Equal(t, c.line, slip.Line)
				assert.InDelta(t, c.mm, slip.MM, 4*slip.U)
				assert.Empty(t, slip.Others)
				assert.InDelta(t, c.off, report.Across.ErrorMM, 4*report.Across.U)
				assert.Equal(t, c.off != 0, report.Across.Verdict == mark.Outside)
				assert.Equal(t, slip.Row >= 0, slip.IsReading())
				assert.Len(t, report.Across.Diagonals, 2)
			})
		}
	}
}

// A nut that lies wrong shows in the diagonals beside a nut offset that was read
// wrong, and the reading is as wrong as it stands from where the nut lies.
func TestANutAndItsReadingMayBothBeWrong(t *testing.T) {
	l, s, rng := layout(t), coarseShop, rand.New(rand.NewPCG(61, 62))
	b := s.draw(l, rng)
	b.offset = 3
	across := s.measureAcross(b, l, rng)
	across[2].MM -= 4
	report := check(t, l, across, s.options())
	require.Len(t, report.Slips, 2)
	nut, reading := report.Slips[0], report.Slips[1]
	assert.Equal(t, mark.OffsetSlip, reading.Kind)
	assert.InDelta(t, -4, reading.MM, 4*reading.U)
	assert.Equal(t, mark.OffsetOff, nut.Kind)
	assert.InDelta(t, 3, nut.MM, 4*nut.U)
	// A reading that may be wrong by any amount says nothing of the nut.
	without := check(t, l, across[:2], s.options()).Slips
	require.Len(t, without, 1)
	assert.InEpsilon(t, without[0].MM, nut.MM, 1e-9)
	assert.InEpsilon(t, without[0].U, nut.U, 1e-9)
	assert.InDelta(t, 3, report.Across.ErrorMM, 4*report.Across.U)
	assert.Equal(t, mark.Outside, report.Across.Verdict)
}

// Lines drawn too far apart make both diagonals longer.
func TestSpanShowsInBothDiagonals(t *testing.T) {
	l := layout(t)
	wide := layout(t, func(s *fan.Spec) { s.NutSpread, s.SaddleSpread = unit.MM(53), unit.MM(72) })
	s, rng := shop{ruler: 0.1, caliper: 0.05}, rand.New(rand.NewPCG(43, 44))
	readings := s.measureAll(s.draw(wide, rng), wide, rng)
	report := check(t, l, readings, s.options())
	require.Len(t, report.Slips, 1)
	assert.Equal(t, mark.SpanOff, report.Slips[0].Kind)
	assert.InDelta(t, 10, report.Slips[0].MM, 2)
	assert.Equal(t, mark.Within, report.Across.Verdict)
}

// A diagonal goes by where its end mark really is, so a mark that is off does
// not count twice.
func TestDiagonalKnowsItsMark(t *testing.T) {
	l, s, rng := layout(t), coarseShop, rand.New(rand.NewPCG(45, 46))
	b := s.draw(l, rng)
	b.marks[mark.Treble][24] += 3
	report := check(t, l, s.measureAll(b, l, rng), s.options())
	require.Len(t, report.Slips, 1)
	assert.Equal(t, mark.MarkOff, report.Slips[0].Kind)
	assert.Equal(t, mark.Within, report.Across.Verdict)
	for _, d := range report.Across.Diagonals {
		assert.InDelta(t, d.ExpectedMM, d.MM, 4*d.OffU)
	}
	assert.Greater(t, report.Across.Diagonals[0].ExpectedMM, report.Across.Diagonals[0].PlanMM+2.5)
}

// A diagonal alone cannot tell a wrong nut from a wrong reading.
func TestOneDiagonalLeavesItOpen(t *testing.T) {
	l, s, rng := layout(t), coarseShop, rand.New(rand.NewPCG(47, 48))
	b := s.draw(l, rng)
	b.offset = 3
	report := check(t, l, s.measureAcross(b, l, rng)[:1], s.options())
	require.Len(t, report.Slips, 1)
	assert.Equal(t, mark.OffsetOff, report.Slips[0].Kind)
	assert.Len(t, report.Slips[0].Others, 2)
	assert.False(t, report.Pass)
}

// One name for a diagonal in the setting-out list, the readings and the slips;
// it begins with what the measurement file calls it.
func TestDiagonalsHaveOneName(t *testing.T) {
	list, err := mark.SettingOut(layout(t), mark.Bench{Resolution: mark.Resolution{PerUnit: 100}})
	require.NoError(t, err)
	var figures []string
	for _, task := range list.Tasks {
		for _, f := range task.Figures {
			figures = append(figures, f.Name)
		}
	}
	for end, kind := range map[mark.Line]mark.Kind{mark.Treble: mark.FromBassNut, mark.Bass: mark.FromTrebleNut} {
		name := mark.DiagonalName(end, 24)
		assert.Equal(t, kind.String()+" to "+end.String()+" mark 24", name)
		assert.Contains(t, figures, name)
		assert.Equal(t, name, mark.Reading{Kind: kind, Fret: 24}.Name())
		assert.Contains(t, mark.Finding{Kind: mark.DiagonalSlip, Line: end, Fret: 24}.Words(), name)
	}
}
