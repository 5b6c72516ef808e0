package report

import (
	"slices"

	"scalepair/data/unit"
	"scalepair/fan"
)

// FanLines is where everything of a fan lies, for a drawing that is made elsewhere.
// A point is x along the centreline from the nut line's crossing towards the bridge,
// and y to the bass side.
type FanLines struct {
	Board     []point    `json:"board_mm"`
	Nut       [2]point   `json:"nut_mm"`
	Saddle    [2]point   `json:"saddle_mm"`
	Frets     []fretAt   `json:"frets"`
	Strings   []stringAt `json:"strings"` // low string first
	Dots      []dotAt    `json:"dots"`
	Reference [][2]point `json:"reference_marks_mm"` // on the outer string lines of the reference instrument
}

type point [2]unit.Length

type fretAt struct {
	Fret  int        `json:"fret"`
	Slot  [2]point   `json:"slot_mm"`
	Marks [2]point   `json:"marks_mm"` // on the outer string lines, bass first
	Slant unit.Angle `json:"slant_deg"`
}

type stringAt struct {
	String int   `json:"string"`
	Nut    point `json:"nut_mm"`
	Saddle point `json:"saddle_mm"`
}

type dotAt struct {
	Fret     int         `json:"fret"`
	At       point       `json:"at_mm"`
	Diameter unit.Length `json:"diameter_mm"`
}

// NewFanLines works up the lines of a fan.
func NewFanLines(in *Input, l *fan.Layout) (*FanLines, error) {
	f := &FanLines{Nut: ends(l.Nut), Saddle: ends(l.Saddle), Dots: []dotAt{}, Reference: [][2]point{}}
	for _, corner := range l.Board().Corners {
		f.Board = append(f.Board, at(corner))
	}
	for _, fret := range l.Frets[1:] {
		f.Frets = append(f.Frets, fretAt{fret.Number, [2]point{at(fret.Slot.Bass), at(fret.Slot.Treble)}, ends(fret.Line), fret.Line.Slant})
	}
	for _, s := range slices.Backward(l.Strings) {
		f.Strings = append(f.Strings, stringAt{s.Number, at(s.Nut), at(s.Saddle)})
	}
	dots := in.Run.Build.Dots
	for _, dot := range l.FaceDots(dots) {
		f.Dots = append(f.Dots, dotAt{dot.Fret, at(dot.At), dots.FaceDiameter})
	}
	ref := in.Plan.Request().Reference
	if ref == nil {
		return f, nil
	}
	of, err := fan.New(ref.Neck)
	if err != nil {
		return nil, err
	}
	for _, fret := range of.Frets[1:] {
		f.Reference = append(f.Reference, ends(fret.Line))
	}
	return f, nil
}

func at(p fan.Point) point { return point{p.X, p.Y} }

func ends(a fan.Across) [2]point { return [2]point{at(a.Bass), at(a.Treble)} }
