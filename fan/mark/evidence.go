package mark

import "math"

// sighting is one reading of a line: by how much the distance between two marks
// was read longer than its nominal.
type sighting struct {
	row      int // index into the readings given to Check
	kind     Kind
	from, to int
	error    float64 // mm
	// variance of the tool alone, mm^2: of a reading rounded to the resolution d
	// it is d^2/12 (rectangular of half-width d/2; GUM F.2.2.1, clause number from
	// memory).
	variance float64
}

// evidence is all that was read along one line.
type evidence struct {
	plan linePlan
	seen []sighting
	zero [2]float64 // standard uncertainty of the zeros of ruler and calipers, mm: a bound of ±z counts for z/sqrt(3)
}

// gather picks one line's readings.
func gather(p linePlan, readings []Reading, o Options) evidence {
	e := evidence{plan: p, zero: [2]float64{o.zero(FromNut).MM() / math.Sqrt(3), o.zero(Step).MM() / math.Sqrt(3)}}
	for i, r := range readings {
		if r.Line != p.line || r.Kind != FromNut && r.Kind != Step {
			continue
		}
		resolution := o.resolution(r).MM()
		e.seen = append(e.seen, sighting{row: i, kind: r.Kind, from: r.From, to: r.Fret, variance: resolution * resolution / 12,
			error: r.Measured.MM() - (p.marks[r.Fret] - p.marks[r.From])})
	}
	return e
}

// effect gives what 1 mm of something does to every reading.
func (e evidence) effect(of func(s sighting) float64) []float64 {
	out := make([]float64, len(e.seen))
	for i, s := range e.seen {
		out[i] = of(s)
	}
	return out
}

// moved is the effect of mark n, or of all marks from n on, 1 mm nearer the
// bridge: +1 where a reading ends on one of them, -1 where it begins.
func (e evidence) moved(n int, on bool) []float64 {
	among := func(m int) float64 {
		if m == n || on && m > n {
			return 1
		}
		return 0
	}
	return e.effect(func(s sighting) float64 { return among(s.to) - among(s.from) })
}

// pass is the effect of a pass that reads 1 mm too long from mark n on.
func (e evidence) pass(k Kind, n int) []float64 {
	return e.effect(func(s sighting) float64 {
		if s.kind == k && s.to >= n {
			return 1
		}
		return 0
	})
}

// farthest is the last mark that any reading touches.
func (e evidence) farthest() int {
	last := 0
	for _, s := range e.seen {
		last = max(last, s.to)
	}
	return last
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

// candidate is one thing that may have slipped, with what 1 mm of it does to
// every reading.
type candidate struct {
	Finding
	effect []float64
}

// candidates lists every single slip of a line. Where two have the same effect
// (a step that ends the only chain, a mark read once) the one listed first is
// named and the other stands beside it.
func (e evidence) candidates() []candidate {
	var out []candidate
	add := func(f Finding, effect []float64) {
		if dot(effect, effect) > 0 {
			f.Line = e.plan.line
			out = append(out, candidate{f, effect})
		}
	}
	last := e.plan.last()
	for n := 1; n <= last; n++ {
		add(Finding{Kind: MarkOff, Fret: n, Row: -1}, e.moved(n, false))
	}
	for _, s := range e.seen {
		kind := map[Kind]SlipKind{FromNut: RulerSlip, Step: StepSlip}[s.kind]
		add(Finding{Kind: kind, Fret: s.to, From: s.from, Row: s.row}, e.effect(func(other sighting) float64 {
			if other.row == s.row {
				return 1
			}
			return 0
		}))
	}
	for n := 1; n < last; n++ {
		if e.touching(n) > 0 {
			add(Finding{Kind: MarksOff, Fret: n, Row: -1}, e.moved(n, true))
		}
	}
	for n := 1; n < last; n++ {
		// One reading that is off is that reading's own slip, and where mark n was
		// not read the ruler moved before a later one.
		if run := e.pass(FromNut, n); dot(run, run) >= 2 && dot(run, run) > sum(e.pass(FromNut, n+1)) {
			add(Finding{Kind: RulerMoved, Fret: n, Row: -1}, run)
		}
	}
	return out
}

func sum(a []float64) (sum float64) {
	for _, x := range a {
		sum += x
	}
	return sum
}
