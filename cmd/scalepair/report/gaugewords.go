package report

import (
	"cmp"
	"fmt"
	"maps"
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
	from := plural(g.Readings, "reading")
	switch {
	case g.Readings == 0 && !g.Built:
		from = "the fit of its kind, never weighed"
	case g.Readings == 0:
		from = "its core and wraps"
	case g.Built:
		from += ", its core and wraps"
	}
	var points lines
	points.say("%s, outer %s ± %s; %s.", capital(g.Family), u.Len(g.Outer, 3), u.LenText(g.UOuter, 3), in.coreWords(g))
	points.say("Linear density %s ± %s (%s), from %s; in 95 %% of cases the true one is within %s (%s) of that.", u.Density(g.LinearDensity), u.DensityText(g.U),
		table.PercentText(g.RelU(), 1), from, u.DensityText(g.Within95()), table.PercentText(unit.Ratio(g.Within95()/g.LinearDensity), 1))
	points.say("Where the uncertainty comes from (it is the root of the sum of the squares): %s.", partWords(g))
	points.say("Density %s g/cm3, of the %s.", unit.Fixed(g.Implied.GramsPerCM3(), 3), densityOf(g))
	points.sayIf(g.EA > 0, "Stiffness EA %s %s.", u.Force.Format(g.EA, 0), u.Force.Symbol())
	points.sayIf(g.Packing > 0, "The wraps fill %s of their rings with metal.", table.PercentText(g.Packing, 0))
	points.say("%s", in.breakingWords(g))
	if j := g.Judged; j != nil {
		points.say("Against the fit of its kind made without it (%s): %s ± %s; up to %s would pass, so that a stock without a slip raises an alarm in %s of 100 cases.",
			u.DensityText(j.Fit), table.WithSign(unit.Fixed(j.Deviation.Percent(), 1)), table.PercentText(j.U, 1), table.PercentText(j.Limit, 1), trim(100*fit.FalseAlarm))
	}
	for _, b := range in.Run.Stock.Blind() {
		points.sayIf(b.Gauge == g.Label && len(b.Slips) > 0, "A slip that could not have shown: %s.", strings.Join(b.Slips, "; "))
	}
	for _, n := range g.Notes {
		points.say("%s.", capital(n))
	}
	points.say("For a standard uncertainty of 1 %% in one weighing: %s of string, in one piece or several together.", u.LenText(in.forOnePercent(g), 0))
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
	return fmt.Sprintf("core of %s, %s, %v", g.Material, in.Units.Decimal().LenText(g.Core, 3), g.Shape)
}

// partWords lists what the uncertainty of a linear density is made of, largest
// first; parts below a hundredth of a percent are left out.
func partWords(g gauges.Gauge) string {
	share := func(u float64) unit.Ratio { return unit.Ratio(math.Abs(u) / g.LinearDensity.KgPerM()) }
	words := lines{table.PercentText(share(g.Indep.KgPerM()), 2) + " of this gauge alone"}
	for _, p := range slices.SortedStableFunc(slices.Values(g.Common), func(a, b gauges.Part) int { return cmp.Compare(math.Abs(b.U), math.Abs(a.U)) }) {
		words.sayIf(share(p.U) >= 0.0001, "%s from the %s", table.PercentText(share(p.U), 2), p.Source)
	}
	return listed(words)
}

// breakingWords gives the load that the core bears at least, and the half that must
// not be passed in a hung test.
func (in *Input) breakingWords(g gauges.Gauge) string {
	load, u := breakingLoad(g), in.Units.Force
	if load == 0 {
		return "Breaking load: not known, so never hang a weight on it."
	}
	mass := "kg"
	if u == unit.PoundsForce {
		mass = "lb"
	}
	return fmt.Sprintf("Breaks at %s %s or more; for a hung test never more than half, %s %s (%s %s hung).", roundedDown(u.Value(load)), u.Symbol(), roundedDown(u.Value(load/2)), u.Symbol(),
		roundedDown(unit.Form[unit.Mass]("", mass).Value(load.N()/2/unit.StandardGravity)), mass)
}

// roundedDown prints a bound to no more than two or three figures, which is
// what the least strength of a wire is good for, and never above the bound.
func roundedDown(x float64) string {
	if x < 20 { // a whole unit would be too coarse
		return unit.Fixed(math.Floor(10*x)/10, 1)
	}
	return unit.Fixed(math.Floor(x), 0)
}

// fitTable says of every family what its fit found, and which have none.
func (in *Input) fitTable() *table.Table {
	u := in.Units.Decimal()
	unfitted := map[string]string{}
	for _, g := range in.Run.Stock.Gauges {
		unfitted[reading.Key(familyName(g.Family, g.Material))] = familyName(g.Family, g.Material)
	}
	for _, f := range in.Run.Stock.Fits {
		delete(unfitted, reading.Key(familyName(f.Family, f.Material)))
	}
	t := table.Of("fits", "Fits", in.Run.Stock.Fits,
		table.Words("kind", "", func(f fit.Fit) string { return familyName(f.Family, f.Material) }),
		table.Words("one for all", "", func(f fit.Fit) string {
			switch of := fmt.Sprintf("%s ± %s g/cm3", unit.Fixed(f.Density.GramsPerCM3(), 3), unit.Fixed(f.UDensity.GramsPerCM3(), 3)); f.Law {
			case fit.PowerLaw:
				return fmt.Sprintf("power of the outer diameter, %s ± %s", unit.Fixed(float64(f.Exponent), 3), unit.Fixed(float64(f.UExponent), 3))
			case fit.WrapDensity:
				return "density of the wrap with its air, " + of
			default:
				return "density, " + of
			}
		}),
		table.Whole("gauges", "", func(f fit.Fit) int { return len(f.Used) }),
		table.Words("outer "+u.Length.Symbol(), "", func(f fit.Fit) string { return u.Len(f.MinOuter, 3) + " to " + u.Len(f.MaxOuter, 3) }),
		table.Percent("scatter", "", 1, func(f fit.Fit) unit.Ratio { return f.Scatter }),
	).Note("Scatter: of single gauges, beyond their own uncertainties.")
	for _, f := range in.Run.Stock.Fits {
		var notes lines
		notes.sayIf(f.ScatterAssumed, "%s: too few gauges to see a scatter, so it is assumed.", familyName(f.Family, f.Material))
		notes.sayIf(len(f.LeftOut) > 0, "%s: kept out as suspect: %s.", familyName(f.Family, f.Material), listed(f.LeftOut))
		t.Note(notes...)
	}
	for _, name := range slices.Sorted(maps.Values(unfitted)) {
		t.Note(name + ": too few gauges weighed for a fit, so nothing checks them and nothing can be estimated from them.")
	}
	return t
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
	var notes []shared
	var out lines
	for _, g := range list {
		for _, n := range g.Notes {
			if !strings.HasPrefix(n, "too few of its kind") { // the fits say so
				notes = share(notes, n, g.Label)
			}
		}
	}
	for _, n := range notes {
		out.say("%s: %s.", listed(n.by), n.text)
	}
	return out
}

// blindWords says how small a slip this stock could not have shown.
func (in *Input) blindWords() []string {
	var judged []fit.Blind
	var alone []string
	var out lines
	for _, b := range in.Run.Stock.Blind() {
		if g, _ := in.Run.Stock.Lookup(b.Gauge); b.Limit == 0 {
			alone = append(alone, b.Gauge)
		} else if !g.Suspect && !g.Disagrees {
			judged = append(judged, b)
		}
	}
	if judged != nil {
		slices.SortStableFunc(judged, func(a, b fit.Blind) int { return cmp.Compare(a.Limit, b.Limit) })
		least, most := judged[0], judged[len(judged)-1]
		out.say("A slip shows when it moves a linear density by more than %s (%s) to %s (%s). Smaller ones pass unseen. Name a gauge to see its own.",
			table.PercentText(least.Limit, 1), least.Gauge, table.PercentText(most.Limit, 1), most.Gauge)
	}
	out.sayIf(alone != nil, "Nothing checks %s: weigh a second piece, or more gauges of that kind.", listed(alone))
	out.say("A weighing shows nothing of a core: breaking strength, bends, inharmonicity and compensation rest on its diameter, so measure it twice.")
	out.say("A balance that reads heavy, or a ruler that is short, moves all gauges alike and never shows: weigh something of known mass, and lay two rulers side by side.")
	return out
}

// toolWords says how good balance, ruler and calipers are taken to be, and which
// of it nobody stated.
func (g *Gauges) toolWords() []string {
	m := g.Measuring
	mass := func(x unit.Mass) string {
		if x == 0 {
			return "not stated"
		}
		return x.String()
	}
	length := func(x unit.Length) string {
		if x == 0 {
			return "not stated"
		}
		return resolutionText(g.in.Units, x)
	}
	var out lines
	out.say("Balance: resolution %s, repeatability %s, accuracy %s.", mass(m.BalanceResolution), mass(m.BalanceRepeatability), mass(m.BalanceAccuracy))
	out.say("Ruler: resolution %s, accuracy %s. Calipers: resolution %s, accuracy %s.", length(m.RulerResolution), length(m.RulerAccuracy), length(m.CaliperResolution), length(m.CaliperAccuracy))
	out.sayIf(g.Hung.Len() > 0, "Scales for the hung weight: resolution %s, accuracy %s. Gravity: %s ± %s m/s2. Pitch: known to %s.",
		mass(m.HungResolution), mass(m.HungAccuracy), unit.Fixed(float64(m.Gravity), 3), unit.Fixed(float64(m.UGravity), 3), cents(m.Pitch))
	assumed := slices.DeleteFunc(slices.Clone(m.Assumed), func(key string) bool { // of no hung weight where none was hung
		return g.Hung.Len() == 0 && !slices.Contains([]string{"balance_resolution", "ruler_resolution", "caliper_resolution"}, key)
	})
	out.sayIf(len(assumed) > 0, "Assumed, since [measuring] does not state them: %s.", listed(assumed))
	out.say("A tool without a stated accuracy counts as right.")
	out.say("A diameter that is not marked as measured is the nominal one, known to the tolerance of drawn wire, or to %s outside a wound string (judgement).", g.in.fine().text(gauges.WoundTolerance))
	return out
}
