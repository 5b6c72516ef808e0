package report

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"scalepair/cmd/scalepair/show"
	"scalepair/data/odd"
	"scalepair/data/unit"
)

// Unusual puts odd values in words, one line for each quantity of each file:
//
//	place: unusual what (number); from to is usual; what to check
//
// A slip that is repeated from row to row is told once, by the value that is
// farthest off.
func (in *Input) Unusual(list odd.List) []string {
	if len(list) == 0 {
		return nil
	}
	var out []string
	for _, g := range list.Groups() {
		out = append(out, in.unusual(g))
	}
	return out
}

func (in *Input) unusual(g odd.Group) string {
	v := &g.Worst
	words := "unusual " + v.Quantity
	if v.About != "" {
		words += " " + v.About
	}
	words += " (" + amount(in.Units, v.Measure, v.X) + ")" + otherOnes(g)
	text := words + "; " + usualRange(in.Units, &v.Usual) + " is usual; " + v.Check
	if place := v.Place.String(); place != "" {
		text = place + ": " + text
	}
	return text
}

// mostOthers is how many more values a line names before it counts them.
const mostOthers = 5

// otherOnes names the values of a group that are not told with their number.
func otherOnes(g odd.Group) string {
	var names []string
	for _, o := range g.Others {
		name := o.About
		if name == "" || name == g.Worst.About && o.Place != g.Worst.Place {
			name = "in line " + strconv.Itoa(o.Place.Line)
		}
		if !slices.Contains(names, name) && name != g.Worst.About {
			names = append(names, name)
		}
	}
	if names == nil {
		return ""
	}
	names = strungTogether(names)
	if more := len(names) - mostOthers; more > 1 {
		names = append(names[:mostOthers], strconv.Itoa(more)+" more")
	}
	return ", and " + listed(names)
}

// strungTogether makes "of string 2", "of string 3" into "of strings 2" and "3",
// so that they list as "of strings 2 and 3".
func strungTogether(names []string) []string {
	const one = "of string "
	out := slices.Clone(names)
	for i, name := range names {
		number, ok := strings.CutPrefix(name, one)
		if _, err := strconv.Atoi(number); !ok || err != nil || len(names) == 1 {
			return names
		}
		out[i] = number
	}
	out[0] = "of strings " + out[0]
	return out
}

// usualRange says what is usual: "25 to 150 N", "up to 85 %".
func usualRange(u show.Units, r *odd.Usual) string {
	switch {
	case math.IsInf(r.Low, -1):
		return "up to " + bound(u, r.Measure, r.High)
	case math.IsInf(r.High, 1):
		return bound(u, r.Measure, r.Low) + " or more"
	case r.Low == 0 && r.Measure != odd.Semitones:
		return "up to " + bound(u, r.Measure, r.High)
	}
	low, high := bound(u, r.Measure, r.Low), bound(u, r.Measure, r.High)
	if _, symbol, ok := strings.Cut(low, " "); ok && strings.HasSuffix(high, " "+symbol) {
		low = strings.TrimSuffix(low, " "+symbol)
	}
	return low + " to " + high
}

// figuresOfBound is how finely a bound of a usual range is printed: all are
// round numbers of judgement, in one system of units.
const figuresOfBound = 3

// bound prints one end of a usual range.
func bound(u show.Units, m odd.Measure, x float64) string {
	number, symbol, _ := inUnits(u, m, x)
	y, err := strconv.ParseFloat(strconv.FormatFloat(number, 'g', figuresOfBound, 64), 64)
	if err != nil {
		panic("report: a bound that is no number: " + err.Error())
	}
	return strconv.FormatFloat(y, 'f', -1, 64) + symbol
}

// amount prints an odd value, finely enough to find it again in the file.
func amount(u show.Units, m odd.Measure, x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "no number"
	}
	number, symbol, decimals := inUnits(u, m, x)
	if a := math.Abs(number); a > 0 && decimals > 0 {
		// Four figures of a small number, none behind the point of a large one.
		decimals = min(max(decimals, 3-int(math.Floor(math.Log10(a)))), 6)
	}
	text := show.Fixed(number, decimals)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text + symbol
}

// inUnits gives a value as a number of the builder's unit, with the unit as it
// follows the number, and the decimals that say enough.
func inUnits(u show.Units, m odd.Measure, x float64) (number float64, symbol string, decimals int) {
	switch m {
	case odd.Share:
		return 100 * x, " %", 1
	case odd.Times:
		return x, " times", 2
	case odd.Millimetres:
		if u.Length == unit.Millimetres {
			return x, " mm", 2
		}
		return unit.MM(x).Inches(), " in", 3
	case odd.Grams:
		return x, " g", 4
	case odd.Kilograms:
		return x, " kg", 3
	case odd.GramsPerCM3:
		return x, " g/cm3", 2
	case odd.Newtons:
		return u.Force.Value(unit.Force(x)), " " + u.Force.Symbol(), 1
	case odd.Radians:
		return deg(x), "°", 1
	case odd.Hertz:
		return x, " Hz", 2
	case odd.Semitones:
		return x, " semitones", 2
	case odd.Cents:
		return x, " cents", 1
	case odd.Gigapascals:
		return x, " GPa", 1
	case odd.Megapascals:
		return x, " MPa", 0
	}
	return x, "", 0
}

// UnusualJSON is one odd value. Value and range are in millimetres, newtons,
// degrees, grams, kilograms, g/cm3, Hz, cents, semitones, GPa or MPa, whatever
// units the tables use; an end that is open is left out.
type UnusualJSON struct {
	Place    string   `json:"place"`
	Quantity string   `json:"quantity"`
	About    string   `json:"about,omitempty"`
	Value    *float64 `json:"value,omitempty"`
	Unit     string   `json:"unit,omitempty"`
	Low      *float64 `json:"usual_from,omitempty"`
	High     *float64 `json:"usual_to,omitempty"`
	Check    string   `json:"check"`
	Source   string   `json:"range_from"`
	Words    string   `json:"words"`
}

// UnusualValues lists what looked odd in this run, every value by itself.
func (in *Input) UnusualValues() []UnusualJSON {
	out := []UnusualJSON{}
	for _, v := range in.Odd.Sorted() {
		one := UnusualJSON{Place: v.Place.String(), Quantity: v.Quantity, About: v.About, Check: v.Check, Source: v.Source,
			Words: in.unusual(odd.Group{Worst: v})}
		one.Unit = symbolOf(v.Measure)
		one.Value, one.Low, one.High = finite(v.Measure, v.X), finite(v.Measure, v.Low), finite(v.Measure, v.High)
		out = append(out, one)
	}
	return out
}

// symbolOf is the unit of a measure in JSON.
func symbolOf(m odd.Measure) string {
	_, symbol, _ := inUnits(show.Units{}, m, 0)
	return strings.TrimSpace(symbol)
}

// finite gives the number that JSON prints; nil for what it cannot.
func finite(m odd.Measure, x float64) *float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	number, _, _ := inUnits(show.Units{}, m, x)
	return &number
}

// unusualHeading heads the odd values of a sheet.
const unusualHeading = "Look at these again"

// unusualBlocks puts the odd values of this run into a report; nothing where
// there are none.
func (in *Input) unusualBlocks(r *show.Report) {
	lines := in.Unusual(in.Odd)
	if lines == nil {
		return
	}
	r.Heading(unusualHeading)
	r.Para("%s on this sheet, or behind it, %s outside what is usual. The sheet was reckoned with them as they stand.",
		capital(plural(len(lines), "number")), verb(len(lines)))
	r.Cautions(lines...)
}

func verb(n int) string {
	if n == 1 {
		return "lies"
	}
	return "lie"
}
