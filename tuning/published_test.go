package tuning_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
	"scalepair/tuning"
)

func TestPublishedPitches(t *testing.T) {
	for _, row := range testutil.LoadPublished(t, "pitch.csv") {
		t.Run(row.ID, func(t *testing.T) {
			n, err := tuning.ParseNote(row.Text("note"))
			require.NoError(t, err)
			switch row.Quantity {
			case "frequency_hz":
				row.Check(t, n.Pitch(tuning.ConcertA).Hz())
			case "midi_number":
				row.Check(t, float64(n.Semitone))
			case "ratio":
				row.Check(t, raised(t, n, row))
			case "inharmonicity_change_percent":
				row.Check(t, 100*(raised(t, n, row)-1))
			default:
				t.Fatalf("no check for %s", row.Quantity)
			}
		})
	}
}

// raised returns the ratio of the frequencies the row's semitones apart.
func raised(t *testing.T, n tuning.Note, row testutil.Published) float64 {
	up := n.Up(int(row.Input(t, "semitones")))
	return up.Pitch(tuning.ConcertA).Hz() / n.Pitch(tuning.ConcertA).Hz()
}
