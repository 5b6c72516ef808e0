package report

import (
	"fmt"
	"math"

	"scalepair/cmd/scalepair/show"
	"scalepair/data/unit"
	"scalepair/tension/choice"
)

// reasonWords say why pairs were dropped.
var reasonWords = [...]string{
	choice.ReverseFan:       "bass shorter than treble (not asked for)",
	choice.Unbuildable:      "no neck can be drawn",
	choice.Difference:       "difference of the lengths",
	choice.FretSlant:        "slant of nut or frets",
	choice.SaddleSlant:      "slant of the saddle line",
	choice.NutToFret1:       "reach from nut to fret 1 on the bass line",
	choice.BlankSize:        "no blank on offer is large enough",
	choice.WindingLength:    "winding too short",
	choice.LeastTension:     "tension below the floor",
	choice.MostTension:      "tension above the ceiling",
	choice.StrengthUnknown:  "core or its strength not known, so no breaking limit can be passed",
	choice.BreakingOpen:     "breaking share, open",
	choice.StiffnessUnknown: "core or its stiffness not known, so no bend can be computed",
	choice.BendUnreachable:  "bend not reachable",
	choice.BreakingBent:     "breaking share, bent",
	choice.MostBendingForce: "bending force above the ceiling",
	choice.Inharmonicity:    "inharmonicity of the lowest string",
	choice.SaddleTravel:     "compensation beyond the saddle's travel",
	choice.OrderingRule:     "no set keeps the ordering rule",
}

// limitKeys name the build-file keys that set the limits.
var limitKeys = [...]string{
	choice.ReverseFan: "scales.reverse_fan", choice.Difference: "limits.difference",
	choice.FretSlant: "limits.fret_slant_deg", choice.SaddleSlant: "limits.saddle_slant_deg",
	choice.NutToFret1: "limits.nut_to_fret_1", choice.BlankSize: "blanks",
	choice.WindingLength: "winding in the readings or under [[constructions]]", choice.LeastTension: "limits.least_tension",
	choice.MostTension: "limits.most_tension", choice.BreakingOpen: "limits.breaking_open_percent",
	choice.BreakingBent: "limits.breaking_bent_percent", choice.MostBendingForce: "limits.most_bending_force",
	choice.Inharmonicity: "limits.inharmonicity_cents", choice.SaddleTravel: "limits.saddle_travel",
	choice.OrderingRule: "strings.ordering",
}

// quantity prints a value of a miss with its unit.
func (in *Input) quantity(r choice.Reason, v float64) string {
	switch r.Quantity() {
	case choice.MillimetreValues:
		return in.Units.LenText(v, scaleDecimals)
	case choice.MetreValues:
		return in.Units.LenText(1000*v, scaleDecimals)
	case choice.RadianValues:
		return show.DegText(v)
	case choice.NewtonValues:
		return in.Units.ForceText(v)
	case choice.ShareValues:
		return show.PercentText(v, 1)
	case choice.CentValues:
		return show.Cents(v) + " cents"
	}
	return ""
}

// against sets a value beside its limit, with more decimals where the usual
// ones would print both alike.
func (in *Input) against(m choice.Miss) string {
	value, limit := in.quantity(m.Reason, m.Value), in.quantity(m.Reason, m.Limit)
	if value != limit {
		return value + " against " + limit
	}
	switch m.Reason.Quantity() {
	case choice.MillimetreValues:
		return in.fineLength(m.Value) + " against " + in.fineLength(m.Limit)
	case choice.MetreValues:
		return in.fineLength(1000*m.Value) + " against " + in.fineLength(1000*m.Limit)
	case choice.RadianValues:
		return show.Fixed(deg(m.Value), 3) + "° against " + show.Fixed(deg(m.Limit), 3) + "°"
	case choice.ShareValues:
		return show.PercentText(m.Value, 3) + " against " + show.PercentText(m.Limit, 3)
	}
	return "just over " + limit
}

// fineLength prints a length to a thousandth of a millimetre, in decimals also
// where lengths go in fractions.
func (in *Input) fineLength(mm float64) string {
	u := in.Units
	if u.Length == unit.InchFractions {
		u.Length = unit.DecimalInches
	}
	return u.LenText(mm, 3)
}

// leastShort is from what length on its usual decimals tell it from nothing, mm.
const leastShort = 0.1

// miss says what a broken limit was about: "string 6 (w46): 92.1 % against
// 90.0 %".
func (in *Input) miss(m choice.Miss) string {
	who := ""
	if m.String > 0 {
		who = fmt.Sprintf("string %d (%s)", m.String, in.gauge(m.Gauge))
	}
	if m.BendFret > 0 {
		who += " at fret " + trim(m.BendFret)
	}
	what := ""
	switch {
	case m.Reason == choice.BlankSize && m.Value >= leastShort:
		what = in.Units.LenText(m.Value, scaleDecimals) + " too large"
	case m.Reason == choice.BlankSize:
		what = in.fineLength(m.Value) + " too large"
	case m.Reason == choice.ReverseFan:
		what = in.quantity(m.Reason, math.Abs(m.Value)) + " shorter"
	case m.Reason == choice.Unbuildable:
		what = m.Neck.String()
	case m.Reason.Quantity() != choice.NoQuantity:
		what = in.against(m)
	}
	switch {
	case who == "":
		return what
	case what == "":
		return who
	}
	return who + ": " + what
}

// dropped prints which limits dropped how many pairs, and the nearest miss of
// each.
func (in *Input) dropped(r *show.Report, res *choice.Result) {
	if len(res.Dropped) == 0 {
		if res.Tried == 1 {
			r.Para("Nothing was dropped: the one pair keeps every limit.")
			return
		}
		r.Para("Nothing was dropped: all %d pairs keep every limit.", res.Tried)
		return
	}
	t := r.Table("dropped", "Dropped, under the first limit that a pair breaks",
		show.Words("limit"), show.Figures("pairs"), show.Words("nearest miss, pair"), show.Words("what it missed by").Later(1))
	for _, d := range res.Dropped {
		t.Row(reasonWords[d.Reason], fmt.Sprint(d.Pairs), in.Pair(d.Nearest.BassMM, d.Nearest.TrebleMM), in.miss(d.Nearest))
	}
	t.Note("%s tried, %d kept.", plural(res.Tried, "pair"), res.Kept)
}

// Miss says which limit a miss is about, on which pair, and by how much.
func (in *Input) Miss(m choice.Miss) string {
	text := reasonWords[m.Reason]
	if key := limitKeys[m.Reason]; key != "" {
		text += " (" + key + ")"
	}
	if what := in.miss(m); what != "" {
		text += ", nearest miss " + in.Pair(m.BassMM, m.TrebleMM) + ", " + what
	}
	return text
}

// Remedy says what would free the pair of a miss: what must be known of a gauge,
// or a looser limit.
func (in *Input) Remedy(m choice.Miss) string {
	unknown := map[choice.Reason]string{choice.StrengthUnknown: "strength_mpa", choice.StiffnessUnknown: "youngs_gpa"}[m.Reason]
	switch {
	case unknown == "":
		return "loosen that limit, or settle pair and gauges by hand"
	case in.Plan.Stock()[m.Gauge].Core > 0:
		return "state the " + unknown + " of its material in the readings or under [[materials]]"
	}
	return "measure the cores of such gauges (cut the wrap back at an end) and write them into the readings"
}

// limitsBroken prints the limits that one pair breaks, if any, in a section of
// their own.
func (in *Input) limitsBroken(r *show.Report, list []choice.Miss) {
	if words := in.broken(list); words != nil {
		r.Heading(limitsHeading)
		r.Bullets(words...)
	}
}

const limitsHeading = "Limits broken"

// broken lists the limits that one pair breaks.
func (in *Input) broken(list []choice.Miss) []string {
	var out []string
	for _, m := range list {
		line := reasonWords[m.Reason]
		if what := in.miss(m); what != "" {
			line += ": " + what
		}
		if key := limitKeys[m.Reason]; key != "" {
			line += " (" + key + ")"
		}
		out = append(out, line)
	}
	return out
}

// loosest says what to look at first when no pair is left: the limit that most
// pairs fall to, and what would free the nearest of them.
func (in *Input) loosest(list []choice.Dropped) string {
	var most *choice.Dropped
	for i, d := range list {
		if d.Reason != choice.ReverseFan && (most == nil || d.Pairs > most.Pairs) {
			most = &list[i]
		}
	}
	if most == nil {
		return "Every bass length is shorter than every treble length: exchange the ranges, or ask for a reverse fan."
	}
	text := "Most pairs fall to: " + reasonWords[most.Reason] + "."
	switch {
	case most.Reason == choice.StrengthUnknown || most.Reason == choice.StiffnessUnknown:
		return text + " " + capital(in.Remedy(most.Nearest)) + "."
	case most.Reason.Quantity() == choice.NoQuantity:
		return text + " Widen the scales or the stock."
	}
	text += " The nearest is " + in.Pair(most.Nearest.BassMM, most.Nearest.TrebleMM) + ": " + in.miss(most.Nearest) + ". "
	switch most.Reason {
	case choice.BlankSize:
		return text + "Offer a larger blank under [[blanks]], or take blank = true out of [limits]; another limit may then come next."
	case choice.BreakingOpen, choice.BreakingBent:
		return text + "This limit keeps strings from breaking: rather than loosen it look at the limits on tension, bending force and compensation, which may have left heavy gauges only, or widen the scales or the stock."
	}
	return text + "Loosen " + limitKeys[most.Reason] + ", or widen the scales or the stock; another limit may then come next."
}
