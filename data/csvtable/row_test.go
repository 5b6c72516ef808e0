package csvtable_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"scalepair/data/csvtable"
	"scalepair/data/fault"
)

func TestCellsAsQuantities(t *testing.T) {
	got := rows(t, "gauge,outer_in,mass,pieces\na,1/64,0.43 g,2\nb,0.010 in,430 mg,\n")
	var faults fault.List
	l, ok := got[0].Length("outer", &faults)
	assert.True(t, ok)
	assert.InDelta(t, 0.0254/64, float64(l), 1e-18)
	l, ok = got[1].Length("outer", &faults)
	assert.True(t, ok)
	assert.InDelta(t, 0.000254, float64(l), 1e-18)
	m, ok := got[1].Cell("mass").Mass(&faults)
	assert.True(t, ok)
	assert.InDelta(t, 0.00043, float64(m), 1e-18)
	n, ok := got[0].Whole("pieces", &faults)
	assert.True(t, ok)
	assert.Equal(t, 2, n)
	x, ok := got[0].Number("pieces", &faults)
	assert.True(t, ok)
	assert.Equal(t, 2.0, x)
	_, ok = got[1].Whole("pieces", &faults)
	assert.False(t, ok, "an empty cell is no number")
	_, ok = got[1].Number("remark", &faults)
	assert.False(t, ok, "nor is an absent one")
	assert.Empty(t, faults, "and neither is a fault")
}

func TestCellsThatDoNotRead(t *testing.T) {
	got := rows(t, "gauge,outer_mm,mass,pieces\na,\"0,254\",0.43,1.5\nb,0.010 in,nan g,1e10\nc,thick,0.4 g,two\n")
	var faults fault.List
	for _, r := range got {
		_, ok := r.Length("outer", &faults)
		assert.False(t, ok)
		r.Cell("mass").Mass(&faults)
		_, ok = r.Whole("pieces", &faults)
		assert.False(t, ok)
	}
	assert.EqualError(t, faults.Err(), `r.csv:2:3: outer: a comma is not read as a decimal point ("0,254"); write "0.254"
r.csv:2:11: mass: a mass needs a unit ("0.43"); write "0.43 g" or "0.43 oz"
r.csv:2:16: pieces: not a whole number ("1.5"); write a whole number in digits, such as 3
r.csv:3:3: outer: the unit is not the heading's, which is mm ("0.010 in"); change one of them
r.csv:3:12: mass: not read as a mass ("nan g"); write "1 g" or "1 oz"
r.csv:3:18: pieces: not a whole number ("1e10"); write a whole number in digits, such as 3
r.csv:4:3: outer: not read as a length ("thick"); write a number of mm and nothing else
r.csv:4:15: pieces: not a whole number ("two"); write a whole number in digits, such as 3`)
}

func TestDecimalComma(t *testing.T) {
	for _, c := range []struct{ row, number, next string }{
		{"a,1,38,5", "38.5", "pieces"},
		{"a,1,-0,25", "-0.25", "pieces"},
		{"a,1,38, 5", "", ""},
		{"a,1,38.0,5", "", ""},
		{"a,1,38,5 mm", "", ""},
		{`a,1,"38",5`, "", ""},
		{"a,1,38", "", ""},
	} {
		r := rows(t, "gauge,outer_mm,mass_g,pieces\n"+c.row+"\n")[0]
		number, next, ok := r.Cell("mass").DecimalComma()
		assert.Equal(t, c.number != "", ok, c.row)
		if ok {
			assert.Equal(t, []string{c.number, c.next}, []string{number, next.Name()})
		}
		_, _, ok = r.Cell("remark").DecimalComma()
		assert.False(t, ok, "a column that is not there")
	}
}

// A column that names its unit nowhere is one fault, at its first cell.
func TestWithoutUnits(t *testing.T) {
	got := rows(t, "gauge,outer,mass_g\na,,0.43\nb,0.3,0.4\nc,0.4,0.5\n")
	none := csvtable.WithoutUnits(got, columns)
	var faults fault.List
	none.Report(&faults)
	assert.EqualError(t, faults.Err(), `r.csv:3:3: outer has no unit, in its heading or in its cells ("0.3"); name the column outer_mm or outer_in, or write a unit in every cell`)
	assert.True(t, none.At(&got[1], "outer"))
	assert.False(t, none.At(&got[0], "outer"), "an empty cell")
	assert.False(t, none.At(&got[1], "mass"))
	assert.True(t, none.InRow(&got[1]))
	assert.False(t, none.InRow(&got[0]))
	got = rows(t, "gauge,outer\na,0.3 mm\nb,0.3\n")
	assert.False(t, csvtable.WithoutUnits(got, columns).InRow(&got[1]), "one cell has a unit: the others' slip is theirs")
}
