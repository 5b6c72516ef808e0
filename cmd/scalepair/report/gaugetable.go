package report

import (
	"math"
	"slices"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
	"scalepair/tension/choice"
)

// gaugeNotes stand below the table of gauges.
var gaugeNotes = []string{
	"± beside a number is one standard uncertainty. 95 %: the true linear density (unit weight) is that near to the stated one in 95 % of cases; mostly two standard uncertainties, down to 1.65 where one rounding or tolerance is nearly all of it.",
	"Deviation: own linear density against the fit of its kind made without it.",
}

// gaugeTable is the table of gauges; what is for programs alone is in the JSON.
func (in *Input) gaugeTable(list []gauges.Gauge) *table.Table {
	u := in.Units.Decimal()
	unseen := map[string][]string{}
	for _, b := range in.Run.Stock.Blind() {
		unseen[b.Gauge] = b.Slips
	}
	type row = gauges.Gauge
	hasCore := func(g row) bool { return g.Core > 0 }
	judged := func(g row) bool { return g.Judged != nil }
	return table.Of("gauges", "", list,
		table.Words("gauge", "gauge", func(g row) string { return g.Label }).As(marked),
		table.Words("construction", "construction", func(g row) string { return g.Family }),
		table.Words("", "core_material", func(g row) string { return g.Material }),
		table.Length(u, "outer", "outer", 3, func(g row) unit.Length { return g.Outer }),
		table.Length(u, "", "outer_standard_uncertainty", 3, func(g row) unit.Length { return g.UOuter }),
		table.Length(u, "", "core", 3, func(g row) unit.Length { return g.Core }).NotZero(),
		table.Length(u, "", "core_standard_uncertainty", 3, func(g row) unit.Length { return g.UCore }).Known(hasCore),
		table.Words("", "core_shape", func(g row) string { return g.Shape.String() }).Known(hasCore),
		table.DensityU(u, "linear density", "linear_density", func(g row) unit.Uncertain[unit.LinearDensity] {
			return unit.Uncertain[unit.LinearDensity]{Value: g.LinearDensity, U: g.U}
		}),
		table.Percent("95 % ±", "linear_density_95_percent_interval_half_width", 1, func(g row) unit.Ratio { return unit.Ratio(g.Within95() / g.LinearDensity) }),
		table.Density("", "linear_density_95_percent_interval_half_width", 4, row.Within95),
		table.Number("", "standard_uncertainties_in_that_half_width", 2, row.Coverage95),
		table.Whole("", "readings", func(g row) int { return g.Readings }),
		table.Bool("", "construction_counted", func(g row) bool { return g.Built }),
		table.Values("flags", func(g row) any { return append([]string{}, g.Flags()...) }),
		table.Values("implied_density_g_per_cm3", func(g row) any { return g.Implied }),
		table.Words("", "implied_density_of", densityOf),
		table.Percent("", "packing", 1, func(g row) unit.Ratio { return g.Packing }).NotZero(),
		table.PercentU("deviation", "deviation", 1, func(g row) unit.Uncertain[unit.Ratio] {
			return unit.Uncertain[unit.Ratio]{Value: g.Judged.Deviation, U: g.Judged.U}
		}).Signed().Known(judged),
		table.Percent("", "deviation_limit", 1, func(g row) unit.Ratio { return g.Judged.Limit }).Known(judged),
		table.Force(u, "", "stiffness_ea", func(g row) unit.Force { return g.EA }).NotZero(),
		table.Force(u, "", "least_breaking_load", breakingLoad).NotZero(),
		table.Length(u, "", "length_for_1_percent_standard_uncertainty", 0, in.forOnePercent),
		table.Values("slips_that_would_not_show", func(g row) any { return append([]string{}, unseen[g.Label]...) }),
		table.Values("notes", func(g row) any { return append([]string{}, g.Notes...) }),
		table.Values("readings_in_full", func(g row) any { return in.readingTable(g) }),
	)
}

// flagNotes name the gauges with a flag that the name of a gauge does not carry:
// "Core unknown: w36 and w46."
func flagNotes(list []gauges.Gauge) []string {
	var flags []shared
	var out lines
	for _, g := range list {
		for _, f := range g.Flags() {
			if !slices.Contains([]string{"estimated", "suspect", "readings disagree"}, f) {
				flags = share(flags, f, g.Label)
			}
		}
	}
	for _, f := range flags {
		out.say("%s: %s.", capital(f.text), listed(f.by))
	}
	return out
}

// forOnePercent is the length that gives a new weighing a standard uncertainty of
// 1 % with the build's tools.
func (in *Input) forOnePercent(g gauges.Gauge) unit.Length {
	return fit.ShortestPiece(g.LinearDensity, unit.Percent(1), in.Run.Build.Measuring)
}

// breakingLoad is the least that the core bears, 0 not known.
func breakingLoad(g gauges.Gauge) unit.Force {
	w := choice.WireOf(g)
	return unit.Force(w.Strength * w.CoreArea)
}

// densityOf says of what the implied density is.
func densityOf(g gauges.Gauge) string {
	switch {
	case g.IsPlain():
		return "wire"
	case g.Core > 0 && g.DensityKgM3 > 0:
		return "wrap"
	}
	return "whole string"
}

// oneReading is a reading turned into a linear density.
type oneReading struct {
	reading.Reading
	density unit.Uncertain[unit.LinearDensity]
	mostly  string // the input that adds most to the uncertainty
}

func (in *Input) oneReading(r reading.Reading, g gauges.Gauge) oneReading {
	v, components := in.Run.Build.Measuring.Value(r, g.EA, g.EI)
	u, most, out := 0.0, 0.0, oneReading{Reading: r}
	for _, c := range components {
		u = math.Hypot(u, c.RelU)
		if a := math.Abs(c.RelU); a > most {
			most, out.mostly = a, c.Name
		}
	}
	out.density = unit.Uncertain[unit.LinearDensity]{Value: unit.LinearDensity(v.W), U: unit.LinearDensity(v.W * u)}
	return out
}

// readingTable lists every reading of a gauge.
func (in *Input) readingTable(g gauges.Gauge) *table.Table {
	u := in.Units.Decimal()
	var rows []oneReading
	for _, r := range g.Rows {
		rows = append(rows, in.oneReading(r, g))
	}
	isHung := func(r oneReading) bool { return r.Kind == reading.Hung }
	return table.Of("readings", "Readings of "+g.Label, rows,
		table.Whole("line", "line", func(r oneReading) int { return r.Place.Line }),
		table.Words("kind", "kind", func(r oneReading) string { return r.Kind.String() }),
		table.Whole("pieces", "pieces", func(r oneReading) int { return r.NumPieces() }).Known(func(r oneReading) bool { return !isHung(r) }),
		table.Length(u, "", "length", 1, func(r oneReading) unit.Length { return r.Length + r.Speaking }), // one of them is 0
		table.Words("length", "", func(r oneReading) string { return r.LengthText() }),
		table.Mass("", "mass", 3, func(r oneReading) unit.Mass { return r.Mass + r.HungMass }), // one of them is 0
		table.Words("mass", "", func(r oneReading) string { return r.MassText() }),
		table.Frequency("pitch", "pitch", 2, func(r oneReading) unit.Frequency { return r.Pitch }).Known(isHung).When(slices.ContainsFunc(rows, isHung)),
		table.DensityU(u, "linear density", "linear_density", func(r oneReading) unit.Uncertain[unit.LinearDensity] { return r.density }),
		table.Percent("from the gauge's", "deviation_from_the_gauge", 1, func(r oneReading) unit.Ratio {
			return unit.Ratio(r.density.Value/g.LinearDensity) - 1
		}).Signed(),
		table.Words("mostly uncertain through", "mostly_uncertain_through", func(r oneReading) string { return r.mostly }),
		table.Words("date", "date", func(r oneReading) string { return r.Date }),
		table.Words("remark", "remark", func(r oneReading) string { return r.Remark }),
	)
}
