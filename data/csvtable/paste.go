package csvtable

import (
	"encoding/csv"
	"math"
	"slices"
	"strconv"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Paste adds rows as a spreadsheet copies them, parted by tabs, semicolons or
// commas. With a heading row of their own they go under its headings, else under
// those of the sheet in their order. columns are those that the table may have; with
// a heading that is none of them nothing is added.
func (s *Sheet) Paste(text string, columns []Column) error {
	to := make([]target, len(s.names))
	for i, name := range s.names {
		to[i].name = name
	}
	var rows []map[string]string
	first := true
	for line := range strings.Lines(text) {
		cells := pastedCells(strings.TrimRight(line, "\r\n"))
		if cells == nil {
			continue
		}
		if first && (s.head < 0 || s.isHeading(cells, columns)) {
			var err error
			if to, err = s.targets(cells, columns); err != nil {
				return err
			}
			first = false
			continue
		}
		first = false
		row := map[string]string{}
		for i, c := range cells {
			if c = strings.TrimSpace(c); c != "" && i < len(to) && to[i].name != "" {
				row[to[i].name] = to[i].in(c)
			}
		}
		rows = append(rows, row)
	}
	for _, t := range to {
		if t.name != "" {
			s.addColumns(t.name)
		}
	}
	for _, row := range rows {
		s.Add(row)
	}
	return nil
}

// pastedCells parts a line; none of an empty one.
func pastedCells(line string) []string {
	r := csv.NewReader(strings.NewReader(line))
	r.LazyQuotes, r.FieldsPerRecord = true, -1
	for _, separator := range "\t;" {
		if strings.ContainsRune(line, separator) {
			r.Comma = separator
			break
		}
	}
	cells, err := r.Read()
	if err != nil {
		return nil
	}
	return cells
}

// isHeading reports whether pasted cells are headings: half of them or more are.
func (s *Sheet) isHeading(cells []string, columns []Column) bool {
	known := 0
	for _, c := range cells {
		if _, ok := s.target(fold(c), columns); ok {
			known++
		}
	}
	return 2*known >= len(cells)
}

// target is the column of the sheet that a pasted column goes to, whose numbers are
// converted where its heading has another unit.
type target struct{ name, from, to string }

// targets are those of a pasted heading row; a column without a heading has none.
func (s *Sheet) targets(cells []string, columns []Column) ([]target, error) {
	out := make([]target, len(cells))
	for i, c := range cells {
		if strings.TrimSpace(c) == "" {
			continue
		}
		t, ok := s.target(fold(c), columns)
		if !ok || slices.ContainsFunc(out[:i], func(o target) bool { return o.name == t.name }) {
			what := "a pasted heading is no column of this table, or stands twice; nothing was added"
			return nil, fault.Fault{What: what, Given: c, Remedy: "the columns are " + strings.Join(headings(columns), ", ")}
		}
		out[i] = t
	}
	return out, nil
}

// target finds the column for a heading: the one that the sheet has, whatever its
// unit, else a new one. A heading without a unit has the sheet's.
func (s *Sheet) target(name string, columns []Column) (target, bool) {
	for _, c := range columns {
		all := c.headings()
		i := slices.IndexFunc(all, func(h heading) bool { return h.text() == name })
		if i < 0 {
			continue
		}
		own := slices.IndexFunc(all, func(h heading) bool { return slices.Contains(s.names, h.text()) })
		switch {
		case own >= 0:
			return target{all[own].text(), all[i].unit, all[own].unit}, true
		case i == 0:
			i = min(1, len(c.Units))
		}
		return target{name: all[i].text()}, true
	}
	return target{name: name}, name != "" && slices.Contains(s.names, name)
}

// in gives a cell in the unit of its new column. What does not read stays, for the
// reader of the table to refuse.
func (t target) in(cell string) string {
	if t.from == t.to || t.from == "" || !unit.Bare(cell) {
		return cell
	}
	if t.to == "" {
		return cell + " " + t.from
	}
	if text, ok := converted(cell, t, unit.ParseLengthIn); ok {
		return text
	}
	if text, ok := converted(cell, t, unit.ParseMassIn); ok {
		return text
	}
	return cell
}

// converted gives a cell in the unit of its new column, to a millionth of it.
func converted[T ~float64](cell string, t target, parse func(text, unit string) (T, error)) (string, bool) {
	x, err := parse(cell, t.from)
	one, errOfUnit := parse("1", t.to)
	if err != nil || errOfUnit != nil {
		return "", false
	}
	return strconv.FormatFloat(math.Round(float64(x/one)*1e6)/1e6, 'f', -1, 64), true
}
