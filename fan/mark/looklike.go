package mark

import (
	"fmt"
	"math"

	"scalepair/data/unit"
)

// nearRatio is how near a ratio of read to laid out must come to that of two
// units to be taken for it: no marking is off by a factor of ten, and a board's
// marks are seldom off by 4 %.
const nearRatio = 0.04

// confusion is one way of entering a whole pass wrongly.
type confusion struct {
	what   string // "these look like ..."
	remedy string
	looks  func(r Reading, p plan) bool
	// whole: a single reading may be so by a slip of the pencil, but not a pass.
	whole bool
}

func confusions() []confusion {
	return []confusion{
		{"inches", "head the column measured_in, or write the unit in the cell", ratio(1 / 25.4), false},
		{"millimetres", "head the column measured_mm, or write the unit in the cell", ratio(25.4), false},
		{"centimetres", "write them in millimetres", ratio(0.1), false},
		{"distances from the nut", "write ruler as their pass, or enter the steps", looksFromNut, false},
		{"steps from the mark before", "write caliper as their pass, or enter the distances from the nut", looksLikeStep, false},
		{"distances from the bridge", "measure from the nut", looksFromBridge, true},
		{"the other line's marks", "exchange bass and treble under line, or draw the marks anew if they stand on the wrong lines", looksLikeOtherLine, true},
		{"the marks of the next fret", "fret 1 is the first mark behind the nut: number the rows anew, or draw the marks anew if a mark is missing", looksShifted(+1), true},
		{"the marks of the fret before", "fret 1 is the first mark behind the nut: number the rows anew, or draw the marks anew if there is one too many", looksShifted(-1), true},
	}
}

// A pass is taken for another when at least so many readings, and so large a
// share of them, fit that other within so many millimetres and not their own
// place. Judgement: coarser than any drawing, and less than lines or frets
// stand apart.
const (
	leastShifted = 5
	shiftedShare = 0.8
	fitsMM       = 1.0
)

// distance is what a reading should be.
func (p plan) distance(r Reading) float64 {
	switch r.Kind {
	case FromNut, Step:
		return p.lines[r.Line].marks[r.Fret] - p.lines[r.Line].marks[r.From]
	case NutOffset:
		return p.offsetMM
	}
	from := Bass
	if r.Kind == FromTrebleNut {
		from = Treble
	}
	a, b := p.lines[from].at[0], p.lines[1-from].at[r.Fret]
	return math.Hypot(b.X.MM()-a.X.MM(), b.Y.MM()-a.Y.MM())
}

// ratio looks for readings that are that many times too long. A nut offset of
// a few millimetres is too short to tell.
func ratio(want float64) func(Reading, plan) bool {
	return func(r Reading, p plan) bool {
		d := p.distance(r)
		return math.Abs(d) > 5 && math.Abs(r.MM/(d*want)-1) < nearRatio
	}
}

func looksFromNut(r Reading, p plan) bool {
	return r.Kind == Step && r.From > 0 && math.Abs(r.MM/p.lines[r.Line].marks[r.Fret]-1) < nearRatio
}

func looksLikeStep(r Reading, p plan) bool {
	marks := p.lines[r.Line].marks
	return r.Kind == FromNut && r.Fret > 1 && math.Abs(r.MM/(marks[r.Fret]-marks[r.Fret-1])-1) < nearRatio
}

// exchanged reports two diagonals of which each fits the other's length. A wrong
// nut offset makes one too long and the other too short by any amount; this is
// one amount of many, and the slip of the pencil far likelier.
func (in *inspector) exchanged(readings []Reading) {
	const near = 0.5 * fitsMM
	for _, a := range readings {
		for _, b := range readings {
			if a.Kind != FromBassNut || b.Kind != FromTrebleNut || a.Fret != b.Fret {
				continue
			}
			wantA, wantB := in.plan.distance(a), in.plan.distance(b)
			if math.Abs(a.MM-wantB) <= near && math.Abs(b.MM-wantA) <= near && math.Abs(a.MM-wantA) > fitsMM && math.Abs(b.MM-wantB) > fitsMM {
				in.faults.Add(a.place(), "the two diagonals look exchanged", fmt.Sprintf("%s where %s was laid out, and the other way round", a.given(), a.laidOut(wantA)),
					"exchange their names; if they are right, the treble nut lies wrong: set it out anew with all treble marks")
			}
		}
	}
}

// laidOut prints what a reading should be, in the unit that it was written in.
func (r Reading) laidOut(mm float64) string {
	if form := unit.Form[unit.Length](r.Written, ""); form.Known() && form.Unit != "mm" {
		return form.Text(mm/1000, 1e-5)
	}
	return unit.Fixed(mm, 2) + " mm"
}

// fits tells whether a ruler reading fits another distance, and not its own.
func fits(r Reading, p plan, otherMM float64) bool {
	return r.Kind == FromNut && math.Abs(r.MM-otherMM) <= fitsMM && math.Abs(r.MM-p.distance(r)) > fitsMM
}

func looksFromBridge(r Reading, p plan) bool {
	line := p.lines[r.Line]
	return fits(r, p, line.lengthMM-line.marks[r.Fret])
}

func looksLikeOtherLine(r Reading, p plan) bool {
	return r.Kind == FromNut && fits(r, p, p.lines[1-r.Line].marks[r.Fret])
}

func looksShifted(by int) func(Reading, plan) bool {
	return func(r Reading, p plan) bool {
		marks, n := p.lines[r.Line].marks, r.Fret+by
		return n > 0 && n < len(marks) && fits(r, p, marks[n])
	}
}

// pass is one method on one line.
type pass struct {
	kind Kind
	line Line
}

// units reports readings in the wrong unit, under the wrong pass, on the wrong
// line or from the wrong end, once for
// each pass of a line: the confusion that most of its readings share, since a
// step at fret 16 happens to be a 25th of the way there. It gives the passes
// that it reported.
func (in *inspector) units(readings []Reading) map[pass]bool {
	byPass, order, reported := map[pass][]Reading{}, []pass{}, map[pass]bool{}
	for _, r := range readings {
		k := pass{r.Kind, r.Line}
		if byPass[k] == nil {
			order = append(order, k)
		}
		byPass[k] = append(byPass[k], r)
	}
	for _, k := range order {
		var worst confusion
		var shared []Reading
		for _, c := range confusions() {
			if hit := in.hit(c, byPass[k]); len(hit) > len(shared) && c.enough(len(hit), len(byPass[k])) {
				worst, shared = c, hit
			}
		}
		if len(shared) > 0 {
			in.looks(worst, shared[0], len(shared))
			reported[k] = true
		}
	}
	return reported
}

// enough tells whether so many readings of a pass show the confusion.
func (c confusion) enough(hits, readings int) bool {
	return !c.whole || hits >= leastShifted && float64(hits) >= shiftedShare*float64(readings)
}

// hit gives the readings that show a confusion.
func (in *inspector) hit(c confusion, readings []Reading) []Reading {
	var out []Reading
	for _, r := range readings {
		if c.looks(r, in.plan) {
			out = append(out, r)
		}
	}
	return out
}

func (in *inspector) looks(c confusion, r Reading, count int) {
	what := fmt.Sprintf("these look like %s", c.what)
	if count > 1 {
		what += fmt.Sprintf(" (%d readings of this pass)", count)
	}
	given := fmt.Sprintf("%s where %s mm was laid out", r.given(), unit.Fixed(in.plan.distance(r), 2)) // in mm, since the unit is in doubt
	in.faults.Add(r.place(), what, given, c.remedy)
}
