package unit

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/suggest"
)

// refuse gives an error with the house wording and no place; the caller adds
// the place through fault.List.Include.
func refuse(what, given, remedy string) error {
	return fault.Fault{What: what, Given: given, Remedy: remedy}
}

// parse reads a number and a unit of k and gives the quantity in SI. headed is
// the unit that a heading states, "" for none: text without a unit takes it,
// and a unit in the text must be the same, since one of two that differ is a
// slip and only the builder knows which.
func (k kind) parse(given, headed string) (float64, error) {
	if x, ok := k.quick(strings.TrimSpace(given), headed); ok {
		return x, nil
	}
	if len(given) > longestText {
		return 0, refuse("not read as "+k.what, given, k.wanted("1", headed))
	}
	s := strings.TrimSpace(plain().Replace(given))
	if s == "" {
		return 0, refuse(k.what+" is missing", "", k.spellings("1"))
	}
	x, rest := splitNumber(s)
	if x == nil || commaForm.MatchString(s) {
		return 0, k.refuseNumber(given, s, headed)
	}
	switch {
	case rest == "" && headed == "":
		return 0, refuse(k.what+" needs a unit", given, k.spellings(s))
	case rest == "":
		rest = headed
	}
	u, ok := k.find(rest)
	if !ok {
		return 0, k.refuseUnit(given, s, rest)
	}
	if stated, ok := k.find(headed); ok && stated.names[0] != u.names[0] {
		return 0, refuse("the unit is not the heading's, which is "+stated.names[0], given, "change one of them")
	}
	return k.finite(given, x.Mul(x, big.NewRat(u.num, u.den)))
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

func (k kind) finite(given string, r *big.Rat) (float64, error) {
	x, _ := r.Float64()
	if math.IsInf(x, 0) {
		return 0, refuse(k.what+" is too large for any number here", given, "look whether a digit or the exponent slipped")
	}
	return x + 0, nil // + 0 makes the -0 of a negative number too small to hold a 0
}

// refuseNumber says why no number could be read.
func (k kind) refuseNumber(given, s, headed string) error {
	switch {
	case commaForm.MatchString(s):
		return commaSlip(given, s)
	case endlessForm.MatchString(s):
		return refuse(k.what+" must be a finite number", given, k.wanted("1", headed))
	case fractionForm.MatchString(s):
		return refuse("a fraction over 0", given, k.spellings("1/2"))
	}
	if err := k.recognised(given, s); err != nil {
		return err
	}
	return refuse("not read as "+k.what, given, k.wanted("1", headed))
}

// wanted says what would do: under a heading with a unit a number alone.
func (k kind) wanted(number, headed string) string {
	if headed != "" {
		return "write a number of " + headed + " and nothing else"
	}
	return k.spellings(number)
}

// refuseUnit says that what follows a number is no unit.
func (k kind) refuseUnit(given, s, name string) error {
	if err := k.recognised(given, s); err != nil {
		return err
	}
	var known, first []string
	for _, u := range k.units {
		known = append(known, u.names...)
		first = append(first, u.names[0])
	}
	remedy := "use " + strings.Join(first, ", ")
	if best := suggest.Nearest(name, known); best != "" {
		remedy = fmt.Sprintf("did you mean %q? %s", best, remedy)
	}
	return refuse(fmt.Sprintf("%q is no unit of %s", fault.Short(name), strings.TrimPrefix(strings.TrimPrefix(k.what, "an "), "a ")), given, remedy)
}

// spellings gives the likely ways of writing number in k.
func (k kind) spellings(number string) string {
	if k.units[0].names[0] == "" {
		return "write a number in digits, such as 7.5"
	}
	out := fmt.Sprintf("write %q", number+" "+k.units[0].names[0])
	if len(k.units) > 1 {
		out += fmt.Sprintf(" or %q", number+" "+k.units[1].names[0])
	}
	return out
}

// exact gives x times scale as a plain decimal without rounding, where x stands
// for its own shortest decimal; it panics on NaN and infinities.
func exact(x float64, scale int64) string {
	r, ok := new(big.Rat).SetString(strconv.FormatFloat(x, 'g', -1, 64))
	if !ok {
		panic(fmt.Sprintf("unit: cannot print %v", x))
	}
	r.Mul(r, big.NewRat(scale, 1))
	decimals, _ := r.FloatPrec()
	return r.FloatString(decimals)
}
