package csvtable_test

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/csvtable"
	"scalepair/data/fault"
)

// An error means no rows and a list of faults that all stand in the file;
// success means rows whose cells, written out again, read back the same.
func FuzzRead(f *testing.F) {
	for _, s := range []string{
		"gauge,outer_mm\n10p,0.254\n", "\ufeffgauge,outer\r\na,1/64\"\r\n", "gauge;outer\na;1\n", "gauge,mass_g\na,0,43\n",
		"\xff\xfeg\x00", "gauge,remark\na,\"so, so\"\nb,\"x\n", "# c\n\"# d, e\"\ngauge\na\n", "gauge,remark\na,\xbd\xe9\n", "",
		"gauge,remark\na,\"say \"\"so\"\"\"\n", "gauge,remark\n\"\"\"#\",b\n",
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		got, err := csvtable.Read(bytes.NewReader(raw), "r.csv", columns)
		if err != nil {
			assert.Nil(t, got)
			for _, one := range err.(fault.List) {
				assert.Equal(t, "r.csv", one.Place.Input)
				assert.LessOrEqual(t, one.Place.Line, bytes.Count(raw, []byte("\n"))+bytes.Count(raw, []byte("\r"))+1)
			}
			return
		}
		require.NotEmpty(t, got)
		again, err := csvtable.Read(strings.NewReader(written(t, got)), "r.csv", columns)
		require.NoError(t, err)
		require.Len(t, again, len(got))
		for i := range got {
			for _, c := range columns {
				assert.Equal(t, got[i].Get(c.Name), again[i].Get(c.Name))
				assert.Equal(t, got[i].Unit(c.Name), again[i].Unit(c.Name))
			}
			var faults fault.List
			got[i].Length("outer", &faults)
			got[i].Mass("mass", &faults)
			got[i].Whole("pieces", &faults)
		}
	})
}

// written writes rows as a table with every cell quoted. The first column is
// empty, so that no cell can make its line a comment.
func written(t *testing.T, rows []csvtable.Row) string {
	var b strings.Builder
	for i := -1; i < len(rows); i++ {
		b.WriteString(",")
		for _, c := range columns {
			text := c.Name
			if i >= 0 {
				text = rows[i].Get(c.Name)
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
