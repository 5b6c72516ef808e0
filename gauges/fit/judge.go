package fit

import (
	"math"
	"slices"

	"scalepair/data/trace"
	"scalepair/data/unit"
	"scalepair/gauges"
)

// FalseAlarm is the chance that a stock without any slip raises an alarm. It is
// shared out evenly over all judgements that are made: of each gauge against
// the fit, and of each gauge's readings among themselves.
const FalseAlarm = 0.05

// leastSlip is how far a reading must deviate at least to be called suspect,
// as a fraction. Judgement: strings of one size differ by that much.
const leastSlip = 0.02

// judged is what the rest of a family says of one dot.
type judged struct {
	law       *law
	known     bool // enough other dots to judge by
	deviation float64
	u, limit  float64 // as gauges.Judgement
	in        bool    // trusted: the fit may stand on it
}

// judge says of every dot how it compares with the law made of the trusted
// others, or of all others where too few are trusted. A dot is trusted unless it
// deviates beyond its limit; the search starts from a robust line and repeats
// until nothing changes, ten times at most. Where more than half would be
// suspect, no majority is left to judge by, and all are trusted. p is the chance
// in one tail that may raise a false alarm.
func judge(dots []dot, of form, p float64) []judged {
	out := make([]judged, len(dots))
	in := nearRobustLine(dots, of.sloped, p)
	for range 10 {
		next, count := make([]bool, len(dots)), 0
		for i := range dots {
			out[i] = judgeOne(dots, i, in, of, p)
			out[i].in = in[i]
			if next[i] = !out[i].known || math.Abs(out[i].deviation) <= out[i].limit; next[i] {
				count++
			}
		}
		if 2*count < len(dots) {
			next = all(len(dots))
		}
		if slices.Equal(next, in) {
			break
		}
		in = next
	}
	return out
}

func judgeOne(dots []dot, i int, in []bool, of form, p float64) (j judged) {
	d := dots[i]
	if j.law, j.known = fitLaw(others(dots, i, in), of); !j.known {
		if j.law, j.known = fitLaw(others(dots, i, all(len(dots))), of); !j.known {
			return j
		}
	}
	deviation, u := j.law.deviation(d)
	typical := float64(j.law.dots)*j.law.vLevel + j.law.vAt(d.x) // u^2 of the others, from which the scatter follows
	j.deviation, j.u = d.lean*deviation, d.lean*j.law.widened(u, p, typical)
	j.limit = max(leastSlip, normalQuantile(p)*j.u)
	return j
}

func all(n int) []bool { return slices.Repeat([]bool{true}, n) }

// others gives the dots that are in, but for one.
func others(dots []dot, but int, in []bool) []dot {
	out := make([]dot, 0, len(dots))
	for i, d := range dots {
		if in[i] && i != but {
			out = append(out, d)
		}
	}
	return out
}

// medianLoss makes up for how poorly a median of few distances shows a scatter.
// Judgement.
const medianLoss = 1.5

// nearRobustLine marks the dots that lie near the robust line: within leastSlip,
// or within the quantile of p for the dot's own uncertainty together with the
// family's scatter, as far as the median distance shows one beyond the dots'
// uncertainties. Where fewer than half lie near, all are marked.
//
// 1.4826 makes the median distance of a normal distribution its standard
// deviation. Source: F. R. Hampel, Journal of the American Statistical
// Association 69 (1974) 383.
func nearRobustLine(dots []dot, sloped bool, p float64) []bool {
	level, slope := robustLine(dots, sloped)
	n := len(dots)
	far, weight, v := make([]float64, n), make([]float64, n), make([]float64, n)
	for i, d := range dots {
		far[i], weight[i], v[i] = math.Abs(d.y-level-slope*d.x), d.medianWeight(), d.u*d.u
	}
	spread := 1.4826 * weightedMedian(far, weight)
	excess := math.Sqrt(max(0, spread*spread-weightedMedian(v, weight)))
	near, count := make([]bool, n), 0
	for i, d := range dots {
		if near[i] = far[i] <= normalQuantile(p)*math.Hypot(d.u, medianLoss*excess) || d.lean*far[i] <= leastSlip; near[i] {
			count++
		}
	}
	if 2*count < n {
		return all(n)
	}
	return near
}

// judgements counts what can raise an alarm. A family of two judges none of
// its gauges, since one makes no fit.
func judgements(list []gauges.Gauge, families []*family) int {
	n := 0
	for _, f := range families {
		if len(f.dots) > 2 {
			n += len(f.dots)
		}
	}
	for _, g := range list {
		if g.DoF > 0 {
			n++
		}
	}
	return n
}

// mark writes the judgements into the gauges.
func (f *family) mark(list []gauges.Gauge, tr func(label string) *trace.Trace) {
	for i, j := range f.judged {
		g := &list[f.dots[i].gauge]
		if !j.known {
			g.Note("too few of its kind: nothing checks its readings")
			continue
		}
		g.Judged = &gauges.Judgement{
			Fit: g.LinearDensity / unit.LinearDensity(1+j.deviation), Deviation: unit.Ratio(j.deviation),
			U: unit.Ratio(j.u), Limit: unit.Ratio(j.limit),
		}
		if g.Suspect = !j.in; g.Suspect && g.IsPlain() {
			g.CoreFromOutside(tr(g.Label))
		}
	}
}

// markDisagreement marks the gauges whose readings lie further apart than chance
// p allows.
func markDisagreement(list []gauges.Gauge, p float64) {
	for i := range list {
		if g := &list[i]; g.DoF > 0 && gauges.ChanceBeyond(g.Chi2, g.DoF) < p {
			g.Disagrees = true
			g.Note("its readings lie further apart than their uncertainties allow; its own is widened")
		}
	}
}
