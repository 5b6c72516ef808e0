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

// A steep fan is warned of by its own steepest lines: with the neutral fret at the
// last it is the nut alone.
func TestSteepLines(t *testing.T) {
	w := demo(t)
	for _, c := range []struct{ bass, treble, neutral, steep float64 }{{715, 605, 7, 3}, {645, 605, 24, 1}, {615, 605, 24, 0}} {
		spec := w.d.Spec
		spec.Bass, spec.Treble, spec.Neutral = unit.MM(c.bass), unit.MM(c.treble), fan.Neutral{Fret: c.neutral}
		l, err := fan.New(spec)
		require.NoError(t, err)
		caution, steep := report.NewLayout(w.in, l).Cautions[0], 0.0
		for words, slant := range map[string]unit.Angle{"the nut by %.1f°": l.Nut.Slant, "the last fret by %.1f°": l.Frets[24].Line.Slant, "the saddle line by %.1f°": l.Saddle.Slant} {
			if deg := math.Abs(slant.Degrees()); deg > 25 {
				steep++
				assert.Contains(t, caution, fmt.Sprintf(words, deg))
			}
		}
		assert.Equal(t, c.steep, steep)
		assert.Equal(t, steep > 0, strings.HasPrefix(caution, "Steep: "))
	}
}

// The neutral fret in force has a row with the slants that the fan has, at the nut
// too; none where the step passes over it. Every step of the neutral fret turns nut and
// last fret the same way, and no more is said of them: the angle between the two
// shrinks with one pair and grows with another.
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
		for i, row := range neutral.Rows[1:] {
			assert.Greater(t, neutral.Rows[i].Nut, row.Nut)
			assert.Greater(t, neutral.Rows[i].Last, row.Last)
		}
		now, ok := got.That["as_it_is_now"]
		require.Equal(t, found, ok, given)
		if !ok {
			continue
		}
		assert.Equal(t, w.l.Spec.Neutral, fan.Neutral{Fret: now.Fret, Bridge: now.Bridge})
		var doc strings.Builder
		require.NoError(t, report.NewNeutralTable(w.in, w.l, neutral, fan.Playing{}).Document().Write(&doc, document.Options{Width: 200}))
		assert.Regexp(t, fmt.Sprintf(`(?m)^ *%s +%.1f +-?[0-9.]+ +%.1f +%.1f +%.1f `, given, plain(w.l.Nut.Slant), plain(w.l.Frets[12].Line.Slant),
			plain(w.l.Frets[24].Line.Slant), plain(w.l.Saddle.Slant)), doc.String())
		assert.Contains(t, strings.Join(strings.Fields(doc.String()), " "), "slants the high frets and the bridge; one near the body does the opposite. - No rule decides.")
	}
}

// plain gives degrees without the sign of a zero.
func plain(a unit.Angle) float64 { return math.Round(a.Degrees()*10)/10 + 0 }
