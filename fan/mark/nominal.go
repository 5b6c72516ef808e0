package mark

import (
	"math"

	"scalepair/fan"
)

// linePlan is one outer string line of the layout. marks[n] is mark n's distance
// from the nut along the line, mm; marks[0] is 0.
type linePlan struct {
	line  Line
	outer fan.StringLine
	marks []float64
}

// plan is what the two lines should look like.
type plan struct {
	lines    [2]linePlan
	offsetMM float64 // how far the treble nut lies towards the bridge, along the treble line, from the square through the bass nut
}

func planOf(l *fan.Layout) (p plan) {
	for i, s := range []fan.StringLine{Bass: l.Strings[len(l.Strings)-1], Treble: l.Strings[0]} {
		p.lines[i] = linePlan{line: Line(i), outer: s}
		for _, f := range l.Frets {
			p.lines[i].marks = append(p.lines[i].marks, [...]fan.Mark{Bass: f.Bass, Treble: f.Treble}[i].FromNut.MM())
		}
	}
	p.offsetMM = l.AlongLine(l.NutOffset).MM()
	return p
}

// at is where mark n lies.
func (p linePlan) at(n int) fan.Point { return p.outer.At(p.marks[n] / p.outer.Length.MM()) }

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
	sounding := p.outer.Length.MM() - p.marks[n]
	return 1200 * math.Log2(sounding/(sounding-math.Min(errorMM, 0.999*sounding)))
}

// mmPerCent is how far mark n may be off for one cent: (L - x) ln2/1200.
func (p linePlan) mmPerCent(n int) float64 {
	return (p.outer.Length.MM() - p.marks[n]) * math.Ln2 / 1200
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
	return a.Distance(b).MM()
}

// ends are the places between which a diagonal is measured.
func (p plan) ends(r Reading) (from, to fan.Point) {
	end := r.Kind.end()
	return p.lines[1-end].at(0), p.lines[end].at(r.Fret)
}
