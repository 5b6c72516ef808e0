package choice

import (
	"scalepair/fan"
	"scalepair/gauges"
	"scalepair/tension"
)

// Request is all that a choice depends on. Slices over strings start at
// string 1, the highest.
type Request struct {
	// Cases are the tunings that one set of gauges must serve, at least one.
	Cases []Case
	// By says how several cases are put together.
	By Combining

	// Stock holds every gauge that is spoken of, the reference's among them.
	Stock []gauges.Gauge
	// Usable lists the indexes into Stock that may be chosen; nil means all.
	Usable []int
	// Given fixes the gauges, by string, as indexes into Stock; nil leaves
	// them free.
	Given []int
	// Ordering keeps the linear density from falling from string to string towards
	// the bass, and plain strings on the treble side of wound ones.
	Ordering bool

	// Neck is the wanted neck; its pair of lengths is ignored.
	Neck fan.Spec
	// BassMM and TrebleMM span the grid of pairs, each rising.
	BassMM, TrebleMM []float64

	// Tails by string; TailsAssumed says that nobody gave them.
	Tails        []tension.Tails
	TailsAssumed bool
	// ActionM by string: height over fret 12, for the compensation;
	// ActionAssumed says that nobody gave them.
	ActionM       []float64
	ActionAssumed bool

	Feel      Feel
	Reference *Reference
	Limits    Limits

	// ApartMM is the least difference in bass, treble or difference between
	// two listed pairs; 0 takes DefaultApartMM.
	ApartMM float64
	// Listed is the number of best pairs wanted; 0 takes DefaultListed.
	Listed int
}

// DefaultApartMM keeps listed pairs distinct (judgement: a builder does not
// decide between scales that differ by less).
const DefaultApartMM = 5.0

// DefaultListed is the number of best pairs listed unless told.
const DefaultListed = 10

// Case is one tuning that the instrument must serve.
type Case struct {
	Name string
	// FreqsHz are the pitches of the open strings, capo aside.
	FreqsHz []float64
	// CapoFret is the fret where a capo lies; 0 for none. Bend frets still
	// count from the nut.
	CapoFret int
	// Weight is the case's share in a mean; only its proportion to the others
	// counts. It must be above 0.
	Weight float64
}

// Combining says how the terms of several tunings make one.
type Combining int

const (
	// Mean takes the weighted mean of the squared misfits of the tunings.
	Mean Combining = iota
	// Worst takes, string by string, the squared misfit of the tuning that
	// suits the string least. So the strings stay independent and the choice
	// stays exact.
	Worst
)

// Reference is the instrument whose feel is wanted.
type Reference struct {
	Neck    fan.Spec
	FreqsHz []float64
	// Gauges by string, indexes into the request's Stock.
	Gauges       []int
	Tails        []tension.Tails
	TailsAssumed bool
}

// Source says where a target comes from.
type Source int

const (
	// Absent leaves the term out of the score.
	Absent Source = iota
	// LikeReference takes what the same string of the reference does.
	LikeReference
	// Stated takes the given values.
	Stated
	// OwnMean takes the candidate's own mean, so that only evenness counts.
	// It is the mean of the logarithms, the centre that the score's squares
	// are smallest about. Gauges must be given.
	OwnMean
)

// Target is a wanted quantity. Values is used with Stated only: one value for
// all, or one by string; newtons, or cents for the inharmonicity.
type Target struct {
	Source Source
	Values []float64
}

// Mapping says which string of the reference a string is like when their
// numbers differ.
type Mapping int

const (
	// FromTreble makes string i like string i, and strings beyond the
	// reference's last like its last.
	FromTreble Mapping = iota
	// Across goes by position between the outer strings; the logarithm of the
	// value runs linearly between the reference's strings.
	Across
)

// Direction is the way a string is pushed in a bend.
type Direction int

const (
	// Usual bends strings of the treble half, and a middle one, towards the
	// bass side, and the others towards the treble side.
	Usual Direction = iota
	// TowardsBass bends to the bass side.
	TowardsBass
	// TowardsTreble bends to the treble side.
	TowardsTreble
)

// Feel is what the player wants to feel.
type Feel struct {
	Tension, BendingForce, Overtone Target
	MoreStrings                     Mapping

	// BendStrings are string numbers; nil asks for the default of
	// defaultBendStrings, an empty slice means none.
	BendStrings []int
	// BendCents is the interval of the bend, above 0.
	BendCents float64
	// BendFrets are the frets where it is bent, each from 1 to the last.
	BendFrets []float64
	// Towards by string; nil means Usual for all.
	Towards []Direction

	Weights Weights
}

// Weights are the factors a, b and c of the score.
type Weights struct{ Tension, BendingForce, Overtone float64 }

// DefaultWeights are the factors used unless told (judgement).
func DefaultWeights() Weights { return Weights{Tension: 1, BendingForce: 1, Overtone: 0.1} }

// Limits are the bounds that a candidate must keep. A zero leaves a limit off.
type Limits struct {
	// On a pair.
	DifferenceMM                 float64     // greatest |bass - treble|
	FretSlantRad, SaddleSlantRad float64     // greatest |slant|; FretSlantRad holds for the nut too
	NutToFret1MM                 float64     // longest bass step from nut to fret 1
	InharmonicityCents           float64     // of the lowest string
	Blanks                       []fan.Blank // one of them must hold the board; nil leaves the limit off

	// On a gauge.
	BreakingOpen, BreakingBent float64 // shares of the minimum strength, e.g. 0.75
	LeastTensionN              float64
	MostTensionN               float64
	MostBendingForceN          float64
	SaddleTravelM              float64
}

// OnGauges gives the limits without those on a pair's geometry.
func (l Limits) OnGauges() Limits {
	l.DifferenceMM, l.FretSlantRad, l.SaddleSlantRad, l.NutToFret1MM, l.Blanks = 0, 0, 0, 0, nil
	return l
}

// DefaultBreakingOpen and DefaultBreakingBent drop a gauge unless told
// (judgement; a semitone of overshoot adds 12 % of tension, a whole-tone bend
// about 26 %).
const (
	DefaultBreakingOpen = 0.75
	DefaultBreakingBent = 0.90
)

// MostBreakingOpen and MostBreakingBent bound what the limits may be set to.
const (
	MostBreakingOpen = 0.85
	MostBreakingBent = 0.95
)

// CautionShare is the open breaking share from which the elastic limit of
// music wire may be passed (Shigley, Mechanical Engineering Design, Table
// 10-5: elastic limit 65 to 75 % of tensile strength, in tension), and
// StrongCautionShare the share beyond which it surely is.
const (
	CautionShare       = 0.65
	StrongCautionShare = 0.75
)
