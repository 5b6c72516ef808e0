package mark

import "scalepair/data/unit"

// Verdict is how one mark stands against the tolerance.
type Verdict string

const (
	NotMeasured Verdict = "not measured" // no reading
	Within      Verdict = "within"       // of the tolerance, by the best position
	Outside     Verdict = "outside"      // of the tolerance, by the best position: to be redone
	Undecided   Verdict = "undecided"    // it hangs on steps that do not reach the nut
)

// Result is what the passes together say of one mark. Of a mark that is not
// measured or undecided, Measured to ErrorCents are nil.
type Result struct {
	Fret     int          `json:"fret"`
	Nominal  unit.Length  `json:"nominal_mm"` // from the nut along the string line
	Verdict  Verdict      `json:"verdict"`
	Readings int          `json:"readings"` // that touch the mark
	Measured *unit.Length `json:"measured_mm,omitempty"`
	U        *unit.Length `json:"standard_uncertainty_mm,omitempty"`
	// Error is Measured less Nominal: positive where the mark stands too near the
	// bridge. ErrorCents is what it does to the note, positive for sharp:
	// 1200 log2((L - x)/(L - x - error)).
	Error      *unit.Length `json:"error_mm,omitempty"`
	ErrorCents *unit.Cents  `json:"error_cents,omitempty"`
	// Sure is true when error and tolerance lie at least two standard
	// uncertainties apart and nothing about the mark is disputed.
	Sure bool `json:"sure"`
	// Disputed is true when a slip was found that may or may not concern this
	// mark: see Report.Slips.
	Disputed bool `json:"in_doubt"`
	// Shows is the least error of this one mark that these readings would have
	// shown in 95 % of cases. 0 where none could show.
	Shows unit.Length `json:"slip_that_would_show_mm"`
}

// LineResult is one string line.
type LineResult struct {
	Line Line `json:"line"`
	// Scatter is how far the hand scatters when it sets a tool on a mark, and the
	// marks about their nominal places, beyond what the tools' resolution explains:
	// one standard deviation for both. Of fewer than eight readings it is taken
	// as 0.05 mm.
	Scatter unit.Length `json:"scatter_mm"`
	Marks   []Result    `json:"marks"`    // frets 1 to the last
	LeftOut []string    `json:"left_out"` // names of the readings that are wrong beyond doubt
}

// Across is how the two lines stand to one another.
type Across struct {
	// Nominal is the nut offset of the layout, Measured the best value from the
	// diagonals and the offset's own reading.
	Nominal   unit.Length `json:"nut_offset_nominal_mm"`
	Measured  unit.Length `json:"nut_offset_measured_mm"`
	Error     unit.Length `json:"nut_offset_error_mm"`
	U         unit.Length `json:"standard_uncertainty_mm"`
	Verdict   Verdict     `json:"verdict"`
	Sure      bool        `json:"sure"`
	Diagonals []Diagonal  `json:"diagonals"`
}

// Diagonal is one measured diagonal. Expected is with the marks where they were
// found and the nut offset as it should be.
type Diagonal struct {
	Kind     Kind        `json:"kind"`
	Fret     int         `json:"fret"`
	Nominal  unit.Length `json:"nominal_mm"`
	Measured unit.Length `json:"measured_mm"`
	Expected unit.Length `json:"expected_mm"`
	U        unit.Length `json:"standard_uncertainty_mm"` // of the difference from Expected
}

// Report is the whole outcome of Check.
type Report struct {
	// Pass is true when no mark and no offset is outside or undecided and no
	// slip matters. Unmeasured marks do not stand in the way.
	Pass       bool          `json:"in_tolerance"`
	Outside    int           `json:"marks_outside"`
	Unsure     int           `json:"marks_not_sure"` // not sure, for no slip's sake
	Undecided  int           `json:"marks_undecided"`
	Unmeasured int           `json:"marks_not_measured"`
	Slips      []Slip        `json:"slips"` // the plainest first; empty for clean marking
	Lines      [2]LineResult `json:"lines"` // by Line
	Across     *Across       `json:"between_the_lines,omitempty"`
}

// SlipKind says what went wrong.
type SlipKind string

const (
	// MarkOff: the mark itself is misplaced; both passes agree about it.
	MarkOff SlipKind = "mark off"
	// RulerSlip: the reading from the nut is wrong, the mark is not.
	RulerSlip SlipKind = "ruler reading"
	// StepSlip: the step was read wrong, and with it all later sums.
	StepSlip SlipKind = "caliper step"
	// MarksOff: this mark and all after it are off together, as when one step
	// slipped in the marking. From mark 1 on it is the nut mark that is off.
	MarksOff SlipKind = "marks off together"
	// RulerMoved: the readings from the nut of this mark and all after it are off
	// alike, the marks are not. From the first on the ruler's zero was not on the
	// nut mark.
	RulerMoved SlipKind = "ruler moved"
	// OffsetOff: the treble line lies too far forward or back against the bass
	// line; it shows on neither line alone.
	OffsetOff SlipKind = "nut offset"
	// OffsetSlip: the nut offset was read wrong.
	OffsetSlip SlipKind = "nut offset reading"
	// DiagonalSlip: one diagonal was read wrong.
	DiagonalSlip SlipKind = "diagonal reading"
)

// Finding is one explanation of what was measured.
type Finding struct {
	Kind SlipKind `json:"kind"`
	Line Line     `json:"line"` // of a diagonal the line it ends on
	// Fret is the mark concerned: the mark a reading or step ends on, the first
	// one of several.
	Fret int `json:"fret"`
	From int `json:"from_fret,omitempty"` // of StepSlip: the mark the step begins at
	// Size is the slip: positive when a mark stands too near the bridge, a
	// reading is too long, or the treble nut lies too near the bridge. U is its
	// standard uncertainty. Of MarkOff both are those of the mark's result.
	Size    unit.Length `json:"size_mm"`
	U       unit.Length `json:"size_standard_uncertainty_mm"`
	Reading *Reading    `json:"-"` // the reading concerned; nil where it is none, or several
}

// IsReading reports whether readings are wrong and the marks are not.
func (f Finding) IsReading() bool {
	switch f.Kind {
	case RulerSlip, StepSlip, RulerMoved, OffsetSlip, DiagonalSlip:
		return true
	}
	return false
}

// concerns reports whether a finding, if true, moves the best place of mark n,
// or leaves it in doubt.
func (f Finding) concerns(n int) bool {
	if f.Kind == MarkOff || f.Kind == RulerSlip {
		return n == f.Fret
	}
	return n >= f.Fret
}

// IsNut reports whether it is the nut mark of a line that is off.
func (f Finding) IsNut() bool { return f.Kind == MarksOff && f.Fret == 1 }

// Slip is the likeliest explanation and those that explain what was measured at
// least a twentieth as well.
type Slip struct {
	Finding
	Others []Finding `json:"or"`
	// Matters is true when the slip, or one of the others, is larger than the
	// tolerance where it stands: at the tightest of the marks that it shifts.
	Matters bool `json:"matters"`
}

// findings gives the slip's own finding and the others, to be changed.
func (s *Slip) findings() []*Finding {
	out := []*Finding{&s.Finding}
	for i := range s.Others {
		out = append(out, &s.Others[i])
	}
	return out
}
