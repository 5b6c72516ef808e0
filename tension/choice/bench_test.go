package choice_test

import (
	"testing"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/gauges"
	"scalepair/tension"
	"scalepair/tension/choice"
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
func workload(step float64) choice.Request {
	s := stock60()
	ref := neck()
	ref.Bass, ref.Treble = unit.MM(648), unit.MM(648)
	like := choice.Target{Source: choice.LikeReference}
	wanted := neck()
	wanted.Strings, wanted.NutSpread, wanted.SaddleSpread = 8, unit.MM(50), unit.MM(73)
	return choice.Request{
		Cases: []choice.Case{{Name: "F#", FreqsHz: hz(64, 59, 55, 50, 45, 40, 35, 30), Weight: 1}},
		Stock: s, Ordering: true, Neck: wanted,
		BassMM: span(640, 740, step), TrebleMM: span(600, 680, step),
		Tails: sameTails(8), ActionM: heights(8),
		Feel: choice.Feel{
			Tension: like, BendingForce: like, Overtone: like,
			BendCents: 200, BendFrets: []float64{5, 12}, Weights: choice.DefaultWeights(),
		},
		Reference: &choice.Reference{
			Neck: ref, FreqsHz: standardE, Tails: sameTails(6),
			Gauges: indexes(s, "p10", "p13", "p17", "w26", "w36", "w46"),
		},
		Limits: choice.Limits{
			DifferenceMM: 120, FretSlantRad: 0.6, SaddleSlantRad: 0.75, NutToFret1MM: 42, InharmonicityCents: 90,
			Blanks:       []fan.Blank{{Length: unit.MM(700), Width: unit.MM(90), Thickness: unit.MM(8)}},
			BreakingOpen: 0.75, BreakingBent: 0.9, LeastTensionN: 35, MostTensionN: 160, MostBendingForceN: 25, SaddleTravelM: 0.016,
		},
	}
}

// threeTunings makes a workload serve three tunings at once.
func threeTunings(req choice.Request) choice.Request {
	req.Cases = append(req.Cases,
		choice.Case{Name: "E", FreqsHz: hz(62, 57, 53, 48, 43, 38, 33, 28), Weight: 1},
		choice.Case{Name: "dropped", FreqsHz: hz(64, 59, 55, 50, 45, 40, 35, 28), Weight: 1})
	return req
}

func BenchmarkWorkloadW(b *testing.B) { benchmarkSearch(b, workload(1)) }

func BenchmarkWorkloadX(b *testing.B) { benchmarkSearch(b, threeTunings(workload(0.25))) }

// The first of Best alone, which all commands but advise need.
func BenchmarkBest(b *testing.B) {
	for name, req := range map[string]choice.Request{"W": workload(1), "X": threeTunings(workload(0.25))} {
		b.Run(name, func(b *testing.B) {
			p, err := choice.Prepare(req)
			if err != nil {
				b.Fatal(err)
			}
			b.ReportAllocs()
			for b.Loop() {
				if _, _, ok := p.SearchBest(); !ok {
					b.Fatal("every pair was dropped")
				}
			}
		})
	}
}

func benchmarkSearch(b *testing.B, req choice.Request) {
	b.ReportAllocs()
	p, err := choice.Prepare(req)
	if err != nil {
		b.Fatal(err)
	}
	stock := req.Stock
	evaluations := float64(len(req.BassMM) * len(req.TrebleMM) * 8 * len(req.Stock) * len(req.Cases))
	for b.Loop() {
		r := p.Search()
		if r.Kept == 0 {
			b.Fatal("every pair was dropped")
		}
		p.Confidence(r, gauges.NewDrawer(stock), 1000, 1)
	}
	perRun := b.Elapsed().Seconds() / float64(b.N)
	b.ReportMetric(evaluations/perRun, "evaluations/s")
	b.ReportMetric(float64(len(req.BassMM)*len(req.TrebleMM))/perRun, "pairs/s")
}

// BenchmarkFloor does nothing but the closed-form tension, for as many
// evaluations as BenchmarkWorkloadW could need, on one processor.
func BenchmarkFloor(b *testing.B) {
	req := workload(1)
	wires := make([]tension.Wire, len(req.Stock))
	for i, g := range req.Stock {
		wires[i] = choice.WireOf(g)
	}
	sum := 0.0
	count := 0
	for b.Loop() {
		for _, bass := range req.BassMM {
			for range req.TrebleMM {
				for _, f := range req.Cases[0].FreqsHz {
					for i := range wires {
						sum += tension.Open(wires[i], bass/1000, f)
					}
				}
			}
		}
		count = len(req.BassMM) * len(req.TrebleMM) * 8 * len(wires)
	}
	if sum == 0 {
		b.Fatal("no tension at all")
	}
	b.ReportMetric(b.Elapsed().Seconds()/float64(b.N)/float64(count)*1e9, "ns/evaluation")
}
