package choice

import (
	"fmt"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// complain notes a fault under the build-file key of its input.
type complain func(input, what, given, remedy string)

// check collects what is wrong with a request.
func check(req *Request) error {
	var faults fault.List
	bad := func(input, what, given, remedy string) {
		faults.Add(fault.Place{Input: input}, what, given, remedy)
	}
	if len(req.Cases) == 0 {
		bad("strings.tuning", "no tuning is given", "", "name one, low string first")
		return faults.Err()
	}
	n := len(req.Cases[0].Pitches)
	checkCases(req, n, bad)
	checkGauges(req, n, bad)
	checkFeel(req, n, bad)
	checkGrid("scales.bass", req.Bass, bad)
	checkGrid("scales.treble", req.Treble, bad)
	checkLimits(&req.Limits, bad)
	return faults.Err()
}

func checkCases(req *Request, n int, bad complain) {
	if n < 2 {
		bad("strings.tuning", "a fan needs two strings or more", fmt.Sprint(n), "give every string's note, low string first")
	}
	for _, c := range req.Cases {
		if len(c.Pitches) != n {
			bad("tunings", "the tunings have different numbers of strings",
				fmt.Sprintf("%s: %d, the first: %d", c.Name, len(c.Pitches), n), "give the same number in each")
		}
		if c.CapoFret < 0 || c.CapoFret > req.Neck.Frets {
			bad("strings.capo_fret", "the capo is off the board", fmt.Sprint(c.CapoFret), fmt.Sprintf("give 0 for none, or up to fret %d", req.Neck.Frets))
		}
		if !(c.Weight > 0) {
			bad("tunings", "a tuning's weight must be above 0", c.Name, "leave a tuning out rather than give it no weight")
		}
		for _, f := range c.Pitches {
			if !(f > 0) {
				bad("strings.tuning", "a pitch must be above 0 Hz", fmt.Sprint(f.Hz()), "give a note such as E2")
			}
		}
	}
}

func checkGauges(req *Request, n int, bad complain) {
	count := func(key, what string, have int, remedy string) {
		if have != n {
			bad(key, "the number of "+what+" differs from the tuning's strings", fmt.Sprintf("%d, %d strings", have, n), remedy)
		}
	}
	if len(req.Stock) == 0 && (req.Given != nil || req.Reference != nil) {
		bad("readings", "there are no strings in stock", "", "weigh some string ends first")
	}
	if req.Given != nil {
		count("strings.gauges", "gauges", len(req.Given), "give one gauge a string, low string first")
	}
	if req.Given == nil && req.Usable != nil && len(req.Usable) == 0 {
		bad("strings.stock", "no gauge may be chosen", "", "list the gauges that may, or leave the key out")
	}
	count("tails", "tails", len(req.Tails), "give one length, or one a string")
	count("saddle", "heights", len(req.Action), "give the action of treble and bass")
	if r := req.Reference; r != nil && (len(r.Gauges) != len(r.Pitches) || len(r.Tails) != len(r.Pitches) || len(r.Pitches) == 0) {
		bad("reference", "tuning, gauges and tails have different numbers of strings",
			fmt.Sprintf("%d notes, %d gauges, %d tails", len(r.Pitches), len(r.Gauges), len(r.Tails)), "give one gauge a note, low string first")
	}
}

func checkFeel(req *Request, n int, bad complain) {
	f := &req.Feel
	checkTarget(req, n, "feel.tension", f.Tension, bad)
	checkTarget(req, n, "feel.bending_force", f.BendingForce, bad)
	switch {
	case f.Tension.NoHarder:
		bad("feel.tension", "'no harder' is for bends", f.Tension.String(), `give the tension itself, or "like the reference"`)
	case f.Tension.Kind == Even && req.Reference == nil && req.Given == nil:
		bad("feel.tension", "even tension without a reference needs given gauges", "even", "give strings.gauges, a reference, or another target")
	}
	if f.BendingForce.Kind == Even {
		bad("feel.bending_force", "'even' is for tension", "even", `give a force, or "no harder than the reference"`)
	}
	for _, s := range f.BendStrings {
		if s < 1 || s > n {
			bad("feel.bend_strings", "there is no such string", fmt.Sprint(s), fmt.Sprintf("use 1 to %d; 1 is the highest", n))
		}
	}
	if !(f.Bend > 0 && f.Bend <= 600) {
		bad("feel.bend_cents", "a bend goes up by more than 0 and at most 600 cents", fmt.Sprint(f.Bend.Value()), "200 is a whole tone")
	}
	for _, x := range f.BendFrets {
		if x < 1 || x > req.Neck.Frets {
			bad("feel.bend_frets", "a bend needs a fret of the neck", fmt.Sprint(x), fmt.Sprintf("use 1 to %d", req.Neck.Frets))
		}
	}
	if !(f.BendWeight >= 0 && f.BendWeight <= 1e6) {
		bad("feel.bend_weight", "a weight must not be negative", fmt.Sprint(f.BendWeight), "1 counts a bend as much as the tension")
	}
	if !(f.Noticeable > 0 && f.Noticeable < 1) {
		bad("feel.noticeable", "out of range", fmt.Sprint(f.Noticeable.Percent()), "2 is two percentage points")
	}
	checkReferenceStrings(req, n, bad)
}

func checkReferenceStrings(req *Request, n int, bad complain) {
	list := req.Feel.ReferenceStrings
	switch {
	case list == nil:
	case req.Reference == nil:
		bad("feel.reference_strings", "there is no reference instrument", "", "describe one under [reference]")
	case len(list) != n:
		bad("feel.reference_strings", "the number of entries differs from the tuning's strings", fmt.Sprintf("%d, %d strings", len(list), n),
			"give the number of a reference string for every string, low string first")
	default:
		for _, s := range list {
			if most := len(req.Reference.Pitches); s < 1 || s > most {
				bad("feel.reference_strings", "the reference has no such string", fmt.Sprint(s), fmt.Sprintf("use 1 to %d; 1 is the highest", most))
			}
		}
	}
}

func checkTarget(req *Request, n int, key string, t Target, bad complain) {
	if t.Kind == LikeReference && req.Reference == nil {
		bad(key, "there is no reference instrument to be like", "", "describe one under [reference], or give a force")
	}
	if t.Kind != Stated {
		return
	}
	if len(t.Forces) != 1 && len(t.Forces) != n {
		bad(key, "the number of values differs from the tuning's strings",
			fmt.Sprintf("%d values, %d strings", len(t.Forces), n), "give one for all, or one a string, low string first")
	}
	for _, f := range t.Forces {
		if !(f > 0) {
			bad(key, "a target must be above 0", f.String(), "leave the term out instead")
		}
	}
}

func checkGrid(key string, lengths []unit.Length, bad complain) {
	if len(lengths) == 0 {
		bad(key, "no length to try", "", `give one length, or a range such as "660 mm to 720 mm by 5 mm"`)
	}
	for i := 1; i < len(lengths); i++ {
		if !(lengths[i] > lengths[i-1]) {
			bad(key, "the lengths must rise", lengths[i].String(), "list each once, shortest first")
			return
		}
	}
}

func checkLimits(l *Limits, bad complain) {
	for _, r := range []struct {
		key         string
		value, most unit.Ratio
	}{{"limits.breaking_open_percent", l.BreakingOpen, MostBreakingOpen}, {"limits.breaking_bent_percent", l.BreakingBent, MostBreakingBent}} {
		if !(r.value >= 0 && r.value <= r.most) {
			bad(r.key, "out of range", fmt.Sprint(r.value.Percent()), fmt.Sprintf("at most %.0f", r.most.Percent()))
		}
	}
}
