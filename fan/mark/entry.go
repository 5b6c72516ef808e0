package mark

import (
	"fmt"
	"math"
	"slices"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// inspect reports what cannot be meant so, by one look after another: what one
// finds would mislead the next.
func inspect(p plan, readings []Reading) error {
	for _, look := range []func(plan, []Reading) fault.List{unknown, confused, otherLength, exchanged} {
		if faults := look(p, readings); faults != nil {
			return faults.Err()
		}
	}
	return nil
}

// given is what was written, or the same in millimetres.
func (r Reading) given() string {
	if r.Written != "" {
		return r.Written
	}
	return unit.Fixed(r.Measured.MM(), 2) + " mm"
}

// unknown reports frets that the board does not have, and what was entered twice.
func unknown(p plan, readings []Reading) (faults fault.List) {
	seen := map[string]bool{}
	for _, r := range readings {
		if last := p.lines[Bass].last(); r.Fret > last {
			faults.Add(r.Place, "no such fret on this board", fmt.Sprint(r.Fret), fmt.Sprintf("give 1 to %d", last))
		}
		if seen[r.Name()] {
			faults.Add(r.Place, "entered twice", r.Name(), "keep one row, or the mean of both")
		}
		seen[r.Name()] = true
	}
	return faults
}

// confusion is one way of entering readings wrongly.
type confusion struct {
	what, remedy string
	looks        func(r Reading, p plan) bool
	// whole: a single reading may be so by a slip of the hand, but not a pass.
	whole bool
}

// likeRatio is how near a ratio of read to nominal must come to one of two units
// or two decimal points to be taken for it: no marking is off by a factor of
// ten, and a board's marks are seldom off by 4 %.
const likeRatio = 0.04

func like(r Reading, nominal float64) bool {
	return math.Abs(r.Measured.MM()/nominal-1) < likeRatio
}

// factor looks for readings that are so many times too long. A distance of a few
// millimetres is too short to say.
func factor(wants ...float64) func(Reading, plan) bool {
	return func(r Reading, p plan) bool {
		nominal := p.nominal(r)
		return math.Abs(nominal) > 5 && slices.ContainsFunc(wants, func(want float64) bool { return like(r, nominal*want) })
	}
}

var confusions = []confusion{
	{"inches", "head the column measured_in, or write the unit in the cell", factor(1 / 25.4), false},
	{"millimetres", "head the column measured_mm, or write the unit in the cell", factor(25.4), false},
	{"a decimal point in the wrong place", "look where the point belongs", factor(0.01, 0.1, 10, 100), false},
	{"distances from the nut", "write ruler as their pass, or enter the steps", func(r Reading, p plan) bool {
		return r.Kind == Step && r.From > 0 && like(r, p.lines[r.Line].marks[r.Fret])
	}, false},
	{"steps from the mark before", "write caliper as their pass, or enter the distances from the nut", func(r Reading, p plan) bool {
		return r.Kind == FromNut && r.Fret > 1 && like(r, p.lines[r.Line].marks[r.Fret]-p.lines[r.Line].marks[r.Fret-1])
	}, false},
	{"the other line's marks", "exchange bass and treble under line, or draw the marks anew if they stand on the wrong lines", func(r Reading, p plan) bool {
		return r.Kind == FromNut && fits(r, p.lines[1-r.Line].marks[r.Fret]) && !fits(r, p.nominal(r))
	}, true},
}

// A pass is taken for the other line's when at least so many readings, and so
// large a share of them, fit that line within so many millimetres and not their
// own. Judgement: coarser than any drawing, and less than lines stand apart.
const (
	leastOther = 5
	otherShare = 0.8
	fitsMM     = 1.0
)

func fits(r Reading, nominal float64) bool { return math.Abs(r.Measured.MM()-nominal) <= fitsMM }

// only picks readings.
func only(readings []Reading, want func(Reading) bool) []Reading {
	return slices.DeleteFunc(slices.Clone(readings), func(r Reading) bool { return !want(r) })
}

// confused reports readings in the wrong unit, under the wrong pass or on the
// wrong line, once for each pass of a line: the confusion that most of its
// readings share, since a step at fret 16 happens to be a 25th of the way there.
func confused(p plan, readings []Reading) (faults fault.List) {
	for kind := FromNut; kind <= NutOffset; kind++ {
		for line := Bass; line <= Treble; line++ {
			pass := only(readings, func(r Reading) bool { return r.Kind == kind && r.Line == line })
			var worst confusion
			var shared []Reading
			for _, c := range confusions {
				hit := only(pass, func(r Reading) bool { return c.looks(r, p) })
				enough := !c.whole || len(hit) >= leastOther && float64(len(hit)) >= otherShare*float64(len(pass))
				if len(hit) > len(shared) && enough {
					worst, shared = c, hit
				}
			}
			what := "this looks like " + worst.what
			if len(shared) > 1 {
				what = fmt.Sprintf("these look like %s (%d readings of this pass)", worst.what, len(shared))
			}
			for _, r := range shared[:min(1, len(shared))] {
				faults.Add(r.Place, what, fmt.Sprintf("%s where %.2f mm is nominal", r.given(), p.nominal(r)), worst.remedy)
			}
		}
	}
	return faults
}

// exchanged reports two diagonals of which each fits the other's length. A wrong
// nut offset makes one too long and the other too short by any amount; this is
// one amount of many, and the slip of the pencil far likelier.
func exchanged(p plan, readings []Reading) (faults fault.List) {
	for _, a := range readings {
		for _, b := range readings {
			if a.Kind != FromBassNut || b.Kind != FromTrebleNut || a.Fret != b.Fret {
				continue
			}
			wantA, wantB := p.nominal(a), p.nominal(b)
			if fits(a, wantB) && fits(b, wantA) && !fits(a, wantA) && !fits(b, wantB) {
				faults.Add(a.Place, "the two diagonals look exchanged", fmt.Sprintf("%s where %.2f mm is nominal, and the other way round", a.given(), wantA),
					"exchange their names; if they are right, the treble nut lies wrong: set it out anew with all treble marks")
			}
		}
	}
	return faults
}
