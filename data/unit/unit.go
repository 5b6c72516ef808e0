// Package unit holds the quantities that a builder may give in several units:
// lengths, masses, forces, linear densities and angles. It defines the units,
// reads them from text and prints them.
//
// A quantity is a float64 in SI base units: metres, kilograms, newtons,
// kilograms per metre; an angle is a plain float64 in radians. Formulas unwrap
// once into locals named as in the equation and wrap once.
//
// Text without a unit is refused. Every parser takes an exact decimal or a
// fraction, multiplies it by the unit's exact factor and rounds once, so
// "648 mm" is the float64 nearest to 0.648 and String gives the same text
// back. On an error the value is 0.
package unit

// Length is a length in metres.
type Length float64

// Mass is a mass in kilograms.
type Mass float64

// Force is a force in newtons.
type Force float64

// LinearDensity is a mass per length in kilograms per metre.
type LinearDensity float64

// MM gives the length of x millimetres.
func MM(x float64) Length { return Length(x / 1000) }

// Inches gives the length of x inches.
func Inches(x float64) Length { return Length(x * Inch) }

// MM gives the length in millimetres.
func (l Length) MM() float64 { return float64(l) * 1000 }

// Inches gives the length in inches.
func (l Length) Inches() float64 { return float64(l) / Inch }

// Grams gives the mass of x grams.
func Grams(x float64) Mass { return Mass(x / 1000) }

// G gives the mass in grams.
func (m Mass) G() float64 { return float64(m) * 1000 }

// Kg gives the mass in kilograms.
func (m Mass) Kg() float64 { return float64(m) }

// N gives the force in newtons.
func (f Force) N() float64 { return float64(f) }

// Lbf gives the force in pounds-force.
func (f Force) Lbf() float64 { return float64(f) / PoundForce }

// Kgf gives the force in kilograms-force.
func (f Force) Kgf() float64 { return float64(f) / KilogramForce }

// GramsPerMetre gives the linear density in g/m.
func (w LinearDensity) GramsPerMetre() float64 { return float64(w) * 1000 }

// PoundsPerInch gives the linear density in lb/in.
func (w LinearDensity) PoundsPerInch() float64 { return float64(w) / PoundPerInch }
