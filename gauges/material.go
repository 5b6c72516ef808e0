package gauges

import (
	"slices"

	"scalepair/data"
	"scalepair/data/unit"
	"scalepair/gauges/reading"
)

// Material is one of the builder's own, as the build file states it.
type Material struct {
	Name            string  `toml:"name"`
	Density         float64 `toml:"density_g_cm3" range:"0.5, 23"`
	DensityAccuracy float64 `toml:"density_accuracy_g_cm3" range:"0, 5"` // plus or minus; 0: 1 % standard uncertainty, judgement
	Youngs          float64 `toml:"youngs_gpa" range:"0.1, 1000"`        // 0 not known
	Strength        float64 `toml:"strength_mpa" range:"10, 10000"`      // 0 not known
}

// ownDensityU is the standard uncertainty of a density that the builder states
// without one, as a fraction. Judgement.
const ownDensityU = 0.01

// Music wire thicker than this is less stiff; Shigley, Mechanical Engineering
// Design, Table 10-5 divides the rows between 0.032 and 0.033 in.
const (
	thickWire   = unit.Length(0.0325 * unit.Inch)
	thickWirePa = 200e9
)

// lookUp finds a material by name: the builder's own, music wire where nothing
// was named, else the list's.
func lookUp(name string, own []Material) (data.Material, error) {
	if name == "" {
		name = data.MusicWire
	}
	i := slices.IndexFunc(own, func(m Material) bool { return reading.Key(m.Name) == reading.Key(name) })
	if i < 0 {
		return data.LookupMaterial(name)
	}
	m := own[i]
	out := data.Material{Name: m.Name, DensityKgM3: 1000 * m.Density, YoungsPa: 1e9 * m.Youngs, StrengthPa: 1e6 * m.Strength, StiffnessSource: "the build file"}
	out.DensityU = first(1000*BoundU(m.DensityAccuracy), ownDensityU*out.DensityKgM3)
	return out, nil
}

// materialOf finds what a gauge's core is made of; values that its readings
// bring themselves stand before those of the list.
//
// Young's modulus of music wire is 203.4 GPa to 0.81 mm and 200 GPa above (for
// strings, which end below the table's next step at 1.6 mm). Source: Shigley,
// Table 10-5.
func materialOf(r *reading.Reading, own []Material) (data.Material, error) {
	m, err := lookUp(r.Material, own)
	if err != nil && r.DensityKgM3 == 0 && r.YoungsPa == 0 {
		return data.Material{}, err
	}
	if err != nil {
		m.Name = r.Material
	}
	if m.Name == data.MusicWire && r.CoreWire() > thickWire {
		m.YoungsPa = min(m.YoungsPa, thickWirePa)
	}
	if r.DensityKgM3 > 0 {
		m.DensityKgM3, m.DensityU = r.DensityKgM3, ownDensityU*r.DensityKgM3
	}
	if r.YoungsPa > 0 {
		m.YoungsPa, m.StiffnessSource = r.YoungsPa, "the readings"
	}
	m.StrengthPa = first(r.StrengthPa, m.StrengthPa)
	return m, nil
}
