package mark

import "math"

// fitRounds bounds the scoring, which ends when a round moves the variances by
// less than a hundredth: the scatter itself is known to a tenth at best.
const fitRounds = 25

// fewReadings is the number of readings on a line below which the scatter
// cannot be learnt from them, and scarceMM what hand and marks are then taken
// to scatter (judgement: a mark drawn with a knife, a tool set on it by eye).
const (
	fewReadings = 8
	scarceMM    = 0.05
)

// fit finds the hand's and the marks' scatter that make the readings likeliest,
// the named slips taken out. Either may be 0: then the tools' steps explain
// everything. Fisher scoring with the step halved until the likelihood rises.
func (m scatterModel) fit(slips [][]float64) noise {
	start := 0.0
	if m.assumed {
		start = scarceMM * scarceMM
	}
	best, ok := m.at(start, start)
	if !ok {
		panic("mark: the tools' steps alone have no inverse")
	}
	if m.assumed {
		return best
	}
	pr := m.project(best, slips)
	for range fitRounds {
		dh, ds := m.scoringStep(best, pr)
		if math.IsNaN(dh+ds) || math.IsInf(dh+ds, 0) {
			break // the named slips explain every reading: nothing is left to learn from
		}
		next, nextPr, ok := m.climb(best, pr, dh, ds, slips)
		if !ok {
			break
		}
		moved := math.Abs(next.hand2-best.hand2) + math.Abs(next.scatter2-best.scatter2)
		best, pr = next, nextPr
		if moved < 1e-2*(best.hand2+best.scatter2) {
			break
		}
	}
	return best
}

// climb goes along a step, halving it until the likelihood rises.
func (m scatterModel) climb(from noise, pr projection, dh, ds float64, slips [][]float64) (noise, projection, bool) {
	for range 8 {
		h, s := math.Max(0, from.hand2+dh), math.Max(0, from.scatter2+ds)
		if h == from.hand2 && s == from.scatter2 {
			break
		}
		if next, ok := m.at(h, s); ok {
			if nextPr := m.project(next, slips); nextPr.logLik > pr.logLik {
				return next, nextPr, true
			}
		}
		dh, ds = dh/2, ds/2
	}
	return from, pr, false
}

// scoringStep is slope over curve. A variance that stands at 0 and would fall
// stays there; a step that would take one below 0 is taken again without it.
func (m scatterModel) scoringStep(at noise, pr projection) (dh, ds float64) {
	slope, c := m.slope(pr), m.curve(pr)
	switch holdHand, holdScatter := at.hand2 == 0 && slope[0] <= 0, at.scatter2 == 0 && slope[1] <= 0; {
	case m.tied:
		d := (slope[0] + slope[1]) / c.sum()
		return d, d
	case holdHand && holdScatter:
		return 0, 0
	case holdHand:
		return 0, slope[1] / c.scatter
	case holdScatter:
		return slope[0] / c.hand, 0
	}
	dh, ds = c.solve(slope[0], slope[1])
	switch {
	case at.hand2+dh < 0:
		return -at.hand2, (slope[1] + c.both*at.hand2) / c.scatter
	case at.scatter2+ds < 0:
		return (slope[0] + c.both*at.scatter2) / c.hand, -at.scatter2
	}
	return dh, ds
}

// curve is the information that the readings hold on hand^2 and scatter^2, a
// symmetric 2 by 2 matrix.
type curve struct {
	hand, scatter, both float64
	tied                bool
}

// sum is the information on both together, when they are taken as equal.
func (c curve) sum() float64 { return c.hand + 2*c.both + c.scatter }

// solve gives the inverse times (h, s). Where the readings cannot tell hand
// from scatter all goes to the hand.
func (c curve) solve(h, s float64) (dh, ds float64) {
	det := c.hand*c.scatter - c.both*c.both
	if det <= 1e-9*c.hand*c.scatter {
		return h / c.hand, 0
	}
	return (c.scatter*h - c.both*s) / det, (c.hand*s - c.both*h) / det
}

// spread is the variance of something that changes by gh with hand^2 and by gs
// with scatter^2, both learnt from the readings.
func (c curve) spread(gh, gs float64) float64 {
	if c.tied {
		return (gh + gs) * (gh + gs) / c.sum()
	}
	dh, ds := c.solve(gh, gs)
	return gh*dh + gs*ds
}
