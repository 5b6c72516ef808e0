package report

import (
	"fmt"
	"math"

	"scalepair/cmd/scalepair/show"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/reading"
	"scalepair/tension/choice"
)

// breakingWords gives the load that the core bears at least, and the half
// that must not be passed in a hung test.
func (in *Input) breakingWords(g gauges.Gauge) string {
	w := choice.WireOf(g)
	load := w.Strength * w.CoreArea
	if load == 0 {
		return "Breaking load: not known, so never hang a weight on it."
	}
	out := fmt.Sprintf("Breaks at %s or more; for a hung test never more than half, %s (%s hung).",
		in.leastForce(load), in.leastForce(load/2), in.hungMass(g, load/2/unit.StandardGravity))
	if w.OutsideTable {
		out += " Its diameter lies outside the table of wire strength, whose end was continued."
	}
	return out
}

// leastForce prints a load that must be borne, and must not be passed, with
// its unit.
func (in *Input) leastForce(newtons float64) string {
	return roundedDown(in.Units.Force.Value(unit.Force(newtons))) + " " + in.Units.Force.Symbol()
}

// hungMass prints a mass to hang: in the unit that the gauge's own tests are
// given in, else in pounds where forces are.
func (in *Input) hungMass(g gauges.Gauge, kg float64) string {
	name := "kg"
	if in.Units.Force == unit.PoundsForce {
		name = "lb"
	}
	for _, row := range g.Rows {
		if given := row.Written.HungMass.Unit; row.Kind == reading.Hung && given != "" {
			name = given
		}
	}
	form := unit.Form[unit.Mass]("", name)
	return roundedDown(form.Value(kg)) + " " + form.Unit
}

// roundedDown prints a bound to no more than two or three figures, which is
// what the least strength of a wire is good for, and never above the bound.
func roundedDown(x float64) string {
	const fine = 20 // below, a whole unit would be too coarse
	if x < fine {
		return show.Fixed(math.Floor(10*x)/10, 1)
	}
	return show.Fixed(math.Floor(x), 0)
}

// hungTest is one hung weight against the breaking load.
type hungTest struct {
	Place          fault.Place
	Gauge          string
	Load, Breaking unit.Force // Breaking 0: not known
	OutsideTable   bool
}

func (h hungTest) OverHalf() bool { return h.Breaking > 0 && h.Load > h.Breaking/2 }

func (in *Input) hungOf(list []gauges.Gauge) []hungTest {
	var out []hungTest
	gravity, _ := in.Job.Tools().GravityUsed()
	for _, g := range list {
		w := choice.WireOf(g)
		for _, r := range g.Rows {
			if r.Kind == reading.Hung {
				out = append(out, hungTest{r.Place, g.Label, unit.Force(r.HungMass.Kg() * gravity), unit.Force(w.Strength * w.CoreArea), w.OutsideTable})
			}
		}
	}
	return out
}

// hungTests sets every hung weight against the breaking load, with the
// caution that belongs to it.
func (in *Input) hungTests(r *show.Report, list []hungTest) {
	if len(list) == 0 {
		return
	}
	r.Heading("Hung tests")
	u := in.Units
	t := r.Table("hung", "", show.Words("gauge"), show.Figures("line"), show.Figures(u.HeadForce("load hung")),
		show.Figures(u.HeadForce("breaking load")), show.Figures("share %"), show.Words("verdict"))
	for _, h := range list {
		breaking, part, verdict := none, none, "breaking load not known"
		if h.Breaking > 0 {
			breaking, part, verdict = roundedDown(u.Force.Value(unit.Force(h.Breaking))), show.Percent(float64(h.Load/h.Breaking), 0), "within half"
		}
		if h.OverHalf() {
			verdict = "MORE THAN HALF: hang less"
		}
		if h.OutsideTable {
			verdict += ", outside the strength table"
		}
		t.Row(h.Gauge, fmt.Sprint(h.Place.Line), show.Fixed(u.Force.Value(unit.Force(h.Load)), 1), breaking, part, verdict)
	}
	t.Note("Breaking load: least strength of the core's wire over its cross-section; old or kinked strings bear less.")
	r.Cautions(gauges.HungCaution)
}
