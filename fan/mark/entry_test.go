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
		{"nan", func(r []mark.Reading) []mark.Reading { r[2].Measured = unit.MM(math.NaN()); return r },
			`bass ruler fret 2: not a finite length; measure again`},
		{"inf", func(r []mark.Reading) []mark.Reading { r[2].Measured = unit.MM(math.Inf(1)); return r },
			`bass ruler fret 2: not a finite length; measure again`},
		{"negative", func(r []mark.Reading) []mark.Reading { r[3].Measured = unit.MM(-37); return r },
			`bass caliper from fret 1 to 2: a distance must be above 0 ("-37.00 mm"); leave out what was not measured, and the nut, from which the ruler counts`},
		{"far too long", func(r []mark.Reading) []mark.Reading { r[96].Measured = unit.MM(4000); return r },
			`diagonal from bass nut to treble mark 24: longer than any string ("4000.00 mm"); give at most 3000 mm`},
		{"no such line", func(r []mark.Reading) []mark.Reading { r[2].Line = 7; r[2].Place.Input = "x.csv"; return r },
			`x.csv: no such line or pass; give the bass or the treble line, the ruler or the caliper pass`},
		{"absurd resolution", func(r []mark.Reading) []mark.Reading { r[2].Resolution = 1e-15; return r },
			`bass ruler fret 2: no resolution of a measuring tool; give the least difference the tool shows, 0.0005 mm to 5 mm`},
		{"out of order", func(r []mark.Reading) []mark.Reading {
			r[8].Measured, r[10].Measured = r[10].Measured, r[8].Measured
			return r
		},
			`bass ruler fret 6: marks out of order: fret 6 no farther from the nut than fret 5 ("175.50 mm after 205.00 mm"); look whether two rows were swapped or a digit slipped`},
		{"one in inches", func(r []mark.Reading) []mark.Reading { r[10].Measured /= 25.4; return r },
			`bass ruler fret 6: this looks like inches ("8.07 mm where 205.03 mm is nominal"); head the column measured_in, or write the unit in the cell`},
		{"a point lost", func(r []mark.Reading) []mark.Reading { r[96].Measured /= 10; return r },
			`diagonal from bass nut to treble mark 24: this looks like a decimal point in the wrong place ("50.65 mm where 506.54 mm is nominal"); look where the point belongs`},
		{"offset in inches", func(r []mark.Reading) []mark.Reading { r[98].Measured /= 25.4; return r },
			`nut offset: this looks like inches ("0.66 mm where 16.63 mm is nominal"); head the column measured_in, or write the unit in the cell`},
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
		{"inches", func(r *mark.Reading) { r.Measured /= 25.4 }, []string{
			"bass caliper from fret 0 to 1: these look like inches (24 readings of this pass)",
			"bass ruler fret 1: these look like inches (24 readings of this pass)",
			"diagonal from bass nut to treble mark 24: this looks like inches",
			"diagonal from treble nut to bass mark 24: this looks like inches",
			"nut offset: this looks like inches",
			"treble caliper from fret 0 to 1: these look like inches (24 readings of this pass)",
			"treble ruler fret 1: these look like inches (24 readings of this pass)",
		}},
		{"millimetres under inches", func(r *mark.Reading) { r.Measured *= 25.4 }, []string{
			"bass caliper from fret 0 to 1: these look like millimetres (24 readings of this pass)",
			"bass ruler fret 1: these look like millimetres (24 readings of this pass)",
			"diagonal from bass nut to treble mark 24: this looks like millimetres",
			"diagonal from treble nut to bass mark 24: this looks like millimetres",
			"nut offset: this looks like millimetres",
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
	for want, change := range map[string]func(*mark.Options){
		"tolerance: a tolerance is given twice":      func(o *mark.Options) { o.Tolerance = unit.MM(0.3) },
		"tolerance: this is out of range":            func(o *mark.Options) { o.ToleranceCents = unit.Cents(math.NaN()) },
		"nut_offset_tolerance: this is out of range": func(o *mark.Options) { o.NutOffsetTolerance = unit.MM(-1) },
		"ruler_resolution: this is out of range":     func(o *mark.Options) { o.RulerResolution = unit.MM(254) },
		"caliper_zero: this is out of range":         func(o *mark.Options) { o.CaliperZero = unit.Length(math.Inf(1)) },
	} {
		o := fineShop.options()
		change(&o)
		_, err := mark.Check(layout(t), measured(t), o)
		assert.ErrorContains(t, err, want)
	}
}

// Two readings are several; a few that happen to fit the other line are not a
// pass of it.
func TestConfusionsAreCounted(t *testing.T) {
	l, readings := layout(t), measured(t)
	readings[10].Measured /= 25.4
	readings[12].Measured /= 25.4
	_, err := mark.Check(l, readings, fineShop.options())
	assert.ErrorContains(t, err, "bass ruler fret 6: these look like inches (2 readings of this pass)")
	others := func(r mark.Reading) bool { return r.Kind == mark.FromNut && r.Line == mark.Treble }
	treble := keep(measured(t), others)
	for i := range treble {
		treble[i].Line = mark.Bass
	}
	_, err = mark.Check(l, treble[10:14], fineShop.options())
	assert.NoError(t, err, "four readings")
	_, err = mark.Check(l, treble[10:15], fineShop.options())
	assert.ErrorContains(t, err, "these look like the other line's marks (5 readings of this pass)")
	bass := keep(measured(t), func(r mark.Reading) bool { return r.Kind == mark.FromNut && r.Line == mark.Bass })
	_, err = mark.Check(l, append(bass[:10:10], treble[15:20]...), fineShop.options())
	assert.NoError(t, err, "five of fifteen")
}

func TestToleranceOfAFlag(t *testing.T) {
	for given, want := range map[string]mark.Tolerance{"100 cents": {Cents: 100}, "1 cent": {Cents: 1}, "10 mm": {Length: unit.MM(10)}} {
		var got mark.Tolerance
		require.NoError(t, got.UnmarshalText([]byte(given)))
		assert.Equal(t, want, got)
	}
	for _, given := range []string{"101 cents", "0 cents", "10.1 mm", "0 mm", "-1 cent", "3", "x cents"} {
		assert.Error(t, new(mark.Tolerance).UnmarshalText([]byte(given)), given)
	}
}

// A lost or a moved decimal point is asked after, and not answered with 'set out
// the treble line anew'.
func TestALostPointIsAskedAfter(t *testing.T) {
	for at, name := range map[int]string{96: "diagonal from bass nut to treble mark 24", 97: "diagonal from treble nut to bass mark 24", 98: "nut offset"} {
		for _, times := range []unit.Length{10, 100, 0.1} {
			readings := measured(t)
			readings[at].Measured *= times
			_, err := mark.Check(layout(t), readings, fineShop.options())
			assert.ErrorContains(t, err, name+": this looks like a decimal point in the wrong place")
		}
	}
}

// Two diagonals entered under each other's name would send the builder to set
// out the treble line anew. A nut that lies wrong is not taken for that.
func TestCheckNoticesExchangedDiagonals(t *testing.T) {
	readings := measured(t)
	a, b := &readings[96], &readings[97]
	require.Equal(t, []mark.Kind{mark.FromBassNut, mark.FromTrebleNut}, []mark.Kind{a.Kind, b.Kind})
	require.Greater(t, math.Abs((a.Measured - b.Measured).MM()), 2.0, "the diagonals must differ")
	a.Measured, b.Measured = b.Measured, a.Measured
	_, err := mark.Check(layout(t), readings, fineShop.options())
	require.Error(t, err)
	assert.Contains(t, err.Error(), "diagonal from bass nut to treble mark 24: the two diagonals look exchanged (")
	a.Measured += unit.MM(2)
	b.Measured -= unit.MM(2)
	_, err = mark.Check(layout(t), readings, fineShop.options())
	assert.NoError(t, err)
}
