// Package gauges turns a builder's own readings into linear densities with honest
// uncertainties: weighed string ends, hung-weight pitch tests, and
// constructions from core and wrap.
//
// Readings of one gauge are averaged, the gauges of one kind are fitted so
// that a slip shows and a gap can be filled, and every linear density keeps
// account of which errors it shares with others: a balance that reads heavy
// reads heavy for all gauges. The way through the package:
//
//	readings, err := gauges.ReadReadings(file, "readings.csv", nil)
//	stock, err := gauges.Combine(readings, nil, gauges.DefaultInstruments(), gauges.Options{})
//	gauge, err := stock.Lookup("010")
//
// All values are in SI: metres, kilograms, kilograms per metre, hertz, newtons
// and pascals. An uncertainty is a standard uncertainty, one standard
// deviation; the 95 % interval of a linear density is Gauge.Within95, which knows
// that a rounding has bounds. A core diameter of 0 is unknown, and with it EA
// and EI are 0.
//
// Rules of uncertainty follow JCGM 100:2008, the Guide to the Expression of
// Uncertainty in Measurement, called the Guide below.
package gauges
