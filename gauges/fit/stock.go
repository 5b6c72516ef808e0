// Package fit ties the gauges of one kind together: it fits a law to each
// family, judges every reading against the fit made without it, estimates the
// gauges that were not weighed, and says what to weigh next. The way through:
//
//	readings, err := reading.Read(file, "readings.csv", nil)
//	stock, err := fit.Combine(gauges.Input{Readings: readings, Instruments: gauges.DefaultInstruments()})
//	gauge, err := stock.Lookup("010")
//
// Files in reading order: stock.go (all of it together), family.go (which gauges a
// law ties together, and how they lie to it), law.go (the fitted line), judge.go
// (which readings to trust), estimate.go (the fit, and gauges without a reading),
// size.go (gauges that are not in stock), suspect.go (readings to look at again),
// slips.go (what may have happened), next.go (what to weigh next).
package fit

import (
	"math"
	"slices"

	"scalepair/data/fault"
	"scalepair/data/trace"
	"scalepair/gauges"
	"scalepair/gauges/reading"
)

// Stock is every gauge the builder can use, in the order of the file, with
// the fits that tie them together.
type Stock struct {
	Gauges []gauges.Gauge
	Fits   []Fit
	// LeftOut are the listed gauges that no fit reaches, by label, each with what
	// is missing. They matter to whoever asks for one.
	LeftOut []LeftOut

	tools gauges.Instruments
}

// LeftOut is a gauge that was listed without a reading and cannot be estimated.
type LeftOut struct {
	Label string
	Why   fault.Fault
}

// Combine makes the stock out of readings and constructions: linear densities
// with uncertainties, the fits, the suspects and the estimates. A listed gauge
// without reading or construction is estimated from the fit of its family; one
// that cannot be is left out. The error is a fault.List of every fault; the stock
// is then empty.
func Combine(in gauges.Input) (Stock, error) { return combine(in, "", nil) }

// Explain records how the linear density of one gauge was worked out.
func Explain(label string, in gauges.Input) ([]trace.Step, error) {
	tr := &trace.Trace{Digits: 9} // two readings of one gauge may differ in the fourth digit, and that difference is squared
	s, err := combine(in, label, tr)
	if err == nil {
		_, err = s.Lookup(label)
	}
	if err != nil {
		return nil, err
	}
	return tr.Steps, nil
}

func combine(in gauges.Input, label string, tr *trace.Trace) (Stock, error) {
	list, err := in.Table(label, tr)
	if err != nil {
		return Stock{}, err
	}
	s := Stock{Gauges: list, tools: in.Instruments}
	traceOf := func(of string) *trace.Trace {
		if reading.Key(of) == reading.Key(label) {
			return tr
		}
		return nil
	}
	kinds := families(list)
	p := FalseAlarm / float64(max(1, judgements(list, kinds)))
	for _, f := range kinds {
		f.judged = judge(f.dots, f.form(), p/2)
		f.mark(list, traceOf)
		fit, ok := f.makeFit(list)
		if ok {
			s.Fits = append(s.Fits, fit)
		}
		f.fill(list, fit, ok, in.Instruments.EstimateOutside, traceOf, &s.LeftOut)
	}
	markDisagreement(list, p)
	s.Gauges = slices.DeleteFunc(list, func(g gauges.Gauge) bool { return s.leftOut(g.Label) != nil })
	return s, nil
}

// Lookup finds a gauge by its label, as gauges.Lookup. Of one that was left out
// the error says why.
func (s Stock) Lookup(label string) (gauges.Gauge, error) {
	if err := s.leftOut(label); err != nil {
		return gauges.Gauge{}, err
	}
	return gauges.Lookup(s.Gauges, label)
}

// leftOut says why a gauge was left out; nil for any other.
func (s Stock) leftOut(label string) error {
	for _, l := range s.LeftOut {
		if reading.Key(l.Label) == reading.Key(label) {
			return l.Why
		}
	}
	return nil
}

// Named finds the gauges of several labels. The error is a fault.List of those
// that are not in stock.
func (s Stock) Named(labels []string) ([]gauges.Gauge, error) {
	var out []gauges.Gauge
	var faults fault.List
	for _, label := range labels {
		g, err := s.Lookup(label)
		faults.Include(fault.Place{}, err)
		out = append(out, g)
	}
	return out, faults.Err()
}

// Drawer prepares the stock for drawing at random.
func (s Stock) Drawer() *gauges.Drawer { return gauges.NewDrawer(s.Gauges) }

// percent shows a fraction in percent, without its sign.
func percent(x float64) string { return reading.Decimals(100*math.Abs(x), 1) }
