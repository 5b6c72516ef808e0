package main

import (
	"encoding/json"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// inSentence matches a number of prose: no part of a name or a note.
var inSentence = regexp.MustCompile(`(^|[\s(±≥/,=-])(\d+(?:\.\d+)?)([\s),.;:%°/?]|$)`)

// constants are what sentences say of the method and the model, and not of a
// result.
var constants = strings.NewReplacer(
	"up to 1 % of tension and 20 % of bending force", "", "95 % of cases", "", "95 %: ", "", "(95 %)", "", "down to 1.65", "",
	"near enough percent below 20", "", "what 1500 mm would", "", "assumed, 60 and 25 mm unless given", "",
	"assumed, 1.6 mm treble to 2.0 mm bass", "", "more than 10 %", "", "wider than its string by 0.05 mm", "",
	"Beyond about 25.0°", "",
)

// sentences are the lines of a Markdown document that are no headings, and the
// cells of its tables that hold words.
func sentences(markdown string) []string {
	var out []string
	for line := range strings.Lines(markdown) {
		switch line = strings.TrimSpace(line); {
		case line == "" || line[0] == '#':
		case line[0] == '|':
			for cell := range strings.SplitSeq(line, "|") {
				if wordy.MatchString(cell) {
					out = append(out, cell)
				}
			}
		default:
			out = append(out, line)
		}
	}
	return out
}

var wordy = regexp.MustCompile(`[a-z]{3,} .*\d|\d.* [a-z]{3,}`)

// numbersOf collects every number of a JSON value, those in its texts too.
func numbersOf(v any, to *[]float64) {
	switch v := v.(type) {
	case float64:
		*to = append(*to, math.Abs(v))
	case string:
		for _, m := range regexp.MustCompile(`\d+(\.\d+)?`).FindAllString(v, -1) {
			x, _ := strconv.ParseFloat(m, 64)
			*to = append(*to, x)
		}
	case []any:
		*to = append(*to, float64(len(v)))
		for _, e := range v {
			numbersOf(e, to)
		}
	case map[string]any:
		for key, e := range v {
			if !slices.Contains([]string{"cautions", "limits_broken", "warnings"}, key) { // sentences themselves
				numbersOf(e, to)
			}
		}
	}
}

// stands reports whether a printed number is one of a result's, rounded.
func stands(printed string, numbers []float64) bool {
	_, decimals, _ := strings.Cut(printed, ".")
	x, _ := strconv.ParseFloat(printed, 64)
	half := 0.5001 * math.Pow10(-len(decimals))
	for _, n := range numbers {
		if math.Abs(n-x) <= half {
			return true
		}
	}
	return false
}

// Every number of every sentence stands in the same result's JSON.
func TestEveryNumberOfASentenceIsAResult(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, build := range builds {
		for _, command := range []string{"gauges", "gauges --next", "advise --full --trials 200", "compare", "tension", "layout", "layout --neutral-table", "bench"} {
			name, flags, _ := strings.Cut(command, " ")
			line := name + buildPath(build) + " " + flags + " --lengths mm --forces N"
			var v any
			require.NoError(t, json.Unmarshal([]byte(resultOf(t, line+" --format json")), &v))
			var numbers []float64
			numbersOf(v, &numbers)
			for _, s := range sentences(constants.Replace(resultOf(t, line+" --format markdown"))) {
				for _, m := range inSentence.FindAllStringSubmatch(s, -1) {
					assert.True(t, stands(m[2], numbers), "%s: %s in: %s", command, m[2], s)
				}
			}
		}
	}
}
