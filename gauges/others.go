package gauges

import (
	"math"
	"slices"
	"sync"
)

// trusted parts the dots into those the fit may stand on and suspects: a dot is
// suspect when it stands off from the law made of the trusted others. The
// search starts from a robust line and repeats until nothing changes, ten times
// at most. Where more than half would be suspect, no majority is left to judge
// by, and all are trusted.
func trusted(dots []dot, of form, p float64) *others {
	o := newOthers(dots, robustStart(dots, of.sloped, p), of)
	for range 10 {
		next := o.unsuspected(p)
		if slices.Equal(next, o.in) {
			break
		}
		o = newOthers(dots, next, of)
	}
	return o
}

// others holds what a family says of each of its dots by the rest: the law of
// the trusted others, or of all others where too few are trusted. A law is made
// when it is asked for, since most dots lie so near that any law clears them.
type others struct {
	dots []dot
	in   []bool     // which are trusted
	kept *moments   // of the trusted dots
	all  *moments   // of all dots; nil where kept serves
	laws []otherLaw // one for each dot
}

// otherLaw is the law that leaves out one dot.
type otherLaw struct {
	once sync.Once
	law  *law
	from *moments // nil where too few dots are left for a law
	but  int      // the dot's index in from, or nobody
}

func newOthers(dots []dot, in []bool, of form) *others {
	o := &others{dots: dots, in: in, kept: newMoments(marked(dots, in), of), laws: make([]otherLaw, len(dots))}
	k := 0
	for i := range dots {
		but := nobody
		if in[i] {
			but = k
			k++
		}
		o.laws[i].from, o.laws[i].but = o.source(i, but)
	}
	return o
}

// source gives the sums that dot i's law is made from and the dot's index in
// them; but is its index among the trusted.
func (o *others) source(i, but int) (*moments, int) {
	if o.kept.enough(but) {
		return o.kept, but
	}
	if o.all == nil {
		o.all = newMoments(o.dots, o.kept.form)
	}
	if o.all.enough(i) {
		return o.all, i
	}
	return nil, nobody
}

// judges tells whether enough dots are left to judge dot i by.
func (o *others) judges(i int) bool { return o.laws[i].from != nil }

// law is the law made without dot i, which must be judged.
func (o *others) law(i int) *law {
	l := &o.laws[i]
	l.once.Do(func() {
		made, _ := l.from.law(l.but)
		l.law = &made
	})
	return l.law
}

// unsuspected marks the dots that their law does not suspect, or that have
// none.
func (o *others) unsuspected(p float64) []bool {
	in := make([]bool, len(o.dots))
	count := 0
	for i := range o.dots {
		d := &o.dots[i]
		in[i] = !o.judges(i) || o.clears(i) || !o.law(i).suspects(*d, p)
		if in[i] {
			count++
		}
	}
	if 2*count < len(o.dots) {
		return slices.Repeat([]bool{true}, len(o.dots))
	}
	return in
}

// clears tells whether dot i lies within leastSlip of its law, whatever scatter
// that law will be made with. It may miss dots that do, and all of a sloped law.
func (o *others) clears(i int) bool {
	if o.kept.sloped {
		return false
	}
	least, most := o.around(i)
	return o.dots[i].lean*max(-math.Expm1(least), math.Expm1(most)) <= leastSlip
}

// around is the range of y - level of dot i from its flat law, over all scatters
// tau within the grid.
//
//	within h q s_k of y - level(tau_k), tau_k the nearest of the grid
//
// h: half a step of the grid in ln tau; q: e^2h, the most by which a dot's weight
// 1/(u^2 + tau^2) changes over h; s_k: standard deviation of the others from
// their level at tau_k. The level is a weighted mean, so that
//
//	d level/d ln tau = -2 sum(w c (y - level))/sum(w),  c = w tau^2 from 0 to 1
//
// which is at most the mean distance from the mean, and so at most the standard
// deviation; shares of the weight change by q^2 at most, the deviation by q. Ours.
func (o *others) around(i int) (least, most float64) {
	m, but, d := o.laws[i].from, o.laws[i].but, &o.dots[i]
	y := d.y - m.near.level
	least, most = math.Inf(1), math.Inf(-1)
	for k, tau := range scatterGrid {
		at, own := &m.at[k], 0.0 // own: what the dot itself weighs among the sums
		if but != nobody {
			own = d.weightAt(tau)
		}
		by := 1 / (at.w - own)
		level := by * (at.y - own*y)
		v, off := by*(at.yy-own*y*y)-level*level, by*at.w*rounding
		sway := lnScatterStep/2*scatterStep*math.Sqrt(max(0, v)+off) + off
		least, most = min(least, y-level-sway), max(most, y-level+sway)
	}
	return least, most
}

// rounding is what sums of a thousand dots within some tens of per cent are off
// by, as a fraction of all dots' weight. Where one dot has nearly all of it, the
// rest is known no better.
const rounding = 1e-12

// marked gives the dots that are marked in.
func marked(dots []dot, in []bool) []dot {
	if !slices.Contains(in, false) {
		return dots
	}
	kept := make([]dot, 0, len(dots))
	for i, d := range dots {
		if in[i] {
			kept = append(kept, d)
		}
	}
	return kept
}
