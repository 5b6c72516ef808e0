package tension

// Tails are the lengths of string that stretch but do not sound, in m:
// beyond the nut to the post, and behind the saddle to the ball. 0 is a real
// value (a locking nut).
type Tails struct{ NutM, SaddleM float64 }

// BendAt says where a string is bent and how far.
type BendAt struct {
	LengthM  float64 // own length of the string, nut to saddle, m, above 0
	FreqHz   float64 // pitch of the open string, Hz, above 0
	Fret     float64 // 1 or above; may lie between two
	TanSlant float64 // tangent of the fret's slant, positive where the bend carries the contact towards the saddle
	Cents    float64 // wanted rise over the pitch at the fret, 0 or above
	Tails    Tails
	ReachM   float64 // from the string to the far edge of the board, m, 0 or above
}

// Bend is what the finger meets.
type Bend struct {
	BendingForceN float64 // sideways force that holds the bend, N
	BendDistanceM float64 // sideways way from rest, m
	TensionN      float64 // tension of the bent string, N
}

// Bending force bends a string at a fret until it has risen, and gives the sideways
// force of the finger, its way and the tension then.
//
//	T(y) = EA (R(y)/R0 - 1), w(y) = w R0/R(y), f(y) = sqrt(T(y)/w(y))/(2 hypot(b, y))
//	bending force = T(y) dR/dy
//
// R: the whole wire from post to ball (see [Contact]); R0: its natural
// length. y is solved so that f(y) stands the wanted cents above f(0). Nut and
// saddle let the wire slide freely; the finger pushes straight across the
// neck, and the crown lets the string slide along it. Ours: it follows from Hooke's law
// (OpenStax, University Physics 1, section 12.3), the string law (16.6), and
// the bending force as the slope of the stored work by y.
//
// A bending force is [Spot.Contact], [Contact.Shape] and [BendShape.Bend] one after the
// other, to the last bit, and allocates nothing unless it fails. The error is
// [ErrFret], [ErrNoStiffness], [ErrInput] or a [*NotReachableError]: past the
// edge of the board, or past the strength of the core where that is known.
func BendingForce(w Wire, at BendAt) (Bend, error) {
	spot, err := NewSpot(at.Fret, at.Cents)
	if err != nil {
		return Bend{}, err
	}
	if w.EA == 0 {
		return Bend{}, ErrNoStiffness
	}
	contact, err := spot.Contact(at)
	if err != nil || !(w.EA > 0 && w.EA <= mostEA) {
		return Bend{}, ErrInput
	}
	shape, ok := contact.Shape(w.StretchSpeed2())
	if !ok {
		return Bend{}, contact.whyNot(w, at)
	}
	bend := shape.Bend(w.EA)
	if share := BreakingShare(bend.TensionN, w.CoreAreaM2, w.StrengthPa); share > 1 {
		return Bend{}, &NotReachableError{WantedCents: at.Cents, Breaks: true, Share: share}
	}
	return bend, nil
}

// whyNot tells an absurd wire from one that meets the edge.
func (c Contact) whyNot(w Wire, at BendAt) error {
	strain := c.Strain(w.StretchSpeed2())
	if !(strain >= leastStrain && strain <= mostStrain) {
		return ErrInput
	}
	return &NotReachableError{WantedCents: at.Cents, EdgeM: c.end, EdgeCents: c.InharmonicityCents(strain, c.end)}
}
