package build

import "scalepair/data/unit"

// Tails are the lengths of string beyond nut and saddle, up to where the
// string is held.
type Tails struct {
	// Nut and Saddle by string, string 1 first; 60 mm and 25 mm unless given,
	// and 0 is a real value (a locking nut).
	Nut, Saddle []unit.Length
	// NutAssumed and SaddleAssumed say that the file does not state them.
	NutAssumed, SaddleAssumed bool
}

// Saddle says how the strings pass over the frets.
type Saddle struct {
	// HeightTreble and HeightBass are the strings' heights over fret 12, the
	// outer strings given, the others straight between: 1.6 mm and 2.0 mm
	// unless given.
	HeightTreble, HeightBass unit.Length
	// Assumed says that neither is given.
	Assumed bool
}

// Dots are the position marks.
type Dots struct {
	// Face and Side are the frets whose space carries a dot; a dot lies midway
	// between its fret and the one before. Empty for none.
	Face, Side []int
	// Double are the frets with two dots.
	Double []int
	// FaceDiameter and SideDiameter: 6 mm and 2 mm unless given.
	FaceDiameter, SideDiameter unit.Length
}

// FretWire is the wire and the saw for it. 0 means not given, except where a
// default is named.
type FretWire struct {
	// TangDepth is from the underside of the crown to the tang's foot.
	TangDepth unit.Length
	// TangWidth is the tang's thickness without its barbs, BarbWidth with
	// them; Kerf is the width of the saw's cut.
	TangWidth, BarbWidth, Kerf unit.Length
	// Clearance is left under the tang: 0.4 mm unless given.
	Clearance unit.Length
	// Overhang is how far the wire stands out at each edge before it is
	// trimmed: 3 mm unless given.
	Overhang unit.Length
	// SparePercent is bought on top: 0 to 100, 10 unless given.
	SparePercent float64
}

// Playing says where and how the neck is played, for the neutral fret.
type Playing struct {
	// FromFret and ToFret are the frets most played, 0 to the last; the whole
	// board unless given.
	FromFret, ToFret float64
	// NeckAngleDeg is how far the neck points up from level: -30 to 80.
	NeckAngleDeg float64
	// AngleGiven says that the file states it.
	AngleGiven bool
}

// Line is a further straight line across the strings, such as a pickup's.
type Line struct {
	Name string
	// Distance is along the centreline: from the saddle's theoretical line
	// towards the nut, or, with BehindLastFret, from the last fret towards the
	// bridge.
	Distance       unit.Length
	BehindLastFret bool
	// Slant says what the line runs along; SlantDeg, with SlantGiven only, is
	// positive where the bass end is nearer the bridge.
	Slant    LineSlant
	SlantDeg float64
}

// LineSlant says what a further line runs along.
type LineSlant int

// The slants of a further line.
const (
	// SlantSquare: square to the centreline.
	SlantSquare LineSlant = iota
	// SlantSaddle: along the saddle line.
	SlantSaddle
	// SlantLastFret: along the last fret.
	SlantLastFret
	// SlantGiven: as given in degrees.
	SlantGiven
)
