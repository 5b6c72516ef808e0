// Package chart draws small charts as SVG text: the fit of a wire family with
// its readings, the trade-off between scale pairs, and the tensions of a set
// of strings. Plain data goes in, one complete svg element comes out.
//
// What matters is told by shape, line and label; colour only helps, so that a
// grey print and a colour-blind eye lose nothing. Ink is currentColor, the
// other colours are CSS variables with defaults (--chart-accent, --chart-warn,
// --chart-quiet, --chart-paper), so that a chart follows its page into the
// dark. Lengths are in user units, 720 across, meant as pixels; x runs right,
// y down. The same data give the same bytes.
package chart

import (
	"math"

	"scalepair/data/fault"
)

// Kind says what a point of a fit is.
type Kind int

// The kinds of points: a reading, a reading that stands off the fit, a gauge
// estimated from the fit.
const (
	Reading Kind = iota
	Suspect
	Estimated
)

// FitPoint is one gauge or reading. X and Y are in the units of the axes'
// labels, both above 0; U is the standard uncertainty of Y, 0 for none. Label
// is printed beside suspects only. Curve names the curve that the point is
// judged against: with it the point stands in the lower panel too, which shows
// how far it is off, in percent.
type FitPoint struct {
	X, Y, U float64
	Label   string
	Kind    Kind
	Curve   string
}

// Curve is one fitted line through at least two points in rising X, in the
// axes' units, all above 0. Between them it is straight on logarithmic axes,
// as a power law is.
type Curve struct {
	Name string
	X, Y []float64
}

// Fit is a chart of readings against their fit on two logarithmic axes. Bars
// show two standard uncertainties.
type Fit struct {
	Title, XLabel, YLabel string
	Curves                []Curve
	Points                []FitPoint
}

// Pair is one scale pair of a trade-off. Front marks those that no other pair
// beats in everything; the front's lower edge, as far as these two axes show
// it, is joined by a line. Best is ringed and labelled, the others of the
// front are labelled where there is room.
type Pair struct {
	X, Y        float64
	Label       string
	Front, Best bool
}

// TradeOff is a chart of scale pairs by two costs, less being better. Ringed
// says in the legend what the ringed pairs are; "best" when empty.
type TradeOff struct {
	Title, XLabel, YLabel string
	Ringed                string
	Pairs                 []Pair
}

// Bar is one string: its value, the standard uncertainty (0 for none), the
// target (0 for none), all in the unit of the axis and not negative. Note is
// printed at the end of its line.
type Bar struct {
	Label            string
	Value, U, Target float64
	Note             string
}

// Bars is a chart of horizontal bars, the first on top. Whiskers show two
// standard uncertainties, a tick the target.
type Bars struct {
	Title, XLabel string
	Bars          []Bar
}

// width is the width of every chart in user units.
const width = 720.0

// check collects what cannot be drawn.
type check struct {
	title  string
	faults fault.List
}

func (c *check) refuse(what, given, remedy string) {
	c.faults.Add(fault.Place{Input: "chart " + c.title}, what, given, remedy)
}

// drawable bounds the figures of a chart, far beyond anything on a bench, so
// that no sum or ratio of them overflows.
const drawable = 1e12

// within asks for a finite value of drawable size.
func (c *check) within(v float64, what, label string) bool {
	if math.IsNaN(v) || math.Abs(v) > drawable {
		c.refuse(what+" is no drawable number", label, "give a finite value")
		return false
	}
	return true
}

// positive asks for a value that a logarithmic axis can show.
func (c *check) positive(v float64, what, label string) {
	if c.within(v, what, label) && v < 1/drawable {
		c.refuse(what+" is not above 0", label, "a logarithmic axis needs values above 0")
	}
}

// notNegative asks for a value from 0.
func (c *check) notNegative(v float64, what, label string) {
	if c.within(v, what, label) && v < 0 {
		c.refuse(what+" is below 0", label, "give a value from 0")
	}
}
