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
	"near enough percent below 20", "", "what 1500 mm would", "", "assumed, 60.00 mm and 25.00 mm unless given", "",
	"assumed, 1.60 mm treble to 2.00 mm bass", "", "more than 10 %", "", "wider than its string by 0.05 mm", "",
	"Beyond about 25.0°", "",
)

// counted are numbers that name or count a part and are no quantities, and what a
// blank lacks, which follows from its size.
var counted = regexp.MustCompile(`(?i)(frets?|strings?|steps? 2 to) \d+|\d+ (frets|strings|pairs)|\([\d.]+ mm (short|narrow|thin)\)`)

// sentences are the lines of a Markdown document that are no headings and no
// table; cells are the cells of its tables that hold words.
func sentences(markdown string) (prose, cells []string) {
	for line := range strings.Lines(counted.ReplaceAllString(constants.Replace(markdown), "")) {
		switch line = strings.TrimSpace(line); {
		case line == "" || line[0] == '#':
		case line[0] == '|':
			for cell := range strings.SplitSeq(line, "|") {
				if wordy.MatchString(cell) {
					cells = append(cells, cell)
				}
			}
		default:
			prose = append(prose, line)
		}
	}
	return prose, cells
}

var wordy = regexp.MustCompile(`[a-z]{3,} .*\d|\d.* [a-z]{3,}`)

// numbersOf collects every number of a JSON value, those in its texts too. Of
// tables with many rows it takes none without rows: with hundreds of numbers a
// wrong one would be found by chance.
func numbersOf(v any, rows bool, to *[]float64) {
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
			if _, row := e.(map[string]any); rows || !row || len(v) < 10 {
				numbersOf(e, rows, to)
			}
		}
	case map[string]any:
		for key, e := range v {
			if !slices.Contains([]string{"cautions", "limits_broken", "warnings"}, key) { // sentences themselves
				numbersOf(e, rows, to)
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
			var all, few []float64
			numbersOf(v, true, &all)
			numbersOf(v, name == "gauges", &few) // which speaks of its rows
			prose, cells := sentences(resultOf(t, line+" --format markdown"))
			check := func(texts []string, numbers []float64) {
				for _, s := range texts {
					for _, m := range inSentence.FindAllStringSubmatch(s, -1) {
						assert.True(t, stands(m[2], numbers), "%s: %s in: %s", command, m[2], s)
					}
				}
			}
			check(prose, few)
			check(cells, all)
		}
	}
}
