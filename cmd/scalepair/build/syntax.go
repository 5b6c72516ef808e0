package build

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// slips are those that builders make most, told from what the parser says and
// from the whole line. The first that matches is reported.
var slips = []struct {
	message string // what the parser says must hold this; "" any
	line    string // what the line must look like, a regular expression; "" any
	what    string
	remedy  string
}{
	{"", `[“”„‟‘’‚«»]`, "typographic quotes stand here",
		`use the straight ones of the keyboard: "648 mm"`},
	{"UTF-8", "", "a character here is not UTF-8", "save the file as UTF-8"},
	{"", `=\s*"[^"]*""`, "the inch sign ends the quoted text",
		`write "25.5 in", or put the text between single quotes`},
	{"nested", "", "lists within lists, deeper than can be meant", "look for a bracket that was typed too often"},
	{"array", `^\s*\[`, "the list before this line has no end", "put ] behind its last entry"},
	{"array", "", "entries of a list are parted by commas, and the list ends with ]", "look for a comma or a bracket that is missing"},
	{"expected value but got", "", "an entry is missing before this comma", "write it, or take the comma out"},
	{"inline table", "", "entries between braces are parted by commas, and end with }", "write them on one line: { from = \"660 mm\", to = \"720 mm\", step = \"5 mm\" }"},
	{"expected '='", "", "a key needs an equals sign and a value", `write, for instance, frets = 24`},
	{"end of input", "", "a value is missing at the end of the file", "write it"},
	{"", `=\s*(#.*)?$`, "this key has no value", "give one, or put # before the line to leave it out"},
	{"leading zeroes", "", "a number does not begin with 0", "put a gauge's label in quotes, and a number without the 0"},
	{"fraction point", "", "a digit belongs behind the decimal point", "write 5 or 5.0"},
	{"decimal point must be", "", "a digit belongs behind the decimal point", "write 5 or 5.0"},
	{"too large to fit", "", "the number is larger than any that can be meant", "look whether digits slipped in"},
	{"table name", "", "a section's name ends with ]", "write, for instance, [neck]"},
	{"", `^[^"'=]*=\s*\[\s*[A-Za-z]`, "text in a list needs quotes", `put each entry in quotes: ["w46", "w36"]`},
	{"start of value", "", needsQuotes, `write, for instance, tuning = "B1 E2 A2 D3 F#3 B3"`},
	{"strings must be quoted", "", needsQuotes, `write, for instance, tuning = "B1 E2 A2 D3 F#3 B3"`},
	{"keyword", "", needsQuotes, `write, for instance, body end = "square"; true and false stand without`},
	{"new lines", "", "the closing quote is missing", "end the text with the quote that began it"},
	{"unterminated", "", "the closing quote is missing", "end the text with the quote that began it"},
	{"not terminated", "", "the closing quotes are missing", "end the text with the quotes that began it"},
	{"too many quotes", "", "there are more quotes than belong here", "one quote before the text, and one behind it"},
	{"escape", "", "a backslash in double quotes has a meaning of its own", "put the text between single quotes"},
	{`after \`, "", "a backslash in double quotes has a meaning of its own", "put the text between single quotes"},
	{"ontrol characters", "", "a character that cannot be seen stands here", "type the line anew"},
	{"arriage return", "", "a character that cannot be seen stands here", "type the line anew"},
	{"start of key", `^\s*;`, "a remark begins with #", "write # for the semicolon"},
	{"start of key", "", "a line begins with a key, a [section] or # for a remark", "write, for instance, frets = 24, or put # before the line"},
	{"expected newline", `//|--|;.*\w`, "something is left over behind the value", "a remark begins with #"},
	{"expected newline", "", "something is left over behind the value", "one key on a line, and text in quotes; a remark begins with #"},
	{"", `=\s*[\d:T.Z+-]*\d[:-]\d`, "this is neither a number nor text", "put text in quotes; a number has digits and a point"},
	{"digit", "", "this is no number as it is written here", "write digits and a point, such as 7.5"},
	{"float", "", "this is no number as it is written here", "write digits and a point, such as 7.5"},
	{"radix", "", "this is no number as it is written here", "write digits and a point, such as 7.5"},
	{"number", "", "this is no number as it is written here", "write digits and a point, such as 7.5"},
	{"", "", "this line cannot be read", "look at its quotes, commas and brackets, or put # before it"},
}

const needsQuotes = "text needs quotes"

// wordValue is a key with words for a value, up to a remark.
var wordValue = regexp.MustCompile(`^\s*([A-Za-z0-9_]+)\s*=\s*([A-Za-z][^"'\[\]{}#]*?)\s*(?:#.*)?$`)

// truthKeys are the keys that take true or false.
var truthKeys = []string{"ordering", "reverse_fan", "zero_fret", "blank", "estimate_outside"}

// truthOf reads ways of saying true and false that TOML does not know; "" for
// any other word.
func truthOf(word string) string {
	switch strings.ToLower(word) {
	case "true", "yes", "on", "y":
		return "true"
	case "false", "no", "off", "n":
		return "false"
	}
	return ""
}

// truthSlip words a key that takes true or false and was given another word.
func truthSlip(line string) (what, remedy string, found bool) {
	m := wordValue.FindStringSubmatch(line)
	if m == nil || !slices.Contains(truthKeys, m[1]) || m[2] == "true" || m[2] == "false" {
		return "", "", false
	}
	remedy = fmt.Sprintf("write %s = true or %s = false, in small letters", m[1], m[1])
	if meant := truthOf(m[2]); meant != "" {
		remedy = fmt.Sprintf("write %s = %s, in small letters", m[1], meant)
	}
	return say(m[1]) + " takes true or false, without quotes", remedy, true
}

// syntaxFault reports what the parser could not read, in a builder's words.
func (w *walker) syntaxFault(offset int, message string) {
	line := w.line(offset)
	text := string(w.src[w.starts[line]:w.end(line)])
	given := shorten(strings.TrimSpace(strings.ToValidUTF8(text, "?")))
	at := w.place(offset)
	for _, told := range []func(string) (string, string, bool){truthSlip, keySlip, signSlip, commaSlip, unitSlip, scriptSlip} {
		if what, remedy, found := told(text); found {
			w.faults.Add(at, what, given, remedy)
			return
		}
	}
	for _, s := range slips {
		if strings.Contains(message, s.message) && regexp.MustCompile(s.line).MatchString(text) {
			remedy := s.remedy
			if m := wordValue.FindStringSubmatch(text); m != nil && s.what == needsQuotes {
				remedy = fmt.Sprintf("write %s = %q", m[1], shorten(m[2]))
			} else {
				remedy += w.cutOff(line)
			}
			w.faults.Add(at, s.what, given, remedy)
			return
		}
	}
}

// cutOff adds to a remedy where the fault stands in a last line without an end.
func (w *walker) cutOff(line int) string {
	if line < len(w.starts)-1 || w.src[len(w.src)-1] == '\n' {
		return ""
	}
	return "; or copy the file anew, if it was cut off here"
}

// shorten keeps what is quoted in a message to a readable length.
func shorten(s string) string {
	const most = 60
	if r := []rune(s); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return s
}
