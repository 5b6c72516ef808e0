package report

import (
	"math"

	"scalepair/fan"
	"scalepair/tension/choice"
)

// The values that --format json prints. Keys carry their units; lengths of
// scales and marks are in millimetres, forces in newtons, slants in degrees,
// whatever units the tables use. A value that is not known is left out.

// PairJSON is one scale pair with its set.
type PairJSON struct {
	BassMM             float64  `json:"bass_mm"`
	TrebleMM           float64  `json:"treble_mm"`
	DifferenceMM       float64  `json:"difference_mm"`
	Gauges             []string `json:"gauges_low_first"`
	Score              float64  `json:"score"`
	TensionMisfit      float64  `json:"tension_misfit_percent"`
	BendingForceMisfit float64  `json:"bending_force_misfit_percent"`
	OvertoneMisfit     float64  `json:"overtone_misfit_percent"`
	NutSlantDeg        float64  `json:"nut_slant_deg"`
	LastFretSlantDeg   float64  `json:"last_fret_slant_deg"`
	SaddleSlantDeg     float64  `json:"saddle_slant_deg"`
	NutToFret1BassMM   float64  `json:"nut_to_fret_1_bass_mm"`
	BlankLengthMM      float64  `json:"blank_length_mm"`
	BlankWidthMM       float64  `json:"blank_width_mm"`
	WinsPercent        *float64 `json:"wins_percent_of_trials,omitempty"`
	BeatsBestPercent   *float64 `json:"beats_best_percent_of_trials,omitempty"`
	ToldApartFromBest  *bool    `json:"told_apart_from_best,omitempty"`
}

// BendJSON is a bend of one string at one fret.
type BendJSON struct {
	Fret                float64 `json:"fret"`
	BendingForceN       float64 `json:"bending_force_n,omitempty"`
	BendingForceTargetN float64 `json:"bending_force_target_n,omitempty"`
	BendDistanceMM      float64 `json:"bend_distance_mm,omitempty"`
	TensionN            float64 `json:"tension_n,omitempty"`
	BreakingShare       float64 `json:"breaking_share,omitempty"`
	Why                 string  `json:"not_computed,omitempty"`
}

// StringJSON is one string in one tuning.
type StringJSON struct {
	String                    int        `json:"string"`
	Note                      string     `json:"note"`
	FrequencyHz               float64    `json:"frequency_hz"`
	LengthMM                  float64    `json:"length_mm"`
	SoundingHz                float64    `json:"sounding_frequency_hz,omitempty"` // under a capo
	SoundingMM                float64    `json:"sounding_length_mm,omitempty"`
	Gauge                     string     `json:"gauge"`
	GaugeFlags                []string   `json:"gauge_flags,omitempty"`
	TensionN                  float64    `json:"tension_n"`
	TensionUN                 float64    `json:"tension_standard_uncertainty_n"`
	TensionTargetN            float64    `json:"tension_target_n,omitempty"`
	OffTargetPercent          *float64   `json:"off_target_percent,omitempty"`
	BreakingShareOpen         float64    `json:"breaking_share_open,omitempty"`
	InharmonicityCents        float64    `json:"inharmonicity_cents,omitempty"`
	InharmonicityIsLowerBound bool       `json:"inharmonicity_is_lower_bound,omitempty"`
	Bends                     []BendJSON `json:"bends,omitempty"`
	CompensationLeastMM       *float64   `json:"compensation_least_mm,omitempty"`
	CompensationMostMM        *float64   `json:"compensation_most_mm,omitempty"`
}

// TuningJSON is the whole instrument in one tuning.
type TuningJSON struct {
	Tuning        string       `json:"tuning"`
	Name          string       `json:"tuning_name"`
	CapoFret      int          `json:"capo_fret,omitempty"`
	Strings       []StringJSON `json:"strings"`
	TotalN        float64      `json:"total_tension_n"`
	TotalUN       float64      `json:"total_tension_standard_uncertainty_n"`
	BassHalfN     float64      `json:"bass_half_n"`
	TrebleHalfN   float64      `json:"treble_half_n"`
	ChangePercent *float64     `json:"change_from_reference_percent,omitempty"`
	// ChangeFromFirst is for a comparison: from the first tuning of its first column.
	ChangeFromFirst    *float64 `json:"change_from_first_column_percent,omitempty"`
	TensionMisfit      float64  `json:"tension_misfit_percent"` // of this tuning by itself
	BendingForceMisfit float64  `json:"bending_force_misfit_percent"`
}

// DetailJSON is one pair, string by string.
type DetailJSON struct {
	Pair         PairJSON     `json:"pair"`
	Tunings      []TuningJSON `json:"tunings"`
	LimitsBroken []string     `json:"limits_broken"`
	Cautions     []string     `json:"cautions"`
}

// DroppedJSON counts what one limit dropped.
type DroppedJSON struct {
	Limit            string  `json:"limit"`
	Pairs            int     `json:"pairs"`
	NearestBassMM    float64 `json:"nearest_miss_bass_mm"`
	NearestTrebleMM  float64 `json:"nearest_miss_treble_mm"`
	NearestMissWords string  `json:"nearest_miss"`
}

// AdviceJSON is all that advise found.
type AdviceJSON struct {
	Build      string          `json:"build"`
	PairsTried int             `json:"pairs_tried"`
	PairsKept  int             `json:"pairs_kept"`
	Pairs      []PairJSON      `json:"pairs"`
	Front      []PairJSON      `json:"front"`
	Dropped    []DroppedJSON   `json:"dropped"`
	Confidence *ConfidenceJSON `json:"confidence,omitempty"`
	Best       *DetailJSON     `json:"best,omitempty"`
	Layout     *LayoutJSON     `json:"layout,omitempty"`
}

// ConfidenceJSON says how sure the ranking is.
type ConfidenceJSON struct {
	Trials       int        `json:"trials"`
	Seed         uint64     `json:"seed"`
	Compared     int        `json:"pairs_compared"`
	Tied         int        `json:"pairs_not_told_apart"`
	TieMayBeMore bool       `json:"tie_may_be_wider"`
	BassMM       [2]float64 `json:"tie_bass_mm"`
	TrebleMM     [2]float64 `json:"tie_treble_mm"`
	DifferenceMM [2]float64 `json:"tie_difference_mm"`
}

// MarkJSON is one fret's marks.
type MarkJSON struct {
	Fret            int     `json:"fret"`
	BassFromNutMM   float64 `json:"bass_from_nut_mm"`
	BassStepMM      float64 `json:"bass_step_mm"`
	TrebleFromNutMM float64 `json:"treble_from_nut_mm"`
	TrebleStepMM    float64 `json:"treble_step_mm"`
	SlantDeg        float64 `json:"slant_deg"`
}

// LineJSON is one string line, in the layout's axes: x along the centreline
// from where the nut line crosses it towards the bridge, y to the bass side.
type LineJSON struct {
	String    int     `json:"string"`
	LengthMM  float64 `json:"length_mm"`
	NutXMM    float64 `json:"nut_x_mm"`
	NutYMM    float64 `json:"nut_y_mm"`
	SaddleXMM float64 `json:"saddle_x_mm"`
	SaddleYMM float64 `json:"saddle_y_mm"`
	// From the bass string's end, along each line.
	AlongNutMM    float64 `json:"along_nut_line_mm"`
	AlongSaddleMM float64 `json:"along_saddle_line_mm"`
}

// OfferJSON is one blank on offer beside the board.
type OfferJSON struct {
	Name          string  `json:"name"`
	LengthMM      float64 `json:"length_mm"`
	WidthMM       float64 `json:"width_mm"`
	Serves        bool    `json:"serves"`
	SpareLengthMM float64 `json:"spare_length_mm"`
	SpareWidthMM  float64 `json:"spare_width_mm"`
}

// LayoutJSON is the fan in numbers.
type LayoutJSON struct {
	BassMM         float64     `json:"bass_mm"`
	TrebleMM       float64     `json:"treble_mm"`
	NeutralFret    string      `json:"neutral_fret"`
	NutOffsetMM    float64     `json:"nut_offset_mm"`
	NutSlantDeg    float64     `json:"nut_slant_deg"`
	SaddleSlantDeg float64     `json:"saddle_slant_deg"`
	NutBlankMM     float64     `json:"nut_blank_mm"`
	Marks          []MarkJSON  `json:"marks"`
	Strings        []LineJSON  `json:"strings"`
	WorstCents     float64     `json:"worst_inner_string_cents"`
	BlankLengthMM  float64     `json:"blank_length_mm"`
	BlankWidthMM   float64     `json:"blank_width_mm"`
	Offers         []OfferJSON `json:"blanks_on_offer"`
	LimitsBroken   []string    `json:"limits_broken"` // of the pair as a whole
	Cautions       []string    `json:"cautions"`
}

// AdviceValues gives what advise prints as JSON.
func AdviceValues(in *Input, a *Advice) AdviceJSON {
	out := AdviceJSON{Build: in.Job.Build.Name, PairsTried: a.Result.Tried, PairsKept: a.Result.Kept,
		Pairs: []PairJSON{}, Front: []PairJSON{}, Dropped: []DroppedJSON{}}
	for i, c := range a.Result.Best {
		p := in.pairValues(c)
		if a.Confidence != nil && i < len(a.Confidence.Standing) {
			s := a.Confidence.Standing[i]
			p.WinsPercent, p.BeatsBestPercent, p.ToldApartFromBest = ptr(100*s.Wins), ptr(100*s.BeatsBest), ptr(s.Told)
		}
		out.Pairs = append(out.Pairs, p)
	}
	for _, c := range a.Result.Front {
		out.Front = append(out.Front, in.pairValues(c))
	}
	for _, d := range a.Result.Dropped {
		out.Dropped = append(out.Dropped, DroppedJSON{reasonWords[d.Reason], d.Pairs, d.Nearest.BassMM, d.Nearest.TrebleMM, in.miss(d.Nearest)})
	}
	if c := a.Confidence; c != nil {
		out.Confidence = &ConfidenceJSON{c.Trials, c.Seed, len(c.Standing), len(c.Tie), c.Cut, c.BassMM, c.TrebleMM, c.DifferenceMM}
	}
	if a.Best != nil {
		out.Best, out.Layout = ptr(DetailValues(in, a.Best)), ptr(LayoutValues(in, a.Layout))
	}
	return out
}

func ptr[T any](v T) *T { return &v }

func deg(rad float64) float64 { return rad * 180 / math.Pi }

func (in *Input) pairValues(c choice.Candidate) PairJSON {
	return PairJSON{
		BassMM: c.BassMM, TrebleMM: c.TrebleMM, DifferenceMM: c.DifferenceMM(), Gauges: in.lowFirst(c.Gauges), Score: c.Score,
		TensionMisfit: c.TensionMisfit, BendingForceMisfit: c.BendingForceMisfit, OvertoneMisfit: c.OvertoneMisfit,
		NutSlantDeg: deg(c.NutSlantRad), LastFretSlantDeg: deg(c.LastSlantRad), SaddleSlantDeg: deg(c.SaddleSlantRad),
		NutToFret1BassMM: c.NutToFret1MM, BlankLengthMM: c.BlankLengthMM, BlankWidthMM: c.BlankWidthMM,
	}
}

// lowFirst gives the labels of a set, low string first.
func (in *Input) lowFirst(set []int) []string {
	out := make([]string, len(set))
	for i, g := range set {
		out[len(set)-1-i] = in.Plan.Stock()[g].Label
	}
	return out
}

// TensionJSON is what tension prints.
type TensionJSON struct {
	DetailJSON
}

// TensionValues gives what tension prints as JSON.
func TensionValues(in *Input, d *choice.Detail) TensionJSON {
	return TensionJSON{DetailValues(in, d)}
}

// DetailValues gives one pair with its set, string by string.
func DetailValues(in *Input, d *choice.Detail) DetailJSON {
	out := DetailJSON{Pair: in.pairValues(d.Candidate), LimitsBroken: append([]string{}, in.broken(d.Broken)...),
		Cautions: append(in.detailCautions(d), shortCautions...)}
	for c := range d.Totals {
		from := in.Plan.Request().Cases[c]
		t := TuningJSON{Tuning: in.Tunings()[c].String(), Name: from.Name, CapoFret: from.CapoFret, TotalN: d.Totals[c].TensionN, TotalUN: d.Totals[c].UTensionN,
			BassHalfN: d.Totals[c].BassHalfN, TrebleHalfN: d.Totals[c].TrebleHalfN,
			TensionMisfit: d.Totals[c].TensionMisfit, BendingForceMisfit: d.Totals[c].BendingForceMisfit}
		if change, ok := totalChange(d, c); ok {
			t.ChangePercent = ptr(100 * change)
		}
		for i := range d.Strings {
			t.Strings = append(t.Strings, in.stringValues(&d.Strings[i], c))
		}
		out.Tunings = append(out.Tunings, t)
	}
	return out
}

func (in *Input) stringValues(s *choice.StringDetail, c int) StringJSON {
	cd, g := s.Cases[c], in.Plan.Stock()[s.Gauge]
	out := StringJSON{
		String: s.Number, Note: in.note(c, s.Number), FrequencyHz: cd.FreqHz, LengthMM: 1000 * s.LengthM,
		Gauge: g.Label, GaugeFlags: g.Flags(), TensionN: cd.TensionN, TensionUN: cd.UTensionN, TensionTargetN: s.TargetN,
		BreakingShareOpen: cd.ShareOpen, InharmonicityCents: cd.InharmonicityCents, InharmonicityIsLowerBound: g.Family != "plain" && cd.InharmonicityCents > 0,
	}
	if in.Plan.Request().Cases[c].CapoFret > 0 {
		out.SoundingHz, out.SoundingMM = cd.SoundingHz, 1000*cd.SoundingM
	}
	if s.TargetN > 0 {
		out.OffTargetPercent = ptr(100 * (cd.TensionN/s.TargetN - 1))
	}
	for _, b := range cd.Bends {
		v := BendJSON{Fret: b.Fret, BendingForceTargetN: b.TargetN}
		if b.Err != nil {
			v.Why = b.Err.Error()
		} else {
			v.BendingForceN, v.BendDistanceMM, v.TensionN, v.BreakingShare = b.Bend.BendingForceN, 1000*b.Bend.BendDistanceM, b.Bend.TensionN, b.Share
		}
		out.Bends = append(out.Bends, v)
	}
	if s.CompensationErr == nil {
		out.CompensationLeastMM, out.CompensationMostMM = ptr(1000*s.CompensationM[0]), ptr(1000*s.CompensationM[1])
	}
	return out
}

// LaidOutJSON is what layout prints.
type LaidOutJSON struct {
	LayoutJSON
}

// LaidOutValues gives what layout prints as JSON.
func LaidOutValues(in *Input, l *fan.Layout) LaidOutJSON {
	return LaidOutJSON{LayoutValues(in, l)}
}

// LayoutValues gives the fan in numbers.
func LayoutValues(in *Input, l *fan.Layout) LayoutJSON {
	b := l.LeastBlank()
	out := LayoutJSON{
		BassMM: l.Spec.Bass.MM(), TrebleMM: l.Spec.Treble.MM(), NeutralFret: in.neutral(), NutOffsetMM: l.NutOffset.MM(),
		NutSlantDeg: deg(l.Nut.Slant.Rad()), SaddleSlantDeg: deg(l.Saddle.Slant.Rad()), NutBlankMM: l.NutBlank.MM(),
		BlankLengthMM: b.Length.MM(), BlankWidthMM: b.Width.MM(), Offers: []OfferJSON{},
		LimitsBroken: append([]string{}, in.broken(in.Plan.PairLimits(l))...), Cautions: append([]string{}, steepCautions(l)...),
	}
	if worst, ok := l.WorstCents(); ok {
		out.WorstCents = worst.Cents.Value()
	}
	for _, f := range l.Frets[1:] {
		out.Marks = append(out.Marks, MarkJSON{f.Number, f.Bass.FromNut.MM(), f.Bass.Step.MM(), f.Treble.FromNut.MM(), f.Treble.Step.MM(), deg(f.Line.Slant.Rad())})
	}
	for _, s := range l.Strings {
		nut, saddle := l.NutPositions[s.Number-1], l.SaddlePositions[s.Number-1]
		out.Strings = append(out.Strings, LineJSON{s.Number, s.Length.MM(), s.Nut.X.MM(), s.Nut.Y.MM(), s.Saddle.X.MM(), s.Saddle.Y.MM(),
			nut.AlongFromBass.MM(), saddle.AlongFromBass.MM()})
	}
	for _, o := range b.Fit(in.Job.Build.Blanks) {
		out.Offers = append(out.Offers, OfferJSON{o.Blank.Name, o.Blank.Length.MM(), o.Blank.Width.MM(), o.Fits, o.SpareLength.MM(), o.SpareWidth.MM()})
	}
	return out
}
