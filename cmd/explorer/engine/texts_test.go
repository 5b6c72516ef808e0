package engine_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/explorer/engine"
)

// result reads the result of an answer.
func result[T any](t *testing.T, a answer) (r T) {
	t.Helper()
	require.NoError(t, json.Unmarshal(a.Result, &r))
	return r
}

type sheet struct {
	Readings, Marks string
	Columns         []string
	Known           []string `json:"known_columns"`
	Added           int
	Words           map[string][]string
	Rows            []struct {
		Line  int
		Cells map[string]string
	}
}

func TestACellIsChangedAndItsFaultStandsAtIt(t *testing.T) {
	var e engine.Engine
	_, build, readings := folder(t, "demo")
	a := call(t, &e, "readings", map[string]any{"build": build, "readings": readings})
	require.True(t, a.OK, "%+v", a.Faults)
	was := result[sheet](t, a)
	assert.Equal(t, readings, was.Readings)
	row := was.Rows[2]
	require.NotEmpty(t, row.Cells["mass_g"])

	a = call(t, &e, "readings", map[string]any{"build": build, "readings": readings, "edits": []any{
		map[string]any{"line": row.Line, "column": "mass_g", "text": "0,65"}, map[string]any{"add": map[string]string{"gauge": "p99"}}}})
	require.False(t, a.OK)
	require.NotEmpty(t, a.Faults)
	assert.Equal(t, []any{"readings.csv", row.Line, "mass_g", "0,65"}, []any{a.Faults[0].Input, a.Faults[0].Line, a.Faults[0].Key, a.Faults[0].Given})
	now := result[sheet](t, a)
	assert.Equal(t, "0,65", now.Rows[2].Cells["mass_g"])
	assert.Equal(t, strings.Count(readings, "\n")+1, strings.Count(now.Readings, "\n"))
	assert.Equal(t, "p99", now.Rows[len(now.Rows)-1].Cells["gauge"])
	assert.Equal(t, 1, now.Added)
}

func TestColumnsThatATableLacksAreInTheUnitOfTheBuild(t *testing.T) {
	var e engine.Engine
	_, build, readings := folder(t, "eight_inch")
	known := func(text string) []string {
		return result[sheet](t, call(t, &e, "readings", map[string]any{"build": build, "readings": text})).Known
	}
	assert.Subset(t, known(readings), []string{"outer_in", "length_in", "mass_g", "speaking_length_in"})
	assert.NotContains(t, strings.Join(known(readings), " "), "_mm")
	assert.Subset(t, known("gauge,outer_mm\n"), []string{"outer_mm", "length_in"}, "the table's own heading stands")
}

// The reader refuses other words under core shape and kind, so all that it takes are offered;
// of constructions those that the table has.
func TestCellsAreOfferedTheirWords(t *testing.T) {
	var e engine.Engine
	words := result[sheet](t, call(t, &e, "readings", map[string]any{"readings": "gauge,construction,kind\nw46,flat wound,listed\n"})).Words
	assert.Equal(t, []string{"plain", "flat wound"}, words["construction"])
	for _, column := range []string{"core_shape", "kind", "diameters", "material"} {
		require.NotEmpty(t, words[column])
		for _, word := range words[column] {
			a := call(t, &e, "readings", map[string]any{"readings": "gauge," + column + "\nw46," + word + "\n"})
			for _, f := range a.Faults {
				assert.NotEqual(t, column, f.Key, "%s: %s", word, f.Text)
			}
		}
	}
	assert.Empty(t, words["gauge"])
}

func TestMeasuredMarksAreFilledIn(t *testing.T) {
	var e engine.Engine
	_, build, readings := folder(t, "demo")
	form := result[sheet](t, call(t, &e, "form", map[string]any{"build": build, "readings": readings}))
	a := call(t, &e, "marks", map[string]any{"build": build, "readings": readings, "marks": form.Marks,
		"edits": []any{map[string]any{"line": 8, "column": "measured_mm", "text": "37.0"}}})
	require.True(t, a.OK, "%+v", a.Faults)
	filled := result[sheet](t, a)
	a = call(t, &e, "check", map[string]any{"build": build, "readings": readings, "marks": filled.Marks})
	require.True(t, a.OK, "%+v", a.Faults)
	assert.Contains(t, string(a.Result), `"measured_mm":37`)
}

func TestAChangedBuildComesBackWithItsFaults(t *testing.T) {
	var e engine.Engine
	_, build, _ := folder(t, "demo")
	set := func(edits ...map[string]any) answer {
		return call(t, &e, "set", map[string]any{"build": build, "edits": edits})
	}
	a := set(map[string]any{"key": "neck.frets", "text": "22"})
	require.True(t, a.OK, "%+v", a.Faults)
	assert.Equal(t, strings.Replace(build, "[neck]\nfrets = 24", "[neck]\nfrets = 22", 1), result[map[string]string](t, a)["build"])
	a = set(map[string]any{"key": "neck.frets", "text": "99"})
	require.False(t, a.OK)
	assert.Equal(t, []string{"build.toml", "neck.frets", "99"}, []string{a.Faults[0].Input, a.Faults[0].Key, a.Faults[0].Given})
	assert.Contains(t, result[map[string]string](t, a)["build"], "frets = 99")
	assert.False(t, set(map[string]any{"key": "neck.no_such_key", "text": "1"}).OK)
}

func TestWhatPanicsIsAnAnswer(t *testing.T) {
	var e engine.Engine
	a := call(t, &e, "compare", map[string]any{"columns": []map[string]string{{"no such flag": "x"}}})
	require.False(t, a.OK)
	assert.Contains(t, a.Faults[0].Text, "the program failed")
	assert.True(t, call(t, &e, "layout", nil).OK)
	for _, request := range []string{"", "[]", `{"build": 1}`, "null"} {
		assert.NotPanics(t, func() { e.Call("layout", []byte(request)) })
	}
}

func TestPairsAreTheGridOfTheSearch(t *testing.T) {
	var e engine.Engine
	_, build, readings := folder(t, "demo")
	a := call(t, &e, "map", map[string]any{"build": build, "readings": readings})
	require.True(t, a.OK, "%+v", a.Faults)
	m := result[struct {
		Bass   []float64    `json:"bass_mm"`
		Treble []float64    `json:"treble_mm"`
		Error  [][]*float64 `json:"feel_error_percent"`
		AsGood [][]bool     `json:"as_good"`
		Limit  [][]string
		Limits map[string]string
	}](t, a)
	found := result[struct {
		Kept   int `json:"pairs_kept"`
		AsGood int `json:"pairs_as_good"`
		Tried  int `json:"pairs_tried"`
	}](t, call(t, &e, "advise", map[string]any{"build": build, "readings": readings, "flags": map[string]any{"trials": "0"}}))
	kept, good := 0, 0
	for b := range m.Bass {
		for i := range m.Treble {
			if m.Error[b][i] != nil {
				kept++
				assert.Empty(t, m.Limit[b][i])
			} else {
				assert.NotEmpty(t, m.Limits[m.Limit[b][i]])
			}
			if m.AsGood[b][i] {
				good++
			}
		}
	}
	assert.Equal(t, []int{found.Tried, found.Kept, found.AsGood}, []int{len(m.Bass) * len(m.Treble), kept, good})
}

// What is drawn of a fan is the fan that the layout prints.
func TestLinesAreThoseOfTheLayout(t *testing.T) {
	var e engine.Engine
	_, build, readings := folder(t, "demo")
	a := call(t, &e, "pair", map[string]any{"build": build, "readings": readings, "flags": map[string]any{"bass": "690 mm", "treble": "640 mm", "marks": true}})
	require.True(t, a.OK, "%+v", a.Faults)
	p := result[struct {
		Tension struct{ Build string }
		Layout  struct {
			Marks []struct {
				Bass   float64 `json:"bass_from_nut_mm"`
				Treble float64 `json:"treble_from_nut_mm"`
			}
		}
		Fan struct {
			Nut   [2][2]float64 `json:"nut_mm"`
			Frets []struct {
				Marks [2][2]float64 `json:"marks_mm"`
			}
			Reference []any `json:"reference_marks_mm"`
		}
	}](t, a)
	require.Len(t, p.Fan.Frets, len(p.Layout.Marks))
	for i, f := range p.Fan.Frets {
		assert.InDelta(t, p.Layout.Marks[i].Bass, distance(f.Marks[0], p.Fan.Nut[0]), 1e-5)
		assert.InDelta(t, p.Layout.Marks[i].Treble, distance(f.Marks[1], p.Fan.Nut[1]), 1e-5)
	}
	assert.Len(t, p.Fan.Reference, 22)
}

func distance(a, b [2]float64) float64 { return math.Hypot(a[0]-b[0], a[1]-b[1]) }
