package near_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"scalepair/data/near"
)

func TestSuggest(t *testing.T) {
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
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, near.Suggest(c.word, known)) })
	}
	assert.Empty(t, near.Suggest("stock", nil))
}

func TestSuggestTakesTheEarlierOfTwo(t *testing.T) {
	assert.Equal(t, "cat", near.Suggest("bat", []string{"cat", "hat"}))
	assert.Equal(t, "hat", near.Suggest("bat", []string{"hat", "cat"}))
}

func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"nickel wound", " Nickel wound", 0}, {"nickle wound", "nickel wound", 1}, {"flatwound", "flat wound", 1},
		{"nickl wuond", "nickel wound", 2}, {"", "abc", 3}, {"brass", "bronze", 4},
	} {
		assert.Equal(t, c.want, near.Distance(c.a, c.b), "%q %q", c.a, c.b)
		assert.Equal(t, c.want, near.Distance(c.b, c.a), "%q %q", c.b, c.a)
	}
}

// A slip of one letter in a word that is unlike the others is always mended.
func TestSuggestMendsOneSlip(t *testing.T) {
	known := []string{"neutral_fret", "saddle_spacing", "body_end_overhang", "pitch_standard_hz"}
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.SampledFrom(known).Draw(t, "word")
		at := rapid.IntRange(0, len(word)-2).Draw(t, "at")
		letter := string(rapid.RuneFrom([]rune("abcxyz")).Draw(t, "letter"))
		slip := rapid.SampledFrom([]string{
			word[:at] + word[at+1:], word[:at] + letter + word[at:], word[:at] + letter + word[at+1:],
			word[:at] + word[at+1:at+2] + word[at:at+1] + word[at+2:],
		}).Draw(t, "slip")
		assert.Equal(t, word, near.Suggest(slip, known))
	})
}

// A text far longer than every known word is near none of them, and costs no
// more than its letters.
func BenchmarkALongText(b *testing.B) {
	text := strings.Repeat("tuning ", 10_000)
	known := strings.Fields(strings.Repeat("tuning baritone seven-string ", 50))
	for b.Loop() {
		if got := near.Suggest(text, known); got != "" {
			b.Fatal(got)
		}
	}
}
