package draw

import (
	"cmp"
	"errors"
	"fmt"
)

// farthest is how far from its origin anything is drawn, in mm: far more than
// any board, and near enough that a double holds every digit that a writer
// prints (judgement).
const farthest = 40_000

// Sound refuses a drawing that could not be written truly: one with an element
// whose place, size or angle is no finite number or that reaches beyond 40 m, or
// a circle or words without a size. Every writer asks for it first, so that a
// fault upstream leaves no file rather than a wrong one.
func (d Drawing) Sound() error {
	for _, l := range d.Layers {
		for _, e := range l.Elements {
			if !sound(e) {
				return fmt.Errorf("layer %s cannot be drawn: an element without a place or size, or one too far away", l.Name)
			}
		}
	}
	for _, j := range d.Joins {
		if !near(j.Bounds()) {
			return fmt.Errorf("a join cannot be drawn: it has no place, or one too far away")
		}
	}
	return nil
}

// Sound refuses a sheet of no possible size and one whose drawings are not
// sound. The least side is that of the least page that PDF readers take, 3
// points (ISO 32000, annex C, from memory).
func (s Sheet) Sound() error {
	const least = 1.06
	if !(s.Width >= least && s.Width <= farthest && s.Height >= least && s.Height <= farthest) {
		return fmt.Errorf("the sheet cannot be drawn: its size is %v x %v mm", s.Width, s.Height)
	}
	for _, p := range s.Parts {
		if err := p.Drawing.Sound(); err != nil || !near(NoRect().Include(p.Window...)) && len(p.Window) > 0 {
			return cmp.Or(err, errors.New("a window cannot be drawn: it has no place, or one too far away"))
		}
	}
	return nil
}

func sound(e Element) bool {
	ring, isRing := e.(Circle)
	words, isText := e.(Text)
	return near(e.Bounds()) && (!isRing || ring.Radius > 0) && (!isText || words.Height > 0)
}

func near(r Rect) bool {
	return r.Min.X >= -farthest && r.Min.Y >= -farthest && r.Max.X <= farthest && r.Max.Y <= farthest
}
