package show

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strings"

	"scalepair/data/fault"
)

// writeCSV writes the tables alone: one table as it is, several each under a
// line "# name: caption" and with a blank line between.
func writeCSV(b *bytes.Buffer, r *Report) error {
	tables := r.tables()
	if len(tables) == 0 {
		return fault.Fault{Place: fault.Place{Input: "--format"}, What: "this report has no table to write as csv",
			Remedy: "use table, markdown or html"}
	}
	for i, t := range tables {
		if i > 0 {
			b.WriteByte('\n')
		}
		if len(tables) > 1 {
			fmt.Fprintf(b, "# %s\n", strings.TrimSuffix(t.Name+": "+t.Caption, ": "))
		}
		if err := csvTable(b, t); err != nil {
			return err
		}
	}
	return nil
}

func csvTable(b *bytes.Buffer, t *Table) error {
	w := csv.NewWriter(b)
	split := make([]bool, len(t.Columns))
	var heads []string
	for i, c := range t.Columns {
		heads = append(heads, soften(c.Head))
		if split[i] = uncertain(t, i); split[i] {
			heads = append(heads, soften(c.Head)+" uncertainty")
		}
	}
	records := [][]string{heads}
	for _, row := range t.Rows {
		records = append(records, csvRow(row, split))
	}
	if t.Foot != nil {
		records = append(records, csvRow(t.Foot, split))
	}
	return w.WriteAll(records)
}

// plusMinusWords part a figure from its uncertainty, in print and in ASCII.
var plusMinusWords = []string{" ± ", " +/- "}

// uncertain tells whether a column of figures carries uncertainties: then it
// becomes two columns, since a spreadsheet cannot count with "72.6 ± 0.4".
func uncertain(t *Table, column int) bool {
	if t.Columns[column].Align != Right {
		return false
	}
	for _, row := range t.Rows {
		if _, u := figureAndU(row[column]); u != "" {
			return true
		}
	}
	return false
}

func figureAndU(cell string) (figure, u string) {
	for _, pm := range plusMinusWords {
		if f, u, ok := strings.Cut(cell, pm); ok {
			return f, u
		}
	}
	return cell, ""
}

func csvRow(row []string, split []bool) []string {
	var out []string
	for i, cell := range row {
		cell = soften(cell)
		if !split[i] {
			out = append(out, cell)
			continue
		}
		figure, u := figureAndU(cell)
		out = append(out, figure, u)
	}
	return out
}
