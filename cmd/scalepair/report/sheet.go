package report

import (
	"fmt"
	"slices"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/tension/choice"
)

// NewSheet makes the bench sheet of one pair, in two parts: the choice, with what
// to buy, and on new paper the bench. a is nil where no pair keeps every limit;
// date is printed as given.
func NewSheet(in *Input, a *Advice, b *Bench, date string) *document.Document {
	out := &document.Document{Title: in.title("Bench sheet:")}
	out.Para("%s", date)
	said := map[string]bool{} // cautions that stand on the sheet already, or come whole at its end
	for _, text := range append(wholeCautions(), stringCautions...) {
		said[text] = true
	}
	part := func(d *document.Document) {
		for i, block := range d.Blocks {
			if block.Kind == document.Cautions {
				d.Blocks[i].Items = slices.DeleteFunc(slices.Clone(block.Items), func(item string) bool { return said[item] })
				for _, item := range block.Items {
					said[item] = true
				}
			}
		}
		d.Blocks = slices.DeleteFunc(d.Blocks, func(block document.Block) bool { return block.Kind == document.Cautions && len(block.Items) == 0 })
		out.Append(d)
	}
	chosen, bench := &document.Document{Title: "The choice"}, &document.Document{Title: "At the bench"}
	if d := b.d; a == nil || d != nil && (a.Pair.Bass != d.Bass || a.Pair.Treble != d.Treble || !slices.Equal(a.Pair.Gauges, in.labels(d.Gauges))) {
		chosen.Para("%s", in.byHand(d))
	}
	if a == nil {
		chosen.Para("No pair of the ranges keeps every limit.")
	} else {
		for _, block := range a.Document().Blocks {
			if block.Kind != document.Tables || !slices.Contains([]string{"strings", "tensions"}, block.Tables[0].Name) { // those of the pair in hand follow
				chosen.Add(block)
			}
		}
	}
	if b.d != nil {
		strung := in.strung(b.d, brief)
		chosen.Heading("The strings")
		for c := range strung.Tunings {
			chosen.Table(strung.Tunings[c].Strings)
		}
	}
	b.Steps[0].write(chosen)
	part(chosen)
	out.Add(document.Block{Kind: document.Break})
	b.opening(bench)
	for _, s := range b.Steps[1:] {
		s.write(bench)
	}
	bench.Cautions(b.Cautions...)
	part(bench)
	out.Heading("Cautions")
	out.Cautions(wholeCautions()...)
	out.Heading("Where the numbers come from")
	out.Table(sources())
	return out
}

// byHand says which pair the sheet sets out where that is not the one advised; d is
// nil where nothing is known of its strings.
func (in *Input) byHand(d *choice.Detail) string {
	if d == nil {
		return "The pair set out on this sheet was settled by hand."
	}
	strung := in.strung(d, brief)
	return fmt.Sprintf("Chosen, and set out on this sheet: %s with %s, low string first. Feel error: %s. Below is what advise says of all pairs.",
		in.Pair(d.Bass, d.Treble), in.Set(d.Gauges), strung.errorWords())
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
