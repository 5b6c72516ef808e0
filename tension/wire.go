package tension

// Wire is one string as the physics sees it. All SI; 0 is 'not known' in
// every field but LinearDensity, which must be above 0.
type Wire struct {
	LinearDensity  float64 // w, mass per length of the slack string, kg/m
	ULinearDensity float64 // standard uncertainty of w, kg/m
	CoreAreaM2     float64 // area of the wire that carries the tension, m2
	CoreDiaM       float64 // its diameter (hexagonal: across flats), m
	UCoreDiaM      float64 // standard uncertainty of the diameter, m
	EA             float64 // stretch stiffness of the core, N
	EI             float64 // bending stiffness of the core, N m2
	StrengthPa     float64 // least tensile strength of the core, Pa

	OutsideTable bool // StrengthPa was taken beyond the ends of its table
	Plain        bool // no wrap
}

// Compliance is the strain a newton makes, 1/EA in 1/N, and 0 where the
// stiffness is not known, so that the string is then taken not to stretch.
func (w Wire) Compliance() float64 {
	if w.EA == 0 {
		return 0
	}
	return 1 / w.EA
}

// mostEA in N is a steel bar two metres thick: past any string, and far from
// overflow.
const mostEA = 1e12

// mostLinearDensity in kg/m is a cable, not a string.
const mostLinearDensity = 1e6
