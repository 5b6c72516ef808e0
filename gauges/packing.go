package gauges

import (
	"math"

	"scalepair/gauges/reading"
)

// fixPacking lets weighed gauges of a family, whose construction is known too,
// fix the packing of those that were not weighed.
//
//	kappa = (w_weighed - w_core)/(w_built - w_core)
//
// The factors are averaged with a factor of 1 +- packingU, weighted by their
// uncertainties, and put on the packing of every construction of the family
// without a reading; its uncertainty is then the mean's and neighbourU, if that
// is less than packingU. Ours.
func (in Input) fixPacking(entries []*entry) {
	found := map[string][]Value{}
	for _, e := range entries {
		if k, ok := in.kappa(e); ok {
			key := reading.Key(e.all.Construction)
			if found[key] == nil {
				found[key] = []Value{{W: 1, Indep: packingU}}
			}
			found[key] = append(found[key], k)
		}
	}
	for _, e := range entries {
		ks := found[reading.Key(e.all.Construction)]
		if e.built != nil && len(e.rows) == 0 && len(e.built.layers) > 0 && ks != nil {
			m := Mean(ks)
			e.built.packing, e.built.uPack = m.W, min(packingU, RootSum(m.Indep/m.W, neighbourU))
		}
	}
}

// kappa is one gauge's factor; false where the gauge has no reading, no
// construction or no wrap.
func (in Input) kappa(e *entry) (Value, bool) {
	if e.built == nil || len(e.rows) == 0 || len(e.built.layers) == 0 {
		return Value{}, false
	}
	alone := *e
	alone.built = nil
	core := e.all.CoreWire()
	_, weighed := in.kinds(&alone, e.material.YoungsPa*e.all.Shape.Area(core), e.material.YoungsPa*e.all.Shape.SecondMoment(core), nil)
	sure := *e.built
	sure.uPack = 0
	built := sure.value(e.all.Gauge, e.all.Construction, nil)
	wc := e.built.coreWeight()
	k := (weighed.W - wc) / (built.W - wc)
	u := k * RootSum(weighed.U()/(weighed.W-wc), built.U()/(built.W-wc))
	return Value{W: k, Indep: math.Max(u, 1e-6)}, k > 0
}
