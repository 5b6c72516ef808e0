package tuning_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/tuning"
)

// Notes as they are written elsewhere are refused with what to write here.
func TestOtherWritingsAreRefusedWithTheRightOne(t *testing.T) {
	const guitar = "E2 A2 D3 G3 B3 E4"
	for _, c := range []struct{ name, given, write string }{
		{"run together", "E2A2D3G3B3E4", guitar},
		{"hyphens", "E2-A2-D3-G3-B3-E4", guitar},
		{"long dashes", "E2 – A2 – D3 – G3 – B3 – E4", guitar},
		{"strokes", "E2/A2/D3/G3/B3/E4", guitar},
		{"blanks before the octave", "E 2 A 2 D 3 G 3 B 3 E 4", guitar},
		{"Cyrillic letters", "Е2 А2 D3 G3 В3 Е4", guitar},
		{"full width", "Ｅ２ Ａ２ Ｄ３ Ｇ３ Ｂ３ Ｅ４", guitar},
		{"sharps in words", "Fsharp1 B1 E2 A2", "F#1 B1 E2 A2"},
		{"flats in words", "E flat 2 A flat 2", "Eb2 Ab2"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := tuning.Parse(c.given)
			require.EqualError(t, err, `these notes are written otherwise here ("`+c.given+`"); write "`+c.write+`"`)
			_, err = tuning.Parse(c.write)
			assert.NoError(t, err)
		})
	}
	for given, want := range map[string]string{
		"Es2 As2 Des3 Ges3 B3 Es4":       `these notes are written otherwise here ("Es2 As2 Des3 Ges3 B3 Es4"); write "Eb2 Ab2 Db3 Gb3 B3 Eb4"; Bb for a German B`,
		"Fis1 H1 E2":                     `these notes are written otherwise here ("Fis1 H1 E2"); write "F#1 B1 E2"; Bb for a German B`,
		"40 45 50 55 59 64":              `a tuning is not given in numbers ("40 45 50 55 59 64"); write its notes, low string first: if these are MIDI numbers, "E2 A2 D3 G3 B3 E4"`,
		"82.4 110 146.8 196 246.9 329.6": `a tuning is not given in numbers ("82.4 110 146.8 196 246.9 329.6"); write its notes, low string first: if these are hertz, "E2 A2 D3 G3 B3 E4"`,
		"mi la re sol si mi":             `notes have letters here ("mi la re sol si mi"); write them from A to G with their octave, such as "E2 A2 D3 G3 B3 E4"`,
		"E, A, d g b e'":                 `octaves are numbers here, not strokes or small letters ("E, A, d g b e'"); write "E2 A2 D3 G3 B3 E4" for a guitar; middle C is "C4"`,
		"EADGBE":                         `the octaves are missing ("EADGBE"); write "E2 A2 D3 G3 B3 E4" for a guitar; middle C is "C4"`,
		"drop DD":                        `no tuning of that name ("drop DD"); did you mean "drop D"? or write its notes, low string first`,
		"moonlight":                      `no tuning of that name ("moonlight"); write its notes, low string first, such as "E2 A2 D3 G3 B3 E4"`,
		"E2 A2 D3 G3 P3 E4":              `not a note ("P3"); write a letter from A to G, # or b where needed, and the octave, such as "F#3"`,
		"E2 A2 D3 G3 H3 E4":              `there is no note H here ("H3"); write B for it, and Bb for a German B`,
	} {
		_, err := tuning.Parse(given)
		assert.EqualError(t, err, want)
	}
}

// A text of any length is refused at once.
func TestALongTextIsNoTuning(t *testing.T) {
	_, err := tuning.Parse(strings.Repeat("E2-", 100000))
	assert.ErrorContains(t, err, "not a note")
	assert.Less(t, len(err.Error()), 500)
}
