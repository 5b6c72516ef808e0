package job

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"scalepair/data/fault"
)

// fewestToTell is the fewest strings that tell a list written high string
// first from an odd choice. Judgement.
const fewestToTell = 3

// gaugesHighFirst reports every list of gauges that was written high string
// first: each gauge is thicker than the one before it, so that the thinnest
// would lie on the lowest string. With ordering = false it may be meant so.
func (j *Job) gaugesHighFirst() error {
	if !j.Build.Strings.Ordering {
		return nil
	}
	var faults fault.List
	b := j.Build
	j.highFirst(b.Strings.Gauges, b.Place("strings.gauges"), &faults)
	if b.Chosen != nil {
		j.highFirst(b.Chosen.Gauges, b.Place("chosen.gauges"), &faults)
	}
	if b.Reference != nil {
		j.highFirst(b.Reference.Gauges, b.Place("reference.gauges"), &faults)
	}
	for i, c := range b.Columns {
		j.highFirst(c.Gauges, b.Place(fmt.Sprintf("compare[%d].gauges", i)), &faults)
	}
	return faults.Err()
}

// highFirst reports a list of labels, string 1 first, in which every gauge is
// thicker than its neighbour on the bass side. A label that is not in stock is
// for others to report.
func (j *Job) highFirst(labels []string, at fault.Place, faults *fault.List) {
	if len(labels) < fewestToTell {
		return
	}
	outer := make([]float64, len(labels))
	for i, label := range labels {
		g, err := j.Stock.Lookup(label)
		if err != nil || i > 0 && float64(g.Outer) >= outer[i-1] {
			return
		}
		outer[i] = float64(g.Outer)
	}
	written := slices.Clone(labels)
	slices.Reverse(written)
	quoted := make([]string, len(labels))
	for i, label := range labels {
		quoted[i] = strconv.Quote(label)
	}
	faults.Add(at, "every gauge is thicker than the one before it", strings.Join(written, " "),
		fmt.Sprintf("low string first? write [%s]; a set that is meant so needs ordering = false under [strings]", strings.Join(quoted, ", ")))
}
