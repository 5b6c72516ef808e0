package gauges

import (
	"fmt"
	"strings"

	"scalepair/data/trace"
	"scalepair/gauges/reading"
)

// Where steps come from.
const (
	fromTools  = "your measuring tools, as stated under [measuring] or the defaults"
	fromAbove  = "follows from the steps above"
	guideStep  = "the Guide (JCGM 100:2008), F.2.2.1: a rounded reading"
	guideBound = "the Guide (JCGM 100:2008), 4.3.7: a bound"
	guideSum   = "the Guide (JCGM 100:2008), 5.1: root of the sum of squares"
	stiffLaw   = "H. Fletcher (1964), and Fletcher and Rossing (2nd ed.), section 2.18, both from memory"
)

// work records the steps of one reading: # in symbols and formulas is its
// number, @ what marks the core that it was worked out with. Without a trace it
// records nothing.
type work struct {
	*trace.Trace
	number, core string
}

func (k work) of(text string) string {
	return strings.NewReplacer("#", k.number, "@", k.core).Replace(text)
}

func (k work) given(symbol string, value float64, unit, source string) {
	k.step(symbol, "", value, unit, source)
}

func (k work) step(symbol, formula string, value float64, unit, source string) float64 {
	if k.Trace == nil {
		return value
	}
	return k.Step(k.of(symbol), k.of(formula), value, unit, source)
}

// value makes a value of a linear density and its inputs, and records them.
func (k work) value(w float64, inputs []Component) Value {
	v := Value{W: w}
	for _, in := range inputs {
		v.Add(Part{in.Source, w * in.RelU, in.Bounded})
	}
	if k.Trace == nil {
		return v
	}
	own := []string{}
	for i, in := range inputs {
		if in.RelU == 0 {
			continue
		}
		symbol := fmt.Sprintf("u#%c", 'a'+i)
		k.step(symbol+", relative uncertainty, "+in.Name, in.Formula, in.RelU, "", in.From)
		if in.Source == "" {
			own = append(own, symbol+"^2")
		} else {
			k.step(fmt.Sprintf("c#%c, standard uncertainty from the %s, shared", 'a'+i, in.Source), "w# "+symbol, v.Common.Of(in.Source), "kg/m", fromAbove)
		}
	}
	k.step("o#, standard uncertainty from errors of its own", "w# sqrt("+strings.Join(own, " + ")+")", v.Indep, "kg/m", guideSum)
	return v
}

// mean records a mean of values that are numbered from 1 on, behind the number of
// work; its symbols end in kind.
func (k work) mean(values int, all Average, kind string) {
	if k.Trace == nil || values < 2 {
		return
	}
	up, down := []string{}, []string{}
	for i := range values {
		n := fmt.Sprint(k.number, i+1)
		up, down = append(up, fmt.Sprintf("w%s/o%s^2", n, n)), append(down, fmt.Sprintf("1/o%s^2", n))
	}
	k.Step("w"+kind+", weighted mean", "("+strings.Join(up, " + ")+")/("+strings.Join(down, " + ")+")", all.W, "kg/m", "weighted mean; shared errors do not weigh")
	if all.birge() > 1 {
		k.Step("wide"+kind+", factor, since they differ by more than their uncertainties", fmt.Sprintf("sqrt(%.4g/%d)", all.Chi2, all.DoF), all.birge(), "", "R. T. Birge, Physical Review 40 (1932) 207")
	}
	k.Step("o"+kind+", standard uncertainty from errors of its own", "1/sqrt("+strings.Join(down, " + ")+"), times the factor", all.Indep, "kg/m", guideSum)
	for _, p := range all.Common {
		k.Step(", standard uncertainty from the "+p.Source+", shared", "mean of theirs, with the same weights", p.U, "kg/m", fromAbove)
	}
}

// Settle records the linear density and its uncertainty.
func (v Value) Settle(tr *trace.Trace) {
	if tr == nil {
		return
	}
	tr.Step("w, linear density, slack", "as above", v.W, "kg/m", fromAbove)
	u := tr.Step("u(w), standard uncertainty of w", "root of the sum of the squares of its own and of every shared part", v.U(), "kg/m", guideSum)
	tr.Step(", share of that from errors of its own", "100 (own/u(w))^2", 100*v.Indep/u*v.Indep/u, "%", guideSum)
	for _, p := range v.Common {
		tr.Step(", share of that from the "+p.Source, "100 (part/u(w))^2", 100*p.U/u*p.U/u, "%", guideSum)
	}
}

// when says on which day a reading was taken, for the work shown.
func (k work) when(r reading.Reading) string {
	if k.Trace == nil || r.Date == "" {
		return ""
	}
	return ", " + r.Date
}

// line says where a reading stands.
func (k work) line(r reading.Reading) string {
	if k.Trace == nil || r.Place.Line == 0 {
		return "the readings"
	}
	return fmt.Sprintf("%s, line %d", r.Place.Input, r.Place.Line)
}
