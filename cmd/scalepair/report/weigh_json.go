package report

import (
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/fit"
)

// NextJSON is one further weighing and what it is worth.
type NextJSON struct {
	Gauge             string   `json:"gauge"`
	GaugeFlags        []string `json:"gauge_flags,omitempty"`
	Strings           []int    `json:"strings"`
	RivalStrings      []int    `json:"strings_of_rival,omitempty"`
	ReferenceStrings  []int    `json:"strings_of_reference,omitempty"`
	KnownToPercent    float64  `json:"standard_uncertainty_percent"`
	LengthMM          float64  `json:"length_to_weigh_mm"`
	RivalBetter       *float64 `json:"then_rival_better_percent_of_cases,omitempty"`
	TotalUN           *float64 `json:"then_total_tension_standard_uncertainty_n,omitempty"`
	RemovedPercent    float64  `json:"uncertainty_removed_percent"`
	LengthForWantedMM float64  `json:"length_for_wanted_standard_uncertainty_mm,omitempty"`
}

// PieceJSON is one gauge that the result can depend on, and the piece of it that
// would reach the wanted uncertainty.
type PieceJSON struct {
	Gauge             string   `json:"gauge"`
	GaugeFlags        []string `json:"gauge_flags,omitempty"`
	KnownToPercent    float64  `json:"standard_uncertainty_percent"`
	LengthForWantedMM float64  `json:"length_for_wanted_standard_uncertainty_mm,omitempty"`
}

// PartJSON is one source of the uncertainty.
type PartJSON struct {
	Part         string  `json:"part"`
	SharePercent float64 `json:"share_of_variance_percent"`
	Help         string  `json:"what_would_help,omitempty"`
}

// WeighJSON is all that weigh found.
type WeighJSON struct {
	Build         string      `json:"build"`
	Aim           string      `json:"aim"`
	Pair          PairJSON    `json:"pair"`
	Rival         *PairJSON   `json:"rival,omitempty"`
	RivalRank     int         `json:"rival_rank,omitempty"`
	RivalBetter   *float64    `json:"rival_better_percent_of_cases,omitempty"`
	TotalN        *float64    `json:"total_tension_n,omitempty"`
	TotalUN       *float64    `json:"total_tension_standard_uncertainty_n,omitempty"`
	LongestMM     float64     `json:"most_length_mm"`
	WantedPercent float64     `json:"wanted_standard_uncertainty_percent"`
	Next          []NextJSON  `json:"next"`
	Parts         []PartJSON  `json:"parts"`
	Pieces        []PieceJSON `json:"pieces"`
}

// WeighValues gives what weigh prints as JSON.
func WeighValues(in *Input, w *Weigh) WeighJSON {
	parts := w.parts(in)
	u := w.uncertainty(parts)
	out := WeighJSON{Build: in.Job.Build.Name, Aim: "tension", Pair: in.pairValues(w.Best.Candidate), LongestMM: 1000 * w.LongestM,
		WantedPercent: 100 * w.Within, Next: []NextJSON{}, Parts: []PartJSON{}, Pieces: []PieceJSON{}}
	if w.Rival != nil {
		out.Aim, out.Rival, out.RivalRank = "ranking", ptr(in.pairValues(w.Rival.Candidate)), w.RivalRank
		out.RivalBetter = ptr(100 * w.chance(u))
	} else {
		out.TotalN, out.TotalUN = ptr(w.Best.Totals[0].TensionN), ptr(u)
	}
	for _, s := range w.Next {
		out.Next = append(out.Next, in.nextValues(w, s, u))
	}
	for _, p := range parts {
		if u > 0 {
			out.Parts = append(out.Parts, PartJSON{p.words, 100 * p.u * p.u / (u * u), p.help})
		}
	}
	for _, i := range w.InPlay(in) {
		g := in.Plan.Stock()[i]
		out.Pieces = append(out.Pieces, PieceJSON{g.Label, g.Flags(), float64(100 * g.RelU()), in.pieceFor(w, g)})
	}
	return out
}

// pieceFor is the least length, in mm, that reaches the wanted uncertainty; 0
// where none does.
func (in *Input) pieceFor(w *Weigh, g gauges.Gauge) float64 {
	return fit.ShortestPiece(g.LinearDensity, unit.Ratio(w.Within), in.Job.Tools()).MM()
}

func (in *Input) nextValues(w *Weigh, s fit.Suggestion, u float64) NextJSON {
	index := in.stockIndex(s.Gauge)
	g := in.Plan.Stock()[index]
	after := w.after(u, s)
	out := NextJSON{Gauge: s.Gauge, GaugeFlags: g.Flags(), Strings: numbersOf(w.Best.Gauges, index),
		KnownToPercent: float64(100 * g.RelU()), LengthMM: 1000 * float64(s.Length), RemovedPercent: 100 * (1 - after/u), LengthForWantedMM: in.pieceFor(w, g)}
	if w.Rival != nil {
		out.RivalBetter = ptr(100 * w.chance(after))
		out.RivalStrings = numbersOf(w.Rival.Gauges, index)
		if reference := in.Plan.Request().Reference; reference != nil {
			out.ReferenceStrings = numbersOf(reference.Gauges, index)
		}
	} else {
		out.TotalUN = ptr(after)
	}
	return out
}
