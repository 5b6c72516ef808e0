package draw_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan/draw"
	"scalepair/fan/draw/dxf"
	"scalepair/fan/draw/pdf"
	"scalepair/fan/draw/svg"
	"scalepair/fan/draw/tile"
)

// Any drawing is refused by every writer, with nothing written, or written by
// every one, whole and with finite numbers only.
func FuzzWriters(f *testing.F) {
	for _, s := range anyShapes() {
		f.Add(s.X1, s.Y1, s.X2, s.Y2, s.Size, s.Angle, 420.0, s.Body)
	}
	f.Add(0.0, 0.0, 1.0, 1.0, 1.0, 0.0, 100.0, "敮摯扪ਅ 敮摯扪ਊ") // whose UTF-16 holds the word that ends an object
	f.Fuzz(func(t *testing.T, x1, y1, x2, y2, size, angle, height float64, body string) {
		d := anyDrawing(shapes{x1, y1, x2, y2, size, angle, body})
		s := draw.Sheet{Name: body, Width: 297, Height: height, Parts: []draw.Part{
			{Drawing: d, Window: []draw.Point{{X: x1, Y: y2}, {X: x2, Y: y2}, {X: x2, Y: y1}}}, {Drawing: d},
		}}
		var one, two, three bytes.Buffer
		errs := []error{svg.Write(&one, s), pdf.Write(&two, body, []draw.Sheet{s, s}), dxf.Write(&three, d)}
		if errs[2] != nil {
			require.Error(t, d.Sound())
			require.Empty(t, three.Bytes())
		} else {
			requirePairs(t, three.String())
		}
		if s.Sound() != nil || height > 5080 {
			require.Error(t, errs[1])
			require.Empty(t, two.Bytes())
		} else {
			require.NoError(t, errs[1])
			requirePages(t, two.String(), [4]float64{x1, y1, x2, y2})
		}
		if s.Sound() != nil {
			require.Error(t, errs[0])
			require.Empty(t, one.Bytes())
			return
		}
		require.NoError(t, errs[0])
		requireXML(t, one.String(), map[string]float64{"x1": x1, "y1": height - y1, "x2": x2, "y2": height - y2})
	})
}

// plain reads a number: finite, and zero without a sign.
func plain(t *testing.T, word string) float64 {
	x, err := strconv.ParseFloat(word, 64)
	require.NoError(t, err)
	require.False(t, math.IsInf(x, 0) || math.IsNaN(x) || x == 0 && math.Signbit(x), word)
	return x
}

// requirePairs reads a DXF file as what it is: codes and values in turn.
func requirePairs(t *testing.T, file string) {
	rows := strings.Split(strings.TrimSuffix(file, "\r\n"), "\r\n")
	require.Zero(t, len(rows)%2)
	require.NotRegexp(t, "[^ -~\r\n]", file, "plain ASCII")
	for i := 0; i < len(rows); i += 2 {
		code, err := strconv.Atoi(strings.TrimSpace(rows[i]))
		require.NoError(t, err)
		if code >= 10 && code < 60 {
			plain(t, rows[i+1])
		}
	}
	require.Equal(t, "EOF", rows[len(rows)-1])
}

// requireXML reads an SVG file, and its line to the last printed digit.
func requireXML(t *testing.T, file string, want map[string]float64) {
	dec, lines := xml.NewDecoder(strings.NewReader(file)), 0
	for {
		token, err := dec.Token()
		if errors.Is(err, io.EOF) {
			require.Equal(t, 2, lines)
			return
		}
		require.NoError(t, err)
		e, ok := token.(xml.StartElement)
		if !ok || e.Name.Local != "line" {
			continue
		}
		lines++
		for _, a := range e.Attr[:4] { // the ends
			require.InDelta(t, want[a.Name.Local], plain(t, a.Value), 0.5e-4+1e-11)
		}
	}
}

var (
	tableAt = regexp.MustCompile(`startxref\n(\d+)\n%%EOF\n$`)
	entry   = regexp.MustCompile(`(\d{10}) 00000 n \n`)
	stroked = regexp.MustCompile(`(?m)^(\S+) (\S+) m (\S+) (\S+) l S$`)
)

// requirePages looks for every object of a PDF where its table says it stands,
// and for the line, twice on both pages.
func requirePages(t *testing.T, file string, want [4]float64) {
	at := tableAt.FindStringSubmatch(file)
	require.NotNil(t, at)
	table, err := strconv.Atoi(at[1])
	require.NoError(t, err)
	for i, e := range entry.FindAllStringSubmatch(file[table:], -1) {
		begin, err := strconv.Atoi(e[1])
		require.NoError(t, err)
		require.True(t, strings.HasPrefix(file[begin:], strconv.Itoa(i+1)+" 0 obj\n"), "object %d", i+1)
	}
	lines := stroked.FindAllStringSubmatch(file, -1)
	require.Len(t, lines, 4)
	for _, l := range lines {
		for i, mm := range want {
			require.InDelta(t, mm*72/25.4, plain(t, l[i+1]), 0.5e-4+1e-10)
		}
	}
}

// Any drawing on any paper is refused, with no plan, or laid out on sound sheets
// of that paper whose pieces show all of it; and on one sheet that holds it.
func FuzzLay(f *testing.F) {
	for i, s := range anyShapes() {
		for j, p := range []tile.Paper{paper("A4"), paper("Tabloid"), paper("roll 610 mm")} {
			f.Add(s.X1, s.Y1, s.X2, s.Y2, s.Size, p.Width.MM(), p.Length.MM(), 99.2, byte(i+j), s.Body)
		}
	}
	// A drawing of which a piece comes to lie far off its sheet.
	f.Add(-4879.375, -40.0, 8790.0, 57.0, 0.7, 210.0, 297.0, 99.2, byte(0), "0")
	// Words that reach farther than any board.
	f.Add(0.0, -2.4, -1e-05, 5.0, 73.0, 190.0, 297.0, 99.2, byte(0), strings.Repeat("\xcc", 900))
	// Thousands of places to join at, on paper that takes a strip of a few.
	f.Add(0.0, 311.5, -2.7, 188.7, 31.6, 216.0, 2970.0, 98.2, byte(13), strings.Repeat("k", 1000))
	f.Fuzz(func(t *testing.T, x1, y1, x2, y2, size, width, length, bar float64, arrange byte, body string) {
		if !(width >= 150 && width <= 5000 && (length == 0 || length >= width && length <= 5000) && bar >= 90 && bar <= 110) {
			return // such a paper, or such a bar, is refused before
		}
		d := anyDrawing(shapes{X1: x1, Y1: y1, X2: x2, Y2: y2, Size: size, Body: body})
		d.Notes = []string{body}
		if arrange&2 != 0 {
			d.Joins = []draw.Line{{A: draw.Point{X: (x1 + x2) / 2, Y: y1}, B: draw.Point{X: (x1 + x2) / 2, Y: y2}}}
		}
		o := tile.DefaultOptions()
		o.Paper, o.Strips = tile.Paper{Name: "any", Width: unit.MM(width), Length: unit.MM(length)}, arrange&1 != 0
		o.BarAcross, o.Unit = unit.MM(bar), unit.LengthUnit(arrange%3)
		p, err := tile.Lay(d, o)
		if err != nil {
			require.Equal(t, tile.Plan{}, p)
		} else {
			requirePlan(t, d, p, o)
		}
		one, err := tile.One(d, o)
		if err == nil {
			require.Len(t, one.Sheets, 1)
			require.Len(t, one.Pieces, 1)
		}
	})
}

func requirePlan(t *testing.T, d draw.Drawing, p tile.Plan, o tile.Options) {
	require.NotEmpty(t, p.Sheets)
	for _, s := range p.Sheets {
		require.NoError(t, s.Sound())
		if !o.Paper.IsRoll() {
			require.ElementsMatch(t, []float64{o.Paper.Width.MM(), o.Paper.Length.MM()}, []float64{s.Width, s.Height})
		}
	}
	all, board := draw.NoRect(), d.Without(draw.LayerTitle, draw.LayerKey, draw.LayerBars).Bounds()
	for i, piece := range p.Pieces {
		require.Equal(t, i+1, piece.Number)
		require.Less(t, piece.Sheet, len(p.Sheets))
		all = all.Union(piece.Window)
	}
	require.Equal(t, all, all.Union(board), "every piece together shows the drawing")
}
