package choice

import "math"

// caseMisfits are the tension and bending force misfits of one tuning by itself, in
// percent: 100 times the root mean square of ln(value/target), over the strings
// and bends that have a target, and 0 without any. With the set's own mean as
// the target it is the mean in this tuning.
func (p *Plan) caseMisfits(d *Detail, c int) (tension, bendingForce float64) {
	var forces, wanted []float64
	for _, s := range d.Strings {
		forces, wanted = append(forces, s.Cases[c].TensionN), append(wanted, p.targets.tension[s.Number-1])
	}
	sum, count := offBy(forces, wanted, p.req.Feel.Tension.Source == OwnMean)
	tension = rootMean(sum, count)
	sum, count = 0, 0
	for k := range p.req.Feel.BendFrets {
		forces, wanted = forces[:0], wanted[:0]
		for _, i := range p.bend {
			if b := d.Strings[i].Cases[c].Bends[k]; b.Err == nil {
				forces, wanted = append(forces, b.Bend.BendingForceN), append(wanted, b.TargetN)
			}
		}
		s, n := offBy(forces, wanted, p.req.Feel.BendingForce.Source == OwnMean)
		sum, count = sum+s, count+n
	}
	return tension, rootMean(sum, count)
}

// offBy is the sum of squares of ln(value/target) over the values that have a
// target, or about their own mean, and how many they are.
func offBy(values, targets []float64, ownMean bool) (sum, count float64) {
	if ownMean {
		logs := make([]float64, len(values))
		for i, v := range values {
			logs[i] = math.Log(v)
		}
		return variance(logs) * float64(len(logs)), float64(len(logs))
	}
	for i, v := range values {
		if targets[i] > 0 {
			sum += squareLog(v, targets[i])
			count++
		}
	}
	return sum, count
}

func rootMean(sum, count float64) float64 {
	if count == 0 {
		return 0
	}
	return 100 * math.Sqrt(sum/count)
}
