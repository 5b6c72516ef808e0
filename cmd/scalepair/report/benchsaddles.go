package report

import (
	"fmt"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan"
)

// SaddlesOf says what the saddles must be able to reach.
type SaddlesOf struct {
	// Front and Rear bound the saddles' way, behind the theoretical line along the
	// strings; Needed is the saddle travel that this takes.
	Front        unit.Length `json:"saddle_travel_front_mm"`
	Rear         unit.Length `json:"saddle_travel_rear_mm"`
	Needed       unit.Length `json:"saddle_travel_needed_mm"`
	Yours        unit.Length `json:"saddle_travel_mm,omitempty"`
	ActionTreble unit.Length `json:"action_treble_mm"`
	ActionBass   unit.Length `json:"action_bass_mm"`
}

func (b *Bench) saddlesOf() *SaddlesOf {
	if b.saddles == nil {
		return nil
	}
	s, h := b.saddles, b.in.Plan.Request().Action
	return &SaddlesOf{s.Forward, s.Rear, s.Need, b.in.Run.Build.Limits.SaddleTravel, h[0], h[len(h)-1]}
}

// known reports whether a string's compensation is known.
func (b *Bench) known(p fan.SaddlePoint) bool { return b.d.Strings[p.String-1].CompensationErr == nil }

// bridge says how bridge and saddles are placed.
func (b *Bench) bridge() Step {
	title, u := "Bridge and saddles", b.in.Units.Decimal()
	if b.saddles == nil {
		why := "no set of gauges is settled"
		if b.d != nil {
			why = "no string's core is known (measure each with calipers where it is bare, at the string's end, and enter it among the readings)"
		}
		return Step{Title: title, Do: []string{fmt.Sprintf("How far each saddle must stand back is not known: %s. The theoretical saddle line crosses the centreline %s behind the last fret and is %s; every saddle stands a few millimetres behind it.",
			why, b.in.Units.LenText(b.l.Saddle.Cross-b.l.Frets[b.l.Spec.Frets].Line.Cross, markDecimals), slantWords(b.l.Saddle.Slant))}}
	}
	twelve := "fret 12"
	if b.l.Spec.Frets < 12 {
		twelve = "where fret 12 would be"
	}
	return Step{Title: title, Tables: append(b.compensationTables(), b.pointTable()), Do: []string{
		"Compensation is how far a saddle stands behind its theoretical place, along its string, to play in tune at fret 12. It lies between the least and the most: begin in the middle, and let the tuner decide.",
		fmt.Sprintf("Place: carry the centreline on to the body with a long straight edge. Turn every saddle as far forward (towards the nut) as it goes, and place the bridge, or each string's own, so that the saddles then stand %s before the theoretical saddle line: 'foremost' in the last table, measured along the centreline from where %s, the last fret or the body end crosses it, and from there square out.", u.LenText(-b.Saddles.Front, scaleDecimals), twelve),
		b.travelWords(),
		"Set: turn each saddle back by its 'screw back', tune, and compare the note at fret 12 with the octave: the saddle goes back when the fretted note is sharp, forward when it is flat. " +
			"Drill only after both outer strings were tried at pitch with the bridge clamped, and both came into tune well inside their saddles' travel.",
	}}
}

// travelWords compare the need with the saddle travel, where that is stated.
func (b *Bench) travelWords() string {
	s, u := b.Saddles, b.in.Units.Decimal()
	of := "of travel"
	if len(b.d.Totals) > 1 {
		of += " over all tunings"
	}
	need := fmt.Sprintf("Saddle travel: the saddles must reach from there to %s behind the theoretical line, %s %s", u.LenText(s.Rear, scaleDecimals), u.LenText(s.Needed, scaleDecimals), of)
	var unknown []int
	for _, p := range b.saddles.Points {
		if !b.known(p) {
			unknown = append(unknown, p.String)
		}
	}
	switch {
	case unknown != nil:
		return need + ". That is without " + several("string", unknown) + ", whose core is not known and which may need more."
	case s.Yours == 0:
		return need + ". Measure that yours have it (saddle_travel under [limits] lets this be checked)."
	case s.Yours < s.Needed:
		return need + fmt.Sprintf("; yours have %s, which is NOT enough. Take saddles with more travel, or place each string's saddle by itself.", u.LenText(s.Yours, scaleDecimals))
	}
	return need + fmt.Sprintf("; yours have %s, which is enough.", u.LenText(s.Yours, scaleDecimals))
}

// compensationTables say how far each saddle stands behind its theoretical line,
// one table a tuning.
func (b *Bench) compensationTables() tables {
	u, req := b.in.Units.Decimal(), b.in.Plan.Request()
	of := func(heading, key string, f func(fan.Compensation, stringRow) unit.Length) table.Column[stringRow] {
		return table.Length(u, heading, key, scaleDecimals, func(r stringRow) unit.Length { return f(r.tuned().Compensation, r) }).Known(stringRow.compensated)
	}
	text := fmt.Sprintf("Nut to saddle: along the string, at 'begin at'. Screw back: from the front of the saddle's travel. Computed with strings %s (treble) to %s (bass) above fret 12",
		u.Len(b.Saddles.ActionTreble, scaleDecimals), u.LenText(b.Saddles.ActionBass, scaleDecimals))
	if req.ActionAssumed {
		text += ", which is assumed"
	}
	if req.TailsAssumed {
		text += ", and with assumed lengths beyond nut and saddle"
	}
	var out tables
	for c, one := range req.Cases {
		name, title := "compensation", "Compensation"
		if len(req.Cases) > 1 {
			name, title = fmt.Sprintf("compensation-%d", c+1), "Compensation in "+one.Name
		}
		out = append(out, table.Of(name, title, b.in.stringRows(b.d, c),
			table.Whole("string", "string", func(r stringRow) int { return r.string().Number }),
			table.Words("note", "note", func(r stringRow) string { return r.in.note(r.c, r.string().Number) }),
			table.Words("gauge", "gauge", func(r stringRow) string { return r.gauge().Label }).As(func(r stringRow) string { return marked(r.gauge()) }),
			of("least", "compensation_least", func(c fan.Compensation, _ stringRow) unit.Length { return c.Lo }),
			of("most", "compensation_most", func(c fan.Compensation, _ stringRow) unit.Length { return c.Hi }),
			of("begin at", "begin_at", func(c fan.Compensation, _ stringRow) unit.Length { return c.Middle() }),
			of("nut to saddle", "nut_to_saddle", func(c fan.Compensation, r stringRow) unit.Length { return r.string().Length + c.Middle() }),
			of("screw back", "screw_back", func(c fan.Compensation, _ stringRow) unit.Length { return c.Middle() - b.saddles.Forward }),
			table.Words("", "not_computed", func(r stringRow) string { return r.string().CompensationErr.Error() }).
				Known(func(r stringRow) bool { return !r.compensated() })))
	}
	last := out[len(out)-1].Note(text + ".")
	for _, s := range lowFirst(b.d.Strings) {
		if s.CompensationErr != nil {
			last.Note(fmt.Sprintf("String %d: %v.", s.Number, s.CompensationErr))
		}
	}
	return out
}

// pointTable gives the saddle points from places on the neck.
func (b *Bench) pointTable() *table.Table {
	u, last := b.in.Units, b.l.Frets[b.l.Spec.Frets].Line.Cross
	of := func(heading, key string, f func(fan.SaddlePoint) unit.Length) table.Column[fan.SaddlePoint] {
		return table.Length(u, heading, key, scaleDecimals, f)
	}
	spaced := func(f func(fan.Position) unit.Length) func(fan.SaddlePoint) unit.Length {
		return func(p fan.SaddlePoint) unit.Length { return f(b.l.SaddlePositions[p.String-1]) }
	}
	begin := "'begin at'"
	if len(b.d.Totals) > 1 {
		begin = "the middle of its range over all tunings"
	}
	away := func(p fan.SaddlePoint) string { return u.Len(size(p.Out), scaleDecimals) }
	return table.Of("saddle-points", "Saddle points", lowFirst(b.saddles.Points),
		table.Whole("string", "string", func(p fan.SaddlePoint) int { return p.String }),
		of("out", "out_to_bass_side", func(p fan.SaddlePoint) unit.Length { return p.Out }).As(away),
		table.Words("side", "", func(p fan.SaddlePoint) string { return sideOf(p.Out, away(p)) }),
		of("along, from fret 12", "from_fret_12", func(p fan.SaddlePoint) unit.Length { return p.Along12 }).Known(b.known),
		of("from last fret", "from_last_fret", func(p fan.SaddlePoint) unit.Length { return p.AlongLast }).Known(b.known),
		of("from body end", "from_body_end", func(p fan.SaddlePoint) unit.Length { return p.AlongBodyEnd }).Known(b.known),
		of("foremost, from last fret", "foremost_from_last_fret", func(p fan.SaddlePoint) unit.Length { return p.Foremost.X - last }),
		of("", "foremost_out_to_bass_side", func(p fan.SaddlePoint) unit.Length { return p.Foremost.Y }),
		of("to the string before", "to_the_string_before_along", spaced(func(p fan.Position) unit.Length { return p.SpacingAlong })).Known(func(p fan.SaddlePoint) bool { return p.String < len(b.l.Strings) }),
		of("", "to_the_string_before_square", spaced(func(p fan.Position) unit.Length { return p.SpacingSquare })).Known(func(p fan.SaddlePoint) bool { return p.String < len(b.l.Strings) }),
	).Note(fmt.Sprintf("Where the string leaves the saddle at %s; foremost is the same with the saddle fully forward. To the string before: along the saddle line; spacing %s.", begin, b.l.Spec.SaddleSpacing.Rule))
}
