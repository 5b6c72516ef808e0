package show_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/cmd/scalepair/show"
	"scalepair/data/fault"
)

// texts reads a page as strict XML and gives the text of every element of
// that name.
func texts(t require.TestingT, page, element string) []string {
	d := xml.NewDecoder(strings.NewReader(page))
	var out []string
	depth := 0
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			require.Zero(t, depth)
			return out
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			if token.Name.Local == element {
				depth++
				out = append(out, "")
			}
		case xml.EndElement:
			if token.Name.Local == element {
				depth--
			}
		case xml.CharData:
			if depth > 0 {
				out[len(out)-1] += string(token)
			}
		}
	}
}

// tidy is what a reader makes of any text: blanks are blanks, invisible
// characters do not count.
func tidy(s string) string {
	r := &show.Report{}
	r.Table("t", "", show.Words("h")).Row(s)
	var b bytes.Buffer
	if err := show.Write(&b, r, show.Options{Format: show.CSV}); err != nil {
		panic(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil || len(rows) < 2 {
		return ""
	}
	return rows[1][0]
}

func TestPageIsWellFormedAndSaysItAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyReport().Draw(t, "report")
		page := written(t, r, show.Options{Format: show.HTML})
		assert.NotContains(t, page, "http:")
		assert.NotContains(t, page, "https:")
		tab := tableOf(r)
		heads := texts(t, page, "th")
		require.Len(t, heads, len(tab.Columns))
		for i, c := range tab.Columns {
			require.Equal(t, tidy(c.Head), strings.ReplaceAll(heads[i], "\u00a0", " "))
		}
		ascii := written(t, r, show.Options{Format: show.HTML, ASCII: true})
		require.Equal(t, heads, texts(t, ascii, "th"), "characters by number mean the same")
	})
}

func TestPageEscapesAndMarks(t *testing.T) {
	r := &show.Report{Title: `<script>alert("1")</script> & Co`}
	r.Table("t", "", show.Words("gauge"), show.Figures("tension N")).Row("<b>", "72.6")
	page := written(t, r, show.Options{Format: show.HTML})
	assert.NotContains(t, page, "<script")
	assert.Equal(t, []string{r.Title}, texts(t, page, "h1"))
	assert.Contains(t, page, `<td>&lt;b&gt;</td><td class="n">72.6</td>`)
	assert.Contains(t, written(t, &show.Report{}, show.Options{Format: show.HTML}), "<title>scalepair</title>")
}

func TestCSVReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyReport().Draw(t, "report")
		tab := tableOf(r)
		for i := range tab.Columns {
			tab.Columns[i].Align = show.Left // figures with an uncertainty would make two columns
		}
		text := written(t, r, show.Options{Format: show.CSV})
		reader := csv.NewReader(strings.NewReader(text))
		reader.FieldsPerRecord = len(tab.Columns)
		for _, row := range append([][]string{heads(tab)}, tab.Rows...) {
			if len(row) == 1 && tidy(row[0]) == "" {
				t.Skip("a lone empty cell is an empty line")
			}
			got, err := reader.Read()
			require.NoError(t, err)
			for i, cell := range row {
				require.Equal(t, tidy(cell), got[i])
			}
		}
	})
}

func heads(t *show.Table) []string {
	var out []string
	for _, c := range t.Columns {
		out = append(out, c.Head)
	}
	return out
}

func TestCSVPartsFigureAndUncertainty(t *testing.T) {
	r := &show.Report{}
	tab := r.Table("t", "", show.Words("gauge"), show.Figures("tension N"), show.Words("remark"))
	tab.Row("p12", "72.6 ± 0.4", "72.6 ± 0.4")
	tab.Row("p13", "80.1", "")
	tab.Row("p14", "", "")
	want := "gauge,tension N,tension N uncertainty,remark\np12,72.6,0.4,72.6 ± 0.4\np13,80.1,,\np14,,,\n"
	assert.Equal(t, want, written(t, r, show.Options{Format: show.CSV}))
	assert.Equal(t, strings.ReplaceAll(want, "±", "+/-"), written(t, r, show.Options{Format: show.CSV, ASCII: true}))
}

func TestMarkdownCells(t *testing.T) {
	for name, c := range map[string]struct{ in, want string }{
		"bar":            {"a|b", `a\|b`},
		"backslash, bar": {`a\|b`, `a\\\|b`},
		"emphasis":       {"*a* _b_", `\*a\* \_b\_`},
		"code":           {"`x`", "\\`x\\`"},
		"tag":            {"<b>", `\<b>`},
		"entity":         {"&lt;", `\&lt;`},
		"link":           {"[a](b)", `\[a\](b)`},
		"line end":       {"a\nb", "a b"},
		"sharp":          {"F#3", "F#3"},
	} {
		t.Run(name, func(t *testing.T) {
			r := &show.Report{}
			r.Table("t", "", show.Words("h")).Row(c.in)
			lines := strings.Split(written(t, r, show.Options{Format: show.Markdown}), "\n")
			assert.Equal(t, c.want, strings.TrimSpace(strings.TrimSuffix(strings.TrimPrefix(lines[2], "|"), "|")))
		})
	}
}

func TestMarkdownLineStarts(t *testing.T) {
	for in, want := range map[string]string{
		"# 1": `\# 1`, "- x": `\- x`, "+1.2": "+1.2", "---": `\---`, "## 2": `\## 2`, "> x": `\> x`, "=": `\=`,
		"12. x": `12\. x`, "3) x": `3\) x`, "12 mm": "12 mm", "12": "12", "": "", "7.5": "7.5", "F#3": "F#3", "7.": `7\.`,
	} {
		r := &show.Report{}
		r.Heading("h")
		r.Text(in)
		got := written(t, r, show.Options{Format: show.Markdown})
		assert.Equal(t, "## h\n\n"+want+"\n", got)
	}
}

// TestMarkdownTableShape counts the bars that part cells: none may come from
// a cell's text.
func TestMarkdownTableShape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := &show.Report{}
		n := rapid.IntRange(1, 5).Draw(t, "columns")
		tab := r.Table("t", "", make([]show.Column, n)...)
		tab.Row(rapid.SliceOfN(letters(), n, n).Draw(t, "row")...)
		for _, line := range strings.Split(strings.TrimSuffix(written(t, r, show.Options{Format: show.Markdown}), "\n"), "\n") {
			bare := strings.ReplaceAll(strings.ReplaceAll(line, `\\`, ""), `\|`, "")
			require.Equal(t, n+1, strings.Count(bare, "|"), "line %q", line)
		}
	})
}

func TestOnly(t *testing.T) {
	for name, c := range map[string]struct {
		only   []string
		report *show.Report
		want   string
	}{
		"misspelt":     {[]string{"string"}, sample(), `--only: no table of that name here ("string"); did you mean "strings"? the tables are strings, dropped, empty`},
		"nothing near": {[]string{"q"}, sample(), `--only: no table of that name here ("q"); the tables are strings, dropped, empty`},
		"none at all":  {[]string{"q"}, &show.Report{}, `--only: no table of that name here ("q"); this report has no tables`},
	} {
		t.Run(name, func(t *testing.T) {
			var b bytes.Buffer
			err := show.Write(&b, c.report, show.Options{Only: c.only})
			assert.EqualError(t, err, c.want)
			assert.Empty(t, b.String())
		})
	}
	err := show.Write(io.Discard, sample(), show.Options{Only: []string{"a", "strings", "b"}})
	var faults fault.List
	require.ErrorAs(t, err, &faults)
	assert.Len(t, faults, 2, "every wrong name at once")
	assert.Equal(t, []string{"strings", "dropped", "empty"}, sample().TableNames())
}

func TestCSVWithoutTable(t *testing.T) {
	err := show.Write(io.Discard, &show.Report{Title: "x"}, show.Options{Format: show.CSV})
	assert.EqualError(t, err, "--format: this report has no table to write as csv; use table, markdown or html")
}

func TestParseFormat(t *testing.T) {
	for i, word := range show.FormatWords() {
		f, err := show.ParseFormat(" " + strings.ToUpper(word))
		require.NoError(t, err)
		assert.Equal(t, show.Format(i), f)
		assert.Equal(t, word, f.String())
	}
	_, err := show.ParseFormat("markdwn")
	assert.EqualError(t, err, `no such format ("markdwn"); did you mean "markdown"? use table, markdown, csv, html, json`)
}

func TestJSON(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, show.JSON(&b, map[string]any{"a": "<&>", "b": []int{1}}))
	assert.Equal(t, "{\n  \"a\": \"<&>\",\n  \"b\": [\n    1\n  ]\n}\n", b.String())
}

// Numbers of JSON are rounded to nine digits, whole ones and those within
// texts stay.
func TestJSONRoundsNumbers(t *testing.T) {
	for want, x := range map[string]any{
		"690":               690.0000000000001,
		"0.333333333":       1.0 / 3,
		"-0.0666666667":     -1.0 / 15,
		"1e-9":              1e-9,
		"1.23456789e-10":    1.23456789012345e-10,
		"12345678901234567": uint64(12345678901234567),
		"123456789000":      123456789012.4,
		"1.79769313e+308":   math.MaxFloat64,
		"5e-324":            math.SmallestNonzeroFloat64,
		"0":                 0.0,
		`"0.12345678901234567 \"1.0000000000000001\" \\"`: `0.12345678901234567 "1.0000000000000001" \`,
		`{"1.23456789012345678":0.1}`:                     map[string]float64{"1.23456789012345678": 0.1},
	} {
		var b bytes.Buffer
		require.NoError(t, show.JSON(&b, x))
		var compact bytes.Buffer
		require.NoError(t, json.Compact(&compact, b.Bytes()))
		assert.Equal(t, want, compact.String())
	}
}

func TestMisuseIsABug(t *testing.T) {
	r := &show.Report{}
	tab := r.Table("t", "", show.Words("h"))
	assert.Panics(t, func() { tab.Row("a", "b") })
	assert.Panics(t, func() { tab.Total("a", "b") })
	assert.Panics(t, func() { _ = show.Write(io.Discard, r, show.Options{Format: show.JSONFormat}) })
}

func TestCautionsAreHeadedOnce(t *testing.T) {
	for _, headed := range []bool{false, true} {
		r := &show.Report{}
		r.Text("x")
		if headed {
			r.Heading("Cautions")
		}
		r.Cautions("it can break")
		for _, f := range []show.Format{show.Markdown, show.HTML} {
			assert.Equal(t, 1, strings.Count(written(t, r, show.Options{Format: f}), "Cautions"))
		}
	}
}
