package gauges

import (
	"fmt"
	"strings"

	"scalepair/data/fault"
)

// Step is one line of the work for one gauge: a number and where it came from.
// It has the shape of package tension's steps, so that both can be printed one
// after the other.
type Step struct {
	Symbol  string  // as the formulas of later steps write it
	Name    string  // what it is, in plain words
	Formula string  // in the symbols of the steps above, or in words; "" for a given number
	Value   float64 // in Unit
	Unit    string  // SI, "%" or "cents"; "" for a pure number
	Source  string  // of the formula or of the number
	Digits  int     // significant digits to carry, so that later steps come out
}

// Where steps come from.
const (
	fromTools     = "your measuring tools, as stated under [measuring] or the usual"
	fromAbove     = "follows from the steps above"
	fromShape     = "geometry"
	guideStep     = "the Guide (JCGM 100:2008), F.2.2.1: a rounded reading"
	guideBound    = "the Guide (JCGM 100:2008), 4.3.7: a bound"
	guideSum      = "the Guide (JCGM 100:2008), 5.1: root of the sum of squares"
	guideExpanded = "the Guide (JCGM 100:2008), 6.2.1: expanded uncertainty"
	guideMean     = "weighted mean; shared errors do not weigh"
	bondsLaw      = "Hooke's law: OpenStax, University Physics 1, section 12.3"
	hangingLaw    = "string law: OpenStax, University Physics 1, sections 16.3 and 16.6"
	stiffLaw      = "H. Fletcher (1964), and Fletcher and Rossing (2nd ed.), section 2.18, both from memory"
	betweenEnds   = "judgement: real clamps stand anywhere between ends free to turn and firm ones"
	wireSource    = "ASTM A228, tolerance of the diameter, as reproduced in a wire distributor's data page"
	fromPacking   = "geometry of close round wire, ours"
	fromFit       = "the fit of its kind"
	fromShapes    = "kurtosis method, I. P. Zakharov and O. A. Botsyura, Measurement Techniques 62 (2019) 327, from memory: errors anywhere within bounds add by fourth powers"
)

// weightDigits are carried through linear densities: two readings of one gauge may
// differ in the fourth digit, and that difference is squared.
const weightDigits = 9

// works gathers steps.
type works struct {
	steps []Step
	names map[string]string // symbol stem by shared source
}

func (k *works) given(symbol, name string, value float64, unit, source string) string {
	return k.step(symbol, name, "", value, unit, source)
}

// step adds a step and gives its symbol.
func (k *works) step(symbol, name, formula string, value float64, unit, source string) string {
	k.steps = append(k.steps, Step{symbol, name, formula, value, unit, source, weightDigits})
	return symbol
}

// once gives a number under a stem, and reuses its symbol when the same number
// was given under it before.
func (k *works) once(stem, name string, value float64, unit, source string) string {
	symbol := stem
	for n := 2; ; n++ {
		at := -1
		for i, s := range k.steps {
			if s.Symbol == symbol {
				at = i
			}
		}
		switch {
		case at < 0:
			return k.given(symbol, name, value, unit, source)
		case k.steps[at].Value == value:
			return symbol
		}
		symbol = fmt.Sprintf("%s_%d", stem, n)
	}
}

// stem is the symbol of a shared source: its first three letters, numbered
// where another source has them.
func (k *works) stem(source string) string {
	if k.names == nil {
		k.names = map[string]string{}
	}
	if s, ok := k.names[source]; ok {
		return s
	}
	stem := strings.ToLower(source[:3])
	for n, taken := 2, true; taken; n++ {
		taken = false
		for _, s := range k.names {
			taken = taken || s == stem
		}
		if taken {
			stem = fmt.Sprintf("%s_%d", strings.ToLower(source[:3]), n)
		}
	}
	k.names[source] = stem
	return stem
}

// Explain shows the work for one gauge of a stock: from the core to its
// stiffness, and from every reading, construction or fit to the linear density w
// with its standard uncertainty u(w), what share of its variance each source of
// error has, and the 95 % interval U95. Every step can be followed with a pocket calculator from those
// above it, but for those whose formula is in words.
//
// The arguments are those of Combine, and so is the error; a label that is not
// in stock is a fault as in Lookup.
func Explain(label string, readings []Reading, built []Construction, tools Instruments, o Options) ([]Step, error) {
	stock, err := Combine(readings, built, tools, o)
	if err != nil {
		return nil, err
	}
	g, err := stock.Lookup(label)
	if err != nil {
		return nil, err
	}
	var none fault.List
	c := combiner{tools: stock.by.tools, options: o, entries: gather(readings, built, stock.by.tools, &none)}
	c.fixPacking()
	k := &works{}
	for i, e := range c.entries {
		if stock.Gauges[i].Label == g.Label {
			k.core(g, e, c.tools)
			k.weight(c, g, e, stock.Fits)
		}
	}
	return k.steps, nil
}

// weight goes from what is known of the gauge to its linear density.
func (k *works) weight(c combiner, g Gauge, e *entry, fits []Fit) {
	var kinds []named
	if rows := e.weighed(); len(rows) > 0 {
		kinds = append(kinds, k.mean(k.weighings(c.tools, rows), "W"))
	}
	if hung := k.hangings(c.tools, e, float64(g.EA), g.EI); len(hung) > 0 {
		kinds = append(kinds, k.mean(hung, "H"))
	}
	if e.built != nil {
		kinds = append(kinds, k.construction(g, e))
	}
	switch {
	case len(kinds) > 0:
		k.settle(k.join(kinds))
	case g.Estimated:
		k.settle(k.estimate(g, fits))
	}
}

// core goes from the diameter of the wire that carries the tension to its
// stiffness.
func (k *works) core(g Gauge, e *entry, t Instruments) {
	if g.Core == 0 {
		return
	}
	from, what := e.r.CoreFrom, "core diameter"
	switch {
	case g.Family == Plain:
		from, what = e.r.OuterFrom, "diameter"
	case g.Shape == Hex:
		what += ", across flats"
	}
	k.diameter("d", what, g.core, from, t)
	k.area(g)
	if g.EA == 0 {
		return
	}
	source := e.material.StiffnessSource
	switch {
	case e.r.YoungsPa > 0:
		source = "stated with the gauge"
	case e.material.StiffnessConfidence != "read":
		source += " (" + e.material.StiffnessConfidence + ")"
	}
	k.given("E", "stretch modulus of "+g.Material, g.YoungsPa, "Pa", source)
	k.step("EA", "stretch stiffness of the core", "E A", float64(g.EA), "N", bondsLaw)
	if g.Shape == Hex {
		k.step("I", "second moment of the core", "5 sqrt(3)/144 d^4", g.EI/g.YoungsPa, "m4", fromShape)
	} else {
		k.step("I", "second moment of the core", "pi/64 d^4", g.EI/g.YoungsPa, "m4", fromShape)
	}
	k.step("EI", "bending stiffness of the core", "E I", g.EI, "N m2", fromAbove)
}

func (k *works) area(g Gauge) {
	switch g.Shape {
	case Hex:
		k.step("A", "area of the core, hexagonal", "sqrt(3)/2 d^2", g.AreaM2, "m2", fromShape)
	case Round:
		k.step("A", "area of the core, round", "pi/4 d^2", g.AreaM2, "m2", fromShape)
	default:
		k.step("A", "area of the core, taken as round", "pi/4 d^2", g.AreaM2, "m2", fromShape)
	}
}

// diameter gives a diameter and its standard uncertainty.
func (k *works) diameter(symbol, what string, d diameter, from DiameterFrom, t Instruments) {
	if from == Measured {
		k.given(symbol, what+", measured", d.d, "m", "the readings")
		step := k.once("dc", "step of the calipers", float64(t.CaliperResolution), "m", fromTools)
		formula := step + "/sqrt(12)"
		if float64(t.CaliperAccuracy) > 0 {
			formula = fmt.Sprintf("sqrt(%s^2/12 + %s^2/3)", step, k.once("ac", "accuracy of the calipers", float64(t.CaliperAccuracy), "m", fromTools))
		}
		k.step("u("+symbol+")", "standard uncertainty of that", formula, d.u(), "m", guideStep)
		return
	}
	k.given(symbol, what+", nominal", d.d, "m", "the readings")
	tol := k.once("tol", "tolerance of drawn wire of that size", wireTolerance(d.d), "m", wireSource)
	k.step("u("+symbol+")", "standard uncertainty of that", tol+"/sqrt(3)", d.u(), "m", guideBound)
}
