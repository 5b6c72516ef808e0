package suggest_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"scalepair/data/suggest"
	"scalepair/data/testutil"
)

var _ = testutil.Seed("1")

func TestNearest(t *testing.T) {
	known := []string{"tuning", "gauges", "stock", "baritone B", "phosphor bronze", "mm"}
	for _, c := range []struct{ name, word, want string }{
		{"itself", "stock", "stock"},
		{"another case", " Stock", "stock"},
		{"one letter left out", "stok", "stock"},
		{"one letter too many", "stocck", "stock"},
		{"one letter changed", "stick", "stock"},
		{"neighbours swapped", "tunign", "tuning"},
		{"two of eight", "bartnoe B", "baritone B"},
		{"two letters", "mn", "mm"},
		{"the beginning", "phos", "phosphor bronze"},
		{"the middle", "bronze", "phosphor bronze"},
		{"too far", "scales", ""},
		{"a single letter", "x", ""},
		{"two letters begin nothing here", "ph", ""},
		{"nothing", "", ""},
		{"blanks", "  ", ""},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, suggest.Nearest(c.word, known)) })
	}
	assert.Empty(t, suggest.Nearest("stock", nil))
	assert.Equal(t, "cat", suggest.Nearest("bat", []string{"cat", "hat"}), "the earlier of two")
}

// A slip of one letter in a word that is unlike the others is always mended.
func TestNearestMendsOneSlip(t *testing.T) {
	known := []string{"neutral_fret", "saddle_spacing", "body_end_overhang", "pitch_standard_hz"}
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.SampledFrom(known).Draw(t, "word")
		at := rapid.IntRange(0, len(word)-2).Draw(t, "at")
		letter := string(rapid.RuneFrom([]rune("abcxyz")).Draw(t, "letter"))
		slip := rapid.SampledFrom([]string{
			word[:at] + word[at+1:], word[:at] + letter + word[at:], word[:at] + letter + word[at+1:],
			word[:at] + word[at+1:at+2] + word[at:at+1] + word[at+2:],
		}).Draw(t, "slip")
		assert.Equal(t, word, suggest.Nearest(slip, known))
	})
}
