package choice

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/gauges"
	"scalepair/tension"
)

// stock60 is a stock of sixty gauges, plain and wound.
func stock60() []gauges.Gauge {
	var out []gauges.Gauge
	for i := range 26 {
		out = append(out, plainGauge(8+0.5*float64(i)))
	}
	for i := range 34 {
		outer := 20 + 2*float64(i)
		out = append(out, woundGauge(outer, 11+0.13*outer))
	}
	return out
}

// workload is an eight-string in F# against a straight 648 mm guitar, with
// every limit on, over a grid of step mm.
func workload(step float64) Request {
	s := stock60()
	wanted := neck()
	wanted.NutSpread, wanted.SaddleSpread = unit.MM(50), unit.MM(73)
	return Request{
		Cases: []Case{{Name: "F#", Pitches: hz(64, 59, 55, 50, 45, 40, 35, 30), Weight: 1}},
		Stock: s, Ordering: true, Neck: wanted,
		Bass: span(640, 740, step), Treble: span(600, 680, step),
		Tails: sameTails(8), Action: heights(8), Feel: DefaultFeel(true, false),
		Reference: &Reference{Neck: straight(648), Pitches: standardE, Tails: sameTails(6),
			Gauges: indexesOf(s, "p10", "p13", "p17", "w26", "w36", "w46")},
		Limits: Limits{
			Difference: unit.MM(120), FretSlant: 0.6, SaddleSlant: 0.75, NutToFret1: unit.MM(42), Inharmonicity: 90, Blank: true,
			BreakingOpen: 0.75, BreakingBent: 0.9, LeastTension: 35, MostTension: 160, MostBendingForce: 25, SaddleTravel: unit.MM(16),
		},
		Blanks: []fan.Blank{{Length: unit.MM(700), Width: unit.MM(90), Thickness: unit.MM(8)}},
	}
}

// threeTunings gives a workload three tunings at once.
func threeTunings(req Request) Request {
	req.Cases = append(req.Cases,
		Case{Name: "E", Pitches: hz(62, 57, 53, 48, 43, 38, 33, 28), Weight: 1},
		Case{Name: "dropped", Pitches: hz(64, 59, 55, 50, 45, 40, 35, 28), Weight: 1})
	return req
}

// BenchmarkWorkloadW and X are one search with its trials. They report how long
// that takes beside the bare loop of the tensions that it could need, on one
// processor: W is to be at most 2, X at most 1.
func BenchmarkWorkloadW(b *testing.B) { benchmarkSearch(b, workload(1)) }

func BenchmarkWorkloadX(b *testing.B) { benchmarkSearch(b, threeTunings(workload(0.25))) }

func benchmarkSearch(b *testing.B, req Request) {
	b.ReportAllocs()
	p := must(b, req)
	stock := gauges.NewDrawer(req.Stock)
	bare, runs := time.Duration(0), 0
	for b.Loop() {
		r, err := p.Search(context.Background())
		require.NoError(b, err)
		require.Positive(b, r.Kept)
		_, err = p.Confidence(context.Background(), r, stock, 1000, 1)
		require.NoError(b, err)
		b.StopTimer()
		began := time.Now()
		bareLoop(p)
		bare, runs = bare+time.Since(began), runs+1
		b.StartTimer()
	}
	b.ReportMetric(b.Elapsed().Seconds()/bare.Seconds(), "of-the-bare-loop")
}

// bareSum keeps the bare loop from being left out.
var bareSum float64

// bareLoop does nothing but the closed-form tension, of every gauge as every
// string on every pair in every tuning.
func bareLoop(p *Plan) {
	for _, bass := range p.req.Bass {
		for range p.req.Treble {
			for _, c := range p.req.Cases {
				for _, f := range c.Pitches {
					for g := range p.wires {
						w := &p.wires[g]
						bareSum += tension.Stretched(tension.Textbook(w.LinearDensity, bass, f).N(), w.Compliance())
					}
				}
			}
		}
	}
}
