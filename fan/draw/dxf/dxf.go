// Package dxf writes a drawing as DXF R12 in ASCII: the plain dialect that
// every drawing program and most routers' software read. Units are
// millimetres, y runs up, and the origin is the drawing's own, where the nut
// line crosses the centreline. Lines carry their layer and a line type named
// after their meaning.
//
// The group codes used are those of the format's public reference; what R12
// wants beyond it (VERTEX and SEQEND records, table heads) was proved by
// reading the files back with two independent readers in the tests.
package dxf

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strings"

	"scalepair/data/unit"
	"scalepair/fan/draw"
)

// decimals of a millimetre: a tenth of a micrometre.
const decimals = 4

// Write writes the drawing. It fails when the drawing is not sound, and when w
// does.
func Write(w io.Writer, d draw.Drawing) error {
	if err := d.Sound(); err != nil {
		return fmt.Errorf("dxf: %w", err)
	}
	c := &canvas{}
	c.header(d)
	c.tables(d)
	c.text(0, "SECTION")
	c.text(2, "ENTITIES")
	d.On(c)
	c.text(0, "ENDSEC")
	c.text(0, "EOF")
	_, err := w.Write(c.out.Bytes())
	return err
}

// canvas collects records, each a group code on one line and its value on the
// next, with the line ends of the format's home.
type canvas struct {
	out   bytes.Buffer
	layer string
}

var _ draw.Canvas = (*canvas)(nil)

func (c *canvas) text(code int, value string) { fmt.Fprintf(&c.out, "%3d\r\n%s\r\n", code, value) }

func (c *canvas) whole(code, value int) { fmt.Fprintf(&c.out, "%3d\r\n%d\r\n", code, value) }

func (c *canvas) real(code int, value float64) { c.text(code, unit.Fixed(value, decimals)) }

// point writes a place; base is 10 for a first and 11 for a second point.
func (c *canvas) point(base int, p draw.Point) {
	c.real(base, p.X)
	c.real(base+10, p.Y)
	c.real(base+20, 0)
}

// entity begins an entity on the current layer.
func (c *canvas) entity(kind string, s draw.Stroke) {
	c.text(0, kind)
	c.text(8, c.layer)
	c.text(6, lineType(s))
	if s.Grey() >= 0.3 {
		c.whole(62, middleGrey)
	}
}

// Sheet implements draw.Canvas; a DXF drawing has no sheet.
func (c *canvas) Sheet(string, float64, float64) {}

// Window implements draw.Canvas; a DXF drawing is shown whole.
func (c *canvas) Window([]draw.Point) {}

// Layer implements draw.Canvas.
func (c *canvas) Layer(name draw.LayerName) { c.layer = layerName(name) }

// Line implements draw.Canvas.
func (c *canvas) Line(l draw.Line) {
	c.entity("LINE", l.Stroke)
	c.point(10, l.A)
	c.point(11, l.B)
}

// Polyline implements draw.Canvas.
func (c *canvas) Polyline(p draw.Polyline) {
	c.entity("POLYLINE", p.Stroke)
	c.whole(66, 1) // vertices follow
	c.point(10, draw.Point{})
	closed := 0
	if p.Closed {
		closed = 1
	}
	c.whole(70, closed)
	for _, q := range p.Points {
		c.entity("VERTEX", p.Stroke)
		c.point(10, q)
	}
	c.text(0, "SEQEND")
	c.text(8, c.layer)
}

// Circle implements draw.Canvas.
func (c *canvas) Circle(ring draw.Circle) {
	c.entity("CIRCLE", ring.Stroke)
	c.point(10, ring.Centre)
	c.real(40, ring.RadiusMM)
}

// Text implements draw.Canvas. DXF's text height is that of a capital, as ours.
func (c *canvas) Text(t draw.Text) {
	body := encode(t.Shown())
	if body == "" {
		return
	}
	c.entity("TEXT", draw.WordStroke)
	c.point(10, t.At)
	c.real(40, t.HeightMM)
	c.text(1, body)
	c.real(50, degrees(t.AngleRad))
	c.real(41, textWidth)
	c.text(7, textStyle)
	if t.Align != draw.Left {
		c.whole(72, int(t.Align)) // 1 centre, 2 right
		c.point(11, t.At)
	}
}

// degrees gives an angle from 0 to below 360.
func degrees(rad float64) float64 {
	return math.Mod(math.Mod(rad*180/math.Pi, 360)+360, 360)
}

// layerName is a layer's name in capitals, as R12 wants names.
func layerName(name draw.LayerName) string { return strings.ToUpper(string(name)) }
