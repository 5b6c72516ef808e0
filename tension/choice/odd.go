package choice

import (
	"fmt"
	"slices"

	"scalepair/data/fault"
	"scalepair/data/odd"
	"scalepair/tension"
)

// The build file's keys, for the places of odd values.
const (
	keyGauges          = "strings.gauges"
	keyReferenceGauges = "reference.gauges"
)

// Odd watches what is asked for, and the tension of the reference's strings.
// Places name the build file's keys.
func (p *Plan) Odd() odd.List {
	var out odd.List
	look := func(row int, key string, x float64) {
		if x != 0 {
			out.Look(&watched[row], fault.Place{Input: key}, "", x)
		}
	}
	f, l := &p.req.Feel, &p.req.Limits
	lookStrings(&out, watchTensionTarget, "feel.tension", stated(f.Tension))
	lookStrings(&out, watchBendingForceTarget, "feel.bending_force", stated(f.BendingForce))
	look(watchBendCents, "feel.bend_cents", f.BendCents)
	look(watchLeast, "limits.least_tension", l.LeastTensionN)
	look(watchMost, "limits.most_tension", l.MostTensionN)
	look(watchMostBendingForce, "limits.most_bending_force", l.MostBendingForceN)
	last := len(p.req.ActionM) - 1
	for _, end := range []struct {
		key, about string
		m          float64
	}{
		{"saddle.action_treble", "of the treble string", p.req.ActionM[0]},
		{"saddle.action_bass", "of the bass string", p.req.ActionM[last]},
	} {
		out.Look(&watched[watchHeight], fault.Place{Input: end.key}, end.about, 1e3*end.m)
	}
	lookTails(&out, "tails.nut", "tails.saddle", p.req.Tails)
	p.oddReference(&out)
	return out
}

// stated gives the values of a target that has any.
func stated(t Target) []float64 {
	if t.Source != Stated {
		return nil
	}
	return t.Values
}

// lookTails watches what lies beyond nut and saddle.
func lookTails(out *odd.List, nutKey, saddleKey string, tails []tension.Tails) {
	nut, saddle := make([]float64, len(tails)), make([]float64, len(tails))
	for i, t := range tails {
		nut[i], saddle[i] = 1e3*t.NutM, 1e3*t.SaddleM
	}
	lookStrings(out, watchNutTail, nutKey, nut)
	lookStrings(out, watchSaddleTail, saddleKey, saddle)
}

// lookStrings watches one value for each string; where all are alike it is one
// value that stands for all.
func lookStrings(out *odd.List, row int, key string, values []float64) {
	if len(values) > 0 && len(slices.Compact(slices.Clone(values))) == 1 {
		out.Look(&watched[row], fault.Place{Input: key}, "", values[0])
		return
	}
	for i, x := range values {
		lookString(out, row, key, i, x)
	}
}

// lookString watches a value of the string with index i.
func lookString(out *odd.List, row int, key string, i int, x float64) {
	if u := &watched[row]; !u.Holds(x) {
		out.Look(u, fault.Place{Input: key}, ofString(i), x)
	}
}

func ofString(i int) string { return fmt.Sprintf("of string %d", i+1) }

// tensionRow is the row that a string's tension is watched by.
func tensionRow(lengthM float64) int {
	if lengthM >= bassFromM {
		return watchBassTension
	}
	return watchTension
}

// oddReference watches the reference's tensions: a wrong reference makes every
// target wrong.
func (p *Plan) oddReference(out *odd.List) {
	if p.ref == nil {
		return
	}
	for i, t := range p.ref.feel.tension {
		if u := &watched[tensionRow(p.ref.lengthM[i])]; !u.Holds(t) {
			out.Look(u, fault.Place{Input: keyReferenceGauges}, fmt.Sprintf("of the reference's string %d", i+1), t)
		}
	}
	lookTails(out, "reference.nut_tail", "reference.saddle_tail", p.req.Reference.Tails)
}

// OddDetail watches what a detail's strings do. What could not be computed is
// left alone; so is the travel of a bend, which the board's edge bounds, and the
// total tension, which the strings' own bound.
func (p *Plan) OddDetail(d *Detail) odd.List {
	var out odd.List
	for i := range d.Strings {
		s := &d.Strings[i]
		for c := range s.Cases {
			p.oddString(&out, s, c)
		}
		if s.CompensationErr == nil {
			lookString(&out, watchCompensation, keyGauges, i, 1e3*s.CompensationM[0])
		}
	}
	return out
}

func (p *Plan) oddString(out *odd.List, s *StringDetail, c int) {
	cd := &s.Cases[c]
	look := func(row int, x float64, more string) {
		if u := &watched[row]; !u.Holds(x) {
			about := join(ofString(s.Number-1), more, p.inCase(c))
			out.Look(u, fault.Place{Input: keyGauges}, about, x)
		}
	}
	look(tensionRow(s.LengthM), cd.TensionN, "")
	look(watchShareOpen, cd.ShareOpen, "")
	look(watchRise, cd.InharmonicityCents, "")
	for k := range cd.Bends {
		b := &cd.Bends[k]
		if b.Err != nil {
			continue
		}
		for _, w := range []struct {
			row int
			x   float64
		}{{watchBendingForce, b.Bend.BendingForceN}, {watchShareBent, b.Share}} {
			if !watched[w.row].Holds(w.x) {
				look(w.row, w.x, fmt.Sprintf("at fret %g", b.Fret))
			}
		}
	}
}

// inCase names a tuning where there are several.
func (p *Plan) inCase(c int) string {
	if len(p.req.Cases) == 1 {
		return ""
	}
	return "in " + p.req.Cases[c].Name
}

// join joins the words that are there.
func join(words ...string) string {
	out := ""
	for _, w := range words {
		if w != "" && out != "" {
			out += " "
		}
		out += w
	}
	return out
}
