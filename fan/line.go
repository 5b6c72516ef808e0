package fan

import (
	"fmt"
	"math"

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
	FromNut        unit.Length // along the string, from its nut end; negative behind the nut
}

// LineAt gives the straight line across the strings that crosses the
// centreline at x = cross with its own slant (a pickup).
// The error is a fault.List when a number is not finite, the slant is steeper
// than 60 degrees, or the outer strings have met there.
func (l *Layout) LineAt(cross unit.Length, slant unit.Angle) (Across, error) {
	var f faults
	crossOK := f.finite("line", "the line's place on the centreline", cross.M())
	if f.finite("line", "the line's slant", slant.Rad()) && !(math.Abs(math.Tan(slant.Rad())) <= maxTan && math.Abs(slant.Rad()) < math.Pi/2) {
		f.add("line", "the line slants more than 60 degrees", number(slant.Degrees())+" degrees", "give its slant from square")
	}
	if err := f.list.Err(); err != nil {
		return Across{}, err
	}
	line := l.Frame.lineAt(cross.M(), math.Tan(slant.Rad()))
	if crossOK && !(l.Frame.half(line.Bass.X.M()) > 0 && l.Frame.half(line.Treble.X.M()) > 0) {
		f.add("line", "the outer strings have met before this line", number(cross.MM())+" mm", "give a place nearer the strings")
		return Across{}, f.list.Err()
	}
	return line, nil
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
	bassEdge, _ := l.Frame.edges(line.Cross.M(), t)
	list := make([]Position, len(l.Strings))
	for i := len(list) - 1; i >= 0; i-- {
		s, pos := l.Strings[i], &list[i]
		u := meets(s.Nut, s.Saddle, line.Cross.M(), t)
		pos.String, pos.At, pos.FromNut = s.Number, s.At(u), plain(unit.Length(u)*s.Length)
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
	var f faults
	if !f.finite("line", "the place of "+line.Name, (line.FromSaddle + line.BehindLastFret).M()) {
		return PlacedLine{}, f.list.Err()
	}
	last := l.Frets[l.Spec.Frets].Line
	cross, key := l.Saddle.Cross-line.FromSaddle, "from_saddle"
	if line.BehindLastFret != 0 {
		cross, key = last.Cross+line.BehindLastFret, "behind_last_fret"
	}
	if !(cross >= 0 && cross <= l.Saddle.Cross) {
		f.add(key, line.Name+" does not lie between nut and saddle line", number((l.Saddle.Cross-cross).MM())+" mm from the saddle line",
			fmt.Sprintf("along the centreline they are %s mm apart, the last fret %s mm before the saddle line",
				number(l.Saddle.Cross.MM()), number((l.Saddle.Cross-last.Cross).MM())))
		return PlacedLine{}, f.list.Err()
	}
	slant := [...]unit.Angle{SlantSquare: 0, SlantSaddle: l.Saddle.Slant, SlantLastFret: last.Slant}[line.Along]
	if line.Slant != 0 {
		slant = line.Slant
	}
	across, err := l.LineAt(cross, slant)
	if err != nil {
		return PlacedLine{}, err
	}
	return PlacedLine{Name: line.Name, Line: across, FromSaddle: l.Saddle.Cross - cross, BehindLastFret: cross - last.Cross,
		Positions: l.StringsAt(across)}, nil
}
