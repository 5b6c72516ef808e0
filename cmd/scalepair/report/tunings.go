package report

import (
	"strconv"

	"scalepair/cmd/scalepair/show"
	"scalepair/tension/choice"
)

// tuningsTogether sets the tunings that one set must serve side by side: as a
// whole, and string by string.
func (in *Input) tuningsTogether(r *show.Report, d *choice.Detail) {
	req := in.Plan.Request()
	columns := []show.Column{show.Words("tuning"), show.Figures(in.Units.HeadForce("all strings together")), show.Figures("change from the reference %")}
	bendingForce := in.Plan.HasTerm(choice.BendingForceTerm)
	columns = append(columns, show.Figures("tension misfit %"))
	if bendingForce {
		columns = append(columns, show.Figures("bending force misfit %"))
	}
	t := r.Table("tunings", "One set in all tunings", columns...)
	for c, one := range req.Cases {
		total := d.Totals[c]
		row := []string{one.Name, in.Units.ForceU(total.TensionN, total.UTensionN), none, show.Fixed(total.TensionMisfit, 2)}
		if change, ok := totalChange(d, c); ok {
			row[2] = show.SignedPercent(change, 1)
		}
		if bendingForce {
			row = append(row, show.Fixed(total.BendingForceMisfit, 2))
		}
		t.Row(row...)
	}
	in.tuningsStrings(r, d)
}

// tuningsStrings prints every string's tension in every tuning; uncertainties
// follow tuning by tuning.
func (in *Input) tuningsStrings(r *show.Report, d *choice.Detail) {
	cases := in.Plan.Request().Cases
	target := d.Strings[0].TargetN > 0
	columns := []show.Column{show.Figures("string"), show.Words("gauge")}
	for c, one := range cases {
		columns = append(columns, show.Figures(in.Units.HeadForce(one.Name)).Later(c))
		if target {
			columns = append(columns, show.Figures(one.Name+" off target %").Later(c))
		}
	}
	t := r.Table("tensions", "Tension in every tuning", columns...)
	for _, s := range d.Strings {
		row := []string{strconv.Itoa(s.Number), in.gauge(s.Gauge)}
		for c := range cases {
			row = append(row, in.Units.ForceN(s.Cases[c].TensionN))
			if target {
				row = append(row, offTarget(s.Cases[c].TensionN, s.TargetN))
			}
		}
		t.Row(row...)
	}
}
