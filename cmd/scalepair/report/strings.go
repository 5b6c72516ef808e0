package report

import (
	"errors"
	"fmt"
	"strconv"

	"scalepair/cmd/scalepair/show"
	"scalepair/tension"
	"scalepair/tension/choice"
)

// stringTable prints one tuning of a detail, string by string.
func (in *Input) stringTable(r *show.Report, name, caption string, d *choice.Detail, c int) {
	frets := in.Plan.Request().Feel.BendFrets
	hasTarget := d.Strings[0].TargetN > 0
	hasBends := len(in.Plan.BendStrings()) > 0
	u := in.Units
	columns := []show.Column{show.Figures("string"), show.Words("note"), show.Figures(u.HeadLen("own length")),
		show.Words("gauge"), show.Figures(u.HeadForce("tension"))}
	if hasTarget {
		columns = append(columns, show.Figures("off target %"), show.Figures(u.HeadForce("wanted")).Later(4))
	}
	if hasBends {
		for _, n := range frets {
			fret := strconv.FormatFloat(n, 'f', -1, 64)
			columns = append(columns, show.Figures(u.HeadForce("bending force")+" at fret "+fret).Later(2), show.Figures(u.HeadLen("travel")+" at fret "+fret).Later(3))
		}
	}
	columns = append(columns, show.Figures("breaking share open %").Later(1))
	if hasBends {
		columns = append(columns, show.Figures("breaking share bent %").Later(1))
	}
	columns = append(columns, show.Figures("inharmonicity cents").Later(1))
	t := r.Table(name, caption, columns...)
	for _, s := range d.Strings {
		t.Row(in.stringRow(&s, c, hasTarget, hasBends, len(frets))...)
	}
	total := []string{"all", "", "", "", u.ForceU(d.Totals[c].TensionN, d.Totals[c].UTensionN)}
	t.Total(total...)
	if c+1 < len(d.Totals) {
		in.tuningNotes(t, d, c)
		return
	}
	in.stringNotes(t, d, c)
}

func (in *Input) stringRow(s *choice.StringDetail, c int, hasTarget, hasBends bool, frets int) []string {
	cd, u := &s.Cases[c], in.Units
	row := []string{strconv.Itoa(s.Number), in.note(c, s.Number), u.LenM(s.LengthM, scaleDecimals),
		in.gauge(s.Gauge), u.ForceU(cd.TensionN, cd.UTensionN)}
	if hasTarget {
		row = append(row, offTarget(cd.TensionN, s.TargetN), in.wanted(s.TargetN))
	}
	mostBent := 0.0
	if hasBends {
		for k := range frets {
			bendingForce, travel := none, none
			if k < len(cd.Bends) && cd.Bends[k].Err == nil {
				bendingForce, travel = u.ForceN(cd.Bends[k].Bend.BendingForceN), u.LenM(cd.Bends[k].Bend.BendDistanceM, scaleDecimals)
				mostBent = max(mostBent, cd.Bends[k].Share)
			}
			row = append(row, bendingForce, travel)
		}
	}
	row = append(row, share(cd.ShareOpen))
	if hasBends {
		row = append(row, share(mostBent))
	}
	return append(row, in.rise(s.Gauge, cd.InharmonicityCents))
}

// offTarget is the tension over its target in percent, signed.
func offTarget(tensionN, targetN float64) string {
	if targetN == 0 {
		return none
	}
	return show.SignedPercent(tensionN/targetN-1, 1)
}

func (in *Input) wanted(targetN float64) string {
	if targetN == 0 {
		return none
	}
	return in.Units.ForceN(targetN)
}

// share prints a breaking share; one beyond 1 says what that means, also where
// the cautions are not printed.
func share(s float64) string {
	switch {
	case s == 0:
		return none
	case s >= 1:
		return show.Percent(s, 0) + " breaks"
	}
	return show.Percent(s, 0)
}

// rise prints an inharmonicity; a wound string's is a lower bound.
func (in *Input) rise(g int, cents float64) string {
	switch {
	case cents == 0:
		return none
	case in.Plan.Stock()[g].Family != "plain":
		return "≥ " + show.Cents(cents)
	}
	return show.Cents(cents)
}

// stringNotes says what the table's empty cells and signs mean.
func (in *Input) stringNotes(t *show.Table, d *choice.Detail, c int) {
	if hasUncertainty(d, c) {
		t.Note("± is one standard uncertainty, from the readings of the gauge. Own length is along the string, from the nut to the theoretical saddle line; compensation is not added.")
	} else {
		t.Note("Own length is along the string, from the nut to the theoretical saddle line; compensation is not added.")
	}
	t.Note("Inharmonicity: how far the tenth partial stands above ten times the pitch.")
	seen := map[string]bool{}
	for _, s := range d.Strings {
		g := in.Plan.Stock()[s.Gauge]
		if g.Core == 0 {
			t.Note("String %d: the core of %s is not known, so stretch is not counted, and no breaking share, bend or inharmonicity can be told.", s.Number, g.Label)
		}
		if g.Family != "plain" && g.Core > 0 && !seen["wound"] {
			seen["wound"] = true
			t.Note("≥: the rise of a wound string is a lower bound, and is not to be compared with a plain string's.")
		}
		if in.Plan.OutsideTable(s.Gauge) && !seen["outside"+g.Label] {
			seen["outside"+g.Label] = true
			t.Note("%s: the core's diameter lies outside the table of wire strength, whose end was continued.", g.Label)
		}
	}
	in.bendNote(t)
	in.tuningNotes(t, d, c)
}

// tuningNotes says what holds for one tuning: bends that cannot be made, and a
// capo.
func (in *Input) tuningNotes(t *show.Table, d *choice.Detail, c int) {
	for _, s := range d.Strings {
		for _, b := range s.Cases[c].Bends {
			if b.Err != nil && !errors.Is(b.Err, tension.ErrNoStiffness) && !errors.Is(b.Err, choice.ErrBehindCapo) {
				t.Note("String %d, fret %s: %v.", s.Number, strconv.FormatFloat(b.Fret, 'f', -1, 64), b.Err)
			}
		}
	}
	capoNote(t, d, c, in.Plan.Request().Cases[c].CapoFret)
}

func hasUncertainty(d *choice.Detail, c int) bool {
	for _, s := range d.Strings {
		if s.Cases[c].UTensionN > 0 {
			return true
		}
	}
	return false
}

// bendNote says what bending force and travel mean, and which inputs are assumed.
func (in *Input) bendNote(t *show.Table) {
	req := in.Plan.Request()
	if len(in.Plan.BendStrings()) == 0 {
		return
	}
	text := fmt.Sprintf("Bending force and travel: a bend of %s cents by one finger at the fret, without friction at nut and saddle.",
		strconv.FormatFloat(req.Feel.BendCents, 'f', -1, 64))
	if req.TailsAssumed {
		text += " String beyond nut and saddle is assumed (tails): 60 mm and 25 mm unless given."
	}
	t.Note("%s", text)
}

// totals says how hard the strings pull together.
func (in *Input) totals(r *show.Report, d *choice.Detail, c int) {
	t := d.Totals[c]
	text := fmt.Sprintf("Total tension %s; bass half %s, treble half %s.",
		in.Units.ForceTextU(t.TensionN, t.UTensionN), in.Units.ForceText(t.BassHalfN), in.Units.ForceText(t.TrebleHalfN))
	if change, ok := totalChange(d, c); ok {
		text += fmt.Sprintf(" The reference instrument has %s, so the change is %s %%.",
			in.Units.ForceText(d.ReferenceTotalN), show.SignedPercent(change, 1))
	}
	r.Text(text)
}
