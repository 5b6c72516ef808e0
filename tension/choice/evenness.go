package choice

import "math"

// ownMeans gathers the logarithms that a target of the candidate's own mean
// is made from: tension by case over all strings, bending force by case and bend fret
// over the bend strings.
type ownMeans struct {
	p            *Plan
	tension      [][]float64
	bendingForce [][]float64
}

// newOwnMeans gives nil when no target is the candidate's own mean; a nil one
// takes nothing and adds nothing.
func (p *Plan) newOwnMeans() *ownMeans {
	f := &p.req.Feel
	if f.Tension.Source != OwnMean && f.BendingForce.Source != OwnMean {
		return nil
	}
	cases := len(p.req.Cases)
	return &ownMeans{p: p, tension: make([][]float64, cases), bendingForce: make([][]float64, cases*len(f.BendFrets))}
}

func (o *ownMeans) take(i int, s *strung) {
	if o == nil {
		return
	}
	for c, t := range s.tensionN {
		o.tension[c] = append(o.tension[c], math.Log(t))
	}
	if !o.p.isBend[i] {
		return
	}
	for at, b := range s.bends {
		if !s.failed[at] {
			o.bendingForce[at] = append(o.bendingForce[at], math.Log(b.BendingForceN))
		}
	}
}

// squares compares every value with the mean of its row.
func (o *ownMeans) squares() squares {
	var s squares
	if o == nil {
		return s
	}
	f := &o.p.req.Feel
	if f.Tension.Source == OwnMean {
		s.tension = o.overCases(o.tension, make([]bool, len(o.tension)))
	}
	if f.BendingForce.Source == OwnMean && o.p.pushTerms > 0 {
		s.bendingForce = o.overCases(o.bendingForce, o.p.behind)
	}
	return s
}

// overCases is the mean over the rows of one case, but for those left out,
// blended over the cases that have any.
func (o *ownMeans) overCases(rows [][]float64, out []bool) float64 {
	perCase := len(rows) / len(o.p.share)
	means, shares, all := []float64{}, []float64{}, 0.0
	for c, share := range o.p.share {
		sum, count := 0.0, 0
		for at := c * perCase; at < (c+1)*perCase; at++ {
			if !out[at] {
				sum += variance(rows[at])
				count++
			}
		}
		if count > 0 {
			means, shares, all = append(means, sum/float64(count)), append(shares, share), all+share
		}
	}
	b := blend{by: o.p.req.By}
	for n, mean := range means {
		b.add(shares[n]/all, mean)
	}
	return b.v
}

// variance is the mean square distance from the mean, 0 for no values.
func variance(x []float64) float64 {
	if len(x) == 0 {
		return 0
	}
	mean, sum := 0.0, 0.0
	for _, v := range x {
		mean += v / float64(len(x))
	}
	for _, v := range x {
		sum += (v - mean) * (v - mean)
	}
	return sum / float64(len(x))
}
