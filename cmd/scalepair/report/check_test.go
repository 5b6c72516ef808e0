package report_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/unit"
	"scalepair/fan/mark"
)

// A mark that is off is to be drawn anew, and the first sentence names it where it
// is in tolerance too: two cents at fret 9 of 690 mm are 2 ln2/1200 690/2^(9/12) =
// 0.47 mm.
func TestCheckSaysWhatItFound(t *testing.T) {
	w := demo(t)
	for off, verdict := range map[unit.Length]string{
		unit.MM(0.8): "NOT IN TOLERANCE: 1 mark is off by more than 2 cents (bass 9 by ",
		unit.MM(0.4): "IN TOLERANCE: the 24 marks that were measured stand within 2 cents, but bass mark 9 itself is off. ",
	} {
		var readings []mark.Reading
		for n := 1; n <= 24; n++ {
			f := w.l.Frets[n]
			at := func(x unit.Length, step float64) unit.Length {
				if n == 9 {
					x += off
				}
				return unit.MM(math.Round(x.MM()/step) * step)
			}
			readings = append(readings,
				mark.Reading{Kind: mark.FromNut, Line: mark.Bass, Fret: n, Measured: at(f.Bass.FromNut, 0.5)},
				mark.Reading{Kind: mark.Step, Line: mark.Bass, Fret: n, From: n - 1, Measured: at(f.Bass.Step, 0.05)})
			if n == 10 {
				readings[len(readings)-1].Measured -= off
			}
		}
		o := mark.Options{}
		found, err := mark.Check(w.l, readings, o)
		require.NoError(t, err)
		r := report.NewCheck(w.in, w.l, found, o)
		require.Len(t, r.Slips, 1)
		assert.Equal(t, "bass mark 9 itself is off", r.Slips[0].Words)
		assert.Equal(t, off == unit.MM(0.8), r.Slips[0].Matters)
		var text strings.Builder
		require.NoError(t, r.Document().Write(&text, document.Options{}))
		printed := strings.Join(strings.Fields(text.String()), " ")
		assert.Contains(t, printed, verdict)
		assert.Contains(t, printed, "Do: draw bass mark 9 anew from the nut.")
	}
}

// What went wrong, and what to do, by the kind of slip.
func TestSlipsInWords(t *testing.T) {
	w := demo(t)
	for _, c := range []struct {
		f         mark.Finding
		words, do string
	}{
		{mark.Finding{Kind: mark.MarkOff, Fret: 9}, "bass mark 9 itself is off", "draw bass mark 9 anew from the nut"},
		{mark.Finding{Kind: mark.RulerSlip, Line: mark.Treble, Fret: 9}, "the ruler reading of treble mark 9 is wrong, the mark is not", "measure it again"},
		{mark.Finding{Kind: mark.StepSlip, Fret: 9, From: 7}, "the caliper step from bass mark 7 to 9 is wrong and shifts all later sums, the marks are not", "measure it again"},
		{mark.Finding{Kind: mark.MarksOff, Fret: 9}, "bass mark 9 and all after it are off together: a step slipped in the marking", "draw bass mark 9 and all after it anew from the nut"},
		{mark.Finding{Kind: mark.MarksOff, Fret: 1}, "the bass nut mark is off against all other marks", "look at the bass nut mark, and at the ruler's zero, before anything else"},
		{mark.Finding{Kind: mark.RulerMoved, Fret: 9}, "the ruler readings of bass mark 9 and all after it are off alike, the marks are not: the ruler moved", "clamp the ruler with its zero on the nut mark and take this pass again from mark 9 on"},
		{mark.Finding{Kind: mark.RulerMoved, Fret: 1}, "the whole ruler pass of the bass line is off alike: its zero did not lie on the nut mark", "lay the ruler's zero on the nut mark and take this pass again"},
		{mark.Finding{Kind: mark.OffsetOff, Line: mark.Treble}, "the treble nut lies wrong beside the bass nut, and with it the whole treble line; neither line shows it alone", "set out the treble nut and all treble marks anew from the square line"},
		{mark.Finding{Kind: mark.OffsetSlip, Line: mark.Treble}, "the nut offset was read wrong", "measure it again"},
		{mark.Finding{Kind: mark.DiagonalSlip, Line: mark.Treble, Fret: 24}, "the diagonal from bass nut to treble mark 24 was read wrong", "measure it again"},
		{mark.Finding{Kind: mark.DiagonalSlip, Line: mark.Bass, Fret: 24}, "the diagonal from treble nut to bass mark 24 was read wrong", "measure it again"},
	} {
		r := report.NewCheck(w.in, w.l, mark.Report{Slips: []mark.Slip{{Finding: c.f}}}, mark.Options{})
		assert.Equal(t, [2]string{c.words, c.do}, [2]string{r.Slips[0].Words, r.Slips[0].Do})
	}
}

// One more reading by calipers that show 0.05 mm, by a hand of 0.02 mm, is known to
// hypot(0.0144, 0.02) = 0.0247 mm, and with one known to 0.1 mm to 0.0240 mm: it
// settles what stands twice that from the tolerance.
func TestCalipersSettleMarks(t *testing.T) {
	w := demo(t)
	for mm, settled := range map[float64]int{0.55: 1, 0.556: 0, 0.65: 1} {
		found := mark.Report{Lines: [2]mark.LineResult{{Scatter: unit.MM(0.02), Marks: []mark.Result{
			{Fret: 1, Error: new(unit.MM(mm)), ErrorCents: new(unit.Cents(1)), U: new(unit.MM(0.1))}}}}}
		r := report.NewCheck(w.in, w.l, found, mark.Options{CaliperResolution: unit.MM(0.05), Tolerance: unit.MM(0.6)})
		assert.Equal(t, settled, r.Settled, "%v mm", mm)
		found.Lines[0].Marks[0].ErrorCents = new(unit.Cents(mm / 0.3))
		r = report.NewCheck(w.in, w.l, found, mark.Options{CaliperResolution: unit.MM(0.05), ToleranceCents: 2})
		assert.Equal(t, settled, r.Settled, "%v mm of two cents of 0.3 mm", mm)
	}
}
