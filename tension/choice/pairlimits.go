package choice

import "scalepair/fan"

// PairLimits lists the limits that a fan breaks as a whole, whatever strings
// are put on it: difference, slants, reach and blank. The limits are those of
// the request; nil where it keeps them all.
func (p *Plan) PairLimits(l *fan.Layout) []Miss {
	var out []Miss
	p.pairLimits(&l.Frame, func(r Reason, value, limit float64) bool {
		out = append(out, Miss{Reason: r, Value: value, Limit: limit, Gauge: -1, BassMM: l.Spec.Bass.MM(), TrebleMM: l.Spec.Treble.MM()})
		return false
	})
	return out
}
