package tension

import "scalepair/data/unit"

// Wire is one string as the physics sees it; 0 is 'not known' in every field
// but LinearDensity, which must be above 0.
type Wire struct {
	LinearDensity  unit.LinearDensity // w, of the slack string
	ULinearDensity unit.LinearDensity // standard uncertainty of w
	CoreArea       float64            // area of the wire that carries the tension, m2
	CoreDia        unit.Length        // its diameter (hexagonal: across flats)
	UCoreDia       unit.Length        // standard uncertainty of the diameter
	EA             unit.Force         // stretch stiffness of the core
	EI             float64            // bending stiffness of the core, N m2
	Strength       float64            // least tensile strength of the core, Pa

	OutsideTable bool // Strength was taken beyond the ends of its table
	Plain        bool // no wrap
}

// Compliance is the strain a newton makes, 1/EA in 1/N, and 0 where the
// stiffness is not known, so that the string is then taken not to stretch.
func (w Wire) Compliance() float64 {
	if w.EA == 0 {
		return 0
	}
	return 1 / w.EA.N()
}
