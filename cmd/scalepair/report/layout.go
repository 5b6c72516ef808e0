package report

import (
	"math"
	"strconv"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/show"
	"scalepair/data/unit"
	"scalepair/fan"
)

// Layout prints the fan of one pair: lines, marks, slants, spacing and blank.
func Layout(in *Input, l *fan.Layout) *show.Report {
	r := &show.Report{Title: in.title("Layout for")}
	r.Para("Pair %s, neutral %s, %d frets, %d strings.", in.Pair(l.Spec.Bass, l.Spec.Treble), in.neutral(), l.Spec.Frets, l.Spec.Strings)
	in.fanSummary(r, l)
	in.marks(r, l)
	in.stringLines(r, l)
	in.blanks(r, l)
	in.limitsBroken(r, in.Plan.PairLimits(l))
	r.Heading("Cautions")
	r.Cautions(append(steepCautions(l), benchCautions...)...)
	return r
}

// neutral names the neutral fret in force.
func (in *Input) neutral() string {
	n := in.Job.Neck().Neutral
	return neutralWords(fan.Neutral{Fret: n.Fret, Bridge: n.Bridge})
}

// fanOf prints what the fan of the advised pair looks like.
func (in *Input) fanOf(r *show.Report, l *fan.Layout) {
	r.Heading("Its fan")
	r.Para("Neutral %s, %d frets.", in.neutral(), l.Spec.Frets)
	in.fanSummary(r, l)
	in.marks(r, l)
	in.blanks(r, l)
}

// fanSummary gives slants, nut offset, reach and the checks in few words.
func (in *Input) fanSummary(r *show.Report, l *fan.Layout) {
	u := caliperUnits(in.Units)
	t := r.Table("slants", "Slants, positive where the bass end is nearer the bridge", show.Words("line"), show.Figures("slant °"))
	t.Row("nut", show.Deg(l.Nut.Slant.Rad()))
	for _, s := range l.Slants() {
		t.Row("fret "+strconv.Itoa(s.Fret), show.Deg(s.Slant.Rad()))
	}
	t.Row("saddle line", show.Deg(l.Saddle.Slant.Rad()))
	items := []string{}
	if l.Parallel {
		items = append(items, "Equal lengths: the frets are square, and the neutral fret has no effect.")
	} else {
		nearer := "the bridge"
		if l.NutOffset.MM() < 0 {
			nearer = "the head"
		}
		items = append(items, "The treble nut end lies "+u.text(math.Abs(l.NutOffset.MM()))+" nearer "+nearer+" than the bass nut end, along the centreline.")
	}
	items = append(items,
		"Reach from the nut to fret 1 on the bass line: "+u.text(l.Frets[1].Bass.Step.MM())+".",
		"Nut blank, edge to edge along the nut line: "+u.text(l.NutBlank.MM())+".")
	if worst, ok := l.WorstCents(); ok {
		line := "Nut and saddle are spaced by different fractions, so inner strings cannot be exactly in tune on straight frets: the worst is string " +
			strconv.Itoa(worst.String) + " at fret " + strconv.Itoa(worst.Fret) + ", " + show.Signed(worst.Cents.Value(), 2) + " cents."
		if worst.Cents.Value() > 1 || worst.Cents.Value() < -1 {
			line += " The cure: saddle_spacing = \"like the nut\"."
		}
		items = append(items, line)
	}
	r.Bullets(items...)
}

// marks prints every mark on both outer lines, from the nut and as a step. A
// step is the difference of the printed marks, so that steps sum to them.
func (in *Input) marks(r *show.Report, l *fan.Layout) {
	u := in.Units
	t := r.Table("marks", "Marks along the outer string lines", show.Figures("fret"),
		show.Figures(u.HeadLen("bass, from nut")), show.Figures(u.HeadLen("bass, step")),
		show.Figures(u.HeadLen("treble, from nut")), show.Figures(u.HeadLen("treble, step")), show.Figures("slant °"))
	tool := build.Finest(u.Length)
	var bassBefore, trebleBefore int64
	for _, f := range l.Frets[1:] {
		bass, treble := tool.Round(f.Bass.FromNut.MM()).Parts, tool.Round(f.Treble.FromNut.MM()).Parts
		t.Row(strconv.Itoa(f.Number), tool.Format(bass), tool.Format(bass-bassBefore),
			tool.Format(treble), tool.Format(treble-trebleBefore), show.Deg(f.Line.Slant.Rad()))
		bassBefore, trebleBefore = bass, treble
	}
	if u.Length == unit.InchFractions {
		t.Note("Marks are in decimals, for calipers: 1/64 in could move a note by two cents.")
	}
	t.Note("Measure from the nut, so that one slip stays one slip; steps are for checking with calipers, and sum to the marks as printed. scalepair setout has the whole list for the bench.")
}

// stringLines prints where every string starts and ends.
func (in *Input) stringLines(r *show.Report, l *fan.Layout) {
	u := caliperUnits(in.Units)
	t := r.Table("lines", "String lines", show.Figures("string"), show.Words("note"), show.Figures(u.HeadLen("own length")),
		show.Figures(u.HeadLen("along the nut line")), show.Figures(u.HeadLen("nut, from centreline")),
		show.Figures(u.HeadLen("along the saddle line")), show.Figures(u.HeadLen("saddle, from centreline")))
	for i, s := range l.Strings {
		t.Row(strconv.Itoa(s.Number), in.note(0, s.Number), u.len(s.Length.MM()),
			u.len(l.NutPositions[i].AlongFromBass.MM()), u.len(s.Nut.Y.MM()),
			u.len(l.SaddlePositions[i].AlongFromBass.MM()), u.len(s.Saddle.Y.MM()))
	}
	if words := in.spanWords(l); words != "" {
		t.Note("%s", words)
	}
	t.Note("Along a line: from the bass string's end. From the centreline: square to it, bass side positive.")
}

// blanks says how large a blank the board needs and which on offer serve.
func (in *Input) blanks(r *show.Report, l *fan.Layout) {
	u := in.Units
	b := l.LeastBlank()
	r.Para("Smallest blank: %s long, %s wide, saw allowance included.", u.LenText(b.Length.MM(), scaleDecimals), u.LenText(b.Width.MM(), scaleDecimals))
	offers := in.Job.Build.Blanks
	if len(offers) == 0 {
		return
	}
	t := r.Table("blanks", "Blanks on offer", show.Words("blank"), show.Figures(u.HeadLen("length")), show.Figures(u.HeadLen("width")),
		show.Words("serves"), show.Figures(u.HeadLen("to spare, length")), show.Figures(u.HeadLen("to spare, width")))
	for _, s := range b.Fit(offers) {
		serves := "no"
		if s.Fits {
			serves = "yes"
		}
		t.Row(s.Blank.Name, u.Len(s.Blank.Length.MM(), scaleDecimals), u.Len(s.Blank.Width.MM(), scaleDecimals), serves,
			u.SignedLen(s.SpareLength.MM(), scaleDecimals), u.SignedLen(s.SpareWidth.MM(), scaleDecimals))
	}
	t.Note("Serves: by length and width. How thick the board must be for its slots is said by setout.")
}
