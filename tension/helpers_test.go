package tension_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/tension"
)

// plain is round wire of a diameter in m, a modulus in Pa and a density in
// kg/m3.
func plain(d, youngs, rho float64) tension.Wire {
	a := math.Pi / 4 * d * d
	return tension.Wire{
		LinearDensity: rho * a, CoreAreaM2: a, CoreDiaM: d, Plain: true,
		EA: youngs * a, EI: youngs * math.Pi / 64 * d * d * d * d,
	}
}

// steel is music wire up to 0.81 mm (Shigley, Table 10-5).
func steel(d float64) tension.Wire { return plain(d, 203.4e9, 7850) }

// usual is a whole-tone bend at fret 5 of a treble string.
func usual() tension.BendAt {
	return tension.BendAt{
		LengthM: 0.648, FreqHz: 329.63, Fret: 5, TanSlant: 0.05, Cents: 200,
		Tails: tension.Tails{NutM: 0.06, SaddleM: 0.025}, ReachM: 0.045,
	}
}

// midpoint is a string without tails held at its middle.
func midpoint() tension.BendAt {
	return tension.BendAt{LengthM: 0.648, FreqHz: 329.63, Fret: 12, Cents: 100, ReachM: 0.3}
}

// oracle is the bent string by another route: points in the plane, one lump
// of mass, one spring.
type oracle struct {
	nut, saddle, rest, crown complex128 // x + iy, m
	tails, natural, mass, ea float64
}

func newOracle(w tension.Wire, at tension.BendAt) oracle {
	fret := at.LengthM - at.LengthM/math.Pow(2, at.Fret/12)
	o := oracle{
		saddle: complex(at.LengthM, 0), rest: complex(fret, 0), crown: complex(at.TanSlant, 1),
		tails: at.Tails.NutM + at.Tails.SaddleM, ea: w.EA,
	}
	// The open string: halve for the slack length at which spring, mass and
	// pitch agree.
	all := at.LengthM + o.tails
	lo, hi := all/3, all
	for range 200 {
		o.natural = (lo + hi) / 2
		o.mass = w.LinearDensity * o.natural
		if math.Sqrt(o.pull(all)/(o.mass/all))/(2*at.LengthM) > at.FreqHz {
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

// travel halves for the rise, between from and to.
func (o oracle) travel(cents, from, to float64) float64 {
	wanted := o.freq(0) * math.Pow(2, cents/1200)
	for range 200 {
		mid := (from + to) / 2
		if o.freq(mid) < wanted {
			from = mid
		} else {
			to = mid
		}
	}
	return from
}

// valueOf is the value of the step with a symbol.
func valueOf(t *testing.T, steps []tension.Step, symbol string) float64 {
	t.Helper()
	for _, s := range steps {
		if s.Symbol == symbol {
			return s.Value
		}
	}
	require.Fail(t, "no such step", symbol)
	return 0
}
