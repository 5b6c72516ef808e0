package report

import (
	"fmt"
	"slices"
	"strings"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/gauges"
)

// WorkedBlank is the blank on offer that is worked with, and how the fan lies in
// it.
type WorkedBlank struct {
	Name       string      `json:"name"`
	Centreline unit.Length `json:"centreline_from_bass_edge_mm"`
	BaseLine   unit.Length `json:"base_line_from_nut_end_mm"`
	NutLine    unit.Length `json:"nut_line_from_nut_end_mm"` // where it crosses the centreline
}

func (b *Bench) workedBlank() *WorkedBlank {
	if b.blank < 0 {
		return nil
	}
	f := b.fits[b.blank]
	return &WorkedBlank{f.Blank.Name, f.CentreFromBassEdge, f.SpareLength / 2, f.NutCrossFromEnd}
}

// buy says what to buy, which blanks on offer fit, and how the one worked with
// must lie.
func (b *Bench) buy() Step {
	s := Step{Title: "Blank and shopping list", Do: []string{b.blankWords()}, Tables: tables{b.shopping()}}
	if len(b.fits) > 0 {
		s.Tables = append(s.Tables, b.Layout.Blanks)
	}
	return s
}

func (b *Bench) blankWords() string {
	in, need := b.in, b.l.LeastBlank()
	text := fmt.Sprintf("The blank must be at least %s long and %s wide, which leaves %s to saw away on every side; its grain runs along the centreline.",
		in.atLeast(need.Length), in.atLeast(need.Width), in.length(need.Allowance))
	if b.LeastThickness > 0 {
		text += fmt.Sprintf(" Planed for the slots, it must be at least %s thick.", in.length(b.LeastThickness))
	}
	if b.blank >= 0 {
		return text + fmt.Sprintf(" Work with %s. Share what is spare equally: draw the centreline %s from its bass edge and the nut end's base line %s from its nut end; the nut line will then cross the centreline %s from that end.",
			b.Blank.Name, b.set(b.Blank.Centreline), b.set(b.Blank.BaseLine), b.set(b.Blank.NutLine))
	}
	if len(b.fits) > 0 {
		text += " None of the blanks on offer is large enough; all that follows holds for any that is. blank = true under [limits] has advise take pairs only that come out of one on offer."
	}
	return text + fmt.Sprintf(" The centreline lies at least %s from its bass edge and %s from its treble edge, the nut end's base line on its nut end or inside.", b.set(b.BassSide), b.set(b.TrebleSide))
}

// purchase is one line of the shopping list.
type purchase struct {
	what, kind string // as people and as programs read it
	count      int    // 0 for the wire
	remarks    []string
	strings    []int // that a single string is for, the lowest first
	gauge      int   // of a single string, an index into the stock
	winding    unit.Length
}

func (p purchase) single() bool { return p.strings != nil }

// windingRoom is how far the wound part must reach beyond the nut (judgement).
const windingRoom = 10 * unit.Millimetre

// singles are the single strings of the set, by gauge.
func (b *Bench) singles() []purchase {
	var out []purchase
	if b.d == nil {
		return nil
	}
	for i, s := range slices.Backward(b.d.Strings) {
		at := slices.IndexFunc(out, func(p purchase) bool { return p.gauge == s.Gauge })
		if at < 0 {
			at, out = len(out), append(out, purchase{kind: "single string", gauge: s.Gauge})
		}
		out[at].count++
		out[at].strings = append(out[at].strings, s.Number)
		if b.in.Plan.Stock()[s.Gauge].Family != gauges.Plain {
			out[at].winding = max(out[at].winding, s.Length+b.in.Plan.Request().Tails[i].Saddle+windingRoom)
		}
	}
	u := b.in.Units.Decimal()
	for i, p := range out {
		g := b.in.Plan.Stock()[p.gauge]
		p.what = fmt.Sprintf("single %s, %s, %s", b.in.gauge(p.gauge), g.Family, u.LenText(g.Outer, markDecimals))
		p.remarks = []string{"for string " + numbers(p.strings)}
		if p.winding > 0 {
			p.remarks = append(p.remarks, "wound part at least "+u.LenText(p.winding, 0))
		}
		if weighFirst(b.in.Plan.Stock()[p.gauge]) {
			p.remarks = append(p.remarks, "buy one first and weigh it")
		}
		out[i] = p
	}
	return out
}

// shopping lists single strings by gauge, the blank and the fret wire.
func (b *Bench) shopping() *table.Table {
	in, u, need := b.in, b.in.Units.Decimal(), b.l.LeastBlank()
	blank, size := "fingerboard blank", fmt.Sprintf("at least %s x %s", in.atLeast(need.Length), in.atLeast(need.Width))
	if b.blank >= 0 {
		blank += ": " + b.Blank.Name
	}
	if b.LeastThickness > 0 {
		size += fmt.Sprintf(", planed no thinner than %s", in.length(b.LeastThickness))
	}
	wire := fmt.Sprintf("%s and %s %% to spare", u.LenText(b.wire.Sum, 0), trim(b.saw.Spare.Percent()))
	rows := append(b.singles(), purchase{what: blank, kind: "fingerboard blank", count: 1, remarks: []string{size}},
		purchase{what: "fret wire", kind: "fret wire", remarks: []string{wire}})
	t := table.Of("shopping", "Shopping list", rows,
		table.Words("what", "", func(p purchase) string { return p.what }),
		table.Words("", "what", func(p purchase) string { return p.kind }),
		table.Words("", "gauge", func(p purchase) string { return in.Plan.Stock()[p.gauge].Label }).Known(purchase.single),
		table.Whole("how many", "how_many", func(p purchase) int { return p.count }).As(func(p purchase) string {
			if p.count == 0 {
				return u.LenText(b.wire.Total, 0)
			}
			return fmt.Sprint(p.count)
		}),
		table.Values("for_strings", func(p purchase) any { return p.strings }).Known(purchase.single),
		table.Length(u, "", "string_diameter", markDecimals, func(p purchase) unit.Length { return in.Plan.Stock()[p.gauge].Outer }).Known(purchase.single),
		table.Length(u, "", "least_winding", 0, func(p purchase) unit.Length { return p.winding }).Known(purchase.single),
		table.Bool("", "weigh_one_first", func(p purchase) bool { return weighFirst(in.Plan.Stock()[p.gauge]) }).Known(purchase.single),
		table.Words("remarks", "remarks", func(p purchase) string { return strings.Join(p.remarks, "; ") }))
	switch {
	case b.d == nil:
		return t.Note("Single strings follow once a set of gauges is chosen.")
	case slices.ContainsFunc(rows, func(p purchase) bool { return p.winding > 0 }):
		t.Note(fmt.Sprintf("Wound part: scale length of the string, what lies behind the saddle, and %s beyond the nut.", in.Units.LenText(windingRoom, 0)))
	}
	if in.unsure(b.d.Gauges) != nil {
		t.Note("Gauges that are suspect or were never weighed: buy one of each first, weigh it, run again, and only then buy the rest.")
	}
	return t
}
