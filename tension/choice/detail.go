package choice

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"scalepair/data/fault"
	"scalepair/fan"
	"scalepair/tension"
)

// Detail is one pair with one set of gauges, string by string.
type Detail struct {
	Candidate
	// Spec is the neck with the pair and the set's diameters, from which
	// fan.New draws the layout.
	Spec    fan.Spec
	Strings []StringDetail
	// Totals by case.
	Totals []Total
	// Broken lists every limit that the pair or one of its gauges breaks.
	Broken []Miss
	// ReferenceTotalN is the reference's total tension, 0 without one.
	ReferenceTotalN float64
}

// StringDetail is one string of a Detail.
type StringDetail struct {
	Number  int
	Gauge   int // index into the stock
	LengthM float64
	// TargetN is the wanted tension, 0 for none. With a target of the
	// candidate's own mean it is that mean, in the first case.
	TargetN float64
	Cases   []CaseDetail
	// CompensationM is the least and the most compensation for the first case;
	// CompensationErr says why there is none.
	CompensationM   [2]float64
	CompensationErr error
}

// CaseDetail is one string in one tuning.
type CaseDetail struct {
	FreqHz              float64 // of the open string, capo aside
	SoundingM           float64 // from the capo, or the nut without one
	SoundingHz          float64 // the pitch there
	TensionN, UTensionN float64 // tension and its standard uncertainty
	ShareOpen           float64 // breaking share, 0 where core or strength is not known
	InharmonicityCents  float64 // inharmonicity, 0 where the core is not known
	Bends               []BendDetail
}

// BendDetail is the bend of one string at one fret; none on a string that is
// not bent.
type BendDetail struct {
	Fret    float64
	Bend    tension.Bend
	Share   float64 // breaking share while bent
	TargetN float64 // wanted bending force, 0 for none
	Err     error   // why the bend cannot be made or computed
}

// Total is the whole instrument in one case.
type Total struct {
	TensionN, UTensionN    float64
	BassHalfN, TrebleHalfN float64 // a middle string counts half to either
	// Misfits of this tuning by itself, %; 0 without a target.
	TensionMisfit, BendingForceMisfit float64
}

// Detail works out one pair with one set of gauges, given by string as
// indexes into the stock. Unlike in a search, limits are only reported and
// equal gaps follow the set's own diameters.
func (p *Plan) Detail(bassMM, trebleMM float64, set []int) (*Detail, error) {
	if len(set) != p.strings {
		return nil, fault.Fault{Place: fault.Place{Input: "strings.gauges"},
			What: "the number of gauges differs from the tuning's strings", Remedy: "give one gauge a string"}
	}
	d := &Detail{Spec: p.SpecOf(bassMM, trebleMM, set)}
	frame, err := fan.NewFrame(d.Spec)
	if err != nil {
		return nil, err
	}
	d.Candidate = geometryOf(&frame, p.req.Neck.Frets)
	d.BassMM, d.TrebleMM = bassMM, trebleMM
	d.Gauges = append([]int(nil), set...)
	p.pairLimits(&frame, func(r Reason, value, limit float64) bool {
		d.Broken = append(d.Broken, Miss{Reason: r, Value: value, Limit: limit, Gauge: -1})
		return false
	})
	p.detailStrings(d, &frame)
	for i := range d.Broken {
		d.Broken[i].BassMM, d.Broken[i].TrebleMM = bassMM, trebleMM
	}
	d.Totals = p.totals(d)
	for _, t := range p.feelOrNone().tension {
		d.ReferenceTotalN += t
	}
	return d, nil
}

// detailStrings measures every string and scores the set.
func (p *Plan) detailStrings(d *Detail, frame *fan.Frame) {
	var total squares
	own := p.newOwnMeans()
	seats := p.newPositions()
	for i, g := range d.Gauges {
		p.seatOn(frame, i, &seats[i])
		f := p.newStrung()
		var m misses
		p.measure(i, g, &seats[i], f, &m)
		for _, miss := range m.list {
			miss.String, miss.Gauge = i+1, g
			d.Broken = append(d.Broken, miss)
		}
		total.add(p.squaresOf(i, g, f))
		own.take(i, f)
		d.Strings = append(d.Strings, p.stringDetail(i, g, &seats[i], f))
	}
	total.add(own.squares())
	d.setScore(total, p.req.Feel.Weights)
	if own != nil && p.req.Feel.Tension.Source == OwnMean {
		for i := range d.Strings {
			d.Strings[i].TargetN = math.Exp(mean(own.tension[0]))
		}
	}
}

func mean(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v
	}
	return sum / float64(len(x))
}

func (p *Plan) stringDetail(i, g int, s *seat, f *strung) StringDetail {
	w := p.wires[g]
	out := StringDetail{Number: i + 1, Gauge: g, LengthM: s.lengthM, TargetN: p.targets.tension[i]}
	for c := range p.req.Cases {
		freq := p.req.Cases[c].FreqsHz[i]
		t, u := tension.OpenWithU(w, s.lengthM, 0, freq, 0)
		cd := CaseDetail{FreqHz: freq, SoundingM: s.soundingM[c], SoundingHz: freq * p.capos[c].raise, TensionN: t, UTensionN: u,
			ShareOpen: tension.BreakingShare(t, w.CoreAreaM2, w.StrengthPa)}
		if w.EI > 0 {
			cd.InharmonicityCents = tension.InharmonicityCents(tension.Inharmonicity(w, t, s.soundingM[c]))
		}
		if p.isBend[i] {
			cd.Bends = p.bendDetails(i, c, w, s, f)
		}
		out.Cases = append(out.Cases, cd)
	}
	lo, hi, err := tension.Compensation(w, s.lengthM, p.req.Cases[0].FreqsHz[i], p.req.ActionM[i], p.req.Tails[i])
	out.CompensationM, out.CompensationErr = [2]float64{lo, hi}, err
	return out
}

// bendDetails are the bends of one string in one case. A bend that failed is
// made once more by tension.Bending force, which says why.
func (p *Plan) bendDetails(i, c int, w tension.Wire, s *seat, f *strung) []BendDetail {
	var out []BendDetail
	for k, fret := range p.req.Feel.BendFrets {
		at := c*len(p.fretMade) + k
		if p.behind[at] {
			out = append(out, BendDetail{Fret: fret, Err: ErrBehindCapo})
			continue
		}
		b := BendDetail{
			Fret: fret, Bend: f.bends[at], TargetN: p.targets.bendingForce[i][k],
			Share: tension.BreakingShare(f.bends[at].TensionN, w.CoreAreaM2, w.StrengthPa),
		}
		if f.failed[at] {
			b.Bend, b.Share = tension.Bend{}, 0
			_, b.Err = tension.BendingForce(w, s.bends[at])
		}
		out = append(out, b)
	}
	return out
}

// totals adds up the strings of every case. Strings of one gauge share its
// error, and gauges weighed on one balance share the balance's, so the
// uncertainty adds those parts before it squares them.
func (p *Plan) totals(d *Detail) []Total {
	out := make([]Total, len(p.req.Cases))
	for c := range out {
		t := &out[c]
		t.TensionMisfit, t.BendingForceMisfit = p.caseMisfits(d, c)
		sums := map[string]float64{}
		own := map[int]float64{}
		for i, s := range d.Strings {
			cd := s.Cases[c]
			t.TensionN += cd.TensionN
			bass := halfShare(i, p.strings)
			t.BassHalfN += bass * cd.TensionN
			t.TrebleHalfN += (1 - bass) * cd.TensionN
			g := p.req.Stock[s.Gauge]
			perU := sensitivity(cd, p.wires[s.Gauge])
			own[s.Gauge] += perU * float64(g.Indep)
			for _, part := range g.Common {
				sums[part.Source] += perU * part.U
			}
			perCore := coreSensitivity(cd, p.wires[s.Gauge])
			for _, part := range g.CoreParts {
				sums[part.Source] += perCore * part.U
			}
		}
		t.UTensionN = math.Sqrt(sumSquares(own) + sumSquares(sums))
	}
	return out
}

// sumSquares adds the squares in the order of the keys, so that the last digit
// is the same every time.
func sumSquares[K cmp.Ordered](m map[K]float64) float64 {
	sum := 0.0
	for _, k := range slices.Sorted(maps.Keys(m)) {
		sum += m[k] * m[k]
	}
	return sum
}

// coreSensitivity is the change of tension with the core's diameter, in N per
// m: from T (1 + T/EA) = q with EA proportional to d^2,
// dT/dd = (T/d) 2e/(1 + 2e).
func coreSensitivity(cd CaseDetail, w tension.Wire) float64 {
	if w.CoreDiaM == 0 {
		return 0
	}
	e := cd.TensionN * w.Compliance()
	return cd.TensionN / w.CoreDiaM * 2 * e / (1 + 2*e)
}

// sensitivity is the change of tension with linear density, in N per kg/m: from
// T (1 + T/EA) = q with q proportional to w, dT/dw = (T/w) (1 + e)/(1 + 2e).
func sensitivity(cd CaseDetail, w tension.Wire) float64 {
	e := cd.TensionN * w.Compliance()
	return cd.TensionN / w.LinearDensity * (1 + e) / (1 + 2*e)
}

// halfShare is the share of string i that counts to the bass half.
func halfShare(i, n int) float64 {
	switch {
	case 2*i+1 == n:
		return 0.5
	case 2*i >= n:
		return 1
	}
	return 0
}
