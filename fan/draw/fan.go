package draw

import (
	"cmp"
	"slices"

	"scalepair/fan"
)

// Heights of capitals, in mm. A capital of 3 mm is read at 60 to 70 cm, an
// arm's length, by an eye that needs 1/200 of the distance (judgement).
const (
	titleMM  = 6.0
	numberMM = 3.6
	wordsMM  = 3.2
	keyMM    = 2.6 // also of lines' names
	smallMM  = 1.8 // read from near by, and only where the ruler lies
)

// Fan draws a layout. The origin is where the nut line crosses the centreline;
// see the package comment for the axes.
func Fan(l *fan.Layout, o Options) Drawing {
	s := newSketch(l, o)
	s.saddles()
	s.numbered()
	s.blankAndBoard()
	s.centreline()
	s.nut()
	s.strings()
	s.slots()
	s.square()
	s.dots()
	d := Drawing{Title: cmp.Or(OneLine(o.Title), "fan"), Joins: s.joins(), Upper: "TREBLE", Lower: "BASS"}
	if o.LeftHanded {
		d.Upper, d.Lower = d.Lower, d.Upper
	}
	s.title(&d)
	s.keyAndBars()
	for _, name := range LayerNames() {
		if len(s.layers[name]) > 0 {
			d.Layers = append(d.Layers, Layer{Name: name, Elements: s.layers[name]})
		}
	}
	return d
}

// sketch is a drawing of a layout in the making.
type sketch struct {
	layout   *fan.Layout
	o        Options
	up       float64 // the sign of the layout's y on the drawing
	blank    Rect    // the blank, in the drawing's axes
	endX     float64 // where string lines and centreline end
	numbers  []number
	outerRow int // 1 when numbers stand in two rows
	layers   map[LayerName][]Element
	used     map[Stroke]bool
}

func newSketch(l *fan.Layout, o Options) *sketch {
	// Seen on the face, nut at the left, a right-handed board has its bass side below.
	s := &sketch{layout: l, o: o, up: -1, layers: map[LayerName][]Element{}, used: map[Stroke]bool{}}
	if o.LeftHanded {
		s.up = 1
	}
	if o.Compensations == nil {
		s.o.Compensations = make([]*fan.Compensation, len(l.Strings))
	}
	b := l.LeastBlank()
	s.blank = NoRect().Include(s.at(fan.Point{X: b.MinX, Y: b.MinY}), s.at(fan.Point{X: b.MaxX, Y: b.MaxY}))
	s.endX = s.blank.Max.X
	return s
}

// at carries a point of the layout to the drawing.
func (s *sketch) at(p fan.Point) Point { return Point{p.X.MM(), s.up * p.Y.MM()} }

// across carries a line across the strings; A is its upper end on the drawing.
func (s *sketch) across(bass, treble fan.Point, stroke Stroke) Line {
	line := Line{A: s.at(bass), B: s.at(treble), Stroke: stroke}
	if line.A.Y < line.B.Y {
		line.A, line.B = line.B, line.A
	}
	return line
}

func (s *sketch) shows(name LayerName) bool { return !slices.Contains(s.o.Hide, name) }

// add puts elements on a layer unless it is hidden.
func (s *sketch) add(name LayerName, elements ...Element) {
	if !s.shows(name) {
		return
	}
	for _, e := range elements {
		if stroke := e.stroke(); stroke >= 0 {
			s.used[stroke] = true
		}
	}
	s.layers[name] = append(s.layers[name], elements...)
}
