// Package pdf writes sheets as a PDF in true size, one page a sheet. The file
// asks the print dialogue not to scale it and to print one side of the paper,
// carries no date, and shows every layer in the reader's list of layers.
//
// Words are set in Go Regular, of which the file embeds the letters that it uses:
// a free face (BSD licence) that comes as a Go module, has Latin, Greek and
// Cyrillic letters with ± ½ ° Ø, and is as wide as the sans serif that other
// readers of the drawings take. What lies beyond is spelt with what it has.
//
// In reading order: pdf.go has the pages, letters.go the spelling, scale.go what
// print dialogues are asked.
package pdf

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/goregular"

	"scalepair/data/unit"
	"scalepair/fan/draw"
)

const (
	// pointsPerMM: a point is 1/72 inch (ISO 32000), an inch 25.4 mm exactly.
	pointsPerMM = 72 / 25.4
	// decimals of a point: 0.04 micrometres. The library's own drawing calls
	// print two, which is 2 micrometres, and negative zeros; paths are therefore
	// written here.
	decimals = 4
	// longest is the longest page that every reader takes, in mm: 14,400 points.
	longest = 14400 / pointsPerMM
)

// Write writes one page a sheet. It fails when there is no sheet, when a sheet
// is not sound or longer than 5,080 mm, or when w fails. title goes into the properties.
func Write(w io.Writer, title string, sheets []draw.Sheet) error {
	if len(sheets) == 0 {
		return fmt.Errorf("pdf: no sheet to write")
	}
	c := newCanvas(title)
	for _, s := range sheets {
		if err := s.Sound(); err != nil {
			return fmt.Errorf("pdf: %w", err)
		}
		if s.Width > longest || s.Height > longest {
			return fmt.Errorf("pdf: sheet is too long (%s x %s mm); at most %s mm can be one page, so tile it",
				unit.Fixed(s.Width, 0), unit.Fixed(s.Height, 0), unit.Fixed(longest, 0))
		}
		s.On(c)
	}
	c.endWindow()
	var file bytes.Buffer
	if err := c.doc.Output(&file); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	if err := trueScale(file.Bytes()); err != nil {
		return err
	}
	_, err := w.Write(file.Bytes())
	return err
}

// canvas puts elements on the pages of doc. A window is a saved graphics state
// with a clip; layers open and close inside it.
type canvas struct {
	doc      *fpdf.Fpdf
	height   float64 // of the page, mm
	layers   map[draw.LayerName]int
	windowed bool
}

var _ draw.Canvas = (*canvas)(nil)

// fontPt is the size at which the face is chosen; the text's matrix scales it.
const (
	face   = "Go"
	fontPt = 10
)

func newCanvas(title string) *canvas {
	doc := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "pt"})
	doc.SetCatalogSort(true)
	doc.SetCompression(false)
	date := time.Date(2000, time.January, 1, 0, 0, 0, 0, time.UTC)
	doc.SetCreationDate(date)
	doc.SetModificationDate(date)
	doc.SetLang(language)
	doc.SetProducer("scalepair", false)
	doc.SetTitle(draw.OneLine(title), true)
	doc.SetAutoPageBreak(false, 0)
	doc.SetMargins(0, 0, 0)
	doc.AddUTF8FontFromBytes(face, "", goregular.TTF)
	c := &canvas{doc: doc, layers: map[draw.LayerName]int{}}
	for _, name := range draw.LayerNames() {
		c.layers[name] = doc.AddLayer(string(name), true)
	}
	return c
}

// raw writes one line of page content.
func (c *canvas) raw(format string, args ...any) {
	c.doc.RawWriteStr(fmt.Sprintf(format, args...))
}

// Sheet implements draw.Canvas.
func (c *canvas) Sheet(_ string, width, height float64) {
	c.endWindow()
	c.doc.AddPageFormat("P", fpdf.SizeType{Wd: width * pointsPerMM, Ht: height * pointsPerMM})
	c.doc.SetFont(face, "", fontPt)
	c.height = height
}

// Window implements draw.Canvas.
func (c *canvas) Window(corners []draw.Point) {
	c.endWindow()
	if len(corners) == 0 {
		return
	}
	c.raw("q %s h W n", path(corners))
	c.windowed = true
}

func (c *canvas) endWindow() {
	c.doc.EndLayer()
	if c.windowed {
		c.raw("Q")
	}
	c.windowed = false
}

// Layer implements draw.Canvas.
func (c *canvas) Layer(name draw.LayerName) {
	c.doc.BeginLayer(c.layers[name])
}

// Line implements draw.Canvas.
func (c *canvas) Line(l draw.Line) {
	c.pen(l.Stroke)
	c.raw("%s m %s l S", place(l.A), place(l.B))
}

// Polyline implements draw.Canvas.
func (c *canvas) Polyline(p draw.Polyline) {
	if len(p.Points) == 0 {
		return
	}
	c.pen(p.Stroke)
	end := "S"
	if p.Closed {
		end = "s"
	}
	c.raw("%s %s", path(p.Points), end)
}

// path begins at the first point and goes on to the others.
func path(points []draw.Point) string {
	steps := make([]string, len(points))
	for i, q := range points {
		steps[i] = place(q) + " l"
	}
	steps[0] = place(points[0]) + " m"
	return strings.Join(steps, " ")
}

// Circle implements draw.Canvas, with four cubic arcs.
func (c *canvas) Circle(ring draw.Circle) {
	c.pen(ring.Stroke)
	// The handle that makes a cubic meet the middle of a quarter circle:
	// 4/3 tan(pi/8); it is off by at most 0.03 % of the radius between.
	r, h := ring.Radius, ring.Radius*4/3*math.Tan(math.Pi/8)
	at := func(dx, dy float64) string { return place(draw.Point{X: ring.Centre.X + dx, Y: ring.Centre.Y + dy}) }
	c.raw("%s m %s %s %s c %s %s %s c %s %s %s c %s %s %s c s", at(r, 0),
		at(r, h), at(h, r), at(0, r), at(-h, r), at(-r, h), at(-r, 0),
		at(-r, -h), at(-h, -r), at(0, -r), at(h, -r), at(r, -h), at(r, 0))
}

// Text implements draw.Canvas.
func (c *canvas) Text(t draw.Text) {
	body := spelt(t.Shown())
	if body == "" {
		return
	}
	scale := t.Size() * pointsPerMM / fontPt
	width := c.doc.GetStringWidth(body) * scale / pointsPerMM
	start := draw.Turn(t.Angle).Then(draw.Move(t.At.X, t.At.Y)).Point(draw.Point{X: -width * float64(t.Align) / 2})
	sin, cos := math.Sincos(t.Angle)
	sin, cos = sin*scale, cos*scale
	c.raw("q 0 g %s %s %s %s %s cm", factor(cos), factor(sin), factor(-sin), factor(cos), place(start))
	c.doc.Text(0, c.height*pointsPerMM, body) // at the origin, since the library's y runs down
	c.raw("Q")
}

// pen puts a stroke's look in force.
func (c *canvas) pen(s draw.Stroke) {
	var dashes string
	for _, d := range s.Dash() {
		dashes += number(d) + " "
	}
	c.raw("%s G %s w [%s] 0 d", unit.Fixed(s.Grey(), 2), number(s.Width()), dashes)
}

// number gives a length in points.
func number(mm float64) string { return unit.Fixed(mm*pointsPerMM, decimals) }

// factor gives an entry of a matrix.
func factor(x float64) string { return unit.Fixed(x, 6) }

// place gives a point. PDF's origin and directions are ours.
func place(p draw.Point) string { return number(p.X) + " " + number(p.Y) }
