package show

import "bytes"

// grid prints one part of a table as lines without trailing blanks: no
// borders, a rule under the heads and above the totals.
func grid(out *bytes.Buffer, t *Table, p part, ascii bool) {
	rows := append(make([]brokenRow, 0, len(t.Rows)+2), headRow(t, p))
	for _, row := range t.Rows {
		rows = append(rows, p.row(row))
	}
	if p.hasTotals(t) {
		rows = append(rows, p.row(t.Foot))
	}
	g := newSetter(out, t, p, rows)
	for i, row := range rows {
		if foot := i > len(t.Rows); foot || i == 1 {
			g.rule(ascii)
		}
		g.set(row)
	}
}

// brokenRow is one row of a table, each of its cells broken into lines.
type brokenRow [][]string

// setter sets rows with their columns under each other.
type setter struct {
	out    *bytes.Buffer
	widths []int // of what stands in each column, in cells
	right  []bool
}

func newSetter(out *bytes.Buffer, t *Table, p part, rows []brokenRow) setter {
	g := setter{out, make([]int, len(p.columns)), make([]bool, len(p.columns))}
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

// rule draws a line under all columns.
func (g setter) rule(ascii bool) {
	sign := "─"
	if ascii {
		sign = "-"
	}
	for range total(g.widths) {
		g.out.WriteString(sign)
	}
	g.out.WriteByte('\n')
}

// set prints one row in as many lines as its longest cell has.
func (g setter) set(row brokenRow) {
	most := 0
	for _, cell := range row {
		most = max(most, len(cell))
	}
	for i := range most {
		g.line(row, i)
	}
}

// line sets the i-th line of every cell of a row.
func (g setter) line(row brokenRow, i int) {
	for k, cell := range row {
		text := ""
		if i < len(cell) {
			text = cell[i]
		}
		before, after := 0, g.widths[k]-cells(text)
		if g.right[k] {
			before, after = after, 0
		}
		g.blanks(before)
		g.out.WriteString(text)
		g.blanks(after + columnGap)
	}
	g.out.Truncate(len(bytes.TrimRight(g.out.Bytes(), " ")))
	g.out.WriteByte('\n')
}

func (g setter) blanks(n int) {
	for range n {
		g.out.WriteByte(' ')
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
