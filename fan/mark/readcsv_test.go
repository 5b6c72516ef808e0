package mark_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan/mark"
)

func TestReadReadings(t *testing.T) {
	in := "\ufeff# Tuesday\r\n" +
		"Line,pass,fret,from,measured (mm),resolution_mm,remark\r\n" +
		"bass,ruler,1,,39.5,0.5,\r\n" +
		"bass,caliper,2,,37.10,,burr on the jaw\r\n" +
		"Treble,caliper,5,3,62.15 mm,0.05,\r\n" +
		"treble,ruler,6,,,,\r\n" +
		"diagonal from bass nut,,,,506.5,0.5,\r\n" +
		"Diagonal  from treble nut,,12,,340,,\r\n" +
		"nut offset,,,,-0.20,,\r\n"
	got, err := mark.ReadReadings(strings.NewReader(in), "m.csv")
	require.NoError(t, err)
	at := func(line, column int) fault.Place { return fault.Place{Input: "m.csv", Line: line, Column: column} }
	require.Len(t, got, 6)
	want := []mark.Reading{
		{Place: at(3, 15), Kind: mark.FromNut, Line: mark.Bass, Fret: 1, Measured: unit.MM(39.5), Written: "39.5 mm", Resolution: unit.MM(0.5)},
		{Place: at(4, 17), Kind: mark.Step, Line: mark.Bass, Fret: 2, From: 1, Measured: unit.MM(37.1), Written: "37.10 mm"},
		{Place: at(5, 20), Kind: mark.Step, Line: mark.Treble, Fret: 5, From: 3, Measured: unit.MM(62.15), Written: "62.15 mm", Resolution: unit.MM(0.05)},
		{Place: at(7, 27), Kind: mark.FromBassNut, Measured: unit.MM(506.5), Written: "506.5 mm", Resolution: unit.MM(0.5)},
		{Place: at(8, 32), Kind: mark.FromTrebleNut, Fret: 12, Measured: unit.MM(340), Written: "340 mm"},
		{Place: at(9, 15), Kind: mark.NutOffset, Measured: unit.MM(-0.2), Written: "-0.20 mm"},
	}
	for i := range want {
		assert.Equal(t, want[i], got[i])
	}
}

func TestReadReadingsInInches(t *testing.T) {
	got, err := mark.ReadReadings(strings.NewReader("line,pass,fret,measured_in,resolution_in\nbass,ruler,1,1 35/64,1/64\n"), "m.csv")
	require.NoError(t, err)
	assert.InDelta(t, 25.4*99/64, got[0].Measured.MM(), 1e-9)
	assert.InDelta(t, 25.4/64, got[0].Resolution.MM(), 1e-9)
}

func TestReadReadingsFaults(t *testing.T) {
	const head = "line,pass,fret,from,measured_mm,resolution_mm\n"
	for _, c := range []struct{ name, in, want string }{
		{"empty", "", "m.csv: the file is empty; it needs a heading row and a row for each entry"},
		{"nothing measured", head + "bass,ruler,1,,,\n", "m.csv: nothing was measured; enter what was read under measured_mm or measured_in"},
		{"unknown line", head + "bas,ruler,1,,39,\n",
			`m.csv:2:1: line: no such word ("bas"); did you mean "bass"?`},
		{"no line", head + ",ruler,1,,39,\n", "m.csv:2:1: line is empty"},
		{"unknown pass", head + "bass,tape,1,,39,\n", `m.csv:2:6: pass: no such word ("tape"); use "ruler" or "caliper"`},
		{"no pass", head + "bass,,1,,39,\n", "m.csv:2:6: pass is empty; use ruler or caliper"},
		{"no fret", head + "bass,ruler,,,39,\n", "m.csv:2:12: fret is empty; say which mark was measured"},
		{"fret 0", head + "bass,ruler,0,,39,\n", `m.csv:2:12: a fret counts from 1 ("0")`},
		{"half a fret", head + "bass,ruler,1.5,,39,\n", `m.csv:2:12: fret: not a whole number ("1.5"); write a whole number in digits, such as 3`},
		{"from under ruler", head + "bass,ruler,3,2,39,\n", `m.csv:2:14: from means nothing in this row ("2"); leave it empty`},
		{"from beyond", head + "bass,caliper,3,3,39,\n", `m.csv:2:16: a step must begin at a mark nearer the nut than its own ("3"); 0 is the nut`},
		{"pass of a diagonal", head + "diagonal from bass nut,ruler,,,500,\n", `m.csv:2:24: pass means nothing in this row ("ruler"); leave it empty`},
		{"fret of the offset", head + "nut offset,,3,,16,\n", `m.csv:2:13: fret means nothing in this row ("3"); leave it empty`},
		{"step", head + "bass,ruler,1,,39.0,50\n", `m.csv:2:20: no resolution of a measuring tool ("50"); give the least difference the tool shows, 0.0005 mm to 5 mm`},
		{"decimal comma", head + "bass,caliper,1,,6,9\n",
			`m.csv:2:19: no resolution of a measuring tool ("9"); perhaps a decimal comma: write "6.9"; or give the least difference the tool shows, 0.0005 mm to 5 mm`},
		{"decimal comma, a step that could be", head + "bass,ruler,1,,39,5\n", `m.csv:2:18: no resolution of a measuring tool ("5"); perhaps a decimal comma: write "39.5"; or`},
		{"decimal comma, zero behind", head + "bass,ruler,1,,39,0\n", `perhaps a decimal comma: write "39.0"`},
		{"decimal comma under inches", "line,pass,fret,measured_in,resolution_in\nbass,ruler,1,1,516\n", `m.csv:2:16: no resolution of a measuring tool ("516"); perhaps a decimal comma: write "1.516"`},
		{"decimal comma of an offset", head + "nut offset,,,,-0,25\n", `perhaps a decimal comma: write "-0.25"`},
		{"decimal comma in a form", "line,pass,fret,measured_mm,resolution_mm,remark\nbass,ruler,1,39,5,,\n",
			`m.csv:2: more cells than the heading has ("7 for 6"); a decimal comma? write "39.5"`},
		{"decimal comma without a step", "line,pass,fret,measured_mm,remark\nbass,ruler,1,39,5\n",
			`m.csv:2:17: the remark is a bare number ("5"); perhaps a decimal comma: write "39.5", or the remark in words`},
		{"comma", head + "bass,ruler,1,,\"39,5\",\n", `m.csv:2:15: measured: a comma is not read as a decimal point ("39,5"); write "39.5"`},
		{"nan", head + "bass,ruler,1,,nan,\n", `measured`},
		{"no unit", "line,pass,fret,measured\nbass,ruler,1,39\n", `m.csv:2:14: measured has no unit, in its heading or in its cells ("39"); name the column measured_mm or measured_in, or write a unit in every cell`},
		{"unknown column", "line,pass,fret,mesured_mm\nbass,ruler,1,39\n", `did you mean "measured_mm"?`},
		{"two faults", head + "bass,ruler,0,,39,\nbas,ruler,1,,39,\n", "m.csv:3:1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := mark.ReadReadings(strings.NewReader(c.in), "m.csv")
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.want)
			assert.Nil(t, got)
		})
	}
}

// Whole numbers side by side are no decimal comma by themselves.
func TestWholeMillimetres(t *testing.T) {
	got, err := mark.ReadReadings(strings.NewReader("line,pass,fret,measured_mm,resolution_mm,remark\nbass,ruler,1,39,1,\nbass,ruler,2,76, 5,\nbass,ruler,3,111,5 mm,7\n"), "m.csv")
	require.NoError(t, err)
	require.Len(t, got, 3)
	assert.InDelta(t, 1, got[0].Resolution.MM(), 1e-12)
	assert.InDelta(t, 5, got[2].Resolution.MM(), 1e-12)
}

// A form filled in with the plan's own numbers is read back to a board that
// passes.
func TestFormReadsBack(t *testing.T) {
	l := layout(t)
	var form bytes.Buffer
	require.NoError(t, mark.WriteForm(&form, l, unit.Millimetres))
	_, err := mark.ReadReadings(bytes.NewReader(form.Bytes()), "form.csv")
	assert.EqualError(t, err, "form.csv: nothing was measured; enter what was read under measured_mm or measured_in")
	var filled []string
	for _, row := range strings.Split(form.String(), "\n") {
		cells := strings.Split(row, ",")
		switch {
		case strings.HasPrefix(row, "bass,ruler,"), strings.HasPrefix(row, "treble,ruler,"):
			var n int
			for i := range l.Frets {
				if cells[2] == unit.Fixed(float64(i), 0) {
					n = i
				}
			}
			at := l.Frets[n].Bass.FromNut.MM()
			if cells[0] == "treble" {
				at = l.Frets[n].Treble.FromNut.MM()
			}
			cells[3] = unit.Fixed(at, 1)
		}
		filled = append(filled, strings.Join(cells, ","))
	}
	got, err := mark.ReadReadings(strings.NewReader(strings.Join(filled, "\n")), "form.csv")
	require.NoError(t, err)
	assert.Len(t, got, 48)
	report := check(t, l, got, mark.Options{})
	assert.True(t, report.Pass)
	assert.Contains(t, form.String(), "nut offset,,,,,\n")
}
