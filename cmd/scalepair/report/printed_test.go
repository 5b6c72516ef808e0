package report_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/job"
	"scalepair/cmd/scalepair/report"
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
	j *job.Job
	p *choice.Plan
	d *choice.Detail
	l *fan.Layout
	s *job.SetOut
}

func demoBench(t *testing.T, u show.Units) benchWork {
	t.Helper()
	j, err := job.Load(demoFile, flags(t, "--bass", "700 mm", "--treble", "650 mm", "--gauges", "w56 w44 w34 w24 p17 p13"))
	require.NoError(t, err)
	w := benchWork{j: j}
	w.p, err = j.Plan()
	require.NoError(t, err)
	pick, err := j.Pick()
	require.NoError(t, err)
	w.d, err = w.p.Detail(pick.BassMM, pick.TrebleMM, pick.Gauges)
	require.NoError(t, err)
	w.l, err = fan.New(w.d.Spec)
	require.NoError(t, err)
	w.s, err = j.SetOut(w.l, w.d, job.SetOutOptions{Resolution: j.Calipers(u.Length)})
	require.NoError(t, err)
	return w
}

func number(row int) float64 { return float64(row + 1) }

func TestStringsPrintWhatTheirHeadsName(t *testing.T) {
	for name, system := range systems {
		t.Run(name, func(t *testing.T) {
			w := demoBench(t, system.Units)
			p := printed{system, report.Tension(&report.Input{Job: w.j, Plan: w.p, Units: system.Units}, w.d)}
			one := func(i int) *choice.CaseDetail { return &w.d.Strings[i].Cases[0] }
			bend := func(k int, value func(b choice.BendDetail) float64) func(i int) float64 {
				return func(i int) float64 {
					if bends := one(i).Bends; bends != nil && bends[k].Err == nil {
						return value(bends[k])
					}
					return absent
				}
			}
			bendingForce := func(b choice.BendDetail) float64 { return b.Bend.BendingForceN }
			travel := func(b choice.BendDetail) float64 { return 1000 * b.Bend.BendDistanceM }
			columns := []column{
				p.plain("string", number),
				p.mm("own length", func(i int) float64 { return w.l.Strings[i].Length.MM() }),
				p.newtons("tension", func(i int) float64 { return one(i).TensionN }),
				p.percent("off target %", func(i int) float64 { return one(i).TensionN/w.d.Strings[i].TargetN - 1 }),
				p.newtons("wanted", func(i int) float64 { return w.d.Strings[i].TargetN }),
				p.percent("breaking share open %", func(i int) float64 { return one(i).ShareOpen }),
				p.percent("breaking share bent %", func(i int) float64 {
					if one(i).Bends == nil {
						return absent
					}
					return math.Max(one(i).Bends[0].Share, one(i).Bends[1].Share)
				}),
				p.plain("inharmonicity cents", func(i int) float64 { return one(i).InharmonicityCents }),
			}
			for k, fret := range []string{"5", "12"} {
				force, length := p.Force.Symbol(), p.Length.Symbol()
				columns = append(columns,
					column{"bending force " + force + " at fret " + fret, p.perN, bend(k, bendingForce)},
					column{"travel " + length + " at fret " + fret, p.perMM, bend(k, travel)})
			}
			p.holds(t, "strings", 6, columns...)
			table := p.table(t, "strings")
			for i, row := range table.Rows {
				_, u, _ := strings.Cut(row[4], " ± ")
				p.same(t, u, one(i).UTensionN*p.perN, "uncertainty of string %d", i+1)
			}
			total, u, _ := strings.Cut(table.Foot[4], " ± ")
			p.same(t, total, w.d.Totals[0].TensionN*p.perN, "total")
			p.same(t, u, w.d.Totals[0].UTensionN*p.perN, "uncertainty of the total")
		})
	}
}

// demoAdvice is what the demo's advice is printed from.
func demoAdvice(t *testing.T) (*report.Input, *report.Advice) {
	t.Helper()
	j, err := job.Load(demoFile, nil)
	require.NoError(t, err)
	plan, err := j.Plan()
	require.NoError(t, err)
	a := &report.Advice{Result: plan.Search()}
	best := a.Result.Best[0]
	a.Confidence = plan.Confidence(a.Result, j.Stock.Drawer(), 100, 1)
	a.Best, err = plan.Detail(best.BassMM, best.TrebleMM, best.Gauges)
	require.NoError(t, err)
	a.Layout, err = fan.New(a.Best.Spec)
	require.NoError(t, err)
	return &report.Input{Job: j, Plan: plan}, a
}

func TestAdvicePrintsWhatItsHeadsName(t *testing.T) {
	for name, system := range systems {
		t.Run(name, func(t *testing.T) {
			in, a := demoAdvice(t)
			in.Units = system.Units
			p := printed{system, report.Advise(in, a)}

			of := func(list []choice.Candidate, value func(c choice.Candidate) float64) func(i int) float64 {
				return func(i int) float64 { return value(list[i]) }
			}
			bass := func(c choice.Candidate) float64 { return c.BassMM }
			treble := func(c choice.Candidate) float64 { return c.TrebleMM }
			difference := func(c choice.Candidate) float64 { return c.BassMM - c.TrebleMM }
			tension := func(c choice.Candidate) float64 { return c.TensionMisfit }
			bendingForce := func(c choice.Candidate) float64 { return c.BendingForceMisfit }
			saddle := func(c choice.Candidate) float64 { return c.SaddleSlantRad }
			pairs := a.Result.Best
			p.holds(t, "pairs", len(pairs), p.plain("rank", number),
				p.mm("bass", of(pairs, bass)), p.mm("treble", of(pairs, treble)), p.mm("difference", of(pairs, difference)),
				p.plain("tension misfit %", of(pairs, tension)), p.plain("bending force misfit %", of(pairs, bendingForce)),
				p.plain("overtone misfit %", of(pairs, func(c choice.Candidate) float64 { return c.OvertoneMisfit })),
				p.degrees("nut slant °", of(pairs, func(c choice.Candidate) float64 { return c.NutSlantRad })),
				p.degrees("last fret slant °", of(pairs, func(c choice.Candidate) float64 { return c.LastSlantRad })),
				p.degrees("saddle slant °", of(pairs, saddle)),
				p.mm("nut to fret 1", of(pairs, func(c choice.Candidate) float64 { return c.BassMM * fan.K(1) })),
				p.mm("blank length", of(pairs, func(c choice.Candidate) float64 { return c.BlankLengthMM })))
			front := a.Result.Front
			p.holds(t, "front", len(front), p.mm("difference", of(front, difference)), p.mm("bass", of(front, bass)), p.mm("treble", of(front, treble)),
				p.plain("tension misfit %", of(front, tension)), p.plain("bending force misfit %", of(front, bendingForce)), p.degrees("saddle slant °", of(front, saddle)))
			standing := a.Confidence.Standing
			shown := len(p.table(t, "confidence").Rows)
			require.GreaterOrEqual(t, shown, len(pairs))
			p.holds(t, "confidence", shown, p.plain("rank", number),
				p.mm("bass", func(i int) float64 { return standing[i].BassMM }), p.mm("treble", func(i int) float64 { return standing[i].TrebleMM }),
				p.mm("difference", func(i int) float64 { return difference(standing[i].Candidate) }),
				p.percent("wins % of draws", func(i int) float64 { return standing[i].Wins }),
				p.percent("beats the best % of draws", func(i int) float64 { return standing[i].BeatsBest }))
		})
	}
}
