package fit_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
)

// Every input of a reading by a difference: the reading read off by a thousandth
// of the input's standard uncertainty gives the part that is stated, with its
// sign where other readings share the error. A string without bending stiffness,
// since what that adds to the other parts is left out on purpose.
func TestPartsAreWhatTheirErrorsDo(t *testing.T) {
	tools := gauges.Instruments{
		BalanceResolution: 1e-5, BalanceRepeatability: 2e-5, BalanceAccuracy: 3e-5, RulerResolution: 1e-3, RulerAccuracy: 0.4e-3,
		HungResolution: 2e-3, HungAccuracy: 3e-3, Pitch: 3, Gravity: 9.81, GravityAccuracy: 0.01 * math.Sqrt(3),
	}
	weighed := reading.Reading{Kind: reading.Weighed, Mass: 1.7e-3, Length: 0.43, Pieces: 4}
	hung := reading.Reading{Kind: reading.Hung, HungMass: 6, Speaking: 0.62, Pitch: 210}
	const ea, h = 14000, 1e-3
	// A digital step d leaves d/sqrt(12) = 0.28868 d, a bound a leaves
	// a/sqrt(3) = 0.57735 a; a cent is a 1200th of ln 2 = 0.693147.
	for _, row := range []struct {
		name, source string
		of           reading.Reading
		read         func(r *reading.Reading, i *gauges.Instruments, by float64)
		u            float64
	}{
		{"mass, step of the balance", "", weighed, mass, 0.28868e-5},
		{"mass, repeatability of the balance", "", weighed, mass, 2e-5},
		{"mass, accuracy of the balance", "balance", weighed, mass, 0.57735 * 3e-5},
		{"length, step of the ruler", "", weighed, length, -0.28868e-3},
		{"length, accuracy of the ruler", "ruler", weighed, length, 0.57735 * 0.4e-3},
		{"hung mass, step of the scales", "", hung, load, 0.28868 * 2e-3},
		{"hung mass, accuracy of the scales", "scales for the hung weight", hung, load, 0.57735 * 3e-3},
		{"length, step of the ruler", "", hung, length, -0.28868e-3},
		{"length, accuracy of the ruler", "ruler", hung, length, 0.57735 * 0.4e-3},
		{"gravity", "gravity", hung, gravity, 0.01},
		{"pitch", "", hung, pitch, -210 * 3 * 0.693147 / 1200},
	} {
		t.Run(row.of.Kind.String()+", "+row.name, func(t *testing.T) {
			_, inputs := tools.Value(row.of, ea, 0)
			found := false
			for _, in := range inputs {
				if in.Name != row.name {
					continue
				}
				found = true
				up, down, upTools, downTools := row.of, row.of, tools, tools
				row.read(&up, &upTools, h*row.u)
				row.read(&down, &downTools, -h*row.u)
				more, _ := upTools.Value(up, ea, 0)
				less, _ := downTools.Value(down, ea, 0)
				w, _ := tools.Value(row.of, ea, 0)
				near(t, (more.W-less.W)/(2*h)/w.W, in.RelU, 2e-5)
				assert.Equal(t, row.source, in.Source)
			}
			require.True(t, found, "%+v", inputs)
		})
	}
}

func mass(r *reading.Reading, _ *gauges.Instruments, by float64) { r.Mass += unit.Mass(by) }

// length is read on the piece, or from clamp to clamp.
func length(r *reading.Reading, _ *gauges.Instruments, by float64) {
	r.Length += unit.Length(by)
	r.Speaking += unit.Length(by)
}

func load(r *reading.Reading, _ *gauges.Instruments, by float64) { r.HungMass += unit.Mass(by) }

func gravity(_ *reading.Reading, i *gauges.Instruments, by float64) { i.Gravity += by }

func pitch(r *reading.Reading, _ *gauges.Instruments, by float64) { r.Pitch += unit.Frequency(by) }

// twoLayers is the linear density of a hex core, a round wrap and a flat one that
// fills 0.95 of its ring: areas and helix written out, fill a factor on both.
func twoLayers(core, round, flat, rhoCore, rhoRound, rhoFlat, fill float64) float64 {
	circle := func(d float64) float64 { return math.Pi / 4 * d * d }
	seat := 2 / math.Sqrt(3) * core
	first, second := seat+2*round, seat+2*round+2*flat
	turn := math.Pi * (seat + round)
	packing := math.Pi / 4 * math.Hypot(turn, round) / turn
	return rhoCore*math.Sqrt(3)/2*core*core +
		fill*(packing*rhoRound*(circle(first)-circle(seat))+0.95*rhoFlat*(circle(second)-circle(first)))
}

// The parts of a construction's linear density by differences of the formula
// above: sizes to 0.01 mm and within 0.02 mm, all by the same calipers, densities
// of music wire, nickel and copper as their table has them, packing to 2 %.
func TestPartsOfAConstruction(t *testing.T) {
	c := wrapped("w")
	c.Diameters = reading.Measured
	c.Wraps = append(c.Wraps, gauges.Wrap{Wire: 0.2e-3, Material: "copper", Form: gauges.FlatWire, Packing: 0.95})
	tools := gauges.DefaultInstruments()
	tools.CaliperAccuracy = 2e-5
	s := stockOf(t, gauges.Input{Constructions: []gauges.Construction{c}, Instruments: tools})
	g := gauge(t, s, "w")

	at := [7]float64{0.4e-3, 0.3e-3, 0.2e-3, 7850, 8854, 8860, 1}
	weight := func(x [7]float64) float64 { return twoLayers(x[0], x[1], x[2], x[3], x[4], x[5], x[6]) }
	slope := func(k int) float64 {
		up, down := at, at
		h := 1e-5 * at[k]
		up[k], down[k] = at[k]+h, at[k]-h
		return (weight(up) - weight(down)) / (2 * h)
	}
	step, bound := 1e-5/math.Sqrt(12), 2e-5/math.Sqrt(3)
	near(t, weight(at), float64(g.LinearDensity), 1e-12)
	near(t, math.Hypot(slope(1), slope(2))*step, float64(g.Indep), 1e-4, "each wire by itself")
	want := map[string]float64{
		"core of w": slope(0) * step, "calipers": (slope(0) + slope(1) + slope(2)) * bound,
		"density of music wire": slope(3) * 8, "density of nickel": slope(4) * 31, "density of copper": slope(5) * 35,
		"packing of wound": slope(6) * 0.02,
	}
	require.Len(t, g.Common, len(want))
	for _, p := range g.Common {
		near(t, want[p.Source], p.U, 1e-4, p.Source)
	}
	core := map[string]float64{"core of w": step, "calipers": bound}
	require.Len(t, g.CoreParts, len(core))
	for _, p := range g.CoreParts {
		near(t, core[p.Source], p.U, 1e-12, p.Source)
	}
}

// A weighed gauge fixes the packing of its neighbour, by hand: its wrap weighs
// so much of what was computed, known as well as weighing and sizes know it;
// that is averaged with a factor of 1 known to 2 %, and a hundredth is left for
// a neighbour.
func TestPackingByAWeighedNeighbour(t *testing.T) {
	tools := gauges.DefaultInstruments()
	tools.CaliperResolution = 4e-6
	v, w := wrapped("v"), wrapped("w")
	v.Diameters, w.Diameters = reading.Measured, reading.Measured
	stock := func(rows []reading.Reading, list ...gauges.Construction) fit.Stock {
		s := stockOf(t, gauges.Input{Readings: rows, Constructions: list, Instruments: tools})
		return s
	}
	const packing = "packing of wound"
	core := 7850 * math.Sqrt(3) / 2 * 0.4e-3 * 0.4e-3
	computed := gauge(t, stock(nil, w), "w")
	heavier := core + 1.015*(float64(computed.LinearDensity)-core)
	rows := read(t, woundHead+"v,wound,1.0619,0.4,hex,900,"+fixed(heavier*0.9*1e3, 2))
	weighed, got := gauge(t, stock(rows), "v"), gauge(t, stock(rows, v, w), "w")

	u2 := float64(computed.Indep) * float64(computed.Indep)
	for _, p := range computed.Common {
		if p.Source != packing {
			u2 += p.U * p.U
		}
	}
	wrap := float64(computed.LinearDensity) - core
	k := (float64(weighed.LinearDensity) - core) / wrap
	u := k * math.Hypot(float64(weighed.U)/(float64(weighed.LinearDensity)-core), math.Sqrt(u2)/wrap)
	require.Less(t, math.Abs(k-1), math.Hypot(0.02, u), "within what both say, so that nothing is widened")
	require.Greater(t, math.Abs(k-1), 0.004)
	sum := 1/(0.02*0.02) + 1/(u*u)
	factor := (1/(0.02*0.02) + k/(u*u)) / sum
	near(t, core+factor*wrap, float64(got.LinearDensity), 1e-6)
	left := math.Hypot(1/math.Sqrt(sum)/factor, 0.01)
	require.Less(t, left, 0.02)
	for _, p := range got.Common {
		if p.Source == packing {
			near(t, left*factor*wrap, p.U, 1e-4)
		}
	}
}
