package mark_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan/mark"
)

// measured is a clean board's readings, to be spoilt.
func measured(t testing.TB) []mark.Reading {
	l, rng := layout(t), rand.New(rand.NewPCG(21, 22))
	return fineShop.measureAll(fineShop.draw(l, rng), l, rng)
}

// Readings of one line stand by twos, ruler then caliper: fret n of the bass
// line at 2n-2 and 2n-1, of the treble line 48 on.
func TestCheckRefusesReadings(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(r []mark.Reading) []mark.Reading
		want  string
	}{
		{"nothing", func(r []mark.Reading) []mark.Reading { return nil },
			`check: nothing was measured; give a reading for each mark`},
		{"fret beyond the last", func(r []mark.Reading) []mark.Reading { r[2].Fret = 25; return r },
			`bass ruler fret 25: no such fret on this board ("25"); give 1 to 24`},
		{"fret 0", func(r []mark.Reading) []mark.Reading { r[2].Fret = 0; return r },
			`bass ruler fret 0: no such fret on this board ("0"); give 1 to 24`},
		{"backward step", func(r []mark.Reading) []mark.Reading { r[3].From = 5; return r },
			`bass caliper from fret 5 to 2: a step must begin at a mark nearer the nut than its own ("from 5 to 2"); 0 is the nut`},
		{"twice", func(r []mark.Reading) []mark.Reading { return append(r, r[2]) },
			`bass ruler fret 2: entered twice ("bass ruler fret 2"); keep one row, or the mean of both`},
		{"nan", func(r []mark.Reading) []mark.Reading { r[2].MM = math.NaN(); return r },
			`bass ruler fret 2: not a finite length; measure again`},
		{"inf", func(r []mark.Reading) []mark.Reading { r[2].MM = math.Inf(1); return r },
			`bass ruler fret 2: not a finite length; measure again`},
		{"negative", func(r []mark.Reading) []mark.Reading { r[3].MM = -37; return r },
			`bass caliper from fret 1 to 2: a distance must be above 0 ("-37 mm"); leave out what was not measured, and the nut, from which the ruler counts`},
		{"far too long", func(r []mark.Reading) []mark.Reading { r[96].MM = 4000; return r },
			`diagonal from bass nut to treble mark 24: longer than any string ("4000 mm"); give at most 3000 mm`},
		{"no such line", func(r []mark.Reading) []mark.Reading { r[2].Line = 7; r[2].Place.Input = "x.csv"; return r },
			`x.csv: no such line or pass; give the bass or the treble line, the ruler or the caliper pass`},
		{"absurd step", func(r []mark.Reading) []mark.Reading { r[2].StepMM = 1e-12; return r },
			`bass ruler fret 2: not the step of a measuring tool ("1e-12 mm"); give the least difference the tool shows, 0.0005 mm to 5 mm`},
		{"out of order", func(r []mark.Reading) []mark.Reading { r[8].MM, r[10].MM = r[10].MM, r[8].MM; return r },
			`bass ruler fret 6: marks out of order: fret 6 no farther from the nut than fret 5 ("175.5 mm after 205 mm"); look whether two rows were swapped or a digit slipped`},
		{"one in inches", func(r []mark.Reading) []mark.Reading { r[10].MM /= 25.4; return r },
			`bass ruler fret 6: these look like inches ("8.0709 mm where 205.03 mm was laid out"); head the column measured_in, or write the unit in the cell`},
		{"one in centimetres", func(r []mark.Reading) []mark.Reading { r[96].MM /= 10; return r },
			`diagonal from bass nut to treble mark 24: these look like centimetres ("50.65 mm where 506.54 mm was laid out"); write them in millimetres`},
		{"offset in inches", func(r []mark.Reading) []mark.Reading { r[98].MM /= 25.4; return r },
			`nut offset: these look like inches ("0.6555 mm where 16.63 mm was laid out"); head the column measured_in, or write the unit in the cell`},
	} {
		t.Run(c.name, func(t *testing.T) {
			report, err := mark.Check(layout(t), c.spoil(measured(t)), fineShop.options())
			assert.EqualError(t, err, c.want)
			assert.Equal(t, mark.Report{}, report)
		})
	}
}

// A whole pass in the wrong unit, or under the wrong name, is said once, with
// the number of readings.
func TestCheckNoticesWholePasses(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(*mark.Reading)
		want  []string
	}{
		{"inches", func(r *mark.Reading) { r.MM /= 25.4 }, []string{
			"bass caliper from fret 0 to 1: these look like inches (24 readings of this pass)",
			"bass ruler fret 1: these look like inches (24 readings of this pass)",
			"diagonal from bass nut to treble mark 24: these look like inches",
			"diagonal from treble nut to bass mark 24: these look like inches",
			"nut offset: these look like inches",
			"treble caliper from fret 0 to 1: these look like inches (24 readings of this pass)",
			"treble ruler fret 1: these look like inches (24 readings of this pass)",
		}},
		{"millimetres under inches", func(r *mark.Reading) { r.MM *= 25.4 }, []string{
			"bass caliper from fret 0 to 1: these look like millimetres (24 readings of this pass)",
			"bass ruler fret 1: these look like millimetres (24 readings of this pass)",
			"diagonal from bass nut to treble mark 24: these look like millimetres",
			"diagonal from treble nut to bass mark 24: these look like millimetres",
			"nut offset: these look like millimetres",
			"treble caliper from fret 0 to 1: these look like millimetres (24 readings of this pass)",
			"treble ruler fret 1: these look like millimetres (24 readings of this pass)",
		}},
		{"steps under ruler", func(r *mark.Reading) {
			if r.Kind == mark.Step && r.Line == mark.Bass {
				r.Kind = mark.FromNut
			} else if r.Kind == mark.FromNut && r.Line == mark.Bass {
				r.Kind, r.From = mark.Step, r.Fret-1
			}
		}, []string{
			"bass caliper from fret 1 to 2: these look like distances from the nut (23 readings of this pass)",
			"bass ruler fret 2: these look like steps from the mark before (23 readings of this pass)",
		}},
		{"from the bridge", func(r *mark.Reading) {
			if r.Kind == mark.FromNut && r.Line == mark.Bass {
				r.MM = 700 - r.MM
			}
		}, []string{"bass ruler fret 1: these look like distances from the bridge (23 readings of this pass)"}},
		{"one fret off", func(r *mark.Reading) {
			if r.Kind == mark.FromNut && r.Line == mark.Treble && r.Fret < 24 {
				r.MM = 650 * (1 - math.Exp2(-float64(r.Fret+1)/12))
			}
		}, []string{"treble ruler fret 1: these look like the marks of the next fret (23 readings of this pass)"}},
		{"the other fret off", func(r *mark.Reading) {
			if r.Kind == mark.FromNut && r.Line == mark.Treble && r.Fret > 1 {
				r.MM = 650 * (1 - math.Exp2(-float64(r.Fret-1)/12))
			}
		}, []string{"treble ruler fret 2: these look like the marks of the fret before (23 readings of this pass)"}},
		{"lines exchanged", func(r *mark.Reading) {
			if r.Kind == mark.FromNut || r.Kind == mark.Step {
				r.Line = 1 - r.Line
			}
		}, []string{
			"bass ruler fret 1: these look like the other line's marks (24 readings of this pass)",
			"treble ruler fret 1: these look like the other line's marks (24 readings of this pass)",
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			readings := measured(t)
			for i := range readings {
				c.spoil(&readings[i])
			}
			_, err := mark.Check(layout(t), readings, fineShop.options())
			require.Error(t, err)
			var list fault.List
			require.ErrorAs(t, err, &list)
			for _, want := range c.want {
				assert.Contains(t, err.Error(), want)
			}
			if len(c.want) > 1 {
				assert.Len(t, list, len(c.want))
			}
		})
	}
}

func TestCheckRefusesOptions(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*mark.Options)
		want   string
	}{
		{"no tolerance", func(o *mark.Options) { o.Tolerance = mark.Tolerance{} },
			`tolerance: give either cents (up to 100) or mm (up to 10), above 0 ("0 cents, 0 mm"); 2 cents, or 0.2 mm, will do`},
		{"both tolerances", func(o *mark.Options) { o.Tolerance.MM = 0.3 },
			`tolerance: give either cents (up to 100) or mm (up to 10), above 0 ("3 cents, 0.3 mm"); 2 cents, or 0.2 mm, will do`},
		{"nan tolerance", func(o *mark.Options) { o.Tolerance = mark.Tolerance{Cents: math.NaN()} },
			`tolerance: give either cents (up to 100) or mm (up to 10), above 0 ("no number cents, 0 mm"); 2 cents, or 0.2 mm, will do`},
		{"negative offset tolerance", func(o *mark.Options) { o.OffsetToleranceMM = -1 },
			`nut offset tolerance: must lie between 0 and 10 mm ("-1 mm"); 0.5 mm will do`},
		{"a ruler in inches, coarse", func(o *mark.Options) { o.Ruler.StepMM = 0.19 * 25.4 * 2 },
			`ruler step: not the step of a measuring tool ("9.652 mm"); give the least difference the tool shows, 0.0005 mm to 5 mm`},
		{"coarse ruler", func(o *mark.Options) { o.Ruler.StepMM = 10 },
			`ruler step: not the step of a measuring tool ("10 mm"); give the least difference the tool shows, 0.0005 mm to 5 mm`},
		{"wild zero", func(o *mark.Options) { o.Caliper.ZeroMM = math.Inf(1) },
			`caliper accuracy: must lie between 0 and 5 mm, or 5 % of the length ("no number mm, 0 %"); lay the tool beside another to learn it`},
	} {
		t.Run(c.name, func(t *testing.T) {
			o := fineShop.options()
			c.change(&o)
			_, err := mark.Check(layout(t), measured(t), o)
			assert.EqualError(t, err, c.want)
		})
	}
	_, err := mark.Check(layout(t), measured(t)[:2], mark.Options{Tolerance: mark.DefaultTolerance()})
	assert.EqualError(t, err, `bass caliper from fret 0 to 1: no step is known for this reading; give the least difference the tool shows, 0.0005 mm to 5 mm
bass ruler fret 1: no step is known for this reading; give the least difference the tool shows, 0.0005 mm to 5 mm`)
}

// A few marks on the place of the next, or a line set out too long, are for
// Check to judge: only a whole pass is taken for a misunderstanding.
func TestFewMarksElsewhereAreNoMisunderstanding(t *testing.T) {
	readings := measured(t)
	for i, r := range readings {
		if r.Kind == mark.FromNut && r.Line == mark.Treble && r.Fret > 20 && r.Fret < 24 {
			readings[i].MM = 650 * (1 - math.Exp2(-float64(r.Fret+1)/12))
		}
	}
	_, err := mark.Check(layout(t), readings, fineShop.options())
	assert.EqualError(t, err, `treble ruler fret 23: marks out of order: fret 23 no nearer the nut than fret 24 ("487.5 mm before 487.5 mm"); look whether two rows were swapped or a digit slipped`)
}

// Two diagonals entered under each other's name would send the builder to set
// out the treble line anew. A nut that lies wrong is not taken for that.
func TestCheckNoticesExchangedDiagonals(t *testing.T) {
	readings := measured(t)
	a, b := &readings[96], &readings[97]
	require.Equal(t, []mark.Kind{mark.FromBassNut, mark.FromTrebleNut}, []mark.Kind{a.Kind, b.Kind})
	require.Greater(t, math.Abs(a.MM-b.MM), 1.5, "the diagonals must differ to be told apart")
	a.MM, b.MM = b.MM, a.MM
	_, err := mark.Check(layout(t), readings, fineShop.options())
	require.Error(t, err)
	assert.Contains(t, err.Error(), "diagonal from bass nut to treble mark 24: the two diagonals look exchanged (")
	a.Written = unit.DecimalInches.Format(unit.MM(a.MM), 3) + " in"
	_, err = mark.Check(layout(t), readings, fineShop.options())
	require.Error(t, err)
	assert.Regexp(t, `\("[\d.]+ in where [\d.]+ in was laid out, and the other way round"\)`, err.Error(), "in the unit that was written")
	a.MM += 2
	b.MM -= 2
	_, err = mark.Check(layout(t), readings, fineShop.options())
	assert.NoError(t, err)
}
