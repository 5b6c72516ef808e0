package gauges

import (
	"fmt"
	"slices"

	"scalepair/data/csvtable"
	"scalepair/data/fault"
)

// headingsSound tells whether all headings are: else no row may be told that it
// lacks what stands under one of them.
func headingsSound(faults fault.List) bool {
	return !slices.ContainsFunc(faults, func(f fault.Fault) bool {
		return f.What == noColumn || slices.ContainsFunc(readingColumns, func(c csvtable.Column) bool {
			return f.What == fmt.Sprintf("the column %q is missing", c.Name)
		})
	})
}

// noColumn is how csvtable calls a heading that no column has.
const noColumn = "no column of this table"
