package gauges

import (
	"math"
	"slices"
	"strings"

	"scalepair/data/unit"
	"scalepair/gauges/reading"
)

// StepU is the standard uncertainty of a value rounded to whole steps.
//
//	u = d/sqrt(12)
//
// d: least step of display or scale, in the unit of u; the true value lies
// anywhere within half a step. Source: the Guide F.2.2.1.
func StepU[Q ~float64](d Q) Q { return d / Q(math.Sqrt(12)) }

// BoundU is the standard uncertainty of a value known to lie within +-a.
//
//	u = a/sqrt(3)
//
// a: half width of the range, in the unit of u. Source: the Guide 4.3.7.
func BoundU[Q ~float64](a Q) Q { return a / Q(math.Sqrt(3)) }

// RootSum puts independent parts of an uncertainty together: the root of the
// sum of their squares. Each part is sensitivity times uncertainty.
// Source: the Guide 5.1.2.
func RootSum(parts ...float64) float64 {
	sum := 0.0
	for _, p := range parts {
		sum += p * p
	}
	return math.Sqrt(sum)
}

// Part is an error of one named source that several values share. U is its
// standard uncertainty in the quantity it belongs to, with a sign: where two
// values carry the same source with opposite signs, the one is too large when
// the other is too small.
//
// Bounded says that the error lies anywhere within +-sqrt(3) U, all values
// alike, as a rounding does; else it counts as normal.
type Part struct {
	Source  string
	U       float64
	Bounded bool
}

// Names of the errors that several gauges share.
const (
	SourceCalipers = "calipers"

	sourceBalance = "balance"
	sourceRuler   = "ruler"
	sourceGravity = "gravity"
	sourceScales  = "scales for the hung weight"
	sourceClamps  = "clamps of hung strings" // the same hands and clamps hold them all
)

// CoreSource names the error of one gauge's core diameter.
func CoreSource(label string) string { return "core of " + label }

// Parts is a set of shared errors, sorted by source.
type Parts []Part

// Plus adds scale times each part of b.
func (a Parts) Plus(scale float64, b ...Part) Parts {
	out := slices.Clone(a)
	for _, p := range b {
		if p.U *= scale; p.U == 0 {
			continue
		}
		i, found := slices.BinarySearchFunc(out, p.Source, func(c Part, s string) int { return strings.Compare(c.Source, s) })
		if !found {
			out = slices.Insert(out, i, p)
			continue
		}
		out[i].U += p.U
		out[i].Bounded = out[i].Bounded && p.Bounded
	}
	return out
}

// U is the standard uncertainty that the parts make together.
func (a Parts) U() float64 {
	sum := 0.0
	for _, p := range a {
		sum += p.U * p.U
	}
	return math.Sqrt(sum)
}

// Of is the part of one source, 0 where there is none.
func (a Parts) Of(source string) float64 {
	for _, p := range a {
		if p.Source == source {
			return p.U
		}
	}
	return 0
}

// WoundTolerance is how far a wound string's outside may be from its nominal
// size: +-0.02 mm, judgement (no standard was found).
const WoundTolerance = unit.Length(0.02e-3)

// wireTolerance is the bound within which drawn wire keeps its nominal
// diameter.
//
//	+-0.0002 in to 0.010 in, +-0.0003 in to 0.028 in, +-0.0004 in above
//
// The table runs from 0.004 to 0.063 in; its ends are continued. Source: ASTM
// A228, as reproduced in a wire distributor's data page. For other materials
// judgement: the same.
func wireTolerance(d unit.Length) unit.Length {
	const slack = unit.Length(1e-9)
	switch {
	case d <= unit.Inches(0.010)+slack:
		return unit.Inches(0.0002)
	case d <= unit.Inches(0.028)+slack:
		return unit.Inches(0.0003)
	}
	return unit.Inches(0.0004)
}

// diameterParts are the errors of a diameter: nominal, within a tolerance, under
// the name of its own; or by the calipers, whose accuracy all diameters share.
func (t Instruments) diameterParts(own string, from reading.DiameterFrom, tolerance unit.Length) Parts {
	if from == reading.Measured {
		return Parts{}.Plus(1, Part{own, StepU(t.CaliperResolution).M(), true}, Part{SourceCalipers, BoundU(t.CaliperAccuracy).M(), true})
	}
	return Parts{}.Plus(1, Part{own, BoundU(tolerance).M(), true})
}
