package report

import (
	"fmt"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan"
)

// spacingTable has the distances between strings at nut and saddles, along the
// slanted lines and square.
func (b *Bench) spacingTable() *table.Table {
	l, fine := b.l, b.in.fine()
	var gaps []int
	for i := len(l.Strings) - 2; i >= 0; i-- {
		gaps = append(gaps, i)
	}
	of := func(heading, key string, f func(i int) unit.Length) table.Column[int] {
		return fineLength(fine, heading, key, f)
	}
	n, s := l.NutPositions[0], l.SaddlePositions[0]
	return table.Of("spacing", "From string to string", gaps,
		table.Words("strings", "strings", func(i int) string { return fmt.Sprintf("%d to %d", i+2, i+1) }),
		table.Whole("", "from_string", func(i int) int { return i + 2 }), table.Whole("", "to_string", func(i int) int { return i + 1 }),
		of("nut, along", "nut_along", func(i int) unit.Length { return l.NutPositions[i].SpacingAlong }),
		of("nut, square", "nut_square", func(i int) unit.Length { return l.NutPositions[i].SpacingSquare }),
		of("saddles, along", "saddles_along", func(i int) unit.Length { return l.SaddlePositions[i].SpacingAlong }),
		of("saddles, square", "saddles_square", func(i int) unit.Length { return l.SaddlePositions[i].SpacingSquare }),
	).Total(map[string]string{"strings": "all", "nut_along": fine.Len(n.AlongFromBass, fine.decimals()), "nut_square": fine.Len(n.SquareFromBass, fine.decimals()),
		"saddles_along": fine.Len(s.AlongFromBass, fine.decimals()), "saddles_square": fine.Len(s.SquareFromBass, fine.decimals())})
}

// intonation has the worst error of every inner string that unlike fractions at nut
// and saddle put out of tune.
func (b *Bench) intonation() *table.Table {
	l := b.l
	var rows []fan.CentsError
	for i := len(l.Strings) - 2; i > 0; i-- {
		for _, e := range l.CentsErrors { // the worst first
			if e.String == i+1 {
				rows = append(rows, e)
				break
			}
		}
	}
	t := table.Of("intonation", "Inner strings out of tune on straight frets, since nut and saddles have other fractions", rows,
		table.Whole("string", "string", func(e fan.CentsError) int { return e.String }),
		table.Whole("worst at fret", "worst_at_fret", func(e fan.CentsError) int { return e.Fret }),
		table.Cents("there", "worst", 2, func(e fan.CentsError) unit.Cents { return e.Cents }).Signed(),
		table.Cents("at last fret", "at_last_fret", 2, func(e fan.CentsError) unit.Cents { return l.Frets[l.Spec.Frets].CentsSharp[e.String-1] }).Signed(),
	).Note("Positive is sharp.")
	if worst, ok := l.WorstCents(); ok && size(worst.Cents) > centsHint {
		t.Note(fmt.Sprintf("More than %d cent.%s", centsHint, spacingCure(worst)))
	} else if ok {
		t.Note(fmt.Sprintf("Less than %d cent, which no ear will mind (judgement).", centsHint))
	}
	return t
}

func (b *Bench) writeSpacing(doc *document.Document) {
	doc.Para("Nut: %s. Saddles: %s. Square is what a rule laid square across shows; along a slanted line the same strings stand further apart.",
		b.l.Spec.NutSpacing.Rule, b.l.Spec.SaddleSpacing.Rule)
	doc.Table(b.Spacing.Note(b.in.spreadWords(b.l)...))
	if b.OutOfTune.Len() == 0 {
		doc.Para("Nut and saddles have the same fractions, so every inner string is exactly in tune with the straight frets.")
		return
	}
	doc.Table(b.OutOfTune)
}

// gaugeColumn is the gauge of a string, where a set is settled.
func gaugeColumn[T any](b *Bench, number func(T) int) table.Column[T] {
	label := func(t T) int { return b.d.Gauges[number(t)-1] }
	return table.Words("gauge", "gauge", func(t T) string { return b.in.Plan.Stock()[label(t)].Label }).
		As(func(t T) string { return b.in.gauge(label(t)) }).When(b.d != nil)
}

// noteColumn is the note of a string.
func noteColumn[T any](b *Bench, number func(T) int) table.Column[T] {
	return table.Words("note", "note", func(t T) string { return b.in.note(0, number(t)) })
}

// lowFirst turns a list over strings round.
func lowFirst[T any](list []T) []T {
	out := make([]T, len(list))
	for i, x := range list {
		out[len(out)-1-i] = x
	}
	return out
}

// nutTable has the slots' centres along the nut, and their widths.
func (b *Bench) nutTable() *table.Table {
	fine, clearance := b.in.fine(), b.l.Spec.NutSlotClearance
	number := func(p fan.Position) int { return p.String }
	thick := func(p fan.Position) unit.Length { return b.in.Plan.Stock()[b.d.Gauges[p.String-1]].Outer }
	t := table.Of("nut", "Slot centres, measured along the nut", lowFirst(b.l.NutPositions),
		table.Whole("string", "string", number), noteColumn(b, number), gaugeColumn(b, number),
		fineLength(fine, "from the nut's bass end", "from_bass_end_along_nut", func(p fan.Position) unit.Length { return p.AlongFromEdge }),
		fineLength(fine, "to the string before", "to_the_string_before", func(p fan.Position) unit.Length { return p.SpacingAlong }).Known(b.notBass),
		fineLength(fine, "string thick", "string_diameter", thick).When(b.d != nil),
		fineLength(fine, "slot wide", "slot_width", func(p fan.Position) unit.Length { return thick(p) + clearance }).When(b.d != nil))
	if b.d != nil {
		t.Note("A slot is wider than its string by " + fine.text(clearance) + ". File each to its own string, on the fretted instrument.")
	}
	return t
}

func (b *Bench) notBass(p fan.Position) bool { return p.String < len(b.l.Strings) }

func (b *Bench) writeNut(doc *document.Document) {
	text := fmt.Sprintf("The nut lies along the nut line: %s. Its blank is %s long, edge to edge of the board.", slantWords(b.l.Nut.Slant), b.in.fine().text(b.Layout.NutBlank))
	if b.l.Spec.ZeroFret {
		text += " The strings sound from the zero fret, which stands on the nut line. The nut stands on the board behind it and only spaces the strings: file its slots low enough for every string to lie firmly on the zero fret."
	}
	doc.Para("%s", text)
	doc.Table(b.Nut)
}

// LineOf is a further line across the strings, such as a pickup's.
type LineOf struct {
	Name           string       `json:"name"`
	FromSaddle     unit.Length  `json:"in_front_of_saddle_line_mm"`
	BehindLastFret unit.Length  `json:"behind_last_fret_mm"`
	Slant          unit.Angle   `json:"slant_deg"`
	Strings        *table.Table `json:"strings"`
}

func (b *Bench) linesOf() []LineOf {
	fine, out := b.in.fine(), []LineOf{}
	number := func(p fan.Position) int { return p.String }
	away := func(p fan.Position) string { return fine.Len(size(p.At.Y), fine.decimals()) }
	for i, f := range b.placed {
		out = append(out, LineOf{f.Name, f.FromSaddle, f.BehindLastFret, f.Line.Slant, table.Of(fmt.Sprintf("line-%d", i+1), f.Name, lowFirst(f.Positions),
			table.Whole("string", "string", number), noteColumn(b, number),
			fineLength(fine, "from bass string, along", "from_bass_string_along", func(p fan.Position) unit.Length { return p.AlongFromBass }),
			fineLength(fine, "", "from_bass_string_square", func(p fan.Position) unit.Length { return p.SquareFromBass }),
			fineLength(fine, "to the string before, along", "to_the_string_before_along", func(p fan.Position) unit.Length { return p.SpacingAlong }).Known(b.notBass),
			fineLength(fine, "square", "to_the_string_before_square", func(p fan.Position) unit.Length { return p.SpacingSquare }).Known(b.notBass),
			fineLength(fine, "out from the centreline", "out_to_bass_side", func(p fan.Position) unit.Length { return p.At.Y }).As(away),
			table.Words("side", "", func(p fan.Position) string { return sideOf(p.At.Y, away(p)) }))})
	}
	return out
}

func (b *Bench) writeLines(doc *document.Document) {
	u := b.in.Units
	for _, f := range b.Lines {
		side := "behind"
		if f.BehindLastFret < 0 {
			side = "before"
		}
		doc.Para("%s: crosses the centreline %s before the theoretical saddle line, %s %s the last fret. It stands %s.", f.Name,
			u.LenText(f.FromSaddle, markDecimals), u.LenText(size(f.BehindLastFret), markDecimals), side, slantWords(f.Slant))
		doc.Table(f.Strings)
	}
}
