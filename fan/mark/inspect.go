package mark

import (
	"fmt"
	"math"
	"strconv"

	"scalepair/data/fault"
)

// longestMM and the bounds of a step keep a slipped exponent out of the
// reckoning.
const (
	longestMM    = 3000
	finestStep   = finestMM
	coarsestStep = 5.0
)

// inspector collects what cannot be meant so.
type inspector struct {
	plan   plan
	faults fault.List
}

func inspect(p plan, readings []Reading, o Options) error {
	in := inspector{plan: p}
	in.options(readings, o)
	if len(readings) == 0 {
		in.faults.Add(fault.Place{Input: "check"}, "nothing was measured", "", "give a reading for each mark")
	}
	sane := true
	seen := map[string]bool{}
	for _, r := range readings {
		ok := in.reading(r)
		sane = sane && ok
		if ok {
			in.double(r, seen)
		}
	}
	var reported map[pass]bool
	if sane {
		reported = in.units(readings)
		in.exchanged(readings)
	}
	in.long(readings, reported)
	if sane && len(in.faults) == 0 {
		in.order(readings)
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
	return short(r.MM) + " mm"
}

// Name says in words what a reading is: "bass ruler fret 7".
func (r Reading) Name() string {
	switch r.Kind {
	case FromNut:
		return fmt.Sprintf("%v ruler fret %d", r.Line, r.Fret)
	case Step:
		return fmt.Sprintf("%v caliper from fret %d to %d", r.Line, r.From, r.Fret)
	case FromBassNut:
		return DiagonalName(Treble, r.Fret)
	case FromTrebleNut:
		return DiagonalName(Bass, r.Fret)
	}
	return r.Kind.String()
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
	given := ""
	if !math.IsNaN(r.MM) && !math.IsInf(r.MM, 0) {
		given = r.given()
	}
	switch {
	case given == "":
		add("not a finite length", "", "measure again")
	case r.MM <= 0 && r.Kind != NutOffset:
		add("a distance must be above 0", given, "leave out what was not measured, and the nut, from which the ruler counts")
	}
	if !(r.StepMM == 0 || r.StepMM >= finestStep && r.StepMM <= coarsestStep) {
		add("not the step of a measuring tool", short(r.StepMM)+" mm", stepRemedy())
	}
	return len(in.faults) == before
}

// long reports readings longer than any string, but for passes in the wrong
// unit, which are reported as such.
func (in *inspector) long(readings []Reading, reported map[pass]bool) {
	for _, r := range readings {
		if size := math.Abs(r.MM); size > longestMM && size <= math.MaxFloat64 && !reported[pass{r.Kind, r.Line}] {
			in.faults.Add(r.place(), "longer than any string", r.given(), fmt.Sprintf("give at most %d mm", longestMM))
		}
	}
}

// short prints a value for a message: to four decimals, as fine as the finest
// step, without noughts behind. What would print as nothing, or is larger than
// any size, keeps three figures.
func short(x float64) string {
	rounded := plain(math.Round(x*1e4) / 1e4)
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		return "no number"
	case rounded == 0 && x != 0 || math.Abs(x) >= 1e9:
		return strconv.FormatFloat(x, 'g', 3, 64)
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

func stepRemedy() string {
	return fmt.Sprintf("give the least difference the tool shows, %v mm to %v mm", finestStep, coarsestStep)
}

// double reports a distance that was entered twice.
func (in *inspector) double(r Reading, seen map[string]bool) {
	name := r.Name()
	if seen[name] {
		in.faults.Add(r.place(), "entered twice", name, "keep one row, or the mean of both")
	}
	seen[name] = true
}

// order reports ruler readings that do not grow from mark to mark.
func (in *inspector) order(readings []Reading) {
	for line := range in.plan.lines {
		byFret := make([]*Reading, len(in.plan.lines[line].marks))
		for i, r := range readings {
			if r.Kind == FromNut && r.Line == Line(line) {
				byFret[r.Fret] = &readings[i]
			}
		}
		var before *Reading
		for _, r := range byFret {
			if r == nil {
				continue
			}
			if before != nil && r.MM <= before.MM && in.farther(*before, *r) {
				in.faults.Add(before.place(), fmt.Sprintf("marks out of order: fret %d no nearer the nut than fret %d", before.Fret, r.Fret),
					before.given()+" before "+r.given(), "look whether two rows were swapped or a digit slipped")
			} else if before != nil && r.MM <= before.MM {
				in.faults.Add(r.place(), fmt.Sprintf("marks out of order: fret %d no farther from the nut than fret %d", r.Fret, before.Fret),
					r.given()+" after "+before.given(), "look whether two rows were swapped or a digit slipped")
			}
			before = r
		}
	}
}

// farther tells whether the first of two readings stands clearly farther from
// its place than the second.
func (in *inspector) farther(a, b Reading) bool {
	return math.Abs(a.MM-in.plan.distance(a)) > 2*math.Abs(b.MM-in.plan.distance(b))
}

// options checks tools and tolerance.
func (in *inspector) options(readings []Reading, o Options) {
	add := func(name, what, given, remedy string) {
		in.faults.Add(fault.Place{Input: name}, what, given, remedy)
	}
	t := o.Tolerance
	if !(t.Cents >= 0 && t.MM >= 0 && (t.Cents > 0) != (t.MM > 0) && t.Cents <= 100 && t.MM <= 10) {
		add("tolerance", "give either cents (up to 100) or mm (up to 10), above 0", short(t.Cents)+" cents, "+short(t.MM)+" mm", "2 cents, or 0.2 mm, will do")
	}
	if !(o.OffsetToleranceMM >= 0 && o.OffsetToleranceMM <= 10) {
		add("nut offset tolerance", "must lie between 0 and 10 mm", short(o.OffsetToleranceMM)+" mm", "0.5 mm will do")
	}
	for i, tool := range []Tool{o.Ruler, o.Caliper, o.Long} {
		name := []string{"ruler", "caliper", "long ruler"}[i]
		if !(tool.StepMM == 0 || tool.StepMM >= finestStep && tool.StepMM <= coarsestStep) {
			add(name+" step", "not the step of a measuring tool", short(tool.StepMM)+" mm", stepRemedy())
		}
		if !(tool.ZeroMM >= 0 && tool.ZeroMM <= 5 && tool.ScalePart >= 0 && tool.ScalePart <= 0.05) {
			add(name+" accuracy", "must lie between 0 and 5 mm, or 5 % of the length", short(tool.ZeroMM)+" mm, "+short(100*tool.ScalePart)+" %", "lay the tool beside another to learn it")
		}
	}
	in.steps(readings, o)
}

// steps reports a pass whose step nobody gave.
func (in *inspector) steps(readings []Reading, o Options) {
	long := max(o.Long.StepMM, o.Ruler.StepMM)
	wanted := map[Kind]float64{FromNut: o.Ruler.StepMM, Step: o.Caliper.StepMM, NutOffset: o.Caliper.StepMM, FromBassNut: long, FromTrebleNut: long}
	for _, r := range readings {
		if r.StepMM == 0 && wanted[r.Kind] == 0 {
			in.faults.Add(r.place(), "no step is known for this reading", "", stepRemedy())
		}
	}
}
