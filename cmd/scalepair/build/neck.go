package build

import (
	"strings"

	"scalepair/data/unit"
	"scalepair/fan"
)

// Neck is the neck and its board. Its spacings stand in the place of fan.Neck's,
// since a file may list them.
type Neck struct {
	fan.Neck
	NutSpacing    Spacing `toml:"nut_spacing" range:"1 mm, 100 mm"`
	SaddleSpacing Spacing `toml:"saddle_spacing" range:"1 mm, 100 mm"`
}

// Spacing says how the strings are spread along the nut or the saddle line: one
// word, or the steps from centre to centre, bass side first.
type Spacing []SpacingPart

// SpacingPart is the word of a Spacing, or one of its steps.
type SpacingPart struct {
	Word fan.Spacing
	Step unit.Length
}

// UnmarshalText reads the word.
func (s *Spacing) UnmarshalText(text []byte) error {
	*s = Spacing{{}}
	return (*s)[0].UnmarshalText(text)
}

// UnmarshalText reads the word or one step.
func (p *SpacingPart) UnmarshalText(text []byte) error {
	*p = SpacingPart{}
	if strings.ContainsAny(string(text), "0123456789") {
		return p.Step.UnmarshalText(text)
	}
	return p.Word.UnmarshalText(text)
}

// lines is the spacing with its steps from string 1 on.
func (s Spacing) lines() fan.Spacing {
	switch {
	case len(s) == 0:
		return fan.Spacing{}
	case s[0].Step == 0:
		return s[0].Word
	}
	out := fan.Spacing{Rule: fan.Listed, Steps: make([]unit.Length, len(s))}
	for i, p := range s {
		out.Steps[len(s)-1-i] = p.Step
	}
	return out
}

// Tails are the lengths of string beyond nut and saddle, up to where the string
// is held; 0 is a real value (a locking nut). Where none is stated they are 60
// and 25 mm (judgement), and what follows says 'assumed'.
type Tails struct {
	Nut    PerString[unit.Length] `toml:"nut" range:"0 mm, 1000 mm"`
	Saddle PerString[unit.Length] `toml:"saddle" range:"0 mm, 1000 mm"`
	// NutAssumed and SaddleAssumed say that nobody states them.
	NutAssumed, SaddleAssumed bool
}

// Saddle has the strings' heights over fret 12, of the outer strings; the others
// run straight between.
type Saddle struct {
	ActionTreble unit.Length `toml:"action_treble" range:"0.2 mm, 10 mm"`
	ActionBass   unit.Length `toml:"action_bass" range:"0.2 mm, 10 mm"`
	// Assumed says that neither is given.
	Assumed bool
}
