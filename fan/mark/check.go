package mark

import (
	"scalepair/fan"
)

// Check judges what was measured against the layout. The error is a fault.List
// of every reading that cannot be meant so: no such fret, twice the same, marks
// out of order, inches taken for millimetres.
func Check(l *fan.Layout, readings []Reading, o Options) (Report, error) { return Report{}, nil }
