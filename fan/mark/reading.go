package mark

import (
	"cmp"
	"fmt"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Line is one of the two outer string lines, on which the marks stand.
type Line int

// The two marked lines.
const (
	Bass Line = iota
	Treble
)

var lines = [...]string{"bass", "treble"}

// String gives "bass" or "treble".
func (l Line) String() string { return lines[l] }

// MarshalText gives the same.
func (l Line) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// Kind says what one row of the builder's measuring is.
type Kind int

const (
	// FromNut is a row of the ruler pass: the distance from the nut to a mark
	// along the string line.
	FromNut Kind = iota
	// Step is a row of the caliper pass: the distance to a mark from the mark
	// before it (or from another, named mark) along the string line.
	Step
	// FromBassNut is the diagonal from the bass nut mark to a mark on the
	// treble line, the last one unless another is named.
	FromBassNut
	// FromTrebleNut is the diagonal from the treble nut mark to a mark on the
	// bass line, the last one unless another is named.
	FromTrebleNut
	// NutOffset is how far the treble nut mark lies towards the bridge,
	// measured along the treble line from the square line through the bass nut
	// mark; negative where it lies nearer the head.
	NutOffset
)

var kinds = [...]string{"ruler", "caliper", "diagonal from bass nut", "diagonal from treble nut", "nut offset"}

// String gives the kind in the words of the measurement file.
func (k Kind) String() string { return kinds[k] }

// MarshalText gives the same.
func (k Kind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// Reading is one measured distance, as [ReadReadings] checked it.
type Reading struct {
	Place    fault.Place // of the measured value in its file
	Kind     Kind
	Line     Line // of FromNut and Step only
	Fret     int  // the mark measured to: 1 to the last fret; for a diagonal 0 means the last fret; unused for NutOffset
	From     int  // of Step only: the mark measured from, Fret-1 as a rule, 0 is the nut
	Measured unit.Length
	// Written is what the builder wrote, with its unit, for messages: "36.5 in";
	// "" where that is not known.
	Written string
	// Resolution is the least difference this reading could show; 0 means that
	// of its tool in Options.
	Resolution unit.Length
}

// Name says in words what a reading is: "bass ruler fret 7".
func (r Reading) Name() string {
	switch r.Kind {
	case FromNut:
		return fmt.Sprintf("%v ruler fret %d", r.Line, r.Fret)
	case Step:
		return fmt.Sprintf("%v caliper from fret %d to %d", r.Line, r.From, r.Fret)
	case FromBassNut, FromTrebleNut:
		return DiagonalName(r.Kind, r.Fret)
	}
	return r.Kind.String()
}

// DiagonalName names a diagonal by its ends: "diagonal from bass nut to treble
// mark 24". It begins as the measurement file does.
func DiagonalName(k Kind, fret int) string {
	return fmt.Sprintf("%v to %v mark %d", k, k.end(), fret)
}

// along reports whether a reading goes along its line.
func (r Reading) along() bool { return r.Kind == FromNut || r.Kind == Step }

// end is the line that a diagonal ends on.
func (k Kind) end() Line {
	if k == FromTrebleNut {
		return Bass
	}
	return Treble
}

// Options say how a marked board is measured and what it is held to, as a
// builder states it; 0 means not given.
type Options struct {
	// Tolerance and ToleranceCents are how far a mark may be off; of the two one
	// at most is given.
	Tolerance      unit.Length `toml:"tolerance" range:"0.001 mm, 10 mm"`
	ToleranceCents unit.Cents  `toml:"tolerance_cents" range:"0.01, 100"`
	// NutOffsetTolerance is for the treble nut beside the bass nut.
	NutOffsetTolerance unit.Length `toml:"nut_offset_tolerance" range:"0.001 mm, 20 mm"`
	// The resolutions are what ruler and calipers show on drawn marks. The ruler
	// takes FromNut and the diagonals, the calipers Step and NutOffset.
	RulerResolution   unit.Length `toml:"ruler_resolution" range:"0.001 mm, 5 mm"`
	CaliperResolution unit.Length `toml:"caliper_resolution" range:"0.0001 mm, 5 mm"`
	// The zeros are how far a tool's zero may be off, plus or minus: a worn
	// ruler's end, jaws that do not close at zero. It is common to all readings of
	// a pass.
	RulerZero   unit.Length `toml:"ruler_zero" range:"0 mm, 20 mm"`
	CaliperZero unit.Length `toml:"caliper_zero" range:"0 mm, 5 mm"`
}

// defaults hold where a builder states nothing, all judgement: two cents, about a
// third of what most people hear between two notes after one another; a treble
// nut within half a millimetre, which puts no string out of tune, since all
// treble marks and the saddle move with it, and turns a fret of 50 mm by half a
// degree; a steel ruler with half millimetres, and calipers of which only every
// fifth hundredth is trusted when the jaws are set on drawn marks.
var defaults = Options{ToleranceCents: 2, NutOffsetTolerance: 0.5 * unit.Millimetre,
	RulerResolution: 0.5 * unit.Millimetre, CaliperResolution: 0.05 * unit.Millimetre}

// WithDefaults fills in what is not given.
func (o Options) WithDefaults() Options {
	o.NutOffsetTolerance = cmp.Or(o.NutOffsetTolerance, defaults.NutOffsetTolerance)
	o.RulerResolution = cmp.Or(o.RulerResolution, defaults.RulerResolution)
	o.CaliperResolution = cmp.Or(o.CaliperResolution, defaults.CaliperResolution)
	if o.Tolerance == 0 {
		o.ToleranceCents = cmp.Or(o.ToleranceCents, defaults.ToleranceCents)
	}
	return o
}

// of is what a reading's tool could show, and how far its zero may be off, mm.
func (o Options) of(r *Reading) (resolution, zero float64) {
	tool, at := o.RulerResolution, o.RulerZero
	if r.Kind == Step || r.Kind == NutOffset {
		tool, at = o.CaliperResolution, o.CaliperZero
	}
	return cmp.Or(r.Resolution, tool).MM(), at.MM()
}

// Tolerance is how far a mark may be off, as a flag gives it: one of the two.
type Tolerance struct {
	Length unit.Length
	Cents  unit.Cents
}

// UnmarshalText reads a length, or "3 cents".
func (t *Tolerance) UnmarshalText(given []byte) error {
	text := strings.ToLower(strings.TrimSpace(string(given)))
	var l unit.Length
	var cents float64
	var err error
	if number, ok := strings.CutSuffix(strings.TrimSuffix(text, "s"), "cent"); ok {
		cents, err = unit.ParseNumber(number)
	} else if l, err = unit.ParseLength(text); err != nil {
		return fault.Fault{What: "neither a length nor cents", Given: string(given), Remedy: `write "0.1 mm", "0.004 in" or "3 cents"`}
	}
	if err == nil && !(cents > 0 && cents <= 100 || l > 0 && l <= 10*unit.Millimetre) {
		err = fault.Fault{What: "the tolerance is out of range", Given: string(given), Remedy: "above 0, up to 10 mm or 100 cents"}
	}
	if err == nil {
		*t = Tolerance{l, unit.Cents(cents)}
	}
	return err
}
