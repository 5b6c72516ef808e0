package table_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/csvtable"
	"scalepair/data/testutil"
	"scalepair/data/unit"
)

var _ = testutil.Seed("1")

type row struct {
	number int
	gauge  string
	pull   unit.Uncertain[unit.Force]
	length unit.Length
	cents  unit.Cents
}

var rows = []row{
	{6, "w|54", unit.Uncertain[unit.Force]{Value: 71.66, U: 0.13}, 0.71, 17.9},
	{1, "p13", unit.Uncertain[unit.Force]{Value: 77.3, U: 0.02}, 0.69, 0},
}

func sample(u table.Units) *table.Table {
	return table.Of("strings", "Strings", rows,
		table.Whole("string", "string", func(r row) int { return r.number }),
		table.Words("gauge", "gauge", func(r row) string { return r.gauge }),
		table.ForceU(u, "tension", "tension", func(r row) unit.Uncertain[unit.Force] { return r.pull }),
		table.Length(u, "scale length", "scale_length", 1, func(r row) unit.Length { return r.length }),
		table.Cents("inharmonicity", "inharmonicity", 1, func(r row) unit.Cents { return r.cents }).
			Known(func(r row) bool { return r.cents > 0 }).As(func(row) string { return "≥ 17.9" }),
		table.Values("frets", func(r row) any { return []int{r.number} }),
		table.Words("hidden", "hidden", func(row) string { return "no" }).When(false),
	).Total(map[string]string{"string": "all", "tension": "149.0 ± 0.2"}).Note("± is one standard uncertainty.", "")
}

func TestText(t *testing.T) {
	assert.Equal(t, strings.Join([]string{
		"string  gauge    tension N  scale length mm  inharmonicity cents",
		"────────────────────────────────────────────────────────────────",
		"     6  w|54    71.7 ± 0.1            710.0               ≥ 17.9",
		"     1  p13     77.3 ± 0.1            690.0                    –",
		"────────────────────────────────────────────────────────────────",
		"   all         149.0 ± 0.2",
		""}, "\n"), sample(table.Units{}).Text(0, false))
}

func TestTextInParts(t *testing.T) {
	assert.Equal(t, strings.Join([]string{
		"                                scale",
		"string  gauge    tension N  length mm",
		"-------------------------------------",
		"     6  w|54    71.7 ± 0.1      710.0",
		"     1  p13     77.3 ± 0.1      690.0",
		"-------------------------------------",
		"   all         149.0 ± 0.2",
		"",
		"string  inharmonicity cents",
		"---------------------------",
		"     6               ≥ 17.9",
		"     1                    –",
		""}, "\n"), sample(table.Units{}).Text(40, true))
}

func TestMarkdown(t *testing.T) {
	assert.Equal(t, strings.Join([]string{
		`| string | gauge |   tension N | scale length mm | inharmonicity cents |`,
		`|-------:|:------|------------:|----------------:|--------------------:|`,
		`|      6 | w\|54 |  71.7 ± 0.1 |           710.0 |              ≥ 17.9 |`,
		`|      1 | p13   |  77.3 ± 0.1 |           690.0 |                   – |`,
		`|    all |       | 149.0 ± 0.2 |                 |                     |`,
		""}, "\n"), sample(table.Units{}).Markdown())
}

func TestCSVKeepsUncertaintiesApart(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, sample(table.Units{Length: unit.DecimalInches, Force: unit.PoundsForce}).WriteCSV(&b))
	got, err := csv.NewReader(&b).ReadAll()
	require.NoError(t, err)
	// 0.71 m / 0.0254 = 27.953 in; 71.66 N / 4.44822 = 16.11 lbf, 0.13 N 0.03 lbf.
	assert.Equal(t, [][]string{
		{"string", "gauge", "tension lbf", "tension, standard uncertainty lbf", "scale length in", "inharmonicity cents"},
		{"6", "w|54", "16.11", "0.03", "27.953", "≥ 17.9"},
		{"1", "p13", "17.38", "0.01", "27.165", ""},
	}, got)
}

// A word beside a number, for people in its cell, is a column of its own for
// programs.
func TestBeside(t *testing.T) {
	beside := table.Of("t", "", rows, table.Cents("inharmonicity", "", 1, func(r row) unit.Cents { return r.cents }).
		Known(func(r row) bool { return r.cents > 0 }).Beside("of gauge", func(r row) string { return r.gauge }))
	var b bytes.Buffer
	require.NoError(t, beside.WriteCSV(&b))
	assert.Equal(t, "inharmonicity cents,of gauge\n17.9,w|54\n,\n", b.String())
	assert.Contains(t, beside.Text(0, false), "17.9 (w|54)\n")
}

// What a spreadsheet opens holds no formula, in cells as in headings, and reads
// back as it was; numbers stay numbers.
func TestCSVHoldsNoFormula(t *testing.T) {
	labels := []string{"=1+1", "+a", "-a", "@a", "'=1", "-7.3", "p10"}
	csvOf := func(heading string) string {
		var b bytes.Buffer
		require.NoError(t, table.Of("t", "", labels, table.Words(heading, "x", func(s string) string { return s })).WriteCSV(&b))
		return b.String()
	}
	assert.Equal(t, "gauge\n'=1+1\n'+a\n'-a\n'@a\n''=1\n-7.3\np10\n", csvOf("gauge"))
	assert.True(t, strings.HasPrefix(csvOf("=cmd()"), "'=cmd()\n"))
	rows, faults := csvtable.Read(strings.NewReader(csvOf("gauge")), "t.csv", []csvtable.Column{{Name: "gauge"}})
	require.NoError(t, faults.Err())
	for i, r := range rows {
		assert.Equal(t, labels[i], r.Get("gauge"))
	}
}

// A column that is known in no row says nothing to people; programs get it.
func TestAColumnOfDashesIsLeftOut(t *testing.T) {
	nowhere := table.Of("t", "", rows, table.Words("gauge", "gauge", func(r row) string { return r.gauge }),
		table.Cents("inharmonicity", "inharmonicity", 1, func(r row) unit.Cents { return r.cents }).Known(func(row) bool { return false }))
	for _, text := range []string{nowhere.Text(0, false), nowhere.HTML(), nowhere.Markdown()} {
		assert.NotContains(t, text, "inharmonicity")
		assert.Contains(t, text, "p13")
	}
	var b bytes.Buffer
	require.NoError(t, nowhere.WriteCSV(&b))
	assert.Contains(t, b.String(), "gauge,inharmonicity cents\n")
	got, err := json.Marshal(nowhere)
	require.NoError(t, err)
	assert.Contains(t, string(got), `"inharmonicity_cents":null`)
}

func TestJSONIsInFixedUnits(t *testing.T) {
	for _, u := range []table.Units{{}, {Length: unit.InchFractions, Force: unit.KilogramsForce}} {
		got, err := json.Marshal(sample(u))
		require.NoError(t, err)
		assert.Equal(t, `[{"string":6,"gauge":"w|54","tension_n":71.66,"tension_standard_uncertainty_n":0.13,"scale_length_mm":710,"inharmonicity_cents":17.9,"frets":[6]},`+
			`{"string":1,"gauge":"p13","tension_n":77.3,"tension_standard_uncertainty_n":0.02,"scale_length_mm":690,"inharmonicity_cents":null,"frets":[1]}]`, string(got))
	}
}

func TestHTMLEscapes(t *testing.T) {
	h := table.Of("t", "", []string{"<b>&"}, table.Words("a<b", "a", func(s string) string { return s })).HTML()
	assert.Contains(t, h, "&lt;b&gt;&amp;")
	assert.Contains(t, h, "a&lt;b")
	assert.NotContains(t, h, "<b>")
}

func TestNoRows(t *testing.T) {
	empty := table.Of("t", "T", []string(nil), table.Words("a", "a", func(s string) string { return s }))
	assert.Equal(t, "(none)\n", empty.Text(40, false))
	got, err := json.Marshal(empty)
	require.NoError(t, err)
	assert.Equal(t, "[]", string(got))
}

// Whatever the width, every word is printed, and no line is wider.
func TestTextFitsAndLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.SliceOfN(rapid.StringMatching(`[a-z]{1,6}( [a-z]{1,6}){0,8}`), 5, 5), 1, 4).Draw(t, "rows")
		width := rapid.IntRange(85, 200).Draw(t, "width")
		var columns []table.Column[[]string]
		for i := range 5 {
			columns = append(columns, table.Words("heading of a column", "k", func(r []string) string { return r[i] }))
		}
		text := table.Of("t", "", words, columns...).Text(width, false)
		for _, line := range strings.Split(text, "\n") {
			assert.LessOrEqual(t, utf8.RuneCountInString(line), width)
		}
		for _, r := range words {
			for _, c := range r {
				for _, w := range strings.Fields(c) {
					assert.Contains(t, text, w)
				}
			}
		}
	})
}

// What wood must have is never rounded down.
func TestAtLeast(t *testing.T) {
	for _, c := range []struct {
		u    unit.LengthUnit
		l    unit.Length
		want string
	}{
		{unit.Millimetres, unit.MM(500.04), "500.1 mm"}, {unit.Millimetres, unit.MM(500.1), "500.1 mm"},
		{unit.DecimalInches, unit.Inch * 20.0001, "20.001 in"}, {unit.InchFractions, unit.Inch * 20.001, "20 1/64 in"},
	} {
		assert.Equal(t, c.want, table.Units{Length: c.u}.AtLeastText(c.l, 1))
	}
}
