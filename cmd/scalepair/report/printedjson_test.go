package report_test

import (
	"encoding/json"
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

	p := printed{mmAndN, report.Layout(in, w.l)}
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
