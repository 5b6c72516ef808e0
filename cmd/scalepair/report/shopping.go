package report

import (
	"fmt"
	"slices"
	"strings"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/tension/choice"
)

// purchase is one line of the shopping list.
type purchase struct {
	What    string // as people read it
	Kind    string // single string, fingerboard blank or fret wire
	Count   int    // 0 for the wire
	Length  unit.Length
	Width   unit.Length
	Remarks string
	Single  *Single // of a single string
}

// Single is one gauge of the shopping list.
type Single struct {
	Gauge   int   // index into the stock
	Strings []int // the strings it is for, the lowest first
	// LeastWinding is the wound part that the longest of them needs; 0 on a plain
	// string.
	LeastWinding unit.Length
}

// windingRoom is how far the wound part must reach beyond the nut (judgement).
const windingRoom = 10 * unit.Millimetre

// Singles counts the single strings of a set by gauge; none without a detail.
func (in *Input) Singles(d *choice.Detail) []Single {
	var out []Single
	if d == nil {
		return out
	}
	for i, s := range slices.Backward(d.Strings) {
		at := slices.IndexFunc(out, func(o Single) bool { return o.Gauge == s.Gauge })
		if at < 0 {
			at, out = len(out), append(out, Single{Gauge: s.Gauge})
		}
		out[at].Strings = append(out[at].Strings, s.Number)
		if in.Plan.Stock()[s.Gauge].Family != gauges.Plain {
			out[at].LeastWinding = max(out[at].LeastWinding, s.Length+in.Plan.Request().Tails[i].Saddle+windingRoom)
		}
	}
	return out
}

// weighFirst reports whether a gauge is to be weighed before a set of it is
// bought.
func (in *Input) weighFirst(g int) bool {
	s := in.Plan.Stock()[g]
	return s.Suspect || s.Disagrees || s.Readings == 0
}

// purchases are what to buy for one pair: single strings by gauge, the blank, the
// fret wire.
func (b *Bench) purchases() []purchase {
	in := b.in
	u := in.Units
	u.Length = decimal(u.Length)
	var out []purchase
	for _, one := range in.Singles(b.d) {
		g := in.Plan.Stock()[one.Gauge]
		words := []string{"for string " + numbers(one.Strings)}
		if one.LeastWinding > 0 {
			words = append(words, "wound part at least "+u.LenText(one.LeastWinding, 0))
		}
		if in.weighFirst(one.Gauge) {
			words = append(words, "buy one first and weigh it")
		}
		out = append(out, purchase{What: fmt.Sprintf("single %s, %s, %s", in.gauge(one.Gauge), g.Family, u.LenText(g.Outer, markDecimals)),
			Kind: "single string", Count: len(one.Strings), Remarks: strings.Join(words, "; "), Single: &one})
	}
	what, size := b.blankToBuy()
	out = append(out, purchase{What: what, Kind: "fingerboard blank", Count: 1, Length: b.Layout.BlankLength, Width: b.Layout.BlankWidth, Remarks: size})
	shortest, longest := b.wire.Cuts[0].Length, b.wire.Cuts[0].Length
	for _, c := range b.wire.Cuts {
		shortest, longest = min(shortest, c.Length), max(longest, c.Length)
	}
	return append(out, purchase{What: "fret wire", Kind: "fret wire", Length: b.wire.Total,
		Remarks: fmt.Sprintf("in pieces from %s to %s; the sum of them is %s", u.Len(shortest, 0), u.LenText(longest, 0), u.LenText(b.wire.Sum, 0))})
}

// decimal is a unit whose small lengths are not lost in fractions.
func decimal(u unit.LengthUnit) unit.LengthUnit {
	if u == unit.InchFractions {
		return unit.DecimalInches
	}
	return u
}

// shoppingTable lists the purchases.
func (b *Bench) shoppingTable() *table.Table {
	in := b.in
	u := in.Units
	single := func(p purchase) bool { return p.Single != nil }
	return table.Of("shopping", "", b.purchases(),
		table.Words("what", "", func(p purchase) string { return p.What }),
		table.Words("", "what", func(p purchase) string { return p.Kind }),
		table.Words("", "gauge", func(p purchase) string { return in.Plan.Stock()[p.Single.Gauge].Label }).Known(single),
		table.Whole("how many", "how_many", func(p purchase) int { return p.Count }).As(func(p purchase) string { return in.manyWords(p) }),
		table.Values("for_strings", func(p purchase) any { return p.Single.Strings }).Known(single),
		table.Length(u, "", "least_winding", 0, func(p purchase) unit.Length { return p.Single.LeastWinding }).Known(single),
		table.Bool("", "weigh_one_first", func(p purchase) bool { return in.weighFirst(p.Single.Gauge) }).Known(single),
		table.Length(u, "", "length", 1, func(p purchase) unit.Length { return p.Length }).Known(func(p purchase) bool { return p.Length > 0 }),
		table.Length(u, "", "width", 1, func(p purchase) unit.Length { return p.Width }).Known(func(p purchase) bool { return p.Width > 0 }),
		table.Words("remarks", "remarks", func(p purchase) string { return p.Remarks }),
	).Note(b.shoppingNotes()...)
}

func (in *Input) manyWords(p purchase) string {
	if p.Count == 0 {
		u := in.Units
		u.Length = decimal(u.Length)
		return u.LenText(p.Length, 0)
	}
	return fmt.Sprint(p.Count)
}

func (b *Bench) shoppingNotes() []string {
	in := b.in
	if b.d == nil {
		return []string{"Single strings follow once a set of gauges is chosen."}
	}
	var out []string
	if slices.ContainsFunc(in.Singles(b.d), func(one Single) bool { return one.LeastWinding > 0 }) {
		out = append(out, fmt.Sprintf("Wound part: scale length of the string, what lies behind the saddle, and %s beyond the nut.", in.Units.LenText(windingRoom, 0)))
	}
	if slices.ContainsFunc(b.d.Gauges, in.weighFirst) {
		out = append(out, "Gauges that are suspect or were never weighed: buy one of each first, weigh it, run again, and only then buy the rest.")
	}
	return out
}

// blankToBuy names the blank to buy: the one worked with, or the least size.
func (b *Bench) blankToBuy() (what, size string) {
	u := b.in.Units
	size = fmt.Sprintf("at least %s x %s", u.Len(b.Layout.BlankLength, scaleDecimals), u.LenText(b.Layout.BlankWidth, scaleDecimals))
	if b.LeastThickness > 0 {
		size += fmt.Sprintf(", planed no thinner than %s", u.LenText(b.LeastThickness, scaleDecimals))
	}
	if b.blank < 0 {
		return "fingerboard blank", size
	}
	return "fingerboard blank: " + b.fits[b.blank].Blank.Name, size
}
