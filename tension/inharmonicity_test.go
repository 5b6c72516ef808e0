package tension_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Two forms in print: pi^3 E d^4/(64 T L^2) (Fletcher and Rossing, section
// 2.18) and 2 A with A = pi^3 r^4 E/(8 T L^2) (Rossing, The Science of Sound,
// 2nd ed., p. 291).
func TestInharmonicityAgainstBothPrintedForms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, l := drawWire(t), drawLength(t)
		force := rapid.Float64Range(20, 200).Draw(t, "T")
		d, e := w.CoreDia, w.EA/w.CoreArea
		b := spreadB(w, force, l)
		assert.InEpsilon(t, math.Pow(math.Pi, 3)*e*math.Pow(d, 4)/(64*force*l*l), b, 1e-12)
		assert.InEpsilon(t, 2*math.Pow(math.Pi, 3)*math.Pow(d/2, 4)*e/(8*force*l*l), b, 1e-12)
	})
}

// Young's formula in cents, d and l in cm (JASA 24(3), 1952), and his steel.
func TestInharmonicityAgainstYoung(t *testing.T) {
	w := steel(0.254e-3)
	b := spreadB(w, textbook(w.LinearDensity, 0.648, 329.63), 0.648)
	young := 3.4e13 * 0.0254 * 0.0254 / (329.63 * 329.63 * math.Pow(64.8, 4))
	assert.InEpsilon(t, young, 600/math.Ln2*b, 0.02, "per n squared")
	assert.InEpsilon(t, 25.5e6, w.EA/w.LinearDensity, 0.02, "Q over rho of his wire against Shigley's")
}

func TestInharmonicity(t *testing.T) {
	assert.Zero(t, cents10(0))
	rapid.Check(t, func(t *rapid.T) {
		b := rapid.Float64Range(1e-9, 1e-2).Draw(t, "B")
		partial10 := 10 * math.Sqrt(1+100*b)
		assert.InDelta(t, 1200*math.Log2(partial10/10), cents10(b), 1e-9)
	})
	assert.Zero(t, spreadB(wire{LinearDensity: 1e-3}, 70, 0.65), "core not known")
}
