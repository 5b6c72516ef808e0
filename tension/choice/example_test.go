package choice_test

import (
	"bytes"
	"fmt"
	"slices"

	"scalepair/data"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
	"scalepair/tension"
	"scalepair/tension/choice"
	"scalepair/tuning"
)

// must keeps the examples short; a program tells its user.
func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// exampleRequest asks for a baritone in B with 72 N on every string, out of
// the stock of the demo.
func exampleRequest() choice.Request {
	file := must(data.Demo("readings.csv"))
	readings := must(reading.Read(bytes.NewReader(file), "readings.csv", nil))
	stock := must(fit.Combine(gauges.Input{Readings: readings, Instruments: gauges.DefaultInstruments()}))
	b := must(tuning.Parse("baritone B"))
	neck := fan.DefaultSpec()
	neck.NutSpread, neck.SaddleSpread = unit.MM(37), unit.MM(54)
	return choice.Request{
		Cases: []choice.Case{{Name: b.Name, FreqsHz: b.FreqsHz(tuning.ConcertA), Weight: 1}},
		Stock: stock.Gauges, Ordering: true,
		Neck: neck, BassMM: []float64{680, 685, 690, 695}, TrebleMM: []float64{640, 645, 650},
		Tails:   slices.Repeat([]tension.Tails{{NutM: 0.06, SaddleM: 0.025}}, b.Strings()),
		ActionM: slices.Repeat([]float64{1.8e-3}, b.Strings()),
		Feel: choice.Feel{
			Tension:   choice.Target{Source: choice.Stated, Values: []float64{72}},
			BendCents: 200, BendFrets: []float64{12}, Weights: choice.DefaultWeights(),
		},
		Limits: choice.Limits{DifferenceMM: 45, BreakingOpen: choice.DefaultBreakingOpen, BreakingBent: choice.DefaultBreakingBent},
	}
}

// Every pair of the grid, each with the best gauges that the stock has for it.
func ExamplePlan_Search() {
	plan := must(choice.Prepare(exampleRequest()))
	found := plan.Search()
	fmt.Printf("%d pairs tried, %d kept\n", found.Tried, found.Kept)
	for _, pair := range found.Best[:3] {
		fmt.Printf("%.0f / %.0f: %.1f %% off 72 N\n", pair.BassMM, pair.TrebleMM, pair.TensionMisfit)
	}
	for _, d := range found.Dropped {
		fmt.Printf("%d dropped; the nearest differs by %.0f mm, over %.0f\n", d.Pairs, d.Nearest.Value, d.Nearest.Limit)
	}
	// Output:
	// 12 pairs tried, 9 kept
	// 690 / 650: 3.1 % off 72 N
	// 685 / 650: 3.1 % off 72 N
	// 695 / 650: 3.2 % off 72 N
	// 3 dropped; the nearest differs by 50 mm, over 45
}

// One pair with its set, string by string.
func ExamplePlan_Detail() {
	plan := must(choice.Prepare(exampleRequest()))
	best := plan.Search().Best[0]
	detail := must(plan.Detail(best.BassMM, best.TrebleMM, best.Gauges))
	for _, s := range detail.Strings {
		c := s.Cases[0]
		fmt.Printf("string %d, %s, %.1f mm: %.1f N, give or take %.1f N\n",
			s.Number, plan.Stock()[s.Gauge].Label, 1000*s.LengthM, c.TensionN, c.UTensionN)
	}
	// Output:
	// string 1, p13, 650.0 mm: 68.6 N, give or take 0.4 N
	// string 2, p18, 658.0 mm: 75.7 N, give or take 0.4 N
	// string 3, w24, 665.9 mm: 70.4 N, give or take 0.1 N
	// string 4, w32, 673.9 mm: 71.7 N, give or take 0.2 N
	// string 5, w42, 682.0 mm: 71.7 N, give or take 0.0 N
	// string 6, w56, 690.0 mm: 73.0 N, give or take 0.2 N
}

// How often a pair still wins when the weighing is as uncertain as it is:
// these three cannot be told apart.
func ExamplePlan_Confidence() {
	req := exampleRequest()
	plan := must(choice.Prepare(req))
	found := plan.Search()
	stock := req.Stock
	trust := plan.Confidence(found, gauges.NewDrawer(stock), choice.DefaultTrials, choice.DefaultSeed)
	for _, place := range trust.Tie {
		s := trust.Standing[place]
		fmt.Printf("%.0f / %.0f wins %.0f of 100\n", s.BassMM, s.TrebleMM, 100*s.Wins)
	}
	// Output:
	// 685 / 650 wins 26 of 100
	// 690 / 650 wins 56 of 100
	// 695 / 650 wins 18 of 100
}
