package mark

import "math"

// sighting is one reading of a line: by how much the distance between two marks
// was read longer than its nominal.
type sighting struct {
	*Reading
	error float64 // mm
	// variance of the tool alone, mm^2: of a reading rounded to the resolution d
	// it is d^2/12 (rectangular of half-width d/2; GUM F.2.2.1, clause number from
	// memory).
	variance float64
}

// evidence is all that was read along one line.
type evidence struct {
	plan linePlan
	seen []sighting
	zero [2]float64 // of [FromNut] and [Step]: standard uncertainty of the zeros of ruler and calipers, mm: a bound of ±z counts for z/sqrt(3)
}

// gather picks one line's readings.
func gather(p linePlan, readings []Reading, o Options) evidence {
	e := evidence{plan: p}
	for i := range readings {
		r := &readings[i]
		if r.Line != p.line || !r.along() {
			continue
		}
		resolution, zero := o.of(r)
		e.zero[r.Kind] = zero / math.Sqrt(3)
		e.seen = append(e.seen, sighting{r, r.Measured.MM() - (p.marks[r.Fret] - p.marks[r.From]), resolution * resolution / 12})
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

// errors are those of the readings.
func (e evidence) errors() []float64 { return e.effect(func(s sighting) float64 { return s.error }) }

// on is the effect of something on the readings for which it is so.
func (e evidence) on(is func(s sighting) bool) []float64 {
	return e.effect(func(s sighting) float64 {
		if is(s) {
			return 1
		}
		return 0
	})
}

// moved is the effect of mark n, or of all marks from n to last, 1 mm nearer the
// bridge: +1 where a reading ends on one of them, -1 where it begins.
func (e evidence) moved(n, last int) []float64 {
	among := func(m int) (in float64) {
		if m >= n && m <= last {
			in = 1
		}
		return in
	}
	return e.effect(func(s sighting) float64 { return among(s.Fret) - among(s.From) })
}

// pass is the effect of a pass that reads 1 mm too long from mark n on.
func (e evidence) pass(k Kind, n int) []float64 {
	return e.on(func(s sighting) bool { return s.Kind == k && s.Fret >= n })
}

// touching counts the readings that begin or end on a mark.
func (e evidence) touching(n int) int {
	return int(sum(e.on(func(s sighting) bool { return s.Fret == n || s.From == n })))
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
func (e evidence) candidates() (out []*candidate) {
	add := func(f Finding, effect []float64) {
		if f.Line = e.plan.line; dot(effect, effect) > 0 {
			out = append(out, &candidate{f, effect})
		}
	}
	last := e.plan.last()
	for n := 1; n <= last; n++ {
		add(Finding{Kind: MarkOff, Fret: n}, e.moved(n, n))
	}
	for _, s := range e.seen {
		kind := map[Kind]SlipKind{FromNut: RulerSlip, Step: StepSlip}[s.Kind]
		add(Finding{Kind: kind, Fret: s.Fret, From: s.From, Reading: s.Reading}, e.on(func(other sighting) bool { return other.Reading == s.Reading }))
	}
	for n := 1; n < last; n++ {
		if e.touching(n) > 0 {
			add(Finding{Kind: MarksOff, Fret: n}, e.moved(n, last))
		}
	}
	for n := 1; n < last; n++ {
		// One reading that is off is that reading's own slip, and where mark n was
		// not read the ruler moved before a later one.
		if run := e.pass(FromNut, n); sum(run) >= 2 && sum(run) > sum(e.pass(FromNut, n+1)) {
			add(Finding{Kind: RulerMoved, Fret: n}, run)
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
