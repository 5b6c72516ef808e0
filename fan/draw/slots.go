package draw

import "strconv"

// Room beside the blank for the slots' numbers, in mm.
const (
	numberGapMM = 1.6                       // from the blank's edge to the number
	numberRowMM = numberMM + 2              // one row of numbers
	numbersMM   = numberGapMM + numberRowMM // one row with its gap
	endRingMM   = 0.7                       // radius of the ring about a slot's end point
)

// slots draws every slot from edge to edge, rings its end points and carries it
// on over the blank's edges to its number.
func (s *sketch) slots() {
	row := rows{}
	for _, f := range s.layout.Slotted() {
		line := s.across(f.Slot.Bass, f.Slot.Treble, SlotStroke)
		s.add(LayerSlots, line)
		s.add(LayerEnds,
			Circle{Centre: line.A, Radius: endRingMM, Stroke: EndStroke},
			Circle{Centre: line.B, Radius: endRingMM, Stroke: EndStroke})
		if f.Number == 0 {
			continue // the nut line beneath it carries the number
		}
		name := strconv.Itoa(f.Number)
		at := row.next(line.xAt(s.blank.Max.Y), line.xAt(s.blank.Min.Y), name)
		s.outerRow = max(s.outerRow, at)
		s.carryOn(LayerNumbers, line, name, at)
	}
}

// carryOn takes a line that ends on the board over both edges of the blank and
// writes its name there, row rows further out. A line that stands
// square goes on as the square line.
func (s *sketch) carryOn(layer LayerName, line Line, name string, row int) {
	gap := numberGapMM + float64(row)*numberRowMM
	stroke, lineLayer := LeaderStroke, layer
	if s.isSquare(line) {
		stroke, lineLayer = SquareStroke, LayerSquare
	}
	for _, side := range []struct {
		end  Point
		edge float64
		out  float64 // +1 upwards, -1 downwards
	}{{line.A, s.blank.Max.Y, 1}, {line.B, s.blank.Min.Y, -1}} {
		tip := side.edge + side.out*(gap-numberGapMM/2)
		middle := side.edge + side.out*(gap+numberMM/2)
		s.add(lineLayer, Line{A: side.end, B: Point{line.xAt(tip), tip}, Stroke: stroke})
		s.add(layer, Text{At: Point{line.xAt(middle), middle - numberMM/2}, Height: numberMM, Align: Centre, Body: name})
	}
}

// rows puts every other number one row further out where slots stand too close
// for one row.
type rows struct {
	above, below float64 // x of the last number of the inner row
	started      bool
}

// next says in which row, 0 or 1, a number stands whose line leaves the blank
// at these two x.
func (r *rows) next(above, below float64, name string) int {
	room := 1.3 * ems(name) * numberMM / CapShare
	if r.started && (above-r.above < room || below-r.below < room) {
		r.started = false
		return 1
	}
	r.above, r.below, r.started = above, below, true
	return 0
}

// isSquare reports whether a slot or the nut line lies on the square line.
func (s *sketch) isSquare(line Line) bool {
	return !s.layout.Parallel && line.A.X == line.B.X
}

// numbersBeyond gives the y just outside the numbers above and below the blank.
func (s *sketch) numbersBeyond() (top, bottom float64) {
	out := numbersMM + float64(s.outerRow)*numberRowMM
	return s.blank.Max.Y + out, s.blank.Min.Y - out
}
