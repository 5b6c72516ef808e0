package show_test

import (
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/show"
)

// FuzzCells puts any text everywhere and any width, in every format.
func FuzzCells(f *testing.F) {
	for _, s := range []string{"", "p12", "72.6 ± 0.4", "a|b", "漢字", "<&\"'>", "\x1b[1m", "\xff\xfe", "\r\n", "=1+1", "\ufffe", "e\u0301\u200d"} {
		f.Add(s, "own length mm", 20)
		f.Add("string", s, 80)
	}
	f.Fuzz(func(t *testing.T, cell, head string, width int) {
		r := &show.Report{Title: head}
		r.Text(cell)
		r.Cautions(cell)
		tab := r.Table("t", head, show.Words(head), show.Figures(cell).Later(1), show.Words(head+cell))
		tab.Row(cell, head, cell)
		tab.Row()
		tab.Total(head, cell)
		tab.Note("%s", cell)
		width = 20 + (width%100+100)%100
		requireWithin(t, written(t, r, show.Options{Width: width}), width)
		for _, format := range []show.Format{show.TableFormat, show.Markdown, show.CSV, show.HTML} {
			text := written(t, r, show.Options{Format: format})
			require.True(t, utf8.ValidString(text))
			require.NotContains(t, text, "\x1b")
		}
		page := written(t, r, show.Options{Format: show.HTML})
		require.Len(t, texts(t, page, "td"), 9)
	})
}
