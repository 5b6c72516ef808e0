// Package dxf writes a drawing as DXF R12 in ASCII: the plain dialect that
// every drawing program and most routers' software read. Units are
// millimetres, y runs up, and the origin is the drawing's own, where the nut
// line crosses the centreline. Every operation has its layer, in a colour of its
// own; all words stand on one layer, so that a machine can pass over them. Line
// types are named after their meaning.
//
// The group codes used are those of the format's public reference; what R12
// wants beyond it (VERTEX and SEQEND records, table heads) was proved by
// reading the files back with two independent readers in the tests.
//
// In reading order: dxf.go has the entities, tables.go what stands before them,
// encode.go the letters.
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
	c.put(0, "SECTION", 2, "ENTITIES")
	d.On(c)
	c.put(0, "ENDSEC", 0, "EOF")
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

// put writes group codes and values, in turn: a string or int as it is, a
// float64 with the decimals of a millimetre, and a place as three numbers.
func (c *canvas) put(pairs ...any) {
	for i := 0; i < len(pairs); i += 2 {
		code := pairs[i].(int)
		switch v := pairs[i+1].(type) {
		case draw.Point:
			c.put(code, v.X, code+10, v.Y, code+20, 0.0)
		case float64:
			fmt.Fprintf(&c.out, "%3d\r\n%s\r\n", code, unit.Fixed(v, decimals))
		default:
			fmt.Fprintf(&c.out, "%3d\r\n%v\r\n", code, v)
		}
	}
}

// entity begins an entity on the current layer.
func (c *canvas) entity(kind string, s draw.Stroke) {
	c.put(0, kind, 8, c.layer, 6, lineType(s))
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
	c.put(10, l.A, 11, l.B)
}

// Polyline implements draw.Canvas.
func (c *canvas) Polyline(p draw.Polyline) {
	c.entity("POLYLINE", p.Stroke)
	closed := 0
	if p.Closed {
		closed = 1
	}
	c.put(66, 1, 10, draw.Point{}, 70, closed) // 66: vertices follow
	for _, q := range p.Points {
		c.entity("VERTEX", p.Stroke)
		c.put(10, q)
	}
	c.put(0, "SEQEND", 8, c.layer)
}

// Circle implements draw.Canvas.
func (c *canvas) Circle(ring draw.Circle) {
	c.entity("CIRCLE", ring.Stroke)
	c.put(10, ring.Centre, 40, ring.Radius)
}

// Text implements draw.Canvas. DXF's text height is that of a capital, as ours.
func (c *canvas) Text(t draw.Text) {
	body := encode(t.Shown())
	if body == "" {
		return
	}
	c.put(0, "TEXT", 8, textLayer, 6, plainLine, 10, t.At, 40, t.Height, 1, body, 50, degrees(t.Angle), 41, textWidth, 7, textStyle)
	if t.Align != draw.Left {
		c.put(72, int(t.Align), 11, t.At) // 1 centre, 2 right
	}
}

// degrees gives an angle from 0 to below 360.
func degrees(rad float64) float64 {
	return math.Mod(math.Mod(rad*180/math.Pi, 360)+360, 360)
}

// layerName is a layer's name in capitals, as R12 wants names.
func layerName(name draw.LayerName) string { return strings.ToUpper(string(name)) }
