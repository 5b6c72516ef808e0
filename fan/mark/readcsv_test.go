package mark_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
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

// Of the slips of entry, those that no file of testdata/bad/marks has.
func TestReadReadingsFaults(t *testing.T) {
	const head = "line,pass,fret,from,measured_mm,resolution_mm\n"
	for name, c := range map[string]struct{ in, want string }{
		"fret 0":                     {head + "bass,ruler,0,,39,\n", `m.csv:2:12: a fret counts from 1 ("0"); leave out the nut, from which the ruler counts`},
		"from under ruler":           {head + "bass,ruler,3,2,39,\n", `m.csv:2:14: from means nothing in this row ("2"); leave it empty`},
		"from its own mark":          {head + "bass,caliper,3,3,39,\n", `m.csv:2:16: a step must begin at a mark nearer the nut than its own ("3"); 0 is the nut`},
		"pass of a diagonal":         {head + "diagonal from bass nut,ruler,,,500,\n", `m.csv:2:24: pass means nothing in this row ("ruler"); leave it empty`},
		"a comma, and a step's size": {head + "bass,ruler,1,,39,5\n", `m.csv:2:18: no resolution of a measuring tool ("5"); perhaps a decimal comma: write "39.5"; or`},
		"a comma, zero behind":       {head + "bass,ruler,1,,39,0\n", `perhaps a decimal comma: write "39.0"`},
		"a comma under inches":       {"line,pass,fret,measured_in,resolution_in\nbass,ruler,1,1,516\n", `m.csv:2:16: no resolution of a measuring tool ("516"); perhaps a decimal comma: write "1.516"`},
		"a comma of an offset":       {head + "nut offset,,,,-0,25\n", `perhaps a decimal comma: write "-0.25"`},
		"a comma, a remark":          {"line,pass,fret,measured_mm,remark\nbass,ruler,1,39,5\n", `m.csv:2:17: the remark is a bare number ("5"); perhaps a decimal comma: write "39.5", or the remark in words`},
		"two faults":                 {head + "bass,ruler,0,,39,\nbas,ruler,1,,39,\n", "m.csv:3:1"},
	} {
		t.Run(name, func(t *testing.T) {
			got, err := mark.ReadReadings(strings.NewReader(c.in), "m.csv")
			assert.ErrorContains(t, err, c.want)
			assert.Nil(t, got)
		})
	}
}

// Whole numbers side by side are no decimal comma by themselves.
func TestWholeMillimetres(t *testing.T) {
	got, err := mark.ReadReadings(strings.NewReader("line,pass,fret,measured_mm,resolution_mm,remark\nbass,ruler,1,39,1,\nbass,ruler,2,76, 5,\nbass,ruler,3,111,5 mm,7\n"), "m.csv")
	require.NoError(t, err)
	require.Len(t, got, 3)
	assert.Equal(t, [2]unit.Length{unit.MM(1), unit.MM(5)}, [2]unit.Length{got[0].Resolution, got[2].Resolution})
}

// A form filled in with the layout's own numbers is read back to a board that
// passes.
func TestFormReadsBack(t *testing.T) {
	l := layout(t)
	var form bytes.Buffer
	require.NoError(t, mark.WriteForm(&form, l, unit.Millimetres))
	assert.Contains(t, form.String(), "nut offset,,,,,\n")
	filled := form.String()
	for n, f := range l.Frets[1:] {
		for line, m := range map[string]fan.Mark{"bass": f.Bass, "treble": f.Treble} {
			row := fmt.Sprintf("%s,ruler,%d,", line, n+1)
			filled = strings.Replace(filled, row, row+unit.Fixed(m.FromNut.MM(), 1), 1)
		}
	}
	got, err := mark.ReadReadings(strings.NewReader(filled), "form.csv")
	require.NoError(t, err)
	assert.Len(t, got, 48)
	assert.True(t, check(t, l, got, mark.Options{}).Pass)
}
