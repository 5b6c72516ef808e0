package report

import (
	"fmt"
	"slices"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// Layout is the fan of one pair in numbers.
type Layout struct {
	Head
	FanOf
	LimitsBroken []string `json:"limits_broken"` // of the pair as a whole
	Cautions     []string `json:"cautions"`

	in *Input
}

// FanOf is what layout and bench say of a fan.
type FanOf struct {
	Bass   unit.Length `json:"bass_mm"`
	Treble unit.Length `json:"treble_mm"`
	fan.Neutral
	NutOffset   unit.Length  `json:"nut_offset_mm"`
	NutToFret1  unit.Length  `json:"nut_to_fret_1_mm"`
	NutSlant    unit.Angle   `json:"nut_slant_deg"`
	SaddleSlant unit.Angle   `json:"saddle_slant_deg"`
	NutBlank    unit.Length  `json:"nut_blank_mm"`
	Marks       *table.Table `json:"marks"`
	Strings     *table.Table `json:"strings"`
	WorstCents  unit.Cents   `json:"worst_inner_string_cents"`
	BlankLength unit.Length  `json:"blank_length_mm"`
	BlankWidth  unit.Length  `json:"blank_width_mm"`
	Blanks      *table.Table `json:"blanks"`

	l *fan.Layout
}

// NewLayout works up a fan.
func NewLayout(in *Input, l *fan.Layout) *Layout {
	return &Layout{Head: in.head(), FanOf: in.fanOf(l, wholeFits(l.LeastBlank().Fit(in.Run.Build.Blanks))), in: in,
		LimitsBroken: in.broken(in.Plan.PairLimits(&l.Frame)), Cautions: append(steepCautions(l), benchCautions...)}
}

func (in *Input) fanOf(l *fan.Layout, fits []fan.BlankFit) FanOf {
	need := l.LeastBlank()
	worst, _ := l.WorstCents()
	return FanOf{Bass: l.Spec.Bass, Treble: l.Spec.Treble, Neutral: l.Spec.Neutral, NutOffset: l.NutOffset, NutToFret1: l.Frets[1].Bass.Step,
		NutSlant: l.Nut.Slant, SaddleSlant: l.Saddle.Slant, NutBlank: l.Frets[0].Slot.Length, WorstCents: worst.Cents,
		BlankLength: need.Length, BlankWidth: need.Width,
		Marks: in.marksTable(l), Strings: in.linesTable(l), Blanks: in.blanksTable(fits), l: l}
}

// Document prints it.
func (r *Layout) Document() *document.Document {
	in, l := r.in, r.l
	doc := &document.Document{Title: in.title("Layout for")}
	doc.Para("%s", r.weighAgain())
	doc.Para("%s", in.fanWords(l))
	doc.List(r.summary(in)...)
	doc.Table(r.Marks.Note("Measure from the nut, so that one slip stays one slip. Steps are for checking with calipers, and add up to the marks as printed. A slant is positive where the bass end is nearer the bridge."))
	doc.Table(r.Strings.Note(in.spreadWords(l)...))
	doc.Para("Smallest blank: %s long, %s wide, saw allowance included.", in.atLeast(r.BlankLength), in.atLeast(r.BlankWidth))
	if r.Blanks.Len() > 0 {
		doc.Table(r.Blanks.Note("By length and width. How thick the board must be for its slots is said by scalepair bench."))
	}
	addLimitsBroken(doc, r.LimitsBroken)
	doc.Cautions(r.Cautions...)
	return doc
}

// fanWords name the pair and the neck.
func (in *Input) fanWords(l *fan.Layout) string {
	return fmt.Sprintf("Pair %s, neutral %s, %d frets, %d strings.", in.Pair(l.Spec.Bass, l.Spec.Treble), neutralWords(l.Spec.Neutral), l.Spec.Frets, l.Spec.Strings)
}

// summary says in few words what else a fan is.
func (f *FanOf) summary(in *Input) []string {
	fine := in.fine()
	nearer := "the bridge"
	if f.NutOffset < 0 {
		nearer = "the head"
	}
	var out lines
	out.sayIf(f.l.Parallel, "Equal lengths: the frets are square, and the neutral fret has no effect.")
	out.sayIf(!f.l.Parallel, "The nut is %s; the saddle line is %s.", slantWords(f.NutSlant), slantWords(f.SaddleSlant))
	out.sayIf(!f.l.Parallel, "The treble nut end lies %s nearer %s than the bass nut end, along the centreline.", fine.text(size(f.NutOffset)), nearer)
	out.say("From the nut to fret 1 on the bass line: %s.", fine.text(f.NutToFret1))
	out.say("Nut blank, edge to edge along the nut line: %s.", fine.text(f.NutBlank))
	if words := spacingWords(f.l); words != "" {
		out.say("%s", words)
	}
	return out
}

// slantWords say which way a line leans, so that no sign needs learning.
func slantWords(a unit.Angle) string {
	end := "bridge"
	if a < 0 {
		end = "head"
	}
	if text := table.DegText(size(a)); text != table.DegText(0) {
		return fmt.Sprintf("%s from square, the bass end nearer the %s", text, end)
	}
	return "square"
}

// centsHint is the error of an inner string from which the spacing is worth
// changing (judgement).
const centsHint = 1

// spacingWords say how far unlike spacings at nut and saddle put inner strings out of
// tune; "" where they do not.
func spacingWords(l *fan.Layout) string {
	worst, ok := l.WorstCents()
	if !ok {
		return ""
	}
	text := fmt.Sprintf("Nut and saddle are spaced by different fractions, so inner strings cannot be exactly in tune on straight frets: the worst is string %d at fret %d, %s cents.",
		worst.String, worst.Fret, table.WithSign(unit.Fixed(worst.Cents.Value(), 2)))
	if size(worst.Cents) > centsHint {
		text += ` The cure: saddle_spacing = "like the nut" under [neck].`
	}
	return text
}

// caliper prints lengths as calipers show them: to 0.01 mm, or 0.001 in in
// decimals.
type caliper struct{ table.Units }

func (in *Input) fine() caliper { return caliper{in.Units.Decimal()} }

// decimals is what table.Length takes for it.
func (c caliper) decimals() int {
	if c.Length == unit.Millimetres {
		return markDecimals
	}
	return markDecimals - 1
}

func (c caliper) text(l unit.Length) string { return c.LenText(l, c.decimals()) }

// length makes a column of lengths as calipers show them.
func fineLength[T any](c caliper, heading, key string, f func(T) unit.Length) table.Column[T] {
	return table.Length(c.Units, heading, key, c.decimals(), f)
}

// markRow is a fret's marks on both lines, exact and as a tool sets them.
type markRow struct {
	fan.Fret
	bass, bassStep, treble, trebleStep mark.Rounded
}

// markRows round every mark; a step is the difference of the rounded marks.
func markRows(l *fan.Layout, r mark.Resolution) []markRow {
	out := make([]markRow, l.Spec.Frets)
	before := markRow{bass: r.Round(0), treble: r.Round(0)}
	for i, f := range l.Frets[1:] {
		row := markRow{Fret: f, bass: r.Round(f.Bass.FromNut), treble: r.Round(f.Treble.FromNut)}
		row.bassStep, row.trebleStep = r.Between(before.bass, row.bass), r.Between(before.treble, row.treble)
		out[i], before = row, row
	}
	return out
}

// marksTable has every mark on both outer lines, from the nut and as a step.
func (in *Input) marksTable(l *fan.Layout) *table.Table {
	tool := build.Finest(in.Units.Length)
	set := func(heading, key string, of func(markRow) mark.Rounded) table.Column[markRow] {
		return table.Length(table.Units{Length: tool.Unit}, heading, key, markDecimals, func(r markRow) unit.Length { return of(r).Exact }).As(func(r markRow) string { return tool.Format(of(r).Parts) })
	}
	t := table.Of("marks", "Marks along the outer string lines", markRows(l, tool),
		table.Whole("fret", "fret", func(r markRow) int { return r.Number }),
		set("bass, from nut", "bass_from_nut", func(r markRow) mark.Rounded { return r.bass }),
		set("bass, step", "bass_step", func(r markRow) mark.Rounded { return r.bassStep }),
		set("treble, from nut", "treble_from_nut", func(r markRow) mark.Rounded { return r.treble }),
		set("treble, step", "treble_step", func(r markRow) mark.Rounded { return r.trebleStep }),
		table.Angle("slant", "slant", func(r markRow) unit.Angle { return r.Line.Slant }))
	if in.Units.Length == unit.InchFractions {
		t.Note("Marks are in decimals, for calipers: 1/64 in could move a note by two cents.")
	}
	return t
}

// linesTable says where every string starts and ends, low string first.
func (in *Input) linesTable(l *fan.Layout) *table.Table {
	var rows []int
	for i := range slices.Backward(l.Strings) {
		rows = append(rows, i)
	}
	of := func(heading, key string, f func(i int) unit.Length) table.Column[int] {
		return fineLength(in.fine(), heading, key, f)
	}
	return table.Of("lines", "String lines", rows,
		table.Whole("string", "string", func(i int) int { return i + 1 }),
		table.Words("note", "note", func(i int) string { return in.note(0, i+1) }),
		of("scale length", "length", func(i int) unit.Length { return l.Strings[i].Length }),
		of("along the nut line", "along_nut_line", func(i int) unit.Length { return l.NutPositions[i].AlongFromBass }),
		of("", "nut_x", func(i int) unit.Length { return l.Strings[i].Nut.X }),
		of("nut, from centreline", "nut_y", func(i int) unit.Length { return l.Strings[i].Nut.Y }),
		of("along the saddle line", "along_saddle_line", func(i int) unit.Length { return l.SaddlePositions[i].AlongFromBass }),
		of("", "saddle_x", func(i int) unit.Length { return l.Strings[i].Saddle.X }),
		of("saddle, from centreline", "saddle_y", func(i int) unit.Length { return l.Strings[i].Saddle.Y }),
	).Note("Along a line: from the bass string's end. From the centreline: square to it, bass side positive.")
}

// spreadWords say where the string spreads hold, where that needs saying.
func (in *Input) spreadWords(l *fan.Layout) []string {
	var out lines
	out.sayIf(!l.Parallel, "A string spread holds where the nut line or the saddle line crosses the centreline. The lines are slanted, so the strings' own ends lie before and behind that place, and the steps need not add up to the spread to the last digit.")
	out.sayIf(l.Spec.Widths() && (l.Spec.NutSpacing.Rule == fan.Listed || l.Spec.SaddleSpacing.Rule == fan.Listed), "The string spreads follow from the board's widths and margins: of the steps that you listed only the proportions count.")
	return out
}

// wholeFits are fits of which nothing is known of thickness.
func wholeFits(fits []fan.Fit) []fan.BlankFit {
	out := make([]fan.BlankFit, len(fits))
	for i, f := range fits {
		out[i].Fit = f
	}
	return out
}

// blanksTable says which blanks on offer fit, and what the others lack.
func (in *Input) blanksTable(list []fan.BlankFit) *table.Table {
	var thick, sawn bool
	for _, f := range list {
		thick, sawn = thick || f.Blank.Thickness > 0, sawn || f.LeftUnder != 0
	}
	of := func(heading, key string, f func(fan.BlankFit) unit.Length) table.Column[fan.BlankFit] {
		return table.Length(in.Units, heading, key, scaleDecimals, f)
	}
	fits := func(f fan.BlankFit) bool { return f.Fits && f.NutCrossFromEnd > 0 }
	left := func(heading, key string, f func(fan.BlankFit) unit.Length) table.Column[fan.BlankFit] {
		return table.Length(in.Units.Decimal(), heading, key, scaleDecimals, f).Known(func(f fan.BlankFit) bool { return f.LeftUnder != 0 }).When(sawn)
	}
	t := table.Of("blanks", "Blanks on offer", list,
		table.Words("blank", "name", func(f fan.BlankFit) string { return f.Blank.Name }),
		table.Bool("fits", "fits", fan.BlankFit.Enough).As(in.blankWords),
		of("length", "length", func(f fan.BlankFit) unit.Length { return f.Blank.Length }),
		of("to spare", "spare_length", func(f fan.BlankFit) unit.Length { return f.SpareLength }).Signed(),
		of("width", "width", func(f fan.BlankFit) unit.Length { return f.Blank.Width }),
		of("to spare", "spare_width", func(f fan.BlankFit) unit.Length { return f.SpareWidth }).Signed(),
		of("thick", "thickness", func(f fan.BlankFit) unit.Length { return f.Blank.Thickness }).NotZero().Hidden(!thick || !sawn),
		of("", "nut_line_from_its_nut_end", func(f fan.BlankFit) unit.Length { return f.NutCrossFromEnd }).Known(fits),
		of("", "centreline_from_its_bass_edge", func(f fan.BlankFit) unit.Length { return f.CentreFromBassEdge }).Known(fits),
		left("left under", "left_under_slots", func(f fan.BlankFit) unit.Length { return f.LeftUnder }),
		left("at edges", "left_at_edges", func(f fan.BlankFit) unit.Length { return f.LeftAtEdge }))
	if sawn {
		t.Note("Left under the slots, and at their ends after radiusing: of the thickness as offered. What you plane off comes off these too.")
	}
	return t
}

// blankWords say whether a blank fits, and if not what it lacks.
func (in *Input) blankWords(f fan.BlankFit) string {
	switch {
	case f.Near:
		return fmt.Sprintf("no, %s; the trim allowance is %s a side", in.lacks(-f.SpareLength, -f.SpareWidth), in.length(in.Run.Build.Neck.SawAllowance))
	case !f.Fits:
		return "no, " + in.lacks(-f.SpareLength, -f.SpareWidth)
	case f.Thin != nil:
		return "no, too thin"
	}
	return "yes"
}
