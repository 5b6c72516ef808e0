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
	ReverseUnasked: {"the bass is shorter than the treble", "scales.bass", "exchange them, or ask for it with reverse_fan = true"},
	StringsCross:   {"the outer strings meet between nut and saddle", "neck.string_spread_at_saddle", "take a greater spread there"},
	StringsTouch:   {"the strings are thicker than the spread holds", "neck.nut_spacing", "take equal centres, or a greater spread"},
	TooSteep:       {"the nut or saddle line slants more than 60 degrees", "scales.bass", "bring the lengths closer together, or move the neutral fret"},
	FretsCross:     {"two fret lines meet on the board", "neck.edge_margin", "take smaller margins, or bring the lengths closer together"},
	EndAtSaddle:    {"the end of the board reaches the saddle line", "neck.frets", "take fewer frets or less body end overhang"},
	NotSettled:     {"lengths and spreads do not go together", "neck.string_spread_at_saddle", "check them for a slip"},
}

// String says the reason in the builder's words.
func (r Reason) String() string { return about[r].words }

// fault is the reason as a fault of a spec; nil where the pair fits.
func (r Reason) fault(s Spec) error {
	if r == Fits {
		return nil
	}
	return fault.List{{Place: keyed(about[r].key), What: r.String(), Remedy: about[r].remedy,
		Given: fmt.Sprintf("bass %s, treble %s", millimetres(s.Bass), millimetres(s.Treble))}}
}
