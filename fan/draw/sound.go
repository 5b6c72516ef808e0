package draw

import (
	"fmt"
	"math"

	"scalepair/data/unit"
)

// The bounds of what is drawn, in mm (judgement): no board reaches 10 m from its
// origin, and no paper is smaller than the least page that PDF readers take,
// 3 points (ISO 32000, annex C, from memory).
const (
	mostMM      = 10_000
	smallestMM  = 1.06
	mostRad     = 1e6 // beyond, a double's steps begin to show in a printed angle
	leastSizeMM = 1e-3
)

// Sound refuses a drawing that could not be written truly: with a place, size or
// angle that is no finite number or lies beyond 10 m, a circle without a radius
// or words without a height. Every writer asks for it first, so that a fault
// upstream leaves no file rather than a wrong one.
func (d Drawing) Sound() error {
	for _, l := range d.Layers {
		for _, e := range l.Elements {
			if what := unfit(e); what != "" {
				return fmt.Errorf("layer %s cannot be drawn: %s", l.Name, what)
			}
		}
	}
	for _, j := range d.Joins {
		if what := unfit(j); what != "" {
			return fmt.Errorf("a join cannot be drawn: %s", what)
		}
	}
	return nil
}

// Sound refuses a sheet of no possible size and one whose drawings are not
// sound.
func (s Sheet) Sound() error {
	for _, mm := range []float64{s.WidthMM, s.HeightMM} {
		if !(mm >= smallestMM && mm <= mostMM) {
			return fmt.Errorf("the sheet cannot be drawn: a side of %s", size(mm))
		}
	}
	for _, p := range s.Parts {
		if what := unfitPlace(p.Window...); what != "" {
			return fmt.Errorf("a window cannot be drawn: %s", what)
		}
		if err := p.Drawing.Sound(); err != nil {
			return err
		}
	}
	return nil
}

// unfit says what is wrong with an element, "" for a sound one.
func unfit(e Element) string {
	switch e := e.(type) {
	case Line:
		return unfitPlace(e.A, e.B)
	case Polyline:
		return unfitPlace(e.Points...)
	case Circle:
		if !(e.RadiusMM >= leastSizeMM && e.RadiusMM <= mostMM) {
			return "a circle with a radius of " + size(e.RadiusMM)
		}
		return unfitPlace(e.Centre)
	case Text:
		switch {
		case !(e.HeightMM >= leastSizeMM && e.HeightMM <= mostMM):
			return "words with a height of " + size(e.HeightMM)
		case !(math.Abs(e.AngleRad) <= mostRad):
			return "words turned beyond all measure"
		}
		return unfitPlace(e.At)
	}
	return ""
}

func unfitPlace(points ...Point) string {
	for _, p := range points {
		for _, x := range []float64{p.X, p.Y} {
			if !(math.Abs(x) <= mostMM) {
				return "a place at " + size(x)
			}
		}
	}
	return ""
}

// size prints a number that may be none.
func size(mm float64) string {
	if math.IsNaN(mm) || math.IsInf(mm, 0) {
		return "no finite number"
	}
	return unit.Length(mm / 1000).String()
}
