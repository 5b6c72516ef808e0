package fan

// Reason says why a scale pair makes no instrument on a neck. The zero value
// is Fits.
type Reason int

const (
	Fits           Reason = iota // the pair makes an instrument
	LengthAbsurd                 // a length outside 200 to 2000 mm
	ReverseUnasked               // the bass is shorter than the treble and that was not asked for
	StringsCross                 // the outer strings meet between nut and saddle
	StringsTouch                 // equal gaps: the strings are thicker than the span
	TooSteep                     // the nut or saddle line slants more than 60 degrees
	FretsCross                   // two fret lines meet on the board
	HeelAtSaddle                 // the board's heel end reaches the saddle line
	NotSettled                   // no taper was found that fits lengths and spans
)

// String says the reason in the builder's words.
func (r Reason) String() string { return "" }
