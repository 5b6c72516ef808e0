package build

import (
	"bytes"
	"fmt"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// What the build file says of the work at the bench, as package fan and
// package mark take it.

// CheckOptions are the tolerances of [marking] and the tools' steps; what
// neither [marking] nor [measuring] states is package mark's default.
func (r *Run) CheckOptions() mark.Options {
	m, o := r.Build.Marking, mark.DefaultOptions()
	take := func(to *float64, l unit.Length) {
		if l > 0 {
			*to = l.MM()
		}
	}
	ruler, _ := r.rulerStep()
	calipers, _ := r.caliperStep()
	take(&o.Ruler.StepMM, ruler)
	take(&o.Ruler.ZeroMM, m.RulerZero)
	take(&o.Caliper.StepMM, calipers)
	take(&o.Caliper.ZeroMM, m.CaliperZero)
	take(&o.OffsetToleranceMM, m.NutOffsetTolerance)
	switch {
	case m.Tolerance > 0:
		o.Tolerance = mark.Tolerance{MM: m.Tolerance.MM()}
	case m.ToleranceCents > 0:
		o.Tolerance = mark.Tolerance{Cents: m.ToleranceCents.Value()}
	}
	return o
}

// FurtherLines lays the lines of [[lines]] on a layout. Faults stand at the
// line's entry in the file.
func (r *Run) FurtherLines(l *fan.Layout) ([]fan.PlacedLine, error) {
	var out []fan.PlacedLine
	var faults fault.List
	for i, b := range r.Build.Lines {
		placed, err := l.Place(b)
		if err != nil {
			faults.Include(fault.Place{}, at(err, r.entry("lines", i)))
			continue
		}
		out = append(out, placed)
	}
	return out, faults.Err()
}

// length names a length in the build's unit, for messages.
func (r *Run) length(mm float64) string {
	u := r.Build.LengthUnit
	return u.Format(unit.MM(mm), 1) + " " + u.Symbol()
}

// size names a blank's length and width.
func (r *Run) size(lengthMM, widthMM float64) string {
	u := r.Build.LengthUnit
	return u.Format(unit.MM(lengthMM), 1) + " x " + r.length(widthMM)
}

// entry is the place of one entry of a list of tables.
func (r *Run) entry(list string, i int) fault.Place {
	return r.Build.Place(fmt.Sprintf("%s[%d]", list, i))
}

// at puts every fault of err at one place, and says what it was about.
func at(err error, place fault.Place) error {
	list, ok := err.(fault.List)
	if !ok {
		return err
	}
	out := make(fault.List, len(list))
	for i, f := range list {
		out[i] = f
		out[i].Place = place
	}
	return out
}

// ReadMeasured reads the measured marks of a file. The error is a fault.List
// of everything that is wrong with it.
func ReadMeasured(path string) ([]mark.Reading, error) {
	src, err := readInput(path, "give the file of measured marks, or make a form: scalepair check --form > measured.csv")
	if err != nil {
		return nil, err
	}
	return mark.ReadReadings(bytes.NewReader(src), path)
}
