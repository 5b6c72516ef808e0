// Package near finds the known word that a misspelt one was probably meant to
// be.
package near

import (
	"slices"
	"strings"
)

// Suggest gives the word of known that is nearest to word, or "" when none is
// near. Case and outer blanks do not count. Near means: word (three letters or
// more) begins or stands inside a known one; or at most one letter in three
// (at least one, but none in a word of one letter) was added, left out,
// changed or swapped with its neighbour.
// Of equally near words the earlier in known wins. A text of more than 60
// letters is near to none.
func Suggest(word string, known []string) string {
	w := fold(word)
	if len(w) == 0 || len(w) > longest {
		return ""
	}
	best, least := "", allowed(len(w))+1
	for _, k := range known {
		f := fold(k)
		if len(w)-len(f) >= least || len(f)-len(w) >= least {
			continue // no nearer than its letters are more: a file's worth of them is no typing slip
		}
		if d := distance(w, f); d < least {
			best, least = k, d
		}
	}
	if best == "" && len(w) >= 3 {
		best = containing(string(w), known)
	}
	return best
}

// Distance counts the letters added, left out, changed, or swapped with their
// neighbour between two words. Case and outer blanks do not count.
func Distance(a, b string) int { return distance(fold(a), fold(b)) }

// longest is from where a text is no word that was misspelt.
const longest = 60

func allowed(letters int) int {
	if letters == 1 {
		return 0
	}
	return max(1, letters/3)
}

// containing gives the first known word that begins with w, else the first
// that holds it.
func containing(w string, known []string) string {
	i := slices.IndexFunc(known, func(k string) bool { return strings.HasPrefix(string(fold(k)), w) })
	if i < 0 {
		i = slices.IndexFunc(known, func(k string) bool { return strings.Contains(string(fold(k)), w) })
	}
	if i < 0 {
		return ""
	}
	return known[i]
}

func fold(s string) []rune { return []rune(strings.ToLower(strings.TrimSpace(s))) }

// distance is Distance of folded words, by optimal string alignment.
func distance(a, b []rune) int {
	before, last := make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row := make([]int, len(b)+1)
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := last[j-1]
			if a[i-1] != b[j-1] {
				change++
			}
			row[j] = min(change, last[j]+1, row[j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last = last, row
	}
	return last[len(b)]
}
