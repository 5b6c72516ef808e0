package report

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"scalepair/cmd/scalepair/build"
	"scalepair/data/unit"
)

// columnNames names every column by its own name, else by what it differs in
// from the others. No two are alike.
func (in *Input) columnNames(asked []build.Column) []string {
	parts := make([][]string, len(asked))
	for i := range asked {
		parts[i] = in.columnParts(&asked[i])
	}
	var out []string
	seen := map[string]int{}
	for i, c := range asked {
		var unlike []string
		for k, part := range parts[i] {
			if slices.ContainsFunc(parts, func(other []string) bool { return other[k] != part }) {
				unlike = append(unlike, part)
			}
		}
		name := cmp.Or(c.Name, strings.Join(unlike, ", "), parts[i][0])
		if seen[name]++; seen[name] > 1 {
			name = fmt.Sprintf("%s (%d)", name, seen[name])
		}
		out = append(out, name)
	}
	return out
}

// columnParts are what a column may differ in: tuning, capo, pitch standard,
// pair, neutral fret, set.
func (in *Input) columnParts(c *build.Column) []string {
	var tunings, capos lines
	for _, one := range c.Request.Cases {
		tunings.say("%s", one.Name)
		capos.sayIf(one.CapoFret > 0, "capo at %d", one.CapoFret)
		capos.sayIf(one.CapoFret == 0, "no capo")
	}
	a4 := float64(c.Request.Cases[0].Pitches[0] / c.Tunings[0].OfString(1).Pitch(1))
	set := c.SetName
	if set == "" && c.Set != nil {
		set = in.Set(c.Set)
	}
	return []string{listed(tunings), listed(capos), "A4 = " + unit.Fixed(a4, 1) + " Hz", in.Pair(c.Request.Bass[0], c.Request.Treble[0]), "neutral " + neutralWords(c.Request.Neck.Neutral), set}
}
