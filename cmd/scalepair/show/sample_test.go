package show_test

import (
	"scalepair/cmd/scalepair/show"
	"scalepair/data/unit"
)

// sample is a report with every kind of block. Its figures are invented.
func sample() *show.Report {
	u := show.Units{}
	r := &show.Report{Title: "Strings of the baritone on 692 / 660 mm"}
	r.Para("Tuning %s, low string first, at A4 = %s Hz. Tension is reckoned on the theoretical length; compensation is not added.", "B1 E2 A2 D3 F#3 B3", show.Fixed(440, 0))
	r.Heading("Tension and feel")
	stringTable(r, u)
	r.Bullets("String 5 bends beyond the board's edge at fret 12, so its bending force there is empty.",
		"Gauge w34 is estimated: buy one, weigh it, run again, then buy the rest.")
	r.Heading("What was dropped")
	t := r.Table("dropped", "Pairs dropped, by limit", show.Words("limit"), show.Figures("pairs"), show.Words("nearest miss"))
	t.Row("difference", "12", "62 mm against 60 mm, on 722 / 660 mm, stated in build.toml:31:14")
	t.Row("fret slant", "3", "12.4° against 12.0°")
	t.Total("all", "15", "")
	r.Table("empty", "Blanks that serve", show.Words("blank"), show.Figures(u.HeadLen("to spare")))
	r.Cautions("Raise an untried string in steps, with eye protection: it can break and whip.",
		"Saws and blades cut; wood dust irritates and sensitises: mask and extraction.")
	r.Figure("Tension of each string", `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10"><path d="M0 0H10"/></svg>`)
	return r
}

func stringTable(r *show.Report, u show.Units) {
	t := r.Table("strings", "String by string",
		show.Figures("string"), show.Words("note"), show.Figures(u.HeadLen("own length")), show.Words("gauge"),
		show.Figures(u.HeadForce("tension")), show.Figures("off target %").Later(1), show.Figures(u.HeadForce("bending force at fret 5")).Later(2),
		show.Figures(u.HeadForce("bending force at fret 12")).Later(2), show.Figures("breaking share %").Later(1),
		show.Figures("inharmonicity cents").Later(3), show.Words("marks"))
	t.Row("1", "B3", u.Len(660, 1), "p12", u.ForceU(64.23, 0.31), show.SignedPercent(0.0123, 1), u.ForceN(9.8), u.ForceN(6.12), "48", "0.4", "")
	t.Row("2", "F#3", u.Len(666.4, 1), "p16", u.ForceU(65.02, 0.42), show.SignedPercent(-0.0004, 1), u.ForceN(11.8), u.ForceN(7.9), "37", "0.9", "")
	t.Row("5", "E2", u.Len(685.6, 1), "w42", u.ForceU(83.77, 0.6), show.SignedPercent(-0.021, 1), "", "", "52", "≥ 2.1", "estimated")
	t.Row("6", "B1", u.Len(692, 1), "w60", u.ForceU(86.11, 0.9), show.SignedPercent(0.033, 1), "", "", "44", "≥ 3.9", "core shape assumed")
	t.Total("all", "", "", "", u.ForceU(299.13, 1.2), "", "", "", "", "", "")
	t.Note("± is one standard uncertainty.")
	t.Note("Linear densities from %d readings; 25½ in is %s mm.", 14, u.Len(unit.Inches(25.5).MM(), 1))
}
