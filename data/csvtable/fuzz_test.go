package csvtable_test

import (
	"bytes"
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/csvtable"
	"scalepair/data/fault"
)

// real are the columns of readings and of measured marks, none of them required.
var real = func() []csvtable.Column {
	out := []csvtable.Column{{Name: "remark"}}
	for _, name := range []string{"gauge", "construction", "core_shape", "diameters", "kind", "pieces", "date", "line", "pass", "fret"} {
		out = append(out, csvtable.Column{Name: name})
	}
	for _, name := range []string{"outer", "core", "length", "winding", "measured", "step"} {
		out = append(out, csvtable.Column{Name: name, Units: []string{"mm", "in"}})
	}
	return append(out, csvtable.Column{Name: "mass", Units: []string{"g", "oz"}})
}()

// Faults all stand in the file; success means rows whose cells, written out again, read back the same.
func FuzzRead(f *testing.F) {
	for _, s := range []string{
		"gauge,outer_mm\n10p,0.254\n", "gauge,remark\n'=1+1,''-a\n@b,-7.3\n", "\ufeffgauge,outer\r\na,1/64\"\r\n", "gauge;outer\na;1\n", "gauge,mass_g\na,0,43\n",
		"\xff\xfeg\x00", "gauge,remark\na,\"so, so\"\nb,\"x\n", "# c\n\"# d, e\"\ngauge\na\n", "gauge,remark\na,\xbd\xe9\n", "",
		"gauge,remark\na,\"say \"\"so\"\"\"\n", "gauge,remark\n\"\"\"#\",b\n",
	} {
		f.Add([]byte(s))
	}
	for _, file := range []string{"../demo/readings.csv", "../../testdata/builds/seven/readings.csv", "../../testdata/builds/demo_marks.csv", "../../testdata/readings/utf16.bin"} {
		raw, err := os.ReadFile(file)
		require.NoError(f, err)
		f.Add(raw)
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		got, faults := csvtable.Read(bytes.NewReader(raw), "r.csv", real)
		if len(faults) > 0 {
			for _, one := range faults {
				assert.Equal(t, "r.csv", one.Place.Input)
				assert.NotEmpty(t, one.What)
				assert.LessOrEqual(t, one.Place.Line, bytes.Count(raw, []byte("\n"))+bytes.Count(raw, []byte("\r"))+1)
			}
			return
		}
		require.NotEmpty(t, got)
		again, faults := csvtable.Read(strings.NewReader(written(t, got)), "r.csv", real)
		require.NoError(t, faults.Err())
		require.Len(t, again, len(got))
		for i := range got {
			for _, c := range real {
				assert.Equal(t, got[i].Get(c.Name), again[i].Get(c.Name))
				assert.Equal(t, got[i].Unit(c.Name), again[i].Unit(c.Name))
			}
			requireValues(t, got[i])
		}
	})
}

// requireValues reads the cells as quantities: a value or a fault, never both,
// and every fault at the cell's place.
func requireValues(t *testing.T, row csvtable.Row) {
	var faults fault.List
	outer, haveOuter := row.Length("outer", &faults)
	mass, haveMass := row.Cell("mass").Mass(&faults)
	pieces, havePieces := row.Whole("pieces", &faults)
	assert.True(t, haveOuter || outer == 0)
	assert.True(t, haveMass || mass == 0)
	assert.True(t, havePieces || pieces == 0)
	given := 0
	for name, have := range map[string]bool{"outer": haveOuter, "mass": haveMass, "pieces": havePieces} {
		if row.Get(name) != "" && !have {
			given++
		}
	}
	assert.Len(t, faults, given)
	for _, one := range faults {
		assert.Equal(t, row.Place("gauge").Line, one.Place.Line)
		assert.Positive(t, one.Place.Column)
	}
}

// written writes rows as a table with every cell quoted. The first column is
// empty, so that no cell can make its line a comment.
func written(t *testing.T, rows []csvtable.Row) string {
	var b strings.Builder
	for i := -1; i < len(rows); i++ {
		b.WriteString(",")
		for _, c := range real {
			text := c.Name
			if i >= 0 {
				text = csvtable.Guarded(rows[i].Get(c.Name))
			} else if u := rows[0].Unit(c.Name); u != "" {
				text += "_" + u
			}
			require.True(t, utf8.ValidString(text))
			b.WriteString(`"` + strings.ReplaceAll(text, `"`, `""`) + `",`)
		}
		b.WriteString("\n")
	}
	return b.String()
}
