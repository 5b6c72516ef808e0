package choice

import (
	"cmp"
	"slices"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/gauges"
	"scalepair/tension"
)

// Plan is a request made ready: checked, its wires and targets worked out. It
// is not changed by a search, so several may use it at once.
type Plan struct {
	req      Request
	strings  int
	share    []float64      // by case, adding up to 1
	wires    []tension.Wire // by stock index
	windingM []float64      // by stock index, 0 not stated
	rungs    ladder
	softest  float64        // greatest compliance among the rungs, 1/N
	bend     []int          // indexes of the bend strings, from 0
	isBend   []bool         // by string
	dir      []float64      // by string: +1 bends to the bass side, -1 to the treble
	capos    []capo         // by case
	spots    []tension.Spot // by case, then bend fret
	behind   []bool         // the same: a capo leaves no room there
	// pushShare is share among the cases that can bend at a fret; fretMade says
	// by bend fret whether any can.
	pushShare []float64
	fretMade  []bool
	alike     [][]int // by string, then case and bend fret: the first bend that is the same
	tuned     [][]int // by string, then case: the first case that tunes it alike
	// tunedShare by string, then case: the shares of all cases that tune it alike, at the first of them
	tunedShare [][]float64
	base       *fan.Base
	ref        *refPlan
	targets    targets

	tensionTerms, pushTerms int
	leftOut                 []LeftOut
}

// refPlan is the reference made ready.
type refPlan struct {
	lengthM, freqHz []float64
	bendAt          [][]tension.BendAt // by string, then bend fret
	gauges          []int
	lowWound        bool
	feel            referenceFeel
}

// Term names a part of the score.
type Term string

// The three terms of the score.
const (
	TensionTerm      Term = "tension"
	BendingForceTerm Term = "bending force"
	OvertoneTerm     Term = "inharmonicity"
)

// LeftOut is a term, or the term of single strings, that the score does
// without, and why.
type LeftOut struct {
	Term    Term
	Strings []int // string numbers; empty when the whole term is left out
	Why     string
}

// Prepare checks a request and makes it ready. The error is a fault.List that
// names the inputs by their build-file keys.
func Prepare(req Request) (*Plan, error) {
	if err := check(&req); err != nil {
		return nil, err
	}
	fillDefaults(&req)
	p := &Plan{req: req, strings: len(req.Cases[0].FreqsHz)}
	p.share = shares(req.Cases)
	p.wires, p.windingM = make([]tension.Wire, len(req.Stock)), make([]float64, len(req.Stock))
	for i := range req.Stock {
		p.wires[i], p.windingM[i] = WireOf(req.Stock[i]), float64(req.Stock[i].Winding)
	}
	p.rungs = newLadder(req.Stock, req.Usable)
	for _, g := range p.rungs.stock {
		p.softest = max(p.softest, p.wires[g].Compliance())
	}
	p.chooseBendStrings()
	if err := p.setSpots(); err != nil {
		return nil, err
	}
	p.setAlike()
	base, err := fan.NewBase(p.spacedFor(req.Given))
	if err != nil {
		return nil, err
	}
	p.base = base
	if req.Reference != nil {
		if p.ref, err = p.newRef(req.Reference); err != nil {
			return nil, err
		}
		p.ref.feel = p.feelOf(p.wiresOf(req.Reference.Gauges))
	}
	p.setTargets(p.feelOrNone())
	return p, nil
}

func fillDefaults(req *Request) {
	if req.ApartMM == 0 {
		req.ApartMM = DefaultApartMM
	}
	if req.Listed == 0 {
		req.Listed = DefaultListed
	}
	if req.Usable == nil {
		req.Usable = indexes(len(req.Stock))
	}
}

// indexes gives 0 to n-1.
func indexes(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

func shares(cases []Case) []float64 {
	total := 0.0
	for _, c := range cases {
		total += c.Weight
	}
	out := make([]float64, len(cases))
	for i, c := range cases {
		out[i] = c.Weight / total
	}
	return out
}

// WireOf takes a gauge to what the physics needs. A gauge of music wire gets
// the least strength of its core's diameter from the A228 table, any other
// material the strength stated with it.
func WireOf(g gauges.Gauge) tension.Wire {
	w := tension.Wire{
		LinearDensity: float64(g.LinearDensity), ULinearDensity: float64(g.U),
		CoreAreaM2: g.AreaM2, CoreDiaM: float64(g.Core), UCoreDiaM: float64(g.UCore),
		EA: float64(g.EA), EI: g.EI, StrengthPa: g.StrengthPa,
		Plain: g.Family == gauges.Plain,
	}
	if w.StrengthPa == 0 && g.Core > 0 && g.MusicWire() {
		w.StrengthPa, w.OutsideTable = tension.MinStrength(float64(g.Core))
	}
	return w
}

func newLadder(stock []gauges.Gauge, usable []int) ladder {
	l := ladder{stock: slices.Clone(usable)}
	slices.SortStableFunc(l.stock, func(a, b int) int {
		return cmp.Or(cmp.Compare(stock[a].LinearDensity, stock[b].LinearDensity),
			cmp.Compare(stock[a].Label, stock[b].Label))
	})
	for _, g := range l.stock {
		l.w = append(l.w, float64(stock[g].LinearDensity))
		l.plain = append(l.plain, stock[g].Family == gauges.Plain)
	}
	l.end = make([]int, len(l.w))
	for k := len(l.w) - 1; k >= 0; k-- {
		l.end[k] = k + 1
		if k+1 < len(l.w) && l.w[k+1] == l.w[k] {
			l.end[k] = l.end[k+1]
		}
	}
	return l
}

// wiresOf gives the wires of a set of stock indexes.
func (p *Plan) wiresOf(set []int) []tension.Wire {
	out := make([]tension.Wire, len(set))
	for i, g := range set {
		out[i] = p.wires[g]
	}
	return out
}

// spacedFor is the neck with the outer diameters of a set, which equal gaps
// need. Without a set, the reference's gauges stand in, string for string,
// and without a reference all strings count as equal: own lengths then are
// off by a few tenths of a millimetre at most, until the chosen set is known.
func (p *Plan) spacedFor(set []int) fan.Spec {
	spec := p.req.Neck
	spec.Strings = p.strings
	if set == nil && p.req.Reference != nil {
		set = p.req.Reference.Gauges
	}
	spec.Diameters = make([]unit.Length, p.strings)
	for i := range spec.Diameters {
		spec.Diameters[i] = unit.Millimetre // all alike, whatever they are
		if len(set) > 0 {
			spec.Diameters[i] = p.req.Stock[set[min(i, len(set)-1)]].Outer
		}
	}
	return spec
}

// SpecOf is the neck with a pair, spaced for a set of gauges; a nil set leaves
// equal gaps to stand-ins.
func (p *Plan) SpecOf(bassMM, trebleMM float64, set []int) fan.Spec {
	spec := p.spacedFor(set)
	spec.Bass, spec.Treble = unit.MM(bassMM), unit.MM(trebleMM)
	return spec
}

// Stock gives the request's stock, which results point into by index.
func (p *Plan) Stock() []gauges.Gauge { return p.req.Stock }

// Request gives the request with its defaults filled in.
func (p *Plan) Request() Request { return p.req }

// LeftOut lists the terms that the score does without.
func (p *Plan) LeftOut() []LeftOut { return p.leftOut }

// BendStrings gives the numbers of the strings that are bent.
func (p *Plan) BendStrings() []int {
	out := make([]int, len(p.bend))
	for i, b := range p.bend {
		out[i] = b + 1
	}
	return out
}

// check collects what is wrong with a request.
func check(req *Request) error {
	var faults fault.List
	bad := func(input, what, given, remedy string) {
		faults.Add(fault.Place{Input: input}, what, given, remedy)
	}
	if len(req.Cases) == 0 {
		bad("strings.tuning", "no tuning is given", "", "name one, low string first")
		return faults.Err()
	}
	n := len(req.Cases[0].FreqsHz)
	checkCases(req, n, bad)
	checkGauges(req, n, bad)
	checkFeel(req, n, bad)
	checkGrid(req, bad)
	return faults.Err()
}

// OutsideTable says that the strength of a gauge's core was taken from beyond
// the ends of its table.
func (p *Plan) OutsideTable(g int) bool { return p.wires[g].OutsideTable }

// HasTerm says whether a term counts in the score.
func (p *Plan) HasTerm(t Term) bool {
	for _, l := range p.leftOut {
		if l.Term == t && l.Strings == nil {
			return false
		}
	}
	return true
}
