package mark

import (
	"math"

	"scalepair/fan"
)

// linePlan is one outer string line of the layout. marks[n] is mark n's distance
// from the nut along the line; marks[0] is 0.
type linePlan struct {
	line     Line
	lengthMM float64
	marks    []float64
	at       []fan.Point // the marks' places
}

// plan is what the two lines should look like.
type plan struct {
	lines    [2]linePlan
	offsetMM float64 // how far the treble nut lies towards the bridge, along the treble line, from the square through the bass nut
	cosLine  float64 // of the angle between an outer string line and the centreline
}

func planOf(l *fan.Layout) plan {
	bass, treble := l.Strings[len(l.Strings)-1], l.Strings[0]
	p := plan{cosLine: (bass.Saddle.X.MM() - bass.Nut.X.MM()) / bass.Length.MM()}
	p.offsetMM = l.NutOffset.MM() / p.cosLine
	p.lines[Bass] = planLine(Bass, bass, l.Frets)
	p.lines[Treble] = planLine(Treble, treble, l.Frets)
	return p
}

func planLine(which Line, s fan.StringLine, frets []fan.Fret) linePlan {
	p := linePlan{line: which, lengthMM: s.Length.MM()}
	for _, f := range frets {
		m := f.Bass
		if which == Treble {
			m = f.Treble
		}
		p.marks = append(p.marks, m.FromNut.MM())
		p.at = append(p.at, s.At(m.FromNut.MM()/s.Length.MM()))
	}
	return p
}

func (p linePlan) last() int { return len(p.marks) - 1 }

// cents is what a mark n that stands errorMM too near the bridge does to its
// note, positive for sharp:
//
//	cents = 1200 log2((L - x)/(L - x - error))
//
// L, x  string length and mark from the nut, mm. A mark at or beyond the
// saddle has no note: the error is held to 99.9 % of the way there. Follows from
// frequency going as 1/length.
func (p linePlan) cents(n int, errorMM float64) float64 {
	sounding := p.lengthMM - p.marks[n]
	return 1200 * math.Log2(sounding/(sounding-math.Min(errorMM, 0.999*sounding)))
}

// mmPerCent is how far mark n may be off for one cent: (L - x) ln2/1200.
func (p linePlan) mmPerCent(n int) float64 {
	return (p.lengthMM - p.marks[n]) * math.Ln2 / 1200
}

// nominal is what a reading should be, in mm.
func (p plan) nominal(r Reading) float64 {
	switch r.Kind {
	case FromNut, Step:
		return p.lines[r.Line].marks[r.Fret] - p.lines[r.Line].marks[r.From]
	case NutOffset:
		return p.offsetMM
	}
	a, b := p.ends(r)
	return math.Hypot(b.X.MM()-a.X.MM(), b.Y.MM()-a.Y.MM())
}

// ends are the places between which a diagonal is measured.
func (p plan) ends(r Reading) (from, to fan.Point) {
	end := r.Kind.end()
	return p.lines[1-end].at[0], p.lines[end].at[r.Fret]
}
