package fan

import (
	"fmt"
	"math"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Sawing is what slot depth depends on besides the layout.
type Sawing struct {
	FretWire
	RadiusFirst bool // the board is radiused before it is slotted, and every slot sawn to one depth along the curve
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
	Fret int
	Saw  unit.Length // one straight cut that is deep enough all along
	Drop unit.Length // how far the radiused face falls from the flat at the lower of the slot ends
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

// Depths gives the depth of every slot (see [Layout.Slotted]): the greater of those at
// its ends,
//
//	tang + clearance + R - sqrt(R^2 - y^2)
//
// with that end's own y and, on a compound radius, its own R, which changes
// linearly along x between the nut line's crossing and the last fret's and on
// beyond them; with RadiusFirst it is tang + clearance. A radius not greater than
// half the board's width is a fault: since both change linearly along an edge, it
// shows at a corner.
func (l *Layout) Depths(s Sawing) ([]SlotDepth, error) {
	for _, p := range l.Board().Corners {
		if r := l.radius(p.X); l.roundest() != 0 && r <= abs(p.Y) {
			key := "neck.radius"
			switch l.roundest() {
			case l.Spec.RadiusNut:
				key = "neck.radius_nut"
			case l.Spec.RadiusLast:
				key = "neck.radius_last"
			}
			return nil, fault.List{{Place: keyed(key), What: "the fretboard radius is not greater than half the board's width", Remedy: "take a greater radius",
				Given: fmt.Sprintf("%s where the edge is %s from the centreline", millimetres(r), millimetres(abs(p.Y)))}}
		}
	}
	var list []SlotDepth
	for _, fret := range l.Slotted() {
		list = append(list, l.depth(fret, s))
	}
	return list, nil
}

func (l *Layout) depth(fret Fret, s Sawing) SlotDepth {
	d := SlotDepth{fret.Number, s.needed(), max(l.drop(fret.Slot.Bass), l.drop(fret.Slot.Treble))}
	if !s.RadiusFirst {
		d.Saw += d.Drop
	}
	return d
}

// needed is the depth below the face in the middle: tang and clearance.
func (s Sawing) needed() unit.Length { return s.TangDepth + s.Clearance }

// roundest is the smaller radius of the board's ends; 0 for a flat board.
func (l *Layout) roundest() unit.Length {
	nut, last := l.Spec.Radii()
	return min(nut, last)
}

// radius is the fretboard radius at x.
func (l *Layout) radius(x unit.Length) unit.Length {
	nut, last := l.Spec.Radii()
	return nut + (last-nut)*x/l.Last().Line.Cross
}

func (l *Layout) drop(p Point) unit.Length { return Drop(l.radius(p.X), p.Y) }

// LeastThickness is the thinnest board that leaves enough under slots of these
// depths and at the edges after radiusing (judgement). Along an edge a face of
// linear radius falls by a convex function of x, so the most at a corner.
func (l *Layout) LeastThickness(s Sawing, depths []SlotDepth) (least unit.Length) {
	under := LeastUnderSlot
	if s.RadiusFirst {
		under = LeastUnderEnd
	}
	for _, d := range depths {
		least = max(least, s.needed()+d.Drop+under, s.needed()+LeastUnderSlot)
	}
	for _, p := range l.Board().Corners {
		least = max(least, l.drop(p)+leastAtEdge)
	}
	return least
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

// FitBlanks judges every blank. Without depths nothing is said of thickness.
func (l *Layout) FitBlanks(blanks []Blank, s Sawing, depths []SlotDepth) (out []BlankFit) {
	for _, fit := range l.LeastBlank().Fit(blanks) {
		b := BlankFit{Fit: fit}
		if thick := fit.Blank.Thickness; thick > 0 && depths != nil {
			b.LeftUnder, b.LeftAtEdge, b.Thin = thick, thick, l.thin(thick, s, depths)
			for _, d := range depths {
				b.LeftUnder, b.LeftAtEdge = min(b.LeftUnder, thick-s.needed()-d.Drop), min(b.LeftAtEdge, thick-d.Drop)
			}
		}
		out = append(out, b)
	}
	return out
}

// thin is the fault of a board that is too thin, nil for one that is not.
func (l *Layout) thin(thick unit.Length, s Sawing, depths []SlotDepth) error {
	least, remedy := l.LeastThickness(s, depths), "take a thicker board"
	if thick >= least {
		return nil
	}
	s.RadiusFirst = true
	if along := l.LeastThickness(s, depths); thick >= along {
		remedy = fmt.Sprintf("radius first, then saw along the curve (--radius-first), which takes %.2f mm; or take a thicker board", along.MM())
	}
	return fault.List{{Place: keyed("blanks.thickness"), What: fmt.Sprintf("too thin for slots and radius, which take at least %.2f mm (judgement: %.1f mm left under a slot, %.1f mm at an edge)",
		least.MM(), LeastUnderSlot.MM(), leastAtEdge.MM()), Given: fmt.Sprintf("%.2f mm", thick.MM()), Remedy: remedy}}
}
