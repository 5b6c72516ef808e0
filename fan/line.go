package fan

import (
	"fmt"
	"math"

	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/data/unit"
)

// Position is where one string crosses a line: a nut slot, a saddle, a pickup's
// pole. Distances "along" follow the slanted line, distances "square" are
// square to the centreline (what a rule laid square across shows).
type Position struct {
	String         int
	At             Point
	AlongFromBass  unit.Length // from the bass outer string, along the line
	AlongFromEdge  unit.Length // from the board's bass edge, run on where need be, along the line: the nut blank's bass end
	SquareFromBass unit.Length // from the bass outer string, square to the centreline
	SpacingAlong   unit.Length // to the next string on the bass side, along the line; 0 at the bass string
	SpacingSquare  unit.Length // the same square to the centreline
}

// lineAt finds where a line through the centreline meets the outer strings
// y = ±(s/2 + m x).
func (f *Frame) lineAt(cross, t float64) Across {
	half := f.half(cross)
	line := Across{Cross: unit.Length(plain(cross)), TanSlant: plain(t), Slant: unit.Angle(plain(math.Atan(t)))}
	line.Bass = on(line, half/(1-float64(f.m*t)))
	line.Treble = on(line, -half/(1+float64(f.m*t)))
	return line
}

// StringsAt gives every string's place on a line, string 1 first.
func (l *Layout) StringsAt(line Across) []Position {
	t := line.TanSlant
	stretch := unit.Length(math.Sqrt(1 + float64(t*t)))
	bassEdge, _ := l.edges(line.Cross.M(), t)
	list := make([]Position, len(l.Strings))
	for i := len(list) - 1; i >= 0; i-- {
		s, pos := l.Strings[i], &list[i]
		pos.String, pos.At = s.Number, s.At(meets(s.Nut, s.Saddle, line.Cross.M(), t))
		bass := list[len(list)-1].At.Y
		pos.SquareFromBass = plain(bass - pos.At.Y)
		pos.AlongFromBass = pos.SquareFromBass * stretch
		pos.AlongFromEdge = plain((unit.Length(bassEdge) - pos.At.Y) * stretch)
		if i < len(list)-1 {
			pos.SpacingSquare = list[i+1].At.Y - pos.At.Y
			pos.SpacingAlong = pos.SpacingSquare * stretch
		}
	}
	return list
}

// Line is a further straight line across the strings, such as a pickup's.
type Line struct {
	Name string `toml:"name"`
	// FromSaddle is along the centreline from the saddle's theoretical line
	// towards the nut, BehindLastFret from the last fret towards the bridge. The
	// second is read where it is not 0.
	FromSaddle     unit.Length `toml:"from_saddle" range:"0 mm, 1500 mm"`
	BehindLastFret unit.Length `toml:"behind_last_fret" range:"0 mm, 1500 mm"`
	// Along says what the line runs along; Slant, where it is not 0, gives its
	// slant instead, positive where the bass end is nearer the bridge.
	Along LineSlant  `toml:"along"`
	Slant unit.Angle `toml:"slant_deg" range:"-60, 60"`
}

// LineSlant says what a further line runs along.
type LineSlant int

// The slants of a further line.
const (
	SlantSquare LineSlant = iota
	SlantSaddle
	SlantLastFret
)

var lineSlants = []string{"square", "the saddle line", "the last fret"}

// UnmarshalText reads one of the words.
func (s *LineSlant) UnmarshalText(text []byte) error {
	return suggest.Word(s, string(text), lineSlants)
}

// PlacedLine is a further line on one layout.
type PlacedLine struct {
	Name string
	Line Across
	// FromSaddle and BehindLastFret are along the centreline, as in Line.
	FromSaddle, BehindLastFret unit.Length
	Positions                  []Position
}

// Place lays a further line on the layout. The error is a fault.List with the
// keys of the line's own section.
func (l *Layout) Place(line Line) (PlacedLine, error) {
	last := l.Last().Line
	cross, key := l.Saddle.Cross-line.FromSaddle, "from_saddle"
	if line.BehindLastFret != 0 {
		cross, key = last.Cross+line.BehindLastFret, "behind_last_fret"
	}
	if !(cross >= 0 && cross <= l.Saddle.Cross) {
		return PlacedLine{}, fault.List{{Place: keyed(key), What: line.Name + " does not lie between nut and saddle line",
			Given: millimetres(l.Saddle.Cross-cross) + " from the saddle line",
			Remedy: fmt.Sprintf("along the centreline they are %s apart, the last fret %s before the saddle line",
				millimetres(l.Saddle.Cross), millimetres(l.Saddle.Cross-last.Cross))}}
	}
	slant := [...]unit.Angle{SlantSquare: 0, SlantSaddle: l.Saddle.Slant, SlantLastFret: last.Slant}[line.Along]
	if line.Slant != 0 {
		slant = line.Slant
	}
	across := l.lineAt(cross.M(), math.Tan(slant.Rad()))
	return PlacedLine{line.Name, across, l.Saddle.Cross - cross, cross - last.Cross, l.StringsAt(across)}, nil
}
