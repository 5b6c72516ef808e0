package report

import (
	"fmt"

	"scalepair/fan/mark"
)

// findingOf says in words what went wrong, without numbers of length, and what to
// do before the saw touches wood.
func findingOf(f mark.Finding) Finding {
	out := Finding{Finding: f}
	if f.Reading != nil {
		out.Place = f.Reading.Place.String()
	}
	say := func(words, do string) Finding {
		out.Words, out.Do = words, do
		return out
	}
	at := fmt.Sprintf("%v mark %d", f.Line, f.Fret)
	switch f.Kind {
	case mark.MarkOff:
		return say(at+" itself is off", "draw "+at+" anew from the nut")
	case mark.RulerSlip:
		return say("the ruler reading of "+at+" is wrong, the mark is not", "measure it again")
	case mark.StepSlip:
		return say(fmt.Sprintf("the caliper step from %v mark %d to %d is wrong and shifts all later sums, the marks are not", f.Line, f.From, f.Fret), "measure it again")
	case mark.MarksOff:
		if f.IsNut() {
			return say(fmt.Sprintf("the %v nut mark is off against all other marks", f.Line), fmt.Sprintf("look at the %v nut mark, and at the ruler's zero, before anything else", f.Line))
		}
		return say(at+" and all after it are off together: a step slipped in the marking", "draw "+at+" and all after it anew from the nut")
	case mark.RulerMoved:
		if f.Fret == 1 {
			return say(fmt.Sprintf("the whole ruler pass of the %v line is off alike: its zero did not lie on the nut mark", f.Line), "lay the ruler's zero on the nut mark and take this pass again")
		}
		return say("the ruler readings of "+at+" and all after it are off alike, the marks are not: the ruler moved", fmt.Sprintf("clamp the ruler with its zero on the nut mark and take this pass again from mark %d on", f.Fret))
	case mark.OffsetOff:
		return say("the treble nut lies wrong beside the bass nut, and with it the whole treble line; neither line shows it alone", "set out the treble nut and all treble marks anew from the square line")
	case mark.OffsetSlip:
		return say("the nut offset was read wrong", "measure it again")
	}
	ends := map[mark.Line]mark.Kind{mark.Bass: mark.FromTrebleNut, mark.Treble: mark.FromBassNut}
	return say(fmt.Sprintf("the %s was read wrong", mark.DiagonalName(ends[f.Line], f.Fret)), "measure it again")
}
