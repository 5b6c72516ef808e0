package draw_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/draw"
)

// instruments are the three invented instruments of these tests.
func instruments() []string { return []string{"six", "eight", "bass"} }

// layoutOf gives an instrument's layout.
func layoutOf(t testing.TB, name string) *fan.Layout {
	t.Helper()
	s := fan.Spec{Strings: 6, Neck: fan.DefaultNeck()}
	switch name {
	case "six":
		s.Bass, s.Treble, s.NutSpread, s.SaddleSpread = unit.MM(686), unit.MM(647.7), unit.MM(36), unit.MM(52)
		s.NutShelf = unit.MM(4)
	case "eight":
		s.Strings, s.Bass, s.Treble, s.NutSpread, s.SaddleSpread = 8, unit.MM(711.2), unit.MM(660.4), unit.MM(48), unit.MM(73)
		s.Neutral.Fret = 7.5
		s.BassMargin = new(unit.MM(4.5))
	case "bass":
		s.Strings, s.Frets, s.Bass, s.Treble, s.NutSpread, s.SaddleSpread = 4, 20, unit.MM(889), unit.MM(838.2), unit.MM(31), unit.MM(57)
		s.Neutral.Fret, s.BodyEnd = 9, fan.SquareEnd
	}
	l, err := fan.New(s)
	require.NoError(t, err)
	return l
}

// optionsOf gives an instrument's words and compensations.
func optionsOf(l *fan.Layout) draw.Options {
	o := draw.Options{Title: "Trial of " + string(rune('0'+len(l.Strings))) + " strings", Date: "2025-03-01", Kerf: unit.MM(0.6)}
	if len(l.Strings) == 8 {
		o.Unit = unit.DecimalInches
	}
	for i := range l.Strings {
		o.Strings = append(o.Strings, draw.StringWords{Note: "E♭" + string(rune('4'-i/3)), Gauge: "0.3 mm"})
		o.Compensations = append(o.Compensations, &fan.Compensation{Lo: unit.MM(1 + 0.25*float64(i)), Hi: unit.MM(1.5 + 0.25*float64(i))})
	}
	return o
}

// drawingOf gives an instrument's drawing.
func drawingOf(t testing.TB, name string) draw.Drawing {
	t.Helper()
	l := layoutOf(t, name)
	return draw.Fan(l, optionsOf(l))
}

// slotsOf gives the slots as they must stand on a right-handed drawing, straight
// from the layout: x as it is, the bass side below.
func slotsOf(l *fan.Layout) []draw.Line {
	var out []draw.Line
	for _, f := range l.Frets[1:] {
		out = append(out, draw.Line{A: face(f.Slot.Bass), B: face(f.Slot.Treble)})
	}
	return out
}

// anyNeck draws the layout of some neck of four to nine strings.
func anyNeck(t *rapid.T) *fan.Layout {
	s := fan.Spec{Strings: 6, Neck: fan.DefaultNeck()}
	s.Strings = rapid.IntRange(4, 9).Draw(t, "strings")
	s.Frets = rapid.IntRange(12, 30).Draw(t, "frets")
	s.Treble = unit.MM(rapid.Float64Range(500, 860).Draw(t, "treble"))
	s.Bass = unit.MM(s.Treble.MM() + rapid.Float64Range(0, 60).Draw(t, "difference"))
	s.NutSpread = unit.MM(6 * float64(s.Strings))
	s.SaddleSpread = unit.MM(s.NutSpread.MM() * rapid.Float64Range(1.1, 1.6).Draw(t, "spread"))
	s.Neutral.Fret = rapid.Float64Range(0, 12).Draw(t, "neutral")
	l, err := fan.New(s)
	if err != nil {
		t.Skip("no such neck:", err)
	}
	return l
}
