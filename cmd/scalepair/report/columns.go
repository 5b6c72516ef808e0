package report

import (
	"fmt"
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
	out := make([]string, len(asked))
	seen := map[string]int{}
	for i, c := range asked {
		name := c.Name
		if name == "" {
			name = strings.Join(unlike(parts, i), ", ")
		}
		if name == "" {
			name = parts[i][0]
		}
		if seen[name]++; seen[name] > 1 {
			name = fmt.Sprintf("%s (%d)", name, seen[name])
		}
		out[i] = name
	}
	return out
}

// columnParts are what a column may differ in: tuning, capo, pitch standard,
// pair, neutral fret, set.
func (in *Input) columnParts(c *build.Column) []string {
	var tunings, capos []string
	for _, one := range c.Request.Cases {
		tunings = append(tunings, one.Name)
		capo := "no capo"
		if one.CapoFret > 0 {
			capo = fmt.Sprintf("capo at %d", one.CapoFret)
		}
		capos = append(capos, capo)
	}
	a4 := float64(c.Request.Cases[0].Pitches[0] / c.Tunings[0].OfString(1).Pitch(1))
	set := c.SetName
	if set == "" && c.Set != nil {
		set = in.Set(c.Set)
	}
	return []string{listed(tunings), listed(capos), "A4 = " + unit.Fixed(a4, 1) + " Hz", in.Pair(c.Request.Bass[0], c.Request.Treble[0]),
		"neutral " + neutralWords(c.Request.Neck.Neutral), set}
}

// unlike keeps the parts of one column that are not the same in all.
func unlike(parts [][]string, i int) []string {
	var out []string
	for k, part := range parts[i] {
		for _, other := range parts {
			if other[k] != part {
				out = append(out, part)
				break
			}
		}
	}
	return out
}
