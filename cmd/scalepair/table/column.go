package table

import (
	"strconv"
	"strings"

	"scalepair/data/unit"
)

// Column describes one column of a table of T: what it is called for people
// (the unit is added to the heading), what for programs (the unit is added to
// the key), and where its value comes from. An empty heading makes it a column
// for programs only, an empty key one for people only.
type Column[T any] struct {
	head  head
	off   bool
	value func(T) ([]string, []any)
	text  func(T) string
	known func(T) bool
}

// at gives the column's cell of one row.
func (c Column[T]) at(row T) cell {
	if c.known != nil && !c.known(row) {
		return cell{unknown, make([]string, len(c.head.parts)), make([]any, len(c.head.keys))}
	}
	texts, values := c.value(row)
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

// Known says in which rows the value is known; in others people see a dash and
// programs null.
func (c Column[T]) Known(known func(T) bool) Column[T] {
	c.known = known
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
func one[T any](heading, key, unitSign, unitKey string, right bool, text func(T) string, value func(T) any) Column[T] {
	h := head{text: join(heading, unitSign), key: key, right: right}
	if heading == "" {
		h.text = ""
	}
	h.parts = []string{h.text}
	if key != "" {
		h.keys = []string{key + unitKey}
	}
	return Column[T]{head: h, value: func(row T) ([]string, []any) { return []string{text(row)}, []any{value(row)} }}
}

// two makes a column of a value with its standard uncertainty.
func two[T any, Q ~float64](heading, key, unitSign, unitKey string, text func(Q) string, value func(T) unit.Uncertain[Q], least float64) Column[T] {
	h := head{text: join(heading, unitSign), key: key, right: true}
	h.parts = []string{h.text, join(heading+", standard uncertainty", unitSign)}
	if key != "" {
		h.keys = []string{key + unitKey, key + "_standard_uncertainty" + unitKey}
	}
	return Column[T]{head: h, value: func(row T) ([]string, []any) {
		v := value(row)
		if v.U == 0 {
			return []string{text(v.Value), ""}, []any{v.Value, v.U}
		}
		return []string{text(v.Value), text(max(v.U, Q(least)))}, []any{v.Value, v.U}
	}}
}

func join(heading, sign string) string { return strings.TrimRight(heading+" "+sign, " ") }

// Words is a column of text.
func Words[T any](heading, key string, f func(T) string) Column[T] {
	return one(heading, key, "", "", false, f, func(row T) any { return f(row) })
}

// Whole is a column of whole numbers.
func Whole[T any](heading, key string, f func(T) int) Column[T] {
	return one(heading, key, "", "", true, func(row T) string { return strconv.Itoa(f(row)) }, func(row T) any { return f(row) })
}

// Bool is a column of yes and no.
func Bool[T any](heading, key string, f func(T) bool) Column[T] {
	return one(heading, key, "", "", false, func(row T) string {
		if f(row) {
			return "yes"
		}
		return "no"
	}, func(row T) any { return f(row) })
}

// Values is a column for programs only, of whatever encodes to JSON.
func Values[T any](key string, f func(T) any) Column[T] {
	return one("", key, "", "", false, func(T) string { return "" }, f)
}

// Number is a column of plain numbers.
func Number[T any](heading, key string, decimals int, f func(T) float64) Column[T] {
	return one(heading, key, "", "", true, func(row T) string { return unit.Fixed(f(row), decimals) },
		func(row T) any { return unit.Number(f(row)) })
}

// Percent is a column of ratios, printed in percent.
func Percent[T any](heading, key string, decimals int, f func(T) unit.Ratio) Column[T] {
	return one(heading, key, "%", "_percent", true, func(row T) string { return unit.Fixed(f(row).Percent(), decimals) },
		func(row T) any { return f(row) })
}

// Cents is a column of intervals in cents.
func Cents[T any](heading, key string, decimals int, f func(T) unit.Cents) Column[T] {
	return one(heading, key, "cents", "_cents", true, func(row T) string { return unit.Fixed(float64(f(row)), decimals) },
		func(row T) any { return f(row) })
}

// Angle is a column of angles, in degrees to 0.1.
func Angle[T any](heading, key string, f func(T) unit.Angle) Column[T] {
	return one(heading, key, "°", "_deg", true, func(row T) string { return Deg(f(row)) }, func(row T) any { return f(row) })
}

// Frequency is a column of frequencies in hertz.
func Frequency[T any](heading, key string, decimals int, f func(T) unit.Frequency) Column[T] {
	return one(heading, key, "Hz", "_hz", true, func(row T) string { return unit.Fixed(f(row).Hz(), decimals) }, func(row T) any { return f(row) })
}

// Length is a column of lengths in the user's unit; decimals holds for
// millimetres.
func Length[T any](u Units, heading, key string, decimals int, f func(T) unit.Length) Column[T] {
	return one(heading, key, u.Length.Symbol(), "_mm", true, func(row T) string { return u.Len(f(row), decimals) }, func(row T) any { return f(row) })
}

// Force is a column of forces in the user's unit.
func Force[T any](u Units, heading, key string, f func(T) unit.Force) Column[T] {
	return one(heading, key, u.Force.Symbol(), "_n", true, func(row T) string { return u.Newtons(f(row)) }, func(row T) any { return f(row) })
}

// ForceU is a column of forces with their standard uncertainties: "72.6 ± 0.4".
func ForceU[T any](u Units, heading, key string, f func(T) unit.Uncertain[unit.Force]) Column[T] {
	return two(heading, key, u.Force.Symbol(), "_n", u.Newtons, f, u.leastForce())
}

// Mass is a column of masses in grams.
func Mass[T any](heading, key string, decimals int, f func(T) unit.Mass) Column[T] {
	return one(heading, key, "g", "_g", true, func(row T) string { return unit.Fixed(f(row).G(), decimals) }, func(row T) any { return f(row) })
}

// Density is a column of linear densities in g/m.
func Density[T any](heading, key string, decimals int, f func(T) unit.LinearDensity) Column[T] {
	return one(heading, key, "g/m", "_g_per_m", true, func(row T) string { return unit.Fixed(f(row).GramsPerMetre(), decimals) },
		func(row T) any { return f(row) })
}

// Hidden keeps the column from people if hide is true; programs still get it.
func (c Column[T]) Hidden(hide bool) Column[T] {
	if hide {
		c.head.text = ""
	}
	return c
}

// DensityU is a column of linear densities with their standard uncertainties.
func DensityU[T any](u Units, heading, key string, f func(T) unit.Uncertain[unit.LinearDensity]) Column[T] {
	return two(heading, key, u.DensitySymbol(), "_g_per_m", u.Density, f, 0)
}

// PercentU is a column of ratios with their standard uncertainties, in percent.
func PercentU[T any](heading, key string, decimals int, f func(T) unit.Uncertain[unit.Ratio]) Column[T] {
	return two(heading, key, "%", "_percent", func(r unit.Ratio) string { return unit.Fixed(r.Percent(), decimals) }, f, 0)
}
