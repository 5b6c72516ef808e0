package fan

import (
	"fmt"
	"math"
	"strconv"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// The bounds of what is taken for an instrument: wide enough for anything
// built, and narrow enough for arithmetic (judgement). A builder's own values
// have narrower ranges, in the tags of [Neck] and [FretWire].
const (
	minLength, maxLength   unit.Length = 200 * unit.Millimetre, 2000 * unit.Millimetre
	leastSize              unit.Length = 1 * unit.Millimetre // of a string spread or a width
	maxDiameter            unit.Length = 10 * unit.Millimetre
	minStrings, maxStrings             = 2, 24
	maxFrets                           = 36
	maxTan                             = 1.7320508075688772 // of 60 degrees
)

// The build file's keys, for the places of faults.
const (
	keyBass          = "scales.bass"
	keyTreble        = "scales.treble"
	keyStrings       = "strings.tuning"
	keyGauges        = "strings.gauges"
	keyFrets         = "neck.frets"
	keyNeutral       = "neck.neutral_fret"
	keyNutSpread     = "neck.string_spread_at_nut"
	keySaddleSpread  = "neck.string_spread_at_saddle"
	keyNutWidth      = "neck.nut_width"
	keyOtherWidth    = "neck.other_width"
	keyOtherAtFret   = "neck.other_width_at_fret"
	keyBassMargin    = "neck.bass_margin"
	keyTrebleMargin  = "neck.treble_margin"
	keyEdgeMargin    = "neck.edge_margin"
	keyNutSpacing    = "neck.nut_spacing"
	keySaddleSpacing = "neck.saddle_spacing"
	keyZeroFret      = "neck.zero_fret"
	keyNutShelf      = "neck.nut_shelf"
	keyOverhang      = "neck.body_end_overhang"
	keySawAllowance  = "neck.saw_allowance"
	keyRadius        = "neck.radius"
	keyRadiusNut     = "neck.radius_nut"
	keyRadiusLast    = "neck.radius_last"
	keyTang          = "fret_wire.tang_depth"
	keyClearance     = "fret_wire.clearance"
	keyThickness     = "blanks.thickness"
	keyKerf          = "fret_wire.kerf"
	keyTangWidth     = "fret_wire.tang_width"
	keyBarbWidth     = "fret_wire.barb_width"
	keyWireOverhang  = "fret_wire.overhang"
	keySpare         = "fret_wire.spare_percent"
)

// faults gathers what is wrong, named by build-file key.
type faults struct{ list fault.List }

func (f *faults) add(key, what, given, remedy string) {
	f.list.Add(fault.Place{Input: key}, what, given, remedy)
}

// length checks a length against its bounds, both included.
func (f *faults) length(key, name string, l, least, most unit.Length) bool {
	if !f.finite(key, name, l.M()) {
		return false
	}
	if l >= least && l <= most {
		return true
	}
	f.add(key, name+" is out of range", number(l.MM())+" mm", fmt.Sprintf("from %s to %s mm", number(least.MM()), number(most.MM())))
	return false
}

// size checks a length that may be 0.
func (f *faults) size(key, name string, l unit.Length) bool {
	return f.length(key, name, l, 0, maxLength)
}

func (f *faults) finite(key, name string, v float64) bool {
	if finite(v) {
		return true
	}
	f.add(key, name+" is not a number", "", "give a plain number")
	return false
}

func (f *faults) whole(key, name string, n, least, most int) bool {
	if n >= least && n <= most {
		return true
	}
	f.add(key, name+" is out of range", strconv.Itoa(n), fmt.Sprintf("from %d to %d", least, most))
	return false
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// number prints a value for a message: to three decimals, which no tool of the
// trade goes beyond, without zeros behind, and never as -0. What would print
// as nothing, or is larger than any size, keeps three figures.
func number(v float64) string {
	rounded := plain(math.Round(v*1000) / 1000)
	if rounded == 0 && v != 0 || math.Abs(v) >= 1e9 {
		return strconv.FormatFloat(v, 'g', 3, 64)
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

func abs[Q ~float64](x Q) Q { return Q(math.Abs(float64(x))) }

// plain turns -0 into 0.
func plain[Q ~float64](v Q) Q {
	if v == 0 {
		return 0
	}
	return v
}

// checkNeck finds every fault of a spec that does not depend on the pair.
func checkNeck(s Spec) fault.List {
	var f faults
	f.whole(keyStrings, "the number of strings", s.Strings, minStrings, maxStrings)
	fretsOK := f.whole(keyFrets, "the number of frets", s.Frets, 1, maxFrets)
	if fretsOK {
		f.checkNeutral(s)
	} else if !s.Neutral.Bridge {
		f.finite(keyNeutral, "the neutral fret", s.Neutral.Fret)
	}
	f.checkMargins(s)
	if s.Widths() {
		f.checkWidths(s, fretsOK)
	} else {
		f.length(keyNutSpread, "the string spread at the nut", s.NutSpread, leastSize, maxLength)
		f.length(keySaddleSpread, "the string spread at the saddle", s.SaddleSpread, leastSize, maxLength)
	}
	f.checkSpacing(keyNutSpacing, s, s.NutSpacing, s.NutSpread, "string_spread_at_nut")
	f.checkSpacing(keySaddleSpacing, s, s.SaddleSpacing, s.SaddleSpread, "string_spread_at_saddle")
	if f.size(keyNutShelf, "the nut shelf", s.NutShelf) && s.ZeroFret && s.NutShelf < LeastZeroShelf {
		f.add(keyZeroFret, fmt.Sprintf("a zero fret's slot wants board behind it, at least %s mm (judgement), and the nut shelf is %s mm",
			number(LeastZeroShelf.MM()), number(s.NutShelf.MM())), "", `write nut_shelf = "8 mm" under [neck], room for the slot and for the nut that spaces the strings`)
	}
	f.size(keyOverhang, "the body end overhang", s.BodyEndOverhang)
	f.size(keySawAllowance, "the saw allowance", s.SawAllowance)
	return f.list
}

func (f *faults) checkNeutral(s Spec) {
	if s.Neutral.Bridge || !f.finite(keyNeutral, "the neutral fret", s.Neutral.Fret) {
		return
	}
	if s.Neutral.Fret < 0 || s.Neutral.Fret > float64(s.Frets) {
		f.add(keyNeutral, "the neutral fret is off the board", number(s.Neutral.Fret),
			fmt.Sprintf("from 0 (the nut) to %d (the last fret), or \"bridge\"", s.Frets))
	}
}

func (f *faults) checkMargins(s Spec) {
	bass, treble := s.Margins()
	if bass == treble {
		f.size(keyEdgeMargin, "the edge margin", bass)
		return
	}
	f.size(keyBassMargin, "the bass margin", bass)
	f.size(keyTrebleMargin, "the treble margin", treble)
}

// checkWidths checks the board's widths, and that spreads are not given as well.
func (f *faults) checkWidths(s Spec, fretsOK bool) {
	if s.NutSpread != 0 || s.SaddleSpread != 0 {
		f.add(keyNutSpread, "string spreads and board widths are both given", "", "leave one pair out: the other follows from it")
	}
	f.width(keyNutWidth, "the board's width at the nut", s.NutWidth, s)
	f.width(keyOtherWidth, "the board's other width", s.OtherWidth, s)
	if at := s.widthFret(); fretsOK && !(at >= 1 && at <= float64(s.Frets)) {
		f.add(keyOtherAtFret, "the fret of the other width is off the board", number(at), fmt.Sprintf("from 1 to %d", s.Frets))
	}
}

func (f *faults) width(key, name string, width unit.Length, s Spec) {
	bass, treble := s.Margins()
	if f.length(key, name, width, leastSize, maxLength) && width-bass-treble < leastSize {
		f.add(key, name+" leaves too little between the edge margins", number(width.MM())+" mm",
			fmt.Sprintf("the margins take %s mm of it", number((bass+treble).MM())))
	}
}
