package choice

import (
	"math"
	"slices"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension"
)

// Detail is one pair with one set of gauges, string by string.
type Detail struct {
	Pair
	// Spec is the neck with the pair and the set's diameters, from which
	// fan.New draws the layout.
	Spec    fan.Spec
	Strings []StringDetail
	Totals  []Total // by tuning
	// Broken lists every limit that the pair or one of its gauges breaks.
	Broken []Miss
	// ReferenceTension is the reference's total tension, 0 without one.
	ReferenceTension unit.Force
	// NotRemovable is U, what no set can remove, of several tunings.
	NotRemovable unit.Ratio
}

// StringDetail is one string of a Detail.
type StringDetail struct {
	Number int
	Gauge  int // index into the stock
	Length unit.Length
	Error  unit.Ratio // e
	// Target is the wanted tension, 0 for none; where the candidate's own mean is
	// wanted it is that mean, in the first tuning. Deviation is how far the
	// tension is from it (of several tunings, their weighted mean of ln T/T*), and
	// Wanted the linear density that it takes.
	Target    unit.Force
	Deviation unit.Ratio
	Wanted    unit.LinearDensity
	Tunings   []StringTuning // by tuning
	// Compensation is the least and the most for the first tuning;
	// CompensationErr says why there is none.
	Compensation    [2]unit.Length
	CompensationErr error
}

// StringTuning is one string in one tuning.
type StringTuning struct {
	Pitch         unit.Frequency // of the open string, capo aside
	Sounding      unit.Length    // from the capo, or the nut without one
	SoundingPitch unit.Frequency // the pitch there
	Tension       unit.Uncertain[unit.Force]
	Breaking      unit.Ratio // % of breaking strength, 0 where core or strength is not known
	Inharmonicity unit.Cents // 0 where the core is not known
	Bends         []BendDetail
}

// BendDetail is the bend of one string at one fret; none on a string that is
// not bent.
type BendDetail struct {
	Fret           float64
	Bend           tension.Bend
	Breaking       unit.Ratio  // % of breaking strength while bent
	WantedForce    unit.Force  // 0 for none
	WantedDistance unit.Length // 0 for none
	Err            error       // why the bend cannot be made or computed
}

// Total is the whole instrument in one tuning.
type Total struct {
	Tension              unit.Uncertain[unit.Force]
	BassHalf, TrebleHalf unit.Force // a middle string counts half to either
	Error                unit.Ratio // E of this tuning by itself
}

// Detail works out one pair with one set of gauges, given by string as
// indexes into the stock. Unlike in a search, limits are only reported; equal
// gaps follow the set's own diameters.
func (p *Plan) Detail(bass, treble unit.Length, set []int) (*Detail, error) {
	if len(set) != p.strings {
		return nil, fault.Fault{Place: fault.Place{Input: "strings.gauges"},
			What: "the number of gauges differs from the tuning's strings", Remedy: "give one gauge a string"}
	}
	d := &Detail{Spec: p.SpecOf(bass, treble, set), NotRemovable: unit.Ratio(math.Sqrt(p.removed))}
	frame, err := fan.NewFrame(d.Spec)
	if err != nil {
		return nil, err
	}
	p.setGeometry(&d.Pair, &frame, bass, treble)
	d.Gauges = slices.Clone(set)
	d.Broken = p.PairLimits(&frame)
	places, strung := p.detailStrings(d, &frame)
	d.Inharmonicity = p.inharmonicity(set, places)
	d.Broken = append(d.Broken, p.setLimits(set, places, d.Inharmonicity)...)
	for i := range d.Broken {
		d.Broken[i].Bass, d.Broken[i].Treble = bass, treble
	}
	for c := range p.req.Cases {
		d.Totals = append(d.Totals, p.total(d, c, strung))
	}
	if p.ref != nil {
		for _, t := range p.ref.tensions(p.wires) {
			d.ReferenceTension += unit.Force(t)
		}
	}
	return d, nil
}

// detailStrings measures every string and gives the pair its error.
func (p *Plan) detailStrings(d *Detail, frame *fan.Frame) ([]place, []*strung) {
	places, all, e2, m := p.newPlaces(), []*strung(nil), make([]float64, p.strings), misses{loose: true}
	p.putAll(frame, places)
	for i, g := range d.Gauges {
		var known bool
		all = append(all, p.newStrung(i))
		e2[i], known = p.measure(i, g, &places[i], math.Inf(1), all[i], &m)
		d.ErrorUnknown = d.ErrorUnknown || !known
	}
	d.Broken = append(d.Broken, m.list...)
	squares := p.squares(e2, all)
	if !d.ErrorUnknown {
		d.Error = unit.Ratio(math.Sqrt(mean(squares)))
	}
	worst := 0.0
	for i := range d.Gauges {
		s := p.stringDetail(i, d.Gauges[i], &places[i], all)
		s.Error = unit.Ratio(math.Sqrt(squares[i]))
		if squares[i] > worst {
			worst, d.WorstString, d.WorstDeviation = squares[i], i+1, s.Deviation
		}
		d.Strings = append(d.Strings, s)
	}
	return places, all
}

func (p *Plan) stringDetail(i, g int, at *place, all []*strung) StringDetail {
	w := p.wires[g]
	out := StringDetail{Number: i + 1, Gauge: g, Length: unit.Length(at.length), Target: unit.Force(p.targets.tension[i]), Deviation: p.deviation(i, all)}
	if p.targets.own {
		out.Target = unit.Force(math.Exp(p.ownMean(all, 0)))
	}
	if out.Target > 0 {
		speed2 := make([]float64, len(at.notes))
		for k, n := range at.notes {
			speed2[k] = math.Log(n.speed2)
		}
		out.Wanted = unit.LinearDensity(out.Target.N() / math.Exp(p.mean(i, speed2)))
	}
	for c, one := range p.req.Cases {
		k := p.tuned[i].of[c]
		t := unit.Force(all[i].tension[k])
		st := StringTuning{
			Pitch: one.Pitches[i], Sounding: unit.Length(at.length * p.capos[c].sounds), SoundingPitch: unit.Frequency(one.Pitches[i].Hz() * p.capos[c].raise),
			Tension: w.WithU(nil, t), Breaking: w.Breaking(t),
		}
		st.Inharmonicity = tension.Inharmonicity(nil, w, t, st.Sounding)
		if p.isBend[i] {
			st.Bends = p.bendDetails(i, k, w, at, all[i])
		}
		out.Tunings = append(out.Tunings, st)
	}
	lo, hi, err := tension.Compensation(nil, w, out.Length, p.req.Cases[0].Pitches[i], p.req.Action[i], p.req.Tails[i])
	out.Compensation, out.CompensationErr = [2]unit.Length{lo, hi}, err
	return out
}

// bendDetails are the bends of one note of string i. A bend that failed is made
// once more by tension.BendString, which says why.
func (p *Plan) bendDetails(i, k int, w tension.Wire, at *place, s *strung) []BendDetail {
	var out []BendDetail
	bends := p.tuned[i].notes[k].bends
	for f, fret := range p.req.Feel.BendFrets {
		b := BendDetail{Fret: float64(fret), Err: ErrBehindCapo}
		if j := slices.Index(bends, f); j >= 0 {
			b.Err = nil
			if p.targets.force[i] != nil {
				b.WantedForce = unit.Force(p.targets.force[i][f])
			}
			if p.targets.dist[i] != nil {
				b.WantedDistance = unit.Length(p.targets.dist[i][f])
			}
			if b.Bend = s.bends[k][j]; b.Bend.Tension > 0 {
				b.Breaking = w.Breaking(b.Bend.Tension)
			} else {
				_, b.Err = tension.BendString(nil, w, at.notes[k].at[j])
			}
		}
		out = append(out, b)
	}
	return out
}

// total adds up the strings in one tuning. Strings of one gauge share its
// error, and gauges weighed on one balance share the balance's, so the
// uncertainty adds those parts before it squares them.
func (p *Plan) total(d *Detail, c int, all []*strung) Total {
	var t Total
	squares := make([]float64, p.strings)
	leans := map[int]influence{}
	for i, s := range d.Strings {
		k := p.tuned[i].of[c]
		force := s.Tunings[c].Tension.Value
		t.Tension.Value += force
		bass := unit.Force(halfShare(i, p.strings))
		t.BassHalf += bass * force
		t.TrebleHalf += (1 - bass) * force
		by := p.wires[s.Gauge].Sensitivities(force)
		l := leans[s.Gauge]
		leans[s.Gauge] = influence{l.density + force.N()*by.LinearDensity, l.core + force.N()*by.CoreDia}
		squares[i] = all[i].squares[k]
		if p.targets.own {
			x := all[i].logs[k] - p.ownMean(all, c)
			squares[i] += x * x
		}
	}
	t.Tension.U = unit.Force(p.spread(leans))
	t.Error = unit.Ratio(math.Sqrt(mean(squares)))
	return t
}

// halfShare is the part of string i that counts to the bass half.
func halfShare(i, n int) float64 {
	switch {
	case 2*i+1 == n:
		return 0.5
	case 2*i >= n:
		return 1
	}
	return 0
}

// StringAt gives what package tension needs to show the work for one string
// (index from 0) of a detail in one tuning: its wire and, at a fret, its bend. A
// fret of 0 asks for the open string. Under a capo length, pitch, fret and what
// lies beyond the nut count from the capo. The error is ErrBehindCapo where the
// capo leaves no room at the fret.
func (p *Plan) StringAt(d *Detail, c, i int, fret float64) (tension.Wire, tension.BendAt, error) {
	wire := p.wires[d.Gauges[i]]
	frame, err := fan.NewFrame(d.Spec)
	if err != nil {
		return wire, tension.BendAt{}, err
	}
	at := p.bendAt(&frame, i, fret, p.dir[i], p.req.Tails[i], p.req.Cases[c].Pitches[i])
	if fret == 0 || p.capos[c].hides(fret) {
		at = p.capos[c].bendOf(at)
		at.Fret, at.TanSlant, at.Reach = 0, 0, 0
		if fret == 0 {
			return wire, at, nil
		}
		return wire, at, ErrBehindCapo
	}
	return wire, p.capos[c].bendOf(at), nil
}
