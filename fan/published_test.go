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
