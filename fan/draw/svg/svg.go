// Package svg writes a sheet as SVG in true size: width and height in
// millimetres with a viewBox of the same numbers, so that one unit inside is
// one millimetre. Every layer is a group named after it, and marked as a layer in
// the open namespace that drawing programs read. A file of its own has a colour
// for every operation, by which a machine's program knows it; a picture in a page
// is grey, as it is printed.
package svg

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strings"

	"scalepair/data/unit"
	"scalepair/fan/draw"
)

// decimals of a millimetre: a tenth of a micrometre.
const decimals = 4

// Write writes the sheet. It fails when the sheet is not sound, and when w does.
func Write(w io.Writer, s draw.Sheet) error {
	if err := s.Sound(); err != nil {
		return fmt.Errorf("svg: %w", err)
	}
	c := &canvas{used: map[string]int{}}
	s.On(c)
	c.closeWindow()
	c.out.WriteString("</svg>\n")
	_, err := w.Write(c.out.Bytes())
	return err
}

// canvas puts elements into out. Groups nest as window and layer; each is closed
// when the next of its kind begins.
type canvas struct {
	out      bytes.Buffer
	height   float64
	used     map[string]int // ids given so far
	windowed bool
	layered  bool
	layer    draw.LayerName
}

var _ draw.Canvas = (*canvas)(nil)

// Sheet implements draw.Canvas.
func (c *canvas) Sheet(name string, width, height float64) {
	c.height = height
	c.out.WriteString("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n")
	w, h := number(width), number(height)
	fmt.Fprintf(&c.out, "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:inkscape=\"http://www.inkscape.org/namespaces/inkscape\" role=\"img\" width=\"%smm\" height=\"%smm\" viewBox=\"0 0 %[1]s %[2]s\">\n<title>%[3]s</title>\n",
		w, h, escaped(draw.OneLine(name)))
}

// Window implements draw.Canvas.
func (c *canvas) Window(corners []draw.Point) {
	c.closeWindow()
	if len(corners) == 0 {
		return
	}
	id := c.id("window")
	fmt.Fprintf(&c.out, "<clipPath id=\"%s\"><polygon points=\"%s\"/></clipPath>\n<g clip-path=\"url(#%s)\">\n",
		id, c.points(corners), id)
	c.windowed = true
}

// Layer implements draw.Canvas.
func (c *canvas) Layer(name draw.LayerName) {
	c.close(&c.layered)
	fmt.Fprintf(&c.out, "<g id=\"%s\" class=\"%s\" inkscape:groupmode=\"layer\" inkscape:label=\"%[2]s\" fill=\"none\">\n", c.id(string(name)), name)
	c.layered, c.layer = true, name
}

// Line implements draw.Canvas.
func (c *canvas) Line(l draw.Line) {
	fmt.Fprintf(&c.out, "<line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\" %s/>\n",
		number(l.A.X), c.y(l.A.Y), number(l.B.X), c.y(l.B.Y), c.look(l.Stroke))
}

// Polyline implements draw.Canvas.
func (c *canvas) Polyline(p draw.Polyline) {
	kind := "polyline"
	if p.Closed {
		kind = "polygon"
	}
	fmt.Fprintf(&c.out, "<%s points=\"%s\" %s/>\n", kind, c.points(p.Points), c.look(p.Stroke))
}

func (c *canvas) points(points []draw.Point) string {
	pairs := make([]string, len(points))
	for i, q := range points {
		pairs[i] = number(q.X) + "," + c.y(q.Y)
	}
	return strings.Join(pairs, " ")
}

// Circle implements draw.Canvas.
func (c *canvas) Circle(ring draw.Circle) {
	fmt.Fprintf(&c.out, "<circle cx=\"%s\" cy=\"%s\" r=\"%s\" %s/>\n",
		number(ring.Centre.X), c.y(ring.Centre.Y), number(ring.Radius), c.look(ring.Stroke))
}

// anchors are SVG's words for draw.Left, Centre and Right.
var anchors = [...]string{draw.Left: "start", draw.Centre: "middle", draw.Right: "end"}

// Text implements draw.Canvas.
func (c *canvas) Text(t draw.Text) {
	x, y := number(t.At.X), c.y(t.At.Y)
	fmt.Fprintf(&c.out, "<text x=\"%s\" y=\"%s\" font-family=\"Helvetica, Arial, 'Liberation Sans', sans-serif\" font-size=\"%s\" fill=\"#000\" text-anchor=\"%s\"",
		x, y, number(t.Size()), anchors[t.Align])
	// SVG's y runs down, so a turn to the left has a negative angle there.
	if deg := number(-t.Angle * 180 / math.Pi); deg != number(0) {
		fmt.Fprintf(&c.out, " transform=\"rotate(%s %s %s)\"", deg, x, y)
	}
	fmt.Fprintf(&c.out, ">%s</text>\n", escaped(t.Shown()))
}

// look gives the attributes of a stroke.
func (c *canvas) look(s draw.Stroke) string {
	look := "stroke=\"#" + c.layer.Colour().RGB + "\" stroke-width=\"" + unit.Fixed(s.Width(), 2) + "\""
	if dashes := s.Dash(); dashes != nil {
		look += " stroke-dasharray=\"" + strings.Trim(fmt.Sprint(dashes), "[]") + "\""
	}
	return look
}

func (c *canvas) closeWindow() {
	c.close(&c.layered)
	c.close(&c.windowed)
}

func (c *canvas) close(open *bool) {
	if *open {
		c.out.WriteString("</g>\n")
	}
	*open = false
}

// id gives a name that no other element of this picture has.
func (c *canvas) id(name string) string {
	c.used[name]++
	if n := c.used[name]; n > 1 {
		name = fmt.Sprintf("%s-%d", name, n)
	}
	return name
}

// y turns a height above the sheet's lower edge into one below its upper edge.
func (c *canvas) y(mm float64) string { return number(c.height - mm) }

func number(x float64) string { return unit.Fixed(x, decimals) }

func escaped(s string) string {
	var b strings.Builder
	// A strings.Builder cannot fail, and EscapeText has no other error.
	_ = xml.EscapeText(&b, []byte(s))
	return b.String()
}
