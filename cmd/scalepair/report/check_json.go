package report

import "scalepair/fan/mark"

// MarkCheckJSON is one mark as found. What was not measured has only its place
// as laid out.
type MarkCheckJSON struct {
	Fret       int      `json:"fret"`
	PlanMM     float64  `json:"laid_out_mm"`
	Verdict    string   `json:"verdict"`
	Readings   int      `json:"readings"`
	FoundMM    *float64 `json:"found_mm,omitempty"`
	UMM        *float64 `json:"standard_uncertainty_mm,omitempty"`
	ErrorMM    *float64 `json:"off_mm,omitempty"`
	ErrorCents *float64 `json:"off_cents,omitempty"`
	FromFret   int      `json:"reckoned_from_fret,omitempty"`
	Sure       bool     `json:"sure"`
	Disputed   bool     `json:"in_doubt"`
	ShowsMM    float64  `json:"slip_that_would_show_mm,omitempty"`
}

// LineCheckJSON is one string line as found.
type LineCheckJSON struct {
	Line      string          `json:"line"`
	HandMM    float64         `json:"hand_scatter_mm"`
	ScatterMM float64         `json:"marks_scatter_mm"`
	Marks     []MarkCheckJSON `json:"marks"`
	LeftOut   []string        `json:"readings_left_out"`
}

// FindingJSON is one explanation of what was measured.
type FindingJSON struct {
	Kind  string  `json:"kind"`
	Words string  `json:"words"`
	Do    string  `json:"do"`
	Line  string  `json:"line"`
	Fret  int     `json:"fret"`
	MM    float64 `json:"size_mm"`
	UMM   float64 `json:"size_standard_uncertainty_mm"`
	Place string  `json:"entered_at,omitempty"`
}

// SlipJSON is a likely slip with what cannot be told from it.
type SlipJSON struct {
	FindingJSON
	Matters bool          `json:"matters"`
	Others  []FindingJSON `json:"not_told_apart_from"`
}

// DiagonalJSON is one measured diagonal.
type DiagonalJSON struct {
	Kind       string  `json:"kind"`
	Fret       int     `json:"fret"`
	PlanMM     float64 `json:"laid_out_mm"`
	MeasuredMM float64 `json:"measured_mm"`
	WantedMM   float64 `json:"wanted_mm"`
	UMM        float64 `json:"standard_uncertainty_mm"`
}

// AcrossJSON is how the lines stand to one another.
type AcrossJSON struct {
	PlanOffsetMM float64        `json:"nut_offset_laid_out_mm"`
	OffsetMM     float64        `json:"nut_offset_found_mm"`
	UMM          float64        `json:"standard_uncertainty_mm"`
	Verdict      string         `json:"verdict"`
	Sure         bool           `json:"sure"`
	Diagonals    []DiagonalJSON `json:"diagonals"`
}

// CheckJSON is the whole judgement.
type CheckJSON struct {
	InTolerance     bool            `json:"in_tolerance"`
	ToleranceMM     float64         `json:"tolerance_mm,omitempty"`
	ToleranceCents  float64         `json:"tolerance_cents,omitempty"`
	OffsetTolerance float64         `json:"nut_offset_tolerance_mm"`
	Outside         int             `json:"marks_outside"`
	Unsure          int             `json:"marks_not_sure"`
	Undecided       int             `json:"marks_undecided"`
	Unmeasured      int             `json:"marks_not_measured"`
	Slips           []SlipJSON      `json:"slips"`
	Lines           []LineCheckJSON `json:"lines"`
	Across          *AcrossJSON     `json:"between_the_lines,omitempty"`
}

// CheckValues gives what check prints as JSON.
func CheckValues(in *Input, c *Checked) CheckJSON {
	r := c.Report
	k := &checker{Input: in, c: c}
	out := CheckJSON{InTolerance: r.Pass, ToleranceMM: c.Options.Tolerance.MM, ToleranceCents: c.Options.Tolerance.Cents,
		OffsetTolerance: k.offsetTolerance(), Outside: r.Outside, Unsure: k.unsure(mark.Within) + k.unsure(mark.Outside), Undecided: r.Undecided, Unmeasured: r.Unmeasured, Slips: []SlipJSON{}}
	for _, s := range r.Slips {
		v := SlipJSON{FindingJSON: findingValues(s.Finding), Matters: s.Matters, Others: []FindingJSON{}}
		for _, f := range s.Others {
			v.Others = append(v.Others, findingValues(f))
		}
		out.Slips = append(out.Slips, v)
	}
	for _, l := range r.Lines {
		out.Lines = append(out.Lines, lineCheckValues(l, c.Readings))
	}
	if a := r.Across; a != nil {
		v := &AcrossJSON{PlanOffsetMM: a.PlanOffsetMM, OffsetMM: a.OffsetMM, UMM: a.U, Verdict: a.Verdict.String(), Sure: a.Sure, Diagonals: []DiagonalJSON{}}
		for _, d := range a.Diagonals {
			v.Diagonals = append(v.Diagonals, DiagonalJSON{d.Kind.String(), d.Fret, d.PlanMM, d.MM, d.ExpectedMM, d.OffU})
		}
		out.Across = v
	}
	return out
}

func findingValues(f mark.Finding) FindingJSON {
	out := FindingJSON{Kind: f.Kind.String(), Words: f.Words(), Do: f.Remedy(), Line: f.Line.String(), Fret: f.Fret, MM: f.MM, UMM: f.U}
	if f.Place.Line > 0 {
		out.Place = f.Place.String()
	}
	return out
}

func lineCheckValues(l mark.LineResult, readings []mark.Reading) LineCheckJSON {
	out := LineCheckJSON{Line: l.Line.String(), HandMM: l.HandMM, ScatterMM: l.ScatterMM, LeftOut: []string{}}
	for _, m := range l.Marks {
		v := MarkCheckJSON{Fret: m.Fret, PlanMM: m.PlanMM, Verdict: m.Verdict.String(), Readings: m.Readings, Sure: m.Sure,
			Disputed: m.Disputed, ShowsMM: m.ShowsMM, FromFret: m.DatumFret}
		if m.Verdict != mark.NotMeasured {
			v.FoundMM, v.UMM, v.ErrorMM, v.ErrorCents = ptr(m.PlanMM+m.ErrorMM), ptr(m.U), ptr(m.ErrorMM), ptr(m.ErrorCents)
		}
		out.Marks = append(out.Marks, v)
	}
	for _, row := range l.LeftOut {
		out.LeftOut = append(out.LeftOut, readings[row].Name())
	}
	return out
}
