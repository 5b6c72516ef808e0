package unit

import (
	"fmt"
	"math/big"
	"regexp"
	"strconv"
	"strings"
	"sync"
)

// Exponents are held to three digits, since exact arithmetic on "1e999999999"
// would take the machine's memory, and numbers to what a float64 written out in
// full may take.
const (
	longestExponent = len("e-308")
	longestNumber   = 400
)

// longestText is from where a text is no quantity: it is not looked at.
const longestText = 1000

// The forms of a number: most runs meet plain decimals only.
var (
	decimalForm  = regexp.MustCompile(`^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?`)
	fractionForm = regexp.MustCompile(`^([+-]?)(?:(\d{1,9})(?:\s+|\s*-\s*))?(\d{1,9})\s*/\s*(\d{1,9})`)
	commaForm    = regexp.MustCompile(`\d,\d|^[+-]?,\d`)
	endlessForm  = regexp.MustCompile(`(?i)^[+-]?(nan|inf|infinity|∞)\b`)
)

// plain writes typographic signs in the characters that the grammar knows.
var plain = sync.OnceValue(func() *strings.Replacer {
	return strings.NewReplacer(
		"\u00a0", " ", "\u2009", " ", "\u202f", " ", "\t", " ",
		"\u2212", "-", "\u2044", "/",
		"\u2033", `"`, "\u201d", `"`, "\u201c", `"`, "''", `"`, "\u2019\u2019", `"`, "\u2032\u2032", `"`,
		"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
		"º", "°",
	)
})

// quick reads the usual case without exact arithmetic: a plain decimal and a
// unit that is a power of ten, by its first name. It gives the same value as
// the full grammar, since both round the exact product once; false leaves the
// text to the full grammar.
func (k kind) quick(s, headed string) (float64, bool) {
	if len(s) > longestText {
		return 0, false
	}
	n := 0
	for n < len(s) && (s[n] >= '0' && s[n] <= '9' || s[n] == '.' || s[n] == '-' || s[n] == '+') {
		n++
	}
	name := strings.TrimSpace(s[n:])
	if name == "" {
		name = headed
	}
	if headed != "" && name != headed || n > longestNumber {
		return 0, false
	}
	for i := range k.units {
		if u := &k.units[i]; name == u.names[0] && u.power != "" {
			x, err := strconv.ParseFloat(s[:n]+u.power, 64)
			return x + 0, err == nil // + 0 makes -0 a 0
		}
	}
	return 0, false
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

var number = kind{"a number", []spelling{{names: []string{""}, num: 1, den: 1, power: "e0"}}}

// ParseNumber reads a plain finite decimal such as "7.5" or "-1e-3", without
// unit. Fractions, decimal commas, nan and inf are refused.
func ParseNumber(given string) (float64, error) {
	if x, ok := number.quick(strings.TrimSpace(given), ""); ok {
		return x, nil
	}
	if len(given) > longestText {
		return 0, refuse("not read as a number", given, number.spellings(""))
	}
	s := strings.TrimSpace(plain().Replace(given))
	if s == "" {
		return 0, refuse("a number is missing", "", number.spellings(""))
	}
	r, rest := splitNumber(s)
	if r == nil || commaForm.MatchString(s) {
		return 0, number.refuseNumber(given, s, "")
	}
	if rest == "" && strings.Contains(s, "/") {
		x, _ := r.Float64()
		return 0, refuse("a fraction is not read here", given, fmt.Sprintf("write %q", strconv.FormatFloat(figures(x, 6), 'f', -1, 64)))
	}
	if rest != "" {
		if err := number.recognised(given, s); err != nil {
			return 0, err
		}
		return 0, refuse("not read as a number", given, number.spellings(""))
	}
	return number.finite(given, r)
}

// Bare tells whether a text is a number alone, decimal or fraction, without a
// unit.
func Bare(given string) bool {
	if len(given) > longestText {
		return false
	}
	s := strings.TrimSpace(plain().Replace(given))
	x, rest := splitNumber(s)
	return x != nil && rest == ""
}
