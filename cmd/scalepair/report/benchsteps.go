package report

import (
	"fmt"
	"strings"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// Step is one step of what is set out with calipers: what to do, and the
// measures, marks, slots or dots that it needs.
type Step struct {
	Title    string       `json:"title"`
	Do       string       `json:"do"`
	Measures *table.Table `json:"measures,omitempty"`
	Marks    *table.Table `json:"marks,omitempty"`
	Slots    *table.Table `json:"slots,omitempty"`
	Dots     *table.Table `json:"dots,omitempty"`
}

func (s Step) write(doc *document.Document) {
	doc.Para("%s", s.Do)
	for _, t := range []*table.Table{s.Measures, s.Marks, s.Slots, s.Dots} {
		doc.Table(t)
	}
}

// measure is one length to set.
type measure struct {
	name string
	mark.Rounded
}

// measures make the table of a step.
func (b *Bench) measures(name string, rows ...measure) *table.Table {
	return table.Of(name, "", rows,
		table.Words("measure", "measure", func(m measure) string { return m.name }),
		setColumn(b, "set to", "set", func(m measure) mark.Rounded { return m.Rounded }),
		table.Length(table.Units{}, "", "exact", markDecimals, func(m measure) unit.Length { return m.Exact }))
}

// of is one length to set, rounded to what the calipers show.
func (b *Bench) of(l unit.Length, format string, args ...any) measure {
	return measure{fmt.Sprintf(format, args...), b.fineness.Round(l)}
}

// setColumn is a column of lengths as the tool sets them.
func setColumn[T any](b *Bench, heading, key string, f func(T) mark.Rounded) table.Column[T] {
	return table.Length(table.Units{Length: b.fineness.Unit}, heading, key, markDecimals, func(t T) unit.Length { return f(t).Set }).
		As(func(t T) string { return b.fineness.Format(f(t).Parts) })
}

// steps are the setting-out list in working order: centreline, string lines, nut,
// the marks of the bass line, the square line and the treble nut, the marks of
// the treble line, the checks before the first cut, the board's outline, the
// slots and their fences, the dots. Base lines are two lines square to the
// centreline, as far apart as the smallest blank is long: on any blank, larger
// ones too, everything is measured from them.
func (b *Bench) steps(fences []fan.Fence) []Step {
	out := []Step{b.centreline(), b.stringLines(), b.bassNut(), b.marks(mark.Bass), b.trebleNut(), b.marks(mark.Treble),
		b.checks(), b.edges(), b.slots(fences)}
	for _, s := range []Step{b.faceDots(), b.sideDots()} {
		if s.Dots.Len() > 0 {
			out = append(out, s)
		}
	}
	return out
}

func (b *Bench) centreline() Step {
	need := b.l.LeastBlank()
	return Step{Title: "Centreline and base lines",
		Do: "True one long edge of the blank and draw the centreline parallel to it: every square in this list is laid against that edge. " +
			"Square one base line across at the nut end and one at the body end, and leave both until the last slot is sawn. " +
			"The nut line is to cross the centreline at the place given.",
		Measures: b.measures("centreline",
			b.of(need.Length, "from the nut end's base line to the body end's"),
			b.of(-need.MinX, "from the nut end's base line to where the nut line crosses the centreline"),
			b.of(need.MaxY, "width wanted on the bass side of the centreline"),
			b.of(-need.MinY, "width wanted on the treble side"))}
}

func (b *Bench) stringLines() Step {
	need, f := b.l.LeastBlank(), b.l.Frame
	return Step{Title: "String lines",
		Do: "On both base lines mark the outer strings, the same distance out to either side of the centreline, and join them: " +
			"the bass string line and the treble string line.",
		Measures: b.measures("string-lines",
			b.of(f.HalfSpread(need.MinX), "out from the centreline on the nut end's base line"),
			b.of(f.HalfSpread(need.MaxX), "out from the centreline on the body end's base line"))}
}

func (b *Bench) bassNut() Step {
	t := b.measures("bass-nut", b.of(b.l.Frame.AlongLine(b.l.Nut.Bass.X-b.l.LeastBlank().MinX), "along the bass line from the nut end's base line to the bass nut mark"))
	return Step{Title: "Bass nut mark and nut line",
		Do: "Mark the nut on the bass string line, from the nut end's base line along the string line. " +
			"Draw the nut line lightly from this mark through the place on the centreline where it is to cross.",
		Measures: t.Note("Slant of the nut line: " + slantWords(b.l.Nut.Slant) + ".")}
}

// marks lists every mark of a line, from the nut and as a step.
func (b *Bench) marks(line mark.Line) Step {
	name := line.String()
	of := func(r markRow) (fan.Mark, mark.Rounded, mark.Rounded) {
		if line == mark.Bass {
			return r.Bass, r.bass, r.bassStep
		}
		return r.Treble, r.treble, r.trebleStep
	}
	t := table.Of(name+"-marks", "", markRows(b.l, b.fineness.Resolution),
		table.Whole("fret", "fret", func(r markRow) int { return r.Number }),
		setColumn(b, "from nut", "set_from_nut", func(r markRow) mark.Rounded { _, at, _ := of(r); return at }),
		setColumn(b, "step", "set_step", func(r markRow) mark.Rounded { _, _, step := of(r); return step }),
		table.Length(table.Units{}, "", "from_nut", markDecimals, func(r markRow) unit.Length { m, _, _ := of(r); return m.FromNut }),
		table.Length(b.in.fineUnits(), "width of a cent", "one_cent", markDecimals, func(r markRow) unit.Length { m, _, _ := of(r); return m.OneCent }))
	t.Tick = true
	return Step{Title: "Marks on the " + name + " line",
		Do: "Lay the ruler along the " + name + " string line, its zero on the nut mark, and mark every fret without " +
			"lifting it. Care pays most at the high frets, where a cent is least wide.",
		Marks: t.Note("Width of a cent: how far a mark may be off before its note is a cent out.")}
}

// trebleNut gives the square line at the neutral fret and the treble nut. Where
// the square line does not lie on the board, the treble nut is found from the
// square through the bass nut instead; where it does, that is the second way
// and the check.
func (b *Bench) trebleNut() Step {
	n, offset, towards := b.l.Neutral, b.l.Frame.AlongLine(b.l.NutOffset), "the bridge"
	if offset < 0 {
		offset, towards = -offset, "the head"
	}
	second := b.of(offset, "along the treble line from the square through the bass nut mark to the treble nut mark, towards %s", towards)
	square := "Square across from the bass nut mark, and draw where that meets the treble line. Measure the treble nut from there."
	switch {
	case b.l.Parallel || n.K() == 0:
		return Step{Title: "Treble nut mark", Measures: b.measures("treble-nut", second),
			Do: "The nut stands square: square across from the bass nut mark. Where that meets the treble line is the treble nut mark."}
	case n.X > b.l.LeastBlank().MaxX:
		return Step{Title: "Treble nut mark", Measures: b.measures("treble-nut", second),
			Do: "The square line, at " + neutralWords(n.Neutral) + ", lies beyond the board. " + square}
	}
	from := "the bass mark of that fret"
	if n.Fret != float64(int(n.Fret)) {
		from = "the place on the bass line given below, between two marks"
	}
	return Step{Title: "Square line at " + neutralWords(n.Neutral) + " and treble nut mark",
		Do: "Square across from " + from + ", and draw this square line to the treble line. From there measure back along the treble line: the treble nut mark. " +
			"Check it: squared across from the bass nut mark, the treble line is met as far from the treble nut mark as given; and the nut line must pass through it.",
		Measures: b.measures("treble-nut",
			b.of(n.BassFromNut, "along the bass line from the bass nut mark to the square line"),
			b.of(n.TrebleFromNut, "along the treble line from the square line back to the treble nut mark"),
			second)}
}

// checks catch a slip while wood can still be saved. Beyond fret 12 every distance
// is half of the one twelve frets before, which needs no saddle on the blank to
// be seen.
func (b *Bench) checks() Step {
	last := b.l.Spec.Frets
	do := "Measure both diagonals: a slip in the treble nut shows on neither line alone, but makes one diagonal longer and the other " +
		"shorter. Then measure all marks again by the other method, before the saw touches wood."
	if last >= 12 {
		do = "Fret 12 halves both lines, so every distance beyond it is half of the one twelve frets before. " + do
	}
	var rows []measure
	for _, line := range []mark.Line{mark.Bass, mark.Treble} {
		length, at := b.l.Spec.Bass, func(n int) unit.Length { return b.l.Frets[n].Bass.FromNut }
		if line == mark.Treble {
			length, at = b.l.Spec.Treble, func(n int) unit.Length { return b.l.Frets[n].Treble.FromNut }
		}
		if last >= 12 {
			rows = append(rows, b.of(length/2, "%v line, nut to fret 12: half its length to the saddle", line))
		}
		if last > 12 {
			rows = append(rows, b.of(at(last)-at(12), "%v line, fret 12 to fret %d: half of the nut to fret %d", line, last, last-12))
		}
	}
	return Step{Title: "Checks before the first cut", Do: do, Measures: b.measures("checks", append(rows,
		b.of(b.l.DiagonalBassNut, "%s", mark.DiagonalName(mark.FromBassNut, last)),
		b.of(b.l.DiagonalTrebleNut, "%s", mark.DiagonalName(mark.FromTrebleNut, last)))...)}
}

// edges give the board's outline on the blank: its edges by where they cross the
// base lines, its ends from nut line and last slot.
func (b *Bench) edges() Step {
	spec, f, need, corners := b.l.Spec, b.l.Frame, b.l.LeastBlank(), b.l.Board().Corners
	last := b.l.Frets[spec.Frets]
	var rows []measure
	add := func(edge string, margin unit.Length) {
		rows = append(rows,
			b.of(f.HalfSpread(need.MinX)+margin, "%s, out from the centreline on the nut end's base line", edge),
			b.of(f.HalfSpread(need.MaxX)+margin, "%s, out from the centreline on the body end's base line", edge))
	}
	bass, treble := spec.Margins()
	if bass == treble {
		add("either edge", bass)
	} else {
		add("bass edge", bass)
		add("treble edge", treble)
	}
	if spec.NutShelf > 0 {
		rows = append(rows, b.of(spec.NutShelf, "nut end behind the nut line, square to it"))
	}
	return Step{Title: "Board edges and ends",
		Do: "On both base lines mark the board's edges, outside the string lines, and join them. Carry the nut line on to both edges. " +
			b.endWords() + " Leave the blank square until the slots are sawn; then saw it to this outline.",
		Measures: b.measures("edges", append(rows,
			b.of(last.Slot.Bass.Distance(corners[1]), "along the bass edge from the last slot to the body end"),
			b.of(last.Slot.Treble.Distance(corners[2]), "along the treble edge from the last slot to the body end"),
			b.of(2*f.HalfSpread(0)+bass+treble, "check: the board's width, square across, where the nut line crosses the centreline"),
			b.of(2*f.HalfSpread(last.Line.Cross)+bass+treble, "check: the same where the last fret crosses it"))...)}
}

// endWords say how nut end and body end run.
func (b *Bench) endWords() string {
	nut := "The nut line is the board's end."
	switch {
	case b.l.Spec.ZeroFret:
		nut = "The zero fret stands on the nut line. The board goes on behind it, its nut end parallel to the nut line; " +
			"the nut stands there, clear of the fret, and only spaces the strings."
	case b.l.Spec.NutShelf > 0:
		nut = "The nut end runs parallel to the nut line, behind it by the nut shelf."
	}
	if b.l.Spec.BodyEnd == fan.SquareEnd {
		return nut + " The body end stands square to the centreline."
	}
	return nut + " The body end runs parallel to the last fret."
}

// slots lists every slot with its fence.
func (b *Bench) slots(fences []fan.Fence) Step {
	half := b.saw.Kerf / 2
	fence := half > 0 && half >= 2*b.fineness.Length()*(1-1e-9) // to be seen between two rounded places (judgement)
	r := b.fineness.Round
	slot := func(f fan.Fence) fan.Fret { return b.l.Frets[f.Fret] }
	square := func(f fan.Fence) bool { return slot(f).Line.TanSlant == 0 }
	t := table.Of("slots", "", fences,
		table.Whole("fret", "fret", func(f fan.Fence) int { return f.Fret }),
		table.Angle("slant", "slant", func(f fan.Fence) unit.Angle { return f.Slant }),
		setColumn(b, "bass edge", "set_bass_edge", func(f fan.Fence) mark.Rounded { return r(f.BassAlongEdge) }),
		setColumn(b, "treble edge", "set_treble_edge", func(f fan.Fence) mark.Rounded { return r(f.TrebleAlongEdge) }),
		setColumn(b, "slot length", "set_slot_length", func(f fan.Fence) mark.Rounded { return r(slot(f).Slot.Length) }),
		setColumn(b, "fence, bass edge", "set_fence_bass_edge", func(f fan.Fence) mark.Rounded { return r(f.FaceBassAlongEdge) }).Hidden(!fence),
		setColumn(b, "fence, treble edge", "set_fence_treble_edge", func(f fan.Fence) mark.Rounded { return r(f.FaceTrebleAlongEdge) }).Hidden(!fence),
		table.Bool("", "mitre_box", square),
		table.Words("saw with", "", func(f fan.Fence) string { return map[bool]string{true: "mitre box", false: "fence"}[square(f)] }))
	t.Tick = true
	do := "Join the two marks of every fret and carry the line to both edges; its ends are given along the edges from the nut line. " +
		"A mitre box fits a square slot only. For the others clamp a straight fence across the board, its working face " +
		"half a kerf nearer the nut than the slot's middle, and saw along it on the bridge side."
	if b.l.Spec.ZeroFret {
		do += " Fret 0 is the zero fret: its slot lies on the nut line itself, and its fence stands behind that line, so its places are below zero."
	}
	t.Note("Edges: along the board's edge from where the nut line meets it. Slant: positive where the bass end is nearer the bridge.")
	switch text := b.in.fineUnits().LenText(half, markDecimals); {
	case fence:
		t.Note(fmt.Sprintf("The fence's working face stands half a kerf, %s, nearer the nut than the slot's middle, square to the slot.", text))
	case half > 0:
		t.Note(fmt.Sprintf("The fence's own places are left out: half a kerf, %s, would be lost at %s. Draw the slot's line, and set the fence off it by that much, square to the slot and towards the nut, with a strip of that thickness.", text, b.fineness.Resolution))
	default:
		t.Note("With the saw's cut given as kerf under [fret_wire], the fence's own places are printed too.")
	}
	return Step{Title: "Slots", Do: do, Slots: t}
}

// dotRow is a dot with the ways to it.
type dotRow struct {
	fret       int
	along, out mark.Rounded
}

func (b *Bench) faceDots() Step {
	var rows []dotRow
	for _, d := range b.l.FaceDots(b.in.Run.Build.Dots) {
		rows = append(rows, dotRow{d.Fret, b.fineness.Round(d.At.X), b.fineness.Round(d.At.Y)})
	}
	return Step{Title: "Face dots", Dots: b.dots("face-dots", rows, true, b.in.Run.Build.Dots.FaceDiameter),
		Do: "Midway between two fret lines on the centreline, from where the nut line crosses it; a pair stands out to either side."}
}

func (b *Bench) sideDots() Step {
	var rows []dotRow
	for _, d := range b.l.SideDots(b.in.Run.Build.Dots) {
		rows = append(rows, dotRow{d.Fret, b.fineness.Round(d.At.Distance(b.l.Frets[0].Slot.Bass)), b.fineness.Round(0)})
	}
	return Step{Title: "Side dots", Dots: b.dots("side-dots", rows, false, b.in.Run.Build.Dots.SideDiameter),
		Do: "Midway between two slot ends on the bass edge, along the edge from the nut line; a pair is two dots in a row."}
}

func (b *Bench) dots(name string, rows []dotRow, face bool, diameter unit.Length) *table.Table {
	out := func(r dotRow) string { return b.fineness.Format(max(r.out.Parts, -r.out.Parts)) }
	return table.Of(name, "", rows,
		table.Whole("fret", "fret", func(r dotRow) int { return r.fret }),
		setColumn(b, "from the nut line", "set_from_nut_line", func(r dotRow) mark.Rounded { return r.along }),
		setColumn(b, "out from the centreline", "set_out_to_bass_side", func(r dotRow) mark.Rounded { return r.out }).As(out).Hidden(!face),
		table.Words("side", "", func(r dotRow) string { return sideOf(r.out.Set, out(r)) }).When(face),
	).Note("A dot lies in the space before its fret, on the nut side. Bore for dots of " + b.in.fine().text(diameter) + ".")
}

// sideOf names the side of the centreline on which y lies; out is how y prints
// without its sign, and what prints as zero lies on it.
func sideOf(y unit.Length, out string) string {
	switch {
	case strings.Trim(out, "0.") == "":
		return "on it"
	case y > 0:
		return "bass"
	}
	return "treble"
}
