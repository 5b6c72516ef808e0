// Package gauges turns a builder's readings into linear densities with honest
// uncertainties, and gives the table of the gauges that they make: weighed
// string ends, hung-weight pitch tests, and constructions from core and wrap.
//
// Every linear density keeps account of which errors it shares with others: a
// balance that reads heavy reads heavy for all gauges. The fit over the gauges
// of one kind, by which a slip shows and a gap can be filled, is in package fit,
// whose Combine most callers want.
//
// All values are in SI: metres, kilograms, kilograms per metre, hertz, newtons
// and pascals. An uncertainty is a standard uncertainty, one standard
// deviation; the 95 % interval of a linear density is Gauge.Within95, which knows
// that a rounding has bounds. A core diameter of 0 is unknown, and with it EA
// and EI are 0. Rules of uncertainty follow JCGM 100:2008, the Guide to the
// Expression of Uncertainty in Measurement, called the Guide below.
//
// Files in reading order: instruments.go (the measuring tools), material.go,
// construction.go (what a builder states); parts.go and value.go (a linear
// density and the parts of its uncertainty); weighing.go, hanging.go, wound.go
// (one of each); mean.go (several together), work.go (what is recorded of it);
// gauge.go (one gauge), entry.go (its rows put together), sanity.go (rows that
// cannot be), packing.go and table.go (all gauges), lookup.go (one of them by
// label), draw.go (at random).
package gauges
