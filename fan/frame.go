package fan

import "math"

// K is the fraction of a string's length from the nut to fret n:
//
//	k(n) = 1 - 2^(-n/12)
//
// n is real, 0 or more; k(0) = 0 and k(12) = 1/2 exactly. Equal temperament:
// frequency goes as 1/length and twelve equal steps make an octave (the length
// law from OpenStax University Physics 1, section 16.6).
func K(n float64) float64 { return 1 - math.Exp2(-n/12) }

// Base holds everything of a spec that does not depend on the scale pair,
// checked once. It is safe for concurrent use.
type Base struct {
	spec Spec
}

// NewBase checks a spec without its scale pair (BassMM and TrebleMM are not
// read). Every fault comes at once as a fault.List, each place naming the
// build file's key ("neck.nut_span").
func NewBase(spec Spec) (*Base, error) {
	return &Base{spec: spec}, nil
}

// Frame settles one scale pair, both lengths in mm. It allocates nothing. The
// reason is Fits when the pair makes an instrument; otherwise the Frame is the
// zero value.
func (b *Base) Frame(bassMM, trebleMM float64) (Frame, Reason) {
	return Frame{}, Fits
}

// Frame is the geometry of one scale pair in the few numbers everything else
// follows from. It is a value; copying it is cheap, and no method allocates.
type Frame struct {
	base         *Base
	bass, treble float64
}

// NewFrame checks a whole spec and settles its scale pair. The error is a
// fault.List of everything that is wrong.
func NewFrame(spec Spec) (Frame, error) { return Frame{}, nil }

// Strings is the number of strings.
func (f Frame) Strings() int { return 0 }

// DifferenceMM is bass length minus treble length.
func (f Frame) DifferenceMM() float64 { return 0 }

// LengthMM is the own length of string i (0 = string 1), nut to saddle along
// its line. The outer strings have exactly the lengths asked for.
func (f Frame) LengthMM(i int) float64 { return 0 }

// TanSlant is the tangent of a fret's slant from square, positive where the
// bass end is nearer the bridge. The fret is real; 0 is the nut line.
func (f Frame) TanSlant(fret float64) float64 { return 0 }

// NutTan is the tangent of the nut line's slant.
func (f Frame) NutTan() float64 { return 0 }

// SaddleTan is the tangent of the saddle line's slant.
func (f Frame) SaddleTan() float64 { return 0 }

// FirstStepBassMM is the step from the nut to fret 1 along the bass line.
func (f Frame) FirstStepBassMM() float64 { return 0 }

// ReachMM is how far sideways string i (0 = string 1) can go on a fret before
// it comes to the board's edge on the bass or the treble side: the distance,
// square to the centreline, between the string's place on the crown and the
// crown's end at that edge. Never negative.
func (f Frame) ReachMM(i int, fret float64, towardsBass bool) float64 { return 0 }

// BlankMM gives the length along the centreline and the width of the smallest
// blank, saw allowance included.
func (f Frame) BlankMM() (length, width float64) { return 0, 0 }
