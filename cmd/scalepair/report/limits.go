package report

import (
	"fmt"
	"math"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/tension/choice"
)

// limits say which build-file key sets a limit, and what frees a pair from it
// where loosening that key is not the answer.
var limits = map[choice.Limit]struct{ key, remedy string }{
	choice.Range:              {"scales", "widen the scales"},
	choice.ReverseFan:         {"scales.reverse_fan", ""},
	choice.DifferenceLimit:    {"limits.difference", ""},
	choice.FretSlant:          {"limits.fret_slant_deg", ""},
	choice.SaddleSlant:        {"limits.saddle_slant_deg", ""},
	choice.NutToFret1:         {"limits.nut_to_fret_1", ""},
	choice.BlankSize:          {"blanks", "offer a larger blank under [[blanks]], or take blank = true out of [limits]"},
	choice.WindingLength:      {"winding in the readings", "measure the winding of longer strings, or shorten the scales"},
	choice.LeastTension:       {"limits.least_tension", ""},
	choice.MostTension:        {"limits.most_tension", ""},
	choice.StrengthUnknown:    {"", unknownRemedy},
	choice.BreakingOpen:       {"limits.breaking_open_percent", breakingRemedy},
	choice.StiffnessUnknown:   {"", unknownRemedy},
	choice.BendUnreachable:    {"feel.bend_cents", ""},
	choice.BreakingBent:       {"limits.breaking_bent_percent", breakingRemedy},
	choice.MostBendingForce:   {"limits.most_bending_force", ""},
	choice.InharmonicityLimit: {"limits.inharmonicity_cents", ""},
	choice.SaddleTravel:       {"limits.saddle_travel", ""},
	choice.OrderingRule:       {"strings.ordering", ""},
}

const (
	unknownRemedy  = "measure the cores of such gauges (cut the wrap back at an end) and write them, or their material, into the readings; scalepair tension shows what is known without"
	breakingRemedy = "this limit keeps strings from breaking: look first at the limits on tension, bends and saddle travel, which may have left heavy gauges only, or widen the scales or the stock"
)

// Remedy says what would free the pair of a miss.
func (in *Input) Remedy(m choice.Miss) string {
	l := limits[m.Limit]
	switch {
	case l.remedy == unknownRemedy && m.Gauge >= 0 && in.Plan.Stock()[m.Gauge].Core > 0:
		key := map[choice.Limit]string{choice.StrengthUnknown: "strength_mpa", choice.StiffnessUnknown: "youngs_gpa"}[m.Limit]
		return "state the " + key + " of its material in the readings or under [[materials]]; scalepair tension shows what is known without"
	case l.remedy != "":
		return l.remedy
	case l.key == "":
		return "widen the scales or the stock"
	}
	return "loosen " + l.key + ", or widen the scales or the stock"
}

// quantityText prints a quantity with its unit; more decimals are for two that
// would print alike.
func (in *Input) quantityText(q any, more int) string {
	switch q := q.(type) {
	case unit.Length:
		u := in.Units
		if more > 0 && u.Length == unit.InchFractions {
			u.Length = unit.DecimalInches
		}
		return u.LenText(q, scaleDecimals+more)
	case unit.Angle:
		return unit.Fixed(q.Degrees(), 1+more) + "°"
	case unit.Force:
		return in.Units.ForceText(q)
	case unit.Ratio:
		return table.PercentText(q, 1+more)
	case unit.Cents:
		return unit.Fixed(q.Value(), 1+more) + " cents"
	}
	return ""
}

// against sets a value beside its bound.
func (in *Input) against(m choice.Miss) string {
	value, bound := m.Limit.Quantity(m.Value), m.Limit.Quantity(m.Bound)
	for more := 0; more < 3; more++ {
		if v, b := in.quantityText(value, more), in.quantityText(bound, more); v != b {
			return v + " against " + b
		}
	}
	return "just beyond " + in.quantityText(bound, 0)
}

// by says what a broken limit was about: "string 6 (w46): 92.1 % against
// 90.0 %".
func (in *Input) by(m choice.Miss) string {
	who, what := "", ""
	if m.String > 0 {
		who = fmt.Sprintf("string %d", m.String)
		if m.Gauge >= 0 {
			who += " (" + in.gauge(m.Gauge) + ")"
		}
	}
	if m.BendFret > 0 {
		who += " at fret " + trim(m.BendFret)
	}
	switch {
	case m.Limit == choice.BlankSize:
		what = in.short(unit.Length(m.Value)) + " too large"
	case m.Limit == choice.ReverseFan:
		what = in.length(unit.Length(math.Abs(m.Value))) + " shorter"
	case m.Limit == choice.Range && m.Bound > 0:
		of := "bass"
		if unit.Length(m.Value) == m.Treble {
			of = "treble"
		}
		what = fmt.Sprintf("the %s range ends at %s", of, in.length(unit.Length(m.Bound)))
	case m.Limit == choice.Unbuildable:
		what = m.Neck.String()
	case m.Limit.Quantity(m.Value) != nil && m.Bound != 0:
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

// short prints a small length with the decimals that tell it from nothing.
func (in *Input) short(l unit.Length) string {
	if l < 0.1*unit.Millimetre {
		return in.quantityText(l, 2)
	}
	return in.length(l)
}

// missWords say which limit a miss is about and by how much; with key, which key
// sets it.
func (in *Input) missWords(m choice.Miss, key bool) string {
	l := limits[m.Limit]
	text := m.Limit.String()
	if what := in.by(m); what != "" {
		text += ": " + what
	}
	if key && l.key != "" {
		text += " (" + l.key + ")"
	}
	return text
}

// MissWords say which limit a miss is about, by how much, and which key sets it.
func (in *Input) MissWords(m choice.Miss) string { return in.missWords(m, true) }

// broken lists the limits that one pair breaks.
func (in *Input) broken(list []choice.Miss) []string {
	out := []string{}
	for _, m := range list {
		out = append(out, in.missWords(m, true))
	}
	return out
}

// droppedTable says which limits dropped how many pairs, with the nearest miss
// of each.
func (in *Input) droppedTable(r *choice.Result) *table.Table {
	u := in.Units
	t := table.Of("dropped", "Dropped, under the first limit that a pair breaks", r.Dropped,
		table.Words("", "limit", func(d choice.Dropped) string { key, _ := d.Limit.MarshalText(); return string(key) }),
		table.Words("limit", "", func(d choice.Dropped) string { return d.Limit.String() }),
		table.Whole("pairs", "pairs", func(d choice.Dropped) int { return d.Pairs }),
		table.Words("nearest miss", "", func(d choice.Dropped) string { return in.Pair(d.Nearest.Bass, d.Nearest.Treble) }),
		table.Length(u, "", "nearest_miss_bass", 1, func(d choice.Dropped) unit.Length { return d.Nearest.Bass }),
		table.Length(u, "", "nearest_miss_treble", 1, func(d choice.Dropped) unit.Length { return d.Nearest.Treble }),
		table.Words("missed by", "nearest_miss", func(d choice.Dropped) string { return in.by(d.Nearest) }),
	)
	return t.Note(fmt.Sprintf("%s tried, %d kept.", plural(r.Tried, "pair"), r.Kept))
}

// NoPair says why nothing is left to work with: every limit that dropped a
// pair, but for pairs that nobody asked for.
func (in *Input) NoPair(r *choice.Result, place fault.Place) error {
	var faults fault.List
	for _, d := range r.Dropped {
		if (d.Limit == choice.ReverseFan || d.Limit == choice.Range) && len(r.Dropped) > 1 {
			continue
		}
		faults.Add(place, fmt.Sprintf("no pair is left: %s dropped by %s; the nearest is %s", plural(d.Pairs, "pair"),
			in.missWords(d.Nearest, true), in.Pair(d.Nearest.Bass, d.Nearest.Treble)), "", in.Remedy(d.Nearest))
	}
	return faults.Err()
}
