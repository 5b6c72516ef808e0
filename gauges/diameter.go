package gauges

// Names of the errors that several gauges share.
const (
	sourceBalance  = "balance"
	sourceRuler    = "ruler"
	sourceCalipers = "calipers"
	sourceGravity  = "gravity"
	sourceScales   = "scales for the hung weight"
)

// diameter is a diameter with the parts of its uncertainty, m.
type diameter struct {
	d      float64
	own    float64 // of this diameter alone
	common float64 // shared by everything the calipers measured
}

// u is the standard uncertainty of the diameter.
func (d diameter) u() float64 { return RootSum(d.own, d.common) }

// parts are those parts by source; own names that of this diameter alone.
func (d diameter) parts(own string) parts {
	out := make(parts, 0, 2)
	out.add(CommonPart{own, d.own, true})
	out.add(CommonPart{sourceCalipers, d.common, true})
	return out
}

// relOwn and relCommon are the parts as fractions of the diameter.
func (d diameter) relOwn() float64    { return d.own / d.d }
func (d diameter) relCommon() float64 { return d.common / d.d }

// woundTolM is how far a wound string's outside may stand from its nominal
// size: +-0.02 mm, judgement (no standard was found).
const woundTolM = 0.02e-3

// wireTolerance is the bound within which drawn wire keeps its nominal
// diameter.
//
//	+-0.0002 in to 0.010 in, +-0.0003 in to 0.028 in, +-0.0004 in above
//
// d: nominal diameter, m; result in m. The table runs from 0.004 to 0.063 in;
// its ends are continued. Source: ASTM A228, as reproduced in a wire
// distributor's data page. For other materials judgement: the same.
func wireTolerance(d float64) float64 {
	const inch, slack = 0.0254, 1e-9
	switch {
	case d <= 0.010*inch+slack:
		return 0.0002 * inch
	case d <= 0.028*inch+slack:
		return 0.0003 * inch
	}
	return 0.0004 * inch
}

// wire is the diameter of drawn wire: measured with the calipers, or nominal.
func (t Instruments) wire(d float64, from DiameterFrom) diameter {
	if from == Measured {
		return t.calliped(d)
	}
	return diameter{d: d, own: BoundU(wireTolerance(d))}
}

// outside is the outer diameter of a wound string.
func (t Instruments) outside(d float64, from DiameterFrom) diameter {
	if from == Measured {
		return t.calliped(d)
	}
	return diameter{d: d, own: BoundU(woundTolM)}
}

func (t Instruments) calliped(d float64) diameter {
	return diameter{d: d, own: float64(StepU(t.CaliperResolution)), common: float64(BoundU(t.CaliperAccuracy))}
}
