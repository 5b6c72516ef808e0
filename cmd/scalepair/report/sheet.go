package report

import (
	"slices"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/fan"
	"scalepair/fan/draw"
	"scalepair/tension/choice"
)

// Sheet is the bench sheet of one pair: what the commands print about the choice,
// with the fan as a drawing, and on new paper what they print for the bench. d is
// nil while no set of gauges is settled; date is printed as given.
func Sheet(in *Input, l *fan.Layout, d *choice.Detail, date string, choosing, bench []*document.Document) (*document.Document, error) {
	out := &document.Document{Title: in.title("Bench sheet:")}
	out.Para("%s", date)
	for _, part := range choosing {
		out.Append(withoutCautions(part))
	}
	if err := in.fanDrawn(out, l, d); err != nil {
		return nil, err
	}
	out.Add(document.Break{})
	for _, part := range bench {
		out.Append(withoutCautions(part))
	}
	out.Heading("Cautions")
	out.Cautions(wholeCautions()...)
	out.Heading("Where the numbers come from")
	out.Table(sources())
	return out, nil
}

// withoutCautions leaves out what the sheet says once, at its end.
func withoutCautions(d *document.Document) *document.Document {
	whole := append(wholeCautions(), stringCautions...)
	out := &document.Document{Title: d.Title}
	for _, block := range d.Blocks {
		if c, ok := block.(document.Cautions); ok {
			out.Cautions(slices.DeleteFunc(slices.Clone(c.Items), func(item string) bool { return slices.Contains(whole, item) })...)
			continue
		}
		out.Add(block)
	}
	return out
}

// fanDrawn draws the fan in strips of true size.
func (in *Input) fanDrawn(doc *document.Document, l *fan.Layout, d *choice.Detail) error {
	o := in.DrawingWords(l, d)
	o.Hide = draw.Layers{draw.LayerTitle, draw.LayerKey, draw.LayerBars}
	drawing, err := draw.Fan(l, o)
	if err != nil {
		return err
	}
	figures, err := strips(drawing)
	if err != nil {
		return err
	}
	doc.Heading("The fan, drawn")
	doc.Para("The face of the board in true size, in strips from the nut on; to look at, and no template: `scalepair draw` writes that, with bars to measure. Thin lines across are slots, carried on in grey to their numbers, their end points ringed. The heavy outline is the board, long dashes the blank, dashes and dots the centreline and the line square to it; grey lines along are strings. Crosses in rings are dots, crosses through rings saddle points with the range of their compensation.")
	for _, f := range figures {
		doc.Add(f)
	}
	return nil
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
