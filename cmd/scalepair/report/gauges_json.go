package report

import (
	"math"

	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
	"scalepair/tension/choice"
)

// ReadingJSON is one weighing or hung test.
type ReadingJSON struct {
	Line           int     `json:"line"`
	Kind           string  `json:"kind"`
	Pieces         int     `json:"pieces,omitempty"`
	LengthMM       float64 `json:"length_mm"`
	MassG          float64 `json:"mass_g"`
	PitchHz        float64 `json:"pitch_hz,omitempty"`
	LinearDensity  float64 `json:"linear_density_g_per_m"`
	ULinearDensity float64 `json:"linear_density_standard_uncertainty_g_per_m"`
	MostlyThrough  string  `json:"mostly_uncertain_through"`
	Date           string  `json:"date,omitempty"`
	Remark         string  `json:"remark,omitempty"`
	OffGaugePerCen float64 `json:"off_the_gauge_percent"`
}

// GaugeJSON is one gauge of the stock.
type GaugeJSON struct {
	Gauge          string        `json:"gauge"`
	Construction   string        `json:"construction"`
	Material       string        `json:"core_material"`
	OuterMM        float64       `json:"outer_mm"`
	UOuterMM       float64       `json:"outer_standard_uncertainty_mm"`
	CoreMM         float64       `json:"core_mm,omitempty"`
	UCoreMM        float64       `json:"core_standard_uncertainty_mm,omitempty"`
	CoreShape      string        `json:"core_shape,omitempty"`
	LinearDensity  float64       `json:"linear_density_g_per_m"`
	ULinearDensity float64       `json:"linear_density_standard_uncertainty_g_per_m"`
	Within95       float64       `json:"linear_density_95_percent_interval_half_width_g_per_m"`
	Within95Share  float64       `json:"linear_density_95_percent_interval_half_width_percent"`
	Coverage95     float64       `json:"standard_uncertainties_in_that_half_width"`
	Readings       int           `json:"readings"`
	Built          bool          `json:"construction_counted"`
	Flags          []string      `json:"flags"`
	DensityGCM3    float64       `json:"implied_density_g_per_cm3"`
	DensityOf      string        `json:"implied_density_of"`
	Packing        float64       `json:"packing,omitempty"`
	OffFit         *float64      `json:"off_the_fit_percent,omitempty"`
	UOffFit        *float64      `json:"off_the_fit_standard_uncertainty_percent,omitempty"`
	OffFitLimit    *float64      `json:"off_the_fit_limit_percent,omitempty"`
	StiffnessN     float64       `json:"stiffness_ea_n,omitempty"`
	BreakingN      float64       `json:"least_breaking_load_n,omitempty"`
	OnePercentMM   float64       `json:"length_for_1_percent_standard_uncertainty_mm,omitempty"`
	UnseenSlips    []string      `json:"slips_that_would_not_show,omitempty"`
	Notes          []string      `json:"notes,omitempty"`
	ReadingsInFull []ReadingJSON `json:"readings_in_full"`
}

// FitJSON is the law of one kind of string.
type FitJSON struct {
	Construction   string   `json:"construction"`
	Material       string   `json:"core_material"`
	Law            string   `json:"law"`
	DensityGCM3    float64  `json:"density_g_per_cm3,omitempty"`
	UDensityGCM3   float64  `json:"density_standard_uncertainty_g_per_cm3,omitempty"`
	Exponent       float64  `json:"exponent,omitempty"`
	UExponent      float64  `json:"exponent_standard_uncertainty,omitempty"`
	ScatterPercent float64  `json:"scatter_percent"`
	ScatterAssumed bool     `json:"scatter_is_assumed"`
	FromMM         float64  `json:"from_outer_mm"`
	ToMM           float64  `json:"to_outer_mm"`
	Gauges         []string `json:"gauges"`
	KeptOut        []string `json:"kept_out_as_suspect"`
}

// SuspectJSON is one reading to look at again.
type SuspectJSON struct {
	Gauge      string   `json:"gauge"`
	Place      string   `json:"place"`
	Why        string   `json:"why"`
	WouldFit   string   `json:"would_fit"`
	Slips      []string `json:"likely_slips"`
	OffPercent float64  `json:"off_percent"`
}

// HungJSON is one hung test against the breaking load.
type HungJSON struct {
	Gauge     string  `json:"gauge"`
	Line      int     `json:"line"`
	Load      float64 `json:"load_n"`
	BreakingN float64 `json:"least_breaking_load_n,omitempty"`
	Percent   float64 `json:"share_of_breaking_load_percent,omitempty"`
	OverHalf  bool    `json:"over_half_the_breaking_load"`
}

// ToolsJSON are balance, ruler and calipers as they were counted. Assumed
// lists the keys of [measuring] that the build file leaves open.
type ToolsJSON struct {
	BalanceResolutionG float64  `json:"balance_resolution_g"`
	BalanceRepeatG     float64  `json:"balance_repeatability_g"`
	BalanceAccuracyG   float64  `json:"balance_accuracy_g"`
	RulerResolutionM   float64  `json:"ruler_resolution_mm"`
	RulerAccuracyM     float64  `json:"ruler_accuracy_mm"`
	CaliperResolutionM float64  `json:"caliper_resolution_mm"`
	CaliperAccuracy    float64  `json:"caliper_accuracy_mm"`
	HungResolutionG    float64  `json:"hung_resolution_g"`
	HungAccuracyG      float64  `json:"hung_accuracy_g"`
	PitchCents         float64  `json:"pitch_standard_uncertainty_cents"`
	GravityMS2         float64  `json:"gravity_m_s2"`
	UGravityMS2        float64  `json:"gravity_standard_uncertainty_m_s2"`
	Assumed            []string `json:"assumed"`
}

// GaugesJSON is all that gauges knows.
type GaugesJSON struct {
	Build    string        `json:"build"`
	Readings string        `json:"readings_file"`
	Gauges   []GaugeJSON   `json:"gauges"`
	Fits     []FitJSON     `json:"fits"`
	Suspects []SuspectJSON `json:"suspects"`
	Hung     []HungJSON    `json:"hung_tests"`
	Tools    ToolsJSON     `json:"measuring"`
	Cautions []string      `json:"cautions,omitempty"`
}

// GaugesValues gives what gauges prints as JSON, of the gauges in list.
func GaugesValues(in *Input, list []gauges.Gauge) GaugesJSON {
	s := in.Job.Stock
	out := GaugesJSON{Build: in.Job.Build.Name, Readings: in.Job.Build.Readings,
		Gauges: []GaugeJSON{}, Fits: []FitJSON{}, Suspects: []SuspectJSON{}, Hung: []HungJSON{}, Tools: in.toolValues()}
	unseen := map[string][]string{}
	for _, b := range s.Blind() {
		unseen[b.Gauge] = b.Slips
	}
	shown := map[string]bool{}
	for _, g := range list {
		shown[g.Label] = true
		v := in.gaugeValues(g)
		v.UnseenSlips = unseen[g.Label]
		out.Gauges = append(out.Gauges, v)
	}
	for _, f := range s.Fits {
		out.Fits = append(out.Fits, FitJSON{f.Family, f.Material, f.Law.String(), f.DensityKgM3 / 1000, f.UDensityKgM3 / 1000,
			f.Exponent, f.UExponent, float64(100 * f.Scatter), f.ScatterAssumed, float64(1000 * f.MinOuter), float64(1000 * f.MaxOuter), nonNil(f.Used), nonNil(f.LeftOut)})
	}
	for _, p := range s.Suspects() {
		if shown[p.Gauge] {
			out.Suspects = append(out.Suspects, SuspectJSON{p.Gauge, p.Place.String(), p.Why, p.WouldFit, nonNil(p.Slips), float64(100 * p.Deviation)})
		}
	}
	for _, h := range in.hungOf(list) {
		v := HungJSON{Gauge: h.Gauge, Line: h.Place.Line, Load: float64(h.Load), BreakingN: float64(h.Breaking), OverHalf: h.OverHalf()}
		if h.Breaking > 0 {
			v.Percent = float64(100 * h.Load / h.Breaking)
		}
		out.Hung = append(out.Hung, v)
		out.Cautions = []string{gauges.HungCaution}
	}
	return out
}

func nonNil(list []string) []string { return append([]string{}, list...) }

func (in *Input) gaugeValues(g gauges.Gauge) GaugeJSON {
	w := choice.WireOf(g)
	out := GaugeJSON{
		Gauge: g.Label, Construction: g.Family, Material: g.Material, OuterMM: float64(1000 * g.Outer), UOuterMM: float64(1000 * g.UOuter),
		CoreMM: float64(1000 * g.Core), UCoreMM: float64(1000 * g.UCore), LinearDensity: unit.LinearDensity(g.LinearDensity).GramsPerMetre(),
		ULinearDensity: unit.LinearDensity(g.U).GramsPerMetre(),
		Within95:       unit.LinearDensity(g.Within95()).GramsPerMetre(), Within95Share: float64(100 * g.Within95() / g.LinearDensity), Coverage95: g.Coverage95(), Readings: g.Readings, Built: g.Built, Flags: nonNil(g.Flags()),
		DensityGCM3: g.ImpliedKgM3 / 1000, DensityOf: densityOf(g), Packing: float64(g.Packing), StiffnessN: float64(g.EA),
		BreakingN: w.Strength * w.CoreArea, Notes: g.Notes, ReadingsInFull: []ReadingJSON{},
	}
	if g.Core > 0 {
		out.CoreShape = g.Shape.String()
	}
	if j := g.Judged; j != nil {
		out.OffFit, out.UOffFit, out.OffFitLimit = ptr(j.Deviation.Percent()), ptr(j.U.Percent()), ptr(j.Limit.Percent())
	}
	out.OnePercentMM = fit.ShortestPiece(g.LinearDensity, onePercent, in.Job.Tools()).MM()
	for _, row := range g.Rows {
		out.ReadingsInFull = append(out.ReadingsInFull, in.readingValues(g, row))
	}
	return out
}

func (in *Input) readingValues(g gauges.Gauge, row reading.Reading) ReadingJSON {
	w := in.weigh(row, g)
	out := ReadingJSON{
		Line: row.Place.Line, Kind: row.Kind.String(), Pieces: max(row.Pieces, 1), LengthMM: row.Length.MM(), MassG: row.Mass.G(),
		LinearDensity: 1000 * w.linearDensity, ULinearDensity: 1000 * w.u, MostlyThrough: w.mostly, Date: row.Date, Remark: row.Remark,
		OffGaugePerCen: 100 * (w.linearDensity/float64(g.LinearDensity) - 1),
	}
	if row.Kind == reading.Hung {
		out.Pieces, out.LengthMM, out.MassG, out.PitchHz = 0, row.Speaking.MM(), row.HungMass.G(), row.Pitch.Hz()
	}
	return out
}

// worked is one reading turned into a linear density.
type worked struct {
	linearDensity, u float64 // kg/m
	mostly           string  // the input that adds most to the uncertainty
}

func (in *Input) weigh(row reading.Reading, g gauges.Gauge) worked {
	w, inputs := in.Job.Tools().Work(row, g.EA, g.EI)
	out, most := worked{linearDensity: w.KgPerM()}, 0.0
	for _, i := range inputs {
		out.u = math.Hypot(out.u, w.KgPerM()*i.RelU)
		if a := math.Abs(i.RelU); a > most {
			most, out.mostly = a, i.Name
		}
	}
	return out
}

func (in *Input) toolValues() ToolsJSON {
	t := in.Job.Tools()
	gravity, uGravity := t.GravityUsed()
	out := ToolsJSON{float64(1000 * t.BalanceResolution), float64(1000 * t.BalanceRepeatability), float64(1000 * t.BalanceAccuracy), float64(1000 * t.RulerResolution), float64(1000 * t.RulerAccuracy),
		float64(1000 * t.CaliperResolution), float64(1000 * t.CaliperAccuracy), float64(1000 * t.HungResolution), float64(1000 * t.HungAccuracy), float64(t.Pitch), gravity, uGravity, []string{}}
	for _, key := range []string{"balance_resolution", "ruler_resolution", "caliper_resolution", "hung_resolution", "pitch_uncertainty_cents", "gravity_m_s2"} {
		if in.assumed(key) != "" {
			out.Assumed = append(out.Assumed, key)
		}
	}
	return out
}
