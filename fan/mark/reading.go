package mark

import (
	"scalepair/data/fault"
)

// Line is one of the two outer string lines, on which the marks stand.
type Line int

// The two marked lines.
const (
	Bass Line = iota
	Treble
)

// String gives "bass" or "treble".
func (l Line) String() string { return [...]string{"bass", "treble"}[l] }

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

// String gives the kind in the words of the measurement file.
func (k Kind) String() string {
	return [...]string{"ruler", "caliper", "diagonal from bass nut", "diagonal from treble nut", "nut offset"}[k]
}

// Reading is one measured distance.
type Reading struct {
	Place fault.Place // of the measured value in its file; zero when there is none
	Kind  Kind
	Line  Line // of FromNut and Step only
	Fret  int  // the mark measured to: 1 to the last fret; for a diagonal 0 means the last fret; unused for NutOffset
	From  int  // of Step only: the mark measured from, Fret-1 as a rule, 0 is the nut
	MM    float64
	// Written is what the builder wrote, with its unit, for messages: "36.5 in";
	// "" where that is not known.
	Written string
	// StepMM is the least difference this reading could show, above 0; 0 means
	// that of its tool in Options.
	StepMM float64
}

// Tool is what measured one pass.
type Tool struct {
	// StepMM is the least difference the tool shows, or the builder reads, in
	// mm. A reading rounded to it has the standard uncertainty StepMM/sqrt(12).
	StepMM float64
	// ZeroMM is how far, at most, the tool's zero is off, in mm, plus or minus:
	// a worn ruler's end, jaws that do not close at nought. It is common to all
	// readings of the pass, so in a caliper pass it adds up step by step; as a
	// bound it counts for ZeroMM/sqrt(3). 0 leaves it out.
	ZeroMM float64
	// ScalePart is how far, at most, the tool's millimetre is off, as a part of
	// one (0.0002 is 0.2 mm in a metre), plus or minus, common to the pass; it
	// counts for ScalePart/sqrt(3). 0 leaves it out.
	ScalePart float64
}

// Tolerance is how far a mark may stand off. One of the two is above 0.
type Tolerance struct {
	Cents float64 // of pitch at that fret on that string
	MM    float64
	// Written is what the builder wrote, with its unit, for messages: "36.5 in";
	// "" where that is not known.
	Written string
}

// Options are what Check needs beside the layout and the readings.
type Options struct {
	// Ruler measures the FromNut rows, Caliper the Step rows and the nut
	// offset, Long the diagonals (the ruler's values where its step is 0).
	Ruler, Caliper, Long Tool
	Tolerance            Tolerance
	// OffsetToleranceMM is how far the treble nut may lie off its place beside
	// the bass nut; 0 means DefaultOffsetToleranceMM.
	OffsetToleranceMM float64
}

// DefaultOffsetToleranceMM is used where no tolerance for the nut offset is
// given. Judgement: it puts no string out of tune, since all treble marks and
// the saddle move with the treble nut, and turns a fret of 50 mm by half a
// degree.
const DefaultOffsetToleranceMM = 0.5

// Default tools, for a builder who states none. Judgement: a steel ruler with
// half millimetres, and calipers of which only every fifth hundredth is
// trusted when the jaws are set on drawn marks.
var (
	defaultRuler   = Tool{StepMM: 0.5}
	defaultCaliper = Tool{StepMM: 0.05}
)

// DefaultTolerance is two cents, about a third of what most people hear
// between two notes after one another (judgement).
func DefaultTolerance() Tolerance { return Tolerance{Cents: 2} }

// DefaultOptions gives the default tools and tolerance.
func DefaultOptions() Options {
	return Options{Ruler: defaultRuler, Caliper: defaultCaliper, Tolerance: DefaultTolerance()}
}
