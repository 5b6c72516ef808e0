package fan

import "scalepair/data/unit"

// KerfFit says how a fret wire's tang sits in a saw cut.
type KerfFit int

const (
	KerfUnknown KerfFit = iota // a width is not known
	KerfHolds                  // the web enters and, as far as the barbs are known, they bite
	KerfWedges                 // narrower than the web: the wire wedges the slots open and bends the neck back
	KerfLoose                  // not narrower than the barbs: nothing bites
)

// String says it in the builder's words.
func (k KerfFit) String() string {
	switch k {
	case KerfHolds:
		return "the tang fits the cut"
	case KerfWedges:
		return "the cut is narrower than the tang: it wedges the slots open and bends the neck back"
	case KerfLoose:
		return "the cut is not narrower than the barbs: nothing holds the fret but glue"
	}
	return "not known: give the saw's cut and the tang's width"
}

// kerfSlack is how much narrower than the web a cut may be before the wire is
// said to wedge: about what wood gives without pushing back (judgement).
const kerfSlack unit.Length = 0.03 * unit.Millimetre

// TangInCut compares the saw's cut with the tang.
func (s Sawing) TangInCut() KerfFit {
	switch {
	case s.Kerf == 0 || s.TangWidth == 0 && s.BarbWidth == 0:
		return KerfUnknown
	case s.Kerf < s.TangWidth-kerfSlack:
		return KerfWedges
	case s.BarbWidth > 0 && s.Kerf >= s.BarbWidth:
		return KerfLoose
	case s.TangWidth == 0:
		return KerfUnknown
	}
	return KerfHolds
}

func (f *faults) checkWidthsOfCut(s Sawing) {
	f.length(keyKerf, "the saw's cut", s.Kerf, 0, maxKerf)
	f.length(keyTangWidth, "the tang's width", s.TangWidth, 0, maxKerf)
	f.length(keyBarbWidth, "the width over the barbs", s.BarbWidth, 0, maxKerf)
	if s.BarbWidth > 0 && s.BarbWidth < s.TangWidth {
		f.add(keyBarbWidth, "the barbs are narrower than the tang", number(s.BarbWidth.MM())+" mm", "measure over the barbs")
	}
}
