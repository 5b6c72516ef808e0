package build

import (
	"fmt"
	"slices"

	"scalepair/data/fault"
	"scalepair/tuning"
)

// HighFirst reports a tuning that falls from its first note to its last, since
// tunings are written low string first: nil for any other, re-entrant ones too.
// given is the tuning as it was written; the fault has no place.
func HighFirst(t tuning.Tuning, given string) error {
	if !falls(t) {
		return nil
	}
	return fault.Fault{What: "the tuning falls from its first note to its last", Given: given,
		Remedy: fmt.Sprintf("low string first? write %q; a tuning that is meant so needs ordering = false under [strings]", LowFirst(t))}
}

// LowFirst gives the notes of a tuning in the other order.
func LowFirst(t tuning.Tuning) string {
	notes := slices.Clone(t.Notes)
	slices.Reverse(notes)
	return tuning.Tuning{Notes: notes}.String()
}

// falls tells whether no note is higher than the one before it, and some is
// lower.
func falls(t tuning.Tuning) bool {
	hz := t.FreqsHz(tuning.ConcertA) // string 1, written last, first
	return slices.IsSorted(hz) && len(hz) > 1 && hz[0] < hz[len(hz)-1]
}

// unordered tells whether [strings] switches the order of its strings off.
func unordered(s *section) bool {
	if s.table == nil {
		return false
	}
	n := s.table.get("ordering")
	return n != nil && n.kind == kindTruth && n.text == "false"
}
