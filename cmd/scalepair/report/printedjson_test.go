package report_test

import (
	"encoding/json"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/report"
)

// decoded gives a value as a reader of its JSON finds it.
func decoded(t *testing.T, value any) map[string]any {
	t.Helper()
	text, err := json.Marshal(value)
	require.NoError(t, err)
	var out map[string]any
	require.NoError(t, json.Unmarshal(text, &out))
	return out
}

// at goes down keys and places in lists.
func at(t *testing.T, v any, path ...any) any {
	t.Helper()
	for _, step := range path {
		switch step := step.(type) {
		case string:
			m, ok := v.(map[string]any)
			require.True(t, ok, "%v", path)
			v = m[step]
		case int:
			list, ok := v.([]any)
			require.True(t, ok && step < len(list), "%v", path)
			v = list[step]
		}
	}
	return v
}

// agrees holds a column of a table against a key of a list in JSON. A share is
// a percentage in the table; a value left out in JSON is a dash there.
func (p printed) agrees(t *testing.T, list any, table, head, key string, scale float64) {
	t.Helper()
	for i := range list.([]any) {
		want := absent
		if x, ok := at(t, list, i, key).(float64); ok {
			want = x * scale
		}
		p.same(t, p.cell(t, table, head, i), want, "%s and %s, row %d", head, key, i)
	}
}

func (p printed) cell(t *testing.T, table, head string, row int) string {
	t.Helper()
	rows := p.table(t, table)
	for k, c := range rows.Columns {
		if c.Head == head {
			return rows.Rows[row][k]
		}
	}
	require.Fail(t, "no such column", "%s in %s", head, table)
	return ""
}

// What JSON says under a key, the tables say in millimetres, newtons, degrees
// and percent under a head.
func TestJSONAgreesWithTheTables(t *testing.T) {
	mmAndN := systems["mm and N"]
	w := demoBench(t, mmAndN.Units)
	in := &report.Input{Job: w.j, Plan: w.p}

	p := printed{mmAndN, report.Tension(in, w.d)}
	strings := at(t, decoded(t, report.DetailValues(in, w.d)), "tunings", 0, "strings")
	for key, head := range map[string]string{
		"string": "string", "length_mm": "own length mm", "tension_n": "tension N", "tension_target_n": "wanted N",
		"off_target_percent": "off target %", "inharmonicity_cents": "inharmonicity cents",
	} {
		p.agrees(t, strings, "strings", head, key, 1)
	}
	p.agrees(t, strings, "strings", "breaking share open %", "breaking_share_open", 100)
	for i := range 3 {
		for k, fret := range []string{"5", "12"} {
			bend := func(key string) float64 { return at(t, strings, i, "bends", k, key).(float64) }
			require.Equal(t, fret, strconv.FormatFloat(bend("fret"), 'f', -1, 64))
			p.same(t, p.cell(t, "strings", "bending force N at fret "+fret, i), bend("bending_force_n"))
			p.same(t, p.cell(t, "strings", "travel mm at fret "+fret, i), bend("bend_distance_mm"))
		}
		most := max(at(t, strings, i, "bends", 0, "breaking_share").(float64), at(t, strings, i, "bends", 1, "breaking_share").(float64))
		p.same(t, p.cell(t, "strings", "breaking share bent %", i), 100*most)
	}

	p = printed{mmAndN, report.SetOut(in, w.s)}
	p.agrees(t, strings, "compensation", "least mm", "compensation_least_mm", 1)
	p.agrees(t, strings, "compensation", "most mm", "compensation_most_mm", 1)

	p = printed{mmAndN, report.Layout(in, w.l)}
	layout := decoded(t, report.LayoutValues(in, w.l))
	for key, head := range map[string]string{"fret": "fret", "bass_from_nut_mm": "bass, from nut mm", "treble_from_nut_mm": "treble, from nut mm", "slant_deg": "slant °"} {
		p.agrees(t, layout["marks"], "marks", head, key, 1)
	}
	for key, head := range map[string]string{"string": "string", "length_mm": "own length mm", "nut_y_mm": "nut, from centreline mm", "saddle_y_mm": "saddle, from centreline mm"} {
		p.agrees(t, layout["strings"], "lines", head, key, 1)
	}
	p.same(t, p.cell(t, "slants", "slant °", 0), at(t, layout, "nut_slant_deg").(float64))
	last := len(p.table(t, "slants").Rows) - 1
	p.same(t, p.cell(t, "slants", "slant °", last), at(t, layout, "saddle_slant_deg").(float64))
}

func TestJSONOfAnAdviceAgreesWithItsTables(t *testing.T) {
	in, a := demoAdvice(t)
	p := printed{systems["mm and N"], report.Advise(in, a)}
	got := decoded(t, report.AdviceValues(in, a))
	for key, head := range map[string]string{
		"bass_mm": "bass mm", "treble_mm": "treble mm", "difference_mm": "difference mm", "tension_misfit_percent": "tension misfit %",
		"bending_force_misfit_percent": "bending force misfit %", "overtone_misfit_percent": "overtone misfit %", "nut_slant_deg": "nut slant °",
		"last_fret_slant_deg": "last fret slant °", "saddle_slant_deg": "saddle slant °", "nut_to_fret_1_bass_mm": "nut to fret 1 mm",
		"blank_length_mm": "blank length mm",
	} {
		p.agrees(t, got["pairs"], "pairs", head, key, 1)
	}
	p.agrees(t, got["pairs"], "confidence", "wins % of draws", "wins_percent_of_trials", 1)
	p.agrees(t, got["pairs"], "confidence", "beats the best % of draws", "beats_best_percent_of_trials", 1)
	for key, head := range map[string]string{"bass_mm": "bass mm", "treble_mm": "treble mm", "difference_mm": "difference mm",
		"tension_misfit_percent": "tension misfit %", "bending_force_misfit_percent": "bending force misfit %", "saddle_slant_deg": "saddle slant °"} {
		p.agrees(t, got["front"], "front", head, key, 1)
	}
}
