package report

import (
	"fmt"
	"math"
	"strconv"

	"scalepair/cmd/scalepair/show"
	"scalepair/fan"
)

// spacing prints the distances between strings at nut and saddles, along the
// slanted lines and square.
func (b *bench) spacing() {
	b.heading("String spacing")
	l, u := b.s.Layout, b.caliper()
	b.r.Para("Nut: %s. Saddles: %s. Square is what a rule laid square across shows; along a slanted line the same strings stand further apart. %s",
		l.Spec.NutSpacing.Rule, l.Spec.SaddleSpacing.Rule, b.spanWords(l))
	t := b.r.Table("spacing", "From string to string", show.Words("strings"), show.Figures(u.HeadLen("nut, along")), show.Figures(u.HeadLen("nut, square")),
		show.Figures(u.HeadLen("saddles, along")), show.Figures(u.HeadLen("saddles, square")))
	for i := range l.Strings[1:] {
		n, s := l.NutPositions[i], l.SaddlePositions[i]
		t.Row(fmt.Sprintf("%d to %d", i+1, i+2), u.len(n.SpacingAlong.MM()), u.len(n.SpacingSquare.MM()),
			u.len(s.SpacingAlong.MM()), u.len(s.SpacingSquare.MM()))
	}
	n, s := l.NutPositions[0], l.SaddlePositions[0]
	t.Total("all", u.len(n.AlongFromBass.MM()), u.len(n.SquareFromBass.MM()),
		u.len(s.AlongFromBass.MM()), u.len(s.SquareFromBass.MM()))
	b.intonation()
}

// centsHint is the error of an inner string from which the spacing is worth
// changing.
const centsHint = 1

// intonation prints the errors that unlike fractions at nut and saddle cause.
func (b *bench) intonation() {
	l := b.s.Layout
	worst, off := l.WorstCents()
	if !off {
		b.r.Text("Nut and saddles have the same fractions, so every inner string is exactly in tune with the straight frets.")
		return
	}
	t := b.r.Table("intonation", "Inner strings out of tune on straight frets, since nut and saddles have other fractions",
		show.Figures("string"), show.Figures("worst at fret"), show.Figures("cents there"), show.Figures("cents at last fret"))
	for i := 1; i < len(l.Strings)-1; i++ {
		if w, ok := worstOf(l, i+1); ok {
			t.Row(strconv.Itoa(i+1), strconv.Itoa(w.Fret), show.Signed(w.Cents.Value(), 2), show.Signed(l.Frets[l.Spec.Frets].CentsSharp[i].Value(), 2))
		}
	}
	t.Note("Positive is sharp.")
	if math.Abs(worst.Cents.Value()) > centsHint {
		t.Note(`More than %d cent. The cure: saddle_spacing = "like the nut" under [neck].`, centsHint)
	} else {
		t.Note("Less than %d cent, which no ear will mind.", centsHint)
	}
}

// nut prints slot centres along the nut and slot widths.
func (b *bench) nut() {
	b.heading("Nut")
	l, u := b.s.Layout, b.caliper()
	text := fmt.Sprintf("The nut lies along the nut line: %s. Its blank is %s long, edge to edge of the board.",
		slantWords(l.Nut.Slant.Rad()), u.text(l.NutBlank.MM()))
	if b.Job.Build.Neck.ZeroFret {
		text += " The strings sound from the zero fret, which stands on the nut line. The nut stands on the board behind it and only spaces the strings: file its slots low enough for every string to lie firmly on the zero fret."
	}
	b.r.Text(text)
	columns := []show.Column{show.Figures("string"), show.Words("note")}
	if b.s.Detail != nil {
		columns = append(columns, show.Words("gauge"))
	}
	columns = append(columns, show.Figures(u.HeadLen("from the nut's bass end")), show.Figures(u.HeadLen("to the next string")))
	if b.s.Detail != nil {
		columns = append(columns, show.Figures(u.HeadLen("string thick")), show.Figures(u.HeadLen("slot wide")))
	}
	t := b.r.Table("nut", "Slot centres, measured along the nut", columns...)
	for i, seat := range l.NutPositions {
		row := []string{strconv.Itoa(i + 1), b.note(0, i+1)}
		if b.s.Detail != nil {
			row = append(row, b.gauge(b.s.Detail.Gauges[i]))
		}
		next := none
		if i+1 < len(l.NutPositions) {
			next = u.len(seat.SpacingAlong.MM())
		}
		row = append(row, u.len(seat.AlongFromEdge.MM()), next)
		if b.s.Detail != nil {
			thick, clear := b.slotWidth(i)
			row = append(row, u.len(thick), u.len(thick+clear))
		}
		t.Row(row...)
	}
	if b.s.Detail != nil {
		_, clear := b.slotWidth(0)
		t.Note("A slot is wider than its string by %s. File each to its own string, on the fretted instrument.", u.text(clear))
	}
}

// slotWidth gives a string's outer diameter and what its nut slot is wider.
func (b *bench) slotWidth(i int) (diameter, clearance float64) {
	return float64(1000 * b.Plan.Stock()[b.s.Detail.Gauges[i]].Outer), b.Job.Build.Neck.NutSlotClearance.MM()
}

// lines prints the strings at further lines, such as pickups.
func (b *bench) lines() {
	if len(b.s.Lines) == 0 {
		return
	}
	b.heading("Strings at further lines")
	for i, f := range b.s.Lines {
		b.furtherLine(i, f)
	}
}

func (b *bench) furtherLine(i int, f fan.PlacedLine) {
	u := b.Units
	behind, side := f.BehindLastFret.MM(), "behind"
	if behind < 0 {
		behind, side = -behind, "before"
	}
	b.r.Para("%s: crosses the centreline %s before the saddle line (theoretical), %s %s the last fret. It stands %s.", f.Name,
		u.LenText(f.FromSaddle.MM(), markDecimals), u.LenText(behind, markDecimals), side, slantWords(f.Line.Slant.Rad()))
	fine := b.caliper()
	t := b.r.Table(fmt.Sprintf("line-%d", i+1), f.Name, show.Figures("string"), show.Words("note"), show.Figures(fine.HeadLen("from bass string, along")),
		show.Figures(fine.HeadLen("to the next, along")), show.Figures(fine.HeadLen("to the next, square")), show.Figures(fine.HeadLen("out from the centreline")), show.Words("side"))
	for n, seat := range f.Positions {
		along, square := none, none
		if n+1 < len(f.Positions) {
			along, square = fine.len(seat.SpacingAlong.MM()), fine.len(seat.SpacingSquare.MM())
		}
		row := []string{strconv.Itoa(seat.String), b.note(0, seat.String), fine.len(seat.AlongFromBass.MM()), along, square}
		t.Row(append(row, outCells(fine.len(math.Abs(seat.At.Y.MM())), seat.At.Y.MM())...)...)
	}
}
