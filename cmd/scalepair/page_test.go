package main

import (
	"bytes"
	"context"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"html"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/chart"
	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/testutil"
)

// everything is a document with every kind of block, and more of them than a
// sheet of paper takes.
func everything() *document.Document {
	d := &document.Document{Title: "Every block: of a document (invented)"}
	d.Para("Some words about the whole, long enough that they go over the end of a line in any window: %s.", strings.Repeat("and more ", 20))
	d.Heading("Strings")
	bars := chart.Bars{Title: "Tension", XLabel: "tension N"}
	for i := range 6 {
		bars.Bars = append(bars.Bars, chart.Bar{Label: fmt.Sprint(i + 1), Value: 60 + 3*float64(i), U: 0.5, Target: 70, Note: "+3 %"})
	}
	d.Figure("tensions", bars.SVG())
	d.Table(rows("wide", 8, 9))
	d.Heading("Marks")
	marks := rows("marks", 24, 3)
	marks.Tick = true
	d.Table(marks)
	d.Add(document.Block{Kind: document.Heading, Level: 3, Text: "Steps"})
	for i := range 12 {
		d.List(strings.Repeat(fmt.Sprintf("a long point %d ", i), 50))
	}
	d.Cautions("A string can break and whip.", strings.Repeat("Wear something over the eyes. ", 12))
	d.Heading("Tall rows")
	d.Table(table.Of("tall", "Rows of many lines", make([]int, 20), table.Words("words", "words", func(int) string { return strings.Repeat("many words ", 60) })))
	d.Heading("Last")
	return d
}

// rows is a table of so many rows and columns of figures.
func rows(name string, n, columns int) *table.Table {
	list := make([]int, n)
	all := []table.Column[int]{table.Words("note and gauge", "", func(int) string { return "F#3 on w42 (estimated)" })}
	for i := range columns - 1 {
		all = append(all, table.Whole(fmt.Sprintf("some quantity %d mm", i), "", func(int) int { return 1000 + i }))
	}
	return table.Of(name, "A table called "+name, list, all...).Note("A note below the table.")
}

func pageOf(t *testing.T, d *document.Document) []byte {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, d.Write(&b, document.Options{Format: document.HTML}))
	return b.Bytes()
}

// frame is how a browser lays one page out in a window.
type frame struct {
	Page    string
	Width   int
	Dark    bool
	Night   bool     // the page knows of the dark
	Scroll  int      // width that the page takes
	Beyond  []string // elements that reach beyond the window, or hide a part of themselves
	Faint   []string // texts of less than 4.5 to 1 against what is behind them (WCAG 2.2, 1.4.3)
	Letters float64  // height of the smallest type of a table, px
}

// measuring lays pages out side by side in windows of given widths, and
// writes what it finds as JSON into the element "found". What stands in a
// region that scrolls by itself may be wider than the window.
const measuring = `<!DOCTYPE html><html><body><pre id="found"></pre><script>
const lum = c => { const [r, g, b] = c.map(v => { v /= 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4 }); return 0.2126 * r + 0.7152 * g + 0.0722 * b };
const rgba = s => (s.match(/[\d.]+/g) || []).map(Number);
function behind(win, e) {
  for (; e; e = e.parentElement) { const c = rgba(win.getComputedStyle(e).backgroundColor); if (c.length === 3 || c[3] > 0.5) return c.slice(0, 3) }
  return win.matchMedia("(prefers-color-scheme: dark)").matches ? [18, 18, 18] : [255, 255, 255];
}
function look(f, want) {
  const win = f.contentWindow, doc = f.contentDocument, out = { Page: want.page, Width: want.width, Dark: want.dark, Night: win.matchMedia("(prefers-color-scheme: dark)").matches, Scroll: doc.documentElement.scrollWidth, Beyond: [], Faint: [], Letters: 1000 };
  for (const e of doc.querySelectorAll("header *, main *")) {
    const box = e.getBoundingClientRect(), name = e.tagName + "." + (e.getAttribute("class") || "") + " " + (e.textContent || "").trim().slice(0, 40);
    if (box.width === 0 || e.parentElement.closest("svg")) continue;
    if (!e.parentElement.closest(".across, .table")) {
      if (box.right > want.width + 0.5 || box.left < -0.5) out.Beyond.push(name);
      if (!e.matches(".across, .table, svg") && e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0) out.Beyond.push("hidden: " + name);
    }
    const own = [...e.childNodes].some(n => n.nodeType === 3 && n.textContent.trim());
    if (!own || e.closest("svg")) continue;
    const a = lum(rgba(win.getComputedStyle(e).color).slice(0, 3)), b = lum(behind(win, e));
    if ((Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05) < 4.5) out.Faint.push(name);
    if (e.matches("td")) out.Letters = Math.min(out.Letters, parseFloat(win.getComputedStyle(e).fontSize));
  }
  for (const e of doc.querySelectorAll(".tables > div + div table")) if (e.scrollWidth > want.width) out.Beyond.push("marks: " + e.textContent.slice(0, 40));
  for (const row of doc.querySelectorAll(".tick tbody tr")) {
    row.scrollIntoView({ block: "center" });
    const box = row.getBoundingClientRect(), hit = doc.elementFromPoint(Math.min(box.right, want.width) - 40, (box.top + box.bottom) / 2);
    if (box.height < 24 || !hit || hit.closest("label")?.control !== row.querySelector("input")) out.Beyond.push("not to be touched: " + row.textContent.slice(0, 40));
  }
  return out;
}
const wanted = %s, found = [];
let left = wanted.length;
for (const w of wanted) {
  const f = document.createElement("iframe");
  f.style = "width:" + w.width + "px;height:600px;border:0;color-scheme:" + (w.dark ? "dark" : "light");
  f.onload = () => { found.push(look(f, w)); if (--left === 0) document.getElementById("found").textContent = JSON.stringify(found) };
  f.src = w.page;
  document.body.append(f);
}
</script></body></html>`

// want is a window to look at a page in.
type want struct {
	Page  string `json:"page"`
	Width int    `json:"width"`
	Dark  bool   `json:"dark"`
}

// lookAt opens pages in windows of one browser.
func lookAt(t *testing.T, pages map[string][]byte, wants []want) ([]frame, visit, *site) {
	t.Helper()
	list, err := json.Marshal(wants)
	require.NoError(t, err)
	pages["/frames.html"] = fmt.Appendf(nil, measuring, list)
	s := newSite(t, pages)
	v := browse(t, s.URL+"/frames.html", "--virtual-time-budget=20000", "--dump-dom")
	m := regexp.MustCompile(`(?s)<pre id="found">(.*?)</pre>`).FindStringSubmatch(v.dom)
	require.NotNil(t, m, v.dom)
	var found []frame
	require.NoError(t, json.Unmarshal([]byte(html.UnescapeString(m[1])), &found), v.console)
	require.Len(t, found, len(wants))
	return found, v, s
}

// ran runs a command line and gives what it printed.
func ran(t *testing.T, args ...string) []byte {
	t.Helper()
	var out, errs bytes.Buffer
	require.Zero(t, run(context.Background(), args, &out, &errs), "%s", &errs)
	return out.Bytes()
}

// A page in a browser asks for nothing, complains of nothing, fits windows from
// a telephone's to a desk's without scrolling sideways but in tables and
// pictures, and its words contrast with what is behind them, by day and by night.
func TestPagesInABrowser(t *testing.T) {
	t.Parallel()
	testutil.NeedTool(t, "chromium")
	pages, wants := map[string][]byte{}, []want{}
	shown := pagesToLookAt(t)
	for _, line := range []string{"gauges", "gauges w46 p10", "gauges --next", "advise --full", "compare", "tension", "tension --explain 6", "layout", "layout --neutral-table"}[:testutil.Times(9, 1)] {
		shown[strings.ReplaceAll(line, " ", "_")] = ran(t, append(strings.Fields(line), "--format", "html")...)
	}
	for name, page := range shown {
		pages["/"+name+".html"] = page
		for _, width := range []int{360, 800, 1400} {
			wants = append(wants, want{"/" + name + ".html", width, width == 800})
		}
	}
	found, v, s := lookAt(t, pages, wants)
	for _, f := range found {
		name := fmt.Sprintf("%s at %d px, dark %v", f.Page, f.Width, f.Dark)
		assert.Equal(t, f.Dark, f.Night, name)
		assert.LessOrEqual(t, f.Scroll, f.Width, name)
		assert.Empty(t, f.Beyond, name)
		assert.Empty(t, f.Faint, name)
		assert.GreaterOrEqual(t, f.Letters, 14.0, name)
	}
	assert.Empty(t, v.console)
	assert.Empty(t, v.outside)
	assert.Empty(t, s.strangers())
}

// sheetOf runs bench --out and gives the page.
func sheetOf(t *testing.T, args ...string) []byte {
	t.Helper()
	to := filepath.Join(t.TempDir(), "sheet.html")
	ran(t, append([]string{"bench", "--out", to}, args...)...)
	text, err := os.ReadFile(to)
	require.NoError(t, err)
	return text
}

// pagesToLookAt are the pages that a browser is shown: one of everything and the
// sheet of a six-string; in full those of eight strings in inches, a bass, seven
// strings in two tunings, a straight and a reverse fan too.
func pagesToLookAt(t *testing.T) map[string][]byte {
	pages := map[string][]byte{"everything": pageOf(t, everything()), "six": sheetOf(t)}
	if !testutil.Full() {
		return pages
	}
	for _, name := range []string{"eight_inch", "bass_five", "seven"} {
		pages[name] = sheetOf(t, "../../testdata/builds/"+name+"/build.toml")
	}
	pages["straight"] = sheetOf(t, "--bass", "648mm", "--treble", "648mm")
	readings, err := filepath.Abs("../../testdata/builds/seven/readings.csv")
	require.NoError(t, err)
	reverse := filepath.Join(t.TempDir(), "reverse.toml")
	require.NoError(t, os.WriteFile(reverse, fmt.Appendf(nil, `readings = %q
[strings]
tuning = "E2 A2 D3 G3 B3 E4"
gauges = ["w46", "w36", "w26", "p17", "p13", "p10"]
[scales]
reverse_fan = true
[chosen]
bass = "640 mm"
treble = "660 mm"
[neck]
frets = 24
string_spread_at_nut = "36 mm"
string_spread_at_saddle = "54 mm"
`, readings), 0o600))
	pages["reverse"] = sheetOf(t, reverse)
	return pages
}

// requireSheets holds a sheet to two sheets of paper for the choice and six for the
// bench, none of them empty, with the marks of both lines side by side on one.
func requireSheets(t *testing.T, pdf string, paper []string) {
	bench := slices.IndexFunc(paper, func(text string) bool { return strings.Contains(text, "At the bench\n") })
	t.Logf("choice %d, bench %d sheets of paper", bench, len(paper)-bench)
	assert.LessOrEqual(t, bench, 2)
	assert.LessOrEqual(t, len(paper)-bench, 6)
	words, _ := wordsOf(t, pdf)
	for i, list := range words {
		assert.Greater(t, len(list), 80, "words on sheet %d", i+1)
	}
	marks := slices.IndexFunc(paper, func(text string) bool { return strings.Contains(text, "4. Marks on both lines\n") })
	var captions []word
	for i, w := range words[marks][1:] {
		if before := words[marks][i]; w.text == "line" && (before.text == "Bass" || before.text == "Treble") {
			captions = append(captions, before)
		}
	}
	require.Len(t, captions, 2)
	assert.InDelta(t, captions[0].y1, captions[1].y1, 0.5)
	assert.Contains(t, paper[marks], "5. Checks before the first cut\n")
}

// Headings nest, and no two boxes have one name.
func TestSheetIsWellBuilt(t *testing.T) {
	page, level, names := string(sheetOf(t)), 0, map[string]bool{}
	for _, m := range regexp.MustCompile(`<h(\d)`).FindAllStringSubmatch(page, -1) {
		next := int(m[1][0] - '0')
		assert.LessOrEqual(t, next, level+1)
		level = next
	}
	for _, m := range regexp.MustCompile(`<input type="checkbox" aria-label="([^"]*)"`).FindAllStringSubmatch(page, -1) {
		assert.False(t, names[m[1]], m[1])
		names[m[1]] = true
	}
	assert.Greater(t, len(names), 100)
	assert.True(t, names["Bass line, fret 12: done"])
}

// axe finds nothing to object to on a sheet, but for contrasts, which are measured
// above in both themes.
func TestSheetIsOpenToAll(t *testing.T) {
	testutil.NeedFull(t)
	axe, err := os.ReadFile(testutil.NeedPath(t, "../../.ci/oracle/node_modules/axe-core/axe.min.js", "run npm ci in .ci/oracle"))
	require.NoError(t, err)
	page := regexp.MustCompile(`<meta http-equiv[^>]*>`).ReplaceAllString(string(sheetOf(t)), "")
	page = strings.Replace(page, "</body>", `<pre id="found"></pre><script src="/axe.js"></script><script>
axe.run(document.querySelector("main").parentElement).then(r => document.getElementById("found").textContent = r.passes.length + " passed; " + r.violations.map(v => v.id + " " + v.nodes[0].html).join("; "))
</script></body>`, 1)
	s := newSite(t, map[string][]byte{"/sheet.html": []byte(page), "/axe.js": axe})
	v := browse(t, s.URL+"/sheet.html", "--virtual-time-budget=60000", "--dump-dom")
	assert.Regexp(t, `<pre id="found">[1-9]\d+ passed; </pre>`, v.dom)
}

// The looking itself: what it must find.
func TestPagesInABrowserAreLookedAt(t *testing.T) {
	t.Parallel()
	testutil.NeedTool(t, "chromium")
	page := string(pageOf(t, everything()))
	bad := strings.Replace(page, "</h1>", `</h1><div style="width:2000px">wide</div><p style="color:#eee;background:#fff">faint</p><img src="/leak.png"/><img src="http://leak.invalid/x.png"/>`, 1)
	open := regexp.MustCompile(`<meta http-equiv[^>]*>`).ReplaceAllString(bad, "")
	require.NotEqual(t, bad, open)
	found, v, s := lookAt(t, map[string][]byte{"/bad.html": []byte(bad)}, []want{{"/bad.html", 800, false}})
	assert.Greater(t, found[0].Scroll, 800)
	assert.Contains(t, strings.Join(found[0].Beyond, "\n"), "wide")
	assert.Contains(t, strings.Join(found[0].Faint, "\n"), "faint")
	assert.Len(t, v.console, 2, "the page itself forbids to load anything")
	assert.Empty(t, s.strangers())
	testutil.NeedFull(t)
	_, v, s = lookAt(t, map[string][]byte{"/open.html": []byte(open)}, []want{{"/open.html", 800, false}})
	assert.Equal(t, []string{"/leak.png"}, s.strangers())
	assert.Contains(t, v.outside, "http://leak.invalid/x.png")
}

// On paper of both common sizes no row, point or caution is divided between two
// sheets, no word is cut off at the side, and every sheet says what it is of.
func TestPagesOnPaper(t *testing.T) {
	sizes := []string{"A4", "Letter"}
	for name, page := range pagesToLookAt(t) {
		for _, size := range sizes[:testutil.Times(2, 1)] {
			t.Run(name+" on "+size, func(t *testing.T) {
				t.Parallel()
				testutil.NeedTool(t, "chromium")
				pdf, paper := printed(t, []byte(strings.Replace(string(page), "@page {", "@page { size: "+size+";", 1)))
				assert.Empty(t, divided(rowsOf(t, page), paper))
				assert.Empty(t, offPaper(t, pdf))
				assert.Empty(t, overlapping(t, pdf))
				for i, text := range paper {
					assert.Contains(t, text, fmt.Sprintf("page %d of %d", i+1, len(paper)))
					assert.Regexp(t, `(?m)^scalepair · (Every|Bench)`, text, "the title at the foot")
				}
				if name != "everything" {
					requireSheets(t, pdf, paper)
				}
			})
		}
	}
}

// The check itself: what the page's style keeps whole and apart is found divided
// and overlapping without it.
func TestDividedRowsAreFound(t *testing.T) {
	t.Parallel()
	testutil.NeedTool(t, "chromium")
	testutil.NeedFull(t)
	page := string(pageOf(t, everything()))
	tight := strings.Replace(page, "</style>", "h2 { margin-bottom: -2rem !important }</style>", 1)
	pdf, _ := printed(t, []byte(tight))
	assert.NotEmpty(t, overlapping(t, pdf), "a heading drawn on to its table is found")
	loose := strings.Replace(page, "</style>", "tr, li { break-inside: auto !important; orphans: 1; widows: 1 }</style>", 1)
	_, sheets := printed(t, []byte(loose))
	assert.NotEmpty(t, divided(rowsOf(t, []byte(page)), sheets))
}

// rowsOf gives the text of every row and every list item of a page, without
// blanks. The page is well-formed XML, which is thereby tested.
func rowsOf(t *testing.T, page []byte) []string {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(string(page)))
	var rows []string
	depth, nav := 0, 0 // inside a row or item; inside the list of contents, which is not printed
	var text strings.Builder
	for {
		token, err := d.Token()
		if err == io.EOF {
			return rows
		}
		require.NoError(t, err)
		switch e := token.(type) {
		case xml.StartElement:
			switch e.Name.Local {
			case "nav":
				nav++
			case "tr", "li":
				depth++
			}
		case xml.EndElement:
			switch e.Name.Local {
			case "nav":
				nav--
			case "tr", "li":
				depth--
				if row := squeezed(text.String()); row != "" && nav == 0 {
					rows = append(rows, row)
				}
				text.Reset()
			}
		case xml.CharData:
			if depth > 0 {
				text.Write(e)
			}
		}
	}
}

func squeezed(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) || r == '\u2022' { // a list's bullet is no text of the page
			return -1
		}
		return r
	}, text)
}

// divided gives the rows that do not stand whole on one sheet of paper, in
// the order of the page.
func divided(rows, sheets []string) []string {
	var out []string
	at, from := 0, 0
	texts := make([]string, len(sheets))
	for i, s := range sheets {
		texts[i] = squeezed(s)
	}
	for _, row := range rows {
		found := false
		for n := at; n < len(texts); n++ {
			start := 0
			if n == at {
				start = from
			}
			if k := strings.Index(texts[n][start:], row); k >= 0 {
				at, from, found = n, start+k+len(row), true
				break
			}
		}
		if !found {
			out = append(out, row)
		}
	}
	return out
}

var (
	pageBox = regexp.MustCompile(`<page width="([\d.]+)"`)
	wordBox = regexp.MustCompile(`<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*?)</word>`)
)

// word is a word on paper with its box, in points.
type word struct {
	x1, y1, x2, y2 float64
	text           string
}

// wordsOf gives the words of every sheet of a PDF, and the sheets' widths.
func wordsOf(t *testing.T, pdf string) (pages [][]word, widths []float64) {
	t.Helper()
	text, err := exec.Command("pdftotext", "-bbox", pdf, "-").Output()
	require.NoError(t, err)
	number := func(s string) float64 {
		x, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err)
		return x
	}
	for _, page := range strings.Split(string(text), "</page>") {
		size := pageBox.FindStringSubmatch(page)
		if size == nil {
			continue
		}
		var words []word
		for _, w := range wordBox.FindAllStringSubmatch(page, -1) {
			words = append(words, word{number(w[1]), number(w[2]), number(w[3]), number(w[4]), w[5]})
		}
		require.NotEmpty(t, words)
		pages, widths = append(pages, words), append(widths, number(size[1]))
	}
	return pages, widths
}

// offPaper gives the words that come nearer to the side of the paper than its
// margin of 12 mm.
func offPaper(t *testing.T, pdf string) []string {
	t.Helper()
	const margin = 11.5 * 72 / 25.4
	var out []string
	pages, widths := wordsOf(t, pdf)
	for i, words := range pages {
		for _, w := range words {
			if w.x1 < margin || w.x2 > widths[i]-margin {
				out = append(out, w.text)
			}
		}
	}
	return out
}

// overlapping gives pairs of words of which one stands on the other: by more
// than 1 point across and by a third of the lower one's height. Twice the same
// word is one of a picture, with its rim.
func overlapping(t *testing.T, pdf string) []string {
	t.Helper()
	var out []string
	pages, _ := wordsOf(t, pdf)
	for _, words := range pages {
		for i, a := range words {
			for _, b := range words[:i] {
				across := min(a.x2, b.x2) - max(a.x1, b.x1)
				up := min(a.y2, b.y2) - max(a.y1, b.y1)
				if across > 1 && a.text != b.text && up > min(a.y2-a.y1, b.y2-b.y1)/3 {
					out = append(out, b.text+" and "+a.text)
				}
			}
		}
	}
	return out
}
