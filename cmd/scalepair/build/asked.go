package build

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Comparison is what the command line asks a comparison for. Each list holds a
// flag that may be repeated; every combination of them is a column.
type Comparison struct {
	Tunings []string // notes or names
	Retunes []string // "6=A1", or several with commas: one more tuning each
	Capos   []string // frets
	Pairs   []string // "690 / 650 mm", or one length for straight frets
	Gauges  []string // labels, "today", "reference" or "suggested"
	OneSet  bool     // the set that serves all columns best
	// Listed are the columns themselves, in place of all combinations: the texts of
	// these flags by name, and the column's under "name".
	Listed []map[string]string
}

// mostColumns bounds a comparison (judgement: more than anybody can compare,
// and a slip of the keyboard).
const mostColumns = 24

// combined gives the flags of every column: their texts by name.
func (asked Comparison) combined() []map[string]string {
	tunings := textsOf("tuning", asked.Tunings)
	if len(asked.Retunes) > 0 && len(tunings) == 0 {
		tunings = [][2]string{{}} // the build's, which no flag names
	}
	out := []map[string]string{{}}
	for _, texts := range [][][2]string{append(tunings, textsOf("retune", asked.Retunes)...),
		textsOf("capo", asked.Capos), textsOf("pair", asked.Pairs), textsOf("gauges", asked.Gauges)} {
		var next []map[string]string
		for _, before := range out {
			for _, text := range texts {
				one := maps.Clone(before)
				if text[0] != "" {
					one[text[0]] = text[1]
				}
				next = append(next, one)
			}
		}
		if next != nil {
			out = next
		}
	}
	return out
}

// textsOf sets a flag's name before each of its texts.
func textsOf(flag string, texts []string) (out [][2]string) {
	for _, text := range texts {
		out = append(out, [2]string{flag, text})
	}
	return out
}

// ofFile gives the same of the columns of [[compare]].
func (r *Run) ofFile() []map[string]string {
	var out []map[string]string
	for i, c := range r.Build.Columns {
		texts := map[string]string{"name": c.Name}
		said := func(key, flag string) {
			if text := r.given(fmt.Sprintf("compare[%d].%s", i, key)); text != "" {
				texts[flag] = text
			}
		}
		for _, row := range flagTable {
			said(lastKey(row.key), row.name)
		}
		said("scale", "pair")
		if c.Gauges != nil {
			texts["gauges"] = strings.Join(reversed(c.Gauges), ",")
		}
		out = append(out, texts)
	}
	return out
}

func isSetWord(text string) bool {
	return slices.Contains([]string{"today", "reference", "suggested"}, strings.ToLower(strings.TrimSpace(text)))
}

// parsePair reads a scale pair, bass first: "690 / 650 mm", "27 in / 25 1/2 in",
// or one length for straight frets. A length without a unit takes that of the
// other.
func parsePair(text string) (bass, treble unit.Length, err error) {
	if l, err := unit.ParseLength(text); err == nil && isScale(l) {
		return l, l, nil
	}
	for i := range text {
		if text[i] != '/' {
			continue
		}
		left, right := text[:i], text[i+1:]
		treble, err := unit.ParseLength(right)
		bass, bare := unit.ParseLength(left)
		if bare != nil {
			bass, bare = unit.ParseLength(left + strings.TrimLeft(right, " 0123456789./½¼¾-"))
		}
		if err == nil && bare == nil && isScale(bass) && isScale(treble) {
			return bass, treble, nil
		}
	}
	return 0, 0, fault.Fault{What: "not a scale pair", Given: text,
		Remedy: `write bass and treble with their unit, such as "690 / 650 mm", or one length for straight frets, from 200 to 2000 mm`}
}

func isScale(l unit.Length) bool { return l >= 200*unit.Millimetre && l <= 2000*unit.Millimetre }
