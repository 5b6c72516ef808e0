package report

import (
	"math"

	"scalepair/cmd/scalepair/build"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// The values that setout prints as JSON. Lengths are in millimetres: those
// named set_... are rounded to what the calipers show, the others are exact.

// FigureJSON is one measure of a step of work: a length or a slant.
type FigureJSON struct {
	Name     string   `json:"measure"`
	SetMM    *float64 `json:"set_mm,omitempty"`
	ExactMM  *float64 `json:"exact_mm,omitempty"`
	SlantDeg *float64 `json:"slant_deg,omitempty"`
}

// SetMarkJSON is one mark on a string line.
type SetMarkJSON struct {
	Fret         int     `json:"fret"`
	SetFromNutMM float64 `json:"set_from_nut_mm"`
	SetStepMM    float64 `json:"set_step_mm"`
	FromNutMM    float64 `json:"from_nut_mm"`
	MMPerCent    float64 `json:"mm_per_cent"`
}

// SlotJSON is one slot with its fence.
type SlotJSON struct {
	Fret             int     `json:"fret"`
	SlantDeg         float64 `json:"slant_deg"`
	SetBassEdgeMM    float64 `json:"set_bass_edge_mm"`
	SetTrebleEdgeMM  float64 `json:"set_treble_edge_mm"`
	SetLengthMM      float64 `json:"set_slot_length_mm"`
	SetFenceBassMM   float64 `json:"set_fence_bass_edge_mm"`
	SetFenceTrebleMM float64 `json:"set_fence_treble_edge_mm"`
	MitreBox         bool    `json:"mitre_box_serves"`
}

// DotJSON is one dot.
type DotJSON struct {
	Fret       int     `json:"fret"`
	SetAlongMM float64 `json:"set_from_nut_line_mm"`
	SetOutMM   float64 `json:"set_out_to_bass_side_mm"`
}

// TaskJSON is one step of the setting-out list.
type TaskJSON struct {
	Title   string        `json:"title"`
	Do      string        `json:"do"`
	Figures []FigureJSON  `json:"measures,omitempty"`
	Marks   []SetMarkJSON `json:"marks,omitempty"`
	Slots   []SlotJSON    `json:"slots,omitempty"`
	Dots    []DotJSON     `json:"dots,omitempty"`
}

// DepthJSON is how deep one slot is sawn.
type DepthJSON struct {
	Fret     int     `json:"fret"`
	RadiusMM float64 `json:"radius_mm"`
	MiddleMM float64 `json:"needed_in_the_middle_mm"`
	BassMM   float64 `json:"needed_at_bass_end_mm"`
	TrebleMM float64 `json:"needed_at_treble_end_mm"`
	SawMM    float64 `json:"saw_to_mm"`
	// LeftMM is what is left of the thickness of the blank worked with.
	LeftMM *float64 `json:"left_under_mm,omitempty"`
}

// BlankJSON is one blank on offer.
type BlankJSON struct {
	Name          string   `json:"name"`
	Serves        bool     `json:"serves"`
	Why           string   `json:"why"`
	LengthMM      float64  `json:"length_mm"`
	WidthMM       float64  `json:"width_mm"`
	SpareLengthMM float64  `json:"spare_length_mm"`
	SpareWidthMM  float64  `json:"spare_width_mm"`
	ThicknessMM   float64  `json:"thickness_mm,omitempty"`
	LeftUnderMM   *float64 `json:"left_under_slots_mm,omitempty"`
	LeftAtEdgeMM  *float64 `json:"left_at_edges_mm,omitempty"`
	WorkedWith    bool     `json:"worked_with"`
	NutCrossMM    float64  `json:"nut_line_from_its_nut_end_mm,omitempty"`
	CentrelineMM  float64  `json:"centreline_from_its_bass_edge_mm,omitempty"`
}

// SetOutJSON is a whole set-out.
type SetOutJSON struct {
	Build            string            `json:"build"`
	ResolutionMM     float64           `json:"resolution_mm"`
	Layout           LayoutJSON        `json:"layout"`
	Blanks           []BlankJSON       `json:"blanks"`
	LeastThicknessMM float64           `json:"least_thickness_mm,omitempty"`
	Tasks            []TaskJSON        `json:"steps"`
	RadiusFirst      bool              `json:"radius_first"`
	Depths           []DepthJSON       `json:"slot_depths"`
	Kerf             string            `json:"kerf_and_tang"`
	Wire             WireJSON          `json:"fret_wire"`
	Spacing          []SpacingJSON     `json:"spacing"`
	Intonation       []IntonationJSON  `json:"inner_strings_out_of_tune"`
	Nut              []NutSlotJSON     `json:"nut"`
	Saddles          *SaddlesJSON      `json:"saddles,omitempty"`
	Lines            []FurtherLineJSON `json:"further_lines"`
	Shopping         ShoppingJSON      `json:"shopping"`
	LimitsBroken     []string          `json:"limits_broken"`
	Cautions         []string          `json:"cautions"`
}

// SetOutValues gives what setout prints as JSON.
func SetOutValues(in *Input, s *build.SetOut) SetOutJSON {
	b := &bench{Input: in, s: s}
	out := SetOutJSON{
		Build: in.Job.Build.Name, ResolutionMM: s.List.Resolution.StepMM(), Layout: LayoutValues(in, s.Layout),
		Blanks: []BlankJSON{}, LeastThicknessMM: s.LeastThicknessMM, RadiusFirst: s.Sawing.RadiusFirst, Depths: []DepthJSON{},
		Kerf: s.Sawing.TangInCut().String(), Wire: wireValues(s), Spacing: b.spacingValues(), Intonation: intonationValues(s.Layout),
		Nut: b.nutValues(), Saddles: b.saddleValues(), Lines: b.lineValues(), Shopping: ShoppingValues(in, s), LimitsBroken: append([]string{}, in.broken(b.misses())...), Cautions: b.cautions(),
	}
	for i, f := range s.Blanks {
		out.Blanks = append(out.Blanks, blankValues(f, i == s.Blank))
	}
	for _, t := range s.List.Tasks {
		out.Tasks = append(out.Tasks, taskValues(t))
	}
	for _, d := range s.Depths {
		v := DepthJSON{d.Fret, d.Radius.MM(), d.Middle.MM(), d.Bass.MM(), d.Treble.MM(), d.Saw.MM(), nil}
		if thick := b.thickness(); thick > 0 {
			v.LeftMM = ptr(thick - d.Saw.MM())
		}
		out.Depths = append(out.Depths, v)
	}
	return out
}

func blankValues(f build.BlankFit, used bool) BlankJSON {
	out := BlankJSON{Name: f.Blank.Name, Serves: f.WillDo(), Why: servesWords(f), LengthMM: f.Blank.Length.MM(), WidthMM: f.Blank.Width.MM(), SpareLengthMM: f.SpareLength.MM(), SpareWidthMM: f.SpareWidth.MM(),
		ThicknessMM: f.Blank.Thickness.MM(), WorkedWith: used, NutCrossMM: f.NutCrossFromEnd.MM(), CentrelineMM: f.CentreFromBassEdge.MM()}
	if f.LeftUnderMM != 0 {
		out.LeftUnderMM, out.LeftAtEdgeMM = ptr(f.LeftUnderMM), ptr(f.LeftAtEdgeMM)
	}
	return out
}

func taskValues(t mark.Task) TaskJSON {
	out := TaskJSON{Title: t.Title, Do: t.Do}
	for _, f := range t.Figures {
		if f.Kind == mark.FigureAngle {
			out.Figures = append(out.Figures, FigureJSON{Name: f.Name, SlantDeg: ptr(deg(f.AngleRad))})
			continue
		}
		out.Figures = append(out.Figures, FigureJSON{Name: f.Name, SetMM: ptr(setMM(f.Length)), ExactMM: ptr(f.Length.ExactMM)})
	}
	for _, m := range t.Marks {
		out.Marks = append(out.Marks, SetMarkJSON{m.Fret, setMM(m.FromNut), setMM(m.Step), m.FromNut.ExactMM, m.MMPerCent})
	}
	for _, s := range t.Slots {
		out.Slots = append(out.Slots, SlotJSON{s.Fret, deg(s.SlantRad), setMM(s.Bass), setMM(s.Treble), setMM(s.Length),
			setMM(s.FenceBass), setMM(s.FenceTreble), s.SquareBoxServes})
	}
	for _, d := range t.Dots {
		out.Dots = append(out.Dots, DotJSON{d.Fret, setMM(d.Along), setMM(d.Out)})
	}
	return out
}

// setMM is a rounded length, to the picometre: 23.7, not 23.700000000000003.
func setMM(x mark.Rounded) float64 { return math.Round(x.MM*1e9) / 1e9 }

// IntonationJSON is one inner string that straight frets put out of tune.
type IntonationJSON struct {
	String    int     `json:"string"`
	WorstFret int     `json:"worst_at_fret"`
	Cents     float64 `json:"cents_sharp"`
}

// intonationValues gives the worst fret of every string that is out of tune.
func intonationValues(l *fan.Layout) []IntonationJSON {
	out := []IntonationJSON{}
	for i := range l.Strings {
		if w, ok := worstOf(l, i+1); ok {
			out = append(out, IntonationJSON{w.String, w.Fret, w.Cents.Value()})
		}
	}
	return out
}

// worstOf is the worst error of one string.
func worstOf(l *fan.Layout, number int) (fan.CentsError, bool) {
	for _, e := range l.CentsErrors { // from the worst
		if e.String == number {
			return e, true
		}
	}
	return fan.CentsError{}, false
}
