package unit

import (
	"fmt"
	"regexp"
	"strings"
	"sync"

	"scalepair/data/fault"
)

// slip is a way of writing a number that this grammar does not read, with what
// is told of it.
type slip struct {
	form         *regexp.Regexp
	what, remedy string
}

// slips are those of spreadsheets and of the keyboard that leave no number to
// go by. The first that matches counts.
var slips = []slip{
	{regexp.MustCompile(`(?i)^#(DIV/0!|REF!|VALUE!|N/A|NAME\?|NUM!|NULL!|SPILL!|CALC!)$`), "a spreadsheet's error stands here", "put the formula right, and save the sheet again"},
	{regexp.MustCompile(`^#+$`), "the spreadsheet's column was too narrow for its number", "widen the column, and save the sheet again"},
	{regexp.MustCompile(`^[=@]`), "a formula stands here, not its value", "type the number, or save the sheet with its values"},
	{regexp.MustCompile(`(?i)^\d{1,2}[-./ ]*(jan|feb|mar|apr|may|mai|jun|jul|aug|sep|oct|okt|nov|dec|dez)`), dateHere, typeAnew},
	{regexp.MustCompile(`(?i)^(jan|feb|mar|apr|may|mai|jun|jul|aug|sep|oct|okt|nov|dec|dez)[a-z]*[-./ ]*\d+$`), dateHere, typeAnew},
	{regexp.MustCompile(`^(\d{4}-\d{1,2}-\d{1,2}|(0?[1-9]|[12]\d|3[01])[./](0?[1-9]|[12]\d|3[01])[./](\d{4}|\d{2}))$`), dateHere, typeAnew},
	{regexp.MustCompile(`(?i)^([-\x{2013}\x{2014}?.x]+|n\.?/?a\.?|none|null|nil|missing|unknown)$`), "no number stands here", "leave it out where nothing is known"},
	{regexp.MustCompile(`(?i)^[+-]?0x[0-9a-f]`), "a number to base 16 stands here", "write it in plain digits"},
	{regexp.MustCompile(`^[+-]?[\d.]+\s*('|\x{2032}|\x{2019}|ft\b|feet|foot)`), "feet are not read", `write inches: "25.5 in"`},
	{regexp.MustCompile(`(?i)^[+-]?[\d.]+\s*[a-z"]*\s*(-|\x{2013}|/|x|\x{d7}|\*|to|bis|or|oder|and|und)\s*[\d.]+`), TwoNumbers, "write one"},
	{regexp.MustCompile(`^[+-]?[\d.]+[eE][+-]?\d{4,}`), "no number here is so large or so small", "look whether the exponent slipped"},
}

// TwoNumbers is what is said of a text with two numbers where one belongs, so
// that a reader that knows what the second may be can say more.
const TwoNumbers = "two numbers stand here"

const (
	dateHere = "a date stands here: a spreadsheet makes one of 1/2 or 2-1"
	typeAnew = "format the cells as text, and type the numbers anew"
)

// recognised tells a slip in words: a fault without its place, nil where none
// is known. s is given, trimmed and in plain characters.
func (k kind) recognised(given, s string) error {
	if m := thousands.FindString(s); m != "" {
		return refuse("blanks or apostrophes between thousands are not read", given, fmt.Sprintf("write %q", notDigits.ReplaceAllString(m, "")+s[len(m):]))
	}
	for _, slip := range slips {
		if slip.form.MatchString(s) {
			return refuse(slip.what, given, slip.remedy)
		}
	}
	if tidy := k.tidied(given); tidy != "" {
		return refuse("not read as "+k.what, given, fmt.Sprintf("write %q", tidy))
	}
	return nil
}

var (
	thousands  = regexp.MustCompile(`^[+-]?\d{1,3}([' \x{2019}]\d{3})+\b`)
	notDigits  = regexp.MustCompile(`[' \x{2019}]`)
	lookDigits = regexp.MustCompile(`^[+-]?[\dOol|I.]*\d[\dOol|I.]*`)
	around     = regexp.MustCompile(`^(?i:about|approx\.?|ca\.?|circa|~|\x{2248}|<|>|\x{20ac}|\$|\x{a3}|:)\s*|\s*(\x{b1}.*|\+/-.*|\x{20ac}|\$|\x{a3}|;|!)$`)
)

// tidied is what was probably meant: digits and letters of other scripts that
// look like those of the grammar, quotation marks, signs and words around a
// number are put right. It gives "" where that makes no quantity either.
func (k kind) tidied(given string) string {
	s := strings.Trim(strings.TrimSpace(lookAlikes().Replace(given)), "\"'`\u2018\u2019\u201a\u201b\u201c\u201d\u201e\u201f\u00ab\u00bb\u2039\u203a ")
	s = strings.TrimSpace(around.ReplaceAllString(s, ""))
	if m := lookDigits.FindString(s); m != "" {
		s = strings.NewReplacer("O", "0", "o", "0", "l", "1", "|", "1", "I", "1").Replace(m) + s[len(m):]
	}
	x, rest := splitNumber(strings.TrimSpace(plain().Replace(s)))
	if x == nil || s == strings.TrimSpace(given) || commaForm.MatchString(s) {
		return ""
	}
	if _, known := k.find(rest); rest != "" && !known {
		return ""
	}
	return s
}

// lookAlikes puts characters of other scripts in the place of those that they
// look like or stand for.
var lookAlikes = sync.OnceValue(func() *strings.Replacer {
	pairs := []string{"．", ".", "，", ",", "－", "-", "＋", "+", "／", "/", "　", " ", "＂", `"`,
		"мм", "mm", "см", "cm", "м", "m", "кг", "kg", "мг", "mg", "г", "g", "О", "0", "о", "0", "Ｏ", "0"}
	for i := range 10 {
		digit := string(rune('0' + i))
		for _, first := range []rune{'０', '٠', '۰', '०'} { // full width, Arabic, Persian, Devanagari
			pairs = append(pairs, string(first+rune(i)), digit)
		}
	}
	for i := range 26 {
		pairs = append(pairs, string('ａ'+rune(i)), string(rune('a'+i)), string('Ａ'+rune(i)), string(rune('A'+i)))
	}
	return strings.NewReplacer(pairs...)
})

// commaSlip words a comma in a number. One before three digits may part
// thousands as well.
func commaSlip(given, s string) error {
	remedy := fmt.Sprintf("write %q", fault.Short(strings.ReplaceAll(s, ",", ".")))
	switch without := fault.Short(strings.ReplaceAll(s, ",", "")); {
	case englishThousands.MatchString(s):
		remedy = fmt.Sprintf("write %q", without)
	case germanThousands.MatchString(s):
		remedy = fmt.Sprintf("write %q", strings.Replace(strings.ReplaceAll(s, ".", ""), ",", ".", 1))
	case perhapsThousands.MatchString(s):
		remedy += fmt.Sprintf(", or %q where it parts thousands", without)
	}
	return refuse("a comma is not read as a decimal point", given, remedy)
}

var (
	englishThousands = regexp.MustCompile(`^[+-]?[1-9]\d{0,2}(,\d{3})+\.\d|^[+-]?[1-9]\d{0,2}(,\d{3}){2,}\b`)
	germanThousands  = regexp.MustCompile(`^[+-]?[1-9]\d{0,2}(\.\d{3})+,\d+\b`)
	perhapsThousands = regexp.MustCompile(`^[+-]?[1-9]\d{0,2},\d{3}(\D|$)`)
)
