package report

import (
	"fmt"

	"scalepair/fan/mark"
)

// slipWords say in a sentence, without numbers of length, what went wrong.
func slipWords(f mark.Finding) string {
	switch f.Kind {
	case mark.MarkOff:
		return fmt.Sprintf("%v mark %d itself is off", f.Line, f.Fret)
	case mark.RulerSlip:
		return fmt.Sprintf("the ruler reading of %v mark %d is wrong, the mark is not", f.Line, f.Fret)
	case mark.StepSlip:
		return fmt.Sprintf("the caliper step from %v mark %d to %d is wrong and shifts all later sums, the marks are not", f.Line, f.From, f.Fret)
	case mark.MarksOff:
		if f.IsNut() {
			return fmt.Sprintf("the %v nut mark is off against all other marks", f.Line)
		}
		return fmt.Sprintf("%v mark %d and all after it are off together: a step slipped in the marking", f.Line, f.Fret)
	case mark.RulerMoved:
		if f.Fret == 1 {
			return fmt.Sprintf("the whole ruler pass of the %v line is off alike: its zero did not lie on the nut mark", f.Line)
		}
		return fmt.Sprintf("the ruler readings of %v mark %d and all after it are off alike, the marks are not: the ruler moved", f.Line, f.Fret)
	case mark.OffsetOff:
		return "the treble nut lies wrong beside the bass nut, and with it the whole treble line; neither line shows it alone"
	case mark.OffsetSlip:
		return "the nut offset was read wrong"
	}
	return fmt.Sprintf("the %s was read wrong", mark.DiagonalName(diagonalTo(f.Line), f.Fret))
}

// diagonalTo is the diagonal that ends on a line.
func diagonalTo(l mark.Line) mark.Kind {
	if l == mark.Bass {
		return mark.FromTrebleNut
	}
	return mark.FromBassNut
}

// remedyOf says what to do before the saw touches wood.
func remedyOf(f mark.Finding) string {
	switch f.Kind {
	case mark.MarkOff:
		return fmt.Sprintf("draw %v mark %d anew from the nut", f.Line, f.Fret)
	case mark.MarksOff:
		if f.IsNut() {
			return fmt.Sprintf("look at the %v nut mark, and at the ruler's zero, before anything else", f.Line)
		}
		return fmt.Sprintf("draw %v mark %d and all after it anew from the nut", f.Line, f.Fret)
	case mark.RulerMoved:
		if f.Fret == 1 {
			return "lay the ruler's zero on the nut mark and take this pass again"
		}
		return fmt.Sprintf("clamp the ruler with its zero on the nut mark and take this pass again from mark %d on", f.Fret)
	case mark.OffsetOff:
		return "set out the treble nut and all treble marks anew from the square line"
	}
	return "measure it again"
}
