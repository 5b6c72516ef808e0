package choice

import (
	"math"
	"slices"

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
	// Compensation is the range over all tunings; CompensationErr says why there
	// is none.
	Compensation    fan.Compensation
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
	Compensation  fan.Compensation
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
	d := &Detail{Spec: p.SpecOf(bass, treble, set), NotRemovable: unit.Ratio(math.Sqrt(p.removed))}
	frame, err := fan.NewFrame(d.Spec)
	if err != nil {
		return nil, err
	}
	p.setGeometry(&d.Pair, &frame, bass, treble)
	d.Gauges = slices.Clone(set)
	d.Broken = p.PairLimits(&frame)
	c := newChooser(p)
	p.putAll(&frame, c.places)
	broken, known := c.take(d.Gauges)
	c.detailStrings(d, known)
	d.Inharmonicity = p.inharmonicity(set, c.places)
	d.Broken = append(append(d.Broken, broken...), p.setLimits(set, c.places, d.Inharmonicity)...)
	for i := range d.Broken {
		d.Broken[i].Bass, d.Broken[i].Treble = bass, treble
	}
	for k := range p.req.Cases {
		d.Totals = append(d.Totals, c.total(d, k))
	}
	if p.ref != nil {
		for _, t := range p.ref.tensions(p.wires) {
			d.ReferenceTension += unit.Force(t)
		}
	}
	return d, nil
}

// drawn is the Detail of a pair that was drawn before, so that it can be again.
func (p *Plan) drawn(bass, treble unit.Length, set []int) *Detail {
	d, err := p.Detail(bass, treble, set)
	if err != nil {
		panic(err)
	}
	return d
}

// detailStrings gives a pair its strings and its error.
func (c *chooser) detailStrings(d *Detail, known bool) {
	if d.ErrorUnknown = !known; known {
		d.Error = unit.Ratio(math.Sqrt(mean(c.e2)))
	}
	worst := 0.0
	for i := range d.Gauges {
		s := c.stringDetail(i)
		if c.e2[i] > worst {
			worst, d.WorstString, d.WorstDeviation = c.e2[i], i+1, s.Deviation
		}
		d.Strings = append(d.Strings, s)
	}
}

func (c *chooser) stringDetail(i int) StringDetail {
	p, g, at, strung := c.p, c.set[i], &c.places[i], c.strung[i]
	w := p.wires[g]
	out := StringDetail{Number: i + 1, Gauge: g, Length: unit.Length(at.length), Error: unit.Ratio(math.Sqrt(c.e2[i])),
		Target: unit.Force(p.want(i, 0)), Deviation: unit.Ratio(math.Expm1(p.mean(i, strung.logs)))}
	if out.Target > 0 {
		speed2 := make([]float64, len(at.notes))
		for k, n := range at.notes {
			speed2[k] = math.Log(n.speed2)
		}
		out.Wanted = unit.LinearDensity(out.Target.N() / math.Exp(p.mean(i, speed2)))
	}
	for tuning, one := range p.req.Cases {
		k := p.tuned[i].of[tuning]
		t := unit.Force(strung.tension[k])
		st := StringTuning{
			Pitch: one.Pitches[i], Sounding: unit.Length(at.length * p.capos[tuning].sounds), SoundingPitch: unit.Frequency(one.Pitches[i].Hz() * p.capos[tuning].raise),
			Tension: w.WithU(nil, t), Breaking: w.Breaking(t),
		}
		st.Inharmonicity = tension.Inharmonicity(nil, w, t, st.Sounding)
		if p.isBend[i] {
			st.Bends = p.bendDetails(i, k, w, at, strung)
		}
		st.Compensation, out.CompensationErr = p.compensation(i, g, at, one.Pitches[i])
		if tuning == 0 {
			out.Compensation = st.Compensation
		}
		out.Compensation = out.Compensation.With(st.Compensation)
		out.Tunings = append(out.Tunings, st)
	}
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
func (c *chooser) total(d *Detail, tuning int) Total {
	var t Total
	p := c.p
	squares := make([]float64, p.strings)
	leans := map[int]influence{}
	for i, s := range d.Strings {
		force := s.Tunings[tuning].Tension.Value
		t.Tension.Value += force
		bass := unit.Force(halfShare(i, p.strings))
		t.BassHalf += bass * force
		t.TrebleHalf += (1 - bass) * force
		by := p.wires[s.Gauge].Sensitivities(force)
		l := leans[s.Gauge]
		leans[s.Gauge] = influence{l.density + force.N()*by.LinearDensity, l.core + force.N()*by.CoreDia}
		squares[i] = c.strung[i].squares[p.tuned[i].of[tuning]]
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
	capo := p.capos[c]
	at := capo.bendOf(p.bendAt(&frame, i, fret, p.dir[i], p.req.Tails[i], p.req.Cases[c].Pitches[i]))
	if fret != 0 && !capo.hides(fret) {
		return wire, at, nil
	}
	if at.Fret, at.TanSlant, at.Reach = 0, 0, 0; fret != 0 {
		err = ErrBehindCapo
	}
	return wire, at, err
}
