package report

import (
	"fmt"
	"strings"

	"scalepair/cmd/scalepair/show"
	"scalepair/data"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
)

// fits says in words what law ties each kind of string together.
func (in *Input) fits(r *show.Report) {
	r.Heading("Fits")
	var items []string
	for _, f := range in.Job.Stock.Fits {
		items = append(items, in.fitWords(f))
	}
	for _, name := range in.unfitted() {
		items = append(items, name+": too few gauges weighed for a fit, so nothing checks them and nothing can be estimated from them.")
	}
	r.Bullets(items...)
}

// familyName names a family, plain ones with their material.
func familyName(family, material string) string {
	if family == gauges.Plain {
		return family + ", " + material
	}
	return family
}

// unfitted lists the families that have no fit.
func (in *Input) unfitted() []string {
	seen := map[string]bool{}
	for _, f := range in.Job.Stock.Fits {
		seen[strings.ToLower(familyName(f.Family, f.Material))] = true
	}
	var out []string
	for _, g := range in.Job.Stock.Gauges {
		name := familyName(g.Family, g.Material)
		if key := strings.ToLower(name); !seen[key] {
			seen[key] = true
			out = append(out, name)
		}
	}
	return out
}

func (in *Input) fitWords(f fit.Fit) string {
	law := ""
	switch f.Law {
	case fit.OneDensity:
		law = fmt.Sprintf("one density for all, %s g/cm3", show.WithU(f.DensityKgM3/1000, f.UDensityKgM3/1000, 3))
	case fit.WrapDensity:
		law = fmt.Sprintf("one density of the wrap with the air in it, %s g/cm3", show.WithU(f.DensityKgM3/1000, f.UDensityKgM3/1000, 3))
	case fit.PowerLaw:
		law = fmt.Sprintf("linear density goes with the outer diameter to the power %s", show.WithU(f.Exponent, f.UExponent, 3))
	}
	out := fmt.Sprintf("%s: %s, from %s of %s to %s %s. %s", familyName(f.Family, f.Material), law, plural(len(f.Used), "gauge"),
		in.diameter(float64(f.MinOuter)), in.diameter(float64(f.MaxOuter)), in.diameterUnit().Symbol(), scatterWords(f))
	if len(f.LeftOut) > 0 {
		out += " Kept out as suspect: " + listed(f.LeftOut) + "."
	}
	return out
}

func scatterWords(f fit.Fit) string {
	switch {
	case f.ScatterAssumed:
		return fmt.Sprintf("Too few to see how far single gauges stand from it: %s is assumed.", show.PercentText(float64(f.Scatter), 1))
	case f.Scatter == 0:
		return "Single gauges stand no farther from it than their own uncertainties allow."
	}
	return fmt.Sprintf("Single gauges stand off from it by about %s beyond their own uncertainties.", show.PercentText(float64(f.Scatter), 1))
}

// tools says how good balance, ruler and calipers are taken to be, and which
// of it nobody stated.
func (in *Input) tools(r *show.Report) {
	r.Heading("Balance, ruler and calipers")
	t := in.Job.Tools()
	items := []string{
		in.tool("The balance reads", "balance", mass(float64(t.BalanceResolution)), mass(float64(t.BalanceRepeatability)), mass(float64(t.BalanceAccuracy))),
		in.tool("The ruler reads", "ruler", in.toolLength(float64(t.RulerResolution)), "", in.toolLength(float64(t.RulerAccuracy))),
		in.tool("The calipers read", "caliper", in.toolLength(float64(t.CaliperResolution)), "", in.toolLength(float64(t.CaliperAccuracy))),
	}
	if len(in.hungOf(in.Job.Stock.Gauges)) > 0 {
		items = append(items, in.tool("The scales for the hung weight read", "hung", mass(float64(t.HungResolution)), "", mass(float64(t.HungAccuracy))),
			in.gravityWords(t), fmt.Sprintf("Pitch: known to %s cents%s.", trim(float64(t.Pitch)), in.assumed("pitch_uncertainty_cents")))
	}
	if n := in.ownSteps(); n > 0 {
		items = append(items, fmt.Sprintf("%s with a step of mass or length of %s own, which comes first.", plural(n, "row"), its(n)))
	}
	r.Bullets(items...)
	woundTolerance := "0.02 mm"
	if in.Units.Length != unit.Millimetres {
		woundTolerance = "0.0008 in"
	}
	r.Text("A diameter that is not marked as measured is the nominal one, known to the tolerance of drawn wire, or to " + woundTolerance + " outside a wound string.")
}

func its(n int) string {
	if n == 1 {
		return "its"
	}
	return "their"
}

// tool words one instrument of [measuring]. Empty parts were not given.
func (in *Input) tool(name, key, step, repeat, accuracy string) string {
	out := fmt.Sprintf("%s to %s%s", name, step, in.assumed(key+"_step"))
	if repeat != "" {
		out += "; repeats within " + repeat
	}
	if accuracy != "" {
		return out + "; true within " + accuracy + "."
	}
	return out + "; counts as true, since [measuring] states no " + key + "_accuracy."
}

// assumed marks a value that the build file does not state.
func (in *Input) assumed(key string) string {
	if in.Job.Build.Given("measuring." + key) {
		return ""
	}
	return " (assumed)"
}

func (in *Input) gravityWords(t gauges.Instruments) string {
	gravity, uGravity := t.GravityUsed()
	return fmt.Sprintf("Gravity: %s m/s2%s.", show.WithU(gravity, uGravity, 3), in.assumed("gravity_m_s2"))
}

func (in *Input) ownSteps() int {
	n := 0
	for _, row := range in.Job.Readings {
		if row.MassResolution > 0 || row.LengthResolution > 0 {
			n++
		}
	}
	return n
}

// mass prints a mass in grams as short as it is exact; "" for none.
func mass(kg float64) string {
	if kg == 0 {
		return ""
	}
	return trimFixed(unit.Mass(kg).G(), 6) + " g"
}

func (in *Input) toolLength(m float64) string {
	switch {
	case m == 0:
		return ""
	case in.Units.Length == unit.Millimetres:
		return trimFixed(unit.Length(m).MM(), 4) + " mm"
	}
	return trimFixed(unit.Length(m).Inches(), 5) + " in"
}

// trimFixed prints x with at most that many decimals, without noughts at the
// end.
func trimFixed(x float64, decimals int) string {
	s := show.Fixed(x, decimals)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// Craft is how a weighing is done well, for the help and in short for the
// report.
const Craft = `Weigh cut-offs, or a retired set: the speaking part only, without ball, twist,
silk, kink or bare core. Crimp a wound string before the cut, or its wrap
slips. Weigh long pieces, or several of one length together: what the balance
cannot see of one cut-off counts for little on ten. Lay the piece straight
along the ruler and read both ends.`

// craft prints the craft in short, with the lengths that matter.
func (in *Input) craft(r *show.Report) {
	r.Heading("Weighing well")
	r.Text(strings.ReplaceAll(Craft, "\n", " "))
	thin, thick := in.Job.Stock.Gauges[0], in.Job.Stock.Gauges[0]
	for _, g := range in.Job.Stock.Gauges {
		if g.LinearDensity < thin.LinearDensity {
			thin = g
		}
		if g.LinearDensity > thick.LinearDensity {
			thick = g
		}
	}
	need := fmt.Sprintf("%s %s of %s", in.lengthWithin(thin, onePercent), in.pieceUnit(), thin.Label)
	if thick.Label != thin.Label {
		need += fmt.Sprintf(", the lightest here, and %s %s of %s, the heaviest", in.lengthWithin(thick, onePercent), in.pieceUnit(), thick.Label)
	}
	r.Para("For a standard uncertainty of 1 %% this balance and ruler need %s; in one piece or in several together. For half the uncertainty, twice the length.", need)
}

// coreWords says what the core is.
func (in *Input) coreWords(g gauges.Gauge) string {
	material := g.Material
	if material == "" {
		material = data.MusicWire
	}
	switch {
	case g.Family == gauges.Plain:
		return material
	case g.Core == 0:
		return "core of " + material + ", its diameter not known"
	}
	shape := g.Shape.String()
	if g.Shape == reading.ShapeAssumed {
		shape = "shape not known, taken as round"
	}
	return fmt.Sprintf("core of %s, %s %s, %s", material, in.diameter(float64(g.Core)), in.diameterUnit().Symbol(), shape)
}
