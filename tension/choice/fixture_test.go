package choice

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/gauges"
	"scalepair/gauges/reading"
	"scalepair/tension"
)

// wire sizes of the tests, in thousandths of an inch: plain ones by diameter,
// wound ones by outer and core diameter. Invented, as a small shop's stock.
var (
	plainThou = []float64{8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 20, 22}
	woundThou = [][2]float64{{24, 13}, {26, 13}, {28, 14}, {32, 15}, {36, 15}, {42, 16}, {46, 16}, {52, 17}, {56, 18}, {62, 18}, {68, 19}}
)

const (
	steelKgM3 = 7850
	steelPa   = 203.4e9
	thouM     = 25.4e-6
)

// plainGauge is music wire of a diameter, with 1 % standard uncertainty.
func plainGauge(thou float64) gauges.Gauge {
	d := thou * thouM
	area := math.Pi / 4 * d * d
	return finish(gauges.Gauge{Label: fmt.Sprintf("p%g", thou), Family: gauges.Plain, Outer: unit.Length(d), Core: unit.Length(d), LinearDensity: unit.LinearDensity(steelKgM3 * area)})
}

// woundGauge has a round core and one close wrap that fills pi/4 of its ring.
func woundGauge(outer, core float64) gauges.Gauge {
	do, dc := outer*thouM, core*thouM
	w := steelKgM3 * math.Pi / 4 * (dc*dc + math.Pi/4*(do*do-dc*dc))
	return finish(gauges.Gauge{Label: fmt.Sprintf("w%g", outer), Family: "wound", Outer: unit.Length(do), Core: unit.Length(dc), Shape: reading.Round, LinearDensity: unit.LinearDensity(w)})
}

func finish(g gauges.Gauge) gauges.Gauge {
	g.Material = data.MusicWire
	g.AreaM2 = float64(math.Pi / 4 * g.Core * g.Core)
	g.YoungsPa = steelPa
	g.EA = unit.Force(steelPa * g.AreaM2)
	g.EI = steelPa * math.Pi / 64 * math.Pow(float64(g.Core), 4)
	g.U = 0.01 * g.LinearDensity
	g.Indep = g.U
	return g
}

func stock() []gauges.Gauge {
	var out []gauges.Gauge
	for _, d := range plainThou {
		out = append(out, plainGauge(d))
	}
	for _, d := range woundThou {
		out = append(out, woundGauge(d[0], d[1]))
	}
	return out
}

func indexesOf(stock []gauges.Gauge, labels ...string) []int {
	var out []int
	for _, label := range labels {
		found := -1
		for i, g := range stock {
			if g.Label == label {
				found = i
			}
		}
		if found < 0 {
			panic("no gauge " + label)
		}
		out = append(out, found)
	}
	return out
}

// hz of midi numbers, string 1 first.
func hz(midi ...int) []unit.Frequency {
	var out []unit.Frequency
	for _, m := range midi {
		out = append(out, unit.Frequency(440*math.Exp2(float64(m-69)/12)))
	}
	return out
}

var (
	standardE = hz(64, 59, 55, 50, 45, 40)
	baritoneB = hz(59, 54, 50, 45, 40, 35)
)

func neck() fan.Spec {
	s := fan.Spec{Strings: 6, Neck: fan.DefaultNeck()}
	s.NutSpread, s.SaddleSpread = unit.MM(36), unit.MM(52)
	return s
}

func sameTails(n int) []tension.Tails {
	out := make([]tension.Tails, n)
	for i := range out {
		out[i] = tension.Tails{Nut: unit.MM(60), Saddle: unit.MM(25)}
	}
	return out
}

func heights(n int) []unit.Length {
	out := make([]unit.Length, n)
	for i := range out {
		out[i] = unit.MM(1.8)
	}
	return out
}

// straight is a straight reference of a length in mm.
func straight(mm float64) fan.Spec {
	s := neck()
	s.Bass, s.Treble = unit.MM(mm), unit.MM(mm)
	return s
}

// baritone asks for a six-string in B that feels like a straight 635 mm
// guitar in E.
func baritone() Request {
	s := stock()
	return Request{
		Cases: []Case{{Name: "baritone B", Pitches: baritoneB, Weight: 1}},
		Stock: s, Ordering: true, Neck: neck(),
		Bass: span(660, 720, 10), Treble: span(610, 660, 10),
		Tails: sameTails(6), Action: heights(6), Feel: DefaultFeel(true, false),
		Reference: &Reference{Neck: straight(635), Pitches: standardE, Tails: sameTails(6),
			Gauges: indexesOf(s, "p10", "p13", "p17", "w26", "w36", "w46")},
		Limits: DefaultLimits(),
	}
}

func span(from, to, step float64) []unit.Length {
	return Lengths(unit.MM(from), unit.MM(to), unit.MM(step))
}

// labels of a set, string 1 first.
func labels(s []gauges.Gauge, set []int) []string {
	var out []string
	for _, g := range set {
		out = append(out, s[g].Label)
	}
	return out
}

// must is a request made ready.
func must(t testing.TB, req Request) *Plan {
	t.Helper()
	p, err := Prepare(req)
	require.NoError(t, err)
	return p
}
