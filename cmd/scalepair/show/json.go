package show

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"
)

// jsonDigits is how many significant digits a number of JSON has at most: far
// more than a builder can measure, and few enough that the same build prints
// the same bytes on every processor. Some add a product in one step where
// others round it first, and the last of a float64's seventeen digits tells.
const jsonDigits = 9

// JSON writes v indented by two blanks, without HTML escaping, with a line
// end. Control and invisible characters in texts are escaped, so that a terminal
// shows them. Numbers that are no whole ones are rounded to jsonDigits.
func JSON(w io.Writer, v any) error {
	var buf bytes.Buffer
	e := json.NewEncoder(&buf)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(v); err != nil {
		return err
	}
	_, err := w.Write(escapeJSON(jsonToken.ReplaceAllFunc(buf.Bytes(), roundToken)))
	return err
}

// jsonToken matches a string, which is passed over, or a number.
var jsonToken = regexp.MustCompile(`"(?:[^"\\]|\\.)*"|-?[0-9][0-9.eE+-]*`)

// roundToken rounds a number with a point or an exponent, as encoding/json
// writes floats, and leaves anything else as it is.
func roundToken(token []byte) []byte {
	if token[0] == '"' || !bytes.ContainsAny(token, ".e") {
		return token
	}
	x, err := strconv.ParseFloat(string(token), 64)
	if err != nil {
		panic("show: JSON has the number " + string(token))
	}
	x, _ = strconv.ParseFloat(strconv.FormatFloat(x, 'g', jsonDigits, 64), 64)
	short, err := json.Marshal(x)
	if err != nil {
		panic("show: JSON has the number " + string(token))
	}
	return short
}

// escapeJSON escapes what the encoder leaves: such characters stand in texts
// only, but for the line ends.
func escapeJSON(text []byte) []byte {
	obeyed := func(r rune) bool { return r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r)) }
	if !bytes.ContainsFunc(text, obeyed) {
		return text
	}
	var out []byte
	for _, r := range string(text) {
		if !obeyed(r) {
			out = utf8.AppendRune(out, r)
			continue
		}
		for _, unit := range utf16.Encode([]rune{r}) {
			out = fmt.Appendf(out, `\u%04x`, unit)
		}
	}
	return out
}
