package build

import (
	"bytes"
	"fmt"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// What the build file says of the work at the bench, as package fan and
// package mark take it.

// CheckOptions are those of [marking], with the resolutions of [measuring] where
// it states none.
func (r *Run) CheckOptions() mark.Options {
	o := r.Build.Marking
	o.RulerResolution, _ = r.ResolutionOf("ruler")
	o.CaliperResolution, _ = r.ResolutionOf("caliper")
	return o
}

// FurtherLines lays the lines of [[lines]] on a layout. Faults stand at the
// line's entry in the file.
func (r *Run) FurtherLines(l *fan.Layout) ([]fan.PlacedLine, error) {
	var out []fan.PlacedLine
	var faults fault.List
	for i, b := range r.Build.Lines {
		placed, err := l.Place(b)
		faults.Include(fault.Place{}, at(err, r.entry("lines", i)))
		out = append(out, placed)
	}
	return out, faults.Err()
}

// PickBlank gives the index of the blank of a name, else of the first that is large
// and thick enough; -1 for none. It is a fault when the named one is not, or when
// every blank that is large enough is too thin; that none is large enough is no
// fault, since one can be bought.
func (r *Run) PickBlank(fits []fan.BlankFit, name string) (int, error) {
	var thin fault.List
	var names []string
	for i, b := range fits {
		names = append(names, b.Blank.Name)
		thick := at(b.Thin, r.Build.Place(fmt.Sprintf("blanks[%d].thickness", i)))
		switch {
		case name == "" && b.Enough():
			return i, nil
		case name == "" && b.Fits:
			thin.Include(fault.Place{}, thick)
		case name != "" && strings.EqualFold(strings.TrimSpace(b.Blank.Name), strings.TrimSpace(name)):
			if !b.Fits {
				return -1, fault.Fault{Place: r.entry("blanks", i), What: b.Blank.Name + " is too small for this board",
					Given: r.size(b.Blank.Length, b.Blank.Width), Remedy: "at least " + r.size(b.Blank.Length-b.SpareLength, b.Blank.Width-b.SpareWidth) + ", saw allowance included"}
			}
			return i, thick
		}
	}
	if name == "" {
		return -1, thin.Err()
	}
	remedy := "list it under [[blanks]]"
	if s := suggest.Nearest(name, names); s != "" {
		remedy = fmt.Sprintf("did you mean %q?", s)
	}
	return -1, fault.Fault{Place: fault.Place{Input: "--blank"}, What: "no such blank on offer", Given: name, Remedy: remedy}
}

// size names a blank's length and width in the build's unit.
func (r *Run) size(length, width unit.Length) string {
	u := r.Build.LengthUnit
	return u.Format(length, 1) + " x " + u.Format(width, 1) + " " + u.Symbol()
}

// entry is the place of one entry of a list of tables.
func (r *Run) entry(list string, i int) fault.Place {
	return r.Build.Place(fmt.Sprintf("%s[%d]", list, i))
}

// at puts every fault of err at one place.
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
