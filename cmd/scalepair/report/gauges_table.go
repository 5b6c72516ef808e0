package report

import (
	"fmt"
	"strings"

	"scalepair/cmd/scalepair/show"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
)

// stockTable is the table of the stock, in the order of the readings file.
func (in *Input) stockTable(r *show.Report) {
	t := r.Table("gauges", "Stock", show.Words("gauge"), show.Words("construction"),
		show.Figures("outer "+in.diameterUnit().Symbol()), show.Figures("core "+in.diameterUnit().Symbol()),
		show.Words("known by").Later(1), show.Figures("linear density "+in.weightUnit()), show.Figures("95 % ± %"),
		show.Figures("off the fit %").Later(1), show.Figures("density g/cm3").Later(1),
		show.Figures(in.Units.HeadForce("stiffness EA")).Later(1), show.Figures("length for 1 % "+in.pieceUnit()).Later(1),
		show.Words("remarks").Later(2))
	for _, g := range in.Job.Stock.Gauges {
		t.Row(marked(g), g.Family, in.diameter(float64(g.Outer)), in.wrappedCore(g), knownBy(g),
			in.weight(float64(g.LinearDensity), float64(g.U)), show.Percent(float64(g.Within95()/g.LinearDensity), 1),
			offFit(g), density(g.ImpliedKgM3), in.stiffness(float64(g.EA)), in.lengthWithin(g, onePercent), otherFlags(g))
	}
	t.Note("± beside a number is one standard uncertainty. 95 %%: the true linear density lies that near to the stated one in 95 %% of cases; mostly two standard uncertainties, down to 1.65 where one rounding or tolerance is nearly all of it.")
	t.Note("Off the fit: own linear density against the fit of its kind made without it, with the standard uncertainty of that distance.")
	t.Note("Density: %s.", strings.Join(in.densityWords(), "; "))
	t.Note("Length for 1 %%: the length, in one piece or several together, that gives a new weighing a standard uncertainty of 1 %% on this balance and ruler.")
}

// onePercent is a good weighing: half of it is the step between neighbouring
// gauges in tension (judgement).
const onePercent = 0.01

// weightUnit is g/m, or lb/in where lengths are in inches.
func (in *Input) weightUnit() string {
	if in.Units.Length == unit.Millimetres {
		return "g/m"
	}
	return "lb/in"
}

// weight prints a linear density and its standard uncertainty, both in kg/m; 0
// for none.
func (in *Input) weight(w, u float64) string {
	return show.WithU(in.weightValue(w), in.weightValue(u), in.weightDecimals())
}

func (in *Input) weightDecimals() int {
	if in.Units.Length == unit.Millimetres {
		return 4
	}
	return 8
}

// diameterUnit is mm or decimal inches: nobody knows wire by 64ths.
func (in *Input) diameterUnit() unit.LengthUnit {
	if in.Units.Length == unit.Millimetres {
		return unit.Millimetres
	}
	return unit.DecimalInches
}

// diameter prints a diameter given in metres, 0 for one that is not known.
func (in *Input) diameter(m float64) string {
	switch {
	case m == 0:
		return none
	case in.diameterUnit() == unit.Millimetres:
		return show.Fixed(unit.Length(m).MM(), 3)
	}
	return show.Fixed(unit.Length(m).Inches(), 4)
}

// wrappedCore is the core of a wound gauge; a plain one has none apart.
func (in *Input) wrappedCore(g gauges.Gauge) string {
	if g.Family == gauges.Plain {
		return none
	}
	return in.diameter(float64(g.Core))
}

func (in *Input) stiffness(ea float64) string {
	if ea == 0 {
		return none
	}
	return show.Fixed(in.Units.Force.Value(unit.Force(ea)), 0)
}

func density(kgM3 float64) string { return show.Fixed(kgM3/1000, 3) }

// lengthWithin is the length that gives a weighing the relative uncertainty
// rel with the build's tools.
func (in *Input) lengthWithin(g gauges.Gauge, rel float64) string {
	return in.pieceLength(fit.ShortestPiece(g.LinearDensity, unit.Ratio(rel), in.Job.Tools()).M())
}

// pieceUnit is mm or in; nobody cuts a piece to the 64th to weigh it.
func (in *Input) pieceUnit() string { return in.diameterUnit().Symbol() }

// pieceLength prints the length of a piece to weigh: to the millimetre, or the
// tenth of an inch.
func (in *Input) pieceLength(m float64) string {
	if in.Units.Length == unit.Millimetres {
		return show.Fixed(unit.Length(m).MM(), 0)
	}
	return show.Fixed(unit.Length(m).Inches(), 1)
}

// knownBy says what the linear density rests on.
func knownBy(g gauges.Gauge) string {
	weighed, hung := countRows(g)
	var words []string
	if weighed > 0 {
		words = append(words, fmt.Sprintf("%d\u00a0weighed", weighed))
	}
	if hung > 0 {
		words = append(words, fmt.Sprintf("%d\u00a0hung", hung))
	}
	if g.Built {
		words = append(words, "core and wraps")
	}
	if words == nil {
		return "the fit"
	}
	return strings.Join(words, " + ")
}

func countRows(g gauges.Gauge) (weighed, hung int) {
	for _, row := range g.Rows {
		if row.Kind == reading.Hung {
			hung++
		} else {
			weighed++
		}
	}
	return weighed, hung
}

// offFit is how far the gauge stands from the fit made without it.
func offFit(g gauges.Gauge) string {
	if g.Judged == nil {
		return none
	}
	u := show.Percent(float64(g.Judged.U), 1)
	return show.SignedPercent(float64(g.Judged.Deviation), 1) + " ± " + u
}

// otherFlags are the flags that do not stand beside the label.
func otherFlags(g gauges.Gauge) string {
	var out []string
	for _, f := range g.Flags() {
		if f != "estimated" && f != "suspect" {
			out = append(out, f)
		}
	}
	return strings.Join(out, ", ")
}

// densityOf says of what a gauge's implied density is.
func densityOf(g gauges.Gauge) string {
	switch {
	case g.Family == gauges.Plain:
		return "wire"
	case g.AreaM2 == 0 || g.DensityKgM3 == 0:
		return "whole string"
	}
	return "wrap"
}

// densityWords explains the kinds of density that stand in the table.
func (in *Input) densityWords() []string {
	words := map[string]string{
		"wire":         "of a plain string, linear density over cross-section",
		"wrap":         "of a wound one with a known core, of the wrap with the air in it",
		"whole string": "of a wound one without a known core, of the whole with the air in it",
	}
	var out []string
	for _, g := range in.Job.Stock.Gauges {
		if w := words[densityOf(g)]; w != "" {
			out = append(out, w)
			delete(words, densityOf(g))
		}
	}
	return out
}
