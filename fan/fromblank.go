package fan

import (
	"sort"

	"scalepair/data/unit"
)

// FromBlank is what a blank allows at one treble length and neutral fret, by
// geometry alone. A nil layout says that nothing comes out of it.
type FromBlank struct {
	Blank Blank
	// LongestBass has the spec's treble length and the longest bass, LongestStraight
	// the greatest of two equal lengths; both to the tenth of a millimetre.
	LongestBass, LongestStraight *Layout
	// BassStop and StraightStop say what stops a longer one.
	BassStop, StraightStop Stop
	// WithinLimits is as LongestBass where that breaks a limit, and keeps them all.
	WithinLimits *Layout
	LimitsStop   Stop
}

// Stop is what stops a longer scale on a blank.
type Stop int

// The stops.
const (
	BlankLength Stop = iota // the blank is too short
	BlankWidth              // the blank is too narrow
	NoFan                   // no such fan can be made
	BrokenLimit             // it breaks a limit
)

// AdviseBlank answers what comes out of a blank: the longest bass at the spec's
// treble length, neutral fret, frets, string spread and saw allowance, and the
// longest straight board. spec.Bass is not read. A blank on which the spec's treble
// length alone finds no room is no fault; what is wrong with the neck is. keeps
// reports whether a fan keeps the limits; nil where there are none.
func AdviseBlank(spec Spec, blank Blank, keeps func(*Frame) bool) (FromBlank, error) {
	base, err := NewBase(spec)
	if err != nil {
		return FromBlank{}, err
	}
	out := FromBlank{Blank: blank}
	fanned := func(bass unit.Length) (Frame, Reason) { return base.Frame(bass, spec.Treble) }
	out.LongestBass, out.BassStop = longestOn(blank, nil, spec.Treble, fanned)
	if keeps != nil && out.LongestBass != nil && !keeps(&out.LongestBass.Frame) {
		out.WithinLimits, out.LimitsStop = longestOn(blank, keeps, spec.Treble, fanned)
	}
	out.LongestStraight, out.StraightStop = longestOn(blank, nil, shortest, func(l unit.Length) (Frame, Reason) { return base.Frame(l, l) })
	return out, nil
}

// longestOn finds the longest length, in tenths of a millimetre, whose board a
// blank holds and which keeps the limits, where there are any; nil where from is too
// long already. The board grows with the length, so that bisection finds it: of what
// it tries, the last to hold is the longest, and the last that does not hold is next.
func longestOn(blank Blank, keeps func(*Frame) bool, from unit.Length, at func(unit.Length) (Frame, Reason)) (*Layout, Stop) {
	const tenth = 0.1 * unit.Millimetre
	best, found, stop := Frame{}, false, NoFan
	holds := func(tenths int) bool {
		frame, reason := at(from + unit.Length(tenths)*tenth)
		if reason != Fits {
			stop = NoFan
			return false
		}
		fit := frame.LeastBlank().fit(blank)
		switch {
		case keeps != nil && !keeps(&frame):
			stop = BrokenLimit
		case fit.SpareLength < -sizeSlack:
			stop = BlankLength
		case !fit.Fits:
			stop = BlankWidth
		default:
			best, found = frame, true
			return true
		}
		return false
	}
	sort.Search(int((longest-from)/tenth)+1, func(tenths int) bool { return !holds(tenths) })
	if !found {
		return nil, stop
	}
	return best.layout(), stop
}
