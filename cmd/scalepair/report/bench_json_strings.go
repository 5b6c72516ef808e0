package report

import (
	"scalepair/cmd/scalepair/build"
)

// WireJSON is the fret wire.
type WireJSON struct {
	Cuts    []CutJSON `json:"cuts"`
	SumMM   float64   `json:"sum_mm"`
	TotalMM float64   `json:"to_buy_mm"`
}

// CutJSON is one piece of fret wire; fret 0 is a zero fret.
type CutJSON struct {
	Fret     int     `json:"fret"`
	LengthMM float64 `json:"length_mm"`
}

func wireValues(s *build.SetOut) WireJSON {
	out := WireJSON{SumMM: s.Wire.Sum.MM(), TotalMM: s.Wire.Total.MM()}
	for _, c := range s.Wire.Cuts {
		out.Cuts = append(out.Cuts, CutJSON{c.Fret, c.Length.MM()})
	}
	return out
}

// SpacingJSON is the way from one string to the next.
type SpacingJSON struct {
	From           int     `json:"from_string"`
	To             int     `json:"to_string"`
	NutAlongMM     float64 `json:"nut_along_mm"`
	NutSquareMM    float64 `json:"nut_square_mm"`
	SaddleAlongMM  float64 `json:"saddles_along_mm"`
	SaddleSquareMM float64 `json:"saddles_square_mm"`
}

func (b *bench) spacingValues() []SpacingJSON {
	l, out := b.s.Layout, []SpacingJSON{}
	for i := range l.Strings[1:] {
		n, s := l.NutPositions[i], l.SaddlePositions[i]
		out = append(out, SpacingJSON{i + 1, i + 2, n.SpacingAlong.MM(), n.SpacingSquare.MM(), s.SpacingAlong.MM(), s.SpacingSquare.MM()})
	}
	return out
}

// NutSlotJSON is one slot of the nut.
type NutSlotJSON struct {
	String      int     `json:"string"`
	Gauge       string  `json:"gauge,omitempty"`
	FromEndMM   float64 `json:"from_bass_end_along_nut_mm"`
	DiameterMM  float64 `json:"string_diameter_mm,omitempty"`
	SlotWidthMM float64 `json:"slot_width_mm,omitempty"`
}

func (b *bench) nutValues() []NutSlotJSON {
	out := []NutSlotJSON{}
	for i, seat := range b.s.Layout.NutPositions {
		v := NutSlotJSON{String: i + 1, FromEndMM: seat.AlongFromEdge.MM()}
		if b.s.Detail != nil {
			thick, clear := b.slotWidth(i)
			v.Gauge, v.DiameterMM, v.SlotWidthMM = b.Plan.Stock()[b.s.Detail.Gauges[i]].Label, thick, thick+clear
		}
		out = append(out, v)
	}
	return out
}

// SaddleJSON is one string's saddle. A string whose compensation cannot be
// computed has only its foremost place.
type SaddleJSON struct {
	String         int      `json:"string"`
	Why            string   `json:"not_computed,omitempty"`
	LeastMM        *float64 `json:"compensation_least_mm,omitempty"`
	MostMM         *float64 `json:"compensation_most_mm,omitempty"`
	BeginMM        *float64 `json:"begin_at_mm,omitempty"`
	FromNutMM      *float64 `json:"nut_to_saddle_mm,omitempty"`
	ScrewBackMM    *float64 `json:"screw_back_mm,omitempty"`
	OutMM          *float64 `json:"out_to_bass_side_mm,omitempty"`
	Along12MM      *float64 `json:"from_fret_12_mm,omitempty"`
	AlongLastMM    *float64 `json:"from_last_fret_mm,omitempty"`
	AlongBodyEndMM *float64 `json:"from_body_end_mm,omitempty"`
	ForemostLastMM float64  `json:"foremost_from_last_fret_mm"`
	ForemostOutMM  float64  `json:"foremost_out_to_bass_side_mm"`
}

// SaddlesJSON is the bridge.
type SaddlesJSON struct {
	ForwardMM float64      `json:"travel_front_behind_theoretical_line_mm"`
	RearMM    float64      `json:"travel_rear_behind_theoretical_line_mm"`
	NeedMM    float64      `json:"travel_needed_mm"`
	HasMM     float64      `json:"travel_of_yours_mm,omitempty"`
	Without   []int        `json:"travel_without_strings,omitempty"` // their compensation is not known
	Strings   []SaddleJSON `json:"strings"`
}

func (b *bench) saddleValues() *SaddlesJSON {
	s := b.s.Saddles
	if s == nil {
		return nil
	}
	out := &SaddlesJSON{ForwardMM: s.Forward.MM(), RearMM: s.Rear.MM(), NeedMM: s.Need.MM(), HasMM: b.Job.Build.Limits.SaddleTravel.MM(), Without: b.unknownBacks()}
	for i, p := range s.Points {
		v := SaddleJSON{String: p.String, ForemostLastMM: p.Foremost.X.MM() - crossing(b.s.Layout, b.s.Layout.Spec.Frets), ForemostOutMM: p.Foremost.Y.MM()}
		if b.unknownBack(i) {
			v.Why = b.s.Detail.Strings[i].CompensationErr.Error()
		} else {
			v.LeastMM, v.MostMM, v.FromNutMM = ptr(p.Compensation.Lo.MM()), ptr(p.Compensation.Hi.MM()), ptr(p.FromNut.MM())
			v.BeginMM = ptr(p.Compensation.Middle().MM())
			v.ScrewBackMM, v.OutMM = ptr(p.Compensation.Middle().MM()-s.Forward.MM()), ptr(p.Out.MM())
			v.Along12MM, v.AlongLastMM, v.AlongBodyEndMM = ptr(p.Along12.MM()), ptr(p.AlongLast.MM()), ptr(p.AlongBodyEnd.MM())
		}
		out.Strings = append(out.Strings, v)
	}
	return out
}

// FurtherLineJSON is a line such as a pickup's.
type FurtherLineJSON struct {
	Name         string         `json:"name"`
	FromSaddleMM float64        `json:"in_front_of_saddle_line_mm"`
	BehindLastMM float64        `json:"behind_last_fret_mm"`
	SlantDeg     float64        `json:"slant_deg"`
	Strings      []PositionJSON `json:"strings"`
}

// PositionJSON is one string on a line.
type PositionJSON struct {
	String      int     `json:"string"`
	FromBassMM  float64 `json:"from_bass_string_along_mm"`
	SquareMM    float64 `json:"from_bass_string_square_mm"`
	OutToBassMM float64 `json:"out_to_bass_side_mm"`
	// To the next string on the bass side; none from the last.
	NextAlongMM  float64 `json:"to_the_next_along_mm,omitempty"`
	NextSquareMM float64 `json:"to_the_next_square_mm,omitempty"`
}

func (b *bench) lineValues() []FurtherLineJSON {
	out := []FurtherLineJSON{}
	for _, f := range b.s.Lines {
		v := FurtherLineJSON{Name: f.Name, FromSaddleMM: f.FromSaddle.MM(), BehindLastMM: f.BehindLastFret.MM(), SlantDeg: deg(f.Line.Slant.Rad())}
		for n, seat := range f.Positions {
			one := PositionJSON{String: seat.String, FromBassMM: seat.AlongFromBass.MM(), SquareMM: seat.SquareFromBass.MM(), OutToBassMM: seat.At.Y.MM()}
			if n+1 < len(f.Positions) {
				one.NextAlongMM, one.NextSquareMM = seat.SpacingAlong.MM(), seat.SpacingSquare.MM()
			}
			v.Strings = append(v.Strings, one)
		}
		out = append(out, v)
	}
	return out
}

// ShoppingJSON is what to buy.
type ShoppingJSON struct {
	Singles       []SingleJSON `json:"single_strings"`
	Blank         string       `json:"blank,omitempty"`
	BlankLengthMM float64      `json:"blank_least_length_mm"`
	BlankWidthMM  float64      `json:"blank_least_width_mm"`
	ThicknessMM   float64      `json:"blank_least_thickness_mm,omitempty"`
	WireMM        float64      `json:"fret_wire_mm"`
}

// SingleJSON is one gauge to buy.
type SingleJSON struct {
	Gauge          string  `json:"gauge"`
	Count          int     `json:"count"`
	Strings        []int   `json:"for_strings"`
	LeastWindingMM float64 `json:"least_wound_part_mm,omitempty"`
	BuyOneFirst    bool    `json:"buy_one_and_weigh_it_first"`
}

// ShoppingValues gives the shopping list as JSON.
func ShoppingValues(in *Input, s *build.SetOut) ShoppingJSON {
	need := s.Layout.LeastBlank()
	out := ShoppingJSON{Singles: []SingleJSON{}, BlankLengthMM: need.Length.MM(), BlankWidthMM: need.Width.MM(),
		ThicknessMM: s.LeastThicknessMM, WireMM: s.Wire.Total.MM()}
	if s.Blank >= 0 {
		out.Blank = s.Blanks[s.Blank].Blank.Name
	}
	for _, single := range in.Singles(s.Detail) {
		g := in.Plan.Stock()[single.Gauge]
		out.Singles = append(out.Singles, SingleJSON{g.Label, len(single.Strings), single.Strings, single.LeastWinding.MM(), in.weighFirst(single.Gauge)})
	}
	return out
}
