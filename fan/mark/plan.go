package mark

import (
	"math"

	"scalepair/fan"
)

// linePlan is one outer string line as laid out. marks[n] is mark n's distance
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

// cents is what a mark n that stands offMM too near the bridge does to its
// note, positive for sharp:
//
//	cents = 1200 log2((L - x)/(L - x - off))
//
// L, x  string length and mark from the nut, mm. A mark at or beyond the
// saddle has no note: off is held to 99.9 % of the way there. Follows from
// frequency going as 1/length.
func (p linePlan) cents(n int, offMM float64) float64 {
	sounding := p.lengthMM - p.marks[n]
	return 1200 * math.Log2(sounding/(sounding-math.Min(offMM, 0.999*sounding)))
}

// mmPerCent is how far mark n may stand off for one cent: (L - x) ln2/1200.
func (p linePlan) mmPerCent(n int) float64 {
	return (p.lengthMM - p.marks[n]) * math.Ln2 / 1200
}
