package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
)

// oneGauge prints everything that is known of a gauge.
func (in *Input) oneGauge(doc *document.Document, g gauges.Gauge, suspects []fit.Suspect) {
	u := in.Units.Decimal()
	doc.Heading("%s", g.Label)
	doc.List(suspectWords(slices.DeleteFunc(slices.Clone(suspects), func(s fit.Suspect) bool { return s.Gauge != g.Label }))...)
	points := []string{
		fmt.Sprintf("%s, outer %s ± %s; %s.", capital(g.Family), u.Len(g.Outer, 3), u.LenText(g.UOuter, 3), in.coreWords(g)),
		fmt.Sprintf("Linear density %s ± %s (%s), from %s.", u.Density(g.LinearDensity), u.DensityText(g.U), table.PercentText(g.RelU(), 1), restsOn(g)),
		fmt.Sprintf("In 95 %% of cases the true one is within %s (%s) of that: %s standard uncertainties, of which ± is one.",
			u.DensityText(g.Within95()), table.PercentText(unit.Ratio(g.Within95()/g.LinearDensity), 1), unit.Fixed(g.Coverage95(), 2)),
		"Where the uncertainty comes from (it is the root of the sum of the squares): " + in.partWords(g) + ".",
		fmt.Sprintf("Density %s g/cm3, of the %s.", unit.Fixed(g.Implied.GramsPerCM3(), 3), densityOf(g)),
	}
	if g.EA > 0 {
		points = append(points, fmt.Sprintf("Stiffness EA %s %s.", u.Force.Format(g.EA, 0), u.Force.Symbol()))
	}
	if g.Packing > 0 {
		points = append(points, fmt.Sprintf("The wraps fill %s of their rings with metal.", table.PercentText(g.Packing, 0)))
	}
	points = append(points, in.breakingWords(g))
	if j := g.Judged; j != nil {
		points = append(points, fmt.Sprintf("Against the fit of its kind made without it (%s): %s ± %s; up to %s would pass, so that a stock without a slip raises an alarm in %s of 100 cases.",
			u.DensityText(j.Fit), table.WithSign(unit.Fixed(j.Deviation.Percent(), 1)), table.PercentText(j.U, 1), table.PercentText(j.Limit, 1), trim(100*fit.FalseAlarm)))
	}
	for _, b := range in.Run.Stock.Blind() {
		if b.Gauge == g.Label && len(b.Slips) > 0 {
			points = append(points, "A slip that could not have shown: "+strings.Join(b.Slips, "; ")+".")
		}
	}
	for _, n := range g.Notes {
		points = append(points, capital(n)+".")
	}
	points = append(points, fmt.Sprintf("For a standard uncertainty of 1 %% in one weighing: %s of string, in one piece or several together.", u.LenText(in.forOnePercent(g), 0)))
	doc.List(points...)
	if len(g.Rows) > 0 {
		doc.Table(in.readingTable(g))
	}
}

// coreWords says what the core is.
func (in *Input) coreWords(g gauges.Gauge) string {
	switch {
	case g.IsPlain():
		return g.Material
	case g.Core == 0:
		return "core of " + g.Material + ", its diameter not known"
	}
	shape := g.Shape.String()
	if g.Shape == reading.ShapeAssumed {
		shape = "shape not known, taken as round"
	}
	return fmt.Sprintf("core of %s, %s, %s", g.Material, in.Units.Decimal().LenText(g.Core, 3), shape)
}

// partWords lists what the uncertainty of a linear density is made of, largest
// first; parts below a hundredth of a percent are left out.
func (in *Input) partWords(g gauges.Gauge) string {
	const least = 0.0001
	share := func(u float64) unit.Ratio { return unit.Ratio(math.Abs(u) / g.LinearDensity.KgPerM()) }
	var parts []gauges.Part
	for _, p := range g.Common {
		if share(p.U) >= least {
			parts = append(parts, p)
		}
	}
	slices.SortStableFunc(parts, func(a, b gauges.Part) int { return int(math.Copysign(1, math.Abs(b.U)-math.Abs(a.U))) })
	words := []string{table.PercentText(share(g.Indep.KgPerM()), 2) + " of this gauge alone"}
	for _, p := range parts {
		words = append(words, fmt.Sprintf("%s from the %s", table.PercentText(share(p.U), 2), p.Source))
	}
	return listed(words)
}

// breakingWords gives the load that the core bears at least, and the half
// that must not be passed in a hung test.
func (in *Input) breakingWords(g gauges.Gauge) string {
	load := breakingLoad(g)
	if load == 0 {
		return "Breaking load: not known, so never hang a weight on it."
	}
	u := in.Units
	force := func(f unit.Force) string { return roundedDown(u.Force.Value(f)) + " " + u.Force.Symbol() }
	name := "kg"
	if u.Force == unit.PoundsForce {
		name = "lb"
	}
	for _, r := range g.Rows {
		if r.Kind == reading.Hung && r.Written.HungMass.Known() {
			name = r.Written.HungMass.Unit
		}
	}
	hung := unit.Form[unit.Mass]("", name)
	return fmt.Sprintf("Breaks at %s or more; for a hung test never more than half, %s (%s %s hung).",
		force(load), force(load/2), roundedDown(hung.Value(load.N()/2/unit.StandardGravity)), name)
}

// roundedDown prints a bound to no more than two or three figures, which is
// what the least strength of a wire is good for, and never above the bound.
func roundedDown(x float64) string {
	if x < 20 { // a whole unit would be too coarse
		return unit.Fixed(math.Floor(10*x)/10, 1)
	}
	return unit.Fixed(math.Floor(x), 0)
}

// fitWords says of every family what its fit found, or that there is none.
func (in *Input) fitWords() []string {
	u := in.Units.Decimal()
	var out []string
	fitted := map[string]bool{}
	for _, f := range in.Run.Stock.Fits {
		name := familyName(f.Family, f.Material)
		fitted[reading.Key(name)] = true
		law := fmt.Sprintf("one density for all, %s ± %s g/cm3", unit.Fixed(f.Density.GramsPerCM3(), 3), unit.Fixed(f.UDensity.GramsPerCM3(), 3))
		switch f.Law {
		case fit.WrapDensity:
			law = strings.Replace(law, "for all", "of the wrap with the air in it", 1)
		case fit.PowerLaw:
			law = fmt.Sprintf("linear density goes with the outer diameter to the power %s ± %s", unit.Fixed(float64(f.Exponent), 3), unit.Fixed(float64(f.UExponent), 3))
		}
		text := fmt.Sprintf("%s: %s, from %s of %s to %s. ", name, law, plural(len(f.Used), "gauge"), u.Len(f.MinOuter, 3), u.LenText(f.MaxOuter, 3))
		switch {
		case f.ScatterAssumed:
			text += fmt.Sprintf("Too few to see how far single gauges lie from it: %s is assumed.", table.PercentText(f.Scatter, 1))
		case f.Scatter < 0.0005:
			text += "Single gauges lie no farther from it than their own uncertainties allow."
		default:
			text += fmt.Sprintf("Single gauges lie about %s from it beyond their own uncertainties.", table.PercentText(f.Scatter, 1))
		}
		if len(f.LeftOut) > 0 {
			text += " Kept out as suspect: " + listed(f.LeftOut) + "."
		}
		out = append(out, text)
	}
	for _, g := range in.Run.Stock.Gauges {
		if name := familyName(g.Family, g.Material); !fitted[reading.Key(name)] {
			fitted[reading.Key(name)] = true
			out = append(out, name+": too few gauges weighed for a fit, so nothing checks them and nothing can be estimated from them.")
		}
	}
	return out
}

// familyName names a family, plain ones with their material.
func familyName(family, material string) string {
	if family == gauges.Plain {
		return family + ", " + material
	}
	return family
}

// noteWords gathers the notes of gauges, each once with the gauges that have it.
func (in *Input) noteWords(list []gauges.Gauge) []string {
	who := map[string][]string{}
	var texts, out []string
	for _, g := range list {
		for _, n := range g.Notes {
			if strings.HasPrefix(n, "too few of its kind") {
				continue // the fits say so
			}
			if who[n] == nil {
				texts = append(texts, n)
			}
			who[n] = append(who[n], g.Label)
		}
	}
	for _, n := range texts {
		out = append(out, listed(who[n])+": "+n+".")
	}
	return out
}

// blindWords says how small a slip this stock could not have shown.
func (in *Input) blindWords() []string {
	var least, most fit.Blind
	var alone, out []string
	for _, b := range in.Run.Stock.Blind() {
		switch g, _ := in.Run.Stock.Lookup(b.Gauge); {
		case b.Limit == 0:
			alone = append(alone, b.Gauge)
		case g.Suspect || g.Disagrees:
		default:
			if least.Limit == 0 || b.Limit < least.Limit {
				least = b
			}
			if b.Limit > most.Limit {
				most = b
			}
		}
	}
	if most.Limit > 0 {
		out = append(out, fmt.Sprintf("A slip shows when it moves a linear density by more than %s (%s) to %s (%s). Smaller ones pass unseen. Name a gauge to see its own.",
			table.PercentText(least.Limit, 1), least.Gauge, table.PercentText(most.Limit, 1), most.Gauge))
	}
	if alone != nil {
		out = append(out, "Nothing checks "+listed(alone)+": weigh a second piece, or more gauges of that kind.")
	}
	return append(out, "A balance that reads heavy, or a ruler that is short, moves all gauges alike and never shows: weigh something of known mass, and lay two rulers side by side.")
}

// toolWords says how good balance, ruler and calipers are taken to be, and which
// of it nobody stated.
func (g *Gauges) toolWords() []string {
	m := g.Measuring
	tool := func(name, key, step, repeat, accuracy string) string {
		out := fmt.Sprintf("The %s to %s", name, step)
		if slices.Contains(m.Assumed, key+"_resolution") {
			out += " (assumed)"
		}
		if repeat != "" {
			out += "; repeatability " + repeat
		}
		if accuracy == "" {
			return out + "; no accuracy is stated, so it counts as right."
		}
		return out + "; accuracy " + accuracy + "."
	}
	length := func(l unit.Length) string {
		if l == 0 {
			return ""
		}
		return resolutionText(g.in.Units, l)
	}
	out := []string{
		tool("balance reads", "balance", known(m.BalanceResolution), known(m.BalanceRepeatability), known(m.BalanceAccuracy)),
		tool("ruler reads", "ruler", length(m.RulerResolution), "", length(m.RulerAccuracy)),
		tool("calipers read", "caliper", length(m.CaliperResolution), "", length(m.CaliperAccuracy)),
	}
	if g.Hung.Len() > 0 {
		out = append(out, tool("scales for the hung weight read", "hung", known(m.HungResolution), "", known(m.HungAccuracy)),
			fmt.Sprintf("Gravity: %s ± %s m/s2. Pitch: known to %s.", unit.Fixed(float64(m.Gravity), 3), unit.Fixed(float64(m.UGravity), 3), cents(m.Pitch)))
	}
	return append(out, fmt.Sprintf("A diameter that is not marked as measured is the nominal one, known to the tolerance of drawn wire, or to %s outside a wound string (judgement).",
		g.in.fine().text(gauges.WoundTolerance)))
}

// known prints a quantity as it was stated; "" for 0.
func known[Q interface {
	~float64
	fmt.Stringer
}](x Q) string {
	if x == 0 {
		return ""
	}
	return x.String()
}
