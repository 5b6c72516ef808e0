package choice

import "fmt"

// complain notes a fault under the build-file key of its input.
type complain func(input, what, given, remedy string)

func checkCases(req *Request, n int, bad complain) {
	if n < 2 {
		bad("strings.tuning", "a fan needs two strings or more", fmt.Sprint(n), "give every string's note, low string first")
	}
	for _, c := range req.Cases {
		if len(c.FreqsHz) != n {
			bad("tunings", "the tunings have different numbers of strings",
				fmt.Sprintf("%s: %d, the first: %d", c.Name, len(c.FreqsHz), n), "give the same number in each")
		}
		if c.CapoFret < 0 || c.CapoFret > req.Neck.Frets {
			bad("strings.capo_fret", "the capo is off the board", fmt.Sprint(c.CapoFret), fmt.Sprintf("give 0 for none, or up to fret %d", req.Neck.Frets))
		}
		if !(c.Weight > 0) {
			bad("tunings", "a tuning's weight must be above 0", c.Name, "leave a tuning out rather than give it no weight")
		}
		for _, f := range c.FreqsHz {
			if !(f > 0) {
				bad("strings.tuning", "a pitch must be above 0 Hz", fmt.Sprint(f), "give a note such as E2")
			}
		}
	}
}

func checkGauges(req *Request, n int, bad complain) {
	if len(req.Stock) == 0 {
		bad("readings", "the stock is empty", "", "weigh some string ends first")
	}
	if req.Given != nil && len(req.Given) != n {
		bad("strings.gauges", "the number of gauges differs from the tuning's strings",
			fmt.Sprintf("%d gauges, %d strings", len(req.Given), n), "give one gauge a string, low string first")
	}
	if req.Given == nil && req.Usable != nil && len(req.Usable) == 0 {
		bad("strings.stock", "no gauge may be chosen", "", "list the gauges that may, or leave the key out")
	}
	if len(req.Tails) != n {
		bad("tails", "the number of tails differs from the tuning's strings", fmt.Sprint(len(req.Tails)), "give one length, or one a string")
	}
	if len(req.ActionM) != n {
		bad("saddle", "the number of heights differs from the tuning's strings", fmt.Sprint(len(req.ActionM)), "give treble and bass height")
	}
	if r := req.Reference; r != nil {
		if len(r.Gauges) != len(r.FreqsHz) || len(r.Tails) != len(r.FreqsHz) || len(r.FreqsHz) == 0 {
			bad("reference", "tuning, gauges and tails have different numbers of strings",
				fmt.Sprintf("%d notes, %d gauges, %d tails", len(r.FreqsHz), len(r.Gauges), len(r.Tails)),
				"give one gauge a note, low string first")
		}
	}
}

func checkFeel(req *Request, n int, bad complain) {
	f := &req.Feel
	for _, t := range []struct {
		key    string
		target Target
	}{{"feel.tension", f.Tension}, {"feel.bending_force", f.BendingForce}, {"feel.inharmonicity", f.Overtone}} {
		checkTarget(req, n, t.key, t.target, bad)
	}
	if f.Overtone.Source == OwnMean {
		bad("feel.inharmonicity", "the rise of one string has no mean", "", "give cents, or leave it like the reference")
	}
	for _, s := range f.BendStrings {
		if s < 1 || s > n {
			bad("feel.bend_strings", "there is no such string", fmt.Sprint(s), fmt.Sprintf("use 1 to %d; 1 is the highest", n))
		}
	}
	if !(f.BendCents > 0 && f.BendCents <= 600) {
		bad("feel.bend_cents", "a bend goes up by more than 0 and at most 600 cents", fmt.Sprint(f.BendCents), "200 is a whole tone")
	}
	for _, x := range f.BendFrets {
		if !(x >= 1 && x <= float64(req.Neck.Frets)) {
			bad("feel.bend_frets", "a bend needs a fret of the neck", fmt.Sprint(x), fmt.Sprintf("use 1 to %d", req.Neck.Frets))
		}
	}
	if w := f.Weights; !(w.Tension >= 0 && w.BendingForce >= 0 && w.Overtone >= 0 && w.Tension+w.BendingForce+w.Overtone > 0) {
		bad("feel.weights", "weights must not be negative, nor all 0", fmt.Sprint(w), "1, 1 and 0.1 are usual")
	}
}

func checkTarget(req *Request, n int, key string, t Target, bad complain) {
	switch {
	case t.Source == LikeReference && req.Reference == nil:
		bad(key, "there is no reference instrument to be like", "", "describe one under [reference], or give a number")
	case t.Source == OwnMean && req.Given == nil:
		bad(key, "the candidate's own mean needs given gauges", "", "give strings.gauges, or another target")
	case t.Source == Stated && len(t.Values) != 1 && len(t.Values) != n:
		bad(key, "the number of values differs from the tuning's strings",
			fmt.Sprintf("%d values, %d strings", len(t.Values), n), "give one for all, or one a string, low string first")
	}
	if t.Source == Stated {
		for _, v := range t.Values {
			if !(v > 0) {
				bad(key, "a target must be above 0", fmt.Sprint(v), "leave the term out instead")
			}
		}
	}
}

func checkGrid(req *Request, bad complain) {
	for _, g := range []struct {
		key    string
		values []float64
	}{{"scales.bass", req.BassMM}, {"scales.treble", req.TrebleMM}} {
		if len(g.values) == 0 {
			bad(g.key, "no length to try", "", "give one length, or from, to and step")
		}
		for i := 1; i < len(g.values); i++ {
			if !(g.values[i] > g.values[i-1]) {
				bad(g.key, "the lengths must rise", fmt.Sprint(g.values[i]), "list each once, shortest first")
				break
			}
		}
	}
	l := req.Limits
	if !(l.BreakingOpen >= 0 && l.BreakingOpen <= MostBreakingOpen) {
		bad("limits.breaking_open_percent", "out of range", fmt.Sprint(100*l.BreakingOpen), fmt.Sprintf("at most %.0f", 100*MostBreakingOpen))
	}
	if !(l.BreakingBent >= 0 && l.BreakingBent <= MostBreakingBent) {
		bad("limits.breaking_bent_percent", "out of range", fmt.Sprint(100*l.BreakingBent), fmt.Sprintf("at most %.0f", 100*MostBreakingBent))
	}
}
