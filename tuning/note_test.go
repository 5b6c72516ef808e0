package tuning_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/tuning"
)

func TestParseNote(t *testing.T) {
	for _, c := range []struct {
		given    string
		semitone int
		cents    float64
		printed  string
	}{
		{"C4", 60, 0, "C4"},
		{"A4", 69, 0, "A4"},
		{"F#3", 54, 0, "F#3"},
		{"f♯3", 54, 0, "F#3"},
		{"Gb3", 54, 0, "Gb3"},
		{"g♭3", 54, 0, "Gb3"},
		{"b3", 59, 0, "B3"},
		{"bb3", 58, 0, "Bb3"},
		{"bbb3", 57, 0, "Bbb3"},
		{"F##3", 55, 0, "F##3"},
		{"Cb4", 59, 0, "Cb4"},
		{"B#3", 60, 0, "B#3"},
		{"B0", 23, 0, "B0"},
		{"C-1", 0, 0, "C-1"},
		{"B#-2", 0, 0, "B#-2"},
		{"G9", 127, 0, "G9"},
		{"Fb2", 40, 0, "Fb2"},
		{"A2-14c", 45, -14, "A2-14c"},
		{"A2+14c", 45, 14, "A2+14c"},
		{"A2 +14 cents", 45, 14, "A2+14c"},
		{"A2\u221214ct", 45, -14, "A2-14c"},
		{"A2-13.69c", 45, -13.69, "A2-13.69c"},
		{"A2-100c", 45, -100, "A2-100c"},
		{"A2-0c", 45, 0, "A2"},
		{"F #2", 42, 0, "F#2"},
	} {
		t.Run(c.given, func(t *testing.T) {
			got, err := tuning.ParseNote(c.given)
			require.NoError(t, err)
			assert.Equal(t, c.semitone, got.Semitone)
			assert.Equal(t, c.cents, got.Cents)
			assert.False(t, math.Signbit(got.Cents) && got.Cents == 0, "-0")
			assert.Equal(t, c.printed, got.String())
		})
	}
}

func TestParseNoteRefuses(t *testing.T) {
	const letter = `; write a letter from A to G, # or b where needed, and the octave, such as "F#3" or "A2-14c"`
	for _, c := range []struct{ given, want string }{
		{"", `a note is missing; write one such as "F#3"`},
		{"E", `the octave is missing ("E"); write "E2", say; middle C is "C4", a guitar's low E "E2"`},
		{"f#", `the octave is missing ("f#"); write "F#2", say; middle C is "C4", a guitar's low E "E2"`},
		{"H3", `not a note ("H3")` + letter},
		{"A2-14", `not a note ("A2-14")` + letter},
		{"A2+101c", `more than 100 cents off the note ("A2+101c"); write the note that is nearest`},
		{"A2+1.1.1c", `not a note ("A2+1.1.1c")` + letter},
		{"Cb-1", `the note lies outside C-1 to G9 ("Cb-1"); middle C is "C4", a guitar's low E "E2"`},
		{"G#9", `the note lies outside C-1 to G9 ("G#9"); middle C is "C4", a guitar's low E "E2"`},
		{"E22", `the note lies outside C-1 to G9 ("E22"); middle C is "C4", a guitar's low E "E2"`},
		{"X3", `not a note ("X3")` + letter},
		{"F###3", `not a note ("F###3")` + letter},
		{"F#3 G3", `not a note ("F#3 G3")` + letter},
		{"3", `not a note ("3")` + letter},
		{"440", `not a note ("440")` + letter},
		{"E2,5", `not a note ("E2,5")` + letter},
	} {
		t.Run(c.given, func(t *testing.T) {
			got, err := tuning.ParseNote(c.given)
			assert.Zero(t, got)
			assert.EqualError(t, err, c.want)
		})
	}
}

func TestEnharmonicNotesSoundAlike(t *testing.T) {
	for _, pair := range [][2]string{{"Cb4", "B3"}, {"B#3", "C4"}, {"E#2", "F2"}, {"Fb2", "E2"}, {"F#1", "Gb1"}, {"A2+100c", "A#2"}} {
		a, err := tuning.ParseNote(pair[0])
		require.NoError(t, err)
		b, err := tuning.ParseNote(pair[1])
		require.NoError(t, err)
		assert.InEpsilon(t, b.Pitch(440).Hz(), a.Pitch(440).Hz(), 1e-15)
	}
}

func TestUpKeepsTheSpelling(t *testing.T) {
	for _, c := range []struct {
		note string
		by   int
		want string
	}{
		{"F#3", 2, "G#3"}, {"F#3", -3, "D#3"}, {"Gb3", 2, "Ab3"}, {"E2", -1, "Eb2"}, {"E2", 12, "E3"}, {"B3", 1, "C4"}, {"A2-14c", 1, "Bb2-14c"},
	} {
		n, err := tuning.ParseNote(c.note)
		require.NoError(t, err)
		assert.Equal(t, c.want, n.Up(c.by).String())
	}
}

func TestNoteWithoutSpelling(t *testing.T) {
	assert.Equal(t, "Eb4", tuning.Note{Semitone: 63}.String())
	assert.Equal(t, "C-1", tuning.Note{}.Name())
	assert.Equal(t, "E4", tuning.Note{Semitone: 64, Cents: -0.04}.Name(), "no -0c")
	assert.Equal(t, "E4-0.04c", tuning.Note{Semitone: 64, Cents: -0.04}.String())
}
