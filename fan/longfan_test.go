package fan_test

import (
	"math/big"

	"github.com/stretchr/testify/require"

	"scalepair/fan"
)

// longBits is the precision of the reference: a hundred digits are 333 bits,
// the rest is room for its own rounding.
const longBits = 400

// long is a number of a hundred digits. Its methods return new numbers.
type long struct{ *big.Float }

func fresh() *big.Float { return new(big.Float).SetPrec(longBits) }

func longOf(x float64) long { return long{fresh().SetFloat64(x)} }

func (a long) plus(b long) long   { return long{fresh().Add(a.Float, b.Float)} }
func (a long) minus(b long) long  { return long{fresh().Sub(a.Float, b.Float)} }
func (a long) times(b long) long  { return long{fresh().Mul(a.Float, b.Float)} }
func (a long) over(b long) long   { return long{fresh().Quo(a.Float, b.Float)} }
func (a long) by(x float64) long  { return a.times(longOf(x)) }
func (a long) negative() long     { return long{fresh().Neg(a.Float)} }
func (a long) size() long         { return long{fresh().Abs(a.Float)} }
func (a long) root() long         { return long{fresh().Sqrt(a.Float)} }
func (a long) less(b long) bool   { return a.Cmp(b.Float) < 0 }
func (a long) near() float64      { x, _ := a.Float64(); return x }
func longHypot(a, b long) long    { return a.times(a).plus(b.times(b)).root() }
func longRatio(a, b float64) long { return longOf(a).over(longOf(b)) }

// longLn2 is ln 2 = sum over j of 1/(j 2^j).
var longLn2 = func() long {
	sum, power := longOf(0), longOf(1)
	for j := 1; j <= longBits; j++ {
		power = power.by(0.5)
		sum = sum.plus(power.over(longOf(float64(j))))
	}
	return sum
}()

var longKs = map[float64]long{}

// longK is k(n) = 1 - 2^(-n/12) by the series of exp(-n ln2/12); the exponent
// is at most 2.1, so that term 120 is below 1e-160.
func longK(n float64) long {
	if k, ok := longKs[n]; ok {
		return k
	}
	x := longLn2.times(longRatio(-n, 12))
	sum, term := longOf(0), longOf(1)
	for j := 1; j <= 120; j++ {
		term = term.times(x).over(longOf(float64(j)))
		sum = sum.minus(term)
	}
	longKs[n] = sum
	return sum
}

// longLog2 is log2 x = 2 artanh((x - 1)/(x + 1))/ln 2, for x near 1: the series
// ends where a term is below 1e-115.
func longLog2(x long) long {
	one := longOf(1)
	z := x.minus(one).over(x.plus(one))
	sum, power := longOf(0), z
	for odd := 1.0; longOf(1e-115).less(power.size()); odd += 2 {
		sum = sum.plus(power.over(longOf(odd)))
		power = power.times(z).times(z)
	}
	return sum.by(2).over(longLn2)
}

// longPoint is a point, or a direction, in a hundred digits.
type longPoint struct{ x, y long }

func (p longPoint) plus(q longPoint) longPoint  { return longPoint{p.x.plus(q.x), p.y.plus(q.y)} }
func (p longPoint) minus(q longPoint) longPoint { return longPoint{p.x.minus(q.x), p.y.minus(q.y)} }
func (p longPoint) part(u long) longPoint       { return longPoint{p.x.times(u), p.y.times(u)} }
func (p longPoint) length() long                { return longHypot(p.x, p.y) }

// longLine is the straight line through its marks on the two outer lines.
type longLine struct{ bass, treble longPoint }

func (l longLine) tan() long {
	d := l.bass.minus(l.treble)
	return d.x.over(d.y)
}

func (l longLine) at(u long) longPoint { return l.treble.plus(l.bass.minus(l.treble).part(u)) }

// crossing is x where the line meets y = 0.
func (l longLine) crossing() long { return l.treble.x.minus(l.treble.y.times(l.tan())) }

// behind is the line as far towards the bridge as mm, square to itself.
func (l longLine) behind(mm float64) longLine {
	d := l.bass.minus(l.treble)
	shift := longPoint{d.y, d.x.negative()}.part(longOf(mm).over(d.length()))
	return longLine{l.bass.plus(shift), l.treble.plus(shift)}
}

// longFan is the fan of a spec: the outer lines y = ±(half + m x), and where
// on them the strings begin.
type longFan struct {
	spec         fan.Spec
	bass, treble long
	half, kN     long
	m, c, pb, pt long
}

func newLongFan(t require.TestingT, s fan.Spec) *longFan {
	f := &longFan{spec: s, bass: longOf(s.BassMM), treble: longOf(s.TrebleMM), kN: longOf(1)}
	if !s.Neutral.Bridge {
		f.kN = longK(s.Neutral.Fret)
	}
	span, wide, wideK := longOf(s.NutSpreadMM), longOf(s.SaddleSpreadMM), longOf(1)
	if w := s.Board; w != nil {
		margins := longOf(s.MarginBassMM).plus(longOf(s.MarginTrebleMM))
		span, wide = longOf(w.NutMM).minus(margins), longOf(w.WidthMM).minus(margins)
		wideK = longK(w.AtFret)
	}
	f.half = span.by(0.5)
	f.settle(wide, wideK)
	f.requireItself(t, wide, wideK)
	return f
}

// settle finds m by secants on what the second span is too great.
func (f *longFan) settle(wide, wideK long) {
	excess := func(m long) long {
		f.take(m)
		return f.half.plus(m.times(f.line(wideK).crossing())).by(2).minus(wide)
	}
	m, e := longOf(0), excess(longOf(0))
	next := wide.minus(f.half.by(2)).over(f.bass.plus(f.treble).times(wideK))
	for turn := 0; turn < 60 && longOf(1e-105).less(e.size()); turn++ {
		was, eWas := m, e
		m, e = next, excess(next)
		if e.Cmp(eWas.Float) != 0 {
			next = m.minus(e.times(m.minus(was)).over(e.minus(eWas)))
		}
	}
}

// take sets a taper: DESIGN's c, g and p_b.
func (f *longFan) take(m long) {
	f.m = m
	f.c = longOf(1).over(longHypot(longOf(1), m))
	g, s := f.bass.minus(f.treble).times(f.c).times(f.kN), f.half.by(2)
	u := m.times(g).by(2)
	f.pb = g.times(s).negative().over(s.plus(u).plus(longHypot(s, u)))
	f.pt = f.pb.plus(g)
}

// requireItself holds the reference against what the words ask for, so that it
// is no mere copy of closed forms: lengths along the lines, both spans, the nut
// line through the origin, the neutral line square.
func (f *longFan) requireItself(t require.TestingT, wide, wideK long) {
	nut, saddle, second, square := f.line(longOf(0)), f.line(longOf(1)), f.line(wideK), f.line(f.kN)
	for name, off := range map[string]long{
		"bass length":   saddle.bass.minus(nut.bass).length().minus(f.bass),
		"treble length": saddle.treble.minus(nut.treble).length().minus(f.treble),
		"nut crossing":  nut.crossing(),
		"second span":   f.half.plus(f.m.times(second.crossing())).by(2).minus(wide),
		"neutral line":  square.bass.x.minus(square.treble.x),
	} {
		require.Less(t, off.size().near(), 1e-100, "the reference's own %s", name)
	}
}

// line is the line at fraction k of both lengths.
func (f *longFan) line(k long) longLine {
	xb, xt := f.pb.plus(f.bass.times(f.c).times(k)), f.pt.plus(f.treble.times(f.c).times(k))
	return longLine{
		bass:   longPoint{xb, f.half.plus(f.m.times(xb))},
		treble: longPoint{xt, f.half.plus(f.m.times(xt)).negative()},
	}
}

func (f *longFan) fret(n int) longLine { return f.line(longK(float64(n))) }

// onEdges runs a line to the edges y = half + M + m x and its mirror, by the
// part u of the way from the treble to the bass mark at which it meets them.
func (f *longFan) onEdges(l longLine) longLine {
	d := l.bass.minus(l.treble)
	meet := func(side, margin float64) longPoint {
		m := f.m.by(side)
		edge := f.half.plus(longOf(margin)).by(side).plus(m.times(l.treble.x))
		return l.at(edge.minus(l.treble.y).over(d.y.minus(m.times(d.x))))
	}
	return longLine{meet(1, f.spec.MarginBassMM), meet(-1, f.spec.MarginTrebleMM)}
}

func (f *longFan) corners() []longPoint {
	nut := f.onEdges(f.line(longOf(0)).behind(-f.spec.NutShelfMM))
	last := f.fret(f.spec.Frets)
	bodyEnd := f.onEdges(last.behind(f.spec.BodyEndOverhangMM))
	if f.spec.BodyEndSquare {
		slot := f.onEdges(last)
		x := slot.bass.x
		if x.less(slot.treble.x) {
			x = slot.treble.x
		}
		x = x.plus(longOf(f.spec.BodyEndOverhangMM))
		bodyEnd = f.onEdges(longLine{longPoint{x, longOf(1)}, longPoint{x, longOf(-1)}})
	}
	return []longPoint{nut.bass, bodyEnd.bass, bodyEnd.treble, nut.treble}
}

// longFractions is where the strings end along a line on which the outer ones
// stand that far apart, square across. Under equal gaps they are laid down one
// after the other: a half string, the gap, the next half.
func longFractions(s fan.Spec, spacing fan.Spacing, apart long) []long {
	list := make([]long, s.Strings)
	for i := range list {
		list[i] = longRatio(float64(i), float64(s.Strings-1))
		if spacing.Rule == fan.Listed {
			list[i] = longOf(spacing.Fractions[i])
		}
	}
	if spacing.Rule != fan.EqualGaps {
		return list
	}
	halves := func(i int) long { return longOf(s.DiametersMM[i-1]).plus(longOf(s.DiametersMM[i])).by(0.5) }
	gaps := apart
	for i := 1; i < s.Strings; i++ {
		gaps = gaps.minus(halves(i))
	}
	gap, at := gaps.over(longOf(float64(s.Strings-1))), longOf(0)
	for i := 1; i < s.Strings; i++ {
		at = at.plus(gap).plus(halves(i))
		list[i] = at.over(apart)
	}
	return list
}
