package report

import (
	"cmp"
	"fmt"
	"slices"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/tension/choice"
)

// watch is a quantity with the range that it seldom leaves. A value outside is
// possible, so it is only warned of, and changes nothing.
type watch struct {
	name      string
	low, high float64 // SI
	text      func(u table.Units, x float64) string
	source    string
	// values are looked at; d is nil where no pair and set are in force. What a limit
	// of the builder's bounds was thought of, so it is not warned of as well.
	values func(in *Input, d *choice.Detail) []value
}

// value is one number that is looked at, and whose it is.
type value struct {
	of string
	x  float64
}

// watches are all the warnings there are: slips that builders make and that
// nothing else catches.
var watches = []watch{
	{"scale length", 0.5, 0.95, lengthText, "judgement: from small guitars to long basses", func(in *Input, d *choice.Detail) (out []value) {
		if d != nil {
			out = append(out, value{"the bass", d.Bass.M()}, value{"the treble", d.Treble.M()})
		}
		if ref := in.Plan.Request().Reference; ref != nil {
			out = append(out, value{"the reference", ref.Neck.Bass.M()})
		}
		return out
	}},
	{"difference of the scale lengths", -0.03, 0.08, lengthText, "judgement: fans that are built", func(in *Input, d *choice.Detail) []value {
		if d == nil || in.Plan.Request().Limits.Difference > 0 {
			return nil
		}
		return []value{{"the pair", d.Difference.M()}}
	}},
	{"mean step from string to string", 0.0055, 0.021, lengthText, "judgement: from narrow guitar nuts to wide bass saddles", func(in *Input, _ *choice.Detail) []value {
		n := in.Plan.Request().Neck
		if n.NutSpread == 0 {
			return nil // they follow from the board's widths
		}
		steps := float64(n.Strings - 1)
		return []value{{"the nut", n.NutSpread.M() / steps}, {"the saddle", n.SaddleSpread.M() / steps}}
	}},
	{"string spread (as a part of the saddle's)", 0.4, 1, ratioText, "judgement: strings part towards the bridge; digits swapped?", func(in *Input, _ *choice.Detail) []value {
		n := in.Plan.Request().Neck
		if n.NutSpread == 0 {
			return nil
		}
		return []value{{"the nut", float64(n.NutSpread / n.SaddleSpread)}}
	}},
	{"edge margin", 0.0015, 0.008, lengthText, "judgement: less lets a string slip off the board", func(in *Input, _ *choice.Detail) []value {
		return []value{{"the board", in.Plan.Request().Neck.EdgeMargin.M()}}
	}},
	{"pitch", 20, 500, hertzText, "judgement: low basses to the highest guitar strings", func(in *Input, _ *choice.Detail) (out []value) {
		for _, c := range in.Plan.Request().Cases {
			for i, f := range slices.Backward(c.Pitches) {
				out = append(out, value{fmt.Sprintf("string %d in %s", i+1, c.Name), f.Hz()})
			}
		}
		return out
	}},
	{"pitch standard", 430, 446, hertzText, "judgement: A4 as orchestras and bands tune", func(in *Input, _ *choice.Detail) []value {
		return []value{{"A4", in.pitchStandard().Hz()}}
	}},
	{"tension", 30, 300, forceText, "judgement: from slack guitar to tight bass strings", func(_ *Input, d *choice.Detail) (out []value) {
		if d == nil {
			return nil
		}
		for _, one := range slices.Backward(d.Strings) {
			if t := one.Tunings[0].Tension.Value; t > 0 {
				out = append(out, value{fmt.Sprintf("string %d", one.Number), t.N()})
			}
		}
		return out
	}},
	{"linear density (as a multiple of a solid wire's)", 0.9, 1.1, ratioText, "judgement: a plain string is solid; pieces miscounted, or a slip of mass, length or diameter", func(in *Input, _ *choice.Detail) (out []value) {
		for _, g := range in.Plan.Stock() {
			if area := g.AreaM2; g.Family == gauges.Plain && g.Readings > 0 && area > 0 && g.DensityKgM3 > 0 {
				out = append(out, value{g.Label, g.LinearDensity.KgPerM() / (area * g.DensityKgM3)})
			}
		}
		return out
	}},
	{"resolution of the balance", 0.0001e-3, 0.1e-3, massText, "judgement: kitchen scales of 1 g cannot weigh a string end", func(in *Input, _ *choice.Detail) []value {
		return []value{{"[measuring]", float64(in.Run.Build.Measuring.BalanceResolution)}}
	}},
	{"resolution of the ruler", 0.01e-3, 1e-3, lengthText, "judgement: calipers to tape measures", func(in *Input, _ *choice.Detail) []value {
		return []value{{"[measuring]", in.Run.Build.Measuring.RulerResolution.M()}}
	}},
	{"nut to fret 1 on the bass line", 0.028, 0.055, lengthText, "judgement: a longer step than on a long bass is out of reach for most hands", func(in *Input, d *choice.Detail) []value {
		if d == nil || in.Plan.Request().Limits.NutToFret1 > 0 {
			return nil
		}
		return []value{{"the pair", d.NutToFret1.M()}}
	}},
}

func lengthText(u table.Units, x float64) string { return u.LenText(unit.Length(x), markDecimals) }
func forceText(u table.Units, x float64) string  { return u.ForceText(unit.Force(x)) }
func hertzText(_ table.Units, x float64) string  { return trim(toDecimals(x, 1)) + " Hz" }
func ratioText(_ table.Units, x float64) string  { return trim(toDecimals(x, 2)) + " times" }
func massText(_ table.Units, x float64) string   { return trim(toDecimals(unit.Mass(x).G(), 4)) + " g" }

// watched gives the warnings of the build, and of pairs with their sets, one for
// each gauge that was left out and for each quantity.
func (in *Input) watched(details ...*choice.Detail) []string {
	out := []string{}
	for _, l := range in.Run.Stock.LeftOut {
		out = append(out, fmt.Sprintf("%v; it is left out", l.Why))
	}
	out = append(out, in.thickCores()...)
	if in.Plan == nil {
		return out // nothing was looked at but geometry
	}
	for _, w := range watches {
		values := w.values(in, nil)
		for _, d := range details {
			values = append(values, w.values(in, d)...)
		}
		i := slices.IndexFunc(values, func(v value) bool { return v.x < w.low || v.x > w.high })
		if i >= 0 {
			out = append(out, fmt.Sprintf("the %s of %s is %s, and seldom lies outside %s to %s (%s)",
				w.name, values[i].of, w.text(in.Units, values[i].x), w.text(in.Units, w.low), w.text(in.Units, w.high), w.source))
		}
	}
	return out
}

// thickCore is how many times the core of the next thicker gauge of its kind a core
// seldom is (judgement: cores grow with the gauge, but for a step of the calipers).
const thickCore = 1.1

// thickCores warns of gauges whose cores do not grow with them, as when two digits of
// one were exchanged. The weighing does not show it.
func (in *Input) thickCores() (out lines) {
	last := map[string]gauges.Gauge{}
	rising := slices.Clone(in.Run.Stock.Gauges)
	slices.SortStableFunc(rising, func(a, b gauges.Gauge) int { return cmp.Compare(a.Outer, b.Outer) })
	for _, g := range rising {
		if g.Family == gauges.Plain || g.Core == 0 || g.Outer == 0 {
			continue
		}
		kind := familyName(g.Family, g.Material)
		thin := last[kind]
		if float64(thin.Core) > thickCore*float64(g.Core) {
			out.say("the core of %s is %s and that of %s, which is thicker, %s: measure both again, since a weighing does not show a wrong core",
				thin.Label, in.fine().text(thin.Core), g.Label, in.fine().text(g.Core))
		}
		last[kind] = g
	}
	return out
}
