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

// Columns are all that a measurement file may have.
func Columns() []csvtable.Column { return columns }

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

// finest and coarsest are what a tool for marks may show (judgement).
const finest, coarsest unit.Length = 0.0005 * unit.Millimetre, 5 * unit.Millimetre

// coarse is from where a whole number under resolution, right behind a whole
// number under measured, is taken for the decimals of that one: no tool for
// marks shows so little (judgement). A ruler of whole millimetres stays.
const coarse = 2 * unit.Millimetre

func readRow(row *csvtable.Row, unitless csvtable.Unitless, faults *fault.List) Reading {
	r, line := Reading{Place: row.Place("measured")}, -1
	if row.Get("line") != "" { // a column that is missing was reported with the headings
		faults.Include(row.Place("line"), fault.About("line", suggest.Word(&line, row.Get("line"), lineWords)))
	}
	if line < 0 {
		return r
	}
	onLine := line < len(lines)
	if r.Line = Line(line); !onLine {
		r.Line, r.Kind = Bass, FromBassNut+Kind(line-len(lines))
	} else if r.needs(row, "pass", "use "+strings.Join(passWords, " or "), faults) {
		faults.Include(row.Place("pass"), fault.About("pass", suggest.Word(&r.Kind, row.Get("pass"), passWords)))
	}
	r.marks(row, onLine, faults)
	if !unitless.InRow(row) {
		r.length(row, faults)
	}
	return r
}

// needs reports whether a cell that a row needs is there; where not it is a fault of
// the cell, or of the column.
func (r *Reading) needs(row *csvtable.Row, name, remedy string, faults *fault.List) bool {
	if !row.Has(name) {
		remedy = fmt.Sprintf("add the column %q to the heading row: %s", name, remedy)
	}
	if row.Get(name) == "" {
		faults.Add(row.Place(name), name+" is empty", "", remedy)
	}
	return row.Get(name) != ""
}

// marks reads which mark a row is about, and where its step begins, and reports
// cells that say nothing for its kind.
func (r *Reading) marks(row *csvtable.Row, onLine bool, faults *fault.List) {
	for name, means := range map[string]bool{"pass": onLine, "fret": r.Kind != NutOffset, "from": r.Kind == Step} {
		if text := row.Get(name); text != "" && !means {
			faults.Add(row.Place(name), name+" means nothing in this row", text, "leave it empty")
		}
	}
	fret, ok := row.Whole("fret", faults)
	if onLine {
		r.needs(row, "fret", "say which mark was measured", faults)
	}
	if r.Fret = fret; ok && fret < 1 {
		faults.Add(row.Place("fret"), "a fret counts from 1", row.Get("fret"), "leave out the nut, from which the ruler counts")
	}
	if r.Kind != Step {
		return
	}
	r.From = fret - 1
	if from, ok := row.Whole("from", faults); ok {
		if r.From = from; from < 0 || from >= fret {
			faults.Add(row.Place("from"), "a step must begin at a mark nearer the nut than its own", row.Get("from"), "0 is the nut")
		}
	}
}

// length reads what was measured and the tool's resolution, and notices a measured
// value that a decimal comma has cut in two: "6,9" is then 6 under measured and 9
// under what follows.
func (r *Reading) length(row *csvtable.Row, faults *fault.List) {
	measured, ok := row.Length("measured", faults)
	r.Measured, r.Written = measured, row.Get("measured")
	if unit.Bare(r.Written) {
		r.Written += " " + row.Unit("measured")
	}
	if ok && measured <= 0 && r.Kind != NutOffset {
		faults.Add(r.Place, "a distance must be above 0", r.Written, "leave out what was not measured, and the nut, from which the ruler counts")
	}
	number, next, cut := row.Cell("measured").DecimalComma()
	comma := fmt.Sprintf("perhaps a decimal comma: write %q", number)
	if cut && next.Name() == "remark" {
		faults.Add(next.Place(), "the remark is a bare number", next.Text(), comma+", or the remark in words")
	}
	if r.Resolution, ok = row.Length("resolution", faults); !ok {
		return
	}
	remedy := fmt.Sprintf("give the least difference the tool shows, %v to %v", finest, coarsest)
	if cut = cut && next.Name() == "resolution"; cut {
		remedy = comma + "; or " + remedy
	}
	if !(r.Resolution >= finest && r.Resolution <= coarsest) || cut && r.Resolution >= coarse {
		faults.Add(row.Place("resolution"), "no resolution of a measuring tool", row.Get("resolution"), remedy)
	}
}
