package mark_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// measured is a clean board's readings, to be spoilt. Readings of one line stand by
// twos, ruler then caliper: fret n of the bass line at 2n-2 and 2n-1, of the treble
// line from 48 on; then the diagonals and the nut offset.
func measured(t testing.TB) []mark.Reading {
	readings := fineShop.all(layout(t), seeded(21))
	readings[96].Fret, readings[97].Fret = 24, 24
	for i, r := range readings {
		readings[i].Place.Input = r.Name()
	}
	return readings
}

func checked(t testing.TB, readings []mark.Reading) error {
	report, err := mark.Check(layout(t), readings, fineShop.options())
	if err != nil {
		assert.Equal(t, mark.Report{}, report)
	}
	return err
}

func TestCheckRefusesReadings(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func(r []mark.Reading) []mark.Reading
		want  string
	}{
		"fret beyond the last": {func(r []mark.Reading) []mark.Reading { r[2].Fret = 25; return r },
			`bass ruler fret 2: no such fret on this board ("25"); give 1 to 24`},
		"twice": {func(r []mark.Reading) []mark.Reading { return append(r, r[2]) },
			`bass ruler fret 2: entered twice ("bass ruler fret 2"); keep one row, or the mean of both`},
		"one in inches": {func(r []mark.Reading) []mark.Reading { r[10].Measured /= 25.4; return r },
			`bass ruler fret 6: this looks like inches ("8.07 mm where 205.03 mm is nominal"); head the column measured_in, or write the unit in the cell`},
		"two in inches": {func(r []mark.Reading) []mark.Reading { r[10].Measured /= 25.4; r[12].Measured /= 25.4; return r },
			`bass ruler fret 6: these look like inches (2 readings of this pass) ("8.07 mm where 205.03 mm is nominal"); head the column measured_in, or write the unit in the cell`},
		"offset in inches": {func(r []mark.Reading) []mark.Reading { r[98].Measured /= 25.4; return r },
			`nut offset: this looks like inches ("0.66 mm where 16.63 mm is nominal"); head the column measured_in, or write the unit in the cell`},
	} {
		t.Run(name, func(t *testing.T) { assert.EqualError(t, checked(t, c.spoil(measured(t))), c.want) })
	}
}

// A whole pass in the wrong unit, or under the wrong name, is said once, with
// the number of readings.
func TestCheckNoticesWholePasses(t *testing.T) {
	everywhere := func(what string) []string {
		return []string{
			"bass caliper from fret 0 to 1: these look like " + what + " (24 readings of this pass)", "bass ruler fret 1: these look like " + what,
			"diagonal from bass nut to treble mark 24: this looks like " + what, "diagonal from treble nut to bass mark 24: this looks like " + what, "nut offset: this looks like " + what,
			"treble caliper from fret 0 to 1: these look like " + what, "treble ruler fret 1: these look like " + what,
		}
	}
	for name, c := range map[string]struct {
		spoil func(*mark.Reading)
		want  []string
	}{
		"inches":                   {func(r *mark.Reading) { r.Measured /= 25.4 }, everywhere("inches")},
		"millimetres under inches": {func(r *mark.Reading) { r.Measured *= 25.4 }, everywhere("millimetres")},
		"steps under ruler": {func(r *mark.Reading) {
			if r.Kind == mark.Step && r.Line == mark.Bass {
				r.Kind = mark.FromNut
			} else if r.Kind == mark.FromNut && r.Line == mark.Bass {
				r.Kind, r.From = mark.Step, r.Fret-1
			}
		}, []string{"bass ruler fret 2: these look like distances from the nut (23 readings of this pass)",
			"bass caliper from fret 1 to 2: these look like steps from the mark before (23 readings of this pass)"}},
		"lines exchanged": {func(r *mark.Reading) {
			if r.Kind == mark.FromNut || r.Kind == mark.Step {
				r.Line = 1 - r.Line
			}
		}, []string{"bass ruler fret 1: these look like the other line's marks (24 readings of this pass)",
			"treble ruler fret 1: these look like the other line's marks (24 readings of this pass)"}},
	} {
		t.Run(name, func(t *testing.T) {
			readings := measured(t)
			for i := range readings {
				c.spoil(&readings[i])
			}
			var list fault.List
			err := checked(t, readings)
			require.ErrorAs(t, err, &list)
			assert.Len(t, list, len(c.want))
			for _, want := range c.want {
				assert.ErrorContains(t, err, want)
			}
		})
	}
}

// A few readings that happen to fit the other line are not a pass of it.
func TestOtherLinesAreCounted(t *testing.T) {
	treble := keep(measured(t), func(r mark.Reading) bool { return r.Kind == mark.FromNut && r.Line == mark.Treble })
	for i := range treble {
		treble[i].Line = mark.Bass
	}
	assert.NoError(t, checked(t, treble[10:14]), "four readings")
	assert.ErrorContains(t, checked(t, treble[10:15]), "these look like the other line's marks (5 readings of this pass)")
	bass := keep(measured(t), func(r mark.Reading) bool { return r.Kind == mark.FromNut && r.Line == mark.Bass })
	assert.NoError(t, checked(t, append(bass[:10:10], treble[15:20]...)), "five of fifteen")
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
	for at := 96; at < 99; at++ {
		for _, times := range []unit.Length{10, 100, 0.1} {
			readings := measured(t)
			readings[at].Measured *= times
			assert.ErrorContains(t, checked(t, readings), readings[at].Place.Input+": this looks like a decimal point in the wrong place")
		}
	}
}

// Two diagonals entered under each other's name would send the builder to set
// out the treble line anew. A nut that lies wrong is not taken for that.
func TestCheckNoticesExchangedDiagonals(t *testing.T) {
	readings := measured(t)
	a, b := &readings[96], &readings[97]
	require.Greater(t, max(a.Measured-b.Measured, b.Measured-a.Measured), unit.MM(2), "the diagonals must differ")
	a.Measured, b.Measured = b.Measured, a.Measured
	assert.ErrorContains(t, checked(t, readings), "diagonal from bass nut to treble mark 24: the two diagonals look exchanged (")
	a.Measured += unit.MM(2)
	b.Measured -= unit.MM(2)
	assert.NoError(t, checked(t, readings))
}

// Marks of a bass line of another length are one fault, which names that length.
func TestCheckNamesAnotherLength(t *testing.T) {
	for _, s := range []shop{fineShop, coarseShop, handShop} {
		other := layout(t, func(spec *fan.Spec) { spec.Bass += unit.MM(18) })
		var faults fault.List
		_, err := mark.Check(layout(t), s.all(other, seeded(31)), s.options())
		require.ErrorAs(t, err, &faults)
		require.Len(t, faults, 1)
		var length float64
		_, err = fmt.Sscanf(faults[0].What, "these marks fit a bass line of %f mm, and the layout has one of", &length)
		require.NoError(t, err, faults[0].What)
		assert.InDelta(t, 718, length, 0.3)
	}
}
