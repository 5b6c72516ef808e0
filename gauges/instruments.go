package gauges

import "scalepair/data/unit"

// Instruments are the builder's measuring tools, stated once for a file. A
// step is the least step of the display or scale; an accuracy a is a bound:
// the instrument may be wrong by up to +-a, the same way every time; a
// repeatability is a standard deviation.
type Instruments struct {
	BalanceResolution    unit.Mass   `toml:"balance_resolution" json:"balance_resolution_g" range:"0.000001 g, 10 g"`
	BalanceRepeatability unit.Mass   `toml:"balance_repeatability" json:"balance_repeatability_g" range:"0 g, 10 g"`
	BalanceAccuracy      unit.Mass   `toml:"balance_accuracy" json:"balance_accuracy_g" range:"0 g, 10 g"`
	RulerResolution      unit.Length `toml:"ruler_resolution" json:"ruler_resolution_mm" range:"0.001 mm, 20 mm"`
	RulerAccuracy        unit.Length `toml:"ruler_accuracy" json:"ruler_accuracy_mm" range:"0 mm, 20 mm"`
	CaliperResolution    unit.Length `toml:"caliper_resolution" json:"caliper_resolution_mm" range:"0.0001 mm, 1 mm"`
	CaliperAccuracy      unit.Length `toml:"caliper_accuracy" json:"caliper_accuracy_mm" range:"0 mm, 1 mm"`

	// Of the scales for the hung weight.
	HungResolution unit.Mass `toml:"hung_resolution" json:"hung_resolution_g" range:"0 g, 1 kg"`
	HungAccuracy   unit.Mass `toml:"hung_accuracy" json:"hung_accuracy_g" range:"0 g, 1 kg"`

	Pitch           unit.Cents `toml:"pitch_uncertainty_cents" json:"pitch_standard_uncertainty_cents" range:"0, 100"` // standard uncertainty of a sounded pitch; 0: 2 cents
	Gravity         float64    `toml:"gravity_m_s2" json:"-" range:"9.76, 9.84"`                                       // m/s2; 0: anywhere on the ground
	GravityAccuracy float64    `toml:"gravity_accuracy_m_s2" json:"-" range:"0, 0.1"`                                  // m/s2

	// EstimateOutside lets a listed gauge be estimated outside the fitted diameters.
	EstimateOutside bool `toml:"estimate_outside" json:"estimate_outside"`
}

// DefaultInstruments gives a kitchen table's tools where nothing was stated: a
// 0.01 g balance, a 1 mm ruler, 0.01 mm calipers, 1 g scales for the hung
// weight, pitch to 2 cents, and gravity anywhere on the ground. All but
// gravity are judgement and have to be printed with the result.
//
// Gravity runs from 9.780 m/s2 at the equator to 9.832 m/s2 at the poles;
// 9.80665 with 0.15 % covers it.
func DefaultInstruments() Instruments {
	return Instruments{
		BalanceResolution: unit.Grams(0.01),
		RulerResolution:   unit.MM(1),
		CaliperResolution: unit.MM(0.01),
		HungResolution:    unit.Grams(1),
		Pitch:             2,
	}
}

// GravityUsed is the gravity that hung readings are worked out with and its
// standard uncertainty, m/s2.
func (t Instruments) GravityUsed() (g, u float64) {
	if t.Gravity == 0 {
		return unit.StandardGravity, 0.0015 * unit.StandardGravity
	}
	return t.Gravity, BoundU(t.GravityAccuracy)
}

// pitch is the standard uncertainty of a sounded pitch.
func (t Instruments) pitch() unit.Cents { return first(t.Pitch, DefaultInstruments().Pitch) }

// first is the first value that was given.
func first[T ~float64](x, otherwise T) T {
	if x != 0 {
		return x
	}
	return otherwise
}
