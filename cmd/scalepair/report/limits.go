package report

import (
	"cmp"
	"fmt"
	"math"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/tension/choice"
)

// remedies say what frees a pair of a limit where loosening it is not the answer.
var remedies = map[choice.Limit]string{
	choice.StrengthUnknown:  unknownRemedy,
	choice.StiffnessUnknown: unknownRemedy,
	choice.BreakingOpen:     breakingRemedy,
	choice.BreakingBent:     breakingRemedy,
	choice.BlankSize:        "offer a larger blank under [[blanks]], or take blank = true out of [limits]",
	choice.WindingLength:    "measure the winding of longer strings, or shorten the scales",
}

const (
	anyRemedy      = "loosen a limit, or widen the scales or the stock"
	unknownRemedy  = "measure the cores of such gauges (cut the wrap back at an end) and write them into the readings, or strength_mpa and youngs_gpa of their material under [[materials]]"
	breakingRemedy = "this limit keeps strings from breaking: look first at the limits on tension, bends and saddle travel, which may have left heavy gauges only, or widen the scales or the stock"
)

// Remedy says what would free the pair of a miss.
func (in *Input) Remedy(m choice.Miss) string { return cmp.Or(remedies[m.Limit], anyRemedy) }

// quantityText prints a quantity with its unit; "" for what has none.
func (in *Input) quantityText(q any) string {
	switch q := q.(type) {
	case unit.Length:
		return in.length(q)
	case unit.Angle:
		return table.DegText(q)
	case unit.Force:
		return in.Units.ForceText(q)
	case unit.Ratio:
		return table.PercentText(q, 1)
	case unit.Cents:
		return cents(q)
	}
	return ""
}

// against sets a value beside its bound.
func (in *Input) against(m choice.Miss) string {
	value, bound := in.quantityText(m.Limit.Quantity(m.Value)), in.quantityText(m.Limit.Quantity(m.Bound))
	if value == bound {
		return "just beyond " + bound
	}
	return value + " against " + bound
}

// by says what a broken limit was about: "string 6 (w46): 92.1 % against
// 90.0 %".
func (in *Input) by(m choice.Miss) string {
	who, what := "", ""
	switch {
	case m.Limit == choice.BlankSize:
		what = in.fine().text(unit.Length(m.Value)) + " too large"
	case m.Limit == choice.ReverseFan:
		what = in.length(unit.Length(math.Abs(m.Value))) + " shorter"
	case m.Limit == choice.Unbuildable:
		what = m.Neck.String()
	case m.Limit.Quantity(m.Value) != nil && m.Bound != 0:
		what = in.against(m)
	}
	if m.String > 0 {
		who = fmt.Sprintf("string %d", m.String)
		if m.Gauge >= 0 {
			who += " (" + in.gauge(m.Gauge) + ")"
		}
	}
	if m.BendFret > 0 {
		who += " at fret " + trim(m.BendFret)
	}
	if who != "" && what != "" {
		return who + ": " + what
	}
	return who + what
}

// MissWords say which limit a miss is about, by how much, and which key sets it.
func (in *Input) MissWords(m choice.Miss) string {
	text := m.Limit.String()
	if what := in.by(m); what != "" {
		text += ": " + what
	}
	if key := m.Limit.Setting(); key != "" {
		text += " (" + key + ")"
	}
	return text
}

// broken lists limits that are broken.
func (in *Input) broken(list []choice.Miss) []string {
	out := []string{}
	for _, m := range list {
		out = append(out, in.MissWords(m))
	}
	return out
}

// droppedTable says which limits dropped how many pairs, with the nearest miss
// of each.
func (in *Input) droppedTable(r *choice.Result) *table.Table {
	u := in.Units
	return table.Of("dropped", "Dropped, under the first limit that a pair breaks", r.Dropped,
		table.Words("", "limit", func(d choice.Dropped) string { key, _ := d.Limit.MarshalText(); return string(key) }),
		table.Words("limit", "", func(d choice.Dropped) string { return d.Limit.String() }),
		table.Whole("pairs", "pairs", func(d choice.Dropped) int { return d.Pairs }),
		table.Words("nearest miss", "", func(d choice.Dropped) string { return in.Pair(d.Nearest.Bass, d.Nearest.Treble) }),
		table.Length(u, "", "nearest_miss_bass", 1, func(d choice.Dropped) unit.Length { return d.Nearest.Bass }),
		table.Length(u, "", "nearest_miss_treble", 1, func(d choice.Dropped) unit.Length { return d.Nearest.Treble }),
		table.Words("missed by", "nearest_miss", func(d choice.Dropped) string { return in.by(d.Nearest) }),
	).Note(fmt.Sprintf("%s tried, %d kept.", plural(r.Tried, "pair"), r.Kept))
}

// NoPair says why nothing is left to work with: every limit that dropped a
// pair, but for pairs that nobody asked for.
func (in *Input) NoPair(r *choice.Result, place fault.Place) error {
	var faults fault.List
	faults.Add(place, fmt.Sprintf("no pair is left of %s", plural(r.Tried, "pair")), "", anyRemedy)
	for _, d := range r.Dropped {
		if (d.Limit == choice.ReverseFan || d.Limit == choice.Range) && len(r.Dropped) > 1 {
			continue
		}
		faults.Add(place, fmt.Sprintf("%d dropped by %s, the nearest %s", d.Pairs, in.MissWords(d.Nearest), in.Pair(d.Nearest.Bass, d.Nearest.Treble)), "", remedies[d.Limit])
	}
	return faults.Err()
}
