package mark

import (
	"math"
	"slices"
)

// sighting is one reading of a line as the reckoning sees it: how much longer
// the distance between two marks was read than it was laid out.
type sighting struct {
	row      int // index into the readings given to Check
	kind     Kind
	from, to int
	off      float64 // read less laid out, mm
	plan     float64 // laid out, mm
	step     float64 // the tool's least difference, mm
	tool     Tool
	moved    []int // marks before which its ruler moved, as slips beyond doubt say
}

// roundingVar is the variance of a reading rounded to the tool's step d:
// d^2/12 (rectangular of half-width d/2; GUM F.2.2.1, clause number from
// memory).
func (s sighting) roundingVar() float64 { return s.step * s.step / 12 }

// evidence is all that was read along one line.
type evidence struct {
	plan linePlan
	seen []sighting
}

// gather picks one line's readings.
func gather(p linePlan, readings []Reading, o Options) evidence {
	e := evidence{plan: p}
	for i, r := range readings {
		if r.Line != p.line || r.Kind != FromNut && r.Kind != Step {
			continue
		}
		s := sighting{row: i, kind: r.Kind, to: r.Fret, tool: o.Ruler, step: r.StepMM}
		if r.Kind == Step {
			s.from, s.tool = r.From, o.Caliper
		}
		if s.step == 0 {
			s.step = s.tool.StepMM
		}
		s.plan = p.marks[s.to] - p.marks[s.from]
		s.off = r.MM - s.plan
		e.seen = append(e.seen, s)
	}
	return e
}

// farthest is the last mark that any reading touches.
func (e evidence) farthest() int {
	last := 0
	for _, s := range e.seen {
		last = max(last, s.to)
	}
	return last
}

// count gives the number of readings of a kind.
func (e evidence) count(k Kind) int {
	n := 0
	for _, s := range e.seen {
		if s.kind == k {
			n++
		}
	}
	return n
}

// without gives the evidence less one row.
func (e evidence) without(row int) evidence {
	seen := slices.DeleteFunc(slices.Clone(e.seen), func(s sighting) bool { return s.row == row })
	return evidence{plan: e.plan, seen: seen}
}

// common gives the directions in which a whole pass is off together, each
// scaled to one standard deviation: the zero and the scale of either tool, a
// bound of plus or minus a counting a/sqrt(3).
func (e evidence) common() [][]float64 {
	var out [][]float64
	for _, k := range []Kind{FromNut, Step} {
		zero, scale := make([]float64, len(e.seen)), make([]float64, len(e.seen))
		for i, s := range e.seen {
			if s.kind == k {
				zero[i] = s.tool.ZeroMM / math.Sqrt(3)
				scale[i] = s.tool.ScalePart * s.plan / math.Sqrt(3)
			}
		}
		for _, direction := range [][]float64{zero, scale} {
			if dot(direction, direction) > 0 {
				out = append(out, direction)
			}
		}
	}
	return append(out, e.runs()...)
}

// runs gives a direction for every place at which the ruler moved: what was read
// from there on is free to be off together.
func (e evidence) runs() [][]float64 {
	var out [][]float64
	for n := range e.plan.marks {
		direction := make([]float64, len(e.seen))
		for i, s := range e.seen {
			if slices.Contains(s.moved, n) {
				direction[i] = freeZeroMM / math.Sqrt(3)
			}
		}
		if dot(direction, direction) > 0 {
			out = append(out, direction)
		}
	}
	return out
}

// effects gives, for every mark from 0 to the last, how each reading changes
// when that mark moves 1 mm towards the bridge: +1 where a reading ends on it,
// -1 where one begins.
func (e evidence) effects() [][]float64 {
	out := make([][]float64, len(e.plan.marks))
	for n := range out {
		out[n] = make([]float64, len(e.seen))
	}
	for i, s := range e.seen {
		out[s.to][i]++
		out[s.from][i]--
	}
	return out
}

// rows lists the readings' rows.
func (e evidence) rows() []int {
	var out []int
	for _, s := range e.seen {
		out = append(out, s.row)
	}
	return out
}

// touching counts the readings that begin or end on a mark.
func (e evidence) touching(n int) int {
	count := 0
	for _, s := range e.seen {
		if s.to == n || s.from == n {
			count++
		}
	}
	return count
}

// freeZeroMM is wide against any zero a tool could have, so that the readings
// alone say where it lies.
const freeZeroMM = 20

// freed gives the evidence with one pass free to be off as a whole.
func (e evidence) freed(k Kind) evidence {
	seen := slices.Clone(e.seen)
	for i := range seen {
		if seen[i].kind == k {
			seen[i].tool.ZeroMM = freeZeroMM
		}
	}
	return evidence{plan: e.plan, seen: seen}
}

// freeScalePart is wide against any scale a ruler could have, as freeZeroMM.
const freeScalePart = 0.1

// freedScale gives the evidence with the ruler pass free to be off in proportion.
func (e evidence) freedScale() evidence {
	seen := slices.Clone(e.seen)
	for i := range seen {
		if seen[i].kind == FromNut {
			seen[i].tool.ScalePart = freeScalePart
		}
	}
	return evidence{plan: e.plan, seen: seen}
}

// freedFrom gives the evidence with the ruler pass free to be off together from
// mark n on.
func (e evidence) freedFrom(n int) evidence {
	seen := slices.Clone(e.seen)
	for i, s := range seen {
		if s.kind == FromNut && s.to >= n {
			seen[i].moved = append(slices.Clone(s.moved), n)
		}
	}
	return evidence{plan: e.plan, seen: seen}
}
