package draw

import (
	"fmt"
	"hash/fnv"
	"math"
	"slices"
	"strconv"
	"strings"

	"scalepair/data/unit"
)

// The words stand above and below the nut's end of the board.
const (
	wordsRoom = 200 // the length that the title may take
	rowMM     = 5.6 // from line to line
	aboveMM   = 7   // from the numbers, and a line's name, to the words
)

// title writes the heading, what the layout is, the caller's remarks and what is
// to be measured above the board, the last line nearest to it, and puts the same
// words into the drawing.
func (s *sketch) title(d *Drawing) {
	d.PlanLine, d.Checks = s.planLine(), s.checks()
	if !s.shows(LayerTitle) {
		return
	}
	d.Notes = append(s.facts(), Wrap(s.o.Remarks, wordsMM, wordsRoom, 4)...)
	y := s.numbersBeyond(1) + aboveMM
	write := func(height float64, body string) {
		s.add(LayerTitle, Text{At: Point{s.blank.Min.X, y}, Height: height, Room: wordsRoom, Body: body})
		y += height + rowMM - wordsMM
	}
	for _, words := range []struct {
		height float64
		lines  []string
	}{{keyMM, d.Checks}, {wordsMM, append(slices.Clone(d.Notes), d.PlanLine)}, {titleMM, Wrap(s.o.Title, titleMM, wordsRoom, 2)}} {
		for _, body := range slices.Backward(words.lines) {
			write(words.height, body)
		}
	}
}

// facts says in words which layout is drawn and how it lies.
func (s *sketch) facts() []string {
	spec, sym := s.layout.Spec, " "+s.o.Unit.Symbol()
	pair := "bass " + s.length(spec.Bass) + sym + ", treble " + s.length(spec.Treble) + sym +
		", " + strconv.Itoa(spec.Strings) + " strings, " + strconv.Itoa(spec.Frets) + " frets"
	if s.layout.Parallel {
		pair += ", frets parallel"
	} else {
		pair += ", square at " + s.neutralName()
	}
	lies := "face of the board, right-handed: nut left, bass side below"
	if s.o.LeftHanded {
		lies = "face of the board, left-handed: nut left, bass side above"
	}
	return []string{pair, lies}
}

// planLine gives the number of the plan, which tells two plans apart, with a
// place for the date. The number is made of what is drawn of the build, not of
// what is hidden or of the day.
func (s *sketch) planLine() string {
	sum := fnv.New32a()
	l := s.layout
	fmt.Fprintf(sum, "%s %v %.7f %v %.7f", s.o.Title, s.o.Strings, s.o.Kerf, s.o.LeftHanded, l.Board().Corners)
	for _, f := range l.Frets {
		fmt.Fprintf(sum, "%.7f", f.Slot)
	}
	for i, str := range l.Strings {
		fmt.Fprintf(sum, "%.7f %.7f", str.Nut, str.Saddle)
		if c := s.o.Compensations[i]; c != nil {
			fmt.Fprintf(sum, "%.7f", *c)
		}
	}
	date := s.o.Date
	if strings.TrimSpace(date) == "" {
		date = blankLine
	}
	n := sum.Sum32()
	return fmt.Sprintf("plan %04X-%04X · full size · date %s", n>>16, n&0xFFFF, date)
}

// blankLine is a line to write on.
const blankLine = "__________"

// checks says what is to be measured on the whole drawing, beside what it must be.
func (s *sketch) checks() []string {
	l, last := s.layout, s.layout.Spec.Frets
	one := func(what string, nominal unit.Length) string {
		return what + ": " + s.fine(nominal) + " " + blankLine
	}
	out := []string{"Measure the whole drawing, after gluing too, along the outer strings, and write down what you find (" + s.o.Unit.Symbol() + "):"}
	lines := []string{"bass nut to fret", "treble nut to fret"}
	for i, at := range []func(int) unit.Length{
		func(n int) unit.Length { return l.Frets[n].Bass.FromNut }, func(n int) unit.Length { return l.Frets[n].Treble.FromNut },
	} {
		if last > 12 {
			lines[i] = one(lines[i]+" 12", at(12)) + ", to fret"
		}
		lines[i] = one(lines[i]+" "+strconv.Itoa(last), at(last))
	}
	out = append(out, lines...)
	return append(out,
		one("diagonals: bass nut to treble fret "+strconv.Itoa(last), l.DiagonalBassNut)+", "+
			one("treble nut to bass fret "+strconv.Itoa(last), l.DiagonalTrebleNut))
}

// keyAndBars draws the key below the board, and check bars beside it and before
// the nut's end, where nothing else is.
func (s *sketch) keyAndBars() {
	const roomMM = 110
	y := s.numbersBeyond(-1) - aboveMM - wordsMM
	s.key(s.blank.Min.X, y)
	s.add(LayerBars, Bar(s.o.Unit, Point{s.blank.Min.X + wordsRoom + 10, y - rowMM}, roomMM, 0)...)
	s.add(LayerBars, Bar(s.o.Unit, Point{s.blank.Min.X - centreBeyondMM - 38, -roomMM / 2}, roomMM, math.Pi/2)...)
}
