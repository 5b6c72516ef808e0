package fan

import (
	"fmt"

	"scalepair/data/fault"
)

// Reason says why a scale pair makes no instrument on a neck. The zero value
// is Fits.
type Reason int

const (
	Fits           Reason = iota // the pair makes an instrument
	LengthAbsurd                 // a length outside 200 to 2000 mm
	ReverseUnasked               // the bass is shorter than the treble and that was not asked for
	StringsCross                 // the outer strings meet between nut and saddle
	StringsTouch                 // equal gaps: the strings are thicker than the spread
	TooSteep                     // the nut or saddle line slants more than 60 degrees
	FretsCross                   // two fret lines meet on the board
	EndAtSaddle                  // the board's body end reaches the saddle line
	NotSettled                   // no taper was found that fits lengths and spreads
)

// about holds each reason in the builder's words with the key it is blamed on
// and what would do.
var about = [...]struct{ words, key, remedy string }{
	Fits:           {"the pair fits", "", ""},
	LengthAbsurd:   {"a length is out of range", keyBass, "from 200 to 2000 mm"},
	ReverseUnasked: {"the bass is shorter than the treble", keyBass, "exchange them, or ask for it with reverse_fan = true"},
	StringsCross:   {"the outer strings meet between nut and saddle", keySaddleSpread, "take a greater spread there"},
	StringsTouch:   {"the strings are thicker than the spread holds", keyNutSpacing, "take equal centres, or a greater spread"},
	TooSteep:       {"the nut or saddle line slants more than 60 degrees", keyBass, "bring the lengths closer together, or move the neutral fret"},
	FretsCross:     {"two fret lines meet on the board", keyEdgeMargin, "take smaller margins, or bring the lengths closer together"},
	EndAtSaddle:    {"the end of the board reaches the saddle line", keyFrets, "take fewer frets or less body end overhang"},
	NotSettled:     {"lengths and spreads do not go together", keySaddleSpread, "check them for a slip"},
}

// String says the reason in the builder's words.
func (r Reason) String() string {
	if r < 0 || int(r) >= len(about) {
		return "unknown reason"
	}
	return about[r].words
}

// fault is the reason as a fault of a spec.
func (r Reason) fault(s Spec) error {
	var f faults
	given := fmt.Sprintf("bass %s mm, treble %s mm", number(s.Bass.MM()), number(s.Treble.MM()))
	f.add(about[r].key, r.String(), given, about[r].remedy)
	return f.list.Err()
}

// checkPair finds the faults of the scale pair by itself.
func checkPair(s Spec) faults {
	var f faults
	bassOK := f.length(keyBass, "the bass length", s.Bass, minLength, maxLength)
	trebleOK := f.length(keyTreble, "the treble length", s.Treble, minLength, maxLength)
	if bassOK && trebleOK && s.Bass < s.Treble && !s.AllowReverse {
		f.list.Include(placeOf(keyBass), ReverseUnasked.fault(s))
	}
	return f
}

func placeOf(key string) fault.Place { return fault.Place{Input: key} }
