// Package chart draws small charts as SVG text: the fit of a wire family with
// its readings, the trade-off between scale pairs, and the tensions of a set
// of strings. Plain data goes in, one complete svg element comes out.
//
// What matters is told by shape and label, colour only helps, so that a grey
// print and a colour-blind eye lose nothing. Colours come from CSS variables
// with defaults and from currentColor, so a chart follows its page into the
// dark. The same data give the same bytes.
package chart

import "errors"

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
// is printed beside suspects only.
type FitPoint struct {
	X, Y, U float64
	Label   string
	Kind    Kind
}

// Curve is one fitted line through points in rising X, in the axes' units.
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

// SVG draws the chart. Values that are not finite or not above 0, and a chart
// without points, are errors.
func (f Fit) SVG() (string, error) { return "", errors.ErrUnsupported }

// Pair is one scale pair of a trade-off. Front marks those that no other pair
// beats in everything; they are joined in rising X. Best is drawn on its own
// and labelled, the others of the front are labelled where there is room.
type Pair struct {
	X, Y        float64
	Label       string
	Front, Best bool
}

// TradeOff is a chart of scale pairs by two costs, less being better.
type TradeOff struct {
	Title, XLabel, YLabel string
	Pairs                 []Pair
}

// SVG draws the chart. Values that are not finite, and a chart without pairs,
// are errors.
func (t TradeOff) SVG() (string, error) { return "", errors.ErrUnsupported }

// Bar is one string: its value, the standard uncertainty (0 for none), the
// target (0 for none), all in the unit of the axis and not negative. Note is
// printed after the bar.
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

// SVG draws the chart. Values that are not finite or below 0, and a chart
// without bars, are errors.
func (b Bars) SVG() (string, error) { return "", errors.ErrUnsupported }
