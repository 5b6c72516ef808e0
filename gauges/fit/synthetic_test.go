package fit_test

import (
	"fmt"
	"math"
	"math/rand/v2"

	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/reading"
)

// world makes synthetic stocks: true strings with diameters anywhere within
// their tolerance, and a builder who weighs and hangs pieces of them with tools
// that round, wander and read off. Nothing in it is a round number.
type world struct {
	rng   *rand.Rand
	tools gauges.Instruments

	measured       bool // diameters by calipers, not off the packet
	light          bool // hung tests with little weight, see hangs
	listed, hung   bool // some gauges without reading, some with hung tests
	again          bool // all weighings of a gauge are of one piece
	most           int  // weighings of a gauge, at most
	shortest, span float64
	scatter        float64 // of a wound family

	balanceOff, rulerOff, scalesOff, caliperOff, gravity float64

	hold float64 // how firmly the clamps keep a hung string from turning, see stiffPitch

	truth    map[string]float64 // kg/m by label
	class    map[string]string
	readings []reading.Reading
}

// caseTools are a hobby builder's: 0.01 g balance, steel ruler.
func caseTools() gauges.Instruments {
	t := gauges.DefaultInstruments()
	t.BalanceRepeatability, t.BalanceAccuracy = unit.Grams(0.006), unit.Grams(0.013)
	t.RulerResolution, t.RulerAccuracy = unit.MM(0.5), unit.MM(0.3)
	t.CaliperAccuracy, t.HungAccuracy = unit.MM(0.007), unit.Grams(2.3)
	return t
}

func newWorld(seed uint64) *world {
	return &world{
		light: seed%2 == 1,
		rng:   rand.New(rand.NewPCG(seed, 20)), tools: caseTools(), listed: true, hung: true, most: 3,
		shortest: 0.25, span: 0.6, scatter: 0.0027,
	}
}

func (w *world) within(a float64) float64     { return a * (2*w.rng.Float64() - 1) }
func (w *world) rounded(x, d float64) float64 { return math.Round(x/d) * d }

// stock makes the readings of forty gauges in three families.
func (w *world) stock() []reading.Reading {
	w.truth, w.class, w.readings = map[string]float64{}, map[string]string{}, nil
	w.balanceOff, w.rulerOff = w.within(w.tools.BalanceAccuracy.Kg()), w.within(w.tools.RulerAccuracy.M())
	w.scalesOff, w.caliperOff = w.within(w.tools.HungAccuracy.Kg()), w.within(w.tools.CaliperAccuracy.M())
	g, u := w.tools.GravityUsed()
	w.gravity = g + w.rng.NormFloat64()*u
	w.hold = w.rng.Float64()
	const inch = 0.0254
	for i := range 14 {
		w.plain(fmt.Sprintf("plain %d", i), inch*(0.009+0.001*float64(i)), i)
	}
	for i := range 13 {
		d := inch * (0.022 + 0.004*float64(i))
		w.wound(fmt.Sprintf("hex %d", i), "hex cored", d, inch*math.Round(1000*(0.009+0.13*d/inch))/1000, i)
	}
	for i := range 13 {
		w.powered(fmt.Sprintf("soft %d", i), inch*(0.024+0.003*float64(i)), i)
	}
	return w.readings
}

// size gives a true diameter and what the builder writes down for it.
func (w *world) size(nominal, tolerance float64) (actual, written float64) {
	actual = nominal + w.within(tolerance)
	if w.measured {
		return actual, w.rounded(actual+w.caliperOff, w.tools.CaliperResolution.M())
	}
	return actual, nominal
}

func (w *world) row(label, family string) reading.Reading {
	r := reading.Reading{Gauge: label, Construction: family}
	if w.measured {
		r.OuterFrom, r.CoreFrom = reading.Measured, reading.Measured
	}
	return r
}

func wireTolerance(d float64) float64 {
	if d <= 0.01001*0.0254 {
		return 0.0002 * 0.0254
	}
	return 0.0003 * 0.0254
}

func (w *world) plain(label string, nominal float64, i int) {
	d, written := w.size(nominal, wireTolerance(nominal))
	area := math.Pi / 4 * d * d
	r := w.row(label, reading.Plain)
	r.Outer = unit.Length(written)
	w.take(r, 7837.3*area, 201.7e9*area, 201.7e9*math.Pi/64*math.Pow(d, 4), i)
}

func (w *world) wound(label, family string, nominal, core float64, i int) {
	d, written := w.size(nominal, 0.02e-3)
	dc, coreWritten := w.size(core, wireTolerance(core))
	area := math.Sqrt(3) / 2 * dc * dc
	r := w.row(label, family)
	r.Outer, r.Core, r.Shape = unit.Length(written), unit.Length(coreWritten), reading.Hex
	density := 6417.3 * (1 + w.scatter*w.rng.NormFloat64())
	w.take(r, 7850*area+density*math.Pi/4*(d*d-4.0/3*dc*dc), 202.1e9*area, 202.1e9*5*math.Sqrt(3)/144*math.Pow(dc, 4), i)
}

func (w *world) powered(label string, nominal float64, i int) {
	d, written := w.size(nominal, 0.02e-3)
	r := w.row(label, "soft core")
	r.Outer = unit.Length(written)
	weight := 5.317e-3 * math.Pow(d/1e-3, 1.937) * math.Exp(w.scatter*w.rng.NormFloat64())
	w.take(r, weight, 0, 0, i)
}

// take makes the rows of one gauge: its class follows its number in the
// family, so that first and last are always weighed.
func (w *world) take(r reading.Reading, weight, ea, ei float64, i int) {
	w.truth[r.Gauge] = weight
	n := 1 + w.rng.IntN(w.most)
	class := "weighed more than once"
	if n == 1 {
		class = "weighed once"
	}
	switch {
	case w.listed && i%6 == 3:
		r.Kind = reading.Listed
		w.readings, class = append(w.readings, r), "estimated"
	case w.hung && ea > 0 && i%6 == 2:
		class = "hung"
		if w.light {
			class = "hung lightly"
		}
		w.hangs(r, weight, ea, ei, 2)
	case w.hung && ea > 0 && i%6 == 5:
		class = "combined"
		if w.light {
			class = "combined, hung lightly"
		}
		w.hangs(r, weight, ea, ei, 1)
		w.weighs(r, weight, n)
	default:
		w.weighs(r, weight, n)
	}
	w.class[r.Gauge] = class
}

func (w *world) weighs(r reading.Reading, weight float64, n int) {
	l := w.shortest + w.span*w.rng.Float64()
	for range n {
		if !w.again {
			l = w.shortest + w.span*w.rng.Float64()
		}
		m := weight*l + w.balanceOff + w.tools.BalanceRepeatability.Kg()*w.rng.NormFloat64()
		r.Kind, r.Length, r.Mass = reading.Weighed, unit.Length(w.rounded(l+w.rulerOff, w.tools.RulerResolution.M())), unit.Mass(w.rounded(m, w.tools.BalanceResolution.Kg()))
		w.add(r)
	}
}

// hangs makes hung tests as at pitch, under half the breaking load; light ones
// pull a quarter of that, and so leave twice as much to the clamps.
func (w *world) hangs(r reading.Reading, weight, ea, ei float64, n int) {
	r.Kind = reading.Hung
	strain := 0.0045
	if w.light {
		strain = 0.0012
	}
	for range n {
		l := 0.4 + 0.4*w.rng.Float64()
		load := min(strain*ea, 40+40*w.rng.Float64())
		f := stiffPitch(load, ei, l, weight/(1+load/ea), w.hold)
		r.HungMass = unit.Mass(w.rounded(load/w.gravity+w.scalesOff, w.tools.HungResolution.Kg()))
		r.Speaking = unit.Length(w.rounded(l+w.rulerOff, w.tools.RulerResolution.M()))
		r.Pitch = unit.Frequency(f * math.Exp2(w.tools.Pitch.Value()*w.rng.NormFloat64()/1200))
		w.add(r)
	}
}

func (w *world) add(r reading.Reading) {
	r.Place.Input, r.Place.Line = "readings.csv", len(w.readings)+2
	w.readings = append(w.readings, r)
}
