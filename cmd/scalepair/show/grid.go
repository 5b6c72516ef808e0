package show

import "strings"

// grid prints one part of a table as lines without trailing blanks: no
// borders, a rule under the heads and above the totals.
func grid(t *Table, p part, ascii bool) []string {
	rows := []brokenRow{headRow(t, p)}
	for _, row := range t.Rows {
		rows = append(rows, p.row(row))
	}
	if p.hasTotals(t) {
		rows = append(rows, p.row(t.Foot))
	}
	g := newSetter(t, p, rows)
	var lines []string
	for i, row := range rows {
		if foot := i > len(t.Rows); foot || i == 1 {
			lines = append(lines, g.rule(ascii))
		}
		lines = append(lines, g.set(row)...)
	}
	return lines
}

// brokenRow is one row of a table, each of its cells broken into lines.
type brokenRow [][]string

// setter sets rows with their columns under each other.
type setter struct {
	widths []int // of what stands in each column, in cells
	right  []bool
}

func newSetter(t *Table, p part, rows []brokenRow) setter {
	g := setter{make([]int, len(p.columns)), make([]bool, len(p.columns))}
	for i, c := range p.columns {
		g.right[i] = t.Columns[c].Align == Right
		for _, row := range rows {
			for _, line := range row[i] {
				g.widths[i] = max(g.widths[i], cells(line))
			}
		}
	}
	return g
}

// rule gives a line under all columns.
func (g setter) rule(ascii bool) string {
	sign := "─"
	if ascii {
		sign = "-"
	}
	n := columnGap * (len(g.widths) - 1)
	for _, w := range g.widths {
		n += w
	}
	return strings.Repeat(sign, n)
}

// set gives the lines of one row, as many as its longest cell has.
func (g setter) set(row brokenRow) []string {
	most := 0
	for _, cell := range row {
		most = max(most, len(cell))
	}
	lines := make([]string, most)
	for i := range lines {
		lines[i] = g.line(row, i)
	}
	return lines
}

// line sets the i-th line of every cell of a row.
func (g setter) line(row brokenRow, i int) string {
	var b strings.Builder
	for k, cell := range row {
		text := ""
		if i < len(cell) {
			text = cell[i]
		}
		before, after := 0, g.widths[k]-cells(text)
		if g.right[k] {
			before, after = after, 0
		}
		blanks(&b, before)
		b.WriteString(text)
		blanks(&b, after+columnGap)
	}
	return strings.TrimRight(b.String(), " ")
}

func blanks(b *strings.Builder, n int) {
	for range n {
		b.WriteByte(' ')
	}
}

// headRow gives the part's headings, standing on the rule.
func headRow(t *Table, p part) brokenRow {
	row := make(brokenRow, len(p.columns))
	most := 0
	for i, c := range p.columns {
		row[i] = wrap(t.Columns[c].Head, p.widths[i])
		most = max(most, len(row[i]))
	}
	for i, head := range row {
		row[i] = append(make([]string, most-len(head), most), head...)
	}
	return row
}

// row gives the part's cells of one row, broken into lines where too wide.
func (p part) row(cells []string) brokenRow {
	row := make(brokenRow, len(p.columns))
	for i, c := range p.columns {
		row[i] = wrap(cells[c], p.widths[i])
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
