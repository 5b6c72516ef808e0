package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/tension/choice"
)

// LackOf is a string that wants a gauge which is not in stock.
type LackOf struct {
	MissingOf
	Outer  unit.Length `json:"outer_mm"` // 0 where no fit gives it
	Bass   unit.Length `json:"bass_mm"`  // the pair on which it is lacking
	Treble unit.Length `json:"treble_mm"`
	// Column is where a set for all columns of a comparison is that far off.
	Column string `json:"column,omitempty"`
	// InStock comes near what is wanted, and something else speaks against it.
	InStock string `json:"in_stock,omitempty"`
}

// WithOf is a pick as it would be with what is lacking.
type WithOf struct {
	Kind choice.PickKind `json:"pick"`
	choice.Pair
}

// addLacks works up what the stock lacks.
func (a *Advice) addLacks(f *Found) {
	a.Lacking, a.WithThem = []LackOf{}, []WithOf{}
	for _, l := range f.Lacks {
		a.Lacking = append(a.Lacking, LackOf{MissingOf: MissingOf{l.Missing, a.in.Plan.Stock()[l.Gauge].Label}, Outer: l.Outer, Bass: l.Pair.Bass, Treble: l.Pair.Treble})
	}
	if f.With != nil {
		for _, p := range f.With.Picks {
			a.WithThem = append(a.WithThem, WithOf{p.Kind, p.Pair})
		}
	}
}

// wants says how far a string is from the wanted tension and which gauge it wants:
// its linear density and, where a fit gives it, its diameter.
func (in *Input) wants(l LackOf) string {
	density, decimals := unit.Fixed(l.Wanted.GramsPerMetre(), 2)+" g/m", markDecimals
	if in.Units.Length != unit.Millimetres {
		density, decimals = in.Units.DensityText(l.Wanted), scaleDecimals // thousandths of an inch
	}
	off, wants := table.SignedPercentText(l.Deviation, 1)+" off", "wants"
	if l.Column != "" {
		off, wants = off+" in "+l.Column, "wants for all columns"
	}
	text := fmt.Sprintf("string %d on %s is %s, and %s a gauge of %s", l.String, in.gauge(l.Missing.Gauge), off, wants, density)
	switch {
	case l.InStock != "":
		text += fmt.Sprintf("; %s comes near, but its bends, a limit or its neighbours speak against it", l.InStock)
	case l.Outer > 0:
		text += fmt.Sprintf(", about %s outside", in.Units.Decimal().LenText(l.Outer, decimals))
	}
	return text
}

// lackWords say which gauges the stock lacks, and what they would change.
func (a *Advice) lackWords() []string {
	var out []string
	for _, p := range a.Picks {
		if p.Kind != a.Choice {
			continue
		}
		for _, m := range p.StockDecides {
			l := LackOf{MissingOf: m}
			if i := slices.IndexFunc(a.Lacking, func(l LackOf) bool { return l.String == m.String }); i >= 0 {
				l = a.Lacking[i]
			}
			out = append(out, "The strings in stock, not feel, move the lengths: "+a.in.wants(l)+".")
		}
		for _, l := range a.Lacking {
			if l.Bass == p.Bass && l.Treble == p.Treble && !slices.ContainsFunc(p.StockDecides, func(m MissingOf) bool { return m.String == l.String }) {
				out = append(out, "A gauge is missing: "+a.in.wants(l)+".")
			}
		}
	}
	if out == nil && len(a.Lacking) > 0 { // on the pair that would be a smaller fan
		l := a.Lacking[0]
		if i := slices.IndexFunc(a.WithThem, func(w WithOf) bool { return w.Kind == choice.SmallestFan }); i >= 0 && a.WithThem[i].Difference < a.Result.Pick(choice.SmallestFan).Difference {
			out = append(out, fmt.Sprintf("The strings in stock, not feel, stop a smaller fan: on %s %s; with it the smallest fan is %s.",
				a.in.Pair(l.Bass, l.Treble), a.in.wants(l), a.in.Pair(a.WithThem[i].Bass, a.WithThem[i].Treble)))
		}
		return out
	}
	if out != nil && len(a.WithThem) > 0 {
		words := make([]string, len(a.WithThem))
		for i, w := range a.WithThem {
			words[i] = fmt.Sprintf("%s %s, %s", w.Kind, a.in.Pair(w.Bass, w.Treble), table.PercentText(w.Error, 1))
		}
		it := map[bool]string{true: "it", false: "them"}[len(out) == 1]
		out = append(out, fmt.Sprintf("With %s in stock the picks and their feel errors are: %s.", it, strings.Join(words, "; ")))
	}
	return out
}

// How far a string may be off before it is said what it wants, in a set chosen
// for its column and in one for several (judgement: tunings a whole tone apart
// differ by 25 % of tension).
const (
	offAlone    unit.Ratio = 0.10
	offTogether unit.Ratio = 0.25
)

// lacking lists the strings of a column's own set, chosen from the stock, that are
// far from the wanted tension.
func (in *Input) lacking(d *choice.Detail) []LackOf {
	out := []LackOf{}
	for _, s := range slices.Backward(d.Strings) {
		if s.Target > 0 && max(s.Deviation, -s.Deviation) > offAlone {
			out = append(out, in.lackOf(d, s.Number, s.Deviation, s.Wanted))
		}
	}
	return out
}

// lackOf is what a string of a detail wants.
func (in *Input) lackOf(d *choice.Detail, number int, off unit.Ratio, wanted unit.LinearDensity) LackOf {
	at := d.Strings[number-1].Gauge
	g := in.Plan.Stock()[at]
	out := LackOf{MissingOf: MissingOf{choice.Missing{String: number, Gauge: at, Deviation: off, Wanted: wanted}, g.Label}, Bass: d.Bass, Treble: d.Treble}
	if sized, ok := in.Run.Stock.Sized(g, wanted); ok {
		out.Outer = sized.Outer
	}
	for _, i := range in.Plan.Request().Usable {
		if one := in.Plan.Stock()[i]; i != at && math.Abs(math.Log(float64(one.LinearDensity/wanted))) < near {
			out.InStock = one.Label
		}
	}
	return out
}

// near is how far a gauge in stock may be from a wanted linear density that is
// not lacking then (judgement: a fraction of a step between gauges).
const near = 0.03

// lackingTogether lists the strings of one set for all columns that are far from
// the wanted tension in any of them, with what suits all columns best.
func (c *Comparison) lackingTogether() []LackOf {
	out, list := []LackOf{}, c.strung()
	if len(list) == 0 {
		return out
	}
	for i := range slices.Backward(list[0].d.Strings) {
		far, product := list[0], 1.0
		for _, one := range list {
			if s := one.d.Strings[i]; math.Abs(float64(s.Deviation)) > math.Abs(float64(far.d.Strings[i].Deviation)) {
				far = one
			}
			product *= float64(one.d.Strings[i].Wanted)
		}
		if s := far.d.Strings[i]; s.Target > 0 && max(s.Deviation, -s.Deviation) > offTogether {
			l := far.in.lackOf(far.d, s.Number, s.Deviation, unit.LinearDensity(math.Pow(product, 1/float64(len(list)))))
			l.Column = far.Name
			out = append(out, l)
		}
	}
	return out
}
