package unit

import (
	"fmt"
	"math"
	"math/big"
	"regexp"
	"strconv"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/suggest"
)

// longestText is from where a text is no quantity: it is not looked at.
const longestText = 400

// The forms of a number. Three digits of an exponent are more than a float64
// holds, and few enough for exact arithmetic.
var (
	decimalForm  = regexp.MustCompile(`^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,3})?`)
	fractionForm = regexp.MustCompile(`^([+-]?)(?:(\d{1,9})(?:\s+|\s*-\s*))?(\d{1,9})\s*/\s*(\d{1,9})`)
	commaForm    = regexp.MustCompile(`^[+-]?(\d*),\d`)
)

// plain writes typographic signs in the characters that the grammar knows.
var plain = strings.NewReplacer(
	"\u00a0", " ", "\u2009", " ", "\u202f", " ", "\t", " ", "\u2212", "-", "\u2044", "/",
	"\u2033", `"`, "\u201d", `"`, "''", `"`, "\u2032\u2032", `"`,
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
)

// parse reads a number and a unit of k, and returns the quantity in SI and how
// it was written. headed is the unit that a heading states, "" for none: text
// without a unit takes it, and a unit in the text must be the same, since one of
// two that differ is a slip and only the builder knows which.
func (k kind) parse(given, headed string) (float64, Written, error) {
	s := strings.TrimSpace(plain.Replace(given))
	if s == "" {
		return 0, Written{}, refuse(k.what+" is missing", "", k.example("1", headed))
	}
	x, form, name := number(s)
	if x == nil {
		return 0, Written{}, k.refuseNumber(given, s, headed)
	}
	if name == "" {
		name = headed
	}
	u, known := k.find(name)
	switch {
	case !known && name == "":
		return 0, Written{}, refuse(k.what+" needs a unit", given, k.example(s, ""))
	case !known:
		return 0, Written{}, k.refuseUnit(given, name)
	}
	if stated, ok := k.find(headed); ok && stated.names[0] != u.names[0] {
		return 0, Written{}, refuse("the unit is not the heading's, which is "+stated.names[0], given, "change one of them")
	}
	value, _ := x.Mul(x, big.NewRat(u.num, u.den)).Float64()
	if math.IsInf(value, 0) {
		return 0, Written{}, refuse(k.what+" is too large for any number here", given, "check the exponent")
	}
	form.Unit, form.size = u.names[0], float64(u.num)/float64(u.den)
	return value + 0, form, nil // + 0 makes a -0 a 0
}

// number takes the number off the front of s; nil where none stands there.
func number(s string) (x *big.Rat, form Written, rest string) {
	if len(s) > longestText || commaForm.MatchString(s) {
		return nil, form, s
	}
	if m := fractionForm.FindStringSubmatch(s); m != nil {
		form.Over, _ = strconv.Atoi(m[4])
		if part, _ := strconv.Atoi(m[3]); form.Over == 0 || part > form.Over {
			return nil, form, s
		}
		x, _ = new(big.Rat).SetString(m[3] + "/" + m[4])
		if whole, ok := new(big.Rat).SetString(m[2]); ok {
			x.Add(x, whole)
		}
		if m[1] == "-" {
			x.Neg(x)
		}
		return x, form, strings.TrimSpace(s[len(m[0]):])
	}
	m := decimalForm.FindStringSubmatch(s)
	if m == nil {
		return nil, form, s
	}
	form.Decimals = decimalsOf(m[1], m[2])
	x, _ = new(big.Rat).SetString(m[0])
	return x, form, strings.TrimSpace(s[len(m[0]):])
}

// Bare reports whether a text is a number alone, without a unit.
func Bare(given string) bool {
	x, _, rest := number(strings.TrimSpace(plain.Replace(given)))
	return x != nil && rest == ""
}

func (k kind) find(name string) (spelling, bool) {
	folded := strings.ToLower(strings.ReplaceAll(strings.TrimSuffix(name, "."), " ", ""))
	for _, u := range k.units {
		for _, n := range u.names {
			if strings.ToLower(n) == folded {
				return u, true
			}
		}
	}
	return spelling{}, false
}

// refuse returns an error with the house wording and no place; the caller adds
// the place through fault.List.Include.
func refuse(what, given, remedy string) error {
	return fault.Fault{What: what, Given: given, Remedy: remedy}
}

// refuseNumber says why no number could be read.
func (k kind) refuseNumber(given, s, headed string) error {
	switch {
	case fractionForm.MatchString(s) && len(s) <= longestText:
		return refuse("the fraction is above 1, or over 0", given, `write whole inches before it: "1 1/64 in"`)
	case !commaForm.MatchString(s) || len(s) > longestText:
		return refuse("not read as "+k.what, given, k.example("1", headed))
	case strings.Contains(s, ".") || strings.Count(s, ",") > 1:
		return refuse("commas are not read in a number", given, "write it with a decimal point and nothing between thousands")
	}
	return refuse("a comma is not read as a decimal point", given, fmt.Sprintf("write %q", strings.Replace(s, ",", ".", 1)))
}

// refuseUnit says that what follows a number is no unit.
func (k kind) refuseUnit(given, name string) error {
	var known, first []string
	for _, u := range k.units {
		known = append(known, u.names...)
		first = append(first, u.names[0])
	}
	if first[0] == "" {
		return refuse("not read as "+k.what, given, k.example("1", ""))
	}
	remedy := "use " + strings.Join(first, ", ")
	if best := suggest.Nearest(name, known); best != "" {
		remedy = fmt.Sprintf("did you mean %q? %s", best, remedy)
	}
	_, noun, _ := strings.Cut(k.what, " ")
	return refuse(fmt.Sprintf("%q is no unit of %s", fault.Short(name), noun), given, remedy)
}

// example says how to write a number in k; under a heading with a unit, the
// number alone.
func (k kind) example(number, headed string) string {
	switch {
	case headed != "":
		return "write a number of " + headed + " and nothing else"
	case k.units[0].names[0] == "":
		return "write a number in digits, such as 7.5"
	case len(k.units) == 1:
		return fmt.Sprintf("write %q", number+" "+k.units[0].names[0])
	}
	return fmt.Sprintf("write %q or %q", number+" "+k.units[0].names[0], number+" "+k.units[1].names[0])
}

// exact returns x times scale as a plain decimal without rounding, where x
// stands for its own shortest decimal; it panics on NaN and infinities.
func exact(x float64, scale int64) string {
	r, ok := new(big.Rat).SetString(strconv.FormatFloat(x, 'g', -1, 64))
	if !ok {
		panic(fmt.Sprintf("unit: cannot print %v", x))
	}
	r.Mul(r, big.NewRat(scale, 1))
	decimals, _ := r.FloatPrec()
	return r.FloatString(decimals)
}
