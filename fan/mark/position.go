package mark

import "slices"

// positions are the best places of one line's marks, from mark 0 on, less the
// nominal ones, with their standard uncertainties, 0 where no readings join the mark
// to the nut, and the scatter of the hand, mm.
type positions struct {
	error, u []float64
	scatter  float64
}

// positions puts the passes together. Every mark's place is free, and so is the size
// of every slip of reading that is beyond doubt; what remains scatters as
//
//	S = diag(variance + s^2) + zeros
//
// s  scatter of the hand; zeros  the common part of a tool whose zero may be off.
// The place of a mark is then its slip beside all others: weighted least squares
// with correlated errors (GUM H.2 and H.3 treat the like; clause numbers from memory).
func (e evidence) positions(scatter float64, slips []*candidate) positions {
	cov, errors := e.tools(), e.errors()
	for i := range e.seen {
		cov.row(i)[i] += scatter * scatter
	}
	hand, marks := newScale(scatter, cov), slices.Clone(slips)
	for n := 1; n <= e.plan.last(); n++ {
		marks = append(marks, &candidate{effect: e.moved(n, n)})
	}
	out := positions{make([]float64, len(e.plan.marks)), make([]float64, len(e.plan.marks)), scatter}
	for n := 1; n <= e.plan.last(); n++ {
		k := len(slips) + n - 1
		others := hand.fit(errors, slices.Delete(slices.Clone(marks), k, k+1))
		out.error[n], out.u[n], _ = others.slip(marks[k])
	}
	return out
}
