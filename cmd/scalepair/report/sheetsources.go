package report

import "scalepair/cmd/scalepair/show"

// sources says where every formula behind the sheet comes from.
func (c *composer) sources() {
	c.add(func(r *show.Report) {
		r.Heading("Where the numbers come from")
		t := r.Table("sources", "", show.Words("what"), show.Words("formula"), show.Words("source"))
		for _, s := range formulas {
			t.Row(s.what, s.formula, s.source)
		}
		t.Note("L length, f pitch in Hz, w mass per length of the slack string, T tension, E stretch modulus, A area and I second moment of the core, S its least strength, R radius, y out from the centreline.")
		t.Note("Ours: it follows from the laws named. Judgement: it has no source, and can be set in the build file.")
	})
	c.last().Small = true
}

// formulas are the formulas of the sheet in the order of its sections; each
// stands with its range in the doc comment of the function that computes it.
var formulas = []struct{ what, formula, source string }{
	{"pitch", "f = 440 Hz x 2^(n/12), n semitones from A4", "equal temperament, A4 after ISO 16 unless the build says otherwise"},
	{"linear density", "w = mass/(length x pieces)", "weighed by you; uncertainties after JCGM 100:2008 (GUM), sections 4.3 and 5.1"},
	{"tension", "T (1 + T/EA) = w (2 L f)²", "string law, OpenStax, University Physics 1, section 16.6, for a string that thins as it stretches"},
	{"bending force", "T(y) times the slope of the wire's length by the finger's way y", "ours, from Hooke's law (OpenStax, University Physics 1, section 12.3) and the string law; no friction at nut and saddle"},
	{"breaking share", "(T/A)/S", "S: minima of ASTM A228, as reproduced in a wire table; elastic limit at 65 to 75 %: Shigley, Table 10-5"},
	{"inharmonicity", "600 log2(1 + 100 B) cents, B = π² E I/(T L²)", "Fletcher, JASA 36 (1964), in Fletcher and Rossing, The Physics of Musical Instruments, section 2.18"},
	{"misfit, score", "mean squares of ln(value/target), weighted", "judgement"},
	{"marks", "L (1 - 2^(-n/12)) from the nut, on each outer line", "equal temperament, f proportional to 1/L"},
	{"fan", "straight frets through the marks of both outer lines", "ours, plane geometry"},
	{"slot depth", "tang + clearance + R - √(R² - y²)", "segment of a circle; clearance: judgement"},
	{"compensation", "fret 12 sounds the octave; up to 2 √(E I/T) more for clamped ends", "ours, of the parts named by Varieschi and Gower, American Journal of Physics 78, 47 (2010); their numbers were not seen"},
}
