package csvtable

import (
	"encoding/csv"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Paste adds rows as a spreadsheet copies them, parted by tabs, semicolons or
// commas. With a heading row of their own, in which no cell is a number, they go under
// its headings, else under those of the sheet in their order: the headings that their
// cells went to come back. columns are those that the table may have; with a heading
// that is none of them nothing is added.
func (s *Sheet) Paste(text string, columns []Column) ([]string, error) {
	to := make([]target, len(s.names))
	for i, name := range s.names {
		to[i].name = name
	}
	var rows []map[string]string
	first, widest := true, 0
	for line := range strings.Lines(text) {
		cells := pastedCells(strings.TrimRight(line, "\r\n"))
		if cells == nil {
			continue
		}
		if first && (s.head < 0 || !slices.ContainsFunc(cells, number.MatchString)) {
			var err error
			if to, err = s.targets(cells, columns); err != nil {
				return nil, err
			}
			first = false
			continue
		}
		first, widest = false, max(widest, len(cells))
		row := map[string]string{}
		for i, c := range cells {
			if c = strings.TrimSpace(c); c != "" && i < len(to) && to[i].name != "" {
				row[to[i].name] = to[i].in(c)
			}
		}
		rows = append(rows, row)
	}
	names := []string{}
	for i, t := range to {
		if t.name != "" && i < widest {
			names = append(names, t.name)
		}
	}
	s.addColumns(names...)
	for _, row := range rows {
		s.Add(row)
	}
	return names, nil
}

var number = regexp.MustCompile(`^\s*[-+.,]?[0-9]`)

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

// target is the column of the sheet that a pasted column goes to, whose numbers are
// converted where its heading has another unit.
type target struct{ name, from, to string }

// targets are those of a pasted heading row; a column without a heading has none.
func (s *Sheet) targets(cells []string, columns []Column) ([]target, error) {
	out := make([]target, len(cells))
	var wrong []string
	for i, c := range cells {
		if strings.TrimSpace(c) == "" {
			continue
		}
		t, ok := s.target(fold(asHeading.Replace(c)), columns)
		if !ok || slices.ContainsFunc(out[:i], func(o target) bool { return o.name == t.name }) {
			wrong = append(wrong, strings.TrimSpace(c))
		}
		out[i] = t
	}
	if wrong == nil {
		return out, nil
	}
	return nil, fault.Fault{What: "nothing was added: these headings are no columns of this table, or stand twice",
		Given: strings.Join(wrong, ", "), Remedy: "the columns are " + strings.Join(s.Headings(columns, ""), "; ")}
}

// asHeading reads "outer, mm", "length (in.)" and "density, kg/m³" as headings.
var asHeading = strings.NewReplacer(",", " ", ".", " ", "/", " ", "³", "3")

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
