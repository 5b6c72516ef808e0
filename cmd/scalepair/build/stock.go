package build

import "scalepair/data/unit"

// Measuring says how good balance, ruler and calipers are. Steps are what the
// instrument rounds to; repeatability is a standard deviation; accuracies are
// the maker's or a check weight's plus or minus, common to all readings.
// 0 means not given, except where a default is named.
type Measuring struct {
	// BalanceStep is 0.01 g and RulerStep 0.5 mm unless given; a reading's own
	// step in the readings file comes first.
	BalanceStep, BalanceRepeatability, BalanceAccuracy unit.Mass
	RulerStep, RulerAccuracy                           unit.Length
	// CaliperStep is 0.01 mm unless given.
	CaliperStep, CaliperAccuracy unit.Length
	// HungStep and HungAccuracy are of the scales for a hung weight.
	HungStep, HungAccuracy unit.Mass
	// GravityMS2 is the local gravity for hung weights: 9.76 to 9.84; 0 when
	// not given. GravityAccuracyMS2 is its plus or minus.
	GravityMS2, GravityAccuracyMS2 float64
	// PitchUncertaintyCents is the standard uncertainty of a pitch that was
	// heard or read off a tuner: 2 unless given.
	PitchUncertaintyCents float64
	// OutsideFit allows estimates outside the diameters that were weighed.
	OutsideFit bool
}

// Marking is how a marked board is measured and what it is held to. 0 means
// not given.
type Marking struct {
	// Of Tolerance and ToleranceCents one at most is given.
	Tolerance      unit.Length
	ToleranceCents float64
	// NutOffsetTolerance is for the treble nut beside the bass nut.
	NutOffsetTolerance unit.Length
	// Steps are what ruler and calipers can tell apart on drawn marks; zeros
	// how far their zero may be off, plus or minus.
	RulerStep, RulerZero, CaliperStep, CaliperZero unit.Length
}

// Blank is a fingerboard blank on offer.
type Blank struct {
	// Name is "blank 1" and so on unless given.
	Name          string
	Length, Width unit.Length
	// Thickness is 0 when not given.
	Thickness unit.Length
}

// Shape is the core's cross section.
type Shape int

// The shapes of a core.
const (
	// ShapeUnknown: taken as round, and marked so.
	ShapeUnknown Shape = iota
	Round
	Hex
)

// Construction is a gauge known by its core and wraps only.
type Construction struct {
	// Gauge is its stock label, Family the user's name for the construction:
	// "plain" unless given where there are no wraps.
	Gauge, Family string
	// Measured: core and wires were measured with calipers; else they are the
	// nominal sizes.
	Measured bool
	// Core is the core's diameter, across flats for a hex core.
	Core  unit.Length
	Shape Shape
	// Material of the core; "music wire" unless given.
	Material string
	// Wraps from the inside out; none for a plain string.
	Wraps []Wrap
	// Winding is the wound length; 0 when not given.
	Winding unit.Length
}

// Wrap is one layer of a wound string.
type Wrap struct {
	// Wire is the wrap wire's diameter, or its thickness where flat.
	Wire     unit.Length
	Material string
	// Flat: flat or ground wire, which fills its layer.
	Flat bool
	// Packing is the filled share of the layer's ring, 0.3 to 1; 0 when not
	// given. Flat wire must state it.
	Packing float64
}

// Material is one of the user's own.
type Material struct {
	Name string
	// DensityGCM3 in g/cm3, 0.5 to 23; DensityAccuracyGCM3 its plus or minus.
	DensityGCM3, DensityAccuracyGCM3 float64
	// YoungsGPa and StrengthMPa are 0 when not given.
	YoungsGPa, StrengthMPa float64
}

// Confidence sets the draws behind the advice's confidence.
type Confidence struct {
	// Draws: 0 (none) to 1000000, 2000 unless given.
	Draws int
	// Seed of the draws: 1 unless given.
	Seed uint64
}
