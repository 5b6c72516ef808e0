package report

import (
	"fmt"
	"slices"
	"strings"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/tension/choice"
)

// reasons say in a sentence each what stops the picks, what taste would change,
// how sure it is, and what else decides.
func (a *Advice) reasons() []string {
	r := a.Result
	var out lines
	switch {
	case r.NoneNear:
		var wanted []string
		for _, s := range slices.Backward(a.d.Strings) {
			wanted = append(wanted, unit.Fixed(s.Wanted.GramsPerMetre(), 2))
		}
		out.say("No pair comes near: the least feel error is %s. The strings below show by how much each is off; low string first they want %s g/m.", table.PercentText(r.Best, 1), strings.Join(wanted, " "))
	case r.Kept == 1:
		out.say("There is one pair to choose from.")
	case r.AllAsGood:
		out.say("All %d pairs that keep your limits feel as good as the best: only your limits and your range decide.", r.Kept)
	default:
		out.say("%d of %s feel as good as the best: the least error is %s, and up to %s is as good.", r.AsGood, plural(r.Kept, "pair"), table.PercentText(r.Best, 1), table.PercentText(r.Allowed, 1))
	}
	if r.Kept > 1 {
		if s := a.SmallerFan; s != nil {
			out.say("Smaller fan: %s.", s.Why)
		}
		if s := a.LongerBass; s != nil {
			out.say("Longer bass: %s.", s.Why)
		}
	}
	out.sayIf(r.ClearEnoughLacks > 0, "Clear enough: none of these pairs is; the clearest still has %s too much.", cents(r.ClearEnoughLacks))
	out = append(out, a.lackWords()...)
	for _, c := range a.LimitCosts {
		out.say("Without %s (%s) the least feel error would be %s, at %s.", c.Limit, c.Limit.Setting(), table.PercentText(c.Best, 1), a.in.Pair(c.Pair.Bass, c.Pair.Treble))
	}
	out.sayIf(len(a.Taste) > 0 && r.Kept > 1, "Taste: %s.", a.tasteWords())
	if words := a.sureWords(); words != "" {
		out.say("How sure: %s.", words)
	}
	out.sayIf(!r.Settled, "Equal gaps: the sets of the picks still moved the spacing after five rounds; the last round is printed.")
	for _, l := range a.in.Plan.LeftOut() {
		// What nobody asked for need not be said.
		out.sayIf(l.Strings != nil, "Left out of the feel error: %s of %s, since %s.", l.Term, several("string", l.Strings), l.Why)
	}
	return out
}

// stopOf says what stops a pick, nil where nothing is to be said.
func (in *Input) stopOf(s *choice.Stop) *StopOf {
	if s == nil {
		return nil
	}
	out := &StopOf{Kind: s.Kind, Why: "feel, together with a limit or the range, stops it"}
	if s.Pair.Bass > 0 {
		out.Pair = &s.Pair
	}
	pair := in.Pair(s.Pair.Bass, s.Pair.Treble)
	switch s.Kind {
	case choice.StopStraight:
		out.Why = "straight frets feel as good; a fan only lowers inharmonicity"
	case choice.StopFeel:
		out.Why = fmt.Sprintf("feel stops it; %s has %s, up to %s is as good", pair, table.PercentText(s.Pair.Error, 2), table.PercentText(s.Allowed, 2))
	case choice.StopExcluded, choice.StopSeveral:
		why := "breaks a limit: " + strings.Join(in.broken(s.Misses), "; ")
		if len(s.Misses) == 1 && s.Misses[0].Limit == choice.Range {
			why = "lies outside your range (scales)"
		}
		out.Why = fmt.Sprintf("%s would feel as good, but %s", pair, why)
	}
	return out
}

// tasteWords say where other weights take the picks.
func (a *Advice) tasteWords() string {
	u := a.in.Units
	var out []string
	for _, t := range a.Taste {
		var words []string
		for _, m := range t.Moves {
			to := "none"
			if m.To.Bass > 0 {
				to = u.Len(m.To.Bass, scaleDecimals) + " / " + u.Len(m.To.Treble, scaleDecimals)
			}
			words = append(words, m.Kind.String()+" "+to)
		}
		value := trim(t.Value)
		if t.What == "noticeable" {
			value = trim(unit.Rounded(100*t.Value)) + " %"
		}
		if words != nil {
			out = append(out, fmt.Sprintf("with %s = %s %s", t.What, value, listed(words)))
		}
	}
	if out == nil {
		return "half or double bend_weight or noticeable moves no pick"
	}
	return strings.Join(out, "; ")
}

// sureWords say how far the weighing carries the pick in use.
func (a *Advice) sureWords() string {
	p, ok := a.sure(a.Choice)
	if !ok {
		return ""
	}
	text := fmt.Sprintf("in %d trials of the weighing (seed %d) its feel error lies between %s and %s (95 %%)",
		a.Confidence.Trials, a.Confidence.Seed, table.PercentText(p.Low, 1), table.PercentText(p.High, 1))
	if a.Kept > 1 && p.Good != nil { // else there is nothing to be as good as
		text += fmt.Sprintf("; the pick stays as good in %s of them", table.PercentText(*p.Good, 0))
	}
	if p.Uncertain {
		text += ", which is uncertain: scalepair gauges --next says what to weigh before you buy"
	}
	return text
}

// sure finds what the trials say of a pick.
func (a *Advice) sure(kind choice.PickKind) (choice.PickConfidence, bool) {
	if a.Confidence != nil {
		for _, p := range a.Confidence.Picks {
			if p.Kind == kind {
				return p, true
			}
		}
	}
	return choice.PickConfidence{}, false
}
