package report

import (
	"strconv"

	"scalepair/cmd/scalepair/show"
)

// sideBySide prints the tensions alone, a column each.
func (in *Input) sideBySide(r *show.Report, views []view) {
	columns := []show.Column{show.Figures("string")}
	for i, v := range views {
		columns = append(columns, show.Figures(v.name).Later(i))
	}
	t := r.Table("tensions", "Tension, "+in.Units.Force.Symbol(), columns...)
	for i := range views[0].d.Strings {
		row := []string{strconv.Itoa(i + 1)}
		for _, v := range views {
			cd := v.d.Strings[i].Cases[v.c]
			row = append(row, in.Units.ForceU(cd.TensionN, cd.UTensionN))
		}
		t.Row(row...)
	}
	total := []string{"all"}
	for _, v := range views {
		total = append(total, in.Units.ForceU(v.d.Totals[v.c].TensionN, v.d.Totals[v.c].UTensionN))
	}
	t.Total(total...)
	for _, v := range views {
		if hasUncertainty(v.d, v.c) {
			t.Note("± is one standard uncertainty, from the readings of the gauges. Length and pitch count as exact.")
			break
		}
	}
}

// viewStrings prints what every string does in every column, the columns of
// one string below each other.
func (in *Input) viewStrings(r *show.Report, views []view) {
	u := in.Units
	t := r.Table("strings", "What each string does", show.Words("string: column"), show.Words("note"),
		show.Words("gauge"), show.Figures(u.HeadForce("tension")), show.Figures("off target %"),
		show.Figures("breaking share open %").Later(1), show.Figures("inharmonicity cents").Later(1))
	wound := false
	for i := range views[0].d.Strings {
		for _, v := range views {
			s := v.d.Strings[i]
			cd := s.Cases[v.c]
			t.Row(v.of(s.Number), v.in.note(v.c, s.Number), v.in.gauge(s.Gauge), u.ForceU(cd.TensionN, cd.UTensionN),
				offTarget(cd.TensionN, s.TargetN), share(cd.ShareOpen), v.in.rise(s.Gauge, cd.InharmonicityCents))
			wound = wound || v.in.Plan.Stock()[s.Gauge].Family != "plain" && cd.InharmonicityCents > 0
		}
	}
	if wound {
		t.Note("≥: the rise of a wound string is a lower bound, and is not to be compared with a plain string's.")
	}
	in.unknownCores(t, views)
}

// of heads the row of one string in this column. Number and column stand in
// one cell, so that a part of a wide table says what its rows are.
func (v view) of(number int) string { return strconv.Itoa(number) + ": " + v.name }

// unknownCores names the gauges whose empty cells come from a core that is not
// known.
func (in *Input) unknownCores(t *show.Table, views []view) {
	seen := map[int]bool{}
	for _, v := range views {
		for _, s := range v.d.Strings {
			g := v.in.Plan.Stock()[s.Gauge]
			if g.Core == 0 && !seen[s.Gauge] {
				seen[s.Gauge] = true
				t.Note("%s: its core is not known, so stretch is not counted, and no breaking share, bend or inharmonicity can be told.", g.Label)
			}
		}
	}
}

// viewBends prints own lengths, and bending force and travel of the bends.
func (in *Input) viewBends(r *show.Report, views []view) {
	u := in.Units
	frets := views[0].in.Plan.Request().Feel.BendFrets
	bends := len(views[0].in.Plan.BendStrings()) > 0
	name, caption := "lengths", "Own lengths"
	columns := []show.Column{show.Words("string: column"), show.Figures(u.HeadLen("own length"))}
	if bends {
		name, caption = "bends", "Own lengths and bends"
		for _, n := range frets {
			fret := strconv.FormatFloat(n, 'f', -1, 64)
			columns = append(columns, show.Figures(u.HeadForce("bending force")+" at fret "+fret), show.Figures(u.HeadLen("travel")+" at fret "+fret).Later(1))
		}
		columns = append(columns, show.Figures("breaking share bent %"))
	}
	t := r.Table(name, caption, columns...)
	for i := range views[0].d.Strings {
		for _, v := range views {
			s := v.d.Strings[i]
			row := []string{v.of(s.Number), u.LenM(s.LengthM, scaleDecimals)}
			if bends {
				row = append(row, v.bendCells(i, len(frets))...)
			}
			t.Row(row...)
		}
	}
	t.Note("Own length is to the theoretical saddle line; compensation is not added.")
	if bends {
		views[0].in.bendNote(t)
	}
	for _, v := range views {
		if capo := v.in.Plan.Request().Cases[v.c].CapoFret; capo > 0 {
			capoNote(t, v.d, v.c, capo)
			break
		}
	}
}

// bendCells are bending force and travel at every bend fret, and the greatest breaking
// share of them.
func (v view) bendCells(i, frets int) []string {
	var row []string
	most := 0.0
	for k := range frets {
		bendingForce, travel := none, none
		if b, err := v.bent(i, k); err == nil {
			bendingForce, travel = v.in.Units.ForceN(b.Bend.BendingForceN), v.in.Units.LenM(b.Bend.BendDistanceM, scaleDecimals)
			most = max(most, b.Share)
		}
		row = append(row, bendingForce, travel)
	}
	return append(row, share(most))
}
