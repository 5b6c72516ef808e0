package tuning_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/tuning"
)

func parse(t require.TestingT, s string) tuning.Tuning {
	got, err := tuning.Parse(s)
	require.NoError(t, err)
	return got
}

func TestParse(t *testing.T) {
	for _, c := range []struct{ given, name, notes string }{
		{"B1 E2 A2 D3 F#3 B3", "", "B1 E2 A2 D3 F#3 B3"},
		{"b1,e2, a2 , d3;f♯3\tB3\n", "", "B1 E2 A2 D3 F#3 B3"},
		{"E2-14c A2", "", "E2-14c A2"},
		{"E2", "", "E2"},
		{"baritone B", "baritone B", "B1 E2 A2 D3 F#3 B3"},
		{"BARITONE  b", "baritone B", "B1 E2 A2 D3 F#3 B3"},
		{"B baritone", "baritone B", "B1 E2 A2 D3 F#3 B3"},
		{"drop A baritone", "drop A baritone", "A1 E2 A2 D3 F#3 B3"},
		{"eight-string F#", "eight-string F#", "F#1 B1 E2 A2 D3 G3 B3 E4"},
		{"8 string F sharp", "eight-string F#", "F#1 B1 E2 A2 D3 G3 B3 E4"},
		{"e flat standard", "Eb standard", "Eb2 Ab2 Db3 Gb3 Bb3 Eb4"},
		{"E♭ standard", "Eb standard", "Eb2 Ab2 Db3 Gb3 Bb3 Eb4"},
		{"6-string", "standard", "E2 A2 D3 G3 B3 E4"},
		{"five-string bass", "five-string bass", "B0 E1 A1 D2 G2"},
		{"open G", "open G", "D2 G2 D3 G3 B3 D4"},
		{"dadgad", "DADGAD", "D2 A2 D3 G3 A3 D4"},
	} {
		t.Run(c.given, func(t *testing.T) {
			got := parse(t, c.given)
			assert.Equal(t, c.name, got.Name)
			assert.Equal(t, c.notes, got.String())
		})
	}
}

const howToWrite = `write a letter from A to G, # or b where needed, and the octave, such as "F#3" or "A2-14c"`

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct{ given, want string }{
		{" , ", `a tuning is missing; write notes such as "E2 A2 D3 G3 B3 E4", or a name such as "baritone B"`},
		{"E A D G B E", `the octaves are missing ("E A D G B E"); write "E2 A2 D3 G3 B3 E4" for a guitar; middle C is "C4"`},
		{"B1 E2 H3", `not a note ("H3"); ` + howToWrite},
		{"B1 E2 X9 A", `these are no notes ("X9 A"); ` + howToWrite},
		{"baritne B", `no tuning of that name ("baritne B"); did you mean "baritone B"? or write its notes, low string first`},
		{"5 strng bass", `no tuning of that name ("5 strng bass"); did you mean "five-string bass"? or write its notes, low string first`},
		{"zither", `no tuning of that name ("zither"); write its notes, low string first, such as "E2 A2 D3 G3 B3 E4"`},
	} {
		t.Run(c.given, func(t *testing.T) {
			got, err := tuning.Parse(c.given)
			assert.Zero(t, got)
			assert.EqualError(t, err, c.want)
		})
	}
}

func TestStringOneIsTheNoteWrittenLast(t *testing.T) {
	b := parse(t, "baritone B")
	assert.Equal(t, 6, b.Strings())
	assert.Equal(t, "B3", b.OfString(1).String())
	assert.Equal(t, "B1", b.OfString(6).String())
	assert.Panics(t, func() { b.OfString(0) })
	assert.Panics(t, func() { b.OfString(7) })
	f := b.Pitches(440)
	require.Len(t, f, 6)
	assert.InDelta(t, 246.94, f[0].Hz(), 0.005)
	assert.InDelta(t, 61.74, f[5].Hz(), 0.005)
}

func TestReEntrant(t *testing.T) {
	for s, want := range map[string]bool{
		"standard": false, "high-strung": true, "E2 E2": false, "A2 G2+100c": true, "A2 G2+60c A2": true, "G#2 G2+100c": false, "E2": false,
	} {
		assert.Equal(t, want, parse(t, s).ReEntrant(), s)
	}
}

func TestUpMovesEveryString(t *testing.T) {
	got := parse(t, "standard").Up(-5)
	assert.Equal(t, parse(t, "baritone B").String(), got.String())
	assert.Empty(t, got.Name)
}

// Every name leads to its own tuning, and no two are taken for the same.
func TestNamed(t *testing.T) {
	strings := map[int]int{}
	for _, want := range tuning.Named() {
		got, err := tuning.Lookup(want.Name)
		require.NoError(t, err)
		assert.Equal(t, want, got)
		strings[want.Strings()]++
		for _, n := range want.Notes {
			assert.Zero(t, n.Cents, want.Name)
		}
		assert.Equal(t, want.Name == "high-strung", want.ReEntrant(), want.Name)
	}
	for n := 4; n <= 8; n++ {
		assert.GreaterOrEqual(t, strings[n], 3, "%d strings", n)
	}
}

func TestNamedIsACopy(t *testing.T) {
	tuning.Named()[0].Notes[0].Semitone = 0
	assert.Equal(t, 40, tuning.Named()[0].Notes[0].Semitone)
}
