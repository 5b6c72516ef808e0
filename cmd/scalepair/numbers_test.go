package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
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
	"up to 1 % of tension", "", "adds up to 20 %", "", "95 % of cases", "", "95 %: ", "", "(95 %)", "", "down to 1.65", "",
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
			if x, ok := e.(float64); ok {
				*to = append(*to, leastOfWood(key, x))
			}
			if !slices.Contains([]string{"cautions", "limits_broken", "warnings", "do", "says", "advice"}, key) { // sentences themselves
				numbersOf(e, rows, to)
			}
		}
	}
}

// leastOfWood is what a blank must have at least, which is rounded up to 0.1 mm, and
// any other number as it is.
func leastOfWood(key string, x float64) float64 {
	if strings.Contains(key, "blank_length_mm") || strings.Contains(key, "blank_width_mm") {
		return math.Ceil(10*math.Abs(x)-1e-6) / 10
	}
	return math.Abs(x)
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
	found := map[string]bool{}
	for _, build := range builds {
		for _, command := range []string{"gauges", "gauges --next", "advise --full --trials 200", "compare", "tension", "layout", "layout --neutral-table", "bench"} {
			name, flags, _ := strings.Cut(command, " ")
			line := name + buildPath(build) + " " + flags + " --lengths mm --forces N"
			result, markdown := resultOf(t, line+" --format json"), resultOf(t, line+" --format markdown")
			requireNumbers(t, command, result, markdown, name == "gauges") // which speaks of its rows
			requireSaid(t, name, result, markdown, found)
		}
	}
	for _, command := range []string{"advise", "tension", "layout", "bench"} {
		for _, s := range said[command] {
			assert.True(t, found[s.sentence], "%s has it nowhere: %s", command, s.sentence)
		}
	}
}

// requireNumbers finds every number of a Markdown document's prose in the JSON of
// the same result, those of rows among them where so said.
func requireNumbers(t *testing.T, command, result, markdown string, rows bool) {
	t.Helper()
	var v any
	require.NoError(t, json.Unmarshal([]byte(result), &v))
	var all, few []float64
	numbersOf(v, true, &all)
	numbersOf(v, rows, &few)
	prose, cells := sentences(markdown)
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

// The same of a check: clean marks, three slips, a mark that is off, and a ruler
// alone.
func TestEveryNumberOfACheckIsAResult(t *testing.T) {
	t.Chdir(t.TempDir())
	found := map[string]bool{}
	for _, build := range builds {
		var l struct {
			NutOffset float64 `json:"nut_offset_mm"`
			Marks     []struct {
				Bass float64 `json:"bass_from_nut_mm"`
				Step float64 `json:"bass_step_mm"`
			} `json:"marks"`
		}
		require.NoError(t, json.Unmarshal([]byte(resultOf(t, "layout"+buildPath(build)+" --format json")), &l))
		for _, name := range []string{"clean", "slips", "mark", "ruler"} {
			file := "line,pass,fret,measured_mm\n"
			for i, m := range l.Marks {
				ruler, step := 0.0, 0.0
				switch {
				case name == "slips" && i == 8:
					ruler, step = 6, 3
				case name == "mark" && i == 8:
					ruler, step = 3, 3
				case name == "mark" && i == 9:
					step = -3
				}
				file += fmt.Sprintf("bass,ruler,%d,%.1f\n", i+1, m.Bass+ruler)
				if name != "ruler" {
					file += fmt.Sprintf("bass,caliper,%d,%.2f\n", i+1, m.Step+step)
				}
			}
			if name == "slips" {
				file += fmt.Sprintf("nut offset,,,%.2f\n", l.NutOffset+2)
			}
			require.NoError(t, os.WriteFile("marks.csv", []byte(file), 0o600))
			out := func(format string) string {
				var out, errOut bytes.Buffer
				run(t.Context(), argumentsOf(t, "check marks.csv"+buildPath(build)+" --lengths mm --format "+format), &out, &errOut)
				require.NotEmpty(t, out.String(), errOut.String())
				return out.String()
			}
			result, markdown := out("json"), out("markdown")
			requireNumbers(t, "check of "+name, result, markdown, false)
			requireSaid(t, "check", result, markdown, found)
		}
	}
	for _, s := range said["check"] {
		assert.True(t, found[s.sentence], "no check has it: %s", s.sentence)
	}
}

// said are sentences with the numbers that they give in turn, as the result's JSON
// calls them: that a number stands somewhere in the result does not make it the
// right one.
var said = map[string][]struct{ sentence, keys string }{
	"bench": {
		{`moves no note by more than (N) cents`, "rounding_cents"},
		{`at least (N) mm long and (N) mm wide`, "layout.blank_length_mm layout.blank_width_mm"},
		{`centreline lies at least (N) mm from its bass edge and (N) mm from its treble edge`, "least_centreline_from_bass_edge_mm least_centreline_from_treble_edge_mm"},
		{`the centreline (N) mm from its bass edge and the nut end's base line (N) mm from its nut end; the nut line will then cross the centreline (N) mm`,
			"blank.centreline_from_bass_edge_mm blank.base_line_from_nut_end_mm blank.nut_line_from_nut_end_mm"},
		{`(N) mm of tang and (N) mm of air`, "saw.tang_depth_mm saw.clearance_mm"},
		{`Half a kerf is (N) mm`, "saw.half_kerf_mm"},
		{`wire (N) mm longer than its slot at both ends; all pieces together take (N) mm`, "saw.overhang_mm fret_wire.sum_mm"},
		{`Its blank is (N) mm long, edge to edge`, "layout.nut_blank_mm"},
		{`stand (N) mm before the theoretical saddle line`, "saddles.saddle_travel_front_mm"},
		{`to (N) mm behind the theoretical line, (N) mm of travel`, "saddles.saddle_travel_rear_mm saddles.saddle_travel_needed_mm"},
		{`with strings (N) \(treble\) to (N) mm \(bass\)`, "saddles.action_treble_mm saddles.action_bass_mm"},
		{`crosses the centreline (N) mm before the theoretical saddle line, (N) mm behind`, "further_lines.0.in_front_of_saddle_line_mm further_lines.0.behind_last_fret_mm"},
		{`fret wire +\| +(N) mm +\| +(N) mm and`, "fret_wire.to_buy_mm fret_wire.sum_mm"},
	},
	"advise": {
		{`Pair: bass (N) mm, treble (N) mm`, "pair.bass_mm pair.treble_mm"},
		{`Fan: (N) mm of difference; nut -?(N)°, last fret -?(N)°, saddle line -?(N)°`, "pair.difference_mm pair.nut_slant_deg pair.last_fret_slant_deg pair.saddle_slant_deg"},
		{`nut to fret 1 (N) mm\.`, "pair.nut_to_fret_1_mm"},
		{`Total tension: (N) ± (N) N, [+-]?(N) % against the reference's (N) N`,
			"tunings.0.total_tension_n tunings.0.total_tension_standard_uncertainty_n tunings.0.change_from_reference_percent reference_total_tension_n"},
		{`Feel error: (N) %; worst is string (N), its tension off by [+-](N) %`, "pair.feel_error_percent pair.worst_string pair.worst_string_tension_deviation_percent"},
		{`Blank: at least (N) mm x (N) mm`, "pair.blank_length_mm pair.blank_width_mm"},
		{`(N) of (N) pairs feel as good as the best: the least error is (N) %, and up to (N) % is as good`, "pairs_as_good pairs_kept least_feel_error_percent allowed_feel_error_percent"},
		{`in (N) trials of the weighing \(seed (N)\)`, "confidence.trials confidence.seed"},
		{`(N) pairs tried, (N) kept`, "pairs_tried pairs_kept"},
	},
	"tension": {
		{`Total tension (N) ± (N) N, [+-]?(N) % against the reference's (N) N; bass half (N) N, treble half (N) N`,
			"tunings.0.total_tension_n tunings.0.total_tension_standard_uncertainty_n tunings.0.change_from_reference_percent reference_total_tension_n tunings.0.bass_half_n tunings.0.treble_half_n"},
	},
	"layout": {
		{`treble nut end lies (N) mm nearer`, "nut_offset_mm"},
		{`to fret 1 on the bass line: (N) mm`, "nut_to_fret_1_mm"},
		{`along the nut line: (N) mm`, "nut_blank_mm"},
		{`Smallest blank: (N) mm long, (N) mm wide`, "blank_length_mm blank_width_mm"},
	},
	"check": {
		{`off by more than .* \(bass 9 by (N) mm`, "lines.0.marks.8.error_mm"},
		{`Judged by the pair (N) / (N) mm`, "bass_mm treble_mm"},
		{`the (N) marks that were measured stand within`, "marks_measured"},
		{`its tolerance is (N) mm`, "nut_offset_tolerance_mm"},
		{`ruler (N) mm .*calipers (N) mm`, "ruler_resolution_mm caliper_resolution_mm"},
	},
}

// requireSaid holds the sentences of a Markdown document to their keys, and notes
// which were found.
func requireSaid(t *testing.T, command, result, markdown string, found map[string]bool) {
	t.Helper()
	var v any
	require.NoError(t, json.Unmarshal([]byte(result), &v))
	for _, s := range said[command] {
		m := regexp.MustCompile(strings.ReplaceAll(s.sentence, "(N)", `(\d+(?:\.\d+)?)`)).FindStringSubmatch(markdown)
		if m == nil {
			continue
		}
		found[s.sentence] = true
		for i, key := range strings.Fields(s.keys) {
			x, ok := valueOf(v, key).(float64)
			require.True(t, ok, "%s: no number %s", command, key)
			assert.True(t, stands(m[i+1], []float64{leastOfWood(key, x)}), "%s: %s is %v in: %s", command, key, x, m[0])
		}
	}
}

// valueOf finds a value of JSON by its keys and places, -1 for the last of a list.
func valueOf(v any, path string) any {
	for part := range strings.SplitSeq(path, ".") {
		switch one := v.(type) {
		case map[string]any:
			v = one[part]
		case []any:
			i, _ := strconv.Atoi(part)
			v = one[(i+len(one))%len(one)]
		}
	}
	return v
}
