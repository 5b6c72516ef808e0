package job

import "scalepair/gauges"

// Tools are the measuring instruments of [measuring], with the defaults of
// package gauges for what it leaves open.
func (j *Job) Tools() gauges.Instruments { return instruments(j.Build) }
