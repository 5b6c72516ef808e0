package report

import (
	"fmt"
	"slices"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/tension/choice"
)

// pairColumns say of a pair what every list of pairs does, beside the inharmonicity
// the gauge that it is of: another one may make it rise with the length.
func pairColumns[T any](u table.Units, of func(T) PairOf) []table.Column[T] {
	return []table.Column[T]{
		table.Length(u, "difference", "", scaleDecimals, func(t T) unit.Length { return of(t).Difference }),
		table.Length(u, "bass", "", scaleDecimals, func(t T) unit.Length { return of(t).Bass }),
		table.Length(u, "treble", "", scaleDecimals, func(t T) unit.Length { return of(t).Treble }),
		table.Percent("feel error", "", 1, func(t T) unit.Ratio { return of(t).Error }),
		table.Cents("inharmonicity", "", 1, func(t T) unit.Cents { return of(t).Inharmonicity }).NotZero().
			Beside("of gauge", func(t T) string { return of(t).Gauges[0] }),
		table.Angle("saddle slant", "", func(t T) unit.Angle { return of(t).SaddleSlant }),
	}
}

// tradeOffTable is the trade-off between difference and the lowest string.
func (a *Advice) tradeOffTable() *table.Table {
	in, u := a.in, a.in.Units
	title, note := "What a longer bass costs in difference", "Slants in degrees, positive where the bass end is nearer the bridge."
	if a.Pair.Inharmonicity > 0 {
		note += " Change: of the inharmonicity, from the first row."
	}
	if !a.NoneNear {
		title += "; every row feels as good as the best"
		note += " Bass as good: the bass lengths that are as good at this difference."
	}
	return table.Of("trade-off", title, a.TradeOff,
		slices.Concat([]table.Column[StepOf]{table.Words("pick", "", func(s StepOf) string { return s.Pick })}, pairColumns(u, func(s StepOf) PairOf { return s.PairOf }), []table.Column[StepOf]{
			table.Cents("change", "", 1, func(s StepOf) unit.Cents { return s.MoreInharmonicity }).Signed().Known(func(s StepOf) bool { return s.Inharmonicity > 0 }),
			table.Words("bass as good "+u.Length.Symbol(), "", func(s StepOf) string {
				return u.Len(s.BassFrom, scaleDecimals) + " to " + u.Len(s.BassTo, scaleDecimals)
			}).When(!a.NoneNear),
			table.Whole("worst string", "", func(s StepOf) int { return s.WorstString }).NotZero(),
			table.Angle("nut slant", "", func(s StepOf) unit.Angle { return s.NutSlant }),
			table.Angle("last fret", "", func(s StepOf) unit.Angle { return s.LastFretSlant }),
			table.Length(u, "nut to fret 1", "", scaleDecimals, func(s StepOf) unit.Length { return s.NutToFret1 }),
			table.Words("blanks", "", func(s StepOf) string { return in.fittingWords(s.Fitting) }).When(len(in.Plan.Request().Blanks) > 0),
		})...,
	).Note(note)
}

// pickAt names the picks that are this pair, "" for none.
func pickAt(r *choice.Result, p choice.Pair) string {
	var names []string
	for _, k := range r.Picks {
		if k.Bass == p.Bass && k.Treble == p.Treble {
			names = append(names, k.Kind.String())
		}
	}
	return listed(names)
}

// Fitting names the blanks that hold a board with its saw allowance, and those
// that hold it with less.
type Fitting struct {
	Fits   []string `json:"blanks_that_fit"`
	Nearly []Nearly `json:"blanks_that_nearly_fit"`
}

// Nearly is a blank that misses by less than the saw allowance; what it lacks is
// 0 or more.
type Nearly struct {
	Blank  string      `json:"blank"`
	Short  unit.Length `json:"short_mm"`
	Narrow unit.Length `json:"narrow_mm"`
}

func (in *Input) fitting(p choice.Pair) Fitting {
	out := Fitting{Fits: []string{}, Nearly: []Nearly{}}
	for _, f := range p.Blanks {
		switch {
		case f.Fits:
			out.Fits = append(out.Fits, f.Blank.Name)
		case f.Near:
			out.Nearly = append(out.Nearly, Nearly{f.Blank.Name, max(0, -f.SpareLength), max(0, -f.SpareWidth)})
		}
	}
	return out
}

// fittingWords name the blanks that fit, and those that nearly do with what they
// lack.
func (in *Input) fittingWords(f Fitting) string {
	text := "none fits"
	if len(f.Fits) > 0 {
		text = "fits: " + listed(f.Fits)
	}
	for _, n := range f.Nearly {
		text += fmt.Sprintf("; nearly: %s (%s)", n.Blank, in.lacks(n.Short, n.Narrow))
	}
	return text
}

// lacks says what a blank misses.
func (in *Input) lacks(short, narrow unit.Length) string {
	var words lines
	words.sayIf(short > 0, "%s short", in.fine().text(short))
	words.sayIf(narrow > 0, "%s narrow", in.fine().text(narrow))
	return listed(words)
}
