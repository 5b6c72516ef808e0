package report

import (
	"fmt"
	"math"

	"scalepair/cmd/scalepair/show"
	"scalepair/fan"
)

// steepDeg is the slant from which a fan wants a trial before it is built.
// Judgement, without source: a hand and the hardware that can be had decide.
const steepDeg = 25

func steep(rad float64) bool { return math.Abs(deg(rad)) > steepDeg }

// steepCautions warn of lines that slant beyond steepDeg; none for a fan
// without.
func steepCautions(l *fan.Layout) []string {
	var words []string
	if steep(l.Nut.Slant.Rad()) {
		words = append(words, "the nut by "+show.DegText(math.Abs(l.Nut.Slant.Rad())))
	}
	if text := steepFrets(l); text != "" {
		words = append(words, text)
	}
	if steep(l.Saddle.Slant.Rad()) {
		words = append(words, "the saddle line by "+show.DegText(math.Abs(l.Saddle.Slant.Rad())))
	}
	if words == nil {
		return nil
	}
	return []string{fmt.Sprintf("Steep: %s. Beyond about %d° (judgement) frets are hard to finger and to press clean, and few nuts, bridges and pickups are made for it: hold a straight edge at that angle over a neck you know, and find the parts, before wood is cut. Less difference, or another neutral fret, is less steep.",
		listed(words), steepDeg)}
}

// steepFrets names the steep frets with the steepest slant.
func steepFrets(l *fan.Layout) string {
	var steepest float64
	var list []int
	for _, f := range l.Frets[1:] {
		if steep(f.Line.Slant.Rad()) {
			list, steepest = append(list, f.Number), max(steepest, math.Abs(f.Line.Slant.Rad()))
		}
	}
	switch len(list) {
	case 0:
		return ""
	case 1:
		return fmt.Sprintf("fret %d by %s", list[0], show.DegText(steepest))
	}
	return fmt.Sprintf("%s by up to %s", fretRange(list), show.DegText(steepest))
}

// fretRange names rising frets: "frets 1 to 4", "frets 1, 2 and 24".
func fretRange(list []int) string {
	if list[len(list)-1]-list[0] == len(list)-1 {
		return fmt.Sprintf("frets %d to %d", list[0], list[len(list)-1])
	}
	return "frets " + numbers(list)
}
