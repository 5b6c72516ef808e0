package suggest

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"scalepair/data/fault"
)

// Word reads one of the words of an enumeration, whose values go from 0 in their
// order. Case does not count, and a blank counts as one. The fault suggests the
// word that was probably meant.
func Word[T ~int](into *T, text string, words []string) error {
	text = strings.Join(strings.Fields(text), " ")
	i := slices.IndexFunc(words, func(w string) bool { return strings.EqualFold(w, text) })
	if i >= 0 {
		*into = T(i)
		return nil
	}
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = strconv.Quote(w)
	}
	remedy := "use " + strings.Join(quoted, " or ")
	if best := Nearest(text, words); best != "" {
		remedy = fmt.Sprintf("did you mean %q?", best)
	}
	return fault.Fault{What: "no such word", Given: text, Remedy: remedy}
}
