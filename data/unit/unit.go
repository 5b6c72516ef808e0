// Package unit holds the quantities of this program: their types, their units,
// their reading from text and their printing.
//
// A quantity is a float64 in SI base units: metres, kilograms, newtons,
// kilograms per metre, radians. Formulas unwrap once into locals named as in
// the equation and wrap once.
//
// Text without a unit is refused. Every parser takes an exact decimal or a
// fraction, multiplies it by the unit's exact factor and rounds once, so
// "648 mm" is the float64 nearest to 0.648 and String gives the same text
// back. On an error the value is 0.
//
// In reading order: unit.go and quantity.go the types, constants.go and kinds.go
// the sizes of the units, parse.go the grammar, written.go the form in which a
// builder wrote a quantity, display.go the units to print in.
package unit

import "math"

// Length is a length in metres.
type Length float64

// Mass is a mass in kilograms.
type Mass float64

// Force is a force in newtons.
type Force float64

// LinearDensity is a mass per length in kilograms per metre.
type LinearDensity float64

// Density is a mass per volume in kilograms per cubic metre.
type Density float64

// GramsPerCM3 returns the density in grams per cubic centimetre.
func (d Density) GramsPerCM3() float64 { return float64(d) / 1000 }

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

// Uncertain is a value with its standard uncertainty, both of one quantity. A U
// of 0 says that none is known.
type Uncertain[Q ~float64] struct{ Value, U Q }

// Degree is one degree in radians.
const Degree = math.Pi / 180

// MM returns the length of x millimetres.
func MM(x float64) Length { return Length(x / 1000) }

// Inches returns the length of x inches.
func Inches(x float64) Length { return Length(x * Inch) }

// Grams returns the mass of x grams.
func Grams(x float64) Mass { return Mass(x / 1000) }

// Degrees returns the angle of x degrees.
func Degrees(x float64) Angle { return Angle(x * Degree) }

// Percent returns the ratio of x percent.
func Percent(x float64) Ratio { return Ratio(x / 100) }

// M returns the length in metres.
func (l Length) M() float64 { return float64(l) }

// MM returns the length in millimetres.
func (l Length) MM() float64 { return float64(l) * 1000 }

// Inches returns the length in inches.
func (l Length) Inches() float64 { return float64(l) / Inch }

// G returns the mass in grams.
func (m Mass) G() float64 { return float64(m) * 1000 }

// Kg returns the mass in kilograms.
func (m Mass) Kg() float64 { return float64(m) }

// N returns the force in newtons.
func (f Force) N() float64 { return float64(f) }

// Lbf returns the force in pounds-force.
func (f Force) Lbf() float64 { return float64(f) / PoundForce }

// Kgf returns the force in kilograms-force.
func (f Force) Kgf() float64 { return float64(f) / KilogramForce }

// KgPerM returns the linear density in kilograms per metre.
func (w LinearDensity) KgPerM() float64 { return float64(w) }

// GramsPerMetre returns the linear density in g/m.
func (w LinearDensity) GramsPerMetre() float64 { return float64(w) * 1000 }

// PoundsPerInch returns the linear density in lb/in.
func (w LinearDensity) PoundsPerInch() float64 { return float64(w) / PoundPerInch }

// Degrees returns the angle in degrees.
func (a Angle) Degrees() float64 { return float64(a) / Degree }

// Rad returns the angle in radians.
func (a Angle) Rad() float64 { return float64(a) }

// Percent returns the ratio in percent.
func (r Ratio) Percent() float64 { return 100 * float64(r) }

// Hz returns the frequency in hertz.
func (f Frequency) Hz() float64 { return float64(f) }

// Value returns the interval as a number of cents.
func (c Cents) Value() float64 { return float64(c) }
