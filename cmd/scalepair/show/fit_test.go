package show_test

import (
	"strings"
	"testing"
	"unicode"

	"github.com/clipperhouse/displaywidth"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/cmd/scalepair/show"
)

// cellWidth measures print by itself: wide letters two cells, accents none.
func cellWidth(line string) int {
	n := 0
	for _, r := range line {
		n += displaywidth.Rune(r)
	}
	return n
}

func requireWithin(t require.TestingT, text string, width int) {
	for _, line := range strings.Split(text, "\n") {
		require.LessOrEqual(t, cellWidth(line), width, "line %q of\n%q", line, text)
		require.Equal(t, strings.TrimRight(line, " "), line, "trailing blanks")
	}
}

// letters draws texts with what users' labels hold and worse.
func letters() *rapid.Generator[string] {
	words := rapid.SliceOfN(rapid.OneOf(
		rapid.StringMatching(`[a-zA-Z0-9.+-]{1,14}`),
		rapid.SampledFrom([]string{"±", "72.6 ± 0.4 N", "25½", "漢字", "ギター", "é", "Ø", "12°", "|", "a|b", "\n", "\t", "\x1b[31m", "🎸", "e\u0301", "\u00a0", "\u202e", "own length mm"}),
		rapid.String(),
	), 0, 6)
	return rapid.Custom(func(t *rapid.T) string { return strings.Join(words.Draw(t, "words"), " ") })
}

func anyReport() *rapid.Generator[*show.Report] {
	return rapid.Custom(func(t *rapid.T) *show.Report {
		text := letters()
		r := &show.Report{Title: text.Draw(t, "title")}
		r.Heading("%s", text.Draw(t, "heading"))
		r.Text(text.Draw(t, "para"))
		r.Bullets(text.Draw(t, "bullet"), text.Draw(t, "bullet"))
		n := rapid.IntRange(1, 9).Draw(t, "columns")
		var columns []show.Column
		for range n {
			c := show.Column{Head: text.Draw(t, "head"), Priority: rapid.IntRange(0, 3).Draw(t, "priority")}
			c.Align = show.Align(rapid.IntRange(0, 1).Draw(t, "align"))
			columns = append(columns, c)
		}
		tb := r.Table("t", text.Draw(t, "caption"), columns...)
		for range rapid.IntRange(0, 4).Draw(t, "rows") {
			tb.Row(rapid.SliceOfN(text, n, n).Draw(t, "row")...)
		}
		if rapid.Bool().Draw(t, "totals") {
			tb.Total(rapid.SliceOfN(text, n, n).Draw(t, "total")...)
		}
		tb.Note("%s", text.Draw(t, "note"))
		r.Cautions(text.Draw(t, "caution"))
		return r
	})
}

// ink counts the visible letters of a text.
func ink(texts ...string) map[rune]int {
	out := map[rune]int{}
	for _, s := range texts {
		for _, r := range s {
			if unicode.IsGraphic(r) && !unicode.IsSpace(r) {
				out[r]++
			}
		}
	}
	return out
}

func TestEveryLineFitsAndNothingIsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyReport().Draw(t, "report")
		width := rapid.IntRange(20, 130).Draw(t, "width")
		text := written(t, r, show.Options{Width: width})
		requireWithin(t, text, width)
		got := ink(text)
		tab := tableOf(r)
		want := []string{r.Title}
		for _, c := range tab.Columns {
			want = append(want, c.Head)
		}
		for _, row := range tab.Rows {
			want = append(want, row...)
		}
		want = append(want, tab.Foot...)
		if len(tab.Foot) > 0 && len(tab.Columns) > 1 {
			want = append(want[:len(want)-len(tab.Foot)], tab.Foot[1:]...) // a lone first word of totals may go
		}
		for letter, n := range ink(append(want, tab.Notes...)...) {
			require.GreaterOrEqual(t, got[letter], n, "letter %q of\n%s", letter, text)
		}
	})
}

func TestAsciiStaysAsciiAndFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyReport().Draw(t, "report")
		width := rapid.IntRange(20, 130).Draw(t, "width")
		for _, f := range []show.Format{show.TableFormat, show.Markdown, show.CSV, show.HTML} {
			text := written(t, r, show.Options{Format: f, Width: width, ASCII: true})
			beyond := strings.IndexFunc(text, func(r rune) bool { return r >= 0x80 })
			require.Equal(t, -1, beyond, "%q", text)
			if f == show.TableFormat {
				requireWithin(t, text, width)
			}
		}
	})
}

func TestNarrowing(t *testing.T) {
	r := &show.Report{}
	table := r.Table("t", "Strings", show.Figures("string"), show.Figures("own length mm"),
		show.Figures("bending force at fret 12").Later(2), show.Words("gauge"))
	table.Row("1", "660.0", "6.1", "p12")
	for _, c := range []struct {
		name  string
		width int
		want  string
	}{
		{"as it is", 60, `Strings
string  own length mm  bending force at fret 12  gauge
─────────────────────────────────────────────
     1          660.0              6.1  p12
`},
		{"headings of two lines", 36, `Strings
              own  bending force at
string  length mm  fret 12  gauge
─────────────────────────────────
     1      660.0      6.1  p12
`},
		{"headings of three lines", 31, `Strings
           own
        length  bending force at
string      mm  fret 12  gauge
──────────────────────────────
     1   660.0      6.1  p12
`},
		{"the highest priority moves to a second part", 24, `Strings
              own
string  length mm  gauge
────────────────────────
     1      660.0  p12

Strings (continued)
string  bending force at fret 12
───────────────────────
     1              6.1
`},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := written(t, r, show.Options{Width: c.width})
			assert.Equal(t, c.want, got)
		})
	}
}

// What reads as one figure stays on one line, at whatever place the line ends.
func TestAFigureStaysWhole(t *testing.T) {
	for _, whole := range []string{"7 7/32 in", "25 1/2 in,", "72.6 ± 0.4 N", "± 0.4 N", "5 %.", "3/4 in"} {
		for lead := range 30 {
			r := &show.Report{}
			r.Text(strings.Repeat("x", lead) + " " + whole + " and so on")
			got := written(t, r, show.Options{Width: 30})
			require.Contains(t, got, whole, "after %d letters", lead)
			requireWithin(t, got, 30)
		}
	}
	r := &show.Report{}
	r.Text("at fret 7 of 24 frets")
	assert.Equal(t, "at fret 7 of 24\nfrets\n", written(t, r, show.Options{Width: 20}), "other words still break")
}

// A later part of a table without a caption is headed like one.
func TestContinuedWithoutCaption(t *testing.T) {
	r := &show.Report{}
	r.Table("bass-marks", "", show.Figures("fret"), show.Figures("from nut mm"), show.Figures("step mm"), show.Figures("width of a cent mm")).Row("1", "38.50", "38.50", "0.1234")
	assert.Contains(t, written(t, r, show.Options{Width: 23}), "\nBass marks (continued)\n")
}

func TestWideLetters(t *testing.T) {
	r := &show.Report{}
	table := r.Table("t", "", show.Words("gauge"), show.Figures("tension N"))
	table.Row("弦一", "72.6")
	table.Row("plain", "64.1")
	want := "gauge  tension N\n────────────────\n弦一        72.6\nplain       64.1\n"
	assert.Equal(t, want, written(t, r, show.Options{}))
}

func tableOf(r *show.Report) *show.Table {
	for _, b := range r.Blocks {
		if t, ok := b.(*show.Table); ok {
			return t
		}
	}
	return nil
}
