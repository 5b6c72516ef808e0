package mark

import (
	"math"

	"scalepair/fan"
)

// acrossCandidates is the number of things that may have slipped between the
// lines: the nut offset, its reading, two diagonals.
const acrossCandidates = 4

// tie is one reading between the lines.
type tie struct {
	*Reading
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
// another, as any marks do; a  what the nut offset does to the readings. The
// offset's best value weighs the readings by u alone, but for one that is wrong
// beyond doubt.
func checkAcross(p plan, known [2]positions, readings []Reading, o Options, board int) (*Across, []Slip) {
	var ties []tie
	for i := range readings {
		if !readings[i].along() {
			ties = append(ties, p.tie(&readings[i], known, o))
		}
	}
	if ties == nil {
		return nil, nil
	}
	out := &Across{Nominal: millimetres(p.offsetMM), Verdict: NotMeasured, Diagonals: []Diagonal{}}
	errors, candidates, cov := make([]float64, len(ties)), candidatesAcross(ties), newSquare(len(ties))
	for i, t := range ties {
		cov.row(i)[i] = t.u * t.u
		errors[i] = t.error
		if t.Kind != NutOffset {
			out.Diagonals = append(out.Diagonals, Diagonal{Kind: t.Kind, Fret: t.Fret, Nominal: millimetres(t.nominal),
				Measured: t.Measured, Expected: t.Measured - millimetres(t.error), U: millimetres(t.u)})
		}
	}
	own := newScale(0, cov)
	nuts := math.Hypot(known[Bass].scatter, known[Treble].scatter)
	cov.addOuter(candidates[0].effect, nuts*nuts)
	var slips []Slip
	var wrong []*candidate // beyond doubt
	f := newScale(0, cov).fit(errors, nil)
	if best, ratio := f.greatest(candidates); ratio > limitOf(board, math.Inf(1)) {
		slips = []Slip{f.named(candidates, best)}
		for _, finding := range slips[0].findings() {
			slips[0].Matters = slips[0].Matters || math.Abs(finding.Size.MM()) > o.NutOffsetTolerance.MM()
		}
		if best.Reading != nil && len(slips[0].Others) == 0 {
			wrong = append(wrong, best)
		}
	}
	if size, u, _ := own.fit(errors, wrong).slip(candidates[0]); u > 0 {
		out.Error, out.U = millimetres(size), millimetres(u)
		out.Measured = out.Nominal + out.Error
		out.Verdict, out.Sure = judge(math.Abs(size), u, o.NutOffsetTolerance.MM())
	}
	return out, slips
}

// tie expects a reading from its nominal and from how far the marks were found
// off on their own lines.
func (p plan) tie(r *Reading, known [2]positions, o Options) tie {
	t := tie{Reading: r, nominal: p.nominal(*r), offset: 1}
	t.error = r.Measured.MM() - t.nominal
	resolution, zero := o.of(r)
	variance := resolution*resolution/12 + zero*zero/3
	if r.Kind == NutOffset {
		hand := 2 * max(known[Bass].scatter, known[Treble].scatter) // a square is laid and a tool set, on two marks
		t.u = math.Sqrt(variance + hand*hand)
		return t
	}
	end := r.Kind.end()
	a, b := p.ends(*r)
	along, k := cosBetween(a, b, p.lines[end]), known[end]
	moved, u := k.error[r.Fret], k.u[r.Fret]*along
	if k.u[r.Fret] == 0 {
		moved, u = 0, k.scatter*along
	}
	t.error -= moved * along
	if t.offset = along; end == Bass {
		t.offset = -cosBetween(a, b, p.lines[Treble])
	}
	t.u = math.Sqrt(variance + 2*(k.scatter*k.scatter) + u*u)
	return t
}

// cosBetween is the cosine of the angle between the way from a to b and a line.
func cosBetween(a, b fan.Point, line linePlan) float64 {
	c, d := line.outer.Nut, line.outer.Saddle
	return float64(((b.X-a.X)*(d.X-c.X) + (b.Y-a.Y)*(d.Y-c.Y)) / (a.Distance(b) * c.Distance(d)))
}

// candidatesAcross lists what may have slipped, the nut offset first.
func candidatesAcross(ties []tie) []*candidate {
	out := []*candidate{{Finding{Kind: OffsetOff, Line: Treble}, nil}}
	for i, t := range ties {
		out[0].effect = append(out[0].effect, t.offset)
		c := &candidate{Finding{Kind: DiagonalSlip, Line: t.Kind.end(), Fret: t.Fret, Reading: t.Reading}, make([]float64, len(ties))}
		if t.Kind == NutOffset {
			c.Kind, c.Line = OffsetSlip, Treble
		}
		c.effect[i] = 1
		out = append(out, c)
	}
	return out
}
