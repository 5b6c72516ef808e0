package tension

// Tails are the lengths of string that stretch but do not sound, in m:
// beyond the nut to the post, and behind the saddle to the ball. 0 is a real
// value (a locking nut).
type Tails struct{ NutM, SaddleM float64 }

// BendAt says where a string is bent and how far.
type BendAt struct {
	LengthM  float64 // own length of the string, nut to saddle, m, above 0
	FreqHz   float64 // pitch of the open string, Hz, above 0
	Fret     float64 // above 0
	TanSlant float64 // tangent of the fret's slant, positive where the bend carries the contact towards the saddle
	Cents    float64 // wanted rise over the pitch at the fret, 0 or above
	Tails    Tails
	ReachM   float64 // from the string to the far edge of the board, m, 0 or above
}

// Bend is what the finger meets.
type Bend struct {
	PushN    float64 // sideways force that holds the bend, N
	TravelM  float64 // sideways way from rest, m
	TensionN float64 // tension of the bent string, N
}

// Push bends a string to a rise. The error is an [ErrFret],
// [ErrNoStiffness], [ErrInput] or [*NotReachableError] by errors.Is or
// errors.As.
func Push(w Wire, at BendAt) (Bend, error) {
	return Bend{}, ErrNoStiffness
}
