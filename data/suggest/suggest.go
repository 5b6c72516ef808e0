// Package suggest finds the known word that a misspelt one was probably meant
// to be.
package suggest

import (
	"strings"

	"github.com/agext/levenshtein"
)

// Nearest returns the word of known that is nearest to word, or "" when none is
// near; of equally near words the earlier in known. Near means: a third of the
// letters, rounded, were added, left out or changed, but never all of them; or
// word, of three letters or more, is a part of the known one. Case and outer
// blanks do not count. A text of more than 60 letters is near to none.
func Nearest(word string, known []string) string {
	word = fold(word)
	if len(word) > 60 {
		return ""
	}
	best, least := "", min((len(word)+1)/3, len(word)-1)+1
	for _, k := range known {
		if d := Distance(word, k); d < least {
			best, least = k, d
		}
	}
	if best == "" && len(word) >= 3 {
		for _, k := range known {
			if strings.Contains(fold(k), word) {
				return k
			}
		}
	}
	return best
}

// Distance counts the letters added, left out or changed between two words.
// Case and outer blanks do not count.
func Distance(a, b string) int { return levenshtein.Distance(fold(a), fold(b), nil) }

func fold(s string) string { return strings.ToLower(strings.TrimSpace(s)) }
