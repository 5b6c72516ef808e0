package trial

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Size is a length in steps of 0.0005 in, 0.0127 mm, which both units write
// exactly.
type Size int

// mm gives the nearest size.
func mm(x float64) Size { return Size(x/0.0127 + 0.5) }

// round gives the nearest size that shows three decimals in either unit, as a
// ruler's or a maker's figures do.
func (s Size) round() Size { return (s + 5) / 10 * 10 }

// MM gives the size in millimetres.
func (s Size) MM() float64 { return 0.0127 * float64(s) }

// number writes the size without its unit.
func (s Size) number(inches bool) string {
	if inches {
		return decimals(5*int64(s), 4)
	}
	return decimals(127*int64(s), 4)
}

// Text writes the size with its unit.
func (s Size) Text(inches bool) string { return s.number(inches) + " " + lengthUnit(inches) }

func lengthUnit(inches bool) string { return map[bool]string{false: "mm", true: "in"}[inches] }

// Pull is a force in steps of 0.1 lbf, which is 0.44482216152605 N exactly.
type Pull int

func newtons(x float64) Pull { return Pull(x/0.44482216152605 + 0.5) }

func (p Pull) text(inches bool) string {
	if inches {
		return decimals(int64(p), 1) + " lbf"
	}
	return decimals(int64(p)*44482216152605, 14) + " N"
}

// decimals writes a whole number of steps of 10^-places, without closing noughts.
func decimals(steps int64, places int) string {
	digits := fmt.Sprintf("%0*d", places+1, steps)
	at := len(digits) - places
	return strings.TrimSuffix(strings.TrimRight(digits[:at]+"."+digits[at:], "0"), ".")
}

// Value gives the value of a key as TOML has it, in millimetres and newtons or
// in inches and pounds-force.
type Value func(inches bool) string

// Literal is TOML as it stands.
func Literal(text string) Value { return func(bool) string { return text } }

// Quoted is a text.
func Quoted(text string) Value { return Literal(strconv.Quote(text)) }

// Number is a number without a unit.
func Number(x float64) Value { return Literal(strconv.FormatFloat(x, 'f', -1, 64)) }

// Value writes the size with its unit, in quotes.
func (s Size) Value() Value {
	return func(inches bool) string { return strconv.Quote(s.Text(inches)) }
}

// Value writes the force with its unit, in quotes.
func (p Pull) Value() Value {
	return func(inches bool) string { return strconv.Quote(p.text(inches)) }
}

// listOf is a list of anything.
func listOf[T any](items []T, each func(T) Value) Value {
	return func(inches bool) string {
		texts := make([]string, len(items))
		for i, item := range items {
			texts[i] = each(item)(inches)
		}
		return "[" + strings.Join(texts, ", ") + "]"
	}
}

// Sizes is a list of lengths.
func Sizes(list []Size) Value { return listOf(list, Size.Value) }

// Texts is a list of texts.
func Texts(list []string) Value { return listOf(list, Quoted) }

// numbers is a list of whole numbers.
func numbers(list []int) Value {
	return listOf(list, func(n int) Value { return Number(float64(n)) })
}

// rangeOf is a range of lengths from the first to the last of a grid.
func rangeOf(grid []Size) Value {
	return func(inches bool) string {
		return fmt.Sprintf(`{ from = %q, to = %q, step = %q }`, grid[0].Text(inches), grid[len(grid)-1].Text(inches), (grid[1] - grid[0]).Text(inches))
	}
}

// entry is one key of a build file. An entry of a list of tables has the number
// of its table behind the section's name: "blanks[0]".
type entry struct {
	section, key string
	value        Value
}

// Keys is a build file, section by section.
type Keys []entry

func (e Keys) at(section, key string) int {
	return slices.IndexFunc(e, func(x entry) bool { return x.section == section && x.key == key })
}

// Has tells whether a key is there, or any of a section where key is "".
func (e Keys) Has(section, key string) bool {
	return slices.ContainsFunc(e, func(x entry) bool { return x.section == section && (key == "" || x.key == key) })
}

// Put gives a key a value, in its old place or behind the last of its section.
func (e *Keys) Put(section, key string, value Value) {
	if i := e.at(section, key); i >= 0 {
		(*e)[i].value = value
		return
	}
	after := len(*e)
	for i, x := range *e {
		if x.section == section {
			after = i + 1
		}
	}
	if section == "" && !e.Has("", "") {
		after = 0
	}
	*e = slices.Insert(*e, after, entry{section, key, value})
}

// Drop leaves out a key, or a whole section where key is "".
func (e *Keys) Drop(section, key string) {
	*e = slices.DeleteFunc(slices.Clone(*e), func(x entry) bool { return x.section == section && (key == "" || x.key == key) })
}

// TOML writes the build file.
func (e Keys) TOML(inches bool) string {
	var b strings.Builder
	section := ""
	for _, x := range e {
		if x.section != section {
			section = x.section
			name, _, isList := strings.Cut(section, "[")
			if isList {
				name = "[" + name + "]"
			}
			fmt.Fprintf(&b, "\n[%s]\n", name)
		}
		fmt.Fprintf(&b, "%s = %s\n", x.key, x.value(inches))
	}
	return b.String()
}
