package gauges

import (
	"math"
	"strconv"
	"strings"

	"scalepair/data/suggest"
	"scalepair/data/unit"
)

// suggestLabel says which gauges may have been meant: those of the size, where
// a size was given for a label; those with the same letters and the next
// numbers; else the one that is spelt most alike.
func suggestLabel(label string, stock []Gauge) string {
	if len(stock) == 0 {
		return "the stock is empty"
	}
	if meant := ofSize(label, stock); meant != nil {
		return didYouMean(meant) + " a gauge is named by its label"
	}
	if meant := neighbours(label, stock); meant != nil {
		return didYouMean(meant)
	}
	known := make([]string, len(stock))
	for i, g := range stock {
		known[i] = g.Label
	}
	if best := suggest.Nearest(label, known); best != "" {
		return didYouMean([]string{best})
	}
	return "in stock are " + strings.Join(known, ", ")
}

func didYouMean(labels []string) string {
	quoted := make([]string, len(labels))
	for i, l := range labels {
		quoted[i] = strconv.Quote(l)
	}
	return "did you mean " + strings.Join(quoted, " or ") + "?"
}

// sameSize is how far a size may stand from the one meant, as a fraction:
// neighbouring gauges differ by more. Judgement.
const sameSize = 0.015

// ofSize gives the first two gauges of the diameter that a label states: "0.046
// in", or a bare number in inches, thousandths or millimetres.
func ofSize(label string, stock []Gauge) []string {
	var sizes []float64
	if l, err := unit.ParseLength(label); err == nil {
		sizes = []float64{float64(l)}
	} else if x, err := unit.ParseNumber(label); err == nil {
		sizes = []float64{x * unit.Inch, x * unit.Inch / 1000, x * unit.Millimetre}
	}
	var out []string
	for _, size := range sizes {
		for _, g := range stock {
			if len(out) < 2 && math.Abs(float64(g.Outer)/size-1) < sameSize {
				out = append(out, g.Label)
			}
		}
	}
	return out
}

// numbered is a label cut into letters and a number: "w46", "042w", "p 10".
type numbered struct {
	before, after string
	number        float64
}

func cutLabel(label string) (numbered, bool) {
	key := strings.ReplaceAll(labelKey(label), " ", "")
	start := strings.IndexAny(key, "0123456789")
	if start < 0 {
		return numbered{}, false
	}
	end := start
	for end < len(key) && (key[end] >= '0' && key[end] <= '9' || key[end] == '.') {
		end++
	}
	n, err := strconv.ParseFloat(key[start:end], 64)
	return numbered{key[:start], key[end:], n}, err == nil && n > 0
}

// sized gives the number in thousandths of an inch where the label means that,
// "p105" being 10.5; any other number stays.
func (n numbered) sized(outer float64) float64 {
	mils := outer / unit.Inch * 1000
	if math.Abs(mils/n.number-1) > 0.05 && math.Abs(10*mils/n.number-1) < 0.05 {
		return n.number / 10
	}
	return n.number
}

// nextNumber is how far the number of a neighbour may stand from the one
// given, as a fraction. Judgement.
const nextNumber = 0.25

// neighbours gives the gauges with the same letters and the next smaller and
// larger number, as far as they are near. A number that may have a decimal, as
// the 115 of "p115", counts as the one that is nearer to a gauge.
func neighbours(label string, stock []Gauge) []string {
	n, ok := cutLabel(label)
	if !ok {
		return nil
	}
	var out []string
	least := math.Inf(1)
	for _, x := range []float64{n.number, n.number / 10} {
		labels, off := n.around(x, stock)
		if off < least {
			out, least = labels, off
		}
	}
	return out
}

// around gives the gauges next to number x on either side, and how far the
// nearer one stands from it, as a fraction.
func (n numbered) around(x float64, stock []Gauge) (labels []string, off float64) {
	below, above := nextNumber, nextNumber
	var lower, upper string
	for _, g := range stock {
		m, ok := cutLabel(g.Label)
		if !ok || m.before != n.before || m.after != n.after {
			continue
		}
		switch d := m.sized(float64(g.Outer))/x - 1; {
		case d <= 0 && -d < below:
			below, lower = -d, g.Label
		case d > 0 && d < above:
			above, upper = d, g.Label
		}
	}
	for _, l := range []string{lower, upper} {
		if l != "" {
			labels = append(labels, l)
		}
	}
	if labels == nil {
		return nil, math.Inf(1)
	}
	return labels, min(below, above)
}
