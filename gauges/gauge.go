package gauges

import (
	"math"

	"scalepair/data"
	"scalepair/data/fault"
	"scalepair/data/trace"
	"scalepair/data/unit"
	"scalepair/gauges/reading"
)

// Plain is the family of strings that are one bare wire.
const Plain = reading.Plain

// Gauge is one size of string as the stock knows it.
type Gauge struct {
	Label    string
	Place    fault.Place // of its first row, or of its construction
	Family   string      // Plain or the builder's name of a wound kind
	Material string      // of the core; of the whole wire where plain

	Outer, UOuter unit.Length
	Core, UCore   unit.Length // 0 unknown; a plain gauge's core is the wire
	Shape         reading.Shape

	LinearDensity unit.LinearDensity // slack
	U             unit.LinearDensity // standard uncertainty: U² = Indep² + sum of Common²
	Indep         unit.LinearDensity // the part that no other value shares
	Common        Parts              // kg/m; a source 'core of ...' is shared with CoreParts
	OuterParts    Parts              // m, the parts of UOuter; its own is CoreSource where plain, else "own"

	// The errors of Core, m: UCore² = sum of CoreParts² + (CoreByDensity U)², the
	// second since a plain wire's core follows from its weighing too: it changes
	// by CoreByDensity, in m per kg/m, with the linear density.
	CoreParts     Parts
	CoreByDensity float64

	AreaM2      float64     // core's cross-section; 0 where the core is unknown
	EA          unit.Force  // 0 where the core or its modulus is unknown
	EI          float64     // N m²; 0 as EA
	YoungsPa    float64     // 0 unknown
	StrengthPa  float64     // the material's stated strength; 0: look music wire up by its diameter
	DensityKgM3 float64     // of the core's material; 0 unknown
	Winding     unit.Length // length of the wound part that a bought string has; 0 not stated

	Implied unit.Density // the wrap's where the core is known, else that of the whole string
	Packing unit.Ratio   // share of the wraps' rings filled with metal, where a construction was given; else 0

	Readings  int  // rows used, weighed and hung
	Built     bool // a construction from core and wraps went in
	Estimated bool // no reading and no construction: from the fit
	Suspect   bool // its reading deviates from the fit made without it
	Disagrees bool // its own readings lie further apart than chance allows

	Rows   []reading.Reading // the readings that went in, as they were read
	Judged *Judgement        // how it compares with the fit; nil where nothing could judge it
	Notes  []string          // in plain words, for the table's foot

	// How its readings differ among themselves, as Average; 0 degrees where nothing
	// shows it.
	Chi2 float64
	DoF  int

	written reading.Written
	bounded float64 // kg/m, see Value
	source  string  // of the modulus
}

// Judgement is how a gauge compares with the fit that was made without it.
type Judgement struct {
	Fit       unit.LinearDensity // what the fit gives
	Deviation unit.Ratio         // (own linear density - Fit)/Fit: 5 % is heavier than the fit
	U         unit.Ratio         // standard uncertainty of Deviation: reading, diameters, fit and the family's scatter
	Limit     unit.Ratio         // the |Deviation| beyond which a gauge is suspect
}

// RelU is the standard uncertainty of the linear density as a ratio of it.
func (g Gauge) RelU() unit.Ratio { return unit.Ratio(g.U / g.LinearDensity) }

// Value is the linear density with the parts of its uncertainty.
func (g Gauge) Value() Value {
	return Value{W: g.LinearDensity.KgPerM(), Indep: g.Indep.KgPerM(), Bounded: g.bounded, Common: g.Common}
}

// Set takes a value over.
func (g *Gauge) Set(v Value) {
	g.LinearDensity, g.Indep, g.U = unit.LinearDensity(v.W), unit.LinearDensity(v.Indep), unit.LinearDensity(v.U())
	g.bounded, g.Common = v.Bounded, v.Common.Plus(1)
}

// Within95 is the half width of the stated 95 % interval: the true linear
// density lies within LinearDensity +- Within95 in 95 % of cases.
func (g Gauge) Within95() unit.LinearDensity { return unit.LinearDensity(g.Value().Within95()) }

// Coverage95 is how many standard uncertainties U that interval reaches to
// either side, see Value.Coverage95.
func (g Gauge) Coverage95() float64 { return g.Value().Coverage95() }

// MusicWire reports whether the core is music wire, whose strength follows from
// its diameter.
func (g Gauge) MusicWire() bool { return g.Material == data.MusicWire }

// IsPlain reports whether the gauge is one bare wire.
func (g Gauge) IsPlain() bool { return g.Family == reading.Plain }

// Note adds a note.
func (g *Gauge) Note(text string) { g.Notes = append(g.Notes, text) }

// OuterText prints the outer diameter as it was written.
func (g Gauge) OuterText() string { return reading.AsWritten(g.written.Outer, g.Outer, "mm", 3) }

// Written is how the gauge's diameters were written down.
func (g Gauge) Written() reading.Written { return g.written }

// Flags gives the words that must stand wherever the gauge appears:
// 'estimated', 'suspect', 'readings disagree', 'core unknown', 'core shape
// assumed'. Empty for a gauge without a mark.
func (g Gauge) Flags() []string {
	var flags []string
	for _, f := range []struct {
		on   bool
		word string
	}{
		{g.Estimated, "estimated"},
		{g.Suspect, "suspect"},
		{g.Disagrees, "readings disagree"},
		{g.Core == 0, "core unknown"},
		{g.Core > 0 && !g.IsPlain() && g.Shape == reading.ShapeAssumed, reading.ShapeAssumed.String()},
	} {
		if f.on {
			flags = append(flags, f.word)
		}
	}
	return flags
}

// stiffen fills in what follows from the core: area, EA, EI and the
// material's values. Where core or modulus is unknown the stiffness stays 0
// and a note says what that costs.
func (g *Gauge) stiffen(m data.Material) {
	g.DensityKgM3, g.StrengthPa = m.DensityKgM3, m.StrengthPa
	if g.Core == 0 {
		g.Note("core unknown: no bend, compensation, inharmonicity or breaking strength")
		return
	}
	if !g.IsPlain() && g.Shape == reading.ShapeAssumed {
		g.Note("core shape assumed round; a hex core of this width has 10 % more steel")
	}
	g.YoungsPa, g.source = m.YoungsPa, m.StiffnessSource
	if g.YoungsPa == 0 {
		g.Note("no modulus for " + g.Material + ": no bend and no compensation")
	}
	g.stretch()
}

// stretch works out area, EA and EI from the core's diameter.
func (g *Gauge) stretch() {
	g.AreaM2 = g.Shape.Area(g.Core)
	g.EA = unit.Force(g.YoungsPa * g.AreaM2)
	g.EI = g.YoungsPa * g.Shape.SecondMoment(g.Core)
}

// weighedCore makes the core of a plain wire the weighted mean of what its
// diameter and its weighing give.
//
//	d_w = sqrt(4 w/(pi rho)),  u(d_w)/d_w = 1/2 sqrt(u(w)^2/w^2 + u(rho)^2/rho^2)
//	d = (1 - s) d_o + s d_w,   s = u(d_o)^2/(u(d_o)^2 + u(d_w)^2)
//
// w: linear density, kg/m; rho, uRho: density of the material and its standard
// uncertainty, kg/m3, above 0; d_o: outer diameter, m. The area follows. Where
// the two are more than three standard uncertainties apart (judgement) one of
// them is a slip, and the core stays as wide as the outside.
// Source: the Guide, weighted mean.
func (g *Gauge) weighedCore(rho, uRho float64, tr *trace.Trace) {
	w, do := g.LinearDensity.KgPerM(), g.Outer.M()
	dw := math.Sqrt(4 * w / (math.Pi * rho))
	byDensity := dw / (2 * w)
	byRho := -dw / (2 * rho)
	uo, uw := g.OuterParts.U(), RootSum(byDensity*g.U.KgPerM(), byRho*uRho)
	if math.Abs(dw-do) > 3*math.Hypot(uo, uw) {
		g.CoreFromOutside(tr)
		return
	}
	s := uo * uo / (uo*uo + uw*uw)
	g.Core = unit.Length((1-s)*do + s*dw)
	g.CoreParts = Parts{}.Plus(1-s, g.OuterParts...).Plus(s, Part{"density of " + g.Material, byRho * uRho, false})
	g.CoreByDensity = s * byDensity
	g.UCore = unit.Length(RootSum(g.CoreParts.U(), g.CoreByDensity*g.U.KgPerM()))
	g.stretch()
	tr.Given("rho, density of "+g.Material, rho, "kg/m3", "the list of materials")
	tr.Given("u(rho), standard uncertainty of that", uRho, "kg/m3", "the list of materials")
	tr.Given("u(D), standard uncertainty of the outside", uo, "m", "the readings")
	tr.Step("dw, diameter that the weighing gives", "sqrt(4 w/(pi rho))", dw, "m", "definition")
	tr.Step("u(dw), standard uncertainty of that", "dw/2 sqrt((u(w)/w)^2 + (u(rho)/rho)^2)", uw, "m", "root of the sum of squares")
	tr.Step("s, weight of the weighing", "u(D)^2/(u(D)^2 + u(dw)^2)", s, "", "weighted mean")
	tr.Step("d, diameter of the wire, from its weighing and its outside together", "(1 - s) D + s dw", g.Core.M(), "m", "weighted mean")
	g.record(tr, "")
}

// CoreFromOutside makes the core of a plain wire as wide as its outside, whatever
// it weighs: its reading is not to be trusted.
func (g *Gauge) CoreFromOutside(tr *trace.Trace) {
	g.Core, g.UCore, g.CoreParts, g.CoreByDensity = g.Outer, g.UOuter, g.OuterParts, 0
	g.stretch()
	tr.Step("d, diameter of the wire, since its weighing is not to be trusted", "D", g.Core.M(), "m", "a plain string is its own core")
	g.record(tr, "")
}
