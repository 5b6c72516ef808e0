package fan

// Cut is one piece of fret wire.
type Cut struct {
	Fret     int
	LengthMM float64
}

// Wire is the fret wire of a board.
type Wire struct {
	Cuts    []Cut   // fret 1 first
	SumMM   float64 // of the cuts
	SpareMM float64 // on top, for slips
	TotalMM float64 // to buy
}

// Wire gives the cut list with overhangMM of wire standing out at both ends of
// every slot, and spare as a share of the sum (0.1 is a tenth). zeroFret adds a
// fret on the nut line. The rise of a radiused crown makes a wire longer by
// less than 0.1 mm and is left to the overhang. Negative or not finite numbers
// are a fault.
func (l *Layout) Wire(overhangMM, spare float64, zeroFret bool) (Wire, error) { return Wire{}, nil }

// Dot is a position dot. Side dots lie on the bass edge, face dots on the
// board.
type Dot struct {
	Fret int
	At   Point
}

// FaceDots gives the face dots: 3, 5, 7, 9 and a pair at 12, and so on in every
// octave (common practice, no source), on the centreline midway between two
// fret lines; a pair stands a quarter of the outer strings' distance to either
// side.
func (l *Layout) FaceDots() []Dot { return nil }

// SideDots gives the dots of the same frets on the bass edge, midway between
// the two slots' ends; a pair is two dots a third and two thirds of the way.
func (l *Layout) SideDots() []Dot { return nil }

// Fence is how a straight fence is set for one slot: a square mitre box serves
// the neutral fret only.
type Fence struct {
	Fret int
	// BassAlongEdgeMM and TrebleAlongEdgeMM are the slot's end points along
	// the board's edges, from where the nut line meets that edge.
	BassAlongEdgeMM, TrebleAlongEdgeMM float64
	// FenceBassMM and FenceTrebleMM are where the fence's working face meets
	// the edges, measured the same way: half a kerf nearer the nut.
	FenceBassMM, FenceTrebleMM float64
	FenceBass, FenceTreble     Point // the same as points
	SlantRad                   float64
}

// Fences gives the fence of every fret from 1, for a saw that cuts kerfMM wide
// and runs on the bridge side of the fence. A kerf below 0 or above 3 mm is a
// fault.
func (l *Layout) Fences(kerfMM float64) ([]Fence, error) { return nil, nil }
