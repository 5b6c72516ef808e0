package table

import (
	"reflect"
	"strconv"
	"strings"

	"scalepair/data/unit"
)

// Column describes one column of a table of T: what it is called for people
// (the unit is added to the heading), what for programs (the unit is added to
// the key), and where its value comes from. An empty heading makes it a column
// for programs only, an empty key one for people only.
type Column[T any] struct {
	head    head
	off     bool
	value   func(T) ([]string, []any)
	text    func(T) string
	known   func(T) bool
	notZero bool // 0 is not known
}

// at gives the column's cell of one row.
func (c Column[T]) at(row T) cell {
	unknown := cell{unknown, make([]string, len(c.head.parts)), make([]any, len(c.head.keys))}
	if c.known != nil && !c.known(row) {
		return unknown
	}
	texts, values := c.value(row)
	if c.notZero && reflect.ValueOf(values[0]).IsZero() {
		return unknown
	}
	out := cell{texts[0], texts, values}
	if len(texts) > 1 {
		out.text = pair(texts[0], texts[1])
	}
	if c.text != nil {
		out.text = c.text(row)
		if len(texts) == 1 {
			out.parts = []string{out.text}
		}
	}
	return out
}

// pair writes a value and its standard uncertainty, which is empty where none
// is known.
func pair(value, u string) string {
	if u == "" {
		return value
	}
	return value + " ± " + u
}

// When leaves the column out unless keep is true.
func (c Column[T]) When(keep bool) Column[T] {
	c.off = !keep
	return c
}

// Hidden keeps the column from people if hide is true; programs still get it.
func (c Column[T]) Hidden(hide bool) Column[T] {
	if hide {
		c.head.text = ""
	}
	return c
}

// Known says in which rows the value is known; in others people see a dash and
// programs null.
func (c Column[T]) Known(known func(T) bool) Column[T] {
	c.known = known
	return c
}

// NotZero says that a value of 0 is not known.
func (c Column[T]) NotZero() Column[T] {
	c.notZero = true
	return c
}

// As gives another text for people, where the plain number is not enough
// ("≥ 17.9").
func (c Column[T]) As(text func(T) string) Column[T] {
	c.text = text
	return c
}

// Signed prints a number above zero with its sign.
func (c Column[T]) Signed() Column[T] {
	plain := c.value
	c.value = func(row T) ([]string, []any) {
		texts, values := plain(row)
		return append([]string{WithSign(texts[0])}, texts[1:]...), values
	}
	return c
}

// Beside sets a word behind the value, which CSV has in a column of its own:
// "17.9 (w54)".
func (c Column[T]) Beside(heading string, word func(T) string) Column[T] {
	plain := c.value
	c.head.parts = append(c.head.parts, heading)
	c.value = func(row T) ([]string, []any) {
		texts, values := plain(row)
		return append(texts, word(row)), values
	}
	c.text = func(row T) string {
		texts, _ := plain(row)
		return texts[0] + " (" + word(row) + ")"
	}
	return c
}

// one makes a column of one value: text for people, value for programs.
func one[T any](heading, key, sign, unitKey string, right bool, text func(T) string, value func(T) any) Column[T] {
	h := head{text: join(heading, sign), key: key, right: right}
	if heading == "" {
		h.text = ""
	}
	h.parts = []string{h.text}
	if key != "" {
		h.keys = []string{key + unitKey}
	}
	return Column[T]{head: h, value: func(row T) ([]string, []any) { return []string{text(row)}, []any{value(row)} }}
}

// quantity makes a column of numbers.
func quantity[T, Q any](heading, key, sign, unitKey string, text func(Q) string, f func(T) Q) Column[T] {
	return one(heading, key, sign, unitKey, true, func(row T) string { return text(f(row)) }, func(row T) any { return f(row) })
}

// two makes a column of a value with its standard uncertainty, of at least one
// printed step where it is not 0.
func two[T any, Q ~float64](heading, key, sign, unitKey string, text func(Q) string, f func(T) unit.Uncertain[Q], least float64) Column[T] {
	c := quantity(heading, key, sign, unitKey, func(v unit.Uncertain[Q]) string { return text(v.Value) }, f)
	c.head.parts = append(c.head.parts, join(heading+", standard uncertainty", sign))
	if key != "" {
		c.head.keys = append(c.head.keys, key+"_standard_uncertainty"+unitKey)
	}
	c.value = func(row T) ([]string, []any) {
		v, u := f(row), ""
		if v.U != 0 {
			u = text(max(v.U, Q(least)))
		}
		return []string{text(v.Value), u}, []any{v.Value, v.U}
	}
	return c
}

func join(heading, sign string) string { return strings.TrimRight(heading+" "+sign, " ") }

// fixed prints a quantity with fixed decimals, in the unit that value gives.
func fixed[Q any](decimals int, value func(Q) float64) func(Q) string {
	return func(q Q) string { return unit.Fixed(value(q), decimals) }
}

// Words is a column of text.
func Words[T any](heading, key string, f func(T) string) Column[T] {
	return one(heading, key, "", "", false, f, func(row T) any { return f(row) })
}

// Whole is a column of whole numbers.
func Whole[T any](heading, key string, f func(T) int) Column[T] {
	return quantity(heading, key, "", "", strconv.Itoa, f)
}

// Bool is a column of yes and no.
func Bool[T any](heading, key string, f func(T) bool) Column[T] {
	words := map[bool]string{true: "yes", false: "no"}
	return one(heading, key, "", "", false, func(row T) string { return words[f(row)] }, func(row T) any { return f(row) })
}

// Values is a column for programs only, of whatever encodes to JSON.
func Values[T any](key string, f func(T) any) Column[T] {
	return one("", key, "", "", false, func(T) string { return "" }, f)
}

// Number is a column of plain numbers.
func Number[T any](heading, key string, decimals int, f func(T) float64) Column[T] {
	number := func(row T) unit.Number { return unit.Number(f(row)) }
	return quantity(heading, key, "", "", fixed(decimals, func(x unit.Number) float64 { return float64(x) }), number)
}

// Percent is a column of ratios, printed in percent.
func Percent[T any](heading, key string, decimals int, f func(T) unit.Ratio) Column[T] {
	return quantity(heading, key, "%", "_percent", fixed(decimals, unit.Ratio.Percent), f)
}

// Cents is a column of intervals in cents.
func Cents[T any](heading, key string, decimals int, f func(T) unit.Cents) Column[T] {
	return quantity(heading, key, "cents", "_cents", fixed(decimals, unit.Cents.Value), f)
}

// Angle is a column of angles, in degrees to 0.1.
func Angle[T any](heading, key string, f func(T) unit.Angle) Column[T] {
	return quantity(heading, key, "°", "_deg", Deg, f)
}

// Frequency is a column of frequencies in hertz.
func Frequency[T any](heading, key string, decimals int, f func(T) unit.Frequency) Column[T] {
	return quantity(heading, key, "Hz", "_hz", fixed(decimals, unit.Frequency.Hz), f)
}

// Length is a column of lengths in the user's unit; decimals holds for
// millimetres.
func Length[T any](u Units, heading, key string, decimals int, f func(T) unit.Length) Column[T] {
	return quantity(heading, key, u.Length.Symbol(), "_mm", func(l unit.Length) string { return u.Len(l, decimals) }, f)
}

// Force is a column of forces in the user's unit.
func Force[T any](u Units, heading, key string, f func(T) unit.Force) Column[T] {
	return quantity(heading, key, u.Force.Symbol(), "_n", u.Newtons, f)
}

// ForceU is a column of forces with their standard uncertainties: "72.6 ± 0.4".
func ForceU[T any](u Units, heading, key string, f func(T) unit.Uncertain[unit.Force]) Column[T] {
	return two(heading, key, u.Force.Symbol(), "_n", u.Newtons, f, u.leastForce())
}

// Mass is a column of masses in grams.
func Mass[T any](heading, key string, decimals int, f func(T) unit.Mass) Column[T] {
	return quantity(heading, key, "g", "_g", fixed(decimals, unit.Mass.G), f)
}

// Density is a column of linear densities in g/m.
func Density[T any](heading, key string, decimals int, f func(T) unit.LinearDensity) Column[T] {
	return quantity(heading, key, "g/m", "_g_per_m", fixed(decimals, unit.LinearDensity.GramsPerMetre), f)
}

// DensityU is a column of linear densities with their standard uncertainties.
func DensityU[T any](u Units, heading, key string, f func(T) unit.Uncertain[unit.LinearDensity]) Column[T] {
	return two(heading, key, u.DensitySymbol(), "_g_per_m", u.Density, f, 0)
}

// PercentU is a column of ratios with their standard uncertainties, in percent.
func PercentU[T any](heading, key string, decimals int, f func(T) unit.Uncertain[unit.Ratio]) Column[T] {
	return two(heading, key, "%", "_percent", fixed(decimals, unit.Ratio.Percent), f, 0)
}
