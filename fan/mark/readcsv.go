package mark

import (
	"fmt"
	"io"
	"strings"

	"scalepair/data/csvtable"
	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/data/unit"
)

// columns of a measurement file.
var columns = []csvtable.Column{
	{Name: "line", Required: true},
	{Name: "pass"},
	{Name: "fret"},
	{Name: "from"},
	{Name: "measured", Units: []string{"mm", "in"}},
	{Name: "resolution", Units: []string{"mm", "in"}},
	{Name: "remark"},
}

// What may stand under line, and under pass.
var (
	lineWords = append(lines[:], kinds[FromBassNut:]...)
	passWords = kinds[:FromBassNut]
)

// Headings are those of a measurement file, with all of its columns.
func Headings() []string { return csvtable.Headings(columns) }

// ReadReadings reads a measurement file, one distance a row:
//
//	line,pass,fret,from,measured_mm,resolution_mm,remark
//	bass,ruler,1,,39.0,0.5,
//	bass,caliper,2,,37.10,0.05,
//	diagonal from bass nut,,,,521.5,0.5,
//	nut offset,,,,16.65,0.05,
//
// line is bass, treble, diagonal from bass nut, diagonal from treble nut or nut
// offset. pass, for bass and treble only, is ruler (from the nut) or caliper
// (the step from the mark before, or from the mark under from). fret is the
// mark; a diagonal goes to the last fret when it is empty. measured_mm or
// measured_in is what was read; a row where it is empty is a gap and is passed
// over. resolution is the least difference the tool shows, from Options when
// empty.
//
// file is the name for places; the error is a fault.List of everything that is
// wrong, and the readings are then nil. Whether a reading fits the board is
// Check's to say.
func ReadReadings(in io.Reader, file string) ([]Reading, error) {
	rows, faults := csvtable.Read(in, file, columns)
	unitless := csvtable.WithoutUnits(rows, columns)
	unitless.Report(&faults)
	var out []Reading
	for i := range rows {
		row := &rows[i]
		before := len(faults)
		r := readRow(row, unitless, &faults)
		if len(faults) == before && row.Get("measured") != "" {
			out = append(out, r)
		}
	}
	if len(faults) == 0 && len(out) == 0 {
		faults.Add(fault.Place{Input: file}, "nothing was measured", "", "enter what was read under measured_mm or measured_in")
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return out, nil
}

func readRow(row *csvtable.Row, unitless csvtable.Unitless, faults *fault.List) Reading {
	r := Reading{Place: row.Place("measured")}
	word := -1
	if row.Get("line") != "" { // a column that is missing was reported with the headings
		faults.Include(row.Place("line"), fault.About("line", suggest.Word(&word, row.Get("line"), lineWords)))
	}
	switch {
	case word == int(Bass) || word == int(Treble):
		r.Line = Line(word)
		if row.Get("pass") == "" {
			empty(row, "pass", "use "+strings.Join(passWords, " or "), faults)
		} else {
			faults.Include(row.Place("pass"), fault.About("pass", suggest.Word(&r.Kind, row.Get("pass"), passWords)))
		}
		r.marks(row, faults)
	case word > int(Treble):
		r.Kind = FromBassNut + Kind(word-len(lines))
		refuseCell(row, "pass", faults)
		refuseCell(row, "from", faults)
		r.end(row, faults)
	}
	if !unitless.At(row, "measured") {
		length, _ := row.Length("measured", faults)
		r.Measured, r.Written = length, written(row, "measured")
	}
	if !unitless.At(row, "resolution") {
		r.readResolution(row, faults)
	}
	return r
}

// marks reads which mark a row is about, and where its step begins.
func (r *Reading) marks(row *csvtable.Row, faults *fault.List) {
	fret, ok := row.Whole("fret", faults)
	if !ok && row.Get("fret") == "" {
		empty(row, "fret", "say which mark was measured", faults)
	}
	if ok && fret < 1 {
		faults.Add(row.Place("fret"), "a fret counts from 1", row.Get("fret"), "leave the nut out, from which the ruler counts")
	}
	r.Fret = fret
	if r.Kind != Step {
		refuseCell(row, "from", faults)
		return
	}
	r.From = fret - 1
	if from, ok := row.Whole("from", faults); ok {
		r.From = from
		if from < 0 || from >= fret {
			faults.Add(row.Place("from"), "a step must begin at a mark nearer the nut than its own", row.Get("from"), "0 is the nut")
		}
	}
}

// end reads the mark a diagonal ends on.
func (r *Reading) end(row *csvtable.Row, faults *fault.List) {
	if r.Kind == NutOffset {
		refuseCell(row, "fret", faults)
		return
	}
	fret, ok := row.Whole("fret", faults)
	if ok && fret < 1 {
		faults.Add(row.Place("fret"), "a fret counts from 1", row.Get("fret"), "leave it empty for the last")
	}
	r.Fret = fret
}

// coarse is from where a whole number under resolution, right behind a whole
// number under measured, is taken for the decimals of that one: no tool for
// marks shows so little (judgement). A ruler of whole millimetres stays.
const coarse = 2 * unit.Millimetre

// readResolution reads the tool's resolution, and notices a measured value that a
// decimal comma has cut in two: "6,9" is then 6 under measured and 9 under what
// follows.
func (r *Reading) readResolution(row *csvtable.Row, faults *fault.List) {
	number, next, cut := row.Cell("measured").DecimalComma()
	resolution, ok := row.Length("resolution", faults)
	sane := resolution >= finestResolution && resolution <= coarsestReadable
	switch comma := fmt.Sprintf("perhaps a decimal comma: write %q", number); {
	case cut && next.Name() == "remark":
		faults.Add(row.Place("remark"), "the remark is a bare number", row.Get("remark"), comma+", or the remark in words")
	case cut && next.Name() == "resolution" && ok && (!sane || resolution >= coarse):
		faults.Add(row.Place("resolution"), "no resolution of a measuring tool", row.Get("resolution"), comma+"; or "+resolutionRemedy())
	case ok && !sane:
		faults.Add(row.Place("resolution"), "no resolution of a measuring tool", row.Get("resolution"), resolutionRemedy())
	}
	r.Resolution = resolution
}

// written is a cell with the unit that it or its heading has.
func written(row *csvtable.Row, name string) string {
	text := row.Get(name)
	if unit.Bare(text) {
		return text + " " + row.Unit(name)
	}
	return text
}

// refuseCell reports a cell that says nothing for this row.
func refuseCell(row *csvtable.Row, name string, faults *fault.List) {
	if text := row.Get(name); text != "" {
		faults.Add(row.Place(name), fmt.Sprintf("%s means nothing in this row", name), text, "leave it empty")
	}
}

// empty reports a cell that a row needs, or the column that it needs.
func empty(row *csvtable.Row, name, remedy string, faults *fault.List) {
	if !row.Has(name) {
		remedy = fmt.Sprintf("add the column %q to the heading row: %s", name, remedy)
	}
	faults.Add(row.Place(name), name+" is empty", "", remedy)
}
