package tension

import "math"

// MinStrength is the least tensile strength of music wire by diameter, in Pa.
func MinStrength(diaM float64) (pa float64, outside bool) { return 0, true }

// BreakingShare is the stress in the core over its least strength: 1 breaks.
//
//	share = (T/A)/S
//
// T: tension, N; A: area of the core, m2; S: strength, Pa. Where A or S is
// not known (0) the share is 0, which means 'not known', never 'safe'.
func BreakingShare(tensionN, areaM2, strengthPa float64) float64 {
	if areaM2 == 0 || strengthPa == 0 {
		return 0
	}
	return tensionN / areaM2 / strengthPa
}

// HighestFreq is the pitch in Hz at which plain wire of a length breaks,
// whatever its gauge.
//
//	f = sqrt(S (1 + S/E)/rho)/(2 L)
func HighestFreq(strengthPa, youngsPa, rho, lengthM float64) float64 {
	return math.Sqrt(strengthPa*(1+strengthPa/youngsPa)/rho) / (2 * lengthM)
}
