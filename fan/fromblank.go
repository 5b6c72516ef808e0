package fan

import (
	"fmt"

	"scalepair/data/fault"
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
// longest straight board. spec.Bass is not read. The board grows with either
// length, so that bisection finds the longest that fits. A blank on which the
// spec's treble length alone finds no room is no fault; what is wrong with the
// neck or the treble length is. keeps reports whether a fan keeps the limits; nil
// where there are none.
func AdviseBlank(spec Spec, blank Blank, keeps func(*Frame) bool) (FromBlank, error) {
	spec.Bass = spec.Treble
	f := checkPair(spec)
	base, err := NewBase(spec)
	f.list.Include(fault.Place{}, err)
	if !(blank.Length > 0 && blank.Width > 0 && finite(blank.Length.M()) && finite(blank.Width.M())) {
		f.add("blanks", "a blank needs a length and a width", "", `give both, such as "500 x 70 mm"`)
	}
	if err := f.list.Err(); err != nil {
		return FromBlank{}, err
	}
	out := FromBlank{Blank: blank}
	fanned := func(l unit.Length) Spec {
		spec := spec
		spec.Bass = l
		return spec
	}
	out.LongestBass, out.BassStop = longest(base, blank, nil, spec.Treble, fanned)
	if keeps != nil && out.LongestBass != nil && !keeps(&out.LongestBass.Frame) {
		out.WithinLimits, out.LimitsStop = longest(base, blank, keeps, spec.Treble, fanned)
	}
	out.LongestStraight, out.StraightStop = longest(base, blank, nil, minLength, func(l unit.Length) Spec {
		spec := spec
		spec.Bass, spec.Treble = l, l
		return spec
	})
	return out, nil
}

// longest finds the longest length, in tenths of a millimetre, whose board a
// blank holds and which keeps the limits, where there are any.
func longest(base *Base, blank Blank, keeps func(*Frame) bool, from unit.Length, at func(unit.Length) Spec) (*Layout, Stop) {
	const tenth = 0.1 * unit.Millimetre
	// holds gives the layout on the blank, or what stops it.
	holds := func(l unit.Length) (Stop, bool) {
		s := at(l)
		frame, reason := base.Frame(s.Bass, s.Treble)
		if reason != Fits {
			return NoFan, false
		}
		if keeps != nil && !keeps(&frame) {
			return BrokenLimit, false
		}
		fit := frame.leastBlank().fit(blank)
		if fit.SpareLength < -sizeSlack {
			return BlankLength, false
		}
		return BlankWidth, fit.Fits
	}
	stop, ok := holds(from)
	if !ok {
		return nil, stop
	}
	lo, hi := 0, int((maxLength-from)/tenth)+1 // from + lo tenths fits, from + hi tenths does not
	stop = NoFan
	for hi-lo > 1 {
		mid := (lo + hi) / 2
		if why, ok := holds(from + unit.Length(mid)*tenth); ok {
			lo = mid
		} else {
			hi, stop = mid, why
		}
	}
	l, err := New(at(from + unit.Length(lo)*tenth))
	if err != nil {
		panic(fmt.Sprintf("fan: a pair that fits makes no layout: %v", err))
	}
	return l, stop
}
