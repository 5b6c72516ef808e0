package gauges

import "math"

// fixPacking lets weighed gauges of a family, whose construction is known too,
// fix the packing of those that were not weighed.
//
//	kappa = (w_weighed - w_core)/(w_built - w_core)
//
// The factors are averaged with a factor of 1 +- packingU, weighted by their
// uncertainties, and put on the packing of every construction of the family
// without a reading; its uncertainty is then the mean's and neighbourU, if that
// is less than packingU. Ours.
func (c combiner) fixPacking() {
	found := map[string][]value{}
	for _, e := range c.entries {
		if k, ok := c.kappa(e); ok {
			key := labelKey(e.r.Construction)
			if len(found[key]) == 0 {
				found[key] = []value{{w: 1, indep: packingU}}
			}
			found[key] = append(found[key], k)
		}
	}
	for _, e := range c.entries {
		ks := found[labelKey(e.r.Construction)]
		if e.built == nil || len(e.rows) > 0 || len(e.built.layers) == 0 || len(ks) == 0 {
			continue
		}
		m := mean(ks)
		e.built.packing, e.built.uPack = m.w, min(packingU, RootSum(m.indep/m.w, neighbourU))
	}
}

// kappa is one gauge's factor; false where the gauge has no reading, no
// construction or no wrap.
func (c combiner) kappa(e *entry) (value, bool) {
	if e.built == nil || len(e.rows) == 0 || len(e.built.layers) == 0 {
		return value{}, false
	}
	alone := *e
	alone.built = nil
	ea, ei := e.stiffness()
	kinds, _, _ := c.kinds(&alone, ea, ei)
	weighed := combineKinds(kinds)
	sure := *e.built
	sure.uPack = 0
	reckoned := sure.value(e.r.Gauge, e.r.Construction)
	core := e.built.coreWeight()
	k := (weighed.w - core) / (reckoned.w - core)
	u := k * RootSum(weighed.u()/(weighed.w-core), reckoned.u()/(reckoned.w-core))
	return value{w: k, indep: math.Max(u, 1e-6)}, k > 0
}
