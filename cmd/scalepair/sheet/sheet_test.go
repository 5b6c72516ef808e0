package sheet_test

import (
	"bytes"
	"encoding/xml"
	"flag"
	"fmt"
	"io"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/sheet"
	"scalepair/cmd/scalepair/show"
	"scalepair/fan/draw"
)

var update = flag.Bool("update", false, "rewrite the golden sheet")

// sample holds one of everything.
func sample(t testing.TB) sheet.Sheet {
	r := &show.Report{}
	r.Text("Before the first heading.")
	r.Heading("Words & figures")
	r.Para("A paragraph.")
	r.Bullets("one", "two")
	r.Figure("A square.", `<svg viewBox="0 0 2 2"><path d="M0 0H1V1Z"/></svg>`)
	wide := r.Table("wide", "Wide table", show.Figures("string"), show.Words("note"), show.Figures("own length mm"), show.Words("gauge"), show.Words("what to look after"))
	wide.Row("6", "B1", "710.0", "w54", "long words that may be broken into lines")
	wide.Total("all", "", "", "", "")
	wide.Note("A note.")
	r.Table("empty", "", show.Words("nothing"))
	r.Heading("1. Work")
	long := r.Table("long", "", show.Figures("fret"), show.Figures("cut to mm"))
	for i := range 11 {
		long.Row(fmt.Sprint(i+1), fmt.Sprintf("%d.5", 40+i))
	}
	long.Total("all", "500.0")
	r.Heading("2. More work")
	r.Table("short", "", show.Figures("fret"), show.Figures("from nut mm")).Row("1", "39.85")
	r.Heading("Cautions")
	r.Cautions("Saws cut.")
	s := sheet.Sheet{Title: `Trial & "error"`, Lead: "A lead.", Date: "3 May", Sections: sheet.Split(r)}
	s.Facts = []sheet.Fact{{"Bass scale", "710.0 mm"}, {"Tuning", "B1 E2"}}
	s.Sections[2].Part, s.Sections[2].Tick = "At the bench", true
	s.Sections[3].Tick, s.Sections[3].Room = true, "measured"
	s.Sections[4].Small = true
	var err error
	s.Sections[1].Drawing, err = sheet.NewDrawing(ladder(), "A short board.")
	require.NoError(t, err)
	return s
}

// ladder is a drawing of four slots on 150 mm.
func ladder() draw.Drawing {
	slots, numbers := draw.Layer{Name: draw.LayerSlots}, draw.Layer{Name: draw.LayerNumbers}
	for i := range 4 {
		x := 50 * float64(i)
		slots.Elements = append(slots.Elements, draw.Line{A: draw.Point{X: x, Y: 20}, B: draw.Point{X: x + 3, Y: -20}, Stroke: draw.SlotStroke})
		numbers.Elements = append(numbers.Elements, draw.Text{At: draw.Point{X: x, Y: 21}, Height: 3, Align: draw.Centre, Body: fmt.Sprint(i + 1)})
	}
	return draw.Drawing{Title: "Ladder", Layers: []draw.Layer{slots, numbers}}
}

func written(t testing.TB, s sheet.Sheet) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, sheet.Write(&b, s))
	return b.String()
}

func TestGolden(t *testing.T) {
	const path = "../../../testdata/sheet/sample.html"
	got := written(t, sample(t))
	assert.Equal(t, got, written(t, sample(t)), "the same bytes every time")
	if *update {
		require.NoError(t, os.MkdirAll("../../../testdata/sheet", 0o755))
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.True(t, string(want) == got, "the page differs from testdata/sheet/sample.html; look at both, then run with -update")
}

func TestSplit(t *testing.T) {
	r := &show.Report{}
	r.Text("a")
	r.Heading("One")
	r.Heading("Two")
	r.Text("b")
	r.Text("c")
	assert.Equal(t, []sheet.Section{
		{Blocks: []show.Block{show.Para{Text: "a"}}}, {Title: "One"}, {Title: "Two", Blocks: []show.Block{show.Para{Text: "b"}, show.Para{Text: "c"}}},
	}, sheet.Split(r))
	assert.Empty(t, sheet.Split(&show.Report{Title: "nothing"}))
}

// element is what the tests look at of a page.
type element struct {
	name, class, text string
}

// elements reads a page as strict XML.
func elements(t testing.TB, page string) []element {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(page))
	var out []element
	var open []int
	for {
		token, err := d.Token()
		if err == io.EOF {
			require.Empty(t, open)
			return out
		}
		require.NoError(t, err)
		switch e := token.(type) {
		case xml.StartElement:
			el := element{name: e.Name.Local}
			for _, a := range e.Attr {
				if a.Name.Local == "class" {
					el.class = a.Value
				}
			}
			open = append(open, len(out))
			out = append(out, el)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			for _, i := range open {
				out[i].text += string(e)
			}
		}
	}
}

func texts(all []element, name, class string) []string {
	var out []string
	for _, e := range all {
		if e.name == name && (class == "" || strings.Contains(" "+e.class+" ", " "+class+" ")) {
			out = append(out, strings.TrimSpace(e.text))
		}
	}
	return out
}

func TestPage(t *testing.T) {
	page := written(t, sample(t))
	all := elements(t, page)
	assert.Equal(t, []string{`Trial & "error"`}, texts(all, "h1", ""))
	assert.Equal(t, []string{"Words & figures", "1. Work", "2. More work", "Cautions"}, texts(all, "h2", ""))
	assert.Equal(t, []string{"Words & figures", "1. Work", "2. More work", "Cautions"}, texts(all, "a", ""))
	assert.Equal(t, []string{"At the bench"}, texts(all, "p", "part"))
	assert.Equal(t, []string{"710.0 mm", "B1 E2"}, texts(all, "dd", ""))
	assert.Equal(t, []string{"3 May"}, texts(all, "p", "date"))
	assert.Equal(t, []string{"Saws cut."}, texts(all, "ul", "cautions"))
	// 11 rows to tick in two halves, each with its head, the total under the second; then one.
	assert.Len(t, texts(all, "input", ""), 12)
	assert.Len(t, texts(all, "div", "two"), 1)
	assert.Equal(t, strings.Fields("6 all (none) 1 2 3 4 5 6 7 8 9 10 11 all 1"), firstCells(all))
	assert.Equal(t, []string{"measured", ""}, append(texts(all, "th", "room"), texts(all, "td", "room")...))
	assert.Equal(t, []string{"(none)"}, regexp.MustCompile(`\(none\)`).FindAllString(page, -1))
	assert.Len(t, texts(all, "table", "wide"), 1, "only that one is too wide for a telephone")
}

// firstCells are the first cells of every row, boxes and heads left out.
func firstCells(all []element) []string {
	var out []string
	row := false
	for _, e := range all {
		switch {
		case e.name == "tr":
			row = true
		case row && e.name == "td" && e.class != "box":
			out, row = append(out, e.text), false
		case row && e.name == "th":
			row = false
		}
	}
	return out
}

// Nothing on the page asks for anything, and the page forbids it.
func TestPageAsksForNothing(t *testing.T) {
	page := written(t, sample(t))
	assert.Contains(t, page, `content="default-src 'none'; style-src 'unsafe-inline'"`)
	assert.NotRegexp(t, `<(script|link|img|iframe|object|embed|base)\b|(src|srcset|href|action|data)="[^#]|@import|url\(|\bon\w+="`, page)
}

// Any words stay words.
func TestOddWords(t *testing.T) {
	for name, words := range map[string]string{
		"mark-up": `</style><script>alert("1")</script>`, "css": `"; } body { display: none } /* \`, "quotes": `'"` + "`",
		"letters": "é ½ ± 日本 🎸", "lines": "one\ntwo\r\n\tthree", "long": strings.Repeat("very long ", 60), "control": "a\x00b\x1bc", "broken": "a\xffb",
	} {
		t.Run(name, func(t *testing.T) {
			s := sample(t)
			s.Title, s.Date = words, words
			s.Facts[0].Value = draw.OneLine(words)
			page := written(t, s)
			all := elements(t, page)
			assert.Equal(t, draw.OneLine(words), strings.TrimSpace(texts(all, "h1", "")[0]))
			assert.Equal(t, draw.OneLine(words), texts(all, "dd", "")[0])
			assert.Len(t, texts(all, "style", ""), 1)
			assert.Empty(t, texts(all, "script", ""))
			foot := regexp.MustCompile(`@bottom-left \{ content: "((?:[A-Za-z0-9 ]|\\[0-9a-f]{6} )*)"; font`).FindStringSubmatch(page)
			require.NotNil(t, foot, "the foot of the page is one CSS string")
			assert.NotContains(t, page, "ZgotmplZ")
		})
	}
}
