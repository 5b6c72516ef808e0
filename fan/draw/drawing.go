package draw

import (
	"math"
	"slices"
)

// LayerName says what a layer's elements are about. Layers can be shown and
// hidden one by one in the formats that have layers.
type LayerName string

// The layers, in the order in which they are drawn.
const (
	LayerBlank   LayerName = "blank"
	LayerBase    LayerName = "base-lines"
	LayerBoard   LayerName = "board"
	LayerCentre  LayerName = "centreline"
	LayerStrings LayerName = "strings"
	LayerLabels  LayerName = "string-names"
	LayerKerf    LayerName = "slot-outlines"
	LayerSlots   LayerName = "slots"
	LayerEnds    LayerName = "slot-ends"
	LayerNumbers LayerName = "slot-numbers"
	LayerNut     LayerName = "nut"
	LayerSaddles LayerName = "saddles"
	LayerSquare  LayerName = "square-line"
	LayerNamed   LayerName = "line-names"
	LayerDots    LayerName = "dots"
	LayerTitle   LayerName = "title"
	LayerKey     LayerName = "key"
	LayerBars    LayerName = "check-bars"
	LayerJoins   LayerName = "joins"
	LayerFrame   LayerName = "sheet"
)

// LayerNames gives every layer in drawing order.
func LayerNames() []LayerName {
	return []LayerName{
		LayerBlank, LayerBase, LayerBoard, LayerCentre, LayerStrings, LayerLabels, LayerKerf, LayerSlots, LayerEnds, LayerNumbers,
		LayerNut, LayerSaddles, LayerSquare, LayerNamed, LayerDots, LayerTitle, LayerKey, LayerBars, LayerJoins, LayerFrame,
	}
}

// Element is one of Line, Polyline, Circle and Text.
type Element interface {
	// Bounds is the smallest upright rectangle about the element, line width
	// left out; a text's is an estimate on the generous side.
	Bounds() Rect
	// Through gives the element carried by m.
	Through(m Map) Element
	// On draws the element on c.
	On(c Canvas)
	// stroke is what the element's line stands for, -1 for words.
	stroke() Stroke
}

func (l Line) stroke() Stroke      { return l.Stroke }
func (p Polyline) stroke() Stroke  { return p.Stroke }
func (ring Circle) stroke() Stroke { return ring.Stroke }
func (t Text) stroke() Stroke      { return -1 }

// Line is a straight line from A to B.
type Line struct {
	A, B   Point
	Stroke Stroke
}

// Polyline joins Points in order, and the last to the first when Closed.
type Polyline struct {
	Points []Point
	Closed bool
	Stroke Stroke
}

// Circle is an unfilled circle; Radius is above 0.
type Circle struct {
	Centre Point
	Radius float64
	Stroke Stroke
}

// Layer holds elements that belong together.
type Layer struct {
	Name     LayerName
	Elements []Element
}

// Drawing is a plain picture in true size. Layers stand in drawing order, each
// name at most once. Joins are lines, in the order of their x, along which
// paper may be cut and joined without crossing a slot (empty when any place is right).
//
// The words of LayerTitle stand here too, for sheets that hold a part of the
// drawing only: Notes is what stands below the heading, a line each, PlanLine the
// plan's number and its date, Checks what to measure on the whole drawing.
type Drawing struct {
	Title    string
	Notes    []string
	PlanLine string
	Checks   []string
	Upper    string // the name of the board's upper side: BASS or TREBLE
	Lower    string
	Layers   []Layer
	Joins    []Line
}

// Bounds is the smallest upright rectangle about all elements.
func (d Drawing) Bounds() Rect {
	all := NoRect()
	for _, l := range d.Layers {
		for _, e := range l.Elements {
			all = all.Union(e.Bounds())
		}
	}
	return all
}

// Layer gives the layer of that name, empty when there is none.
func (d Drawing) Layer(name LayerName) Layer {
	for _, l := range d.Layers {
		if l.Name == name {
			return l
		}
	}
	return Layer{Name: name}
}

// Without gives the drawing without the named layers.
func (d Drawing) Without(names ...LayerName) Drawing {
	d.Layers = slices.DeleteFunc(slices.Clone(d.Layers), func(l Layer) bool { return slices.Contains(names, l.Name) })
	return d
}

// Through gives the drawing carried by m, joins included.
func (d Drawing) Through(m Map) Drawing {
	out := d
	out.Layers, out.Joins = nil, nil
	for _, l := range d.Layers {
		moved := Layer{Name: l.Name, Elements: make([]Element, len(l.Elements))}
		for i, e := range l.Elements {
			moved.Elements[i] = e.Through(m)
		}
		out.Layers = append(out.Layers, moved)
	}
	for _, j := range d.Joins {
		out.Joins = append(out.Joins, j.Through(m).(Line))
	}
	return out
}

// Bounds implements Element.
func (l Line) Bounds() Rect { return NoRect().Include(l.A, l.B) }

// Through implements Element.
func (l Line) Through(m Map) Element {
	return Line{A: m.Point(l.A), B: m.Point(l.B), Stroke: l.Stroke}
}

// On implements Element.
func (l Line) On(c Canvas) { c.Line(l) }

// At is the point at share t of the way from A to B.
func (l Line) At(t float64) Point {
	return Point{l.A.X + t*(l.B.X-l.A.X), l.A.Y + t*(l.B.Y-l.A.Y)}
}

// Length is the distance from A to B, in mm.
func (l Line) Length() float64 { return math.Hypot(l.B.X-l.A.X, l.B.Y-l.A.Y) }

// XAt is x where the straight line through l's ends is y high. l must not lie
// level.
func (l Line) XAt(y float64) float64 {
	return l.A.X + (l.B.X-l.A.X)*(y-l.A.Y)/(l.B.Y-l.A.Y)
}

// Bounds implements Element.
func (p Polyline) Bounds() Rect { return NoRect().Include(p.Points...) }

// Through implements Element.
func (p Polyline) Through(m Map) Element {
	out := Polyline{Points: make([]Point, len(p.Points)), Closed: p.Closed, Stroke: p.Stroke}
	for i, q := range p.Points {
		out.Points[i] = m.Point(q)
	}
	return out
}

// On implements Element.
func (p Polyline) On(c Canvas) { c.Polyline(p) }

// Bounds implements Element.
func (ring Circle) Bounds() Rect {
	return Rect{Min: ring.Centre, Max: ring.Centre}.Grow(ring.Radius)
}

// Through implements Element. A map that stretches x and y unlike gives a circle
// of the same area: a printer's two directions differ by less than shows on a dot.
func (ring Circle) Through(m Map) Element {
	return Circle{Centre: m.Point(ring.Centre), Radius: ring.Radius * math.Sqrt(math.Abs(m.XX*m.YY-m.XY*m.YX)), Stroke: ring.Stroke}
}

// On implements Element.
func (ring Circle) On(c Canvas) { c.Circle(ring) }
