package build

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/data/unit"
)

// text reads a text into the value, which stays as it is when the file does
// not have the key.
func (s *section) text(key string, into *string) {
	n := s.want(key, kindText, "put it in quotes")
	if n == nil {
		return
	}
	if strings.TrimSpace(n.text) == "" {
		s.wrong(n, say(key)+" is empty", "give it, or leave the line out")
		return
	}
	*into = strings.TrimSpace(n.text)
}

// path reads a file's path, with / between folders whether it was written on
// Windows or elsewhere. A control character comes from a backslash in double
// quotes that was meant for itself: in "stock\readings.csv" it makes \r a
// carriage return.
func (s *section) path(key string, into *string) {
	s.text(key, into)
	if n := s.find(key); n != nil && strings.ContainsFunc(n.text, unicode.IsControl) {
		s.wrong(n, "a backslash in double quotes has a meaning of its own", "put the path between single quotes, or write / for \\")
		return
	}
	*into = strings.ReplaceAll(*into, `\`, "/")
}

// truth reads true or false. A key of this sort stands in truthKeys.
func (s *section) truth(key string, into *bool) {
	if !slices.Contains(truthKeys, key) {
		panic("build: " + key + " is missing in truthKeys")
	}
	remedy := func() string { return fmt.Sprintf("write %s = true or %s = false, without quotes", key, key) }
	if n := s.wantOr(key, kindTruth, remedy); n != nil {
		*into = n.text == "true"
	}
}

// number reads a finite number from lo to hi.
func (s *section) number(key string, into *float64, lo, hi float64) bool {
	n := s.wantOr(key, kindNumber, func() string { return fmt.Sprintf("write a number without quotes, %s to %s", plain(lo), plain(hi)) })
	if n == nil {
		return false
	}
	x, ok := s.inRange(n, key, lo, hi)
	if ok {
		*into = x
	}
	return ok
}

// whole reads a whole number from lo to hi.
func (s *section) whole(key string, into *int, lo, hi int) bool {
	var x float64
	if !s.number(key, &x, float64(lo), float64(hi)) {
		return false
	}
	if x != math.Trunc(x) {
		s.wrong(s.find(key), say(key)+" must be a whole number", fmt.Sprintf("from %d to %d will do", lo, hi))
		return false
	}
	*into = int(x)
	return true
}

func (s *section) inRange(n *node, key string, lo, hi float64) (float64, bool) {
	x, err := parseNumber(n.text)
	switch {
	case err != nil || math.IsNaN(x) || math.IsInf(x, 0):
		s.wrong(n, say(key)+" must be a plain finite number", fmt.Sprintf("from %s to %s will do", plain(lo), plain(hi)))
	case x < lo || x > hi:
		s.wrong(n, say(key)+" is out of range", fmt.Sprintf("from %s to %s will do", plain(lo), plain(hi)))
	default:
		return unsigned(x), true
	}
	return 0, false
}

// unsigned makes -0 a plain 0.
func unsigned[T ~float64](x T) T {
	if x == 0 {
		return 0
	}
	return x
}

// parseNumber reads a number as TOML writes it, underscores and other bases
// included.
func parseNumber(text string) (float64, error) {
	if i, err := strconv.ParseInt(text, 0, 64); err == nil {
		return float64(i), nil
	}
	return strconv.ParseFloat(strings.ReplaceAll(text, "_", ""), 64)
}

// plain prints a bound of a range.
func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// quantity reads a text with a unit, from lo to hi.
func quantity[T unit.Quantity](s *section, key string, into *T, lo, hi T, parse func(string) (T, error)) bool {
	n := s.find(key)
	if n == nil {
		return false
	}
	x, ok := quantityOf(s, n, key, lo, hi, parse)
	if ok {
		*into = x
	}
	return ok
}

// quantityOf reads one value, the key's own or an entry of its list.
func quantityOf[T unit.Quantity](s *section, n *node, key string, lo, hi T, parse func(string) (T, error)) (T, bool) {
	if n.kind != kindText && n.kind != kindNumber {
		s.wrong(n, fmt.Sprintf("%s must be text with a unit, not %s", say(key), kindWords[n.kind]), "write one number with its unit, in quotes")
		return 0, false
	}
	x, err := parse(n.text) // which refuses a bare number for want of a unit
	if err != nil {
		s.faults.Include(s.place(n.at), fault.About(say(key), err))
		return 0, false
	}
	if x < lo || x > hi {
		s.wrong(n, say(key)+" is out of range", otherUnit(n.text, lo, hi, parse)+"from "+unit.Form[T](n.text, "").Range(float64(lo), float64(hi))+" will do")
		return 0, false
	}
	return unsigned(x), true
}

// OtherLength asks whether a length was meant in another unit, where it would
// then lie from lo to hi: "did you mean "25.6 in"? "; "" where none would do.
func OtherLength(text string, lo, hi unit.Length) string {
	return otherUnit(text, lo, hi, unit.ParseLength)
}

// otherUnit asks for the units in which a number would be in range, two at
// most, where it is not in its own: "did you mean "25.6 in"? ".
func otherUnit[T unit.Quantity](text string, lo, hi T, parse func(string) (T, error)) string {
	number := strings.TrimRightFunc(text, func(r rune) bool { return !unicode.IsDigit(r) && r != '.' })
	var meant []string
	for _, name := range []string{"mm", "in", "cm", "m", "g", "mg", "kg"} {
		if x, err := parse(number + " " + name); err == nil && x >= lo && x <= hi && len(meant) < 2 {
			meant = append(meant, strconv.Quote(number+" "+name))
		}
	}
	if meant == nil {
		return ""
	}
	return "did you mean " + strings.Join(meant, " or ") + "? "
}

// asWritten is the text that a key was given, for a message about another key.
func (s *section) asWritten(key string) string { return shorten(strings.TrimSpace(s.find(key).text)) }

// written prints a length in the unit in which the key, or the beginning of
// its list or range, was given; known to the micrometre.
func (s *section) written(key string, l unit.Length) string {
	n := s.find(key)
	for n != nil && n.kind != kindText {
		switch {
		case n.kind == kindList && len(n.items) > 0:
			n = n.items[0]
		case n.kind == kindTable:
			n = n.table.get("from")
		default:
			n = nil
		}
	}
	if n != nil {
		if form := unit.Form[unit.Length](n.text, ""); form.Known() {
			return form.Text(float64(l), 1e-6)
		}
	}
	return l.String()
}

func (s *section) length(key string, into *unit.Length, lo, hi unit.Length) bool {
	return quantity(s, key, into, lo, hi, unit.ParseLength)
}

func (s *section) force(key string, into *unit.Force, lo, hi unit.Force) bool {
	return quantity(s, key, into, lo, hi, unit.ParseForce)
}

func (s *section) mass(key string, into *unit.Mass, lo, hi unit.Mass) bool {
	return quantity(s, key, into, lo, hi, unit.ParseMass)
}

// choice reads one of the words and gives its index into the value.
func choice[T ~int](s *section, key string, into *T, words ...string) {
	n := s.wantOr(key, kindText, func() string { return "use " + quoteAll(words) })
	if n == nil {
		return
	}
	if i := wordIndex(n.text, words); i >= 0 {
		*into = T(i)
		return
	}
	s.wrong(n, say(key)+" does not know this word", chooseFrom(n.text, words))
}

func wordIndex(text string, words []string) int {
	text = strings.Join(strings.Fields(text), " ")
	return slices.IndexFunc(words, func(w string) bool { return strings.EqualFold(w, text) })
}

func chooseFrom(text string, words []string) string {
	if best := suggest.Nearest(text, words); best != "" {
		return fmt.Sprintf("did you mean %q?", best)
	}
	return "use " + quoteAll(words)
}

func quoteAll(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = strconv.Quote(w)
	}
	return strings.Join(quoted, " or ")
}
