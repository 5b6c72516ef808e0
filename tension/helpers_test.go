package tension_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
	"scalepair/data/trace"
	"scalepair/data/unit"
	"scalepair/tension"
)

var _ = testutil.Seed("271828")

// plain is round wire of a diameter in m, a modulus in Pa and a density in
// kg/m3.
func plain(d, youngs, rho float64) wire {
	a := math.Pi / 4 * d * d
	return wire{
		LinearDensity: rho * a, CoreArea: a, CoreDia: d, Plain: true,
		EA: youngs * a, EI: youngs * math.Pi / 64 * d * d * d * d,
	}
}

// steel is music wire up to 0.81 mm (Shigley, Table 10-5).
func steel(d float64) wire { return plain(d, 203.4e9, 7850) }

// wholeTone is a whole-tone bend at fret 5 of a treble string.
func wholeTone() bendAt {
	return bendAt{
		Length: 0.648, Pitch: 329.63, Fret: 5, TanSlant: 0.05, Rise: 200,
		Tails: ends{Nut: 0.06, Saddle: 0.025}, Reach: 0.045,
	}
}

// midpoint is a string without tails held at its middle.
func midpoint() bendAt {
	return bendAt{Length: 0.648, Pitch: 329.63, Fret: 12, Rise: 100, Reach: 0.3}
}

// oracle is the bent string by another route: points in the plane, one lump
// of mass, one spring.
type oracle struct {
	nut, saddle, rest, crown complex128 // x + iy, m
	tails, natural, mass, ea float64
}

func newOracle(w wire, at bendAt) oracle {
	fret := at.Length - at.Length/math.Pow(2, at.Fret/12)
	o := oracle{
		saddle: complex(at.Length, 0), rest: complex(fret, 0), crown: complex(at.TanSlant, 1),
		tails: at.Tails.Nut + at.Tails.Saddle, ea: w.EA,
	}
	// The open string: halve for the slack length at which spring, mass and
	// pitch agree.
	all := at.Length + o.tails
	lo, hi := all/3, all
	for range 200 {
		o.natural = (lo + hi) / 2
		o.mass = w.LinearDensity * o.natural
		if math.Sqrt(o.pull(all)/(o.mass/all))/(2*at.Length) > at.Pitch {
			lo = o.natural
		} else {
			hi = o.natural
		}
	}
	return o
}

// pull is the spring's force at a length of the whole string.
func (o oracle) pull(run float64) float64 { return o.ea * (run - o.natural) / o.natural }

func (o oracle) contact(y float64) complex128 {
	return o.rest + complex(y, 0)*o.crown
}

func (o oracle) run(y float64) float64 {
	p := o.contact(y)
	return abs(p-o.nut) + abs(o.saddle-p) + o.tails
}

func abs(z complex128) float64 { return math.Sqrt(real(z)*real(z) + imag(z)*imag(z)) }

// freq is the pitch at y, from the spring's force and the lump of mass.
func (o oracle) freq(y float64) float64 {
	run := o.run(y)
	return math.Sqrt(o.pull(run)*run/o.mass) / (2 * abs(o.saddle-o.contact(y)))
}

// energy is what the spring stores.
func (o oracle) energy(y float64) float64 {
	d := o.run(y) - o.natural
	return o.ea / 2 * d * d / o.natural
}

// bending force is the slope of the stored energy, by a central difference.
func (o oracle) bendingForce(y float64) float64 {
	const h = 2e-5
	return (8*(o.energy(y+h/2)-o.energy(y-h/2)) - (o.energy(y+h) - o.energy(y-h))) / (6 * h)
}

// valueOf is the value of the step with a symbol.
func valueOf(t *testing.T, steps []trace.Step, symbol string) float64 {
	t.Helper()
	for _, s := range steps {
		if s.Symbol == symbol {
			return s.Value
		}
	}
	require.Fail(t, "no such step", symbol)
	return 0
}

// The tests work with numbers in SI, as their independent routes do.

// wire is a tension.Wire in numbers.
type wire struct {
	LinearDensity, ULinearDensity, CoreArea, CoreDia, UCoreDia, EA, EI, Strength float64
	Plain                                                                        bool
}

func (w wire) real() *tension.Wire {
	return &tension.Wire{
		LinearDensity: unit.LinearDensity(w.LinearDensity), ULinearDensity: unit.LinearDensity(w.ULinearDensity),
		CoreArea: w.CoreArea, CoreDia: unit.Length(w.CoreDia), UCoreDia: unit.Length(w.UCoreDia),
		EA: unit.Force(w.EA), EI: w.EI, Strength: w.Strength, Plain: w.Plain,
	}
}

func (w wire) Compliance() float64 { return w.real().Compliance() }

// ends are tension.Tails in numbers, bendAt a tension.BendAt.
type ends struct{ Nut, Saddle float64 }

func (e ends) real() tension.Tails {
	return tension.Tails{Nut: unit.Length(e.Nut), Saddle: unit.Length(e.Saddle)}
}

type bendAt struct {
	Length, Pitch, Fret, TanSlant, Rise float64
	Tails                               ends
	Reach                               float64
}

func (at bendAt) real() tension.BendAt {
	return tension.BendAt{
		Length: unit.Length(at.Length), Pitch: unit.Frequency(at.Pitch), Fret: at.Fret, TanSlant: at.TanSlant,
		Rise: unit.Cents(at.Rise), Tails: at.Tails.real(), Reach: unit.Length(at.Reach),
	}
}

func openAt(w wire, length, pitch float64) float64 {
	return tension.Open(nil, *w.real(), unit.Length(length), unit.Frequency(pitch)).N()
}

func textbook(w, length, pitch float64) float64 {
	return tension.Textbook(unit.LinearDensity(w), unit.Length(length), unit.Frequency(pitch)).N()
}

// pitchAt turns Open round: sqrt(T (1 + T/EA)/w)/(2 L).
func pitchAt(w wire, length, t float64) float64 {
	return math.Sqrt(t*(1+t*w.Compliance())/w.LinearDensity) / (2 * length)
}

// bent is a bend in numbers.
type bent struct{ Force, Distance, Tension float64 }

func inNumbers(b tension.Bend) bent { return bent{b.Force.N(), b.Distance.M(), b.Tension.N()} }

func bendString(w wire, at bendAt) (bent, error) {
	b, err := tension.BendString(nil, *w.real(), at.real())
	return inNumbers(b), err
}

func compensation(w wire, length, pitch, height float64, tails ends) (lo, hi float64, err error) {
	a, b, err := tension.Compensation(nil, *w.real(), unit.Length(length), unit.Frequency(pitch), unit.Length(height), tails.real())
	return a.M(), b.M(), err
}

func explain(w wire, at bendAt) ([]trace.Step, error) { return tension.Explain(*w.real(), at.real()) }

func minStrength(dia float64) (float64, bool) { return tension.MinStrength(nil, unit.Length(dia)) }

func breaking(t, area, strength float64) float64 {
	return float64(tension.Wire{CoreArea: area, Strength: strength}.Breaking(unit.Force(t)))
}

func spreadB(w wire, t, length float64) float64 { return tension.B(w.EI, t, length) }

// cents10 is the inharmonicity that a spread gives.
func cents10(b float64) float64 {
	return tension.Inharmonicity(nil, tension.Wire{EI: b / (math.Pi * math.Pi)}, 1, 1).Value()
}

func sensitivities(strain float64) tension.Sensitivity {
	return tension.Wire{EA: 1}.Sensitivities(unit.Force(strain))
}
