package job

import "scalepair/gauges"

// Tools are the measuring instruments of [measuring], with the defaults of
// package gauges for what it leaves open.
func (j *Job) Tools() gauges.Instruments { return instruments(j.Build) }

// StockWith is the stock with further gauges behind it, which may lie outside
// the weighed diameters: listed ones come out as the fits would have them.
func (j *Job) StockWith(more []gauges.Reading) (gauges.Stock, error) {
	o := j.options()
	o.Extrapolate = true
	readings := append(append([]gauges.Reading{}, j.Readings...), more...)
	return gauges.Combine(readings, constructions(j.Build), instruments(j.Build), o)
}
