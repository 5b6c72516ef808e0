package mark

import (
	"fmt"

	"scalepair/data/unit"
	"scalepair/fan"
)

// centreline gives the base of everything else.
func (d desk) centreline() Task {
	return Task{
		Title: "Centreline and base lines",
		Do: "True one long edge of the blank and draw the centreline parallel to it: every square in this list is laid against that edge. " +
			"Square one base line across at the nut end and one at the body end, and leave both standing until the last slot is sawn. " +
			"The nut line is to cross the centreline at the place given.",
		Figures: []Figure{
			d.length("from the nut end's base line to the body end's", d.blank.Length.MM()),
			d.length("from the nut end's base line to where the nut line crosses the centreline", -d.blank.MinX.MM()),
			d.length("width wanted on the bass side of the centreline", d.blank.MaxY.MM()),
			d.length("width wanted on the treble side", -d.blank.MinY.MM()),
		},
	}
}

// stringLines gives the outer string lines by where they cross the base lines.
func (d desk) stringLines() Task {
	bass := d.l.Strings[len(d.l.Strings)-1]
	return Task{
		Title: "String lines",
		Do: "On both base lines mark the outer strings, the same distance out to either side of the centreline, and join them: " +
			"the bass string line and the treble string line.",
		Figures: []Figure{
			d.length("out from the centreline on the nut end's base line", lineAt(bass, d.blank.MinX.MM())),
			d.length("out from the centreline on the body end's base line", lineAt(bass, d.blank.MaxX.MM())),
		},
	}
}

// lineAt is where a string's line, carried on, stands out from the centreline.
func lineAt(s fan.StringLine, x float64) float64 {
	return s.At((x - s.Nut.X.MM()) / (s.Saddle.X.MM() - s.Nut.X.MM())).Y.MM()
}

// bassNut gives the bass nut mark and the nut line.
func (d desk) bassNut() Task {
	bass := d.l.Strings[len(d.l.Strings)-1]
	return Task{
		Title: "Bass nut mark and nut line",
		Do: "Mark the nut on the bass string line, from the nut end's base line along the string line. " +
			"Draw the nut line lightly from this mark through the place on the centreline where it is to cross.",
		Figures: []Figure{
			d.length("along the bass line from the nut end's base line to the bass nut mark", (bass.Nut.X.MM()-d.blank.MinX.MM())/d.p.cosLine),
			{Name: "slant of the nut line", Kind: FigureAngle, AngleRad: d.l.Nut.Slant.Rad()},
		},
	}
}

// trebleNut gives the square line at the neutral fret and the treble nut. Where
// the square line does not lie on the board, the treble nut is found from the
// square through the bass nut instead; where it does, that is the second way
// and the check.
func (d desk) trebleNut() Task {
	n := d.l.Neutral
	second := d.length("along the treble line from the square through the bass nut mark to the treble nut mark, towards the bridge", d.p.offsetMM)
	if d.p.offsetMM < 0 {
		second = d.length("along the treble line from the square through the bass nut mark to the treble nut mark, towards the head", -d.p.offsetMM)
	}
	square := "Square across from the bass nut mark, and draw where that meets the treble line. Measure the treble nut from there."
	if d.l.Parallel || n.K() == 0 {
		return Task{Title: "Treble nut mark",
			Do:      "The nut stands square: square across from the bass nut mark. Where that meets the treble line is the treble nut mark.",
			Figures: []Figure{second}}
	}
	if n.X.MM() > d.blank.MaxX.MM() {
		return Task{Title: "Treble nut mark",
			Do:      "The square line, at " + neutralName(n.Neutral) + ", lies beyond the board. " + square,
			Figures: []Figure{second}}
	}
	return Task{
		Title: "Square line at " + neutralName(n.Neutral) + " and treble nut mark",
		Do:    d.squareText() + " Check it: squared across from the bass nut mark, the treble line is met as far from the treble nut mark as given; and the nut line must pass through it.",
		Figures: []Figure{
			d.length("along the bass line from the bass nut mark to the square line", n.BassFromNut.MM()),
			d.length("along the treble line from the square line back to the treble nut mark", n.TrebleFromNut.MM()),
			second,
		},
	}
}

func (d desk) squareText() string {
	from := "the bass mark of that fret"
	if n := d.l.Neutral.Fret; n != float64(int(n)) {
		from = "the place on the bass line given below, between two marks"
	}
	return "Square across from " + from + ", and draw this square line to the treble line. " +
		"From there measure back along the treble line: the treble nut mark."
}

// neutralName says which line is square: "fret 7", "fret 7.5", "the bridge".
func neutralName(n fan.Neutral) string {
	if n.Bridge {
		return "the bridge"
	}
	if n.Fret == float64(int(n.Fret)) {
		return fmt.Sprintf("fret %d", int(n.Fret))
	}
	return "fret " + unit.Fixed(n.Fret, decimalsOf(n.Fret))
}

// decimalsOf is how many decimals, up to three, a neutral fret needs.
func decimalsOf(x float64) int {
	for d := 1; d < 3; d++ {
		scaled := x * []float64{1, 10, 100}[d]
		if scaled == float64(int(scaled)) {
			return d
		}
	}
	return 3
}

// beforeTheCut gives the checks that catch a slip while wood can still be
// saved. Beyond fret 12 every distance is half of the one twelve frets before,
// which needs no saddle on the blank to be seen.
func (d desk) beforeTheCut() Task {
	last := len(d.l.Frets) - 1
	t := Task{
		Title: "Checks before the first cut",
		Do: "Measure both diagonals: a slip in the treble nut shows on neither line alone, but makes one diagonal longer and the other " +
			"shorter. Then measure all marks again by the other method, before the saw touches wood.",
	}
	if last >= 12 {
		t.Do = "Fret 12 halves both lines, so every distance beyond it is half of the one twelve frets before. " + t.Do
	}
	for _, p := range d.p.lines {
		if last >= 12 {
			t.Figures = append(t.Figures, d.length(p.line.String()+" line, nut to fret 12: half its length to the saddle", p.lengthMM/2))
		}
		if last > 12 {
			t.Figures = append(t.Figures, d.length(fmt.Sprintf("%s line, fret 12 to fret %d: half of the nut to fret %d", p.line, last, last-12),
				p.marks[last]-p.marks[12]))
		}
	}
	t.Figures = append(t.Figures,
		d.length(DiagonalName(FromBassNut, last), d.l.DiagonalBassNut.MM()),
		d.length(DiagonalName(FromTrebleNut, last), d.l.DiagonalTrebleNut.MM()))
	return t
}
