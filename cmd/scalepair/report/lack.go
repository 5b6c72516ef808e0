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

func (in *Input) missingOf(m choice.Missing) MissingOf {
	return MissingOf{m, in.Plan.Stock()[m.Gauge].Label}
}

// lackOf says of a gauge that is lacking what diameter it would have, and which in
// stock comes near.
func (in *Input) lackOf(m choice.Missing, p choice.Pair) LackOf {
	out, stock := LackOf{MissingOf: in.missingOf(m), Bass: p.Bass, Treble: p.Treble}, in.Plan.Stock()
	if sized, ok := in.Run.Stock.Sized(stock[m.Gauge], m.Wanted); ok {
		out.Outer = sized.Outer
	}
	for _, i := range in.Plan.Request().Usable {
		if i != m.Gauge && math.Abs(math.Log(float64(stock[i].LinearDensity/m.Wanted))) < near {
			out.InStock = stock[i].Label
		}
	}
	return out
}

// wants says how far a string is from the wanted tension and which gauge it wants:
// its linear density and, where a fit gives it, its diameter.
func (in *Input) wants(l LackOf) string {
	where := ""
	if l.Column != "" {
		where = " in " + l.Column
	}
	if len(in.Tunings()) > 1 {
		where += " over all tunings"
	}
	text := fmt.Sprintf("string %d on %s is %s off%s, and wants a gauge of %s", l.String, in.gauge(l.Missing.Gauge), table.SignedPercentText(l.Deviation, 1), where, in.Units.DensityText(l.Wanted))
	if l.Outer > 0 {
		text += fmt.Sprintf(", about %s outside", in.fine().text(l.Outer))
	}
	if l.InStock != "" {
		text += fmt.Sprintf("; %s comes near, but its bends, a limit or its neighbours speak against it", l.InStock)
	}
	return text
}

// lackWords say which gauges the stock lacks, and what they would change.
func (a *Advice) lackWords() []string {
	pick := a.Picks[slices.IndexFunc(a.Picks, func(p PickOf) bool { return p.Kind == a.Choice })]
	list := slices.Clone(a.Lacking)
	for _, m := range pick.StockDecides {
		if !slices.ContainsFunc(list, func(l LackOf) bool { return l.String == m.String }) {
			list = append(list, a.in.lackOf(m.Missing, pick.Pair))
		}
	}
	var lacked []int // that the search with them has a gauge for
	for _, l := range a.Lacking {
		lacked = append(lacked, l.String)
	}
	smaller := false // with what is lacking the smallest fan is
	var picks []string
	for _, w := range a.WithThem {
		smaller = smaller || w.Kind == choice.SmallestFan && w.Difference < a.Result.Pick(choice.SmallestFan).Difference
		picks = append(picks, fmt.Sprintf("%s %s, %s", w.Kind, a.in.Pair(w.Bass, w.Treble), table.PercentText(w.Error, 1)))
	}
	var out lines
	for _, l := range list {
		decides := slices.ContainsFunc(pick.StockDecides, func(m MissingOf) bool { return m.String == l.String })
		here := l.Bass == pick.Bass && l.Treble == pick.Treble
		out.sayIf(decides, "The strings in stock, not feel, move the lengths: %s.", a.in.wants(l))
		out.sayIf(!decides && here, "A gauge is missing: %s.", a.in.wants(l))
		out.sayIf(!decides && !here && smaller, "A gauge is missing for a smaller fan: on %s %s.", a.in.Pair(l.Bass, l.Treble), a.in.wants(l))
	}
	out.sayIf(out != nil && picks != nil, "With gauges for %s in stock the picks and their feel errors are: %s.", several("string", lacked), strings.Join(picks, "; "))
	return out
}

// How far a string may be off before it is said what it wants, in a set chosen
// for its column and in one for several (judgement: tunings a whole tone apart
// differ by 25 % of tension). near is how far a gauge in stock may be from a wanted
// linear density that is not lacking then (judgement: a fraction of a step between
// gauges).
const (
	offAlone    unit.Ratio = 0.10
	offTogether unit.Ratio = 0.25
	near                   = 0.03
)

// lacking lists the strings of a set that are further than that from the wanted
// tension in any of its columns, with what suits all of them best.
func lacking(columns []*ColumnOf, most unit.Ratio) []LackOf {
	out := []LackOf{}
	if len(columns) == 0 {
		return out
	}
	for i := range slices.Backward(columns[0].d.Strings) {
		far, product := columns[0], 1.0
		for _, one := range columns {
			if size(one.d.Strings[i].Deviation) > size(far.d.Strings[i].Deviation) {
				far = one
			}
			product *= float64(one.d.Strings[i].Wanted)
		}
		s := far.d.Strings[i]
		if s.Target == 0 || size(s.Deviation) <= most {
			continue
		}
		l := far.in.lackOf(choice.Missing{String: s.Number, Gauge: s.Gauge, Deviation: s.Deviation, Wanted: unit.LinearDensity(math.Pow(product, 1/float64(len(columns))))}, far.d.Pair)
		if len(columns) > 1 {
			l.Column = far.Name
		}
		out = append(out, l)
	}
	return out
}
