package tension

import (
	"math"

	"scalepair/data/trace"
	"scalepair/data/unit"
)

// Tails are the lengths of string that stretch but do not sound: beyond the nut
// to the post, and behind the saddle to the ball. 0 is a real value (a locking
// nut).
type Tails struct{ Nut, Saddle unit.Length }

// Whole is both together.
func (t Tails) Whole() unit.Length { return t.Nut + t.Saddle }

// BendAt says where a string is bent and how far.
type BendAt struct {
	Length   unit.Length    // scale length of the string, nut to saddle, above 0
	Pitch    unit.Frequency // of the open string, above 0
	Fret     float64        // 1 or above; may lie between two
	TanSlant float64        // tangent of the fret's slant, positive where the bend carries the contact towards the saddle
	Rise     unit.Cents     // wanted over the pitch at the fret, 0 or above
	Tails    Tails
	Reach    unit.Length // from the string to the far edge of the board, 0 or above
}

// Bend is what the finger meets.
type Bend struct {
	Force    unit.Force  `json:"bending_force_n"`  // sideways force that holds the bend
	Distance unit.Length `json:"bend_distance_mm"` // sideways way from rest
	Tension  unit.Force  `json:"tension_n"`        // of the bent string
}

// BendString bends a string at a fret until it has risen.
//
//	T(y) = EA (R(y)/R0 - 1), w(y) = w R0/R(y), f(y) = sqrt(T(y)/w(y))/(2 hypot(b, y))
//	bending force = T(y) dR/dy
//
// R: the whole wire from post to ball (see [Contact]); R0: its natural length. y is
// solved so that f(y) stands the wanted cents above f(0). Nut and saddle let the
// wire slide freely; the finger pushes straight across the neck, and the crown lets
// the string slide along it. Ours: it follows from Hooke's law (OpenStax,
// University Physics 1, section 12.3), the string law (16.6), and the bending force
// as the slope of the stored work by y.
//
// It is [NewContact] and [Contact.Bend] one after the other, to the last bit. The
// error is [ErrNoStiffness], [ErrStretch] or a [*NotReachableError]: past the edge
// of the board, or past the strength of the core where that is known.
func BendString(tr *trace.Trace, w Wire, at BendAt) (Bend, error) {
	if w.EA == 0 {
		return Bend{}, ErrNoStiffness
	}
	contact := NewContact(at)
	bend, ok := contact.Bend(&w)
	if !ok {
		return Bend{}, contact.whyNot(&w, at)
	}
	if share := w.Breaking(bend.Tension); share > 1 {
		return Bend{}, &NotReachableError{Wanted: at.Rise, Breaks: true, Breaking: share}
	}
	if tr != nil {
		recordBend(tr, w, at, bend)
	}
	return bend, nil
}

// whyNot says whether a wire is absurd or meets the edge.
func (c Contact) whyNot(w *Wire, at BendAt) error {
	strain := c.Strain(w)
	if !(strain <= mostStrain) {
		return ErrStretch
	}
	return &NotReachableError{Wanted: at.Rise, Edge: unit.Length(c.end), EdgeRise: unit.Cents(c.Rise(strain, c.end))}
}

// recordBend follows a bend that was found by trial, from the open string
// (whose steps stand above) to the rise and the bending force. Every step can be
// followed with a pocket calculator; that both ways agree is held by a test.
func recordBend(tr *trace.Trace, w Wire, at BendAt, bend Bend) {
	tr.Carry(bendDigits)
	defer tr.Carry(0)
	l, tails, ea, tan := at.Length.M(), at.Tails.Whole().M(), w.EA.N(), at.TanSlant
	t := Open(nil, w, at.Length, at.Pitch).N()
	e := t / ea
	tr.Given("n, fret", at.Fret, "", fromAsked)
	x := tr.Step("x, nut to fret", "L (1 - 2^(-n/12))", l*-math.Expm1(-at.Fret/12*math.Ln2), "m", "equal temperament")
	s := tr.Step("s, fret to saddle", "L - x", l-x, "m", fromAbove)
	tr.Given("t, tangent of the fret's slant, + where the bend leads towards the saddle", tan, "", fromAsked)
	tr.Given("tails, string beyond nut and saddle", tails, "m", fromAsked)
	rest := tr.Step("R, whole string at rest", "L + tails", l+tails, "m", fromAbove)
	natural := tr.Step("R0, the same, slack", "R/(1 + e)", rest/(1+e), "m", hookesLaw)
	f0 := tr.Step("f0, pitch at the fret", "sqrt(T (1 + e)/w)/(2 s)", math.Sqrt(t*(1+e)/w.LinearDensity.KgPerM())/(2*s), "Hz", stringLaw)
	y := tr.Step("y, bend distance", "by trial, until the rise below is the one asked", bend.Distance.M(), "m", fromAbove)
	a := tr.Step("a, nut to contact, along", "x + y t", x+y*tan, "m", "geometry")
	b := tr.Step("b, contact to saddle, along", "s - y t", s-y*tan, "m", "geometry")
	front := tr.Step("F, run in front", "sqrt(a^2 + y^2)", math.Hypot(a, y), "m", "geometry")
	behind := tr.Step("H, run that sounds", "sqrt(b^2 + y^2)", math.Hypot(b, y), "m", "geometry")
	bent := tr.Step("Ry, whole string, bent", "F + H + tails", front+behind+tails, "m", "geometry")
	ty := tr.Step("Ty, tension, bent", "EA (Ry/R0 - 1)", ea*(bent/natural-1), "N", hookesLaw)
	wy := tr.Step("wy, linear density, bent", "w R0/Ry", w.LinearDensity.KgPerM()*natural/bent, "kg/m", "the mass stays")
	fy := tr.Step("fy, pitch, bent", "sqrt(Ty/wy)/(2 H)", math.Sqrt(ty/wy)/(2*behind), "Hz", stringLaw)
	tr.Step("rise, rise of the bend", "1200 log2(fy/f0)", 1200*math.Log2(fy/f0), "cents", "definition")
	w.BreakingTraced(tr, "bent", "Ty", bend.Tension)
	tr.Step("P, bending force of the finger", "Ty ((y + t a)/F + (y - t b)/H)", ty*((y+tan*a)/front+(y-tan*b)/behind), "N", "the slope of the stored work")
}
