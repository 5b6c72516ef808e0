package show

import (
	"slices"
	"sort"
	"strings"
)

const (
	// columnGap is the number of blanks between columns.
	columnGap = 2
	// headLines is the most lines that a heading is broken into.
	headLines = 3
	// proseWidth is the least width to which a column of words is wrapped
	// before the table is split: about four words.
	proseWidth = 24
)

// part is one printed piece of a table: the columns by number, each with its
// width in cells.
type part struct{ columns, widths []int }

// sizes holds what the fitting needs of one table.
type sizes struct {
	table *Table
	head  [][headLines]int // least width of each heading in one, two and three lines
	cell  []int            // widest cell of each column, totals included
	prose []bool           // columns whose cells may be wrapped: left-aligned, long, of several words
}

func measure(t *Table) sizes {
	s := sizes{t, make([][headLines]int, len(t.Columns)), make([]int, len(t.Columns)), make([]bool, len(t.Columns))}
	for i, c := range t.Columns {
		for lines := range headLines {
			s.head[i][lines] = headWidth(c.Head, lines+1)
		}
	}
	for _, row := range t.Rows {
		s.row(row)
	}
	s.row(t.Foot)
	return s
}

func (s sizes) row(row []string) {
	for i, c := range row {
		n := cells(c)
		s.cell[i] = max(s.cell[i], n)
		long := s.table.Columns[i].Align == Left && n > proseWidth && strings.Contains(c, " ")
		s.prose[i] = s.prose[i] || long
	}
}

// fit lays the table out within limit cells (0: no limit). It tries, in this
// order: headings of one, two and three lines; wrapping of columns of words;
// several parts that repeat the first column.
func fit(t *Table, limit int) []part {
	s := measure(t)
	rest := make([]int, len(t.Columns))
	for i := range rest {
		rest[i] = i
	}
	var parts []part
	for {
		p, left := s.next(rest, limit)
		parts = append(parts, p)
		if len(left) == 0 {
			return parts
		}
		rest = append([]int{0}, left...)
	}
}

// next lays out as many of the columns as fit, the first always, and gives
// those left over.
func (s sizes) next(columns []int, limit int) (part, []int) {
	take := slices.Clone(columns)
	for {
		if w, ok := s.widths(take, limit); ok {
			return part{take, w}, without(columns, take)
		}
		if len(take) <= 2 {
			return part{take, s.force(take, limit)}, without(columns, take)
		}
		i := s.leastWanted(take)
		take = slices.Delete(take, i, i+1)
	}
}

// leastWanted gives the place of the column to move to a later part: of the
// highest priority, the rightmost, never the first.
func (s sizes) leastWanted(columns []int) int {
	worst := 1
	for i := 1; i < len(columns); i++ {
		if s.table.Columns[columns[i]].Priority >= s.table.Columns[columns[worst]].Priority {
			worst = i
		}
	}
	return worst
}

func without(columns, taken []int) []int {
	return slices.DeleteFunc(slices.Clone(columns), func(c int) bool { return slices.Contains(taken, c) })
}

// widths gives the columns' widths with as few lines of heading as will do,
// or false when they do not fit.
func (s sizes) widths(columns []int, limit int) ([]int, bool) {
	var w []int
	for lines := range headLines {
		w = make([]int, len(columns))
		for i, c := range columns {
			w[i] = max(1, s.cell[c], s.head[c][lines])
		}
		if limit == 0 || total(w) <= limit {
			return w, true
		}
	}
	return w, s.squeeze(columns, w, limit)
}

// squeeze narrows the columns of words, the widest first, until the table
// fits; false when it does not.
func (s sizes) squeeze(columns, w []int, limit int) bool {
	for total(w) > limit {
		widest := -1
		for i, c := range columns {
			floor := max(proseWidth, s.head[c][headLines-1])
			if s.prose[c] && w[i] > floor && (widest < 0 || w[i] > w[widest]) {
				widest = i
			}
		}
		if widest < 0 {
			return false
		}
		w[widest]--
	}
	return true
}

// force gives widths for one or two columns that do not fit by themselves:
// the narrower keeps what it needs up to half of the line, the other gets
// the rest, and cells break where they must.
func (s sizes) force(columns []int, limit int) []int {
	if len(columns) == 1 {
		return []int{limit}
	}
	room := limit - columnGap
	need := func(i int) int {
		return max(1, s.cell[columns[i]], s.head[columns[i]][headLines-1])
	}
	first := min(need(0), max(room/2, room-need(1)))
	return []int{first, room - first}
}

// headWidth gives the least width at which the heading takes no more than
// that many lines.
func headWidth(head string, lines int) int {
	full := cells(head)
	if lines == 1 || full <= 1 {
		return full
	}
	least := max(longestWord(head), full/lines-1, 1)
	if least >= full {
		return full
	}
	return least + sort.Search(full-least, func(more int) bool { return countLines(head, least+more) <= lines })
}

func longestWord(s string) int {
	longest := 0
	for w := range strings.FieldsSeq(s) {
		longest = max(longest, cells(w))
	}
	return longest
}

func total(widths []int) int {
	sum := columnGap * (len(widths) - 1)
	for _, w := range widths {
		sum += w
	}
	return sum
}
