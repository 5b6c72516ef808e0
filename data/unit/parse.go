package unit

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"regexp"
	"strconv"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/near"
)

// refuse gives an error with the house wording and no place; the caller adds
// the place through fault.List.Include.
func refuse(what, given, remedy string) error {
	return errors.New(fault.Fault{What: what, Given: given, Remedy: remedy}.Error())
}

// Exponents are held to three digits, since exact arithmetic on "1e999999999"
// would take the machine's memory, and numbers to what a float64 written out in
// full may take.
const (
	longestExponent = len("e-308")
	longestNumber   = 400
)

var (
	decimalForm  = regexp.MustCompile(`^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?`)
	fractionForm = regexp.MustCompile(`^([+-]?)(?:(\d{1,9})(?:\s+|\s*-\s*))?(\d{1,9})\s*/\s*(\d{1,9})`)
	commaForm    = regexp.MustCompile(`\d,\d|^[+-]?,\d`)
	endlessForm  = regexp.MustCompile(`(?i)^[+-]?(nan|inf|infinity|∞)\b`)
)

// plain writes typographic signs in the characters that the grammar knows.
var plain = strings.NewReplacer(
	"\u00a0", " ", "\u2009", " ", "\u202f", " ", "\t", " ",
	"\u2212", "-", "\u2044", "/",
	"\u2033", `"`, "\u201d", `"`, "\u201c", `"`, "''", `"`, "\u2019\u2019", `"`, "\u2032\u2032", `"`,
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"º", "°",
)

// parse reads a number and a unit of k and gives the quantity in SI. headed is
// the unit that a heading states, "" for none: text without a unit takes it,
// and a unit in the text must be the same, since one of two that differ is a
// slip and only the builder knows which.
func (k kind) parse(given, headed string) (float64, error) {
	s := strings.TrimSpace(plain.Replace(given))
	if s == "" {
		return 0, refuse(k.what+" is missing", "", k.spellings("1"))
	}
	number, rest := splitNumber(s)
	if number == nil || commaForm.MatchString(s) {
		return 0, k.refuseNumber(given, s)
	}
	switch {
	case rest == "" && headed == "":
		return 0, refuse(k.what+" needs a unit", given, k.spellings(s))
	case rest == "":
		rest = headed
	}
	u, ok := k.find(rest)
	if !ok {
		return 0, k.refuseUnit(given, rest)
	}
	if stated, ok := k.find(headed); ok && stated.names[0] != u.names[0] {
		return 0, refuse("the unit is not the heading's, which is "+stated.names[0], given, "change one of them")
	}
	return k.finite(given, number.Mul(number, big.NewRat(u.num, u.den)))
}

// splitNumber takes the number off the front of s; nil when none stands there.
func splitNumber(s string) (*big.Rat, string) {
	if m := fractionForm.FindStringSubmatch(s); m != nil {
		return fraction(m), strings.TrimSpace(s[len(m[0]):])
	}
	m := decimalForm.FindStringSubmatch(s)
	if m == nil || len(m[0]) > longestNumber || len(m[2]) > longestExponent {
		return nil, s
	}
	r, ok := new(big.Rat).SetString(m[0])
	if !ok {
		return nil, s
	}
	return r, strings.TrimSpace(s[len(m[0]):])
}

// fraction puts sign, whole part, numerator and denominator together; nil when
// the denominator is 0.
func fraction(m []string) *big.Rat {
	whole, _ := strconv.ParseInt("0"+m[2], 10, 64)
	num, _ := strconv.ParseInt(m[3], 10, 64)
	den, _ := strconv.ParseInt(m[4], 10, 64)
	if den == 0 {
		return nil
	}
	r := big.NewRat(num, den)
	r.Add(r, new(big.Rat).SetInt64(whole))
	if m[1] == "-" {
		r.Neg(r)
	}
	return r
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
		return 0, refuse(k.what+" is too large for any number here", given, "")
	}
	return x, nil
}

// refuseNumber says why no number could be read.
func (k kind) refuseNumber(given, s string) error {
	switch {
	case commaForm.MatchString(s):
		return refuse("a comma is not read as a decimal point", given,
			fmt.Sprintf("write %q", strings.ReplaceAll(s, ",", ".")))
	case endlessForm.MatchString(s):
		return refuse(k.what+" must be a finite number", given, k.spellings("1"))
	case fractionForm.MatchString(s):
		return refuse("a fraction over 0", given, k.spellings("1/2"))
	}
	return refuse("not read as "+k.what, given, k.spellings("1"))
}

func (k kind) refuseUnit(given, name string) error {
	var known, first []string
	for _, u := range k.units {
		known = append(known, u.names...)
		first = append(first, u.names[0])
	}
	remedy := "use " + strings.Join(first, ", ")
	if best := near.Suggest(name, known); best != "" {
		remedy = fmt.Sprintf("did you mean %q? %s", best, remedy)
	}
	return refuse(fmt.Sprintf("%q is no unit of %s", name, strings.TrimPrefix(strings.TrimPrefix(k.what, "an "), "a ")), given, remedy)
}

// spellings gives the likely ways of writing number in k.
func (k kind) spellings(number string) string {
	if len(k.units) == 0 {
		return `write "7.5", say`
	}
	out := fmt.Sprintf("write %q", number+" "+k.units[0].names[0])
	if len(k.units) > 1 {
		out += fmt.Sprintf(" or %q", number+" "+k.units[1].names[0])
	}
	return out
}

// ParseNumber reads a plain finite decimal such as "7.5" or "-1e-3", without
// unit. Decimal commas, nan and inf are refused.
func ParseNumber(given string) (float64, error) {
	s := strings.TrimSpace(plain.Replace(given))
	k := kind{what: "a number"}
	if s == "" {
		return 0, refuse("a number is missing", "", "")
	}
	r, rest := splitNumber(s)
	if r == nil || commaForm.MatchString(s) {
		return 0, k.refuseNumber(given, s)
	}
	if rest != "" || strings.Contains(s, "/") {
		return 0, refuse("not read as a number", given, k.spellings(""))
	}
	return k.finite(given, r)
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
