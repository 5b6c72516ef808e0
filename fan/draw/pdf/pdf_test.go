package pdf_test

import (
	"bytes"
	"errors"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/fan/draw"
	"scalepair/fan/draw/pdf"
)

func sheet(e ...draw.Element) draw.Sheet {
	return draw.Sheet{Name: "one", Width: 254, Height: 127, Parts: []draw.Part{
		{Drawing: draw.Drawing{Layers: []draw.Layer{{Name: draw.LayerSlots, Elements: e}}}},
	}}
}

func written(t testing.TB, title string, s ...draw.Sheet) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, pdf.Write(&b, title, s))
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
	assert.True(t, strings.Contains(got, "0.00 G 0.5669 w [] 0 d 0 J\n72.0000 0.0000 m 144.0000 36.0000 l S\n"))
	assert.True(t, strings.Contains(got, "0.25 G 0.8504 w [19.8425 5.6693] 0 d 0 J\n72.0000 0.0000 m 0.0000 0.0000 l 0.0000 72.0000 l s\n"))
}

func TestALookHoldsOnlyInsideItsWindow(t *testing.T) {
	line := draw.Line{B: draw.Point{X: 1}, Stroke: draw.SlotStroke}
	s := sheet(line)
	s.Parts[0].Window = draw.Rect{Max: draw.Point{X: 9, Y: 9}}.Corners()
	s.Parts = append(s.Parts, draw.Part{Drawing: s.Parts[0].Drawing})
	// A window is left by restoring what held before it, so that the look must
	// be said again.
	assert.Equal(t, 2, strings.Count(written(t, "t", s), "0.00 G 0.5669 w"))
}

func TestPrintScalingIsOffAndNoDateIsLeft(t *testing.T) {
	got := written(t, dates+") "+language, sheet(draw.Text{Height: 3, Body: "/Lang (" + language + ") " + dates}))
	end := got[strings.LastIndex(got, "\nendstream"):]
	assert.Contains(t, end, "/Lang (en) /ViewerPreferences << /PrintScaling /None >>")
	assert.NotContains(t, end, "(D:2")
}

// What the library is made to write first, and loses again.
const (
	dates    = "/CreationDate (D:20000101000000)\n/ModDate (D:20000101000000)"
	language = "language-and-printing-come-here-in-as-many-bytes"
)

func TestTheSameBytesEveryTime(t *testing.T) {
	s := sheet(draw.Text{Height: 3, Body: "words"}, draw.Circle{Radius: 3})
	first := written(t, "t", s, s)
	for range 5 {
		assert.Equal(t, first, written(t, "t", s, s))
	}
}

func TestNothingToWrite(t *testing.T) {
	assert.ErrorContains(t, pdf.Write(&bytes.Buffer{}, "t", nil), "no sheet")
	long := sheet()
	long.Width = 6000
	assert.ErrorContains(t, pdf.Write(&bytes.Buffer{}, "t", []draw.Sheet{long}), "6000 x 127 mm")
}

// strings of page content, after Tm.
var shown = regexp.MustCompile(`(?s) Tm \((.*?)\) Tj ET\n`)

func TestText(t *testing.T) {
	tests := []struct{ name, in, want string }{
		{"plain", "F#3 <&> \"q\"", "F#3 <&> \"q\""},
		{"brackets", `(a\`, `\(a\\`},
		{"cp1252", "é ½ ± ° Ø € … “”", "\xe9 \xbd \xb1 \xb0 \xd8 \x80 \x85 \x93\x94"},
		{"signs of the trade", "E♭ F♯ 3″ −2", `Eb F# 3" -2`},
		{"European letters", "Łódź žluť", "L\xf3dz \x9elut"},
		{"Greek and Russian", "μ λ гриф", "\xb5 l grif"},
		{"accents that stand alone", "e\u0301", "e"},
		{"no spelling", "弦", "\xb7"},
		{"newline", "a\nb", "a b"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			found := shown.FindStringSubmatch(written(t, "t", sheet(draw.Text{Height: 3, Body: tt.in})))
			require.Len(t, found, 2)
			assert.Equal(t, tt.want, found[1])
		})
	}
}

func FuzzAnyText(f *testing.F) {
	for _, s := range []string{"a(b", `\`, "é🎸\x00\xff", ") Tj ET endstream", "%"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, body string) {
		file := written(t, body, sheet(draw.Text{Height: 3, Body: body}))
		for _, m := range shown.FindAllStringSubmatch(file, -1) {
			if !balanced(m[1]) {
				t.Fatalf("%q is not one string", m[1])
			}
		}
	})
}

// balanced reports whether every bracket and backslash of a string is escaped.
func balanced(s string) bool {
	for i := 0; i < len(s); i++ {
		switch s[i] {
		case '\\':
			i++
			if i == len(s) {
				return false
			}
		case '(', ')':
			return false
		}
	}
	return true
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestFailsWhenTheWriterDoes(t *testing.T) {
	assert.EqualError(t, pdf.Write(full{}, "t", []draw.Sheet{sheet()}), "disk full")
}
