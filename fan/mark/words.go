package mark

import "fmt"

// String names the kind in a word or two, as a heading.
func (k SlipKind) String() string {
	return [...]string{
		MarkOff: "mark off", RulerSlip: "ruler reading", StepSlip: "caliper step", Shifted: "marks shifted", NutMarkOff: "nut mark off",
		Stretched: "line stretched", RulerZeroOff: "ruler's nought", RulerMoved: "ruler moved", RulerScaleOff: "ruler's scale", CaliperZeroOff: "calipers' nought",
		OffsetOff: "nut offset", OffsetSlip: "nut offset reading", DiagonalSlip: "diagonal reading", SpanOff: "string lines apart",
	}[k]
}

// Words says in a sentence, without numbers of length, what went wrong.
func (f Finding) Words() string {
	switch f.Kind {
	case MarkOff:
		return fmt.Sprintf("%v mark %d itself stands off", f.Line, f.Fret)
	case RulerSlip:
		return fmt.Sprintf("the ruler reading of %v mark %d is wrong, the mark is not", f.Line, f.Fret)
	case StepSlip:
		return fmt.Sprintf("the caliper step from %v mark %d to %d is wrong and shifts all later sums, the marks are not", f.Line, f.From, f.Fret)
	case Shifted:
		return fmt.Sprintf("%v mark %d and all after it stand off together: a step slipped in the marking", f.Line, f.Fret)
	case NutMarkOff:
		return fmt.Sprintf("the %v nut mark is off against all other marks", f.Line)
	case RulerZeroOff:
		return fmt.Sprintf("the whole ruler pass of the %v line is off alike: its nought did not lie on the nut mark", f.Line)
	case RulerMoved:
		return fmt.Sprintf("the ruler readings of %v mark %d and all after it are off alike, the marks are not: the ruler moved", f.Line, f.Fret)
	case RulerScaleOff:
		return fmt.Sprintf("the ruler pass of the %v line is off in proportion, the marks are not: the ruler's scale is off", f.Line)
	case CaliperZeroOff:
		return fmt.Sprintf("every caliper step of the %v line is off alike: the jaws do not close at nought", f.Line)
	case Stretched:
		return fmt.Sprintf("every %v mark is off in proportion: the line was set out for another length", f.Line)
	}
	return f.wordsAcross()
}

func (f Finding) wordsAcross() string {
	switch {
	case f.Kind == OffsetOff:
		return "the treble nut lies wrong beside the bass nut, and with it the whole treble line; neither line shows it alone"
	case f.Kind == OffsetSlip:
		return "the nut offset was read wrong"
	case f.Kind == SpanOff:
		return "the two string lines are not as far apart as laid out"
	}
	return fmt.Sprintf("the %s was read wrong", DiagonalName(f.Line, f.Fret))
}

// DiagonalName names a diagonal by the line and the mark it ends on: "diagonal
// from bass nut to treble mark 24". It begins as the measurement file does.
func DiagonalName(end Line, fret int) string {
	from := FromBassNut
	if end == Bass {
		from = FromTrebleNut
	}
	return fmt.Sprintf("%v to %v mark %d", from, end, fret)
}

// Remedy says what to do before the saw touches wood.
func (f Finding) Remedy() string {
	switch f.Kind {
	case MarkOff:
		return fmt.Sprintf("draw %v mark %d anew from the nut", f.Line, f.Fret)
	case RulerSlip, StepSlip, OffsetSlip, DiagonalSlip:
		return "measure it again"
	case Shifted:
		return fmt.Sprintf("draw %v mark %d and all after it anew from the nut", f.Line, f.Fret)
	case NutMarkOff:
		return fmt.Sprintf("look at the %v nut mark, and at the ruler's nought, before anything else", f.Line)
	case RulerZeroOff:
		return "lay the ruler's nought on the nut mark and take this pass again"
	case RulerMoved:
		return fmt.Sprintf("clamp the ruler with its nought on the nut mark and take this pass again from mark %d on", f.Fret)
	case RulerScaleOff:
		return "lay the ruler beside another one, and take this pass again with the better"
	case CaliperZeroOff:
		return "close the jaws, set them to nought and take this pass again"
	case Stretched:
		return "look whether the right length was used, and whether a paper template was true to scale"
	case OffsetOff:
		return "set out the treble nut and all treble marks anew from the square line"
	}
	return "measure how far the string lines stand apart at both base lines"
}
