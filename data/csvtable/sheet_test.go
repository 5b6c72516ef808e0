package csvtable_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/csvtable"
	"scalepair/data/fault"
)

const sheet = "# weighed in March\r\ngauge,Outer (mm),remark\r\nw46, 1.168 ,\"wrap, close\"\r\n\r\np10,0.254\r\n"

func TestSheetShowsItsCells(t *testing.T) {
	s := csvtable.OpenSheet(sheet)
	assert.Equal(t, []string{"gauge", "outer_mm", "remark"}, s.Names())
	assert.Equal(t, []csvtable.SheetRow{
		{Line: 3, Cells: map[string]string{"gauge": "w46", "outer_mm": "1.168", "remark": "wrap, close"}},
		{Line: 5, Cells: map[string]string{"gauge": "p10", "outer_mm": "0.254"}},
	}, s.Rows())
	assert.Equal(t, sheet, s.Text())
	assert.Equal(t, "outer_mm", csvtable.ColumnAt(sheet, fault.Place{Line: 3, Column: 6}))
	assert.Equal(t, "", csvtable.ColumnAt(sheet, fault.Place{Line: 3}))
}

func TestSheetChangesWhatIsAskedAndNothingElse(t *testing.T) {
	s := csvtable.OpenSheet(sheet)
	require.NoError(t, s.Set(5, "outer_mm", "0.255"))
	require.NoError(t, s.Set(5, "mass_g", `0.33`))
	s.Add(map[string]string{"gauge": "#1, new"})
	s.Remove(3)
	s.Remove(2) // the heading row stays
	assert.Equal(t, "# weighed in March\r\ngauge,Outer (mm),remark,mass_g\r\n\r\np10,0.255,,0.33\r\n\"#1, new\",,,\r\n", s.Text())
	assert.Error(t, s.Set(9, "gauge", "x"))
}

// A label that a spreadsheet would calculate is written so that it does not.
func TestSheetHoldsNoFormula(t *testing.T) {
	s := csvtable.OpenSheet(sheet)
	require.NoError(t, s.Set(5, "gauge", "=1+1"))
	assert.Contains(t, s.Text(), "'=1+1,0.254")
	assert.Equal(t, "=1+1", csvtable.OpenSheet(s.Text()).Rows()[1].Cells["gauge"])
}

func TestSheetTakesWhatSpreadsheetsCopy(t *testing.T) {
	for name, pasted := range map[string]string{
		"tabs":       "p11\t0.279\tthird\n",
		"semicolons": "p11;0.279;third\r\n",
		"commas":     "p11,0.279,third",
		"a heading":  "remark\tgauge\touter mm\nthird\tp11\t0.279\n",
		"no unit":    "remark\tgauge\touter\nthird\tp11\t0.279\n",
		"as a page":  "\"remark\",GAUGE,\"outer, mm\"\nthird,p11,0.279\n",
		"inches":     "remark\tgauge\touter in\nthird\tp11\t0.010984252\n", // 0.279 / 25.4
	} {
		t.Run(name, func(t *testing.T) {
			s := csvtable.OpenSheet(sheet)
			to, err := s.Paste(pasted, columns)
			require.NoError(t, err)
			assert.ElementsMatch(t, s.Names(), to)
			assert.Equal(t, sheet+"p11,0.279,third\r\n", s.Text())
		})
	}
	s := csvtable.OpenSheet("")
	to, err := s.Paste("gauge\tmass (g.)\np10\t0.33\n", columns)
	require.NoError(t, err)
	assert.Equal(t, []string{"gauge", "mass_g"}, to)
	assert.Equal(t, "gauge,mass_g\np10,0.33\n", s.Text())
}

// A row without a number is a heading row, however few of its headings are known;
// without one the cells are read in the order of the table's columns.
func TestPastedHeadingsThatAreNotKnownAreNamed(t *testing.T) {
	for pasted, given := range map[string]string{
		"String\tThickness\tWeight\nw36\t0.914\t1.2\n": "String, Thickness, Weight",
		"gauge\tdiameter\tmass\np10\t0.254\t0.33\n":    "diameter",
		"gauge\tmass\tmass, g\np10\t0.33\t0.33\n":      "mass, g",
		"gauge;outer, in;weight\n\np10;.010;0.33\n":    "weight",
	} {
		s := csvtable.OpenSheet(sheet)
		to, err := s.Paste(pasted, columns)
		var f fault.Fault
		require.ErrorAs(t, err, &f)
		assert.Equal(t, given, f.Given)
		assert.Equal(t, "the columns are gauge; outer_mm; mass_g; pieces; remark", f.Remedy)
		assert.Nil(t, to)
		assert.Equal(t, sheet, s.Text())
	}
	s := csvtable.OpenSheet(sheet)
	to, err := s.Paste("w36;0,914\nw38;0,965\n", columns)
	require.NoError(t, err)
	assert.Equal(t, []string{"gauge", "outer_mm"}, to)
}

func FuzzSheet(f *testing.F) {
	f.Add(sheet, "p11\t0.279", 5, "remark", `25 1/2"`)
	f.Add("", "a;b\n1;2", 1, "a", "#")
	f.Fuzz(func(t *testing.T, text, pasted string, line int, column, cell string) {
		s := csvtable.OpenSheet(text)
		require.Equal(t, text, s.Text())
		_, _ = s.Paste(pasted, columns)
		_ = s.Set(line, column, cell)
		s.Add(map[string]string{"gauge": cell})
		require.NotPanics(t, func() { csvtable.OpenSheet(s.Text()).Rows() })
	})
}
