package draw

import (
	"math"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Align says which point of a text's baseline stands at its place.
type Align int

// The alignments.
const (
	Left   Align = iota // the text begins at At
	Centre              // its middle is at At
	Right               // it ends at At
)

// Text is one line of words. At is on the baseline; Height is the height of
// a capital letter or figure (not of the type's body), in mm; Angle turns it
// anticlockwise about At. Body may hold anything: writers take Shown. Room is
// the length that the words may take, 0 for any.
type Text struct {
	At     Point
	Height float64
	Angle  float64
	Align  Align
	Room   float64
	Body   string
}

// CapShare is the height of a capital over the size of the type for the sans
// serif face that package pdf embeds (1480 of 2048 units, from the face's table).
const CapShare = 1480.0 / 2048

// Size is the size of the type, in mm, that gives the wanted capitals.
func (t Text) Size() float64 { return t.Height / CapShare }

// Shown is the text as every writer prints it: one line, without control
// characters, cut with an ellipsis to the room it has.
func (t Text) Shown() string {
	body := OneLine(t.Body)
	if t.Room <= 0 {
		return body
	}
	return cut(body, t.Room/t.Size())
}

// Width is the length of the shown text in mm, by the face's metrics; exact
// for western letters, generous for others.
func (t Text) Width() float64 { return ems(t.Shown()) * t.Size() }

// Bounds implements Element; descenders are counted as a third of Height.
func (t Text) Bounds() Rect {
	width := t.Width()
	left := -width * float64(t.Align) / 2
	turn := Turn(t.Angle).Then(Move(t.At.X, t.At.Y))
	return turn.Rect(Rect{Min: Point{left, -t.Height / 3}, Max: Point{left + width, t.Height}})
}

// Through implements Element. The letters keep their size; only place and
// direction follow the map.
func (t Text) Through(m Map) Element {
	t.At, t.Angle = m.Point(t.At), m.Angle(t.Angle)
	return t
}

// On implements Element.
func (t Text) On(c Canvas) { c.Text(t) }

// Middle gives the text with the middle of its capitals, not the baseline, at At.
func (t Text) Middle() Text {
	sin, cos := math.Sincos(t.Angle)
	t.At.X += sin * t.Height / 2
	t.At.Y -= cos * t.Height / 2
	return t
}

// OneLine makes one printable line of s: line breaks, tabs and runs of blanks
// become one blank; control and invisible formatting characters vanish; broken
// UTF-8 and characters that XML forbids become U+FFFD.
func OneLine(s string) string {
	return strings.Join(strings.Fields(strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case unicode.In(r, unicode.Cc, unicode.Cf):
			return -1
		case !printable(r):
			return utf8.RuneError
		}
		return r
	}, s)), " ")
}

// printable reports whether XML 1.0 allows r and Unicode assigns it a character
// for interchange: no surrogates, no noncharacters, no private use.
func printable(r rune) bool {
	return r&0xFFFE != 0xFFFE && !(r >= 0xFDD0 && r <= 0xFDEF) &&
		!unicode.In(r, unicode.Cs, unicode.Co)
}

// Wrap breaks s into at most lines lines of roomMM each for capitals of
// height: at its own line breaks, then between words. What does not fit is
// cut with an ellipsis.
func Wrap(s string, height, roomMM float64, lines int) []string {
	room := roomMM / (height / CapShare)
	var out []string
	for _, own := range strings.FieldsFunc(s, func(r rune) bool { return r == '\n' || r == '\r' }) {
		out = append(out, wrapLine(OneLine(own), room)...)
	}
	if len(out) > lines {
		rest := strings.Join(out[lines-1:], " ")
		out = append(out[:lines-1], cut(rest, room))
	}
	return out
}

// wrapLine breaks one line between words; a word longer than the room is cut.
func wrapLine(line string, room float64) []string {
	var out []string
	current := ""
	for _, word := range strings.Fields(line) {
		longer := strings.TrimPrefix(current+" "+word, " ")
		if current == "" || ems(longer) <= room {
			current = longer
			continue
		}
		out = append(out, cut(current, room))
		current = word
	}
	if current != "" {
		out = append(out, cut(current, room))
	}
	return out
}

// cut shortens a line to room, in units of the type's size, with an ellipsis.
func cut(s string, room float64) string {
	if ems(s) <= room {
		return s
	}
	short := []rune(s)
	for len(short) > 0 && ems(string(short)+"…") > room {
		short = short[:len(short)-1]
	}
	return strings.TrimRight(string(short), " ") + "…"
}
