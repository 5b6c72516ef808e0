package report

import (
	"fmt"
	"math"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan"
)

// steepest is the slant from which a fan wants a trial before it is built.
// Judgement, without source: a hand and the hardware that can be had decide.
const steepest unit.Angle = 25 * unit.Degree

func steep(a unit.Angle) bool { return size(a) > steepest }

// size is a quantity without its sign.
func size[Q ~float64](x Q) Q { return Q(math.Abs(float64(x))) }

// steepCautions warn of lines that slant more than that; none for a fan without.
func steepCautions(l *fan.Layout) []string {
	var words []string
	add := func(line string, slant unit.Angle) {
		if steep(slant) {
			words = append(words, line+table.DegText(size(slant)))
		}
	}
	add("the nut by ", l.Nut.Slant)
	var most unit.Angle
	var frets []int
	for _, f := range l.Frets[1:] {
		if steep(f.Line.Slant) {
			frets, most = append(frets, f.Number), max(most, size(f.Line.Slant))
		}
	}
	switch n := len(frets); {
	case n > 2 && frets[n-1]-frets[0] == n-1:
		add(fmt.Sprintf("frets %d to %d by up to ", frets[0], frets[n-1]), most)
	case n > 1:
		add(several("fret", frets)+" by up to ", most)
	case n == 1:
		add(several("fret", frets)+" by ", most)
	}
	add("the saddle line by ", l.Saddle.Slant)
	if words == nil {
		return []string{}
	}
	return []string{fmt.Sprintf("Steep: %s. Beyond about %s (judgement) frets are hard to finger and to press clean, and few nuts, bridges and pickups are made for it: hold a straight edge at that angle over a neck you know, and find the parts, before wood is cut. Less difference, or another neutral fret, is less steep.",
		listed(words), table.DegText(steepest))}
}

// slantWords say which way a line leans, so that no sign needs learning.
func slantWords(a unit.Angle) string {
	switch text := table.DegText(size(a)); {
	case text == table.DegText(0):
		return "square"
	case a < 0:
		return text + " from square, the bass end nearer the head"
	default:
		return text + " from square, the bass end nearer the bridge"
	}
}
