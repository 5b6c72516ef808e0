package report

import (
	"slices"
	"strings"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
)

// NewSheet makes the bench sheet of one pair out of what the commands print of
// it: the choice, the strings and the fan, with a drawing, and on new paper the
// setting-out list, to be ticked. a is nil where no pair keeps every limit; date
// is printed as given.
func NewSheet(in *Input, a *Advice, b *Bench, date string) (*document.Document, error) {
	out := &document.Document{Title: in.title("Bench sheet:")}
	out.Para("%s", date)
	parts := []*document.Document{NewLayout(in, b.l).Document()}
	if b.d != nil {
		parts = slices.Insert(parts, 0, NewTension(in, b.d).Document())
	}
	if a != nil {
		parts = slices.Insert(parts, 0, a.Document())
	} else {
		out.Para("No pair of the ranges keeps every limit: the pair below was settled by hand.")
	}
	bench := b.Document()
	said := map[string]bool{}
	for _, c := range append(wholeCautions(), stringCautions...) {
		said[c] = true
	}
	for i, part := range parts {
		part = once(part, append(parts[i+1:], bench), said)
		part.Title = strings.TrimSuffix(strings.TrimSuffix(part.Title, in.title("")), " for") // the build's name stands above all
		out.Append(part)
	}
	out.Add(document.Block{Kind: document.Break})
	bench = ticked(once(bench, nil, said))
	bench.Title = "Setting out"
	out.Append(bench)
	out.Heading("Cautions")
	out.Cautions(wholeCautions()...)
	out.Heading("Where the numbers come from")
	out.Table(sources())
	return out, nil
}

// once leaves out of a part the tables that a later part has too, and the
// cautions that were said before or come whole at the sheet's end. It adds the
// part's own to what was said.
func once(d *document.Document, later []*document.Document, said map[string]bool) *document.Document {
	names := map[string]bool{}
	for _, part := range later {
		for _, block := range part.Blocks {
			for _, t := range block.Tables {
				names[t.Name] = true
			}
		}
	}
	out := &document.Document{Title: d.Title}
	for _, block := range d.Blocks {
		switch {
		case block.Kind == document.Cautions:
			out.Cautions(slices.DeleteFunc(slices.Clone(block.Items), func(item string) bool { return said[item] })...)
			for _, item := range block.Items {
				said[item] = true
			}
		case block.Kind != document.Tables || !names[block.Tables[0].Name]:
			out.Add(block)
		}
	}
	return out
}

// measuredTables are those beside which what was measured is written down.
var measuredTables = []string{"bass-marks", "treble-marks", "checks"}

// ticked gives every row of a document's tables a box to tick.
func ticked(d *document.Document) *document.Document {
	out := &document.Document{Title: d.Title}
	for _, block := range d.Blocks {
		for i, t := range block.Tables {
			boxed := *t
			boxed.Tick = true
			if slices.Contains(measuredTables, t.Name) {
				boxed.Room = "measured"
			}
			block.Tables[i] = &boxed
		}
		out.Add(block)
	}
	return out
}

// source says where a formula comes from.
type source struct{ what, formula, from string }

// sources says where every formula behind the sheet comes from. Each stands with
// its range in the comment of the function that computes it.
func sources() *table.Table {
	t := table.Of("sources", "", []source{
		{"pitch", "f = 440 Hz x 2^(n/12), n semitones from A4", "equal temperament, A4 after ISO 16 unless the build says otherwise"},
		{"linear density", "w = mass/(length x pieces)", "weighed by you; uncertainties after JCGM 100:2008 (GUM), sections 4.3 and 5.1"},
		{"tension", "T (1 + T/EA) = w (2 L f)²", "string law, OpenStax University Physics 1, section 16.6, for a string that thins as it stretches"},
		{"bending force", "T(y) times the slope of the wire's length by the finger's way y", "ours, from Hooke's law (OpenStax University Physics 1, section 12.3) and the string law; no friction at nut and saddle"},
		{"breaking strength, % of", "(T/A)/S", "S: minima of ASTM A228, as reproduced in a wire table; elastic limit at 65 to 75 %: Shigley, Table 10-5"},
		{"inharmonicity", "600 log2(1 + 100 B) cents, B = π² E I/(T L²)", "Fletcher, JASA 36 (1964), in Fletcher and Rossing, The Physics of Musical Instruments, section 2.18"},
		{"feel error", "root mean square over the strings of ln(value/target)", "judgement"},
		{"marks", "L (1 - 2^(-n/12)) from the nut, on each outer line", "equal temperament, f proportional to 1/L"},
		{"fan", "straight frets through the marks of both outer lines", "ours, plane geometry"},
		{"slot depth", "tang + clearance + R - √(R² - y²)", "segment of a circle; clearance: judgement"},
		{"compensation", "fret 12 sounds the octave; up to 2 √(E I/T) more for clamped ends", "ours, of the parts named by Varieschi and Gower, American Journal of Physics 78, 47 (2010); their numbers were not seen"},
	},
		table.Words("what", "", func(s source) string { return s.what }),
		table.Words("formula", "", func(s source) string { return s.formula }),
		table.Words("source", "", func(s source) string { return s.from }))
	t.Note("L length, f pitch in Hz, w mass per length of the slack string, T tension, E stretch modulus, A area and I second moment of the core, S its least strength, R radius, y out from the centreline.")
	t.Note("Ours: it follows from the laws named. Judgement: it has no source, and can be set in the build file.")
	return t
}
