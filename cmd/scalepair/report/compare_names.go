package report

import (
	"fmt"
	"strconv"
	"strings"

	"scalepair/cmd/scalepair/job"
	"scalepair/cmd/scalepair/show"
	"scalepair/fan"
)

// ColumnNames names the columns of a comparison as its report does.
func (in *Input) ColumnNames(cmp *Comparison) []string { return in.columnNames(cmp.Asked) }

// columnNames names every column by its own name, else by what it differs in
// from the others. No two are alike.
func (in *Input) columnNames(asked []job.Column) []string {
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
		seen[name]++
		if seen[name] > 1 {
			name = fmt.Sprintf("%s (%d)", name, seen[name])
		}
		out[i] = name
	}
	return out
}

// columnParts are what a column may differ in: tuning, capo, pitch, pair,
// neutral fret, set.
func (in *Input) columnParts(c *job.Column) []string {
	var tunings, capos []string
	for _, one := range c.Cases {
		tunings = append(tunings, one.Name)
		capo := "no capo"
		if one.CapoFret > 0 {
			capo = "capo at " + strconv.Itoa(one.CapoFret)
		}
		capos = append(capos, capo)
	}
	a4 := c.Tunings[0].OfString(1).FreqHz(1)
	set := c.SetName
	if set == "" {
		set = in.gauge(c.Set[0]) + " to " + in.gauge(c.Set[len(c.Set)-1])
	}
	return []string{strings.Join(tunings, " and "), strings.Join(capos, " and "),
		"A4 = " + show.Fixed(c.Cases[0].FreqsHz[0]/a4, 1) + " Hz", in.Pair(c.BassMM, c.TrebleMM),
		"neutral " + neutralWords(fan.Neutral{Fret: c.Neutral.Fret, Bridge: c.Neutral.Bridge}), set}
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
