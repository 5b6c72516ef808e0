package unit

import (
	"fmt"
	"math"
	"strconv"
)

// jsonDigits is how many significant digits a number of JSON has at most: far
// more than a builder can measure, and few enough that the same build prints
// the same bytes on every processor.
const jsonDigits = 9

// Rounded returns x rounded to the digits of JSON.
func Rounded(x float64) float64 {
	r, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', jsonDigits, 64), 64)
	return r + 0
}

func marshal(x float64) ([]byte, error) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil, fmt.Errorf("%v is no number of JSON", x)
	}
	return strconv.AppendFloat(nil, x+0, 'g', jsonDigits, 64), nil // + 0: never -0
}

// In JSON a quantity is a number in a fixed unit, whatever unit is printed, and
// the key ends in that unit: a length in mm.
func (l Length) MarshalJSON() ([]byte, error) { return marshal(l.MM()) }

// MarshalJSON returns grams.
func (m Mass) MarshalJSON() ([]byte, error) { return marshal(m.G()) }

// MarshalJSON returns newtons.
func (f Force) MarshalJSON() ([]byte, error) { return marshal(f.N()) }

// MarshalJSON returns grams per metre.
func (w LinearDensity) MarshalJSON() ([]byte, error) { return marshal(w.GramsPerMetre()) }

// MarshalJSON returns degrees.
func (a Angle) MarshalJSON() ([]byte, error) { return marshal(a.Degrees()) }

// MarshalJSON returns percent.
func (r Ratio) MarshalJSON() ([]byte, error) { return marshal(r.Percent()) }

// MarshalJSON returns cents.
func (c Cents) MarshalJSON() ([]byte, error) { return marshal(float64(c)) }

// MarshalJSON returns hertz.
func (f Frequency) MarshalJSON() ([]byte, error) { return marshal(float64(f)) }

// MarshalJSON returns grams per cubic centimetre.
func (d Density) MarshalJSON() ([]byte, error) { return marshal(d.GramsPerCM3()) }

// MarshalJSON returns the number itself.
func (n Number) MarshalJSON() ([]byte, error) { return marshal(float64(n)) }

// UnmarshalText reads what ParseLength reads.
func (l *Length) UnmarshalText(text []byte) error { return set(l, ParseLength, text) }

// UnmarshalText reads what ParseMass reads.
func (m *Mass) UnmarshalText(text []byte) error { return set(m, ParseMass, text) }

// UnmarshalText reads what ParseForce reads.
func (f *Force) UnmarshalText(text []byte) error { return set(f, ParseForce, text) }

// UnmarshalText reads what ParseLinearDensity reads.
func (w *LinearDensity) UnmarshalText(text []byte) error { return set(w, ParseLinearDensity, text) }

// UnmarshalText reads what ParseAngle reads.
func (a *Angle) UnmarshalText(text []byte) error { return set(a, ParseAngle, text) }

// UnmarshalText reads what ParseLengthUnit reads.
func (u *LengthUnit) UnmarshalText(text []byte) error { return set(u, ParseLengthUnit, text) }

// UnmarshalText reads what ParseForceUnit reads.
func (u *ForceUnit) UnmarshalText(text []byte) error { return set(u, ParseForceUnit, text) }

// UnmarshalText reads "20 cents".
func (c *Cents) UnmarshalText(text []byte) error {
	return set(c, func(s string) (Cents, error) { return parse[Cents](intervals, s, "") }, text)
}

// UnmarshalText reads "442 Hz", or a plain number of hertz.
func (f *Frequency) UnmarshalText(text []byte) error {
	return set(f, func(s string) (Frequency, error) { return parse[Frequency](frequencies, s, "Hz") }, text)
}

// UnmarshalText reads percent, "75 %", or a plain number as a part of one.
func (r *Ratio) UnmarshalText(text []byte) error {
	return set(r, func(s string) (Ratio, error) {
		if x, err := ParseNumber(s); err == nil {
			return Ratio(x), nil
		}
		return parse[Ratio](ratios, s, "")
	}, text)
}

func set[T any](to *T, read func(string) (T, error), text []byte) (err error) {
	*to, err = read(string(text))
	return err
}

// String returns the length in millimetres, exactly, so that ParseLength returns
// the same value. For output in rounded figures see LengthUnit.Format.
func (l Length) String() string { return exact(float64(l), 1000) + " mm" }

// String returns the mass in grams, exactly.
func (m Mass) String() string { return exact(float64(m), 1000) + " g" }

// String returns the force in newtons, exactly.
func (f Force) String() string { return exact(float64(f), 1) + " N" }

// String returns the linear density in grams per metre, exactly.
func (w LinearDensity) String() string { return exact(float64(w), 1000) + " g/m" }
