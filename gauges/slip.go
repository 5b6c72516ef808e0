package gauges

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"

	"scalepair/data/unit"
)

// entered is one number as the builder wrote it down, and how the unit weight
// of the reading, less that of the fit, follows it.
type entered struct {
	name     string
	x        float64 // in the unit it is shown in
	unit     string
	decimals int
	power    float64 // d ln(w/w_fit)/d ln x
	ruler    bool    // read off a ruler in millimetres
}

// show prints a value of this number with its unit.
func (e entered) show(x float64) string {
	text := unit.Fixed(x, e.decimals)
	if e.unit != "" {
		text += " " + e.unit
	}
	return text
}

// numbers lists what was entered for a reading. An outer diameter counts
// twice, against the fit: close enough for wound strings too.
func (t Instruments) numbers(r Reading, g Gauge) []entered {
	mm := func(name string, x, step, power float64) entered {
		return entered{name: name, x: x * 1e3, unit: "mm", decimals: places(x*1e3, step*1e3), power: power, ruler: true}
	}
	outer := diameterEntered(g.Outer)
	if r.Kind == Hung {
		return []entered{
			{name: "hung mass", x: r.HungKg, unit: "kg", decimals: places(r.HungKg, first(r.HungStepKg, t.HungStepKg)), power: 1},
			mm("speaking length", r.SpeakingM, t.lengthStep(r), -2),
			{name: "pitch", x: r.FreqHz, unit: "Hz", decimals: 1, power: -2},
			outer,
		}
	}
	return []entered{
		{name: "mass", x: r.MassKg * 1e3, unit: "g", decimals: places(r.MassKg*1e3, t.massStep(r)*1e3), power: 1},
		mm("length", r.LengthM, t.lengthStep(r), -1),
		{name: "pieces", x: float64(r.pieces()), power: -1},
		outer,
	}
}

// diameterEntered shows a diameter in inches where it is a round number of half
// thousandths, else in millimetres.
func diameterEntered(d float64) entered {
	half := d / unit.Inch * 2000
	if math.Abs(half-math.Round(half)) < 1e-6 {
		x := d / unit.Inch
		return entered{name: "outer diameter", x: x, unit: "in", decimals: max(3, places(x, 0.001)), power: -2}
	}
	return entered{name: "outer diameter", x: d * 1e3, unit: "mm", decimals: max(2, places(d*1e3, 0.01)), power: -2}
}

// places is how many decimals it takes to show both a value and its step, at
// most five.
func places(values ...float64) int {
	for n := range 5 {
		whole := true
		for _, x := range values {
			y := x * math.Pow(10, float64(n))
			whole = whole && math.Abs(y-math.Round(y)) < 1e-6
		}
		if whole {
			return n
		}
	}
	return 5
}

// slip is a value that may have been meant, and what would have happened then.
type slip struct {
	rank  int // likeliest first
	value float64
	what  string
}

// Ranks of slips; judgement.
const (
	rankSwap = iota
	rankPoint
	rankRuler
	rankCount
	rankOctave
	rankInch
	rankDigit
)

// slips lists the values that a slip may have turned into this one.
func (e entered) slips() []slip {
	var out []slip
	add := func(rank int, value float64, what string) {
		if value > 0 && value != e.x {
			out = append(out, slip{rank, value, what})
		}
	}
	switch e.name {
	case "pieces":
		add(rankCount, e.x+1, "pieces miscounted?")
		add(rankCount, e.x-1, "pieces miscounted?")
		return out
	case "pitch":
		add(rankOctave, e.x*2, "an octave too low?")
		add(rankOctave, e.x/2, "an octave too high?")
		add(rankOctave, e.x*math.Pow(2, 1.0/12), "a semitone too low?")
		add(rankOctave, e.x/math.Pow(2, 1.0/12), "a semitone too high?")
		return out
	}
	if e.name == "hung mass" {
		add(rankInch, e.x*unit.Pound, "read in pounds?")
	}
	text := unit.Fixed(e.x, e.decimals)
	for _, v := range swaps(text) {
		add(rankSwap, v, "digits swapped?")
	}
	add(rankPoint, e.x*10, "decimal point one place off?")
	add(rankPoint, e.x/10, "decimal point one place off?")
	for _, v := range changes(text) {
		add(rankDigit, v, "one digit misread?")
	}
	if e.ruler {
		for _, step := range []float64{10, -10, 100, -100} {
			add(rankRuler, e.x+step, fmt.Sprintf("ruler misread by %s mm?", decimals(math.Abs(step), 0)))
		}
		add(rankInch, e.x*25.4, "read in inches?")
		add(rankInch, e.x/25.4, "read in millimetres?")
	}
	return out
}

// swaps gives the values with two neighbouring digits swapped, over the
// decimal point too.
func swaps(text string) []float64 {
	var out []float64
	at := digitsOf(text)
	for i := 1; i < len(at); i++ {
		b := []byte(text)
		b[at[i-1]], b[at[i]] = b[at[i]], b[at[i-1]]
		out = appendNumber(out, b)
	}
	return out
}

// changes gives the values with one digit changed.
func changes(text string) []float64 {
	var out []float64
	for _, i := range digitsOf(text) {
		for c := byte('0'); c <= '9'; c++ {
			if c != text[i] {
				b := []byte(text)
				b[i] = c
				out = appendNumber(out, b)
			}
		}
	}
	return out
}

func digitsOf(text string) []int {
	var at []int
	for i := range len(text) {
		if text[i] >= '0' && text[i] <= '9' {
			at = append(at, i)
		}
	}
	return at
}

func appendNumber(out []float64, b []byte) []float64 {
	x, err := strconv.ParseFloat(string(b), 64)
	if err != nil {
		return out
	}
	return append(out, x)
}

// suspect says of one reading what would fit and which slips would explain it.
func (c combiner) suspect(e *entry, g Gauge, r Reading, j Judgement, why string) Suspect {
	out := Suspect{Place: r.Place, Gauge: g.Label, Why: why, Off: j.Off}
	numbers := c.tools.numbers(r, g)
	a, b := numbers[0], numbers[1]
	out.Fits = fmt.Sprintf("%s (not %s) or %s (not %s) would fit", a.show(a.fitting(j.Off)), a.show(a.x), b.show(b.fitting(j.Off)), b.show(b.x))
	if len(e.rows) > 1 && !g.Disagrees {
		outer := numbers[len(numbers)-1]
		out.Fits = fmt.Sprintf("its readings agree; an outer diameter of %s (not %s) would fit them", outer.show(outer.fitting(j.Off)), outer.show(outer.x))
		numbers = []entered{outer}
	}
	out.Slips = likely(numbers, j)
	return out
}

// fitting is the value that would have agreed with the fit.
func (e entered) fitting(off float64) float64 { return e.x * math.Pow(1+off, -1/e.power) }

// likely words the slips that would bring the reading to the fit: within its
// combined uncertainty or a hundredth. A misread digit explains nearly
// anything, so it is named only where nothing else fits; at most three.
func likely(numbers []entered, j Judgement) []string {
	type found struct {
		slip
		of   entered
		miss float64
	}
	var all []found
	tol := max(0.01, 1.96*j.U)
	for _, n := range numbers {
		for _, s := range n.slips() {
			if miss := math.Abs(math.Log1p(j.Off) + n.power*math.Log(s.value/n.x)); miss <= tol {
				all = append(all, found{s, n, miss})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b found) int {
		return cmp.Or(cmp.Compare(a.rank, b.rank), cmp.Compare(a.miss, b.miss))
	})
	var out []string
	for _, f := range all {
		if len(out) == 3 || f.rank == rankDigit && len(out) > 0 {
			break
		}
		out = append(out, fmt.Sprintf("%s would fit; %s was entered: %s", f.of.show(f.value), f.of.show(f.of.x), f.what))
	}
	return out
}
