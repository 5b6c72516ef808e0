package mark_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// Facts of the workshop, marked common practice: no source stands behind them.
func TestWorkshopFacts(t *testing.T) {
	for _, row := range testutil.LoadPublished(t, "workshop.csv") {
		t.Run(row.ID, func(t *testing.T) {
			switch row.Quantity {
			case "inches in mm":
				row.Check(t, unit.Inches(row.Input(t, "inches")).MM())
			case "fret's share of the length":
				row.Check(t, shareOnTheList(t, row))
			case "marks off after one slip when marked from the nut":
				row.Check(t, float64(marksOff(t, row, false)))
			case "marks off after one slip when stepped from mark to mark":
				row.Check(t, float64(marksOff(t, row, true)))
			default:
				require.Fail(t, "unknown quantity", row.Quantity)
			}
		})
	}
}

func shareOnTheList(t *testing.T, row testutil.Published) float64 {
	l := layout(t, func(s *fan.Spec) { s.Frets = int(row.Input(t, "frets")) })
	at := l.Frets[int(row.Input(t, "fret"))].Bass.FromNut
	return resolution(t, "0.5 mm").Round(at).Set.MM() / l.Spec.Bass.MM()
}

// marksOff simulates the marking of a bass line with one slip of 2 mm, from the
// nut or stepped, and counts the marks that Check finds outside.
func marksOff(t *testing.T, row testutil.Published, stepped bool) int {
	l := layout(t, func(s *fan.Spec) { s.Frets = int(row.Input(t, "frets")) })
	s, rng := coarseShop, rand.New(rand.NewPCG(51, 52))
	b := s.draw(l, rng)
	for n := range b.marks[mark.Bass] {
		slip := int(row.Input(t, "fret"))
		if n == slip || stepped && n > slip {
			b.marks[mark.Bass][n] += 2
		}
	}
	report := check(t, l, s.measureAll(b, l, rng), s.options())
	require.Len(t, report.Slips, 1)
	require.Equal(t, int(row.Input(t, "fret")), report.Slips[0].Fret)
	return report.Outside
}
