package csvtable_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/csvtable"
	"scalepair/data/fault"
)

var columns = []csvtable.Column{
	{Name: "gauge", Required: true},
	{Name: "outer", Units: []string{"mm", "in"}},
	{Name: "mass", Units: []string{"g"}},
	{Name: "pieces"},
	{Name: "remark"},
}

func rows(t *testing.T, text string) []csvtable.Row {
	t.Helper()
	got, faults := csvtable.Read(strings.NewReader(text), "r.csv", columns)
	require.NoError(t, faults.Err())
	return got
}

func TestReadKeepsEveryPlace(t *testing.T) {
	got := rows(t, "# weighed in May\ngauge, outer_mm,remark\n\n10p , 0.254, \"first, of two\"\n11p,0.279\n")
	require.Len(t, got, 2)
	assert.Equal(t, "10p", got[0].Get("gauge"))
	assert.Equal(t, "0.254", got[0].Get("outer"))
	assert.Equal(t, "mm", got[0].Unit("outer"))
	assert.Equal(t, "first, of two", got[0].Get("remark"))
	assert.Equal(t, fault.Place{Input: "r.csv", Line: 4, Column: 7}, got[0].Place("outer"))
	assert.Equal(t, fault.Place{Input: "r.csv", Line: 4}, got[0].Place("mass"), "absent column")
	assert.Equal(t, "", got[1].Get("remark"), "short row")
	assert.Equal(t, fault.Place{Input: "r.csv", Line: 5}, got[1].Place("remark"))
	assert.Equal(t, "", got[1].Unit("gauge"))
}

func TestColumnsCountCharacters(t *testing.T) {
	got := rows(t, "remark,gauge\n½ é ♯,10p\n\"½ é\",10p\n")
	assert.Equal(t, 7, got[0].Place("gauge").Column)
	assert.Equal(t, 7, got[1].Place("gauge").Column)
}

func TestReadTakesWhatSpreadsheetsWrite(t *testing.T) {
	want := rows(t, "gauge,outer_mm\n10p,0.254\n")
	for _, c := range []struct{ name, text string }{
		{"byte order mark", "\ufeffgauge,outer_mm\n10p,0.254\n"},
		{"CRLF", "gauge,outer_mm\r\n10p,0.254\r\n"},
		{"CR", "gauge,outer_mm\r10p,0.254\r"},
		{"no last line end", "gauge,outer_mm\n10p,0.254"},
		{"all quoted", "\"gauge\",\"outer_mm\"\n\"10p\",\"0.254\"\n"},
		{"heading in capitals with the unit in brackets", "Gauge,Outer (mm)\n10p,0.254\n"},
		{"trailing commas", "gauge,outer_mm,,\n10p,0.254,,\n"},
		{"rows of empty cells", ",,\ngauge,outer_mm\n,,,\n10p,0.254\n"},
		{"one comma too many", "gauge,outer_mm\n10p,0.254,\n"},
		{"comment with a comma", "\"# readings, of May\",\ngauge,outer_mm\n10p,0.254\n# end,,\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := rows(t, c.text)
			require.Len(t, got, len(want))
			assert.Equal(t, want[0].Get("gauge"), got[0].Get("gauge"))
			assert.Equal(t, want[0].Get("outer"), got[0].Get("outer"))
			assert.Equal(t, want[0].Unit("outer"), got[0].Unit("outer"))
		})
	}
}

func TestReadTakesInchMarks(t *testing.T) {
	got := rows(t, "gauge,outer,remark\n10p,1/64\",so\n11p,\"1/64\"\"\",so\n12p,3½ in,café “so”\n")
	assert.Equal(t, `1/64"`, got[0].Get("outer"))
	assert.Equal(t, `1/64"`, got[1].Get("outer"))
	assert.Equal(t, "3½ in", got[2].Get("outer"))
	assert.Equal(t, "café “so”", got[2].Get("remark"))
}

func TestReadRefuses(t *testing.T) {
	const columnsAre = "gauge, outer_mm, mass_g, pieces, remark"
	for _, c := range []struct{ name, text, want string }{
		{"empty file", "", "r.csv: the file is empty; it needs a heading row and a row for each entry"},
		{"comments only", "# a\n\n", "r.csv: the file is empty; it needs a heading row and a row for each entry"},
		{"heading only", "# a\ngauge,outer_mm\n", "r.csv:2: the file has a heading row only; add a row for each entry"},
		{"UTF-16", "\xff\xfeg\x00a\x00", `r.csv: the file is not UTF-8 text; save the sheet as "CSV UTF-8", with commas and decimal points`},
		{"an older character set", "gauge,remark\n10p,caf\xe9\n", `r.csv: the file is not UTF-8 text; save the sheet as "CSV UTF-8", with commas and decimal points`},
		{"semicolons", "gauge;outer_mm\n10p;0,254\n", `r.csv:1: the columns are separated by ';', not by commas ("gauge;outer_mm"); use commas, and write decimals with a point`},
		{"tabs", "gauge\touter_mm\n10p\t0.254\n", `r.csv:1: the columns are separated by '\t', not by commas ("gauge\touter_mm"); use commas, and write decimals with a point`},
		{"a row of semicolons", "gauge,outer_mm\n10p;0.254\n", `r.csv:2: the cells of this row are not separated by commas ("10p;0.254"); use commas, and write decimals with a point`},
		{"no heading row", "10p,0.254\n11p,0.279\n", `r.csv:1: this is no heading row ("10p,0.254"); put # before a remark; the first row names the columns: ` + columnsAre},
		{"a title above", "My strings,,\ngauge,outer_mm\n10p,0.254\n", `r.csv:1: this is no heading row ("My strings,,"); put # before a remark; the first row names the columns: ` + columnsAre},
		{"unknown column", "gauge,outre_mm\n10p,0.254\n", `r.csv:1:7: no column of this table ("outre_mm"); did you mean "outer_mm"?`},
		{"unknown column, nothing near", "gauge,zzzzzz\n10p,1\n", `r.csv:1:7: no column of this table ("zzzzzz"); the columns are ` + columnsAre},
		{"double column", "gauge,outer_mm,outer_in\n10p,1,1\n", `r.csv:1:16: the column "outer" stands here twice ("outer_in"); keep one of them`},
		{"missing column", "outer_mm,mass_g\n1,2\n", `r.csv:1: the column "gauge" is missing; add "gauge" to the heading row`},
		{"the missing column misspelt", "guage,mass_g\n10p,2\n11p,3\n", `r.csv:1:1: no column of this table ("guage"); did you mean "gauge"?`},
		{"empty required cell", "gauge,mass_g\n ,2\n", "r.csv:2:2: gauge is empty; write it in every row"},
		{"decimal comma", "gauge,outer_mm\n10p,0,254\n", `r.csv:2: more cells than the heading has ("3 for 2"); a decimal comma? write "0.254"`},
		{"decimal comma beside a whole number of its own", "gauge,pieces,outer_mm\n10p,2,0,254\n", `r.csv:2: more cells than the heading has ("4 for 3"); a decimal comma? write "0.254"`},
		{"decimal comma in a row of a form", "gauge,pieces,mass_g,remark\n10p,2,38,5,,\n", `r.csv:2: more cells than the heading has ("6 for 4"); a decimal comma? write "38.5"`},
		{"decimal comma, which of two", "gauge,outer_mm,mass_g,remark\n10p,300,3,72,,\n", `r.csv:2: more cells than the heading has ("6 for 4"); a decimal comma? write "300.3" or "3.72"`},
		{"extra cell", "gauge,outer_mm\n10p,0.254,x\n", `r.csv:2:11: a cell without a heading ("x"); put a cell that holds a comma between quotation marks, or name its column in the heading row`},
		{"cell under an empty heading", "gauge,,outer_mm\n10p,x,0.254\n", `r.csv:2:5: a cell without a heading ("x"); put a cell that holds a comma between quotation marks, or name its column in the heading row`},
		{"quotation mark left open", "gauge,remark\n10p,\"so\n11p,\n", "r.csv:2:5: a quotation mark is left open on this line; close it, and keep every cell on one line"},
		{"all at once", "gauge,outre_mm,mass_g\n10p,1,2,3\n,1,1\n11p,\"1,1\n", `r.csv:1:7: no column of this table ("outre_mm"); did you mean "outer_mm"?
r.csv:2: more cells than the heading has ("4 for 3"); a decimal comma? write "2.3"
r.csv:3:1: gauge is empty; write it in every row
r.csv:4:5: a quotation mark is left open on this line; close it, and keep every cell on one line`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, faults := csvtable.Read(strings.NewReader(c.text), "r.csv", columns)
			assert.EqualError(t, faults.Err(), c.want)
		})
	}
}

func TestReadingEndsAtItsBounds(t *testing.T) {
	_, faults := csvtable.Read(strings.NewReader("gauge,mass_g\n"+strings.Repeat("10p,1\n", 10001)), "r.csv", columns)
	assert.EqualError(t, faults.Err(), "r.csv: more than 10000 rows; name the right file")
	assert.Len(t, rows(t, "gauge,mass_g\n"+strings.Repeat("10p,1\n", 10000)), 10000)
	_, faults = csvtable.Read(strings.NewReader("gauge,remark\n10p,"+strings.Repeat("x", 4<<20)), "r.csv", columns)
	assert.EqualError(t, faults.Err(), "r.csv: the file is larger than 4 MB, which no table of this kind is; name the right file")
	for _, row := range []string{"gauge\n" + strings.Repeat(",", 1<<17) + "x", "gauge" + strings.Repeat(",x", 1<<17)} {
		_, faults := csvtable.Read(strings.NewReader(row), "r.csv", columns)
		assert.NotEmpty(t, faults)
		assert.LessOrEqual(t, len(faults), 100)
	}
	got, faults := csvtable.Read(strings.NewReader("gauge,mass_g\n"+strings.Repeat("10p,1,x\n", 10000)), "r.csv", columns)
	require.Len(t, faults, 100)
	assert.Empty(t, got)
}

func TestReadingCarriesOnAfterABadRow(t *testing.T) {
	got, faults := csvtable.Read(strings.NewReader("gauge,mass_g\n,1\n10p,2\n11p,3,4\n12p,5\n"), "r.csv", columns)
	assert.Len(t, faults, 2)
	require.Len(t, got, 2)
	assert.Equal(t, "10p", got[0].Get("gauge"))
	assert.Equal(t, "12p", got[1].Get("gauge"))
}

func TestReadReportsAFailingReader(t *testing.T) {
	_, faults := csvtable.Read(failing{}, "r.csv", columns)
	assert.EqualError(t, faults.Err(), "r.csv: cannot be read: the disk is gone; copy the file anew")
}

type failing struct{}

func (failing) Read([]byte) (int, error) { return 0, errors.New("the disk is gone") }

// A text that a spreadsheet would calculate is written so that it does not, and
// reads back as it was; numbers stay numbers.
func TestGuarded(t *testing.T) {
	for text, cell := range map[string]string{
		"=1+1": "'=1+1", "+a": "'+a", "-a": "'-a", "@sum(a1)": "'@sum(a1)", "\tx": "'\tx", "\rx": "'\rx", "=HYPERLINK(\"x\")": "'=HYPERLINK(\"x\")",
		"'=1": "''=1", "''-a": "'''-a", "- 7.3 N": "'- 7.3 N",
		"-7.3": "-7.3", "+7": "+7", "-25 1/2": "-25 1/2", "p10": "p10", "": "", "'": "'", "'n": "'n", "a=1": "a=1",
	} {
		assert.Equal(t, cell, csvtable.Guarded(text), text)
		if strings.TrimSpace(text) == text {
			assert.Equal(t, text, rows(t, "gauge,remark\np10,\""+strings.ReplaceAll(cell, `"`, `""`)+"\"\n")[0].Get("remark"), text)
		}
	}
}
