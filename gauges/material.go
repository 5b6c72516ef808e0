package gauges

import "scalepair/data"

// MusicWire tells whether the core is music wire, whose strength follows from
// its diameter.
func (g Gauge) MusicWire() bool { return g.Material == data.MusicWire }

// Music wire thicker than this is less stiff; Shigley, Mechanical Engineering
// Design, Table 10-5 parts the rows between 0.032 and 0.033 in.
const (
	thickWireM  = 0.0325 * 0.0254
	thickWirePa = 200e9
)

// youngs is Young's modulus of a core of diameter d (m) in Pa, 0 unknown.
// Music wire: 203.4 GPa to 0.81 mm, 200 GPa above (for strings, which end
// below the table's next step at 1.6 mm). Source: Shigley, Table 10-5.
func youngs(m data.Material, d float64) float64 {
	if m.Name == data.MusicWire && d > thickWireM && m.YoungsPa > thickWirePa {
		return thickWirePa
	}
	return m.YoungsPa
}

// material finds what a core is made of: the list's row, music wire where
// nothing was named, or a material that brings its own values.
func material(r *Reading) (data.Material, error) {
	name := r.Material
	if name == "" {
		name = data.MusicWire
	}
	m, err := data.LookupMaterial(name)
	if err != nil && r.DensityKgM3 == 0 && r.YoungsPa == 0 {
		return data.Material{}, err
	}
	if err != nil {
		m.Name = name
	}
	m.YoungsPa = youngs(m, r.coreM())
	if r.YoungsPa > 0 || r.DensityKgM3 > 0 || r.StrengthPa > 0 {
		m = withOwn(m, r)
	}
	return m, nil
}

// coreM is the diameter of the wire that carries the tension, 0 unknown.
func (r *Reading) coreM() float64 {
	if isPlain(r.Construction) {
		return r.OuterM
	}
	return r.CoreM
}

func isPlain(family string) bool { return labelKey(family) == Plain }

// ownDensityU is the standard uncertainty of a density that the builder states
// without one, as a fraction. Judgement.
const ownDensityU = 0.01

// withOwn puts the builder's own figures before the list's.
func withOwn(m data.Material, r *Reading) data.Material {
	if r.DensityKgM3 > 0 {
		m.DensityKgM3, m.DensityU = r.DensityKgM3, ownDensityU*r.DensityKgM3
	}
	m.YoungsPa = first(r.YoungsPa, m.YoungsPa)
	m.StrengthPa = first(r.StrengthPa, m.StrengthPa)
	return m
}
