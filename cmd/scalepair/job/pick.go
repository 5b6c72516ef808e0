package job

import (
	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Pick is a pair and a set as far as they are settled: lengths 0 and a nil
// set are open.
type Pick struct {
	Bass, Treble unit.Length
	Gauges       []int // by string, indexes into the stock
}

// HasPair says that the pair is settled.
func (p Pick) HasPair() bool { return p.Bass > 0 }

// Pick gives what command line and build file settle: the pair of [chosen] or
// the only pair of [scales], and the gauges of the command line, of [chosen]
// or of [strings], in this order.
func (j *Job) Pick() (Pick, error) {
	b := j.Build
	var p Pick
	switch {
	case b.Chosen != nil:
		p.Bass, p.Treble = b.Chosen.Bass, b.Chosen.Treble
	case len(b.Scales.Bass) == 1 && len(b.Scales.Treble) == 1:
		p.Bass, p.Treble = b.Scales.Bass[0], b.Scales.Treble[0]
	}
	var faults fault.List
	switch {
	case b.Chosen != nil && b.Chosen.Gauges != nil:
		p.Gauges = j.indexes(b.Chosen.Gauges, j.gaugePlace("chosen.gauges"), &faults)
	case b.Strings.Gauges != nil:
		p.Gauges = j.indexes(b.Strings.Gauges, j.gaugePlace("strings.gauges"), &faults)
	}
	return p, faults.Err()
}
