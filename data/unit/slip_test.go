package unit_test

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"

	"scalepair/data/unit"
)

// What spreadsheets, keyboards and word processors make of a number, under a
// heading in mm: each is told as what it is, with what to write.
func TestSlipsAreRecognised(t *testing.T) {
	const (
		date    = "a date stands here: a spreadsheet makes one of 1/2 or 2-1"
		anew    = "format the cells as text, and type the numbers anew"
		comma   = "a comma is not read as a decimal point"
		noRead  = "not read as a length"
		nothing = "no number stands here"
		leave   = "leave it out where nothing is known"
	)
	for _, c := range []struct{ given, what, remedy string }{
		{"#DIV/0!", "a spreadsheet's error stands here", "put the formula right, and save the sheet again"},
		{"#N/A", "a spreadsheet's error stands here", "put the formula right, and save the sheet again"},
		{"####", "the spreadsheet's column was too narrow for its number", "widen the column, and save the sheet again"},
		{"=A1*2", "a formula stands here, not its value", "type the number, or save the sheet with its values"},
		{"1-Feb", date, anew},
		{"16. Mai", date, anew},
		{"Feb-46", date, anew},
		{"2026-02-01", date, anew},
		{"01.02.2026", date, anew},
		{"1/2/2026", date, anew},
		{"-", nothing, leave},
		{"–", nothing, leave},
		{"?", nothing, leave},
		{"n/a", nothing, leave},
		{"None", nothing, leave},
		{"0x27D", "a number to base 16 stands here", "write it in plain digits"},
		{"25.5'", "feet are not read", `write inches: "25.5 in"`},
		{"2' 1.6\"", "feet are not read", `write inches: "25.5 in"`},
		{"36-37 mm", "two numbers stand here", "write one"},
		{"2.62/2.61", "two numbers stand here", "write one"},
		{"3 x 326.5", "two numbers stand here", "write one"},
		{"645 to 655 mm", "two numbers stand here", "write one"},
		{"1e99999", "no number here is so large or so small", "look whether the exponent slipped"},
		{"1 607", "blanks or apostrophes between thousands are not read", `write "1607"`},
		{"1'607.5 mm", "blanks or apostrophes between thousands are not read", `write "1607.5 mm"`},
		{"0,254", comma, `write "0.254"`},
		{"1,168", comma, `write "1.168", or "1168" where it parts thousands`},
		{"1,234.5", comma, `write "1234.5"`},
		{"1.234,5", comma, `write "1234.5"`},
		{"１９０.５", noRead, `write "190.5"`},
		{"٣٦ mm", noRead, `write "36 mm"`},
		{"36 мм", noRead, `write "36 mm"`},
		{"“0.330”", noRead, `write "0.330"`},
		{"O.33O", noRead, `write "0.330"`},
		{"3l9", noRead, `write "319"`},
		{"~637", noRead, `write "637"`},
		{"about 36 mm", noRead, `write "36 mm"`},
		{"637±1", noRead, `write "637"`},
		{"€1.40", noRead, `write "1.40"`},
		{"(1.40)", noRead, "write a number of mm and nothing else"},
		{"three", noRead, "write a number of mm and nothing else"},
		{"637 mn", `"mn" is no unit of length`, `did you mean "mm"? use mm, in, cm, m`},
		{"0.3.30", `".30" is no unit of length`, "use mm, in, cm, m"},
	} {
		t.Run(c.given, func(t *testing.T) {
			x, err := unit.ParseLengthIn(c.given, "mm")
			assert.Zero(t, x)
			checkFault(t, c.what+` (`+quoted(c.given)+`); `+c.remedy, err)
		})
	}
}

// What a message says to write is read.
func TestWhatARemedySaysIsRead(t *testing.T) {
	for _, c := range []struct {
		said string
		want float64 // mm
	}{
		{"1607.5 mm", 1607.5}, {"36 mm", 36}, {"190.5", 190.5}, {"1168", 1168}, {"25.5 in", 647.7},
	} {
		heading := "mm"
		if c.said == "25.5 in" {
			heading = ""
		}
		x, err := unit.ParseLengthIn(c.said, heading)
		assert.NoError(t, err)
		assert.InDelta(t, c.want, x.MM(), 1e-9)
	}
}

// What reads is not taken for a slip.
func TestWhatReadsIsNoSlip(t *testing.T) {
	for _, given := range []string{"1/2 in", "25-1/2 in", "25 1/2", `25.5"`, "1e-3 m", "36\u00a0mm", "5.", "+5"} {
		heading := ""
		if unit.Bare(given) {
			heading = "in"
		}
		_, err := unit.ParseLengthIn(given, heading)
		assert.NoError(t, err, given)
	}
}

func quoted(s string) string { return strconv.Quote(s) }
