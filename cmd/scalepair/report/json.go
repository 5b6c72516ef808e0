package report

import (
	"math"

	"scalepair/cmd/scalepair/show"
	"scalepair/fan"
	"scalepair/tension/choice"
)

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

func ptr[T any](v T) *T { return &v }

func deg(rad float64) float64 { return rad * 180 / math.Pi }

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

// limitsBroken adds broken limits to a report of the old kind.
func (in *Input) limitsBroken(r *show.Report, list []choice.Miss) {
	if words := in.broken(list); len(words) > 0 {
		r.Heading("Limits broken")
		r.Bullets(words...)
	}
}

func (in *Input) stockIndex(label string) int {
	for i, g := range in.Plan.Stock() {
		if g.Label == label {
			return i
		}
	}
	return -1
}
