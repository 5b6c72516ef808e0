package fan

import (
	"fmt"
	"math"

	"scalepair/data/unit"
)

// Sawing is what slot depth depends on besides the layout.
type Sawing struct {
	FretWire
	Thickness   unit.Length // of the board as slotted; 0: not known, nothing is said of what is left
	RadiusFirst bool        // the board is radiused before it is slotted, and every slot sawn to one depth along the curve
}

// What must be left of a board (judgement).
const (
	LeastUnderSlot unit.Length = 1.5 * unit.Millimetre
	LeastUnderEnd  unit.Length = 0.8 * unit.Millimetre // under the ends alone of a slot sawn along the curve
	leastAtEdge    unit.Length = 2 * unit.Millimetre
)

// SlotDepth is how deep to saw one slot of a flat board that is radiused
// afterwards, or with Sawing.RadiusFirst of one that is radiused already: then
// the depth is the same all along, measured from the curve. The string
// centreline is the radius's middle.
type SlotDepth struct {
	Fret                     int
	Radius                   unit.Length // at the crossing of the centreline; 0 on a flat board
	Middle                   unit.Length // needed in the middle: tang and clearance
	Bass, Treble             unit.Length // needed at the two slot ends
	Saw                      unit.Length // one straight cut that is deep enough all along: the greatest of the three
	BassDrop, TrebleDrop     unit.Length // how far the radiused face falls from the flat at the slot ends
	LeftUnder                unit.Length // least thickness left under the cut, with RadiusFirst at its ends; 0 when the thickness is not known
	LeftAtBass, LeftAtTreble unit.Length // board thickness left at the slot ends after radiusing; 0 when not known
}

// Drop is how far a face of radius R falls from its highest line at the
// distance y from it:
//
//	R - sqrt(R^2 - y^2) = y^2/(R + sqrt(R^2 - y^2))
//
// 0 for R = 0, which stands for a flat board; NaN for |y| > R. The
// height of a circle's segment over the chord 2y.
func Drop(radius, y unit.Length) unit.Length {
	R, Y := radius.M(), y.M()
	if R == 0 {
		return 0
	}
	return unit.Length(Y * Y / (R + math.Sqrt(float64(R*R)-float64(Y*Y))))
}

// Depths gives the depth of every slot (see [Layout.Slotted]). At each slot end it is
//
//	tang + clearance + R - sqrt(R^2 - y^2)
//
// with that end's own y and, on a compound radius, its own R, which changes
// linearly along x between the nut line's crossing and the last fret's and on
// beyond them; with RadiusFirst it is tang + clearance. Faults: numbers out of range, a radius not greater than half the
// board's width, less than 1.5 mm left under a slot (with RadiusFirst less than
// 0.8 mm under its ends), less than 2 mm at an edge after radiusing (all
// judgement).
func (l *Layout) Depths(s Sawing) ([]SlotDepth, error) {
	f := l.checkSawing(s)
	if err := f.list.Err(); err != nil {
		return nil, err
	}
	l.checkRadius(&f)
	if err := f.list.Err(); err != nil {
		return nil, err
	}
	list := make([]SlotDepth, 0, len(l.Frets))
	for _, fret := range l.Slotted() {
		list = append(list, l.depth(fret, s))
	}
	l.checkLeft(&f, s, list)
	if err := f.list.Err(); err != nil {
		return nil, err
	}
	return list, nil
}

// LeastThickness is the thinnest board that Depths accepts; s.Thickness is
// not read. The faults are those of Depths.
func (l *Layout) LeastThickness(s Sawing) (unit.Length, error) {
	s.Thickness = 0
	list, err := l.Depths(s)
	if err != nil {
		return 0, err
	}
	var least unit.Length
	for _, d := range list {
		least = max(least, d.Middle+max(d.BassDrop, d.TrebleDrop)+s.leastUnder(), d.Middle+LeastUnderSlot)
	}
	for _, p := range l.edgePoints() {
		least = max(least, l.drop(p)+leastAtEdge)
	}
	return least, nil
}

// BlankFit reports whether one blank holds the board, thickness included.
type BlankFit struct {
	Fit
	// LeftUnder is left under the deepest slot and LeftAtEdge at the thinnest slot
	// end after radiusing; 0 while thickness or tang are not known.
	LeftUnder, LeftAtEdge unit.Length
	// Thin says why the blank is too thin; nil where it is not, or where that is not
	// known.
	Thin error
}

// Enough reports whether the blank is large enough and not known to be too thin.
func (b BlankFit) Enough() bool { return b.Fits && b.Thin == nil }

// FitBlanks judges every blank; s.Thickness is not read. Where the tang's depth is
// not known, nothing is said of thickness. The error is that of Depths.
func (l *Layout) FitBlanks(blanks []Blank, s Sawing) ([]BlankFit, error) {
	s.Thickness = 0
	var depths []SlotDepth
	if s.TangDepth > 0 {
		var err error
		if depths, err = l.Depths(s); err != nil {
			return nil, err
		}
	}
	var out []BlankFit
	for _, fit := range l.LeastBlank().Fit(blanks) {
		b := BlankFit{Fit: fit}
		if s.Thickness = fit.Blank.Thickness; s.Thickness > 0 && depths != nil {
			b.LeftUnder, b.LeftAtEdge = s.Thickness, s.Thickness
			for _, d := range depths {
				drop := max(d.BassDrop, d.TrebleDrop)
				b.LeftUnder, b.LeftAtEdge = min(b.LeftUnder, s.Thickness-d.Middle-drop), min(b.LeftAtEdge, s.Thickness-drop)
			}
			_, b.Thin = l.Depths(s)
		}
		out = append(out, b)
	}
	return out, nil
}

// leastUnder is what must be left under the deepest place of a slot.
func (s Sawing) leastUnder() unit.Length {
	if s.RadiusFirst {
		return LeastUnderEnd
	}
	return LeastUnderSlot
}

// radius is the fretboard radius at x.
func (l *Layout) radius(x unit.Length) unit.Length {
	nut, last := l.Spec.Radii()
	return nut + (last-nut)*x/l.Frets[l.Spec.Frets].Line.Cross
}

func (l *Layout) drop(p Point) unit.Length { return Drop(l.radius(p.X), p.Y) }

func (l *Layout) depth(fret Fret, s Sawing) SlotDepth {
	d := SlotDepth{
		Fret:     fret.Number,
		Radius:   l.radius(fret.Line.Cross),
		Middle:   s.TangDepth + s.Clearance,
		BassDrop: l.drop(fret.Slot.Bass), TrebleDrop: l.drop(fret.Slot.Treble),
	}
	deepest := d.Middle + max(d.BassDrop, d.TrebleDrop) // from the flat
	d.Bass, d.Treble, d.Saw = d.Middle+d.BassDrop, d.Middle+d.TrebleDrop, deepest
	if s.RadiusFirst {
		d.Bass, d.Treble, d.Saw = d.Middle, d.Middle, d.Middle
	}
	if s.Thickness > 0 {
		d.LeftUnder = s.Thickness - deepest
		d.LeftAtBass, d.LeftAtTreble = s.Thickness-d.BassDrop, s.Thickness-d.TrebleDrop
	}
	return d
}

func (l *Layout) checkSawing(s Sawing) faults {
	var f faults
	if nut, last := l.Spec.Radii(); nut != 0 || last != 0 {
		f.length(l.roundest(), "the fretboard radius", min(nut, last), leastRadius, mostRadius)
		f.length(l.roundest(), "the fretboard radius", max(nut, last), leastRadius, mostRadius)
	}
	s.FretWire.check(&f)
	f.length(keyTang, "the tang's depth", s.TangDepth, 0.2*unit.Millimetre, 5*unit.Millimetre)
	f.size(keyThickness, "the board's thickness", s.Thickness)
	return f
}

// The radii that are taken; more is flat (judgement).
const leastRadius, mostRadius unit.Length = 20 * unit.Millimetre, 10000 * unit.Millimetre

// checkRadius refuses a fretboard too round for its width, at the slot ends and
// at the board's corners.
func (l *Layout) checkRadius(f *faults) {
	if nut, _ := l.Spec.Radii(); nut == 0 {
		return
	}
	for _, p := range l.edgePoints() {
		r := l.radius(p.X)
		if r > abs(p.Y) {
			continue
		}
		f.add(l.roundest(), "the fretboard radius is not greater than half the board's width",
			fmt.Sprintf("%.1f mm where the edge is %.1f mm from the centreline", r.MM(), abs(p.Y).MM()), "take a greater radius")
		return
	}
}

// roundest is the key of the radius to be made greater: of a compound radius
// that of its smaller end.
func (l *Layout) roundest() string {
	switch {
	case l.Spec.RadiusNut == 0 && l.Spec.RadiusLast == 0:
		return keyRadius
	case l.Spec.RadiusNut <= l.Spec.RadiusLast:
		return keyRadiusNut
	}
	return keyRadiusLast
}

// edgePoints are the places on the board's edges where the radius is looked at.
func (l *Layout) edgePoints() []Point {
	corners := l.Board().Corners
	points := corners[:]
	for _, fret := range l.Frets {
		points = append(points, fret.Slot.Bass, fret.Slot.Treble)
	}
	return points
}

// checkLeft refuses a board too thin for slots and radius, naming the worst
// place of each kind.
func (l *Layout) checkLeft(f *faults, s Sawing, list []SlotDepth) {
	if s.Thickness == 0 {
		return
	}
	worst := list[0]
	for _, d := range list {
		if d.LeftUnder < worst.LeftUnder {
			worst = d
		}
	}
	left, least := worst.LeftUnder, s.leastUnder()
	if middle := s.Thickness - worst.Middle; s.RadiusFirst && middle < LeastUnderSlot {
		left, least = middle, LeastUnderSlot
	}
	if left < least {
		remedy := "take a thicker board"
		if !s.RadiusFirst && left >= LeastUnderEnd {
			remedy = fmt.Sprintf("radius first, then saw to tang and clearance (%.2f mm) along the curve, so that only the slot's ends are this thin; or take a thicker board", worst.Middle.MM())
		}
		what := fmt.Sprintf("too little is left under the slot of fret %d, %.2f mm of at least %.1f mm (judgement)", worst.Fret, plain(left.MM()), least.MM())
		if left < 0 {
			what = fmt.Sprintf("the slot of fret %d goes through the board, by %.2f mm", worst.Fret, -left.MM())
		}
		f.add(keyThickness, what, number(s.Thickness.MM())+" mm", remedy)
	}
	edge := s.Thickness
	for _, p := range l.edgePoints() {
		edge = min(edge, s.Thickness-l.drop(p))
	}
	if edge < leastAtEdge {
		what := fmt.Sprintf("too little is left at the board's edge after radiusing, %.2f mm of at least %.1f mm (judgement)", plain(edge.MM()), leastAtEdge.MM())
		if edge < 0 {
			what = fmt.Sprintf("nothing is left at the board's edge after radiusing: the face drops %.2f mm below the board", -edge.MM())
		}
		f.add(keyThickness, what, number(s.Thickness.MM())+" mm", "take a greater radius or a thicker board")
	}
}
