package report

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/tension"
	"scalepair/tension/choice"
)

// stringRow is one string of a detail in one tuning, which table columns take
// their values from.
type stringRow struct {
	in     *Input
	d      *choice.Detail
	c, i   int    // case, and string from 0
	column string // of a comparison
}

func (r stringRow) string() *choice.StringDetail { return &r.d.Strings[r.i] }
func (r stringRow) tuned() *choice.StringTuning  { return &r.string().Tunings[r.c] }
func (r stringRow) gauge() gauges.Gauge          { return r.in.Plan.Stock()[r.string().Gauge] }
func (r stringRow) wound() bool                  { return r.gauge().Family != gauges.Plain }
func (r stringRow) wanted() bool                 { return r.string().Target > 0 }
func (r stringRow) pulls() bool                  { return r.tuned().Tension.Value > 0 }
func (r stringRow) capo() bool                   { return r.in.Plan.Request().Cases[r.c].CapoFret > 0 }
func (r stringRow) compensated() bool            { return r.string().CompensationErr == nil }

// bent is the greatest share of the breaking strength in any of the string's
// bends, 0 where it is not bent.
func (r stringRow) bent() unit.Ratio {
	most := unit.Ratio(0)
	for _, b := range r.tuned().Bends {
		if b.Err == nil {
			most = max(most, b.Breaking)
		}
	}
	return most
}

// stringRows are the strings of a detail in one tuning, low string first.
func (in *Input) stringRows(d *choice.Detail, c int) []stringRow {
	out := make([]stringRow, len(d.Strings))
	for i := range d.Strings {
		out[len(out)-1-i] = stringRow{in: in, d: d, c: c, i: i}
	}
	return out
}

// breakingWords prints a share of the breaking strength; one beyond all of it
// says what that means, also where the cautions are not printed.
func breakingWords(r unit.Ratio) string {
	switch {
	case r == 0:
		return none
	case r >= 1:
		return unit.Fixed(r.Percent(), 0) + " breaks"
	}
	return unit.Fixed(r.Percent(), 0)
}

// look says how much of a string people see; programs get all of it.
type look int

const (
	whole    look = iota
	brief         // at first
	compared      // beside others
)

// stringColumns describe a string wherever strings are listed.
func (in *Input) stringColumns(at look) []table.Column[stringRow] {
	u := in.Units
	brief := at != whole
	return []table.Column[stringRow]{
		table.Whole("string", "string", func(r stringRow) int { return r.string().Number }),
		table.Words("note", "note", func(r stringRow) string { return r.in.note(r.c, r.string().Number) }),
		table.Frequency("", "frequency", 2, func(r stringRow) unit.Frequency { return r.tuned().Pitch }),
		table.Length(u, "scale length", "scale_length", scaleDecimals, func(r stringRow) unit.Length { return r.string().Length }).Hidden(brief),
		table.Frequency("", "sounding_frequency", 2, func(r stringRow) unit.Frequency { return r.tuned().SoundingPitch }).Known(stringRow.capo),
		table.Length(u, "", "sounding_length", 1, func(r stringRow) unit.Length { return r.tuned().Sounding }).Known(stringRow.capo),
		table.Words("gauge", "gauge", func(r stringRow) string { return r.gauge().Label }).As(func(r stringRow) string { return marked(r.gauge()) }),
		table.Values("gauge_flags", func(r stringRow) any { return append([]string{}, r.gauge().Flags()...) }),
		table.ForceU(u, "tension", "tension", func(r stringRow) unit.Uncertain[unit.Force] { return r.tuned().Tension }).NotZero(),
		table.Force(u, "wanted", "wanted_tension", func(r stringRow) unit.Force { return r.string().Target }).NotZero().Hidden(brief),
		table.Percent("deviation", "tension_deviation", 1, func(r stringRow) unit.Ratio { return unit.Ratio(r.tuned().Tension.Value/r.string().Target - 1) }).
			Signed().Known(func(r stringRow) bool { return r.wanted() && r.pulls() }),
		table.Density("", "wanted_linear_density", 3, func(r stringRow) unit.LinearDensity { return r.string().Wanted }).Known(stringRow.wanted),
		table.Percent("", "feel_error", 1, func(r stringRow) unit.Ratio { return r.string().Error }),
		table.Percent("", "breaking_strength", 0, func(r stringRow) unit.Ratio { return r.tuned().Breaking }).NotZero(),
		table.Percent("", "breaking_strength_bent", 0, stringRow.bent).NotZero(),
		table.Words("breaking %, open / bent", "", func(r stringRow) string {
			if r.bent() == 0 {
				return breakingWords(r.tuned().Breaking)
			}
			return breakingWords(r.tuned().Breaking) + " / " + breakingWords(r.bent())
		}),
		table.Cents("inharmonicity", "inharmonicity", 1, func(r stringRow) unit.Cents { return r.tuned().Inharmonicity }).
			As(func(r stringRow) string { return atLeast(r.wound(), unit.Fixed(r.tuned().Inharmonicity.Value(), 1)) }).
			NotZero().Hidden(at == compared),
		table.Bool("", "inharmonicity_is_lower_bound", stringRow.wound),
		table.Words("compensation "+u.Length.Symbol(), "", func(r stringRow) string {
			return u.Len(r.tuned().Compensation.Lo, scaleDecimals) + " to " + u.Len(r.tuned().Compensation.Hi, scaleDecimals)
		}).Known(stringRow.compensated).Hidden(brief),
		table.Length(u, "", "compensation_least", 2, func(r stringRow) unit.Length { return r.tuned().Compensation.Lo }).Known(stringRow.compensated),
		table.Length(u, "", "compensation_most", 2, func(r stringRow) unit.Length { return r.tuned().Compensation.Hi }).Known(stringRow.compensated),
		table.Values("bends", func(r stringRow) any { return in.bendTable([]stringRow{r}, false) }),
	}
}

// atLeast marks a lower bound.
func atLeast(bound bool, text string) string {
	if bound {
		return "≥ " + text
	}
	return text
}

// stringTable is the table of the strings in one tuning.
func (in *Input) stringTable(name, title string, d *choice.Detail, c int, at look) *table.Table {
	t := table.Of(name, title, in.stringRows(d, c), in.stringColumns(at)...)
	if total := d.Totals[c].Tension; total.Value > 0 {
		t.Total(map[string]string{"string": "all", "tension": strings.TrimSuffix(in.Units.ForceUText(total), " "+in.Units.Force.Symbol())})
	}
	return t.Note(in.stringNotes(d, c, at)...)
}

// bendRow is one bend of one string.
type bendRow struct {
	stringRow
	choice.BendDetail
}

// bendTable lists the bends of some strings; whole adds which string it is.
func (in *Input) bendTable(rows []stringRow, whole bool) *table.Table {
	var bends []bendRow
	for _, r := range rows {
		for _, b := range r.tuned().Bends {
			bends = append(bends, bendRow{r, b})
		}
	}
	u := in.Units
	made := func(r bendRow) bool { return r.Err == nil }
	return table.Of("bends", "Bends of "+trim(in.Plan.Request().Feel.Bend.Value())+" cents", bends,
		table.Whole("string", "string", func(r bendRow) int { return r.string().Number }).When(whole),
		table.Words("gauge", "gauge", func(r bendRow) string { return marked(r.gauge()) }).When(whole),
		table.Number("fret", "fret", 0, func(r bendRow) float64 { return r.Fret }).As(func(r bendRow) string { return trim(r.Fret) }),
		table.Force(u, "bending force", "bending_force", func(r bendRow) unit.Force { return r.Bend.Force }).Known(made),
		table.Force(u, "wanted", "wanted_bending_force", func(r bendRow) unit.Force { return r.WantedForce }).NotZero(),
		table.Length(u, "bend distance", "bend_distance", scaleDecimals, func(r bendRow) unit.Length { return r.Bend.Distance }).Known(made),
		table.Length(u, "wanted", "wanted_bend_distance", scaleDecimals, func(r bendRow) unit.Length { return r.WantedDistance }).NotZero(),
		table.Force(u, "", "tension", func(r bendRow) unit.Force { return r.Bend.Tension }).Known(made),
		table.Percent("of breaking", "breaking_strength", 0, func(r bendRow) unit.Ratio { return r.Breaking }).As(func(r bendRow) string { return breakingWords(r.Breaking) }).Known(made).NotZero(),
		table.Words("", "not_computed", func(r bendRow) string { return r.Err.Error() }).Known(func(r bendRow) bool { return !made(r) }),
	)
}

// stringNotes say what signs and empty cells of the table of strings mean; of
// several tunings, but for the capo, below the last.
func (in *Input) stringNotes(d *choice.Detail, c int, at look) []string {
	req := in.Plan.Request()
	var out lines
	if c+1 == len(d.Totals) || at == compared {
		rows := in.stringRows(d, c)
		out.sayIf(slices.ContainsFunc(rows, func(r stringRow) bool { return r.tuned().Tension.U > 0 }), "± is one standard uncertainty, from the readings, one printed step where it is less; the model adds up to 1 %% of tension, most of which cancels between pairs.")
		out.sayIf(at != compared && slices.ContainsFunc(rows, func(r stringRow) bool { return r.wound() && r.tuned().Inharmonicity > 0 }), "≥ is a lower bound, not to be compared with a plain string's.")
		unknown := in.labelled(d.Gauges, func(g gauges.Gauge) bool { return g.Core == 0 })
		out.sayIf(unknown != nil, "Core not known: %s, so stretch is not counted, breaking strength is not judged, and bends, inharmonicity and compensation stay empty.", listed(unknown))
		outside := in.labelled(d.Gauges, func(g gauges.Gauge) bool { return choice.WireOf(g).OutsideTable })
		if at == whole {
			out.sayIf(outside != nil, "%s: the core lies outside the table of wire strength, whose end was continued.", listed(outside))
			out.say("Scale length: along the string, nut to theoretical saddle line; compensation is not added. Inharmonicity: how far the tenth partial stands above ten times the pitch.")
			out.sayIf(req.ActionAssumed && slices.ContainsFunc(rows, stringRow.compensated), "%s", in.assumedAction())
		}
	}
	capo := req.Cases[c].CapoFret
	out.sayIf(capo > 0, "Capo at fret %d: tension is that of the open string; inharmonicity and bends are those from the capo on, and a bend that it leaves no room for stays empty. Frets count from the nut.", capo)
	return out
}

// assumedTails says how much string is taken to lie beyond nut and saddle.
func (in *Input) assumedTails() string {
	return fmt.Sprintf("The string beyond nut and saddle is assumed, %s and %s unless given ([tails]).", in.fine().text(build.AssumedNutTail), in.fine().text(build.AssumedSaddleTail))
}

// assumedAction says how high the strings are taken to lie.
func (in *Input) assumedAction() string {
	h := in.Plan.Request().Action
	return fmt.Sprintf("Compensation: the action over fret 12 is assumed, %s treble to %s bass.", in.fine().text(h[0]), in.fine().text(h[len(h)-1]))
}

// bendNotes say what a bend is, what of it is assumed, and which cannot be made.
func (in *Input) bendNotes(d *choice.Detail, c int) []string {
	var out lines
	last := c+1 == len(d.Totals)
	out.sayIf(last, "One finger at the fret, without friction at nut and saddle, which adds up to 20 %%.")
	out.sayIf(last && in.Plan.Request().TailsAssumed, "%s", in.assumedTails())
	for _, r := range in.stringRows(d, c) {
		for _, b := range r.tuned().Bends {
			out.sayIf(b.Err != nil && !errors.Is(b.Err, tension.ErrNoStiffness) && !errors.Is(b.Err, choice.ErrBehindCapo), "String %d, fret %s: %v.", r.string().Number, trim(b.Fret), b.Err)
		}
	}
	return out
}
