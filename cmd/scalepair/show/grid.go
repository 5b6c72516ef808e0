package show

import (
	"bytes"
	"strings"

	"github.com/olekukonko/tablewriter"
	"github.com/olekukonko/tablewriter/pkg/twwidth"
	"github.com/olekukonko/tablewriter/renderer"
	"github.com/olekukonko/tablewriter/tw"
)

// grid prints one part of a table as lines without trailing blanks.
func grid(t *Table, p part, ascii bool) ([]string, error) {
	twwidth.SetEastAsian(false) // as cells counts, whatever the locale
	var b bytes.Buffer
	g := newGrid(&b, t, p, ascii)
	g.Header(headRow(t, p))
	for _, row := range t.Rows {
		if err := g.Append(p.row(row)); err != nil {
			return nil, err
		}
	}
	if p.hasTotals(t) {
		g.Footer(p.row(t.Foot))
	}
	if err := g.Render(); err != nil {
		return nil, err
	}
	lines := strings.Split(strings.TrimSuffix(b.String(), "\n"), "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return lines, nil
}

// newGrid sets up the table library: no borders, a rule under the heads and
// above the totals, and none of its own formatting, wrapping or trimming.
func newGrid(b *bytes.Buffer, t *Table, p part, ascii bool) *tablewriter.Table {
	style := tw.StyleLight
	if ascii {
		style = tw.StyleASCII
	}
	config := tablewriter.Config{
		Header:   cellConfig(t, p),
		Row:      cellConfig(t, p),
		Footer:   cellConfig(t, p),
		Behavior: tw.Behavior{TrimSpace: tw.Off, TrimLine: tw.Off},
	}
	return tablewriter.NewTable(b, tablewriter.WithConfig(config),
		tablewriter.WithRenderer(renderer.NewBlueprint(tw.Rendition{
			Borders: tw.Border{Left: tw.Off, Right: tw.Off, Top: tw.Off, Bottom: tw.Off},
			Symbols: tw.NewSymbols(style),
			Settings: tw.Settings{
				Separators: tw.Separators{BetweenColumns: tw.Off, BetweenRows: tw.Off, ShowHeader: tw.On, ShowFooter: tw.On},
				Lines:      tw.Lines{ShowHeaderLine: tw.On, ShowFooterLine: tw.On},
			},
		})))
}

func cellConfig(t *Table, p part) tw.CellConfig {
	align := make([]tw.Align, len(p.columns))
	pads := make([]tw.Padding, len(p.columns))
	for i, c := range p.columns {
		align[i], pads[i] = tw.AlignLeft, tw.Padding{Right: strings.Repeat(" ", columnGap), Overwrite: true}
		if t.Columns[c].Align == Right {
			align[i] = tw.AlignRight
		}
	}
	pads[len(pads)-1] = tw.PaddingNone
	return tw.CellConfig{
		Formatting: tw.CellFormatting{AutoWrap: tw.WrapNone, AutoFormat: tw.Off},
		Alignment:  tw.CellAlignment{PerColumn: align},
		Padding:    tw.CellPadding{PerColumn: pads},
	}
}

// headRow gives the part's headings, broken into lines and standing on the
// rule.
func headRow(t *Table, p part) []string {
	heads := make([][]string, len(p.columns))
	most := 0
	for i, c := range p.columns {
		heads[i] = wrap(t.Columns[c].Head, p.widths[i])
		most = max(most, len(heads[i]))
	}
	row := make([]string, len(heads))
	for i, h := range heads {
		row[i] = strings.Repeat("\n", most-len(h)) + strings.Join(h, "\n")
	}
	return row
}

// row gives the part's cells of one row, broken into lines where too wide.
func (p part) row(cells []string) []string {
	row := make([]string, len(p.columns))
	for i, c := range p.columns {
		row[i] = strings.Join(wrap(cells[c], p.widths[i]), "\n")
	}
	return row
}

// hasTotals tells whether the totals row says anything in this part; the word
// in its first column alone does not.
func (p part) hasTotals(t *Table) bool {
	if t.Foot == nil {
		return false
	}
	for _, c := range p.columns {
		if t.Foot[c] != "" && (c > 0 || len(t.Columns) == 1) {
			return true
		}
	}
	return false
}
