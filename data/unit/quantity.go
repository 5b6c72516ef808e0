package unit

import (
	"encoding/json"
	"math"
	"strconv"
)

// Angle is an angle in radians.
type Angle float64

// Ratio is a part of a whole: 0.25 is 25 %. It is printed in percent.
type Ratio float64

// Cents is an interval in hundredths of an equal-tempered semitone.
type Cents float64

// Frequency is a frequency in hertz.
type Frequency float64

// Number is a plain number of a result.
type Number float64

// Degree is one degree in radians.
const Degree = math.Pi / 180

// Degrees gives the angle of x degrees.
func Degrees(x float64) Angle { return Angle(x * Degree) }

// Degrees gives the angle in degrees.
func (a Angle) Degrees() float64 { return float64(a) / Degree }

// Rad gives the angle in radians.
func (a Angle) Rad() float64 { return float64(a) }

// Percent gives the ratio of x percent.
func Percent(x float64) Ratio { return Ratio(x / 100) }

// Percent gives the ratio in percent.
func (r Ratio) Percent() float64 { return 100 * float64(r) }

// M gives the length in metres.
func (l Length) M() float64 { return float64(l) }

// KgPerM gives the linear density in kilograms per metre.
func (w LinearDensity) KgPerM() float64 { return float64(w) }

// Hz gives the frequency in hertz.
func (f Frequency) Hz() float64 { return float64(f) }

// Value gives the interval as a number of cents.
func (c Cents) Value() float64 { return float64(c) }

// Uncertain is a value with its standard uncertainty, both of one quantity. A U
// of 0 says that none is known.
type Uncertain[Q ~float64] struct{ Value, U Q }

// jsonDigits is how many significant digits a number of JSON has at most: far
// more than a builder can measure, and few enough that the same build prints
// the same bytes on every processor.
const jsonDigits = 9

// Rounded gives x rounded to the digits of JSON.
func Rounded(x float64) float64 {
	r, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', jsonDigits, 64), 64)
	return r + 0
}

func marshal(x float64) ([]byte, error) { return json.Marshal(Rounded(x)) }

// In JSON a quantity is a number in a fixed unit, whatever unit is printed, and
// the key ends in that unit: a length in mm.
func (l Length) MarshalJSON() ([]byte, error) { return marshal(l.MM()) }

// MarshalJSON gives grams.
func (m Mass) MarshalJSON() ([]byte, error) { return marshal(m.G()) }

// MarshalJSON gives newtons.
func (f Force) MarshalJSON() ([]byte, error) { return marshal(f.N()) }

// MarshalJSON gives grams per metre.
func (w LinearDensity) MarshalJSON() ([]byte, error) { return marshal(w.GramsPerMetre()) }

// MarshalJSON gives degrees.
func (a Angle) MarshalJSON() ([]byte, error) { return marshal(a.Degrees()) }

// MarshalJSON gives percent.
func (r Ratio) MarshalJSON() ([]byte, error) { return marshal(r.Percent()) }

// MarshalJSON gives cents.
func (c Cents) MarshalJSON() ([]byte, error) { return marshal(float64(c)) }

// MarshalJSON gives hertz.
func (f Frequency) MarshalJSON() ([]byte, error) { return marshal(float64(f)) }

// MarshalJSON gives the number itself.
func (n Number) MarshalJSON() ([]byte, error) { return marshal(float64(n)) }

// UnmarshalText reads what ParseLength reads.
func (l *Length) UnmarshalText(text []byte) (err error) {
	*l, err = ParseLength(string(text))
	return err
}

// UnmarshalText reads what ParseMass reads.
func (m *Mass) UnmarshalText(text []byte) (err error) {
	*m, err = ParseMass(string(text))
	return err
}

// UnmarshalText reads what ParseForce reads.
func (f *Force) UnmarshalText(text []byte) (err error) {
	*f, err = ParseForce(string(text))
	return err
}

// UnmarshalText reads what ParseLinearDensity reads.
func (w *LinearDensity) UnmarshalText(text []byte) (err error) {
	*w, err = ParseLinearDensity(string(text))
	return err
}

// UnmarshalText reads what ParseAngle reads.
func (a *Angle) UnmarshalText(text []byte) (err error) {
	*a, err = ParseAngle(string(text))
	return err
}

// UnmarshalText reads what ParseLengthUnit reads.
func (u *LengthUnit) UnmarshalText(text []byte) (err error) {
	*u, err = ParseLengthUnit(string(text))
	return err
}

// UnmarshalText reads what ParseForceUnit reads.
func (u *ForceUnit) UnmarshalText(text []byte) (err error) {
	*u, err = ParseForceUnit(string(text))
	return err
}
