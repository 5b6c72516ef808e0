package fan_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/fan"
)

func TestPublishedFrets(t *testing.T) {
	for _, row := range testutil.LoadPublished(t, "frets.csv") {
		k := fan.K(row.Input(t, "fret"))
		switch row.Quantity {
		case "fretted pitch":
			row.Check(t, row.Input(t, "open_hz")/(1-k))
		case "pitch ratio":
			row.Check(t, 1/(1-k))
		case "share of the length":
			row.Check(t, k)
		default:
			require.Fail(t, "unknown quantity", row.Quantity)
		}
	}
}

func TestPublishedCircleSegments(t *testing.T) {
	for _, row := range testutil.LoadPublished(t, "circle_segment.csv") {
		require.Equal(t, "height", row.Quantity)
		row.Check(t, fan.Drop(unit.MM(row.Input(t, "radius")), unit.MM(row.Input(t, "chord")/2)).MM())
	}
}

// The positions worked out in print-like tables to four decimals: no published
// values, but arithmetic done elsewhere.
func TestPositionsAgainstArithmetic(t *testing.T) {
	table := map[float64]map[int]float64{
		647.7:  {1: 36.3526, 2: 70.6649, 3: 103.0514, 5: 162.4733, 7: 215.4121, 12: 323.85, 19: 431.5561, 22: 465.9453, 24: 485.775},
		650:    {1: 36.4817, 2: 70.9158, 3: 103.4173, 5: 163.0502, 7: 216.177, 12: 325, 19: 433.0885, 22: 467.5999, 24: 487.5},
		628.65: {1: 35.2834, 2: 68.5865, 3: 100.0205, 5: 157.6946, 7: 209.0765, 12: 314.325, 19: 418.8632, 22: 452.2411, 24: 471.4875},
		685.8:  {1: 38.491, 2: 74.8217, 3: 109.1132, 5: 172.0305, 7: 228.0834, 12: 342.9, 19: 456.9417, 22: 493.3539, 24: 514.35},
	}
	for length, positions := range table {
		spec := sixStrings()
		spec.Bass, spec.Treble = unit.MM(length), unit.MM(length-20)
		layout, err := fan.New(spec)
		require.NoError(t, err)
		for fret, want := range positions {
			require.InDelta(t, want, layout.Frets[fret].Bass.FromNut.MM(), 0.00005)
		}
	}
}
