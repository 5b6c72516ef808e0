package mark

import (
	"fmt"
	"math"
	"slices"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Bounds that keep a slipped exponent out of the sums: a distance longer than any
// string, and what is no resolution of a workshop's tool.
const (
	longest                            unit.Length = 3000 * unit.Millimetre
	finestResolution, coarsestReadable unit.Length = 0.0005 * unit.Millimetre, 5 * unit.Millimetre
)

// inspector collects what cannot be meant so.
type inspector struct {
	plan   plan
	faults fault.List
}

func inspect(p plan, readings []Reading, o Options) error {
	in := inspector{plan: p}
	in.options(o)
	if len(readings) == 0 {
		in.faults.Add(fault.Place{Input: "check"}, "nothing was measured", "", "give a reading for each mark")
	}
	seen := map[string]bool{}
	for _, r := range readings {
		if in.reading(r) && seen[r.Name()] {
			in.faults.Add(r.place(), "entered twice", r.Name(), "keep one row, or the mean of both")
		}
		seen[r.Name()] = true
	}
	for _, check := range []func([]Reading){in.confused, in.otherLength, in.long, in.exchanged, in.order} {
		if len(in.faults) == 0 {
			check(readings)
		}
	}
	return in.faults.Err()
}

// place is where a reading stands in its file, or else what it is.
func (r Reading) place() fault.Place {
	if r.Place != (fault.Place{}) {
		return r.Place
	}
	return fault.Place{Input: r.Name()}
}

// given is what was written, or the same in millimetres.
func (r Reading) given() string {
	if r.Written != "" {
		return r.Written
	}
	return unit.Fixed(r.Measured.MM(), 2) + " mm"
}

// reading checks one reading by itself.
func (in *inspector) reading(r Reading) bool {
	before := len(in.faults)
	add := func(what, given, remedy string) { in.faults.Add(r.place(), what, given, remedy) }
	last := in.plan.lines[Bass].last()
	switch {
	case r.Line != Bass && r.Line != Treble, r.Kind < FromNut || r.Kind > NutOffset:
		add("no such line or pass", "", "give the bass or the treble line, the ruler or the caliper pass")
		return false
	case r.Kind == NutOffset:
	case r.Fret < 1 || r.Fret > last:
		add("no such fret on this board", fmt.Sprint(r.Fret), fmt.Sprintf("give 1 to %d", last))
	case r.Kind == Step && (r.From < 0 || r.From >= r.Fret):
		add("a step must begin at a mark nearer the nut than its own", fmt.Sprintf("from %d to %d", r.From, r.Fret), "0 is the nut")
	}
	switch m := r.Measured.M(); {
	case math.IsNaN(m) || math.IsInf(m, 0):
		add("not a finite length", "", "measure again")
	case m <= 0 && r.Kind != NutOffset:
		add("a distance must be above 0", r.given(), "leave out what was not measured, and the nut, from which the ruler counts")
	}
	if !(r.Resolution == 0 || r.Resolution >= finestResolution && r.Resolution <= coarsestReadable) {
		add("no resolution of a measuring tool", "", resolutionRemedy())
	}
	return len(in.faults) == before
}

func resolutionRemedy() string {
	return fmt.Sprintf("give the least difference the tool shows, %v to %v", finestResolution, coarsestReadable)
}

// options checks tools and tolerance, beyond the ranges of their tags.
func (in *inspector) options(o Options) {
	for _, v := range []struct {
		name        string
		x, from, to float64
	}{
		{"tolerance", o.Tolerance.MM() + o.ToleranceCents.Value(), 1e-3, 100},
		{"nut_offset_tolerance", o.NutOffsetTolerance.MM(), 1e-3, 20},
		{"ruler_resolution", o.RulerResolution.MM(), 1e-4, 20},
		{"caliper_resolution", o.CaliperResolution.MM(), 1e-4, 20},
		{"ruler_zero", o.RulerZero.MM(), 0, 20},
		{"caliper_zero", o.CaliperZero.MM(), 0, 20},
	} {
		if !(v.x >= v.from && v.x <= v.to) {
			in.faults.Add(fault.Place{Input: v.name}, "this is out of range", "", fmt.Sprintf("from %v to %v", v.from, v.to))
		}
	}
	if o.Tolerance > 0 && o.ToleranceCents > 0 {
		in.faults.Add(fault.Place{Input: "tolerance"}, "a tolerance is given twice", "", "keep the length or the cents")
	}
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

// factor looks for readings that are so many times too long. A distance of a few
// millimetres is too short to say.
func factor(wants ...float64) func(Reading, plan) bool {
	return func(r Reading, p plan) bool {
		nominal := p.nominal(r)
		return math.Abs(nominal) > 5 && slices.ContainsFunc(wants, func(want float64) bool {
			return math.Abs(r.Measured.MM()/(nominal*want)-1) < likeRatio
		})
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

func like(r Reading, nominal float64) bool {
	return math.Abs(r.Measured.MM()/nominal-1) < likeRatio
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

// confused reports readings in the wrong unit, under the wrong pass or on the
// wrong line, once for each pass of a line: the confusion that most of its
// readings share, since a step at fret 16 happens to be a 25th of the way there.
func (in *inspector) confused(readings []Reading) {
	type pass struct {
		kind Kind
		line Line
	}
	passes, order := map[pass][]Reading{}, []pass{}
	for _, r := range readings {
		k := pass{r.Kind, r.Line}
		if passes[k] == nil {
			order = append(order, k)
		}
		passes[k] = append(passes[k], r)
	}
	for _, k := range order {
		var worst confusion
		var shared []Reading
		for _, c := range confusions {
			hit := slices.DeleteFunc(slices.Clone(passes[k]), func(r Reading) bool { return !c.looks(r, in.plan) })
			enough := !c.whole || len(hit) >= leastOther && float64(len(hit)) >= otherShare*float64(len(passes[k]))
			if len(hit) > len(shared) && enough {
				worst, shared = c, hit
			}
		}
		if len(shared) == 0 {
			continue
		}
		what, r := "this looks like "+worst.what, shared[0]
		if len(shared) > 1 {
			what = fmt.Sprintf("these look like %s (%d readings of this pass)", worst.what, len(shared))
		}
		in.faults.Add(r.place(), what, fmt.Sprintf("%s where %.2f mm is nominal", r.given(), in.plan.nominal(r)), worst.remedy)
	}
}

// long reports what no unit explains.
func (in *inspector) long(readings []Reading) {
	for _, r := range readings {
		if abs := max(r.Measured, -r.Measured); abs > longest {
			in.faults.Add(r.place(), "longer than any string", r.given(), fmt.Sprintf("give at most %v", longest))
		}
	}
}

// exchanged reports two diagonals of which each fits the other's length. A wrong
// nut offset makes one too long and the other too short by any amount; this is
// one amount of many, and the slip of the pencil far likelier.
func (in *inspector) exchanged(readings []Reading) {
	for _, a := range readings {
		for _, b := range readings {
			if a.Kind != FromBassNut || b.Kind != FromTrebleNut || a.Fret != b.Fret {
				continue
			}
			wantA, wantB := in.plan.nominal(a), in.plan.nominal(b)
			if fits(a, wantB) && fits(b, wantA) && !fits(a, wantA) && !fits(b, wantB) {
				in.faults.Add(a.place(), "the two diagonals look exchanged", fmt.Sprintf("%s where %.2f mm is nominal, and the other way round", a.given(), wantA),
					"exchange their names; if they are right, the treble nut lies wrong: set it out anew with all treble marks")
			}
		}
	}
}

// order reports ruler readings that do not grow from mark to mark, at the one of
// the two that is clearly farther from its place.
func (in *inspector) order(readings []Reading) {
	off := func(r Reading) float64 { return math.Abs(r.Measured.MM() - in.plan.nominal(r)) }
	for _, line := range []Line{Bass, Treble} {
		pass := slices.DeleteFunc(slices.Clone(readings), func(r Reading) bool { return r.Kind != FromNut || r.Line != line })
		slices.SortStableFunc(pass, func(a, b Reading) int { return a.Fret - b.Fret })
		for i, r := range pass[min(1, len(pass)):] {
			before := pass[i]
			if r.Measured > before.Measured {
				continue
			}
			at := r
			if off(before) > 2*off(r) {
				at = before
			}
			in.faults.Add(at.place(), fmt.Sprintf("marks out of order: fret %d no farther from the nut than fret %d", r.Fret, before.Fret),
				r.given()+" after "+before.given(), "look whether two rows were swapped or a digit slipped")
		}
	}
}
