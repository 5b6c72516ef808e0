package fan

import (
	"fmt"
	"strconv"
)

// checkSpacing checks one end's rule with the lists it needs.
func (f *faults) checkSpacing(key string, s Spec, spacing Spacing) {
	switch spacing.Rule {
	case EqualCentres:
	case EqualGaps:
		f.checkDiameters(s)
	case Listed:
		f.checkFractions(key, s.Strings, spacing.Fractions)
	case LikeNut:
		if key == keyNutSpacing {
			f.add(key, "the nut cannot be spaced like the nut", "", "this rule is for the saddles")
		}
	default:
		f.add(key, "the spacing rule is unknown", strconv.Itoa(int(spacing.Rule)),
			"equal centres, equal gaps, a list, or (saddles) like the nut")
	}
}

func (f *faults) checkDiameters(s Spec) {
	if len(s.Diameters) != s.Strings {
		f.add(keyGauges, "equal gaps need the diameter of every string", fmt.Sprintf("%d diameters", len(s.Diameters)),
			fmt.Sprintf("give %d gauges, or take equal centres", s.Strings))
		return
	}
	for i, d := range s.Diameters {
		name := fmt.Sprintf("the diameter of string %d", i+1)
		if f.finite(keyGauges, name, d.M()) && (d <= 0 || d > maxDiameter) {
			f.add(keyGauges, name+" is out of range", number(d.MM())+" mm", fmt.Sprintf("over 0 and up to %s mm", number(maxDiameter.MM())))
		}
	}
}

func (f *faults) checkFractions(key string, count int, fractions []float64) {
	if len(fractions) != count {
		f.add(key, "the list of string places has another length than there are strings",
			fmt.Sprintf("%d places", len(fractions)), fmt.Sprintf("one for each of the %d strings", count))
		return
	}
	for i, v := range fractions {
		if !f.finite(key, fmt.Sprintf("the place of string %d", i+1), v) {
			return
		}
		if i > 0 && v <= fractions[i-1] {
			f.add(key, fmt.Sprintf("strings %d and %d cross or lie on each other", i, i+1),
				number(fractions[i-1])+", "+number(v), "the places must run on from one outer string to the other")
			return
		}
	}
	if len(fractions) > 0 && (fractions[0] != 0 || fractions[len(fractions)-1] != 1) {
		f.add(key, "the list of string places does not run from one outer string to the other",
			number(fractions[0])+" to "+number(fractions[len(fractions)-1]), "begin at 0 and end at 1")
	}
}
