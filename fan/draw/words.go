package draw

import (
	"math"
	"strconv"
)

// The words stand above and below the nut's end of the board, so that they are
// on the first sheet when the drawing is tiled.
const (
	wordsRoom = 200 // the length that title and key may take
	rowMM     = 5.6 // from line to line
	aboveMM   = 6   // from the numbers, and a square line's name, to the words
)

// title writes the heading, what the layout is, and the caller's remarks above
// the board, the last line nearest to it. It gives the lines below the heading;
// none when the title is hidden.
func (s *sketch) title() (notes []string) {
	lines := []Text{}
	for _, l := range Wrap(s.o.Title, titleMM, wordsRoom, 2) {
		lines = append(lines, Text{Height: titleMM, Room: wordsRoom, Body: l})
	}
	notes = append(s.facts(), Wrap(s.o.Remarks, wordsMM, wordsRoom, 4)...)
	for _, l := range notes {
		lines = append(lines, Text{Height: wordsMM, Room: wordsRoom, Body: l})
	}
	top, _ := s.numbersBeyond()
	y := top + aboveMM
	for i := len(lines) - 1; i >= 0; i-- {
		lines[i].At = Point{s.blank.Min.X, y}
		s.add(LayerTitle, lines[i])
		y += lines[i].Height + rowMM - wordsMM
	}
	if !s.shows(LayerTitle) {
		return nil
	}
	return notes
}

// facts says in words which layout is drawn and how it lies.
func (s *sketch) facts() []string {
	spec, sym := s.layout.Spec, " "+s.o.Unit.Symbol()
	pair := "bass " + s.length(spec.Bass) + sym + ", treble " + s.length(spec.Treble) + sym +
		", " + strconv.Itoa(spec.Strings) + " strings, " + strconv.Itoa(spec.Frets) + " frets"
	if s.layout.Parallel {
		pair += ", frets parallel"
	} else {
		pair += ", square at the " + s.neutralName()
	}
	lies := "face of the board, right-handed: nut left, bass side below"
	if s.o.LeftHanded {
		lies = "face of the board, left-handed: nut left, bass side above"
	}
	return []string{pair, join(" · ", lies, s.o.Date)}
}

// keyed are the strokes that the key explains, in its order, with their words.
var keyed = []struct {
	stroke Stroke
	words  string
}{
	{SlotStroke, "slot: centre of the cut"},
	{LeaderStroke, "slot or nut carried on"},
	{EndStroke, "end point of a slot"},
	{BoardStroke, "edge of the board"},
	{BlankStroke, "blank"},
	{CentreStroke, "centreline"},
	{StringStroke, "string line"},
	{NutStroke, "nut line, compensation"},
	{SaddleStroke, "saddle line, saddle point"},
	{SquareStroke, "square to the centreline"},
	{DotStroke, "position dot"},
}

// keyAndBars draws the key below the board, in three columns, and the check
// bars behind the board's end, where nothing else is.
func (s *sketch) keyAndBars() {
	const columns, sampleMM, gapMM = 3, 11.0, 2.5
	_, bottom := s.numbersBeyond()
	y := bottom - aboveMM - wordsMM
	n := 0
	for _, k := range keyed {
		if !s.used[k.stroke] {
			continue
		}
		column, row := n%columns, n/columns
		at := Point{s.blank.Min.X + float64(column)*wordsRoom/columns, y - float64(row)*rowMM}
		s.add(LayerKey, sample(k.stroke, at, sampleMM), Text{
			At: Point{at.X + sampleMM + gapMM, at.Y}, Height: wordsMM,
			Room: wordsRoom/columns - sampleMM - gapMM - 1, Body: k.words,
		}.Middle())
		n++
	}
	s.bars(y)
}

// sample draws a piece of the stroke as it looks on the drawing.
func sample(k Stroke, at Point, length float64) Element {
	middle := Point{at.X + length/2, at.Y}
	switch k {
	case EndStroke:
		return Circle{Centre: middle, Radius: endRingMM, Stroke: k}
	case DotStroke:
		return Circle{Centre: middle, Radius: 1.5, Stroke: k}
	}
	return Line{A: at, B: Point{at.X + length, at.Y}, Stroke: k}
}

// bars puts one check bar along x at height y behind the key, and one along y
// before the nut's end.
func (s *sketch) bars(y float64) {
	x := s.blank.Min.X + wordsRoom + 10
	s.add(LayerBars, Bar(Point{x, y - rowMM}, BarLength, 0)...)
	left := s.blank.Min.X - centreBeyondMM - 38
	s.add(LayerBars, Bar(Point{left, -BarLength / 2}, BarLength, math.Pi/2)...)
}
