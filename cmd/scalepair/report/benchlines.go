package report

import (
	"fmt"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// measure is one length to set. A letter joins it to the words of its step and to
// the figure.
type measure struct {
	letter, name string
	mark.Rounded
}

// of is one length to set, rounded to what the calipers show.
func (b *Bench) of(letter string, l unit.Length, format string, args ...any) measure {
	return measure{letter, fmt.Sprintf(format, args...), b.fineness.Round(l)}
}

// text is how the tool shows it.
func (b *Bench) text(m mark.Rounded) string { return b.fineness.Format(m.Parts) }

// set prints a length as the tool sets it, as the measures of the steps are.
func (b *Bench) set(l unit.Length) string {
	return b.text(b.fineness.Round(l)) + " " + b.fineness.Unit.Symbol()
}

// setColumn is a column of lengths as the tool sets them.
func setColumn[T any](b *Bench, heading, key string, f func(T) mark.Rounded) table.Column[T] {
	return table.Length(table.Units{Length: b.fineness.Unit}, heading, key, markDecimals, func(t T) unit.Length { return f(t).Set }).
		As(func(t T) string { return b.text(f(t)) })
}

// measures make the table of a step.
func (b *Bench) measures(name string, rows ...measure) *table.Table {
	return table.Of(name, "", rows,
		table.Words("measure", "measure", func(m measure) string {
			if m.letter != "" {
				return m.letter + ": " + m.name
			}
			return m.name
		}),
		setColumn(b, "length", "set", func(m measure) mark.Rounded { return m.Rounded }),
		table.Length(table.Units{}, "", "exact", markDecimals, func(m measure) unit.Length { return m.Exact }))
}

// baseLines are two lines square to the centreline, as far apart as the smallest
// blank is long: on any blank, larger ones too, everything is measured from them.
func (b *Bench) baseLines() Step {
	need, f := b.l.LeastBlank(), b.l.Frame
	rows := []measure{
		b.of("a", need.Length, "base line to base line"),
		b.of("b", -need.MinX, "nut end's base line to nut line, on the centreline"),
		b.of("c", f.HalfSpread(need.MinX), "centreline to either string line, on the nut end's base line"),
		b.of("d", f.HalfSpread(need.MaxX), "centreline to either string line, on the body end's base line"),
	}
	second := b.nutMeasures()
	return Step{Title: "Centreline, base lines and string lines", Tables: tables{b.measures("base-lines", rows...)},
		figure: b.linesFigure(append(rows, second...)),
		Do: []string{"True one long edge of the blank and draw the centreline parallel to it: every square in this list is laid against that edge. " +
			"Square a base line across at either end, the distance a apart, and leave both until the last slot is sawn. " +
			"The nut line will cross the centreline at b. On the base lines mark the outer strings, c and d out to either side, and join them: the bass line and the treble line."}}
}

// beyond reports whether the square line at the neutral fret lies behind the
// board.
func (b *Bench) beyond() bool { return b.l.Neutral.X > b.l.LeastBlank().MaxX }

// square reports whether nut and neutral fret are one line.
func (b *Bench) square() bool { return b.l.Parallel || b.l.Neutral.K() == 0 }

// nutMeasures lead to both nut marks. The treble one is found from the square line
// at the neutral fret, and checked by the square through the bass nut mark; where
// the square line is the nut or lies behind the board, by the second way alone.
func (b *Bench) nutMeasures() []measure {
	n, offset, towards := b.l.Neutral, b.l.Frame.AlongLine(b.l.NutOffset), "the bridge"
	if offset < 0 {
		offset, towards = -offset, "the head"
	}
	rows := []measure{b.of("e", b.l.Frame.AlongLine(b.l.Nut.Bass.X-b.l.LeastBlank().MinX), "nut end's base line to bass nut mark, along the bass line")}
	if b.square() {
		return rows
	}
	if !b.beyond() {
		rows = append(rows, b.of("f", n.BassFromNut, "bass nut mark to square line, along the bass line"),
			b.of("g", n.TrebleFromNut, "square line back to treble nut mark, along the treble line"))
	}
	return append(rows, b.of("h", offset, "square through bass nut mark to treble nut mark, towards %s", towards))
}

func (b *Bench) nutLine() Step {
	n := b.l.Neutral
	do := "Mark the nut on the bass line, the distance e from the nut end's base line. Draw the nut line lightly from this mark through the place on the centreline at b: it is " + slantWords(b.l.Nut.Slant) + "."
	switch {
	case b.square():
		do += " Where it meets the treble line is the treble nut mark."
	case b.beyond():
		do += " The square line, at " + neutralWords(n.Neutral) + ", lies beyond the board. Square across from the bass nut mark instead: the treble nut mark is the distance h from where that meets the treble line, and the nut line must pass through it."
	default:
		do += " Square across from the bass line at f: this is the square line at " + neutralWords(n.Neutral) + ". From where it meets the treble line measure back g: the treble nut mark. " +
			"Check: a square through the bass nut mark must meet the treble line the distance h from the treble nut mark, and the nut line must pass through both marks."
	}
	return Step{Title: "Nut line and both nut marks", Do: []string{do}, Tables: tables{b.measures("nut-line", b.nutMeasures()...)}}
}

const (
	marksTitle  = "Marks on both lines"
	checksTitle = "Checks before the first cut"
)

// marks lists every mark of both lines, from the nut and as a step.
func (b *Bench) marks() Step {
	rows := markRows(b.l, b.fineness.Resolution)
	one := func(line mark.Line, of func(markRow) (m fan.Mark, at, step mark.Rounded)) *table.Table {
		return table.Of(line.String()+"-marks", capital(line.String())+" line", rows,
			table.Whole("fret", "fret", func(r markRow) int { return r.Number }),
			setColumn(b, "from nut", "set_from_nut", func(r markRow) mark.Rounded { _, at, _ := of(r); return at }),
			setColumn(b, "step", "set_step", func(r markRow) mark.Rounded { _, _, step := of(r); return step }),
			table.Length(table.Units{}, "", "from_nut", markDecimals, func(r markRow) unit.Length { m, _, _ := of(r); return m.FromNut }),
			table.Length(b.in.Units.Decimal(), "a cent", "one_cent", markDecimals, func(r markRow) unit.Length { m, _, _ := of(r); return m.OneCent }))
	}
	return Step{Title: marksTitle, beside: true,
		Do: []string{"Clamp the ruler along the string line, its zero on the nut mark, and leave it there for every fret. Where a mark falls between two lines of the ruler, set the calipers to what remains from an earlier line, such as a whole centimetre or inch, and prick the mark from there with a knife point. " +
			"Steps are for calipers alone, from the mark before, and add up to the marks as printed. " +
			"'A cent' is how far a mark may be off before its note is a cent out: care pays most at the high frets."},
		Tables: tables{
			one(mark.Bass, func(r markRow) (fan.Mark, mark.Rounded, mark.Rounded) { return r.Bass, r.bass, r.bassStep }),
			one(mark.Treble, func(r markRow) (fan.Mark, mark.Rounded, mark.Rounded) { return r.Treble, r.treble, r.trebleStep }),
		}}
}

// checks catch a slip while wood can still be saved. Beyond fret 12 every distance
// is half of the one twelve frets before, which needs no saddle on the blank to
// be seen.
func (b *Bench) checks() Step {
	last := b.l.Spec.Frets
	do := "Measure both diagonals: a slip in the treble nut shows on neither line alone, but makes one diagonal longer and the other " +
		"shorter. Then measure all marks again by the other method, before the saw touches wood."
	var rows []measure
	line := func(line mark.Line, length unit.Length, at func(n int) unit.Length) {
		if last >= 12 {
			rows = append(rows, b.of("", length/2, "%v line, nut to fret 12: half its length to the saddle", line))
		}
		if last > 12 {
			rows = append(rows, b.of("", at(last)-at(12), "%v line, fret 12 to fret %d: half of the nut to fret %d", line, last, last-12))
		}
	}
	line(mark.Bass, b.l.Spec.Bass, func(n int) unit.Length { return b.l.Frets[n].Bass.FromNut })
	line(mark.Treble, b.l.Spec.Treble, func(n int) unit.Length { return b.l.Frets[n].Treble.FromNut })
	return Step{Title: checksTitle, Do: []string{do}, Tables: tables{b.measures("checks", append(rows,
		b.of("", b.l.DiagonalBassNut, "%s", mark.DiagonalName(mark.FromBassNut, last)),
		b.of("", b.l.DiagonalTrebleNut, "%s", mark.DiagonalName(mark.FromTrebleNut, last)))...)}}
}
