package mark

import "scalepair/data/fault"

// Verdict is how one mark stands against the tolerance.
type Verdict int

const (
	// NotMeasured marks have no reading.
	NotMeasured Verdict = iota
	// Within the tolerance, by the best position.
	Within
	// Outside the tolerance, by the best position: to be redone.
	Outside
	// Undecided marks hang on a chain of steps that does not reach the nut, so
	// that only their distances from one another are known.
	Undecided
)

// String gives the verdict in plain words.
func (v Verdict) String() string {
	return [...]string{"not measured", "within", "outside", "undecided"}[v]
}

// MarkResult is what the passes together say of one mark.
type MarkResult struct {
	Fret   int
	PlanMM float64 // from the nut along the string line, as laid out

	// Readings is the number of readings that touch the mark; 0 for an
	// unmeasured mark, whose fields below, Verdict and ShowsMM apart, are 0.
	Readings int
	// MM is the best position from the nut and U its standard uncertainty. In
	// a chain that does not reach the nut both hold from DatumFret, which is
	// taken to stand where it was laid out.
	MM, U     float64
	DatumFret int
	// ErrorMM is MM less PlanMM: positive where the mark stands too near the
	// bridge. ErrorCents is what it does to the note, positive for sharp:
	// 1200 log2((L - x)/(L - x - error)). UCents is U in cents.
	ErrorMM, ErrorCents, UCents float64
	Verdict                     Verdict
	// Sure is true when error and tolerance lie at least two standard
	// uncertainties apart and nothing about the mark is disputed.
	Sure bool
	// Disputed is true when a slip was found that may or may not concern this
	// mark: see Report.Slips.
	Disputed bool
	// ShowsMM is the least slip of this one mark that these readings would
	// have shown in 95 % of cases. 0 where no slip of the mark could show.
	ShowsMM float64
}

// LineResult is one string line.
type LineResult struct {
	Line     Line
	LengthMM float64
	Marks    []MarkResult // frets 1 to the last
	// HandMM is how far the hand scatters when it sets a tool on a mark, and
	// ScatterMM how far the marks scatter about the plan, both as standard
	// deviations, found from these readings beyond what the tools' steps
	// explain. One pass alone cannot tell them apart and gives equal shares;
	// fewer than eight readings say nothing, and both are taken as 0.05 mm.
	HandMM, ScatterMM float64
	// LeftOut are the rows that the best positions do without, since they were
	// named as slips beyond doubt (indices into the readings given to Check).
	LeftOut []int
}

// Across is how the two lines stand to one another.
type Across struct {
	// PlanOffsetMM is the nut offset as laid out, OffsetMM the best value from
	// the diagonals and the offset's own reading, U its standard uncertainty.
	PlanOffsetMM, OffsetMM, U float64
	ErrorMM                   float64 // OffsetMM less PlanOffsetMM
	Verdict                   Verdict
	Sure                      bool
	Diagonals                 []Diagonal
}

// Diagonal is one measured diagonal, taken with the marks where they are.
type Diagonal struct {
	Kind             Kind
	Fret             int
	PlanMM, MM       float64
	ExpectedMM, OffU float64 // from the marks as measured, nut offset as laid out; standard uncertainty of the difference
}

// Report is the whole outcome of Check.
type Report struct {
	Lines  [2]LineResult // by Line
	Across *Across       // nil when neither diagonals nor nut offset were measured
	// Slips are the likely slips, the plainest first; empty for clean marking.
	Slips []Slip
	// Pass is true when no mark and no offset is outside or undecided and no
	// slip matters. Unmeasured marks do not stand in the way: see Unmeasured.
	Pass       bool
	Unmeasured int
	Outside    int
	Undecided  int
}

// SlipKind says what went wrong.
type SlipKind int

const (
	// MarkOff: the mark itself is misplaced; both passes agree about it.
	MarkOff SlipKind = iota
	// RulerSlip: the reading from the nut is wrong, the mark is not.
	RulerSlip
	// StepSlip: the step was read wrong, and with it all later sums.
	StepSlip
	// Shifted: this mark and all after it stand off together, as when one
	// step slipped while marking from mark to mark.
	Shifted
	// NutMarkOff: the nut mark is off against all others.
	NutMarkOff
	// Stretched: every mark is off in proportion to its distance, as when the
	// line was set out for another length.
	Stretched
	// RulerZeroOff: every reading from the nut is off alike; the ruler's nought
	// did not lie on the nut line.
	RulerZeroOff
	// RulerMoved: the readings from the nut of this mark and all after it are off
	// alike, the marks are not; the ruler moved meanwhile.
	RulerMoved
	// RulerScaleOff: the readings from the nut are off in proportion, the marks are
	// not.
	RulerScaleOff
	// CaliperZeroOff: every step is off alike; the jaws do not close at nought.
	CaliperZeroOff
	// OffsetOff: the treble line lies too far forward or back against the bass
	// line; it shows on neither line alone.
	OffsetOff
	// OffsetSlip: the nut offset was read wrong.
	OffsetSlip
	// DiagonalSlip: one diagonal was read wrong.
	DiagonalSlip
	// SpanOff: the two string lines stand too far apart or too close.
	SpanOff
)

// Finding is one explanation of what was measured.
type Finding struct {
	Kind SlipKind
	Line Line // of the first ten kinds and of a diagonal (the line it ends on)
	// Fret is the mark concerned: the mark a reading or step ends on, the
	// first shifted one or the first one read after the ruler moved, 0 for the nut, the last one measured for Stretched and
	// RulerScaleOff.
	Fret int
	From int // of StepSlip: the mark the step begins at
	// MM is the slip: positive when a mark stands too near the bridge, a
	// reading is too long, the lines are too far apart, or the treble nut lies
	// too near the bridge. For Stretched and RulerScaleOff it is that
	// at Fret. U is its
	// standard uncertainty. Of MarkOff both are those of the mark's result.
	MM, U float64
	// Row is the reading concerned (index into the readings given to Check),
	// -1 where it is no reading.
	Row   int
	Place fault.Place // of that reading
}

// Slip is the likeliest explanation and those that cannot be told from it.
type Slip struct {
	Finding
	// Ratio is how many standard uncertainties the slip stands off; Limit what
	// it had to exceed.
	Ratio, Limit float64
	// Others explain what was measured at least a twentieth as well.
	Others []Finding
	// Matters is true when the slip, or one that cannot be told from it, is
	// larger than the tolerance where it stands: at the tightest of the marks
	// that it shifts.
	Matters bool
}

// IsReading is true where the row is wrong and the marks are not.
func (f Finding) IsReading() bool {
	return f.Kind == RulerSlip || f.Kind == StepSlip || f.Kind == OffsetSlip || f.Kind == DiagonalSlip
}
