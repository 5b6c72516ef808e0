package fan

// Sawing is what slot depth depends on besides the layout. Lengths in mm.
type Sawing struct {
	RadiusNutMM, RadiusLastMM float64 // crown radius where the nut line and the last fret cross the centreline; equal for a single radius; both 0 for a flat board
	TangMM                    float64 // depth of the fret wire's tang
	ClearanceMM               float64 // air under the tang, 0.4 mm by custom (judgement)
	ThicknessMM               float64 // of the board as slotted; 0: not known, nothing is said of what is left
	KerfMM                    float64 // width of the saw's cut; 0: not known
	TangWidthMM               float64 // thickness of the tang's web; 0: not known
	BarbWidthMM               float64 // over the barbs; 0: not known
}

// SlotDepth is how deep to saw one slot of a flat board that is radiused
// afterwards.
type SlotDepth struct {
	Fret                         int
	RadiusMM                     float64 // at the crossing of the centreline; 0 on a flat board
	MiddleMM                     float64 // needed in the middle: tang and clearance
	BassMM, TrebleMM             float64 // needed at the two slot ends
	SawMM                        float64 // one straight cut that serves all along: the greatest of the three
	BassDropMM, TrebleDropMM     float64 // how far the crown falls from the flat at the slot ends
	LeftUnderMM                  float64 // thickness left under a straight cut; 0 when the thickness is not known
	LeftAtBassMM, LeftAtTrebleMM float64 // board thickness left at the edges after radiusing; 0 when not known
}

// Depths gives the depth of every slot from fret 1. Faults: a radius not
// greater than half the board's width, less than 1.5 mm left under a slot, or
// less than 2 mm at an edge after radiusing (both judgement); each names the
// remedy: radius first, then saw to tang and clearance along the curve.
func (l *Layout) Depths(s Sawing) ([]SlotDepth, error) { return nil, nil }

// KerfFit says how a fret wire's tang sits in a saw cut.
type KerfFit int

const (
	KerfUnknown KerfFit = iota // a width is not known
	KerfHolds                  // the web enters, the barbs bite
	KerfWedges                 // narrower than the web: the wire wedges and bends the neck back
	KerfLoose                  // not narrower than the barbs: nothing bites
)

// String says it in the builder's words.
func (k KerfFit) String() string { return "" }

// Kerf compares the saw's cut with the tang.
func (s Sawing) Kerf() KerfFit { return KerfUnknown }
