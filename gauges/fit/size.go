package fit

import (
	"cmp"
	"math"
	"slices"

	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/reading"
)

// How far beyond its fitted diameters a fit may size a gauge, as a multiple
// (judgement: the next few sizes of a kind).
const sizedBeyond = 1.5

// Sized is a gauge that is not in stock: of the kind of one that is, of another
// linear density, as thick as the kind's fit makes it, and with the core of the
// gauge in stock that comes nearest. It has no label. False where the kind has no
// fit that reaches so far.
func (s Stock) Sized(like gauges.Gauge, w unit.LinearDensity) (gauges.Gauge, bool) {
	kind := func(g gauges.Gauge) bool {
		return reading.Key(g.Family) == reading.Key(like.Family) && (!g.IsPlain() || g.Material == like.Material)
	}
	at := slices.IndexFunc(s.Fits, func(f Fit) bool { return kind(gauges.Gauge{Family: f.Family, Material: f.Material}) })
	if at < 0 || !(w > 0) {
		return gauges.Gauge{}, false
	}
	f := s.Fits[at]
	apart := func(g gauges.Gauge) float64 {
		if !kind(g) || f.Law == WrapDensity && g.Core == 0 {
			return math.Inf(1)
		}
		return math.Abs(math.Log(float64(g.LinearDensity / w)))
	}
	g := slices.MinFunc(s.Gauges, func(a, b gauges.Gauge) int { return cmp.Compare(apart(a), apart(b)) })
	weighs := func(outer unit.Length) unit.LinearDensity { return f.LinearDensity(outer, g.Core, g.Shape) }
	lo, hi := f.MinOuter/sizedBeyond, f.MaxOuter*sizedBeyond
	if weighs(lo) > w || weighs(hi) < w {
		return gauges.Gauge{}, false
	}
	for range 50 { // bisection: the law rises with the diameter
		if mid := (lo + hi) / 2; weighs(mid) < w {
			lo = mid
		} else {
			hi = mid
		}
	}
	g.Label, g.Outer, g.LinearDensity = "", hi, w
	g.Readings, g.Suspect, g.Disagrees, g.Estimated, g.Winding = 0, false, false, true, 0
	if g.IsPlain() {
		g.CoreFromOutside(nil)
	}
	return g, true
}
