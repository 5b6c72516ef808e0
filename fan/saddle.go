package fan

// SetBack is how far a saddle stands behind its theoretical line to play in
// tune, from the least to the most expected, along the string in mm.
type SetBack struct{ LoMM, HiMM float64 }

// SaddlePoint is where one string leaves its saddle, set-back included. "Along"
// is along the centreline towards the bridge, "out" square to it, positive on
// the bass side.
type SaddlePoint struct {
	String      int
	SetBack     SetBack
	FromNutMM   float64 // along the string: own length and the middle of the set-back
	Theoretical Point   // without set-back
	At          Point   // at the middle of the set-back
	Least, Most Point   // at the two ends of the set-back
	Along12MM   float64 // At from where fret 12 crosses the centreline; 0 on a board of fewer frets
	AlongLastMM float64 // At from where the last fret crosses it
	AlongHeelMM float64 // At from where the heel end crosses it
	OutMM       float64 // At from the centreline
}

// Saddles is the bridge's layout.
type Saddles struct {
	Points []SaddlePoint // string 1 first
	// ForwardMM and RearMM bound what the saddles must reach, along their
	// strings from the theoretical line: 1 mm in front of it, and 1 mm behind
	// the greatest set-back. NeedMM is their distance, to be held against the
	// travel of the saddles.
	ForwardMM, RearMM, NeedMM float64
}

// Saddles gives the saddle points for one set-back a string, string 1 first.
// A wrong number of set-backs, or one that is not finite, beyond ±50 mm, or
// whose ends are exchanged is a fault.
func (l *Layout) Saddles(setBacks []SetBack) (Saddles, error) { return Saddles{}, nil }
