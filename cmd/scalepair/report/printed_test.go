package report_test

import (
	"math"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/show"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension/choice"
)

// system is a choice of printed units, with what a millimetre and a newton are
// in them.
type system struct {
	show.Units
	perMM, perN float64
}

// An inch is 25.4 mm, a pound-force 4.4482216152605 N, both exactly.
var systems = map[string]system{
	"mm and N":   {show.Units{}, 1, 1},
	"in and lbf": {show.Units{Length: unit.DecimalInches, Force: unit.PoundsForce}, 1 / 25.4, 1 / 4.4482216152605},
}

// printed is a report whose tables are held column by column against the values
// that their heads name.
type printed struct {
	system
	r *show.Report
}

func (p printed) table(t *testing.T, name string) *show.Table {
	t.Helper()
	for _, b := range p.r.Blocks {
		if table, ok := b.(*show.Table); ok && table.Name == name {
			return table
		}
	}
	require.Fail(t, "no such table", name)
	return nil
}

// absent marks a value that there is not: a dash is printed.
var absent = math.NaN()

// column is what a column is to print, row by row.
type column struct {
	head  string
	scale float64
	value func(row int) float64
}

func (p printed) plain(head string, value func(row int) float64) column {
	return column{head, 1, value}
}

// mm is a column of lengths, given in millimetres; N one of forces, in newtons.
func (p printed) mm(head string, value func(row int) float64) column {
	return column{head + " " + p.Length.Symbol(), p.perMM, value}
}

func (p printed) newtons(head string, value func(row int) float64) column {
	return column{head + " " + p.Force.Symbol(), p.perN, value}
}

// degrees is a column of angles, given in radians; percent one of shares.
func (p printed) degrees(head string, value func(row int) float64) column {
	return column{head, 180 / math.Pi, value}
}

func (p printed) percent(head string, value func(row int) float64) column {
	return column{head, 100, value}
}

var figure = regexp.MustCompile(`[-+]?\d+(?:\.(\d+))?`)

// same wants a cell's number, rounded to the digits it is printed with, to be
// the value.
func (p printed) same(t *testing.T, cell string, want float64, about ...any) {
	t.Helper()
	if math.IsNaN(want) {
		assert.Equal(t, "–", cell, about...)
		return
	}
	m := figure.FindStringSubmatch(cell)
	require.NotNil(t, m, "%q: %v", cell, about)
	got, err := strconv.ParseFloat(m[0], 64)
	require.NoError(t, err)
	assert.InDelta(t, want, got, 0.5*math.Pow(10, -float64(len(m[1])))*(1+1e-6), about...)
}

// holds compares a table's columns. Every column of figures must be among them,
// so that none is printed that nothing holds.
func (p printed) holds(t *testing.T, name string, rows int, columns ...column) {
	t.Helper()
	table := p.table(t, name)
	require.Len(t, table.Rows, rows, name)
	seen := map[string]bool{}
	for _, c := range columns {
		at := -1
		for k, head := range table.Columns {
			if head.Head == c.head {
				at = k
			}
		}
		require.GreaterOrEqual(t, at, 0, "table %s has no column %q: %+v", name, c.head, table.Columns)
		seen[c.head] = true
		for i, row := range table.Rows {
			p.same(t, row[at], c.value(i)*c.scale, "table %s, column %s, row %d", name, c.head, i)
		}
	}
	for _, head := range table.Columns {
		if head.Align == show.Right {
			assert.True(t, seen[head.Head], "table %s: nothing holds column %q", name, head.Head)
		}
	}
}

// benchWork is the demo on one pair, with one set, as far as it is printed.
type benchWork struct {
	j *build.Run
	p *choice.Plan
	d *choice.Detail
	l *fan.Layout
	s *build.SetOut
}

func demoBench(t *testing.T, u show.Units) benchWork {
	t.Helper()
	j, err := build.Load(demoFile, flags(t, "--bass", "700 mm", "--treble", "650 mm", "--gauges", "w56 w44 w34 w24 p17 p13"))
	require.NoError(t, err)
	w := benchWork{j: j}
	w.p, err = j.Plan()
	require.NoError(t, err)
	pick, err := j.Pick()
	require.NoError(t, err)
	w.d, err = w.p.Detail(pick.Bass, pick.Treble, pick.Gauges)
	require.NoError(t, err)
	w.l, err = fan.New(w.d.Spec)
	require.NoError(t, err)
	w.s, err = j.SetOut(w.l, w.d, build.SetOutOptions{Resolution: j.Calipers(u.Length)})
	require.NoError(t, err)
	return w
}

func number(row int) float64 { return float64(row + 1) }

const demoFile = "../../../data/demo/build.toml"

// flags are those of a command line.
func flags(t *testing.T, args ...string) *build.Flags {
	t.Helper()
	f, err := build.FlagsOf(args...)
	require.NoError(t, err)
	return f
}
