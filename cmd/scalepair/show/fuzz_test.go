package show_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"math"
	"os"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/show"
)

// oddTexts have broken writers before, or look as if they could.
var oddTexts = []string{
	"", "p12", "72.6 ± 0.4", "72.6 +/- 0.4", "a|b", `a\|b`, "漢字", "<&\"'>", "\x1b[1m", "\xff\xfe", "\r\n", "=1+1", "\ufffe", "e\u0301\u200d",
	"# x", "- ", "1. a", "**b**", "`c`", "&amp;", "\u2028", "\u00a0", `"`, `""`, ",", "{{.}}", "</td>", "x ± y ± z", "\u202e\u0085\U000e0041\x7f",
}

// addTexts adds the oddities and the names, labels and remarks of the demo.
func addTexts(f *testing.F) {
	texts := oddTexts
	for _, file := range []string{"../../../data/demo/readings.csv", "../../../data/demo/build.toml"} {
		src, err := os.ReadFile(file)
		require.NoError(f, err)
		for i, line := range strings.Split(string(src), "\n") {
			if i%6 == 0 { // one in six says it all
				texts = append(texts, line)
			}
		}
	}
	for _, s := range texts {
		f.Add(s, "own length mm", 20)
		f.Add("string", s, 80)
	}
}

// FuzzCells puts any text everywhere and any width, in every format.
func FuzzCells(f *testing.F) {
	addTexts(f)
	f.Fuzz(func(t *testing.T, cell, head string, width int) {
		r := &show.Report{Title: head}
		r.Text(cell)
		r.Cautions(cell)
		tab := r.Table("t", head, show.Words("h"+head), show.Figures(cell).Later(1), show.Words(head+cell))
		tab.Row(cell, head, cell)
		tab.Row()
		tab.Total(head, cell)
		tab.Note("%s", cell)
		width = 20 + (width%100+100)%100
		requireWithin(t, written(t, r, show.Options{Width: width}), width)
		for _, format := range []show.Format{show.TableFormat, show.Markdown, show.CSV, show.HTML} {
			for _, ascii := range []bool{false, true} {
				text := written(t, r, show.Options{Format: format, ASCII: ascii})
				require.True(t, utf8.ValidString(text))
				require.NotContains(t, text, "\x1b")
				for i := 0; ascii && i < len(text); i++ {
					require.Less(t, text[i], byte(0x80), text)
				}
			}
		}
		page := written(t, r, show.Options{Format: show.HTML})
		require.Len(t, texts(t, page, "td"), 9)
	})
}

// What is written into a table reads back from every format that can be read:
// CSV, Markdown, the page and JSON.
func FuzzReadBack(f *testing.F) {
	addTexts(f)
	f.Fuzz(func(t *testing.T, a, b string, n int) {
		r := &show.Report{}
		tab := r.Table("t", "", show.Words("x"+a), show.Words(b), show.Words("last"))
		tab.Row(a, b, "end")
		tab.Row(b, a, a+b)
		tab.Total("all", b, a)
		want := [][]string{{tidy("x" + a), tidy(b), "last"}, {tidy(a), tidy(b), "end"}, {tidy(b), tidy(a), tidy(a + b)}, {"all", tidy(b), tidy(a)}}

		got, err := csv.NewReader(strings.NewReader(written(t, r, show.Options{Format: show.CSV}))).ReadAll()
		require.NoError(t, err)
		require.Equal(t, want, got)

		// Blanks at a cell's ends mean nothing in Markdown; a no-break blank is
		// written as one.
		var trimmed [][]string
		for _, row := range want {
			trimmed = append(trimmed, []string{strings.Trim(row[0], " "), strings.Trim(row[1], " "), strings.Trim(row[2], " ")})
		}
		require.Equal(t, trimmed, markdownCells(t, written(t, r, show.Options{Format: show.Markdown})))

		page := written(t, r, show.Options{Format: show.HTML})
		var cells []string
		for _, c := range append(texts(t, page, "th"), texts(t, page, "td")...) {
			cells = append(cells, strings.ReplaceAll(c, "\u00a0", " "))
		}
		require.Equal(t, append(append(append(append([]string{}, want[0]...), want[1]...), want[2]...), want[3]...), cells)

		requireJSON(t, map[string]any{"a": a, "b": []string{b}, "n": float64(n) / 7})
	})
}

// markdownCells reads a table as GitHub's dialect does: a bar parts cells unless
// a backslash stands before it, and a backslash before a mark means the mark.
func markdownCells(t *testing.T, text string) [][]string {
	var out [][]string
	for i, line := range strings.Split(strings.TrimRight(text, "\n"), "\n") {
		require.True(t, strings.HasPrefix(line, "|") && strings.HasSuffix(line, "|"), "%q", line)
		if i == 1 {
			require.Empty(t, strings.Trim(line, "|-: "))
			continue
		}
		var cells []string
		var cell strings.Builder
		for j, escaped := 1, false; j < len(line); j++ {
			switch c := line[j]; {
			case escaped || c != '\\' && c != '|':
				cell.WriteByte(c)
				escaped = false
			case c == '\\':
				escaped = true
			default:
				cells = append(cells, strings.Trim(cell.String(), " "))
				cell.Reset()
			}
		}
		require.Empty(t, cell.String(), "%q", line)
		out = append(out, cells)
	}
	last := out[len(out)-1]
	for i, cell := range last { // totals are bold
		if cell != "" {
			require.True(t, len(cell) >= 4 && strings.HasPrefix(cell, "**") && strings.HasSuffix(cell, "**"), cell)
			last[i] = strings.Trim(cell[2:len(cell)-2], " ")
		}
	}
	return out
}

// requireJSON holds values to what they were, but for bytes that are no UTF-8; a
// number that is none leaves nothing written. Nine digits are kept.
func requireJSON(t *testing.T, values map[string]any) {
	var b bytes.Buffer
	require.NoError(t, show.JSON(&b, values))
	require.False(t, bytes.ContainsFunc(b.Bytes(), func(r rune) bool { return r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r)) }))
	var got map[string]any
	require.NoError(t, json.Unmarshal(b.Bytes(), &got))
	require.Equal(t, string([]rune(values["a"].(string))), got["a"])
	n := values["n"].(float64)
	require.InDelta(t, n, got["n"], 1e-8*math.Abs(n))
	b.Reset()
	require.Error(t, show.JSON(&b, map[string]float64{"n": math.NaN()}))
	require.Empty(t, b.Bytes())
}
