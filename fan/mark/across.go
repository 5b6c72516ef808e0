package mark

import (
	"math"

	"scalepair/fan"
)

// acrossCandidates is the number of things that may have slipped between the
// lines: the nut offset, its reading, two diagonals, the span.
const acrossCandidates = 5

// tie is one reading between the lines.
type tie struct {
	row    int
	kind   Kind
	fret   int
	off, u float64 // read less expected from the marks as they are, and its standard uncertainty
	offset float64 // what 1 mm of nut offset does to it
	span   float64 // what 1 mm more between the lines does to it
	plan   float64
}

// checkAcross weighs diagonals and nut offset.
//
// A treble nut that lies d mm too near the bridge, with all treble marks set
// out from it, is seen on neither line alone. It makes the diagonal from the
// bass nut longer by about d and the one from the treble nut shorter by about
// d; a span that is wrong makes both longer, a slip of reading changes one.
func checkAcross(p plan, known [2]knownLine, readings []Reading, o Options, board int) (*Across, []Slip) {
	ties := p.ties(known, readings, o)
	if len(ties) == 0 {
		return nil, nil
	}
	limit := normalQuantile(falseAlarm / float64(board))
	slips, use := acrossSlips(ties, math.Hypot(known[Bass].scatter, known[Treble].scatter), limit)
	for i := range slips {
		slips[i].finishAcross(readings, o)
	}
	out := &Across{PlanOffsetMM: p.offsetMM}
	out.weigh(use, o)
	for _, t := range ties {
		if t.kind != NutOffset {
			out.Diagonals = append(out.Diagonals, Diagonal{Kind: t.kind, Fret: t.fret, PlanMM: t.plan,
				MM: readings[t.row].MM, ExpectedMM: readings[t.row].MM - t.off, OffU: t.u})
		}
	}
	return out, slips
}

// ties gives the readings between the lines.
func (p plan) ties(known [2]knownLine, readings []Reading, o Options) []tie {
	var out []tie
	for i, r := range readings {
		switch r.Kind {
		case FromBassNut:
			out = append(out, p.diagonal(i, r, Bass, known, o))
		case FromTrebleNut:
			out = append(out, p.diagonal(i, r, Treble, known, o))
		case NutOffset:
			tool := o.Caliper
			hand := 2 * max(known[Bass].hand, known[Treble].hand) // a square is laid and a tool set, on two marks
			out = append(out, tie{row: i, kind: NutOffset, off: r.MM - p.offsetMM, offset: 1,
				u: math.Hypot(stepOf(r, tool)/math.Sqrt(12), math.Hypot(hand, tool.ZeroMM/math.Sqrt(3))), plan: p.offsetMM})
		}
	}
	return out
}

func stepOf(r Reading, t Tool) float64 {
	if r.StepMM > 0 {
		return r.StepMM
	}
	return t.StepMM
}

// diagonal expects the reading from the plan and from how far its end mark was
// found off on its own line.
func (p plan) diagonal(row int, r Reading, from Line, known [2]knownLine, o Options) tie {
	end := p.lines[1-from]
	a, b := p.lines[from].at[0], end.at[r.Fret]
	plan := math.Hypot(b.X.MM()-a.X.MM(), b.Y.MM()-a.Y.MM())
	along := cosBetween(a, b, end.at[0], end.at[end.last()])
	k := known[1-from]
	off, u := 0.0, k.scatter
	if k.datum[r.Fret] == 0 {
		off, u = k.off[r.Fret], k.u[r.Fret]
	}
	tool := o.Long
	if tool.StepMM == 0 {
		tool = o.Ruler
	}
	t := tie{row: row, kind: r.Kind, fret: r.Fret, plan: plan, off: r.MM - plan - off*along}
	t.offset = along
	if from == Treble {
		treble := p.lines[Treble]
		t.offset = -cosBetween(a, b, treble.at[0], treble.at[treble.last()])
	}
	t.span = math.Abs(b.Y.MM()-a.Y.MM()) / plan
	t.u = rootSum(stepOf(r, tool)/math.Sqrt(12), math.Sqrt2*k.hand, u*along,
		tool.ZeroMM/math.Sqrt(3), tool.ScalePart*plan/math.Sqrt(3))
	return t
}

// cosBetween is the cosine of the angle between the ways a to b and c to d.
func cosBetween(a, b, c, d fan.Point) float64 {
	x1, y1, x2, y2 := b.X.MM()-a.X.MM(), b.Y.MM()-a.Y.MM(), d.X.MM()-c.X.MM(), d.Y.MM()-c.Y.MM()
	return (x1*x2 + y1*y2) / (math.Hypot(x1, y1) * math.Hypot(x2, y2))
}

func rootSum(parts ...float64) float64 {
	sum := 0.0
	for _, x := range parts {
		sum += x * x
	}
	return math.Sqrt(sum)
}

// weigh gives the nut offset's best value: the weighted mean over the ties.
func (a *Across) weigh(ties []tie, o Options) {
	weight, sum := 0.0, 0.0
	for _, t := range ties {
		w := t.offset / (t.u * t.u)
		weight += w * t.offset
		sum += w * t.off
	}
	if weight == 0 {
		return
	}
	a.ErrorMM, a.U = plain(sum/weight), 1/math.Sqrt(weight)
	a.OffsetMM = a.PlanOffsetMM + a.ErrorMM
	bound := o.offsetBound()
	a.Verdict = Within
	if math.Abs(a.ErrorMM) > bound {
		a.Verdict = Outside
	}
	a.Sure = math.Abs(math.Abs(a.ErrorMM)-bound) >= 2*a.U
}

func (o Options) offsetBound() float64 {
	if o.OffsetToleranceMM > 0 {
		return o.OffsetToleranceMM
	}
	return DefaultOffsetToleranceMM
}
