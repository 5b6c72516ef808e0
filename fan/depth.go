package fan

import (
	"fmt"
	"math"
)

// Sawing is what slot depth depends on besides the layout. Lengths in mm.
type Sawing struct {
	RadiusNutMM, RadiusLastMM float64 // crown radius where the nut line and the last fret cross the centreline; equal for a single radius; both 0 for a flat board
	TangMM                    float64 // depth of the fret wire's tang
	ClearanceMM               float64 // air under the tang; DefaultClearanceMM by custom
	ThicknessMM               float64 // of the board as slotted; 0: not known, nothing is said of what is left
	KerfMM                    float64 // width of the saw's cut; 0: not known
	TangWidthMM               float64 // thickness of the tang's web; 0: not known
	BarbWidthMM               float64 // over the barbs; 0: not known
	RadiusFirst               bool    // the board is radiused before it is slotted, and every slot sawn to one depth along the curve
}

// DefaultClearanceMM is the air under a tang (judgement).
const DefaultClearanceMM = 0.4

// What must be left of a board (judgement).
const (
	LeastUnderSlotMM = 1.5
	LeastUnderEndMM  = 0.8 // under the ends alone of a slot sawn along the curve
	leastAtEdgeMM    = 2.0
)

// SlotDepth is how deep to saw one slot of a flat board that is radiused
// afterwards, or with Sawing.RadiusFirst of one that is radiused already: then
// the depth is the same all along, measured from the curve. The string
// centreline is the crown's middle.
type SlotDepth struct {
	Fret                         int
	RadiusMM                     float64 // at the crossing of the centreline; 0 on a flat board
	MiddleMM                     float64 // needed in the middle: tang and clearance
	BassMM, TrebleMM             float64 // needed at the two slot ends
	SawMM                        float64 // one straight cut that serves all along: the greatest of the three
	BassDropMM, TrebleDropMM     float64 // how far the crown falls from the flat at the slot ends
	LeftUnderMM                  float64 // least thickness left under the cut, with RadiusFirst at its ends; 0 when the thickness is not known
	LeftAtBassMM, LeftAtTrebleMM float64 // board thickness left at the slot ends after radiusing; 0 when not known
}

// Drop is how far a crown of radius R falls from its highest line at the
// distance y from it:
//
//	R - sqrt(R^2 - y^2) = y^2/(R + sqrt(R^2 - y^2))
//
// Both in mm. 0 for R = 0, which stands for a flat board; NaN for |y| > R. The
// height of a circle's segment over the chord 2y.
func Drop(radiusMM, yMM float64) float64 {
	if radiusMM == 0 {
		return 0
	}
	return yMM * yMM / (radiusMM + math.Sqrt(float64(radiusMM*radiusMM)-float64(yMM*yMM)))
}

// Depths gives the depth of every slot (see [Layout.Slotted]). At each slot end it is
//
//	tang + clearance + R - sqrt(R^2 - y^2)
//
// with that end's own y and, on a compound crown, its own R, which changes
// linearly along x between the nut line's crossing and the last fret's and on
// beyond them; with RadiusFirst it is tang + clearance. Faults: numbers out of range, a radius not greater than half the
// board's width, less than 1.5 mm left under a slot (with RadiusFirst less than
// 0.8 mm under its ends), less than 2 mm at an edge after radiusing (all
// judgement).
func (l *Layout) Depths(s Sawing) ([]SlotDepth, error) {
	f := checkSawing(s)
	if err := f.list.Err(); err != nil {
		return nil, err
	}
	l.checkCrown(&f, s)
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

// LeastThickness is the thinnest board that Depths accepts; s.ThicknessMM is
// not read. The faults are those of Depths.
func (l *Layout) LeastThickness(s Sawing) (float64, error) {
	s.ThicknessMM = 0
	list, err := l.Depths(s)
	if err != nil {
		return 0, err
	}
	least := 0.0
	for _, d := range list {
		least = max(least, d.MiddleMM+max(d.BassDropMM, d.TrebleDropMM)+s.leastUnder(), d.MiddleMM+LeastUnderSlotMM)
	}
	for _, p := range l.edgePoints() {
		least = max(least, l.drop(s, p)+leastAtEdgeMM)
	}
	return least, nil
}

// leastUnder is what must be left under the deepest place of a slot.
func (s Sawing) leastUnder() float64 {
	if s.RadiusFirst {
		return LeastUnderEndMM
	}
	return LeastUnderSlotMM
}

// radius is the crown's radius at x.
func (l *Layout) radius(s Sawing, x float64) float64 {
	return s.RadiusNutMM + (s.RadiusLastMM-s.RadiusNutMM)*x/l.Frets[l.Spec.Frets].Line.CrossMM
}

func (l *Layout) drop(s Sawing, p Point) float64 { return Drop(l.radius(s, p.X), p.Y) }

func (l *Layout) depth(fret Fret, s Sawing) SlotDepth {
	d := SlotDepth{
		Fret:       fret.Number,
		RadiusMM:   l.radius(s, fret.Line.CrossMM),
		MiddleMM:   s.TangMM + s.ClearanceMM,
		BassDropMM: l.drop(s, fret.Slot.Bass), TrebleDropMM: l.drop(s, fret.Slot.Treble),
	}
	deepest := d.MiddleMM + max(d.BassDropMM, d.TrebleDropMM) // from the flat
	d.BassMM, d.TrebleMM, d.SawMM = d.MiddleMM+d.BassDropMM, d.MiddleMM+d.TrebleDropMM, deepest
	if s.RadiusFirst {
		d.BassMM, d.TrebleMM, d.SawMM = d.MiddleMM, d.MiddleMM, d.MiddleMM
	}
	if s.ThicknessMM > 0 {
		d.LeftUnderMM = s.ThicknessMM - deepest
		d.LeftAtBassMM, d.LeftAtTrebleMM = s.ThicknessMM-d.BassDropMM, s.ThicknessMM-d.TrebleDropMM
	}
	return d
}

func checkSawing(s Sawing) faults {
	var f faults
	if s.RadiusNutMM != 0 || s.RadiusLastMM != 0 {
		if s.RadiusNutMM == s.RadiusLastMM {
			f.length(keyRadius, "the crown's radius", s.RadiusNutMM, 20, 5000)
		} else {
			f.length(keyRadiusNut, "the crown's radius at the nut", s.RadiusNutMM, 20, 5000)
			f.length(keyRadiusLast, "the crown's radius at the last fret", s.RadiusLastMM, 20, 5000)
		}
	}
	f.length(keyTang, "the tang's depth", s.TangMM, 0.2, 5)
	f.length(keyClearance, "the clearance under the tang", s.ClearanceMM, 0, 3)
	f.length(keyThickness, "the board's thickness", s.ThicknessMM, 0, 50)
	f.checkWidthsOfCut(s)
	return f
}

// checkCrown refuses a crown too round for the board, at the slot ends and at
// the board's corners.
func (l *Layout) checkCrown(f *faults, s Sawing) {
	if s.RadiusNutMM == 0 {
		return
	}
	for _, p := range l.edgePoints() {
		r := l.radius(s, p.X)
		if r > math.Abs(p.Y) {
			continue
		}
		f.add(s.roundest(), "the crown's radius is not greater than half the board's width",
			fmt.Sprintf("%.1f mm where the edge is %.1f mm from the centreline", r, math.Abs(p.Y)), "take a greater radius")
		return
	}
}

// roundest is the key of the radius to be made greater: of a compound crown that
// of its smaller end.
func (s Sawing) roundest() string {
	switch {
	case s.RadiusNutMM < s.RadiusLastMM:
		return keyRadiusNut
	case s.RadiusNutMM > s.RadiusLastMM:
		return keyRadiusLast
	}
	return keyRadius
}

// edgePoints are the places on the board's edges where the crown is looked at.
func (l *Layout) edgePoints() []Point {
	corners := l.Board().Corners
	points := corners[:]
	for _, fret := range l.Frets {
		points = append(points, fret.Slot.Bass, fret.Slot.Treble)
	}
	return points
}

// checkLeft refuses a board too thin for slots and crown, naming the worst
// place of each kind.
func (l *Layout) checkLeft(f *faults, s Sawing, list []SlotDepth) {
	if s.ThicknessMM == 0 {
		return
	}
	worst := list[0]
	for _, d := range list {
		if d.LeftUnderMM < worst.LeftUnderMM {
			worst = d
		}
	}
	left, least := worst.LeftUnderMM, s.leastUnder()
	if middle := s.ThicknessMM - worst.MiddleMM; s.RadiusFirst && middle < LeastUnderSlotMM {
		left, least = middle, LeastUnderSlotMM
	}
	if left < least {
		remedy := "take a thicker board"
		if !s.RadiusFirst && left >= LeastUnderEndMM {
			remedy = fmt.Sprintf("radius first, then saw to tang and clearance (%.2f mm) along the curve, so that only the slot's ends are this thin; or take a thicker board", worst.MiddleMM)
		}
		what := fmt.Sprintf("too little is left under the slot of fret %d, %.2f mm of at least %.1f mm (judgement)", worst.Fret, plain(left), least)
		if left < 0 {
			what = fmt.Sprintf("the slot of fret %d goes through the board, by %.2f mm", worst.Fret, -left)
		}
		f.add(keyThickness, what, number(s.ThicknessMM)+" mm", remedy)
	}
	edge := s.ThicknessMM
	for _, p := range l.edgePoints() {
		edge = min(edge, s.ThicknessMM-l.drop(s, p))
	}
	if edge < leastAtEdgeMM {
		what := fmt.Sprintf("too little is left at the board's edge after radiusing, %.2f mm of at least %.1f mm (judgement)", plain(edge), leastAtEdgeMM)
		if edge < 0 {
			what = fmt.Sprintf("nothing is left at the board's edge after radiusing: the crown drops %.2f mm below the board", -edge)
		}
		f.add(keyThickness, what, number(s.ThicknessMM)+" mm", "take a greater radius or a thicker board")
	}
}
