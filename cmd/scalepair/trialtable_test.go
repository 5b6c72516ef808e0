package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/cmd/scalepair/internal/trial"
	"scalepair/cmd/scalepair/report"
)

// tabled are the commands that print tables and JSON.
var tabled = [][]string{
	{"tension"}, {"layout"}, {"advise", "--front"}, {"setout"}, {"gauges"}, {"neutral"}, {"compare"}, {"weigh"},
}

// Every figure in a table stands in the JSON too, rounded as the table has it.
func TestTrialsSayTheSameInTableAndJSON(t *testing.T) {
	overTrials(t, func(t *rapid.T, s *trials, b *trial.Build) {
		args := tabled[b.Seed%uint64(len(tabled))]
		o := s.run(t, "build", with(args, "--format", "json")...)
		if strings.Contains(o.out, `"neutral_has_no_effect": true`) {
			return // square frets have nothing to tabulate
		}
		tables := s.run(t, "build", with(args, "--format", "csv")...)
		require.Equal(t, o.code, tables.code)
		if o.code != exitDone {
			s.refused++
			return
		}
		s.accepted++
		known := figuresOf(t, o.out)
		for _, table := range tablesOf(t, tables.out) {
			for _, row := range table.rows {
				for i, cell := range row {
					f, ok := figureIn(cell)
					if !ok || toldInWords(table, row, i) {
						continue
					}
					require.True(t, known.has(f, room(table.heads[i], f)), "%v: %s: %s: %q in %q", args, table.name, table.heads[i], cell, row)
				}
			}
		}
	})
}

// with gives a command line with more behind it.
func with(args []string, more ...string) []string { return append(slices.Clone(args), more...) }

// toldInWords tells of the cells that JSON has in words, or leaves to be summed.
func toldInWords(table csvTable, row []string, column int) bool {
	return table.heads[column] == "neutral fret" || table.name == "spacing" && row[0] == "all"
}

// room is how far a printed figure may stand off the number: half a step of its
// last place, since it is rounded; a whole one for a step between two printed
// marks and for a bound, which is rounded down; and an uncertainty is never
// printed as none.
func room(head, figure string) float64 {
	step := stepOf(figure)
	switch {
	case strings.HasSuffix(head, "step mm"), strings.HasPrefix(head, "breaking load"):
		return step
	case strings.HasSuffix(head, "uncertainty") && strings.Trim(figure, "0.") == "1":
		return step
	}
	return step / 2
}

// stepOf is one in the last place of a figure.
func stepOf(figure string) float64 {
	_, after, _ := strings.Cut(figure, ".")
	return math.Pow10(-len(after))
}

// csvTable is a table of a report as CSV has it.
type csvTable struct {
	name  string
	heads []string
	rows  [][]string
}

// tablesOf parts the tables of a CSV report.
func tablesOf(t require.TestingT, text string) []csvTable {
	var out []csvTable
	for part := range strings.SplitSeq(text, "\n\n") {
		table := csvTable{}
		if head, rest, _ := strings.Cut(part, "\n"); strings.HasPrefix(head, "# ") {
			table.name, _, _ = strings.Cut(strings.TrimPrefix(head, "# "), ":")
			part = rest
		}
		rows, err := csv.NewReader(strings.NewReader(part)).ReadAll()
		require.NoError(t, err)
		table.heads, table.rows = rows[0], rows[1:]
		out = append(out, table)
	}
	return out
}

var figureCell = regexp.MustCompile(`^(?:≥ |\+|-)?(\d+(?:\.\d+)?)(?: breaks)?$`)

// figureIn gives the figure of a cell that is one, without sign, bound or
// remark.
func figureIn(cell string) (string, bool) {
	found := figureCell.FindStringSubmatch(cell)
	if found == nil {
		return "", false
	}
	return found[1], true
}

// figures are the numbers of a JSON document, without their signs.
type figures []float64

func figuresOf(t require.TestingT, text string) figures {
	var v any
	require.NoError(t, json.Unmarshal([]byte(text), &v))
	var out figures
	var walk func(v any)
	walk = func(v any) {
		switch v := v.(type) {
		case float64:
			out = append(out, math.Abs(v))
		case map[string]any:
			for _, x := range v {
				walk(x)
			}
		case []any:
			for _, x := range v {
				walk(x)
			}
		}
	}
	walk(v)
	return out
}

// has tells whether a figure is one of the numbers, or the percentage of one.
// JSON's own nine digits may move it a little further.
func (f figures) has(figure string, room float64) bool {
	want, err := strconv.ParseFloat(figure, 64)
	if err != nil {
		panic(err)
	}
	room += 1e-8 * want
	return slices.ContainsFunc(f, func(x float64) bool {
		return math.Abs(x-want) <= room || math.Abs(100*x-want) <= room
	})
}

// What JSON tells of a string or of a mark stands in its row of the table.
func TestTrialsSayTheSameInJSONAndTable(t *testing.T) {
	overTrials(t, func(t *rapid.T, s *trials, b *trial.Build) {
		d, ok := values[report.TensionJSON](t, s, "build", "tension")
		if !ok {
			s.refused++
			return
		}
		s.accepted++
		table := func(command, name string) csvTable {
			return tablesOf(t, s.run(t, "build", command, "--format", "csv", "--only", name).out)[0]
		}
		for i, tuned := range d.Tunings {
			name := "strings"
			if len(d.Tunings) > 1 {
				name = fmt.Sprintf("strings-%d", i+1)
			}
			rows := table("tension", name)
			for n, str := range tuned.Strings {
				wants := []float64{float64(str.String), str.LengthMM, str.TensionN, str.TensionTargetN, 100 * str.BreakingShareOpen, str.InharmonicityCents}
				for _, bend := range str.Bends {
					wants = append(wants, bend.BendingForceN, bend.BendDistanceMM)
				}
				requireInRow(t, rows, n, wants...)
			}
			requireInRow(t, rows, len(tuned.Strings), tuned.TotalN)
		}
		l, ok := values[report.LaidOutJSON](t, s, "build", "layout")
		require.True(t, ok)
		marks := table("layout", "marks")
		for n, m := range l.Marks {
			requireInRow(t, marks, n, float64(m.Fret), m.BassFromNutMM, m.TrebleFromNutMM, math.Abs(m.SlantDeg))
		}
		lines := table("layout", "lines")
		for n, line := range l.Strings {
			requireInRow(t, lines, n, line.LengthMM, line.AlongNutMM, math.Abs(line.NutYMM), line.AlongSaddleMM, math.Abs(line.SaddleYMM))
		}
	})
}

// requireInRow looks for numbers among the figures of a row; 0 is not known.
func requireInRow(t *rapid.T, table csvTable, row int, numbers ...float64) {
	for _, x := range numbers {
		if x == 0 {
			continue
		}
		require.True(t, slices.ContainsFunc(table.rows[row], func(cell string) bool {
			f, ok := figureIn(cell)
			return ok && figures{x}.has(f, stepOf(f)/2)
		}), "%s: %v in %q", table.name, x, table.rows[row])
	}
}
