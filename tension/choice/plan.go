package choice

import (
	"cmp"
	"slices"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/gauges"
	"scalepair/tension"
)

// Plan is a request made ready: checked, its wires and targets worked out. It
// is not changed by a search, so several may use it at once.
type Plan struct {
	req     Request
	strings int
	share   []float64      // by case, adding up to 1
	capos   []capo         // by case
	wires   []tension.Wire // by stock index
	sorted  []int          // the gauges that may be chosen, by linear density, then label
	softest float64        // greatest compliance of those, 1/N
	kinds   [2][]int       // sorted, by construction
	keeps   []int          // by string: the construction that it keeps where it can, or either

	lowest []int     // by case: the string of lowest pitch, from 0
	isBend []bool    // by string
	dir    []float64 // by string: +1 bends to the bass side, -1 to the treble
	tuned  []tuned   // by string

	base    *fan.Base
	gaps    bool // equal gaps: the spacing depends on the set
	ref     *reference
	targets targets
	own     bool    // the tension wanted is the candidate's own mean
	removed float64 // U squared
	leftOut []LeftOut
}

// tuned is what the tunings ask of one string; cases that tune it alike, under
// the same capo, stand together, unless each has its own wanted tension.
type tuned struct {
	notes []note
	of    []int // by case: its note
}

// note is one pitch of one string.
type note struct {
	pitch  float64 // of the open string, Hz
	weight float64
	capo   capo
	bends  []int // places in Feel.BendFrets; empty off the bend strings, without frets, and behind a capo
}

// Prepare checks a request and makes it ready. The error is a fault.List that
// names the inputs by their build-file keys.
func Prepare(req Request) (*Plan, error) {
	if err := check(&req); err != nil {
		return nil, err
	}
	if req.Usable == nil {
		for i := range req.Stock {
			req.Usable = append(req.Usable, i)
		}
	}
	p := &Plan{req: req, strings: len(req.Cases[0].Pitches)}
	p.gaps = req.Neck.NutSpacing.Rule == fan.EqualGaps || req.Neck.SaddleSpacing.Rule == fan.EqualGaps
	total := 0.0
	for _, c := range req.Cases {
		total += c.Weight
	}
	for _, c := range req.Cases {
		p.share = append(p.share, c.Weight/total)
		p.capos = append(p.capos, capoAt(c.CapoFret))
		low := 0
		for i, f := range c.Pitches {
			if f <= c.Pitches[low] {
				low = i
			}
		}
		p.lowest = append(p.lowest, low)
	}
	p.setWires()
	var err error
	if req.Reference != nil {
		if p.ref, err = p.newReference(); err != nil {
			return nil, err
		}
	}
	p.own = req.Feel.Tension.Kind == Even && p.ref == nil
	p.setBends()
	if p.base, err = fan.NewBase(p.spacedFor(req.Given)); err != nil {
		return nil, err
	}
	p.setNotes()
	p.setTargets()
	p.setKinds()
	return p, nil
}

// setWires takes the stock to what the physics needs.
func (p *Plan) setWires() {
	for _, g := range p.req.Stock {
		p.wires = append(p.wires, WireOf(g))
	}
	p.sorted = slices.Clone(p.req.Usable)
	slices.SortStableFunc(p.sorted, func(a, b int) int {
		return cmp.Or(cmp.Compare(p.wires[a].LinearDensity, p.wires[b].LinearDensity), cmp.Compare(p.req.Stock[a].Label, p.req.Stock[b].Label))
	})
	for _, g := range p.sorted {
		p.softest = max(p.softest, p.wires[g].Compliance())
	}
}

// WireOf takes a gauge to what the physics needs. A gauge of music wire gets
// the least strength of its core's diameter from the A228 table, any other
// material the strength stated with it.
func WireOf(g gauges.Gauge) tension.Wire {
	w := tension.Wire{
		LinearDensity: g.LinearDensity, ULinearDensity: g.U,
		CoreArea: g.AreaM2, CoreDia: g.Core, UCoreDia: g.UCore,
		EA: g.EA, EI: g.EI, Strength: g.StrengthPa,
		Plain: g.Family == gauges.Plain,
	}
	if w.Strength == 0 && g.Core > 0 && g.MusicWire() {
		w.Strength, w.OutsideTable = tension.MinStrength(nil, g.Core)
	}
	return w
}

// setNotes gathers, string by string, the cases that tune it alike, and makes
// their bends ready.
func (p *Plan) setNotes() {
	for i := range p.strings {
		var t tuned
		for c, one := range p.req.Cases {
			pitch := one.Pitches[i].Hz()
			k := slices.IndexFunc(t.notes, func(n note) bool { return !p.own && n.pitch == pitch && n.capo == p.capos[c] })
			if k < 0 {
				n := note{pitch: pitch, capo: p.capos[c]}
				for f, fret := range p.req.Feel.BendFrets {
					if p.isBend[i] && !n.capo.hides(float64(fret)) {
						n.bends = append(n.bends, f)
					}
				}
				k, t.notes = len(t.notes), append(t.notes, n)
			}
			t.notes[k].weight += p.share[c]
			t.of = append(t.of, k)
		}
		p.tuned = append(p.tuned, t)
	}
}

// bassTop parts basses from the rest by the pitch of the highest string
// (judgement: below the third string of a guitar it is a bass, which lies
// between a six-string bass's C3 and a baritone's G3).
const bassTop unit.Frequency = 165

// setBends names the bend strings before any gauge is chosen: as given, else
// those compared with the reference's plain ones, else the plain ones of the
// gauges given, else strings 1 to 3, and none on a bass.
func (p *Plan) setBends() {
	p.isBend, p.dir = make([]bool, p.strings), make([]float64, p.strings)
	f := &p.req.Feel
	for i := range p.strings {
		switch {
		case f.BendStrings != nil:
			p.isBend[i] = slices.Contains(f.BendStrings, i+1)
		case p.ref != nil:
			p.isBend[i] = p.wires[p.ref.Gauges[p.ref.like[i]]].Plain
		case p.req.Given != nil:
			p.isBend[i] = p.wires[p.req.Given[i]].Plain
		default:
			p.isBend[i] = i < 3 && p.req.Cases[0].Pitches[0] >= bassTop
		}
		d := Middle
		if i < len(f.Towards) {
			d = f.Towards[i]
		}
		p.dir[i] = d.sign(i, p.strings)
	}
}

// spacedFor is the neck with the outer diameters of a set, which equal gaps
// need. Without a set the reference's stand in, string for string, and without
// a reference all strings count as equal: lengths then are a few tenths of a
// millimetre off at most, until the set is known.
func (p *Plan) spacedFor(set []int) fan.Spec {
	spec := p.req.Neck
	spec.Strings = p.strings
	spec.Diameters = make([]unit.Length, p.strings)
	for i := range spec.Diameters {
		switch {
		case set != nil:
			spec.Diameters[i] = p.req.Stock[set[i]].Outer
		case p.ref != nil:
			spec.Diameters[i] = p.req.Stock[p.ref.Gauges[p.ref.like[i]]].Outer
		default:
			spec.Diameters[i] = unit.MM(1) // all alike, whatever they are
		}
	}
	return spec
}

// SpecOf is the neck with a pair, spaced for a set of gauges; a nil set leaves
// equal gaps to stand-ins.
func (p *Plan) SpecOf(bass, treble unit.Length, set []int) fan.Spec {
	spec := p.spacedFor(set)
	spec.Bass, spec.Treble = bass, treble
	return spec
}

// EqualGaps reports whether the strings' places depend on their gauges.
func (p *Plan) EqualGaps() bool { return p.gaps }

// Stock gives the request's stock, which results point into by index.
func (p *Plan) Stock() []gauges.Gauge { return p.req.Stock }

// Request gives the request as it was made ready.
func (p *Plan) Request() Request { return p.req }

// BendStrings gives the numbers of the strings that are bent.
func (p *Plan) BendStrings() []int {
	var out []int
	for i, bent := range p.isBend {
		if bent {
			out = append(out, i+1)
		}
	}
	return out
}

// TowardsBass reports whether a string, 1 the highest, is bent towards the bass
// side; else it is towards the treble. A number of no string panics.
func (p *Plan) TowardsBass(number int) bool { return p.dir[number-1] > 0 }

// OutsideTable reports whether the strength of a gauge's core was taken from
// beyond the ends of its table.
func (p *Plan) OutsideTable(g int) bool { return p.wires[g].OutsideTable }
