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
	mostMovedMM = 4 * mostMM // where a piece of such a drawing may come to lie off its sheet, turned and corrected
	smallestMM  = 1.06
	mostRad     = 1e6 // beyond, a double's steps begin to show in a printed angle
	leastSizeMM = 1e-3
)

// Sound refuses a drawing that could not be written truly: with a place, size or
// angle that is no finite number or lies beyond 10 m, a circle without a radius
// or words without a height. Every writer asks for it first, so that a fault
// upstream leaves no file rather than a wrong one.
func (d Drawing) Sound() error {
	if err := d.within(mostMM); err != nil {
		return err
	}
	// Words may reach far from their place.
	if room := d.Bounds(); !room.Empty() {
		if what := unfitPlace(mostMM, room.Min, room.Max); what != "" {
			return fmt.Errorf("the drawing is too large: %s", what)
		}
	}
	return nil
}

// within is Sound for a drawing whose places may lie so far out.
func (d Drawing) within(most float64) error {
	for _, l := range d.Layers {
		for _, e := range l.Elements {
			if what := unfit(e, most); what != "" {
				return fmt.Errorf("layer %s cannot be drawn: %s", l.Name, what)
			}
		}
	}
	for _, j := range d.Joins {
		if what := unfit(j, most); what != "" {
			return fmt.Errorf("a join cannot be drawn: %s", what)
		}
	}
	return nil
}

// Sound refuses a sheet of no possible size and one whose drawings are not
// sound.
func (s Sheet) Sound() error {
	for _, mm := range []float64{s.WidthMM, s.HeightMM} {
		if !(mm >= smallestMM && mm <= mostMovedMM) {
			return fmt.Errorf("the sheet cannot be drawn: a side of %s", size(mm))
		}
	}
	for _, p := range s.Parts {
		if what := unfitPlace(mostMovedMM, p.Window...); what != "" {
			return fmt.Errorf("a window cannot be drawn: %s", what)
		}
		if err := p.Drawing.within(mostMovedMM); err != nil {
			return err
		}
	}
	return nil
}

// unfit says what is wrong with an element, "" for a sound one.
func unfit(e Element, most float64) string {
	switch e := e.(type) {
	case Line:
		return unfitPlace(most, e.A, e.B)
	case Polyline:
		return unfitPlace(most, e.Points...)
	case Circle:
		if !(e.RadiusMM >= leastSizeMM && e.RadiusMM <= most) {
			return "a circle with a radius of " + size(e.RadiusMM)
		}
		return unfitPlace(most, e.Centre)
	case Text:
		switch {
		case !(e.HeightMM >= leastSizeMM && e.HeightMM <= most):
			return "words with a height of " + size(e.HeightMM)
		case !(math.Abs(e.AngleRad) <= mostRad):
			return "words turned beyond all measure"
		}
		return unfitPlace(most, e.At)
	}
	return ""
}

func unfitPlace(most float64, points ...Point) string {
	for _, p := range points {
		for _, x := range []float64{p.X, p.Y} {
			if !(math.Abs(x) <= most) {
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
