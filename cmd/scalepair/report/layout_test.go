package report_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/unit"
	"scalepair/fan"
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

// A steep fan is warned of by its own steepest lines.
func TestSteepLines(t *testing.T) {
	w := demo(t)
	spec := w.d.Spec
	spec.Bass, spec.Treble, spec.Neutral = unit.MM(715), unit.MM(605), fan.Neutral{Fret: 7}
	l, err := fan.New(spec)
	require.NoError(t, err)
	deg := func(a unit.Angle) float64 { return math.Abs(a.Degrees()) }
	most, last := 0.0, 0
	for _, f := range l.Frets[1:] {
		if most = max(most, deg(f.Line.Slant)); f.Number < 7 && deg(f.Line.Slant) > 25 {
			last = f.Number
		}
	}
	require.Positive(t, last)
	caution := report.NewLayout(w.in, l).Cautions[0]
	assert.Contains(t, caution, fmt.Sprintf("Steep: the nut by %.1f°, fret", deg(l.Nut.Slant)))
	assert.Contains(t, caution, fmt.Sprintf(" by up to %.1f° and the saddle line by %.1f°. Beyond about 25.0°", most, deg(l.Saddle.Slant)))
	spec.Bass, spec.Neutral.Fret = unit.MM(645), 24
	l, err = fan.New(spec)
	require.NoError(t, err)
	assert.Contains(t, report.NewLayout(w.in, l).Cautions[0], "frets 1 to ")
	spec.Bass = unit.MM(615)
	l, err = fan.New(spec)
	require.NoError(t, err)
	assert.NotContains(t, report.NewLayout(w.in, l).Cautions[0], "Steep")
}

// The neutral fret in force stands out, at the nut too, with the slants that the
// fan has; not where the step passes over it.
func TestNeutralInForce(t *testing.T) {
	for given, found := range map[string]bool{"0": true, "7": true, "bridge": true, "7.5": false} {
		w := demo(t, "--neutral", given)
		neutral, err := fan.AdviseNeutral(w.l.Spec, 1, fan.Playing{})
		require.NoError(t, err)
		text, err := json.Marshal(report.NewNeutralTable(w.in, w.l, neutral, fan.Playing{}))
		require.NoError(t, err)
		var got struct {
			That map[string]struct {
				Fret   float64 `json:"neutral_fret"`
				Bridge bool    `json:"neutral_at_bridge"`
			} `json:"neutral_fret_that"`
		}
		require.NoError(t, json.Unmarshal(text, &got))
		now, ok := got.That["as_it_is_now"]
		require.Equal(t, found, ok, given)
		if !ok {
			continue
		}
		assert.Equal(t, w.l.Spec.Neutral, fan.Neutral{Fret: now.Fret, Bridge: now.Bridge})
		var doc strings.Builder
		require.NoError(t, report.NewNeutralTable(w.in, w.l, neutral, fan.Playing{}).Document().Write(&doc, document.Options{Width: 200}))
		assert.Regexp(t, fmt.Sprintf(`as it is now +%s +%.1f +-?[0-9.]+ +%.1f +%.1f +%.1f `, given, plain(w.l.Nut.Slant), plain(w.l.Frets[12].Line.Slant),
			plain(w.l.Frets[24].Line.Slant), plain(w.l.Saddle.Slant)), doc.String())
	}
}

// plain gives degrees without the sign of a zero.
func plain(a unit.Angle) float64 { return math.Round(a.Degrees()*10)/10 + 0 }
