package report

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/tension"
	"scalepair/tension/choice"
)

// asked says in words what the build asks for.
func (in *Input) asked() []string {
	req := in.Plan.Request()
	var out lines
	for c, one := range req.Cases {
		weight := ""
		if len(req.Cases) > 1 && req.By == choice.Mean {
			weight = ", weight " + trim(one.Weight)
		}
		out.say("Tuning: %s, A4 = %s Hz%s.", in.caseWords(c), trim(in.pitchStandard().Hz()), weight)
	}
	by := map[choice.Combining]string{choice.Mean: "their weighted mean counts", choice.Worst: "each string counts in the tuning that suits it least"}[req.By]
	out.sayIf(len(req.Cases) > 1, "One set for all of them; %s.", by)
	order := map[bool]string{true: "; no string lighter than its treble neighbour, no plain string on the bass side of a wound one", false: ", in any order"}[req.Ordering]
	out.sayIf(req.Given != nil, "Gauges given: %s (low string first).", in.Set(req.Given))
	out.sayIf(req.Given == nil, "Gauges free, from %d in stock%s.", len(req.Usable), order)
	if ref := req.Reference; ref != nil {
		list, compared := in.Plan.ReferenceStrings(), ""
		if !slices.Equal(list, firstOf(len(ref.Gauges))) {
			compared = fmt.Sprintf(" Strings 1 to %d are compared with its strings %s.", len(list), numbers(list))
		}
		out.say("Like %s: %s, %s, strung %s.%s", cmp.Or(in.Run.Build.Reference.Name, "the reference instrument"), in.Pair(ref.Neck.Bass, ref.Neck.Treble), in.Run.Build.Reference.Tuning, in.Set(ref.Gauges), compared)
	}
	out.say("Tension: %s.", in.targetWords(req.Feel.Tension))
	bent := in.Plan.BendStrings()
	noBend := len(bent) == 0 || len(req.Feel.BendFrets) == 0
	if noBend || req.Feel.BendingForce.Kind == choice.NoTarget {
		out.say("Bending force: not counted.")
	} else {
		out.say("Bending force: %s, for a bend of %s cents on %s at %s, with a weight of %s beside the tension's 1.", in.targetWords(req.Feel.BendingForce),
			trim(req.Feel.Bend.Value()), several("string", bent), several("fret", req.Feel.BendFrets), trim(req.Feel.BendWeight))
	}
	out.sayIf(req.Feel.Inharmonicity > 0, "Clear enough: the tenth partial of the lowest string at most %s above ten times its pitch.", cents(req.Feel.Inharmonicity))
	out.say("Bass scale: %s. Treble scale: %s.", in.gridWords(req.Bass), in.gridWords(req.Treble))
	limits := req.Limits
	if noBend { // a limit on bends that nobody makes limits nothing
		limits.BreakingBent, limits.MostBendingForce = 0, 0
	}
	unbent := ""
	if noBend && req.Limits.MostBendingForce > 0 {
		unbent = " Not judged: bending force; no string is bent."
	}
	if words := in.limitWords(limits); words != nil || unbent != "" {
		out.say("Limits: %s.%s%s", cmp.Or(listed(words), "none"), in.notJudged(limits), unbent)
	}
	return out
}

// notJudged says which limits cannot be looked at for want of a core, and of which
// gauges.
func (in *Input) notJudged(l choice.Limits) string {
	text, usable := "", in.Plan.Request().Usable
	for _, one := range []struct {
		what    string
		on      bool
		unknown func(tension.Wire) bool
	}{
		{"breaking strength", l.BreakingOpen > 0, func(w tension.Wire) bool { return w.Breaking(1) == 0 }},
		{"inharmonicity", l.Inharmonicity > 0, func(w tension.Wire) bool { return w.EI == 0 }},
		{"saddle travel", l.SaddleTravel > 0, func(w tension.Wire) bool { return w.EA == 0 }},
	} {
		of := in.labelled(usable, func(g gauges.Gauge) bool { return one.unknown(choice.WireOf(g)) })
		if len(of) == len(usable) {
			of = []string{"any gauge in stock"}
		}
		if one.on && of != nil {
			text += fmt.Sprintf(" Not judged: %s of %s; core or strength not known.", one.what, listed(of))
		}
	}
	return text
}

// firstOf lists the numbers of so many strings.
func firstOf(n int) (out []int) {
	for i := range n {
		out = append(out, i+1)
	}
	return out
}

func (in *Input) targetWords(t choice.Target) string {
	if t.Kind != choice.Stated {
		return t.String()
	}
	var forces []string
	for _, f := range slices.Backward(t.Forces) {
		forces = append(forces, in.Units.ForceText(f))
	}
	harder, order := map[bool]string{true: "no harder than "}[t.NoHarder], map[bool]string{true: ", low string first"}[len(forces) > 1]
	return harder + listed(forces) + order
}

// limitWords name the limits that are on.
func (in *Input) limitWords(l choice.Limits) []string {
	var out lines
	list, bounds := l.Bounds()
	for i, limit := range list {
		out.say("%s %s %s", limit, map[bool]string{true: "from", false: "up to"}[limit.Least()], in.quantityText(limit.Quantity(bounds[i])))
	}
	out.sayIf(l.Blank, "a blank on offer must fit")
	return out
}

// gridWords name a grid: "660.0 mm", or "13 lengths from 660.0 to 720.0 mm".
func (in *Input) gridWords(list []unit.Length) string {
	switch n := len(list); n {
	case 0:
		return none
	case 1:
		return in.length(list[0])
	default:
		return fmt.Sprintf("%d lengths from %s to %s", n, in.Units.Len(list[0], scaleDecimals), in.length(list[n-1]))
	}
}

func toDecimals(x float64, decimals int) float64 {
	p := math.Pow10(decimals)
	return math.Round(x*p) / p
}
