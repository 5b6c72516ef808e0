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
	var out []string
	add := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	switch {
	case r.NoneNear:
		add("No pair comes near: the least feel error is %s. The strings below show by how much each is off; low string first they want %s g/m.", table.PercentText(r.Best, 1), a.wantedDensities())
	case r.Kept == 1:
		add("There is one pair to choose from.")
	case r.AllAsGood:
		add("All %s that keep your limits feel as good as the best: only your limits and your range decide.", plural(r.Kept, "pair"))
	default:
		add("%d of %s feel as good as the best (%s; up to %s is as good).",
			r.AsGood, plural(r.Kept, "pair"), table.PercentText(r.Best, 1), table.PercentText(r.Allowed, 1))
	}
	if s := a.SmallerFan; s != nil && r.Kept > 1 {
		add("Smaller fan: %s.", s.Why)
	}
	if s := a.LongerBass; s != nil && r.Kept > 1 {
		add("Longer bass: %s.", s.Why)
	}
	if missing := r.ClearEnoughLacks; missing > 0 {
		add("Clear enough: no pair as good is; the clearest still has %s too much.", cents(missing))
	}
	out = append(out, a.lackWords()...)
	for _, c := range a.LimitCosts {
		add("Without %s (%s) the least feel error would be %s, at %s.", c.Limit, limits[c.Limit].key,
			table.PercentText(c.Best, 1), a.in.Pair(c.Pair.Bass, c.Pair.Treble))
	}
	if words := a.tasteWords(); words != "" && r.Kept > 1 {
		add("Taste: %s.", words)
	}
	if words := a.sureWords(); words != "" {
		add("How sure: %s.", words)
	}
	if !r.Settled {
		add("Equal gaps: the sets of the picks still moved the spacing after five rounds; the last round is printed.")
	}
	for _, l := range a.in.leftOut() {
		add("%s", l)
	}
	return out
}

// wantedDensities are what the strings want, low string first.
func (a *Advice) wantedDensities() string {
	var words []string
	for _, s := range slices.Backward(a.d.Strings) {
		words = append(words, unit.Fixed(s.Wanted.GramsPerMetre(), 2))
	}
	return strings.Join(words, " ")
}

// stopOf says what stops a pick, nil where nothing is to be said.
func (in *Input) stopOf(s *choice.Stop) *StopOf {
	if s == nil {
		return nil
	}
	out := &StopOf{Kind: s.Kind}
	if s.Pair.Bass > 0 {
		out.Pair = &s.Pair
	}
	pair := in.Pair(s.Pair.Bass, s.Pair.Treble)
	switch s.Kind {
	case choice.StopStraight:
		out.Why = "there is none; with these strings feel asks for no fan"
	case choice.StopFeel:
		out.Why = fmt.Sprintf("feel stops it; %s has %s, up to %s is as good", pair, table.PercentText(s.Pair.Error, 1), table.PercentText(s.Allowed, 1))
	case choice.StopExcluded, choice.StopSeveral:
		words := make([]string, len(s.Misses))
		for i, m := range s.Misses {
			words[i] = in.missWords(m, true)
		}
		out.Why = fmt.Sprintf("%s would feel as good, but breaks a limit: %s", pair, strings.Join(words, "; "))
		if m := s.Misses[0]; len(s.Misses) == 1 && m.Limit == choice.Range {
			out.Why = fmt.Sprintf("%s would feel as good, but %s (%s)", pair, in.by(m), limits[m.Limit].key)
		}
	default:
		out.Why = "feel, together with a limit or the range, stops it"
	}
	return out
}

// tasteWords say where other weights take the picks; "" where nothing was asked.
func (a *Advice) tasteWords() string {
	if len(a.Taste) == 0 {
		return ""
	}
	u := a.in.Units
	var out []string
	for _, t := range a.Taste {
		words := make([]string, len(t.Moves))
		for i, m := range t.Moves {
			words[i] = m.Kind.String() + " none"
			if m.To.Bass > 0 {
				words[i] = fmt.Sprintf("%s %s / %s", m.Kind, u.Len(m.To.Bass, 0), u.Len(m.To.Treble, 0))
			}
		}
		value := trim(t.Value)
		if t.What == "noticeable" {
			value = trim(toDecimals(100*t.Value, 6)) + " %"
		}
		if len(words) > 0 {
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
	if a.Confidence == nil {
		return ""
	}
	for _, p := range a.Confidence.Picks {
		if p.Kind != a.Choice {
			continue
		}
		between := fmt.Sprintf("its feel error between %s and %s (95 %%)", table.PercentText(p.Low, 1), table.PercentText(p.High, 1))
		if a.Kept == 1 { // nothing to be as good as
			return fmt.Sprintf("in %d trials of the weighing (seed %d), %s", a.Confidence.Trials, a.Confidence.Seed, strings.Replace(between, "error", "error lies", 1))
		}
		text := fmt.Sprintf("the pick stays as good in %s of %d trials of the weighing (seed %d), %s",
			table.PercentText(p.Good, 0), a.Confidence.Trials, a.Confidence.Seed, between)
		if p.Uncertain {
			text += "; that is uncertain, so weigh again before you buy: scalepair gauges --next says what"
		}
		return text
	}
	return ""
}

// leftOut says what the feel error does without, and why.
func (in *Input) leftOut() []string {
	var out []string
	for _, l := range in.Plan.LeftOut() {
		if l.Strings != nil { // what nobody asked for need not be said
			out = append(out, fmt.Sprintf("Left out of the feel error: %s of %s, since %s.", l.Term, several("string", l.Strings), l.Why))
		}
	}
	return out
}
