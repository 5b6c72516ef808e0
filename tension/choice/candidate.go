package choice

import (
	"math"

	"scalepair/fan"
)

// Candidate is one scale pair with a set of gauges: what it scores and what
// it costs in geometry.
type Candidate struct {
	BassMM, TrebleMM float64
	// Gauges by string, indexes into the stock.
	Gauges []int

	Score float64
	// Misfits are 100 times the root mean square of ln(value/target), near
	// enough a percentage; 0 for a term that is left out.
	TensionMisfit, BendingForceMisfit, OvertoneMisfit float64

	NutSlantRad, LastSlantRad, SaddleSlantRad float64
	NutToFret1MM                              float64
	BlankLengthMM, BlankWidthMM               float64
}

// DifferenceMM is bass length minus treble length.
func (c Candidate) DifferenceMM() float64 { return c.BassMM - c.TrebleMM }

// setScore fills a candidate's score and misfits.
func (c *Candidate) setScore(s squares, w Weights) {
	c.Score = s.score(w)
	c.TensionMisfit = 100 * math.Sqrt(s.tension)
	c.BendingForceMisfit = 100 * math.Sqrt(s.bendingForce)
	c.OvertoneMisfit = 100 * math.Sqrt(s.overtone)
}

// geometryOf gives what a pair costs in geometry.
func geometryOf(f *fan.Frame, frets int) Candidate {
	c := Candidate{
		NutSlantRad:    math.Atan(f.NutTan()),
		LastSlantRad:   math.Atan(f.TanSlant(float64(frets))),
		SaddleSlantRad: math.Atan(f.SaddleTan()),
		NutToFret1MM:   f.NutToFret1().MM(),
	}
	blank := f.LeastBlank()
	c.BlankLengthMM, c.BlankWidthMM = blank.Length.MM(), blank.Width.MM()
	return c
}
