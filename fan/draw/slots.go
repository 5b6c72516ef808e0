package draw

import (
	"math"
	"strconv"

	"scalepair/data/unit"
)

// Room beside the blank for the slots' numbers, in mm.
const (
	numberGapMM = 1.6                                 // from the blank's edge to the number
	smallGapMM  = 0.9                                 // from the number to the distance
	numberRowMM = numberMM + smallGapMM + smallMM + 2 // one row of numbers with their distances
	endRingMM   = 0.7                                 // radius of the ring about a slot's end point
)

// slots draws every slot from edge to edge, with the edges of the saw's cut where
// that is known, rings its end points and carries it on over the blank's edges to
// its number and its distances from the nut.
func (s *sketch) slots() {
	for _, f := range s.layout.Slotted() {
		line := s.across(f.Slot.Bass, f.Slot.Treble, SlotStroke)
		s.add(LayerSlots, line)
		if s.o.Kerf > 0 {
			s.add(LayerKerf, sawn(line, s.o.Kerf.MM(), s.o.Overrun.MM()))
		}
		s.add(LayerEnds,
			Circle{Centre: line.A, Radius: endRingMM, Stroke: EndStroke},
			Circle{Centre: line.B, Radius: endRingMM, Stroke: EndStroke})
	}
	for _, n := range s.numbers {
		s.carryOn(n)
	}
}

// sawn is the outline of a saw's cut along a slot, which runs on beyond both ends.
func sawn(slot Line, kerf, overrun float64) Element {
	long := slot.Length()
	a, b := slot.At(-overrun/long), slot.At(1+overrun/long)
	x, y := (slot.B.Y-slot.A.Y)/long*kerf/2, (slot.A.X-slot.B.X)/long*kerf/2
	return Polyline{Points: []Point{{a.X + x, a.Y + y}, {b.X + x, b.Y + y}, {b.X - x, b.Y - y}, {a.X - x, a.Y - y}}, Closed: true, Stroke: KerfStroke}
}

// number is what stands over both ends of a line across the strings.
type number struct {
	line         Line // up to the board's edges
	name         string
	above, below string // distances from the nut; empty at the nut
	row          int
}

// numbered says what stands over the slots and the nut line, every other one
// a row further out where they stand too close for one row.
func (s *sketch) numbered() {
	last := number{line: Line{A: Point{X: math.Inf(-1)}, B: Point{X: math.Inf(-1), Y: -1}}}
	for _, f := range s.layout.Frets {
		n := number{line: s.across(f.Slot.Bass, f.Slot.Treble, LeaderStroke), name: strconv.Itoa(f.Number)}
		n.above, n.below = s.fine(f.Treble.FromNut), s.fine(f.Bass.FromNut)
		if s.o.LeftHanded {
			n.above, n.below = n.below, n.above
		}
		if f.Number == 0 {
			n.above, n.below = "", ""
			if !s.layout.Spec.ZeroFret {
				n.name = "nut"
			}
		}
		room := math.Max(1.3*ems(n.name)*numberMM, ems(n.above)*smallMM+1) / CapShare
		gap := func(edge float64) float64 { return n.line.XAt(edge) - last.line.XAt(edge) }
		if last.row == 0 && min(gap(s.blank.Max.Y), gap(s.blank.Min.Y)) < room {
			n.row, s.outerRow = 1, 1
		}
		s.numbers, last = append(s.numbers, n), n
	}
}

// fine prints a distance as the setting-out list does, for want of room without
// its unit.
func (s *sketch) fine(l unit.Length) string {
	if s.o.Unit == unit.Millimetres {
		return s.o.Unit.Format(l, 2)
	}
	return s.o.Unit.Format(l, 1)
}

// carryOn takes a line that ends on the board over both edges of the blank and
// writes its name and distance there. A line that stands square goes on as the
// square line.
func (s *sketch) carryOn(n number) {
	stroke, layer := LeaderStroke, LayerEnds
	if s.isSquare(n.line) {
		stroke, layer = SquareStroke, LayerSquare
	}
	gap := numberGapMM + float64(n.row)*numberRowMM
	for _, side := range []struct {
		end      Point
		edge     float64
		out      float64 // +1 upwards, -1 downwards
		distance string
	}{{n.line.A, s.blank.Max.Y, 1, n.above}, {n.line.B, s.blank.Min.Y, -1, n.below}} {
		tip := side.edge + side.out*(gap-numberGapMM/2)
		s.add(layer, Line{A: side.end, B: Point{n.line.XAt(tip), tip}, Stroke: stroke})
		align := Centre
		if n.name == "nut" { // behind its own line: the base line stands close before it
			align = Left
		}
		words := func(from, height float64, body string) {
			middle := side.edge + side.out*(from+height/2)
			s.add(LayerNumbers, Text{At: Point{n.line.XAt(middle), middle}, Height: height, Align: align, Body: body}.Middle())
		}
		words(gap, numberMM, n.name)
		if side.distance != "" {
			words(gap+numberMM+smallGapMM, smallMM, side.distance)
		}
	}
}

// isSquare reports whether a slot or the nut line lies on the square line.
func (s *sketch) isSquare(line Line) bool {
	return !s.layout.Parallel && line.A.X == line.B.X
}

// numbersBeyond is y just outside the numbers above (1) or below (-1) the blank.
func (s *sketch) numbersBeyond(side float64) float64 {
	out := numberGapMM + float64(1+s.outerRow)*numberRowMM
	if side > 0 {
		return s.blank.Max.Y + out
	}
	return s.blank.Min.Y - out
}
