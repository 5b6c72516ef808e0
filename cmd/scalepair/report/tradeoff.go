package report

import (
	"strings"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension/choice"
)

// pairColumns say of a pair what every list of pairs does.
func pairColumns[T any](u table.Units, of func(T) choice.Pair) []table.Column[T] {
	return []table.Column[T]{
		table.Length(u, "difference", "", scaleDecimals, func(t T) unit.Length { return of(t).Difference }),
		table.Length(u, "bass", "", scaleDecimals, func(t T) unit.Length { return of(t).Bass }),
		table.Length(u, "treble", "", scaleDecimals, func(t T) unit.Length { return of(t).Treble }),
		table.Percent("feel error", "", 1, func(t T) unit.Ratio { return of(t).Error }),
		table.Cents("inharmonicity", "", 1, func(t T) unit.Cents { return of(t).Inharmonicity }).Known(func(t T) bool { return of(t).Inharmonicity > 0 }),
		table.Angle("saddle slant", "", func(t T) unit.Angle { return of(t).SaddleSlant }),
	}
}

// tradeOffTable is the trade-off between difference and the lowest string.
func (a *Advice) tradeOffTable() *table.Table {
	in, u := a.in, a.in.Units
	return table.Of("trade-off", "What a longer bass costs in difference; every row feels as good as the best", a.TradeOff,
		append(pairColumns(u, func(s StepOf) choice.Pair { return s.Pair }),
			table.Cents("change", "", 1, func(s StepOf) unit.Cents { return s.MoreInharmonicity }).Signed().Known(func(s StepOf) bool { return s.Inharmonicity > 0 }),
			table.Words("bass as good "+u.Length.Symbol(), "", in.bassRange),
			table.Whole("worst string", "", func(s StepOf) int { return s.WorstString }).Known(func(s StepOf) bool { return s.WorstString > 0 }),
			table.Angle("nut slant", "", func(s StepOf) unit.Angle { return s.NutSlant }),
			table.Angle("last fret", "", func(s StepOf) unit.Angle { return s.LastFretSlant }),
			table.Length(u, "nut to fret 1", "", scaleDecimals, func(s StepOf) unit.Length { return s.NutToFret1 }),
			table.Words("blanks that fit", "", func(s StepOf) string { return fitList(s.Fits, s.nearly) }).When(len(in.Plan.Request().Blanks) > 0),
		)...,
	).Note("Slants in degrees, positive where the bass end is nearer the bridge. Change: of the inharmonicity, from the first row. Bass as good: the bass lengths that are as good at this difference.")
}

func (in *Input) bassRange(s StepOf) string {
	if s.BassFrom == s.BassTo {
		return in.Units.Len(s.BassFrom, 0)
	}
	return in.Units.Len(s.BassFrom, 0) + " to " + in.Units.Len(s.BassTo, 0)
}

// boardFits judges the blanks on offer for a pair's board.
func (in *Input) boardFits(p choice.Pair) []fan.Fit {
	req := in.Plan.Request()
	return fan.Rectangle{Length: p.BlankLength, Width: p.BlankWidth, Allowance: req.Neck.SawAllowance}.Fit(req.Blanks)
}

// fitting names the blanks that fit, and those that nearly do with what they
// lack.
func (in *Input) fitting(p choice.Pair) (fit, nearly []string) {
	fit = []string{}
	for _, f := range in.boardFits(p) {
		switch {
		case f.Fits:
			fit = append(fit, f.Blank.Name)
		case f.Near:
			nearly = append(nearly, f.Blank.Name+" ("+in.lacks(f)+")")
		}
	}
	return fit, nearly
}

// boardWords say which blanks on offer fit, or that none does.
func (in *Input) boardWords(p choice.Pair) string {
	fit, nearly := in.fitting(p)
	switch {
	case len(in.Plan.Request().Blanks) == 0:
		return ""
	case fitList(fit, nearly) == none:
		return "; none on offer fits"
	}
	return "; fits: " + fitList(fit, nearly)
}

// fitList names the blanks that fit, and those that nearly do.
func fitList(fit, nearly []string) string {
	text := listed(fit)
	if nearly != nil {
		text = strings.TrimPrefix(text+"; nearly: "+listed(nearly), "; ")
	}
	return orNone(text)
}

// lacks says what a blank misses.
func (in *Input) lacks(f fan.Fit) string {
	text := ""
	if f.SpareLength < 0 {
		text = in.short(-f.SpareLength) + " short"
	}
	if f.SpareWidth < 0 {
		if text != "" {
			text += " and "
		}
		text += in.short(-f.SpareWidth) + " narrow"
	}
	return text
}
