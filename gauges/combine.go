package gauges

import (
	"errors"
	"io"
	"math/rand/v2"
)

var errNotYet = errors.New("not built yet")

// PitchReader turns a pitch as written into hertz, for notes such as
// "A2-14c". Plain hertz ("110 Hz", "110") are read without it.
type PitchReader func(text string) (hz float64, err error)

// ReadReadings reads a readings file, one reading a row. All faults are
// reported at once, each with its place. note reads pitches that are not in
// hertz; nil refuses them.
func ReadReadings(in io.Reader, file string, note PitchReader) ([]Reading, error) {
	return nil, errNotYet
}

// Combine makes the stock out of readings and constructions: unit weights with
// uncertainties, the fits, the suspects and the estimates.
func Combine(readings []Reading, built []Construction, tools Instruments, o Options) (Stock, error) {
	return Stock{}, errNotYet
}

// Drawer draws stocks at random; it is made once for many draws.
type Drawer struct{}

// Drawer prepares the stock for drawing.
func (s Stock) Drawer() *Drawer { return &Drawer{} }

// Draw fills dst (as long as Stock.Gauges, in its order) with one draw. Equal
// states of rng give equal draws. It allocates nothing.
func (d *Drawer) Draw(rng *rand.Rand, dst []Drawn) {}

// Draw is one draw with a Drawer made for it alone.
func (s Stock) Draw(rng *rand.Rand, dst []Drawn) { s.Drawer().Draw(rng, dst) }

// ShortestPiece gives the total length (length times pieces, m) of a gauge of
// unit weight w (kg/m) whose single weighing has the relative standard
// uncertainty rel (0.01 is 1 %).
func ShortestPiece(w, rel float64, tools Instruments) (float64, error) { return 0, errNotYet }

// Suggestion is one further reading and what it would be worth.
type Suggestion struct {
	Gauge   string
	LengthM float64 // shortest piece (in whole centimetres) that gives nine tenths of the gain of the longest
	Before  float64 // standard uncertainty of the result now
	After   float64 // and with this reading
}

// WhatToWeigh ranks the gauges by what one further weighing of each would do
// to the uncertainty of a result. influence[i] is the change of the result per
// relative change of the unit weight of Gauges[i] (any unit, with its sign).
// longestM is the longest piece to be had. Best first.
func (s Stock) WhatToWeigh(tools Instruments, influence []float64, longestM float64) ([]Suggestion, error) {
	return nil, errNotYet
}
