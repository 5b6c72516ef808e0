package report_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/report"
)

// The layout's tables are the fan, low string first.
func TestLayoutIsTheFan(t *testing.T) {
	w := demo(t)
	var got struct {
		Marks []struct {
			Fret  int
			Bass  float64 `json:"bass_from_nut_mm"`
			Slant float64 `json:"slant_deg"`
		}
		Strings []struct {
			String int
			Note   string
			Length float64 `json:"length_mm"`
			Nut    float64 `json:"nut_y_mm"`
			Along  float64 `json:"along_saddle_line_mm"`
			Saddle float64 `json:"saddle_y_mm"`
		}
	}
	text, err := json.Marshal(report.NewLayout(w.in, w.l))
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(text, &got))
	require.Len(t, got.Marks, 24)
	for i, m := range got.Marks {
		assert.Equal(t, i+1, m.Fret)
		assert.InDelta(t, w.l.Frets[i+1].Bass.FromNut.MM(), m.Bass, 1e-6)
		assert.InDelta(t, w.l.Frets[i+1].Line.Slant.Degrees(), m.Slant, 1e-6)
	}
	require.Len(t, got.Strings, 6)
	for i, s := range got.Strings {
		line := w.l.Strings[5-i]
		assert.Equal(t, []any{6 - i, string("BEADFB"[i])}, []any{s.String, s.Note[:1]})
		assert.InDelta(t, line.Length.MM(), s.Length, 1e-6)
		assert.InDelta(t, line.Nut.Y.MM(), s.Nut, 1e-6)
		assert.InDelta(t, w.l.SaddlePositions[5-i].AlongFromBass.MM(), s.Along, 1e-6)
		assert.InDelta(t, line.Saddle.Y.MM(), s.Saddle, 1e-6)
	}
}
