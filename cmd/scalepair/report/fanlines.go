package report

import (
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension/choice"
)

// FanLines is where everything of a fan lies, for a drawing that is made elsewhere.
// A point is x along the centreline from the nut line's crossing towards the bridge,
// and y to the bass side.
type FanLines struct {
	Head
	Lines
	Blank     []point     `json:"blank_mm"`      // the one on offer that fits; null without one
	LeastWood []point     `json:"least_wood_mm"` // the smallest rectangle that holds the board, saw allowance included
	Dots      []dotAt     `json:"dots"`
	SideDots  []dotAt     `json:"side_dots"`
	Saddles   []saddleAt  `json:"saddles"`
	Further   []furtherAt `json:"further_lines"`
	Reference *Lines      `json:"reference"` // the lines of the reference instrument; null without one
}

// Lines are the lines of one fan.
type Lines struct {
	Board   []point    `json:"board_mm"`
	Nut     [2]point   `json:"nut_mm"`
	Saddle  [2]point   `json:"saddle_mm"`
	Neutral [2]point   `json:"neutral_mm"`
	Frets   []fretAt   `json:"frets"`
	Strings []stringAt `json:"strings"` // low string first
}

type point [2]unit.Length

type fretAt struct {
	Fret  int        `json:"fret"`
	Slot  [2]point   `json:"slot_mm"`
	Marks [2]point   `json:"marks_mm"` // on the outer string lines, bass first
	Slant unit.Angle `json:"slant_deg"`
}

type stringAt struct {
	String int    `json:"string"`
	Note   string `json:"note,omitempty"`
	Gauge  string `json:"gauge,omitempty"`
	Nut    point  `json:"nut_mm"`
	Saddle point  `json:"saddle_mm"`
}

type dotAt struct {
	Fret     int         `json:"fret"`
	At       point       `json:"at_mm"`
	Diameter unit.Length `json:"diameter_mm"`
}

// saddleAt is where a string leaves its saddle, compensation included, and the two
// ends of the compensation.
type saddleAt struct {
	String int   `json:"string"`
	At     point `json:"at_mm"`
	Least  point `json:"least_mm"`
	Most   point `json:"most_mm"`
}

type furtherAt struct {
	Name string   `json:"name"`
	Line [2]point `json:"line_mm"`
}

// NewFanLines works up the lines of a fan; d is nil while no set is settled.
func NewFanLines(in *Input, l *fan.Layout, d *choice.Detail) (*FanLines, error) {
	f := &FanLines{Head: in.head(), Lines: linesOf(l), Dots: []dotAt{}, SideDots: []dotAt{}, Saddles: []saddleAt{}, Further: []furtherAt{}}
	least := l.LeastBlank()
	f.LeastWood = rectangle(least.MinX, least.MaxX, least.MinY, least.MaxY)
	for _, fit := range least.Fit(in.Run.Build.Blanks) {
		if fit.Fits {
			f.Blank = rectangle(-fit.NutCrossFromEnd, fit.Blank.Length-fit.NutCrossFromEnd, fit.CentreFromBassEdge-fit.Blank.Width, fit.CentreFromBassEdge)
			break
		}
	}
	dots := in.Run.Build.Dots
	for _, dot := range l.FaceDots(dots) {
		f.Dots = append(f.Dots, dotAt{dot.Fret, at(dot.At), dots.FaceDiameter})
	}
	for _, dot := range l.SideDots(dots) {
		f.SideDots = append(f.SideDots, dotAt{dot.Fret, at(dot.At), dots.SideDiameter})
	}
	further, err := in.Run.FurtherLines(l)
	if err != nil {
		return nil, err
	}
	for _, line := range further {
		f.Further = append(f.Further, furtherAt{line.Name, ends(line.Line)})
	}
	for i := range f.Strings {
		s := &f.Strings[i]
		if s.Note = in.note(0, s.String); d != nil {
			s.Gauge = in.gauge(d.Gauges[s.String-1])
		}
	}
	if d != nil {
		if f.Reference, err = in.referenceLines(); err != nil {
			return nil, err
		}
		f.Saddles = saddlesAt(l, d)
	}
	return f, nil
}

// linesOf gives the lines of a layout.
func linesOf(l *fan.Layout) Lines {
	half := l.Frame.HalfSpread(l.Neutral.X)
	out := Lines{Nut: ends(l.Nut), Saddle: ends(l.Saddle), Neutral: [2]point{{l.Neutral.X, half}, {l.Neutral.X, -half}}}
	for _, corner := range l.Board().Corners {
		out.Board = append(out.Board, at(corner))
	}
	for _, f := range l.Frets[1:] {
		out.Frets = append(out.Frets, fretAt{f.Number, [2]point{at(f.Slot.Bass), at(f.Slot.Treble)}, ends(f.Line), f.Line.Slant})
	}
	for i := len(l.Strings) - 1; i >= 0; i-- {
		s := l.Strings[i]
		out.Strings = append(out.Strings, stringAt{String: s.Number, Nut: at(s.Nut), Saddle: at(s.Saddle)})
	}
	return out
}

// referenceLines are those of the reference instrument.
func (in *Input) referenceLines() (*Lines, error) {
	ref := in.Plan.Request().Reference
	if ref == nil {
		return nil, nil
	}
	l, err := fan.New(ref.Neck)
	if err != nil {
		return nil, err
	}
	lines := linesOf(l)
	return &lines, nil
}

// saddlesAt gives the saddles of the strings whose compensation is known.
func saddlesAt(l *fan.Layout, d *choice.Detail) []saddleAt {
	all := make([]fan.Compensation, len(d.Strings))
	for i, s := range d.Strings {
		all[i] = s.Compensation
	}
	out, points := []saddleAt{}, l.Saddles(all).Points
	for i := len(points) - 1; i >= 0; i-- {
		if p := points[i]; d.Strings[i].CompensationErr == nil {
			out = append(out, saddleAt{p.String, at(p.At), at(p.Least), at(p.Most)})
		}
	}
	return out
}

func at(p fan.Point) point { return point{p.X, p.Y} }

func ends(a fan.Across) [2]point { return [2]point{at(a.Bass), at(a.Treble)} }

// rectangle goes round from the nut end's bass corner as a board's corners do.
func rectangle(minX, maxX, minY, maxY unit.Length) []point {
	return []point{{minX, maxY}, {maxX, maxY}, {maxX, minY}, {minX, minY}}
}
