package gauges

import (
	"slices"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/suggest"
)

// wordAmong finds a word of the build file or the readings among those that a
// key may have; what names the key in the fault.
func wordAmong[T ~int](what string, text []byte, words []string) (T, error) {
	if i := slices.Index(words, labelKey(string(text))); i >= 0 {
		return T(i), nil
	}
	remedy := "write " + strings.Join(words, ", ")
	if best := suggest.Nearest(string(text), words); best != "" {
		remedy = "did you mean \"" + best + "\"? " + remedy
	}
	return 0, fault.Fault{What: what + " does not know this word", Given: string(text), Remedy: remedy}
}
