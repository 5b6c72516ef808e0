package fit

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"

	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/reading"
)

// number is one number as the builder wrote it down, and how the linear density
// of the reading, less that of the fit, follows it.
type number struct {
	name  string
	x     float64      // in the unit of form
	form  unit.Written // as written
	step  float64      // how finely it is known, in SI
	power float64      // d ln(w/w_fit)/d ln x
	slips []slip
}

// slip multiplies a number by a factor; the likeliest come first.
type slip struct {
	factor float64
	what   string
}

// Slips that builders make every month; a swap of digits is found in the number
// itself.
var (
	point  = []slip{{10, "decimal point one place off?"}, {0.1, "decimal point one place off?"}}
	inches = []slip{{25.4, "read in inches?"}, {1 / 25.4, "read in millimetres?"}}
	octave = []slip{{2, "an octave too low?"}, {0.5, "an octave too high?"}}
)

// entered lists what was entered for a reading. An outer diameter counts
// twice, against the fit: close enough for wound strings too.
func entered(t gauges.Instruments, r reading.Reading, g gauges.Gauge) []number {
	outer := newNumber("outer diameter", g.Outer, g.Written().Outer, "mm", 1e-5, -2, nil)
	if outer.form.Unit == "in" {
		outer.step = unit.Inch / 1000
	}
	lengthStep, massStep := cmp.Or(r.LengthResolution, t.RulerResolution), cmp.Or(r.MassResolution, t.BalanceResolution)
	if r.Kind == reading.Hung {
		return []number{
			newNumber("hung mass", r.HungMass, r.Written.HungMass, "kg", cmp.Or(r.HungResolution, t.HungResolution).Kg(), 1, point),
			newNumber("speaking length", r.Speaking, r.Written.Speaking, "mm", lengthStep.M(), -2, slices.Concat(point, inches)),
			{name: "pitch", x: r.Pitch.Hz(), form: unit.Written{Unit: "Hz", Decimals: 1}, power: -2, slips: octave},
			outer,
		}
	}
	n := float64(r.NumPieces())
	return []number{
		newNumber("mass", r.Mass, r.Written.Mass, "g", massStep.Kg(), 1, point),
		newNumber("length", r.Length, r.Written.Length, "mm", lengthStep.M(), -1, slices.Concat(point, inches)),
		{name: "pieces", x: n, power: -1, slips: []slip{{1 + 1/n, "pieces miscounted?"}, {1 - 1/n, "pieces miscounted?"}}},
		outer,
	}
}

func newNumber[Q unit.Quantity](name string, x Q, form unit.Written, unitName string, step, power float64, slips []slip) number {
	if !form.Known() {
		form = unit.Form[Q]("", unitName).Finer(step)
	}
	return number{name, form.Value(float64(x)), form, step, power, slips}
}

// text prints a value with the digits that were written.
func (n number) text(x float64) string {
	if n.form.Unit == "" {
		return n.form.Number(x)
	}
	return n.form.Number(x) + " " + n.form.Unit
}

// fitting prints the value that would have agreed with the fit, as finely as the
// step lets it be read, with four figures at most unless more were written.
func (n number) fitting(deviation float64) string {
	x := n.x * math.Pow(1+deviation, -1/n.power)
	finer := n.form.Finer(n.step)
	finer.Decimals = max(n.form.Decimals, min(finer.Decimals, 3-int(math.Floor(math.Log10(x)))))
	n.form = finer
	return n.text(x)
}

// meant is a value that may have been meant, and what would have happened then.
type meant struct {
	value float64
	text  string
	what  string
}

// mayBe lists the values that a slip may have turned into this one.
func (n number) mayBe() []meant {
	var out []meant
	for _, v := range n.swaps() {
		out = append(out, meant{v, n.text(v), "digits swapped?"})
	}
	for _, s := range n.slips {
		if v := n.x * s.factor; v > 0 {
			finer := n
			finer.form = n.form.Finer(n.step)
			out = append(out, meant{v, finer.text(v), s.what})
		}
	}
	return slices.DeleteFunc(out, func(m meant) bool { return m.value <= 0 || m.value == n.x })
}

// swaps gives the values with two neighbouring digits swapped, over the
// decimal point too. A fraction has none.
func (n number) swaps() (out []float64) {
	text := n.form.Number(n.x)
	var at []int
	for i := range len(text) {
		if text[i] >= '0' && text[i] <= '9' {
			at = append(at, i)
		}
	}
	for i := 1; i < len(at) && n.form.Over == 0 && n.name != "pieces"; i++ {
		b := []byte(text)
		b[at[i-1]], b[at[i]] = b[at[i]], b[at[i-1]]
		if x, err := strconv.ParseFloat(string(b), 64); err == nil {
			out = append(out, x)
		}
	}
	return out
}

// moves is how far the linear density would be from where it is, as ln.
func (n number) moves(value float64) float64 { return n.power * math.Log(value/n.x) }

// likely words the slips, three at most, that would bring the reading to the
// fit: within its combined uncertainty or a hundredth.
func likely(numbers []number, d deviation) (words []string, values []Meant) {
	words, values = []string{}, []Meant{}
	for _, n := range numbers {
		for _, m := range n.mayBe() {
			if len(words) < 3 && math.Abs(math.Log1p(d.x)+n.moves(m.value)) <= max(0.01, 1.96*d.u) {
				words = append(words, fmt.Sprintf("%s would fit; %s was entered: %s", m.text, n.text(n.x), m.what))
				values = append(values, Meant{n.name, m.text})
			}
		}
	}
	return words, values
}

// unseen words the slips that move a reading by less than a limit.
func unseen(numbers []number, limit float64) []string {
	var out []string
	for _, n := range numbers[:len(numbers)-1] {
		for _, m := range n.mayBe() {
			if by := math.Abs(math.Expm1(n.moves(m.value))); by < limit && percent(by) != "0" {
				out = append(out, fmt.Sprintf("%s %s for %s (%s %%)", n.name, n.text(n.x), m.text, percent(by)))
			}
		}
	}
	return out
}
