package report

import (
	"strconv"

	"scalepair/cmd/scalepair/chart"
	"scalepair/cmd/scalepair/show"
	"scalepair/data/unit"
	"scalepair/tension/choice"
)

// strings prints the tensions of every tuning, as bars and in numbers.
func (c *composer) strings() {
	d := c.f.SetOut.Detail
	c.add(func(r *show.Report) {
		r.Heading("Tension of the strings")
		if d == nil {
			r.Text("No set of gauges for this pair keeps the limits, so there are no tensions, no bending force and no compensation on this sheet.")
			return
		}
		for i, cs := range c.Plan.Request().Cases {
			caption := "Bars: tension of every string. Whiskers: two standard uncertainties, from your weighing."
			if d.Strings[0].TargetN > 0 {
				caption += " Upright ticks: the tension that was wanted; beside them how far off it is."
			}
			title := "Tension, " + c.Units.Force.Symbol()
			if len(c.Plan.Request().Cases) > 1 {
				title += ", " + cs.Name
			}
			r.Figure(caption, c.tensionBars(title, d, i))
			c.tensionTable(r, d, i)
			c.totals(r, d, i)
		}
	})
}

func forceIn(u show.Units, n float64) float64 { return u.Force.Value(unit.Force(n)) }

func (c *composer) tensionBars(title string, d *choice.Detail, i int) string {
	bars := chart.Bars{Title: title, XLabel: c.Units.HeadForce("tension")}
	for n := range d.Strings {
		s := &d.Strings[n]
		bar := chart.Bar{
			Label: strconv.Itoa(s.Number) + " · " + c.note(i, s.Number) + " · " + c.gauge(s.Gauge),
			Value: forceIn(c.Units, s.Cases[i].TensionN), U: forceIn(c.Units, s.Cases[i].UTensionN), Target: forceIn(c.Units, s.TargetN),
		}
		if s.TargetN > 0 {
			bar.Note = offTarget(s.Cases[i].TensionN, s.TargetN) + " %"
		}
		bars.Bars = append(bars.Bars, bar)
	}
	return bars.SVG()
}

// tensionTable prints the strings without their bends.
func (c *composer) tensionTable(r *show.Report, d *choice.Detail, i int) {
	u, target := c.Units, d.Strings[0].TargetN > 0
	bent := len(c.Plan.BendStrings()) > 0
	columns := []show.Column{show.Figures("string"), show.Words("note"), show.Figures(u.HeadLen("own length")), show.Words("gauge"), show.Figures(u.HeadForce("tension"))}
	if target {
		columns = append(columns, show.Figures(u.HeadForce("wanted")))
	}
	columns = append(columns, show.Figures("breaking share open %"))
	if bent {
		columns = append(columns, show.Figures("bent %"))
	}
	t := r.Table("strings-"+strconv.Itoa(i+1), "", append(columns, show.Figures("inharmonicity cents"))...)
	for n := range d.Strings {
		s := &d.Strings[n]
		cd := s.Cases[i]
		row := []string{strconv.Itoa(s.Number), c.note(i, s.Number), u.LenM(s.LengthM, scaleDecimals), c.gauge(s.Gauge), u.ForceU(cd.TensionN, cd.UTensionN)}
		if target {
			row = append(row, u.ForceN(s.TargetN))
		}
		row = append(row, share(cd.ShareOpen))
		if bent {
			row = append(row, share(mostBent(cd)))
		}
		t.Row(append(row, c.rise(s.Gauge, cd.InharmonicityCents))...)
	}
	total := []string{"all", "", "", "", u.ForceU(d.Totals[i].TensionN, d.Totals[i].UTensionN)}
	t.Total(total...)
	c.stringNotes(t, d, i)
}

// mostBent is the greatest breaking share of a string's bends, 0 for none.
func mostBent(cd choice.CaseDetail) float64 {
	most := 0.0
	for _, b := range cd.Bends {
		if b.Err == nil {
			most = max(most, b.Share)
		}
	}
	return most
}

// bends prints bending force and travel of every bend, as bars and in numbers.
func (c *composer) bends() {
	d := c.f.SetOut.Detail
	if d == nil || len(c.Plan.BendStrings()) == 0 || len(c.Plan.Request().Feel.BendFrets) == 0 {
		return
	}
	c.add(func(r *show.Report) {
		r.Heading("Bending force and travel of bends")
		for i, cs := range c.Plan.Request().Cases {
			name := ""
			if len(c.Plan.Request().Cases) > 1 {
				name = cs.Name
			}
			c.bendsOf(r, d, i, name)
		}
	})
}

func (c *composer) bendsOf(r *show.Report, d *choice.Detail, i int, name string) {
	u := c.Units
	bars := chart.Bars{Title: "Bending force of a bend by " + strconv.FormatFloat(c.Plan.Request().Feel.BendCents, 'f', -1, 64) + " cents", XLabel: u.HeadForce("bending force")}
	if name != "" {
		bars.Title += ", " + name
	}
	t := &show.Table{Name: "bends-" + strconv.Itoa(i+1), Columns: []show.Column{show.Figures("string"), show.Words("note"), show.Words("gauge"), show.Figures("fret"),
		show.Figures(u.HeadForce("bending force")), show.Figures(u.HeadForce("wanted")), show.Figures(u.HeadLen("travel")), show.Figures("breaking share bent %")}}
	for n := range d.Strings {
		s := &d.Strings[n]
		for _, b := range s.Cases[i].Bends {
			fret := strconv.FormatFloat(b.Fret, 'f', -1, 64)
			row := []string{strconv.Itoa(s.Number), c.note(i, s.Number), c.gauge(s.Gauge), fret, none, none, none, none}
			if b.TargetN > 0 {
				row[5] = u.ForceN(b.TargetN)
			}
			if b.Err == nil {
				row[4], row[6], row[7] = u.ForceN(b.Bend.BendingForceN), u.LenM(b.Bend.BendDistanceM, scaleDecimals), share(b.Share)
				bars.Bars = append(bars.Bars, chart.Bar{
					Label: strconv.Itoa(s.Number) + " · " + c.gauge(s.Gauge) + " · fret " + fret, Value: forceIn(u, b.Bend.BendingForceN),
					Target: forceIn(u, b.TargetN), Note: "travel " + row[6] + " " + u.Length.Symbol(),
				})
			}
			t.Row(row...)
		}
	}
	if len(bars.Bars) > 0 {
		r.Figure("Bars: sideways force of the finger. Upright ticks: the bending force that was wanted. Behind them how far the finger moves.", bars.SVG())
	}
	c.bendNote(t)
	r.Blocks = append(r.Blocks, t)
}
