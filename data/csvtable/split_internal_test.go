package csvtable

import (
	"encoding/csv"
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A line with quotation marks is cut, with what other lines leave behind in the
// reader, as by a reader of its own, with strict and then with lazy quotation
// marks, and refused where that refuses it.
func TestSplitIsThatOfAReaderOfItsOwn(t *testing.T) {
	piece := rapid.SampledFrom([]string{`"`, `"`, `""`, `,`, `,`, ` `, "\t", "a", "1/2", "½", "\u00a0", "\u0085", `","`, `x"y`, `"a, b"`})
	rapid.Check(t, func(t *rapid.T) {
		line := strings.Join(rapid.SliceOfN(piece, 1, 12).Draw(t, "pieces"), "")
		if !strings.Contains(line, `"`) {
			line += `,"x"`
		}
		texts, columns, err := standard(line, false)
		if errors.Is(err, csv.ErrBareQuote) {
			texts, columns, err = standard(line, true)
		}
		var s splitter
		s.split(strings.Join(rapid.SliceOfN(piece, 1, 6).Draw(t, "the line before"), ""))
		cells, refused := s.split(line)
		var at *csv.ParseError
		if errors.As(err, &at) {
			require.NotNil(t, refused)
			assert.Equal(t, runeColumn(line, openQuote(line, at.Column)), refused.Place.Column)
			return
		}
		require.NoError(t, err)
		require.Nil(t, refused)
		require.Len(t, cells, len(texts))
		for i, c := range cells {
			assert.Equal(t, cell{strings.TrimSpace(texts[i]), runeColumn(line, columns[i])}, c)
		}
	})
}

// standard gives the fields of a line and the byte column, from 1, of each.
func standard(line string, lazy bool) (texts []string, columns []int, err error) {
	r := csv.NewReader(strings.NewReader(line))
	r.TrimLeadingSpace, r.LazyQuotes = true, lazy
	if texts, err = r.Read(); err != nil {
		return nil, nil, err
	}
	for i := range texts {
		_, column := r.FieldPos(i)
		columns = append(columns, column)
	}
	return texts, columns, nil
}

// Cells that were kept stay as they are while more lines are cut, also where a
// line takes less room than its commas let expect.
func TestKeptCellsStay(t *testing.T) {
	s := splitter{coming: 7}
	var kept [][]cell
	for _, line := range []string{`"a,b",c`, `"a"x`, `d,e`, `f`, `g,h,i,j,k,l,m,n`} {
		if cells, wrong := s.split(line); wrong == nil {
			kept = append(kept, append(cells, cell{"after", 0})[:len(cells)])
		}
	}
	assert.Equal(t, [][]cell{{{"a,b", 1}, {"c", 7}}, {{"d", 1}, {"e", 3}}, {{"f", 1}},
		{{"g", 1}, {"h", 3}, {"i", 5}, {"j", 7}, {"k", 9}, {"l", 11}, {"m", 13}, {"n", 15}}}, kept)
}
