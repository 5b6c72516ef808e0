package build

import (
	"fmt"
	"regexp"
	"strings"
	"unicode"

	"scalepair/data/unit"
)

// Slips that a whole line shows, whatever the parser stumbles over. Each gives
// what is wrong and what to write; found is false for any other line.

var (
	colonKey   = regexp.MustCompile(`^\s*([A-Za-z][\w-]*)\s*:\s*(\S[^=]*?)\s*(?:#.*)?$`)
	bareValue  = regexp.MustCompile(`^\s*([A-Za-z][\w-]*)\s+([^\s=#][^=]*?)\s*(?:#.*)?$`)
	keyOfWords = regexp.MustCompile(`^\s*([A-Za-z][\w-]*(?:[ \t]+[A-Za-z][\w-]*)+)\s*=`)
	sectionKey = regexp.MustCompile(`^\s*\[`)
	signed     = regexp.MustCompile(`^\s*([\w-]+)\s*=\s*([+-]?[\d.]+)\s*([%°]|deg|cents?|Hz|GPa|MPa)\s*(?:#.*)?$`)
	withComma  = regexp.MustCompile(`^\s*([\w-]+)\s*=\s*([+-]?\d+),(\d+)\s*(?:#.*)?$`)
	withUnit   = regexp.MustCompile(`^\s*([\w-]+)\s*=\s*([+-]?[\d./ ½¼¾-]*\d\s*(?:["°]|[A-Za-z]+))\s*(?:#.*)?$`)
	halfUnit   = regexp.MustCompile(`=\s*[+-]?[\d./ ½¼¾-]*\d\s*["A-Za-z°]`)
)

// keySlip words a key that is not parted from its value by an equals sign, and
// one with blanks or letters that no key has.
func keySlip(line string) (what, remedy string, found bool) {
	said, _, _ := strings.Cut(line, "#")
	key, _, _ := strings.Cut(said, "=")
	switch {
	case sectionKey.MatchString(line) || strings.ContainsAny(key, `"'`) || strings.TrimSpace(key) == "":
		return "", "", false
	case strings.ContainsAny(key, "\u00a0\u202f\u2009\u2003\u3000\u200b\ufeff"):
		return "a blank of another kind stands here", "type an ordinary blank", true
	case keyOfWords.MatchString(line):
		words := strings.Fields(keyOfWords.FindStringSubmatch(line)[1])
		return "a key has no blanks", "write " + strings.Join(words, "_"), true
	case strings.Contains(line, "=") && strings.ContainsFunc(key, func(r rune) bool { return r > unicode.MaxASCII && unicode.IsLetter(r) }):
		return "a letter here is none of a key's, though it may look like one", "type the key anew on your keyboard: " + strings.TrimSpace(latin(key)), true
	}
	for _, form := range []*regexp.Regexp{colonKey, bareValue} {
		if m := form.FindStringSubmatch(line); m != nil && !strings.Contains(line, "=") && !strings.ContainsAny(m[2], ",;{}") {
			return "a key needs an equals sign and a value", fmt.Sprintf("write %s = %s", m[1], asValue(shorten(m[2]))), true
		}
	}
	return "", "", false
}

// asValue writes a value as TOML does: numbers, lists and quoted text as they
// are, other words in quotes.
func asValue(text string) string {
	if _, err := unit.ParseNumber(text); err == nil || text == "true" || text == "false" || strings.ContainsAny(text[:1], `"'[`) {
		return text
	}
	return quote(text)
}

// signSlip words a number with a sign or unit that its key states already.
func signSlip(line string) (what, remedy string, found bool) {
	m := signed.FindStringSubmatch(line)
	if m == nil || !statesUnit(m[1]) {
		return "", "", false
	}
	return "the number has a sign or unit behind it, which its key states already", fmt.Sprintf("write %s = %s", m[1], m[2]), true
}

// statesUnit tells whether a key's name ends in the unit of its number.
func statesUnit(key string) bool {
	for _, end := range []string{"_deg", "_percent", "_cents", "_hz", "_gpa", "_mpa", "_cm3", "_s2", "_fret"} {
		if strings.HasSuffix(key, end) {
			return true
		}
	}
	return false
}

// commaSlip words a decimal comma outside quotes.
func commaSlip(line string) (what, remedy string, found bool) {
	m := withComma.FindStringSubmatch(line)
	if m == nil {
		return "", "", false
	}
	number := m[2] + "." + m[3]
	remedy = fmt.Sprintf("write a point, and a length in quotes with its unit: \"%s mm\"", number)
	if statesUnit(m[1]) {
		remedy = fmt.Sprintf("write %s = %s", m[1], number)
	}
	return "a comma stands where the decimal point belongs", remedy, true
}

// unitSlip words a value with a unit outside quotes.
func unitSlip(line string) (what, remedy string, found bool) {
	const without = "a value with a unit needs quotes"
	if m := withUnit.FindStringSubmatch(line); m != nil && !strings.Contains(m[2], `"`) {
		return without, fmt.Sprintf("write %s = %q", m[1], m[2]), true
	}
	if halfUnit.MatchString(line) {
		return without, `write "648 mm" or "25.5 in"`, true
	}
	return "", "", false
}

// scriptSlip words digits of another script in a value.
func scriptSlip(line string) (what, remedy string, found bool) {
	key, value, _ := strings.Cut(line, "=")
	digits := func(r rune) bool { return r > unicode.MaxASCII && unicode.IsDigit(r) }
	if !strings.ContainsFunc(value, digits) || strings.ContainsAny(value, `"'`) {
		return "", "", false
	}
	return "digits of another script stand here", fmt.Sprintf("write %s = %s", strings.TrimSpace(key), latin(strings.TrimSpace(value))), true
}

// latin puts letters and digits of the keyboard in the place of those that
// look the same.
func latin(s string) string {
	pairs := []string{"а", "a", "с", "c", "е", "e", "һ", "h", "і", "i", "ј", "j", "к", "k", "о", "o", "р", "p", "ѕ", "s",
		"у", "y", "х", "x", "т", "t", "м", "m", "н", "h", "α", "a", "ι", "i", "κ", "k", "ο", "o", "ρ", "p", "ν", "v", "．", "."}
	for i := range 10 {
		pairs = append(pairs, string('０'+rune(i)), string(rune('0'+i)))
	}
	for i := range 26 {
		pairs = append(pairs, string('ａ'+rune(i)), string(rune('a'+i)), string('Ａ'+rune(i)), string(rune('A'+i)))
	}
	return strings.NewReplacer(pairs...).Replace(s)
}
