package report

import (
	"fmt"
	"math"

	"scalepair/data/unit"
	"scalepair/tension/choice"
)

// asked says in words what the build asks for.
func (in *Input) asked() []string {
	req := in.Plan.Request()
	var out []string
	add := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	for c, one := range req.Cases {
		weight := ""
		if len(req.Cases) > 1 && req.By == choice.Mean {
			weight = ", weight " + trim(one.Weight)
		}
		add("Tuning: %s, A4 = %s Hz%s.", in.caseWords(c), trim(in.pitchStandard().Hz()), weight)
	}
	if len(req.Cases) > 1 {
		by := "their weighted mean counts"
		if req.By == choice.Worst {
			by = "each string counts in the tuning that suits it least"
		}
		add("One set for all of them; %s.", by)
	}
	switch {
	case req.Given != nil:
		add("Gauges given: %s (low string first).", in.Set(req.Given))
	case req.Ordering:
		add("Gauges free, from %d in stock; no string lighter than its treble neighbour, no plain string on the bass side of a wound one.", len(req.Usable))
	default:
		add("Gauges free, from %d in stock, in any order.", len(req.Usable))
	}
	if ref := req.Reference; ref != nil {
		add("Like %s: %s, %s, strung %s.%s", in.referenceName(), in.Pair(ref.Neck.Bass, ref.Neck.Treble), in.Run.Build.Reference.Tuning,
			in.Set(ref.Gauges), in.comparedWords())
	}
	add("Tension: %s.", in.targetWords(req.Feel.Tension))
	if bent := in.Plan.BendStrings(); len(bent) == 0 || len(req.Feel.BendFrets) == 0 || req.Feel.BendingForce.Kind == choice.NoTarget {
		add("Bending force: not counted.")
	} else {
		add("Bending force: %s, for a bend of %s cents on %s at %s, with a weight of %s beside the tension's 1.", in.targetWords(req.Feel.BendingForce),
			trim(req.Feel.Bend.Value()), several("string", bent), several("fret", req.Feel.BendFrets), trim(req.Feel.BendWeight))
	}
	if c := req.Feel.Inharmonicity; c > 0 {
		add("Clear enough: the tenth partial of the lowest string at most %s above ten times its pitch.", cents(c))
	}
	add("Bass scale: %s. Treble scale: %s.", in.gridWords(req.Bass), in.gridWords(req.Treble))
	if words := in.limitWords(req.Limits); words != nil {
		add("Limits: %s.", listed(words))
	}
	return out
}

func (in *Input) referenceName() string {
	if name := in.Run.Build.Reference.Name; name != "" {
		return name
	}
	return "the reference instrument"
}

// comparedWords say which string of the reference each string is compared with,
// where that is not the one of its number.
func (in *Input) comparedWords() string {
	list := in.Plan.ReferenceStrings()
	for i, n := range list {
		if n != i+1 || i == len(list)-1 && n != len(in.Plan.Request().Reference.Gauges) {
			return fmt.Sprintf(" Strings 1 to %d are compared with its strings %s.", len(list), numbers(list))
		}
	}
	return ""
}

func (in *Input) targetWords(t choice.Target) string {
	text := ""
	switch t.Kind {
	case choice.NoTarget:
		return "no target"
	case choice.Even:
		return "even"
	case choice.LikeReference:
		if t.NoHarder {
			return "no harder than the reference"
		}
		return "like the reference"
	}
	if t.NoHarder {
		text = "no harder than "
	}
	if len(t.Forces) == 1 {
		return text + in.Units.ForceText(t.Forces[0])
	}
	words := make([]string, len(t.Forces))
	for i, f := range t.Forces {
		words[len(words)-1-i] = in.Units.Newtons(f)
	}
	return text + listed(words) + " " + in.Units.Force.Symbol() + ", low string first"
}

// limitWords name the limits that are on.
func (in *Input) limitWords(l choice.Limits) []string {
	var out []string
	add := func(limit choice.Limit, value float64) {
		if value == 0 {
			return
		}
		bound := "up to"
		if limit == choice.LeastTension {
			bound = "from"
		}
		out = append(out, fmt.Sprintf("%s %s %s", limit, bound, in.quantityText(limit.Quantity(value), 0)))
	}
	add(choice.DifferenceLimit, float64(l.Difference))
	add(choice.FretSlant, float64(l.FretSlant))
	add(choice.SaddleSlant, float64(l.SaddleSlant))
	add(choice.NutToFret1, float64(l.NutToFret1))
	add(choice.InharmonicityLimit, float64(l.Inharmonicity))
	add(choice.BreakingOpen, float64(l.BreakingOpen))
	add(choice.BreakingBent, float64(l.BreakingBent))
	add(choice.LeastTension, float64(l.LeastTension))
	add(choice.MostTension, float64(l.MostTension))
	add(choice.MostBendingForce, float64(l.MostBendingForce))
	add(choice.SaddleTravel, float64(l.SaddleTravel))
	if l.Blank {
		out = append(out, "a blank on offer must fit")
	}
	return out
}

// gridWords name a grid: "660.0 to 720.0 mm by 5.0", a list, or one length.
func (in *Input) gridWords(list []unit.Length) string {
	u := in.Units
	switch n := len(list); {
	case n == 0:
		return none
	case n == 1:
		return in.length(list[0])
	case n > 2 && even(list):
		return fmt.Sprintf("%s to %s by %s", u.Len(list[0], scaleDecimals), in.length(list[n-1]), u.Len(list[1]-list[0], scaleDecimals))
	default:
		words := make([]string, n)
		for i, l := range list {
			words[i] = u.Len(l, scaleDecimals)
		}
		return listed(words) + " " + u.Length.Symbol()
	}
}

// even reports whether all steps but the last, which meets the end, are alike.
func even(list []unit.Length) bool {
	for i := 2; i < len(list)-1; i++ {
		if math.Abs(float64((list[i]-list[i-1])-(list[1]-list[0]))) > 1e-9 {
			return false
		}
	}
	return true
}

func toDecimals(x float64, decimals int) float64 {
	p := math.Pow10(decimals)
	return math.Round(x*p) / p
}
