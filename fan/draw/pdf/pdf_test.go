package pdf

import (
	"bytes"
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
	"scalepair/fan/draw"
)

func sheet(e ...draw.Element) draw.Sheet {
	return draw.Sheet{Name: "one", Width: 254, Height: 127, Parts: []draw.Part{
		{Drawing: draw.Drawing{Layers: []draw.Layer{{Name: draw.LayerSlots, Elements: e}}}},
	}}
}

func written(t testing.TB, title string, s ...draw.Sheet) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, Write(&b, title, s))
	return b.String()
}

func TestTrueSize(t *testing.T) {
	// 25.4 mm are 72 points.
	s := sheet(
		draw.Line{A: draw.Point{X: 25.4, Y: 0}, B: draw.Point{X: 50.8, Y: 12.7}, Stroke: draw.SlotStroke},
		draw.Polyline{Points: []draw.Point{{X: 25.4, Y: 0}, {X: 0, Y: 0}, {X: 0, Y: 25.4}}, Closed: true, Stroke: draw.BlankStroke},
	)
	s.Parts[0].Window = draw.Rect{Max: draw.Point{X: 25.4, Y: 50.8}}.Corners()
	got := written(t, "t", s)
	assert.True(t, strings.Contains(got, "/MediaBox [0 0 720.00 360.00]"))
	assert.True(t, strings.Contains(got, "q 0.0000 0.0000 m 72.0000 0.0000 l 72.0000 144.0000 l 0.0000 144.0000 l h W n\n"))
	assert.True(t, strings.Contains(got, "0.00 G 0.2835 w [] 0 d\n72.0000 0.0000 m 144.0000 36.0000 l S\n"))
	assert.True(t, strings.Contains(got, "0.50 G 0.7087 w [19.8425 5.6693 ] 0 d\n72.0000 0.0000 m 0.0000 0.0000 l 0.0000 72.0000 l s\n"))
}

func TestPrintScalingIsOffAndNoDateIsLeft(t *testing.T) {
	got := written(t, dates+") "+language, sheet())
	end := got[strings.LastIndex(got, "\nendstream"):]
	assert.Contains(t, end, "/Lang (en) /ViewerPreferences << /PrintScaling /None /Duplex /Simplex >>")
	assert.NotContains(t, end, "(D:2")
}

func TestNothingToWrite(t *testing.T) {
	assert.ErrorContains(t, Write(&bytes.Buffer{}, "t", nil), "no sheet")
	long := sheet()
	long.Width = 6000
	assert.ErrorContains(t, Write(&bytes.Buffer{}, "t", []draw.Sheet{long}), "6000 x 127 mm")
}

// read gives a file's words, and the numbers of their glyphs in the embedded face,
// as a third party finds them.
func read(t *testing.T, file string) (words string, glyphs []string) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "words.pdf")
	require.NoError(t, os.WriteFile(path, []byte(file), 0o600))
	trace, err := exec.Command(testutil.NeedTool(t, "mutool"), "trace", path).Output()
	require.NoError(t, err)
	for _, g := range glyph.FindAllStringSubmatch(string(trace), -1) {
		words, glyphs = words+html.UnescapeString(g[1]), append(glyphs, g[2])
	}
	return words, glyphs
}

var glyph = regexp.MustCompile(`<g unicode="([^"]*)" glyph="(\d+)"`)

func TestText(t *testing.T) {
	for in, want := range map[string]string{
		"F#3 <> (a\\)": "F#3 <> (a\\)", "é ½ ± ° Ø € … “”": "é ½ ± ° Ø € … “”", "E♭ F♯ 3″ −2 ⌀4": "Eb F# 3″ −2 Ø4",
		"Łódź žluť Ştefan": "Łódź žluť Ştefan", "μ λ гриф": "μ λ гриф", "e\u0301": "e", "弦 🎸": "· ·", "a\nb": "a b",
	} {
		words, glyphs := read(t, written(t, "t", sheet(draw.Text{Height: 3, Body: in})))
		assert.Equal(t, want, words)
		assert.NotContains(t, glyphs, "0")
	}
}

// The face has every letter that is not spelt otherwise.
func TestTheFaceHasItsLetters(t *testing.T) {
	var letters []draw.Element
	n := 0
	for r := range rune(0xFFFF) {
		if s := string(r); !unicode.IsSpace(r) && spelt(s) == s && draw.OneLine(s) == s && s != "" && r != 0xFFFD {
			letters = append(letters, draw.Text{At: draw.Point{X: 9, Y: 9}, Height: 3, Body: s})
			n++
		}
	}
	words, glyphs := read(t, written(t, "t", sheet(letters...)))
	require.Greater(t, n, 500)
	assert.Len(t, []rune(words), n)
	assert.NotContains(t, glyphs, "0", "glyph 0 stands for a letter that a face lacks")
}

func TestTheFaceIsEmbedded(t *testing.T) {
	path := filepath.Join(t.TempDir(), "face.pdf")
	require.NoError(t, os.WriteFile(path, []byte(written(t, "t", sheet(draw.Text{Height: 3, Body: "words"}))), 0o600))
	out, err := exec.Command(testutil.NeedTool(t, "pdffonts"), path).Output()
	require.NoError(t, err)
	rows := strings.Split(strings.TrimSpace(string(out)), "\n")
	require.Len(t, rows, 3, "one face")
	assert.Regexp(t, `CID TrueType +Identity-H +yes`, rows[2])
}
