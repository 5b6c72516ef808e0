package build

import (
	"fmt"
	"slices"

	"scalepair/data/unit"
)

// Tails are the lengths of string beyond nut and saddle, up to where the
// string is held.
type Tails struct {
	// Nut and Saddle by string, string 1 first; 60 mm and 25 mm unless given,
	// and 0 is a real value (a locking nut).
	Nut, Saddle []unit.Length
	// NutAssumed and SaddleAssumed say that the file does not state them.
	NutAssumed, SaddleAssumed bool
}

// Saddle says how the strings pass over the frets.
type Saddle struct {
	// ActionTreble and ActionBass are the strings' heights over fret 12, the
	// outer strings given, the others straight between: 1.6 mm and 2.0 mm
	// unless given.
	ActionTreble, ActionBass unit.Length
	// Assumed says that neither is given.
	Assumed bool
}

// Dots are the position marks.
type Dots struct {
	// Face and Side are the frets whose space carries a dot; a dot lies midway
	// between its fret and the one before. Empty for none.
	Face, Side []int
	// Double are the frets with two dots.
	Double []int
	// FaceDiameter and SideDiameter: 6 mm and 2 mm unless given.
	FaceDiameter, SideDiameter unit.Length
}

// FretWire is the wire and the saw for it. 0 means not given, except where a
// default is named.
type FretWire struct {
	// TangDepth is from the underside of the crown to the tang's foot.
	TangDepth unit.Length
	// TangWidth is the tang's thickness without its barbs, BarbWidth with
	// them; Kerf is the width of the saw's cut.
	TangWidth, BarbWidth, Kerf unit.Length
	// Clearance is left under the tang: 0.4 mm unless given.
	Clearance unit.Length
	// Overhang is how far the wire stands out at each edge before it is
	// trimmed: 3 mm unless given.
	Overhang unit.Length
	// SparePercent is bought on top: 0 to 100, 10 unless given.
	SparePercent float64
}

// Playing says where and how the neck is played, for the neutral fret.
type Playing struct {
	// FromFret and ToFret are the frets most played, 0 to the last; the whole
	// board unless given.
	FromFret, ToFret float64
	// NeckAngleDeg is how far the neck points up from level: -30 to 80.
	NeckAngleDeg float64
	// AngleGiven says that the file states it.
	AngleGiven bool
}

// Line is a further straight line across the strings, such as a pickup's.
type Line struct {
	Name string
	// Distance is along the centreline: from the saddle's theoretical line
	// towards the nut, or, with BehindLastFret, from the last fret towards the
	// bridge.
	Distance       unit.Length
	BehindLastFret bool
	// Slant says what the line runs along; SlantDeg, with SlantGiven only, is
	// positive where the bass end is nearer the bridge.
	Slant    LineSlant
	SlantDeg float64
}

// LineSlant says what a further line runs along.
type LineSlant int

// The slants of a further line.
const (
	// SlantSquare: square to the centreline.
	SlantSquare LineSlant = iota
	// SlantSaddle: along the saddle line.
	SlantSaddle
	// SlantLastFret: along the last fret.
	SlantLastFret
	// SlantGiven: as given in degrees.
	SlantGiven
)

// readTails reads the two tails under the keys' names in their section.
func readTails(s *section, nutKey, saddleKey string, strings int) Tails {
	t := Tails{
		Nut:    s.lengthsPerString(nutKey, strings, 0, unit.MM(1000)),
		Saddle: s.lengthsPerString(saddleKey, strings, 0, unit.MM(1000)),
	}
	if t.NutAssumed = t.Nut == nil; t.NutAssumed {
		t.Nut = slices.Repeat([]unit.Length{unit.MM(60)}, max(strings, 1))
	}
	if t.SaddleAssumed = t.Saddle == nil; t.SaddleAssumed {
		t.Saddle = slices.Repeat([]unit.Length{unit.MM(25)}, max(strings, 1))
	}
	return t
}

func readSaddle(s *section) Saddle {
	v := Saddle{ActionTreble: unit.MM(1.6), ActionBass: unit.MM(2)}
	v.Assumed = s.first("action_treble", "action_bass") == nil
	s.length("action_treble", &v.ActionTreble, unit.MM(0.2), unit.MM(20))
	s.length("action_bass", &v.ActionBass, unit.MM(0.2), unit.MM(20))
	return v
}

// usualDots gives the frets that carry a dot by custom (common practice, no
// source).
func usualDots(frets int) []int {
	var out []int
	for fret := 1; fret <= frets; fret++ {
		if slices.Contains([]int{0, 3, 5, 7, 9}, fret%12) {
			out = append(out, fret)
		}
	}
	return out
}

// octaves gives the frets that carry two dots by custom.
func octaves(frets int) []int {
	var out []int
	for fret := 12; fret <= frets; fret += 12 {
		out = append(out, fret)
	}
	return out
}

func readDots(s *section, frets int) Dots {
	v := Dots{FaceDiameter: unit.MM(6), SideDiameter: unit.MM(2)}
	v.Face = s.fretsOr("face", usualDots(frets), frets)
	v.Side = s.fretsOr("side", usualDots(frets), frets)
	v.Double = s.fretsOr("double", octaves(frets), frets)
	s.length("face_diameter", &v.FaceDiameter, unit.MM(0.5), unit.MM(20))
	s.length("side_diameter", &v.SideDiameter, unit.MM(0.5), unit.MM(10))
	return v
}

// fretsOr reads a list of frets, or gives the usual ones.
func (s *section) fretsOr(key string, usual []int, frets int) []int {
	if got := s.wholes(key, 1, frets); got != nil {
		return got
	}
	return usual
}

func readFretWire(s *section) FretWire {
	v := FretWire{Clearance: unit.MM(0.4), Overhang: unit.MM(3), SparePercent: 10}
	s.length("tang_depth", &v.TangDepth, unit.MM(0.5), unit.MM(5))
	s.length("tang_width", &v.TangWidth, unit.MM(0.2), unit.MM(2))
	s.length("barb_width", &v.BarbWidth, unit.MM(0.2), unit.MM(2))
	s.length("kerf", &v.Kerf, unit.MM(0.2), unit.MM(3))
	s.length("clearance", &v.Clearance, 0, unit.MM(3))
	s.length("overhang", &v.Overhang, 0, unit.MM(50))
	s.number("spare_percent", &v.SparePercent, 0, 100)
	if v.BarbWidth > 0 && v.TangWidth > v.BarbWidth {
		s.wrong(s.find("barb_width"), "the barbs are narrower than the tang, "+s.asWritten("tang_width"), "barb_width is measured over the barbs")
	}
	return v
}

func readPlaying(s *section, frets int) Playing {
	v := Playing{ToFret: float64(frets)}
	s.number("from_fret", &v.FromFret, 0, float64(frets))
	s.number("to_fret", &v.ToFret, 0, float64(frets))
	v.AngleGiven = s.number("neck_angle_deg", &v.NeckAngleDeg, -30, 80)
	if v.FromFret > v.ToFret {
		s.wrong(s.find("from_fret"), "the frets played begin above their end", "exchange from_fret and to_fret")
	}
	return v
}

func readLines(root *section) []Line {
	var out []Line
	for i, s := range root.subs("lines") {
		l := Line{Name: fmt.Sprintf("line %d", i+1)}
		s.text("name", &l.Name)
		saddle := s.length("from_saddle", &l.Distance, 0, unit.MM(1500))
		l.BehindLastFret = s.length("behind_last_fret", &l.Distance, 0, unit.MM(1500)) && !saddle
		switch {
		case s.has("from_saddle") && s.has("behind_last_fret"):
			s.faults.Add(s.place(s.find("behind_last_fret").key), "the line's place is given twice", "", "keep from_saddle or behind_last_fret")
		case s.first("from_saddle", "behind_last_fret") == nil:
			s.missing("the line's place is missing", `write from_saddle = "40 mm", along the centreline`, "from_saddle", "behind_last_fret")
		}
		readLineSlant(s, &l)
		out = append(out, l)
	}
	return out
}

func readLineSlant(s *section, l *Line) {
	choice(s, "along", &l.Slant, "square", "the saddle line", "the last fret")
	if !s.number("slant_deg", &l.SlantDeg, -60, 60) {
		return
	}
	if s.has("along") {
		s.faults.Add(s.place(s.find("slant_deg").key), "the line's slant is given twice", "", "keep along or slant_deg")
	}
	l.Slant = SlantGiven
}
