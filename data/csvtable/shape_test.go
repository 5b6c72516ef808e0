package csvtable_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/csvtable"
)

// Each slip in the shape of a table is told once, whatever it does to the rows
// below.
func TestOneSlipOfShapeOneMessage(t *testing.T) {
	const good = "gauge,outer_mm,mass_g,pieces,remark\n"
	for _, c := range []struct{ name, text, want string }{
		{"no heading row", "10p,0.254,0.4,1,\n11p,0.279,0.5,1,\n",
			`r.csv:1: this is no heading row ("10p,0.254,0.4,1,"); the first row names the columns: gauge, outer_mm, mass_g, pieces, remark`},
		{"one row and no heading", "10p,0.254,0.4,1,\n",
			`r.csv:1: this is no heading row ("10p,0.254,0.4,1,"); the first row names the columns: gauge, outer_mm, mass_g, pieces, remark`},
		{"a title above", "My strings,,,,\n" + good + "10p,0.254,0.4,1,\n",
			`r.csv:1: a row stands above the heading row, which is line 2 ("My strings,,,,"); take it out, or put # before it, which makes it a remark`},
		{"headings in other words", "Saite,Dicke,Gewicht,Zahl\n10p,1,2,3\n",
			`r.csv:1: this is no heading row ("Saite,Dicke,Gewicht,Zahl"); the first row names the columns: gauge, outer_mm, mass_g, pieces, remark`},
		{"a heading row again", good + "10p,0.254,0.4,1,\ngauge,mass_g,pieces\n11p,0.5,1\n12p,x,y\n",
			`r.csv:3: a heading row in the middle of the table ("gauge,mass_g,pieces"); one table to a file: put what stands below it under the columns above, or into a file of its own`},
		{"a row of semicolons", good + "10p;0.254;0.4;1;\n11p,0.279,0.5,1,\n",
			`r.csv:2: this row is parted by semicolons, the heading by commas ("10p;0.254;0.4;1;"); part it by commas, and write decimals with a point`},
		{"bars", "| gauge | mass_g |\n| 10p | 0.4 |\n",
			"r.csv:1: the columns are parted by bars; part them by commas, and write decimals with a point"},
		{"blanks", "gauge   mass_g\n10p     0.4\n",
			"r.csv:1: the columns are parted by blanks; part them by commas, and write decimals with a point"},
		{"the note sep=;", "sep=;\ngauge;mass_g\n10p;0,4\n",
			"r.csv:1: the columns are parted by semicolons; part them by commas, and write decimals with a point"},
		{"a row of units", "gauge,outer_mm,mass_g,pieces,remark\n,mm,(g),,\n10p,0.254,0.4,1,\n",
			`r.csv:2: a row of units (",mm,(g),,"); put each unit into its heading, as in outer_mm, or behind every number`},
		{"a line break in a cell", good + "10p,0.254,0.4,1,\"long\nend\"\n11p,0.279,0.5,1,\n",
			"r.csv:2:17: a quotation mark is left open on this line; close it, and keep every cell on one line"},
		{"two line breaks in a cell", good + "10p,0.254,0.4,1,\"long\nodd, bent\nend\"\n11p,0.279,0.5,1,\n",
			"r.csv:2:17: a quotation mark is left open on this line; close it, and keep every cell on one line"},
		{"cut off", good + "10p,0.254,0.4,1,\n11p,0.279,0.",
			`r.csv:3: the file ends in the middle of this row ("11p,0.279,0."); copy the file anew, or fill the row's cells up`},
		{"curly quotation marks", good + "10p,0.254,0.4,1,“long, bent”\n",
			`r.csv:2:24: a cell without a heading ("bent”"); a cell that holds a comma stands between straight quotation marks: "so, so"`},
		{"the required column missing", "outer_mm,mass_g\n1,2\n3,4\n",
			`r.csv:1: the column "gauge" is missing; add it to the heading row as "gauge"`},
		{"the required column misspelt", "guage,mass_g\n10p,2\n11p,3\n",
			`r.csv:1:1: no column of this table ("guage"); did you mean "gauge"?`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := csvtable.Read(strings.NewReader(c.text), "r.csv", columns)
			assert.EqualError(t, err, c.want)
		})
	}
}

// What looks like a slip and is none.
func TestShapesThatWillDo(t *testing.T) {
	for _, c := range []struct {
		name, text string
		rows       int
	}{
		{"the note sep=,", "sep=,\ngauge,mass_g\n10p,1\n", 1},
		{"the same in quotation marks", "\"sep=,\"\ngauge,mass_g\n10p,1\n", 1},
		{"rows of unlike length, the last one short", "gauge,mass_g,pieces\n10p,1\n11p,2,1\n12p,3", 3},
		{"one short row and a line end", "gauge,mass_g,pieces\n10p,1,1\n12p,3\n", 2},
		{"a single row without a line end", "gauge,mass_g,pieces\n12p,3", 1},
		{"semicolons in a remark", "gauge,mass_g,remark\n10p,1,so; so; so\n", 1},
		{"a remark that is a heading", "gauge,mass_g,remark\n10p,1,mass_g\n", 1},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Len(t, rows(t, c.text), c.rows) })
	}
}

func TestReadingEndsAtItsBounds(t *testing.T) {
	many := "gauge,mass_g\n" + strings.Repeat("10p,1\n", 10001)
	_, err := csvtable.Read(strings.NewReader(many), "r.csv", columns)
	assert.EqualError(t, err, "r.csv:10002: more than 10000 rows; keep the rows that belong here")
	assert.Len(t, rows(t, "gauge,mass_g\n"+strings.Repeat("10p,1\n", 10000)), 10000)

	large := "gauge,remark\n10p," + strings.Repeat("x", 4<<20)
	_, err = csvtable.Read(strings.NewReader(large), "r.csv", columns)
	assert.EqualError(t, err, "r.csv: the file is larger than 4 MB, which no table of this kind is; name the right file, or keep the rows that belong here")

	var bad strings.Builder
	bad.WriteString("gauge,mass_g\n")
	for i := range 100000 {
		fmt.Fprintf(&bad, "10p,1,%d x\n", i)
	}
	got, faults := csvtable.Scan(strings.NewReader(bad.String()), "r.csv", columns)
	require.Len(t, faults, 100)
	assert.Empty(t, got)
}
