package gauges

// MusicWire is the material of a core that is not named otherwise.
const MusicWire = "music wire"

// Material is one row of the material list.
type Material struct {
	Name         string
	DensityKgM3  float64
	UDensityKgM3 float64 // standard uncertainty
	YoungsPa     float64 // 0 unknown
	StrengthPa   float64 // 0 unknown, or by diameter for music wire
}

// Materials is a list of materials.
type Materials struct{ rows []Material }
