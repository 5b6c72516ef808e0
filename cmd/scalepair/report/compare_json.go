package report

import (
	"scalepair/tension/choice"
)

// SwapJSON is one string with another gauge.
type SwapJSON struct {
	String           int       `json:"string"`
	From             string    `json:"from_gauge"`
	To               string    `json:"to_gauge"`
	ToFlags          []string  `json:"to_gauge_flags,omitempty"`
	TensionN         []float64 `json:"tension_then_n"` // by tuning
	OffTargetPercent []float64 `json:"off_target_then_percent,omitempty"`
}

// WayJSON is the best set with so many swaps.
type WayJSON struct {
	Swaps              int        `json:"swaps"`
	Strings            []SwapJSON `json:"strings"`
	TensionMisfit      float64    `json:"tension_misfit_then_percent"`
	BendingForceMisfit float64    `json:"bending_force_misfit_then_percent"`
	Within             bool       `json:"within"`
}

// ColumnJSON is one column: what it is, string by string, and what would have
// to change.
type ColumnJSON struct {
	Column          string      `json:"column"`
	Suggested       bool        `json:"set_is_suggested"`
	Why             string      `json:"no_set,omitempty"`
	ChangeFromFirst *float64    `json:"change_from_first_column_percent,omitempty"`
	Detail          *DetailJSON `json:"detail,omitempty"`
	Changes         []WayJSON   `json:"what_would_have_to_change"`
}

// ComparisonJSON is all that compare found.
type ComparisonJSON struct {
	Build   string       `json:"build"`
	Within  float64      `json:"within_percent"`
	Columns []ColumnJSON `json:"columns"`
}

// CompareValues gives what compare prints as JSON.
func CompareValues(in *Input, cmp *Comparison) ComparisonJSON {
	out := ComparisonJSON{Build: in.Job.Build.Name, Within: cmp.Within}
	names := in.columnNames(cmp.Asked)
	first := 0.0
	for i, one := range cmp.Compared {
		c := ColumnJSON{Column: names[i], Suggested: one.Suggested, Changes: []WayJSON{}}
		own := in.inColumn(cmp, i)
		if one.Detail == nil {
			c.Why = reasonWords[one.None.Reason]
			out.Columns = append(out.Columns, c)
			continue
		}
		total := one.Detail.Totals[0].TensionN
		if first == 0 {
			first = total
		}
		c.ChangeFromFirst = ptr(100 * (total/first - 1))
		c.Detail = ptr(DetailValues(own, one.Detail))
		for i := range c.Detail.Tunings {
			c.Detail.Tunings[i].ChangeFromFirst = ptr(100 * (c.Detail.Tunings[i].TotalN/first - 1))
		}
		for _, w := range one.Ways {
			c.Changes = append(c.Changes, own.wayValues(w))
		}
		out.Columns = append(out.Columns, c)
	}
	return out
}

func (in *Input) wayValues(w choice.Way) WayJSON {
	out := WayJSON{Swaps: len(w.Swaps), Strings: []SwapJSON{}, TensionMisfit: w.Detail.TensionMisfit,
		BendingForceMisfit: w.Detail.BendingForceMisfit, Within: w.Within}
	for _, s := range w.Swaps {
		from, to := in.Plan.Stock()[s.From], in.Plan.Stock()[s.To]
		one := SwapJSON{String: s.String, From: from.Label, To: to.Label, ToFlags: to.Flags()}
		d := w.Detail.Strings[s.String-1]
		for _, cd := range d.Cases {
			one.TensionN = append(one.TensionN, cd.TensionN)
			if d.TargetN > 0 {
				one.OffTargetPercent = append(one.OffTargetPercent, 100*(cd.TensionN/d.TargetN-1))
			}
		}
		out.Strings = append(out.Strings, one)
	}
	return out
}
