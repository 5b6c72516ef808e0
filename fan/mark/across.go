package mark

import (
	"math"

	"scalepair/data/unit"
	"scalepair/fan"
)

// acrossCandidates is the number of things that may have slipped between the
// lines: the nut offset, its reading, two diagonals.
const acrossCandidates = 4

// tie is one reading between the lines.
type tie struct {
	row      int
	kind     Kind
	fret     int
	error, u float64 // read less expected from the marks as they are, and its standard uncertainty, mm
	offset   float64 // what 1 mm of nut offset does to it
	nominal  float64
}

// checkAcross weighs diagonals and nut offset.
//
// A treble nut that lies d mm too near the bridge, with all treble marks set
// out from it, is seen on neither line alone. It makes the diagonal from the
// bass nut longer by about d and the one from the treble nut shorter by about
// d; a slip of reading changes one. The readings scatter as
//
//	S = diag(u^2) + nuts^2 a a'
//
// u  of the readings; nuts  how far the two nut marks scatter against one
// another, as any marks do; a  what the nut offset does to the readings.
func checkAcross(p plan, known [2]knownLine, readings []Reading, o Options, board int) (*Across, []Slip) {
	var ties []tie
	for i, r := range readings {
		if r.Kind == FromBassNut || r.Kind == FromTrebleNut || r.Kind == NutOffset {
			ties = append(ties, p.tie(i, r, known, o))
		}
	}
	if len(ties) == 0 {
		return nil, nil
	}
	out := &Across{Nominal: millimetres(p.offsetMM), Diagonals: []Diagonal{}}
	errors, candidates := make([]float64, len(ties)), candidatesAcross(ties)
	cov := newSquare(len(ties))
	for i, t := range ties {
		cov.row(i)[i] = t.u * t.u
		errors[i] = t.error
		if t.kind != NutOffset {
			measured := readings[t.row].Measured
			out.Diagonals = append(out.Diagonals, Diagonal{Kind: t.kind, Fret: t.fret, Nominal: millimetres(t.nominal),
				Measured: measured, Expected: measured - millimetres(t.error), U: millimetres(t.u)})
		}
	}
	nuts := math.Hypot(known[Bass].scatter, known[Treble].scatter)
	cov.addOuter(candidates[0].effect, nuts*nuts)
	f := newScale(0, cov).fit(errors, nil)
	var slips []Slip
	if best, ratio := f.greatest(candidates); ratio > limitOf(board, math.Inf(1)) {
		slip := f.named(candidates, best, limitOf(board, math.Inf(1)))
		for _, finding := range slip.findings() {
			if finding.Row >= 0 {
				finding.Place = readings[finding.Row].Place
			}
			slip.Matters = slip.Matters || math.Abs(finding.Size.MM()) > o.NutOffsetTolerance.MM()
		}
		slips = []Slip{slip}
	}
	out.weigh(ties, slips, o)
	return out, slips
}

// tie expects a reading from its nominal and from how far the marks were found
// off on their own lines.
func (p plan) tie(row int, r Reading, known [2]knownLine, o Options) tie {
	t := tie{row: row, kind: r.Kind, fret: r.Fret, nominal: p.nominal(r), offset: 1}
	t.error = r.Measured.MM() - t.nominal
	variance := square2(o.resolution(r).MM())/12 + square2(o.zero(r.Kind).MM())/3
	if r.Kind == NutOffset {
		hand := 2 * max(known[Bass].scatter, known[Treble].scatter) // a square is laid and a tool set, on two marks
		t.u = math.Sqrt(variance + square2(hand))
		return t
	}
	end := r.Kind.end()
	a, b := p.ends(r)
	along, k := cosBetween(a, b, p.lines[end]), known[end]
	moved, u := k.error[r.Fret], k.u[r.Fret]
	if u > lostMM {
		moved, u = 0, k.scatter
	}
	t.error -= moved * along
	if t.offset = along; end == Bass {
		t.offset = -cosBetween(a, b, p.lines[Treble])
	}
	t.u = math.Sqrt(variance + 2*square2(k.scatter) + square2(u*along))
	return t
}

func square2(x float64) float64 { return x * x }

// cosBetween is the cosine of the angle between the way from a to b and a line.
func cosBetween(a, b fan.Point, line linePlan) float64 {
	c, d := line.at[0], line.at[line.last()]
	x1, y1, x2, y2 := (b.X - a.X).MM(), (b.Y - a.Y).MM(), (d.X - c.X).MM(), (d.Y - c.Y).MM()
	return (x1*x2 + y1*y2) / (math.Hypot(x1, y1) * math.Hypot(x2, y2))
}

// candidatesAcross lists what may have slipped, the nut offset first.
func candidatesAcross(ties []tie) []candidate {
	offset := candidate{Finding: Finding{Kind: OffsetOff, Line: Treble, Row: -1}}
	out := make([]candidate, 1, acrossCandidates)
	for i, t := range ties {
		offset.effect = append(offset.effect, t.offset)
		c := candidate{Finding{Kind: DiagonalSlip, Line: t.kind.end(), Fret: t.fret, Row: t.row}, make([]float64, len(ties))}
		if t.kind == NutOffset {
			c.Kind, c.Line = OffsetSlip, Treble
		}
		c.effect[i] = 1
		out = append(out, c)
	}
	out[0] = offset
	return out
}

// weigh gives the nut offset's best value: the weighted mean over the readings
// but for one that is wrong beyond doubt.
func (a *Across) weigh(ties []tie, slips []Slip, o Options) {
	weight, sum := 0.0, 0.0
	for _, t := range ties {
		if len(slips) > 0 && len(slips[0].Others) == 0 && slips[0].Row == t.row {
			continue
		}
		w := t.offset / (t.u * t.u)
		weight += w * t.offset
		sum += w * t.error
	}
	if weight == 0 {
		return
	}
	mean, u := sum/weight, 1/math.Sqrt(weight)
	a.Error, a.U = millimetres(mean), unit.MM(u)
	a.Measured = a.Nominal + a.Error
	a.Verdict, a.Sure = judge(math.Abs(mean), u, o.NutOffsetTolerance.MM())
}
