package report

import (
	"fmt"
	"strings"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan"
)

// FromBlank is what advise --blank prints: the longest bass and the longest
// straight board that come out of a blank. It follows from geometry alone.
type FromBlank struct {
	Head
	BlankLength unit.Length `json:"blank_length_mm"`
	BlankWidth  unit.Length `json:"blank_width_mm"`
	Treble      unit.Length `json:"treble_mm"`
	fan.Neutral
	Frets        int         `json:"frets"`
	SawAllowance unit.Length `json:"saw_allowance_mm"`
	LongestBass  *BoardOf    `json:"longest_bass"`     // null: none comes out of it
	LongestEqual *BoardOf    `json:"longest_straight"` // the same
	LimitsBroken []string    `json:"limits_broken"`    // by the longest bass
	WithinLimits *BoardOf    `json:"longest_bass_within_limits"`

	in    *Input
	found fan.FromBlank
	spec  fan.Spec
}

// BoardOf is a board that comes out of a blank.
type BoardOf struct {
	Bass        unit.Length `json:"bass_mm"`
	Treble      unit.Length `json:"treble_mm"`
	Difference  unit.Length `json:"difference_mm"`
	NutSlant    unit.Angle  `json:"nut_slant_deg"`
	LastFret    unit.Angle  `json:"last_fret_slant_deg"`
	SaddleSlant unit.Angle  `json:"saddle_slant_deg"`
	Length      unit.Length `json:"least_blank_length_mm"`
	Width       unit.Length `json:"least_blank_width_mm"`
	Stop        string      `json:"stops_a_longer_one"`
}

// NewFromBlank works up what a blank allows; spec is the one that was asked.
func NewFromBlank(in *Input, spec fan.Spec, found fan.FromBlank) *FromBlank {
	out := &FromBlank{Head: in.head(), BlankLength: found.Blank.Length, BlankWidth: found.Blank.Width, Treble: spec.Treble, Neutral: spec.Neutral, Frets: spec.Frets, SawAllowance: spec.SawAllowance,
		LongestBass: boardOf(found.LongestBass, found.BassStop), LongestEqual: boardOf(found.LongestStraight, found.StraightStop), WithinLimits: boardOf(found.WithinLimits, found.LimitsStop),
		LimitsBroken: []string{}, in: in, found: found, spec: spec}
	if l := found.LongestBass; l != nil {
		out.LimitsBroken = in.broken(in.Run.Limits.OfFan(&l.Frame, spec.Frets))
	}
	return out
}

var stopWords = map[fan.Stop]string{fan.BlankLength: "the blank's length", fan.BlankWidth: "the blank's width", fan.NoFan: "no longer fan can be made", fan.BrokenLimit: "a limit"}

func boardOf(l *fan.Layout, stop fan.Stop) *BoardOf {
	if l == nil {
		return nil
	}
	r := l.LeastBlank()
	return &BoardOf{Bass: l.Spec.Bass, Treble: l.Spec.Treble, Difference: l.Spec.Bass - l.Spec.Treble, NutSlant: l.Nut.Slant,
		LastFret: l.Frets[len(l.Frets)-1].Line.Slant, SaddleSlant: l.Saddle.Slant, Length: r.Length, Width: r.Width, Stop: stopWords[stop]}
}

// Document answers in a few lines.
func (f *FromBlank) Document() *document.Document {
	in, u := f.in, f.in.Units
	doc := &document.Document{Title: fmt.Sprintf("What comes out of a blank of %s x %s", u.Len(f.BlankLength, scaleDecimals), in.length(f.BlankWidth))}
	var out lines
	board := func(what string, b *BoardOf, stop fan.Stop) {
		if b == nil {
			out.say("%s: none; %s stops even equal lengths of %s.", what, stopWords[stop], in.length(f.Treble))
			return
		}
		slants := ""
		if b.Difference != 0 {
			slants = fmt.Sprintf(" slants %s at the nut, %s at the last fret, %s at the saddle line;", table.DegText(b.NutSlant), table.DegText(b.LastFret), table.DegText(b.SaddleSlant))
		}
		out.say("%s: %s;%s the board takes %s x %s, and %s stops a longer one.", what, in.Pair(b.Bass, b.Treble), slants, in.atLeast(b.Length), in.atLeast(b.Width), b.Stop)
	}
	board("Longest bass", f.LongestBass, f.found.BassStop)
	if len(f.LimitsBroken) > 0 {
		out.say("That breaks what you stated: %s.", strings.Join(f.LimitsBroken, "; "))
		board("Longest bass within your limits", f.WithinLimits, f.found.LimitsStop)
	}
	board("Longest straight board", f.LongestEqual, f.found.StraightStop)
	doc.List(out...)
	doc.Para("Treble %s, %s square, %d strings, %d frets, string spread %s at the nut and %s at the saddle, %s of saw allowance on every side.",
		in.length(f.Treble), neutralWords(f.spec.Neutral), f.spec.Strings, f.Frets, u.Len(f.spec.NutSpread, scaleDecimals), in.length(f.spec.SaddleSpread), in.length(f.SawAllowance))
	doc.Para("This is geometry alone: no string was looked at. Whether strings feel right at these lengths is what scalepair advise says.")
	return doc
}
