package report

import (
	"fmt"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan"
)

// stringColumns name a string, its note and, where a set is settled, its gauge.
func stringColumns[T any](b *Bench, number func(T) int) []table.Column[T] {
	gauge := func(t T) int { return b.d.Gauges[number(t)-1] }
	return []table.Column[T]{
		table.Whole("string", "string", number),
		table.Words("note", "note", func(t T) string { return b.in.note(0, number(t)) }),
		table.Words("gauge", "gauge", func(t T) string { return b.in.Plan.Stock()[gauge(t)].Label }).
			As(func(t T) string { return b.in.gauge(gauge(t)) }).When(b.d != nil),
	}
}

// lowFirst turns a list over strings round.
func lowFirst[T any](list []T) []T {
	out := make([]T, len(list))
	for i, x := range list {
		out[len(out)-1-i] = x
	}
	return out
}

// positions are where strings cross a line: from the bass end, and from string to
// string along the line and square to the centreline.
func (b *Bench) positions(name, title string, list []fan.Position, from string, first func(fan.Position) unit.Length, more ...table.Column[fan.Position]) *table.Table {
	fine := b.in.fine()
	notBass := func(p fan.Position) bool { return p.String < len(b.l.Strings) }
	treble := list[0]
	return table.Of(name, title, lowFirst(list), append(append(
		stringColumns(b, func(p fan.Position) int { return p.String }),
		fineLength(fine, from, "from_bass_end", first),
		fineLength(fine, "to the string before", "to_the_string_before_along", func(p fan.Position) unit.Length { return p.SpacingAlong }).Known(notBass),
		fineLength(fine, "the same, square", "to_the_string_before_square", func(p fan.Position) unit.Length { return p.SpacingSquare }).Known(notBass)), more...)...,
	).Total(map[string]string{"string": "all", "to_the_string_before_along": fine.Len(treble.AlongFromBass, fine.decimals()),
		"to_the_string_before_square": fine.Len(treble.SquareFromBass, fine.decimals())})
}

// nut has the slots' centres along the nut and their widths, and says what
// spacing does to the inner strings.
func (b *Bench) nut() Step {
	fine, clearance := b.in.fine(), b.l.Spec.NutSlotClearance
	text := fmt.Sprintf("The nut lies along the nut line: %s. Its blank is %s long, edge to edge of the board. Spacing: %s.", slantWords(b.l.Nut.Slant), fine.text(b.Layout.NutBlank), b.l.Spec.NutSpacing.Rule)
	if b.l.Spec.ZeroFret {
		text += " The strings sound from the zero fret, which stands on the nut line. The nut stands on the board behind it and only spaces the strings: file its slots low enough for every string to lie firmly on the zero fret."
	}
	wide := func(p fan.Position) unit.Length {
		return b.in.Plan.Stock()[b.d.Gauges[p.String-1]].Outer + clearance
	}
	t := b.positions("nut", "Slot centres along the nut", b.l.NutPositions, "from the bass end", func(p fan.Position) unit.Length { return p.AlongFromEdge },
		fineLength(fine, "slot wide", "slot_width", wide).When(b.d != nil))
	if b.d != nil {
		t.Note("A slot is wider than its string by " + fine.text(clearance) + ". File each to its own string, on the fretted instrument.")
	}
	return Step{Title: "Nut", Do: []string{text, spacingWords(b.l)}, Tables: tables{t.Note(b.in.spreadWords(b.l)...)}}
}

// LineOf is a further line across the strings, such as a pickup's.
type LineOf struct {
	Name           string      `json:"name"`
	FromSaddle     unit.Length `json:"in_front_of_saddle_line_mm"`
	BehindLastFret unit.Length `json:"behind_last_fret_mm"`
	Slant          unit.Angle  `json:"slant_deg"`
}

// further has the strings at further lines.
func (b *Bench) further() Step {
	fine, u, s := b.in.fine(), b.in.Units, Step{Title: "Strings at further lines"}
	away := func(p fan.Position) string { return fine.Len(size(p.At.Y), fine.decimals()) }
	for i, f := range b.placed {
		b.Lines = append(b.Lines, LineOf{f.Name, f.FromSaddle, f.BehindLastFret, f.Line.Slant})
		side := "behind"
		if f.BehindLastFret < 0 {
			side = "before"
		}
		s.Do = append(s.Do, fmt.Sprintf("%s: crosses the centreline %s before the theoretical saddle line, %s %s the last fret. It is %s.", f.Name,
			u.LenText(f.FromSaddle, markDecimals), u.LenText(size(f.BehindLastFret), markDecimals), side, slantWords(f.Line.Slant)))
		s.Tables = append(s.Tables, b.positions(fmt.Sprintf("line-%d", i+1), f.Name, f.Positions, "along, from bass string", func(p fan.Position) unit.Length { return p.AlongFromBass },
			fineLength(fine, "out from the centreline", "out_to_bass_side", func(p fan.Position) unit.Length { return p.At.Y }).As(away),
			table.Words("side", "", func(p fan.Position) string { return sideOf(p.At.Y, away(p)) })))
	}
	return s
}
