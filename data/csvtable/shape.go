package csvtable

import (
	"bytes"
	"io"
	"strings"
	"unicode/utf8"

	"scalepair/data/fault"
)

// decode reads the whole input as text. It takes a byte order mark off, reads
// Windows-1252 where the bytes are no UTF-8, and refuses what is no text.
func decode(in io.Reader, file string, faults *fault.List) (string, bool) {
	raw, err := io.ReadAll(in)
	if err != nil {
		faults.Add(fault.Place{Input: file}, "cannot be read: "+err.Error(), "", "")
		return "", false
	}
	if what := noText(raw); what != "" {
		faults.Add(fault.Place{Input: file}, what, "", `save the sheet as "CSV UTF-8", with commas`)
		return "", false
	}
	raw = bytes.TrimPrefix(raw, []byte("\xef\xbb\xbf"))
	if !utf8.Valid(raw) {
		raw = fromWindows1252(raw)
	}
	text := strings.ReplaceAll(string(raw), "\r\n", "\n")
	return strings.ReplaceAll(text, "\r", "\n"), true
}

// noText names the kind of a file that is no plain text; "" for text.
func noText(raw []byte) string {
	switch {
	case bytes.HasPrefix(raw, []byte("\xff\xfe")), bytes.HasPrefix(raw, []byte("\xfe\xff")):
		return "the file is in UTF-16"
	case bytes.HasPrefix(raw, []byte("PK\x03\x04")), bytes.HasPrefix(raw, []byte("\xd0\xcf\x11\xe0")):
		return "the file is a spreadsheet, not text"
	case bytes.IndexByte(raw, 0) >= 0 && bytes.Count(raw, []byte{0})*3 > len(raw):
		return "the file is in UTF-16 without a byte order mark"
	case bytes.IndexByte(raw, 0) >= 0:
		return "the file is no text"
	}
	return ""
}

// windows1252 holds the characters of the bytes 0x80 to 0x9f; the bytes above
// stand for the same numbers in Unicode. The five unused bytes become U+FFFD.
var windows1252 = [32]rune{
	'€', '\uFFFD', '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', '\uFFFD', 'Ž', '\uFFFD',
	'\uFFFD', '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', '\uFFFD', 'ž', 'Ÿ',
}

func fromWindows1252(raw []byte) []byte {
	out := make([]byte, 0, len(raw)+len(raw)/8)
	for _, b := range raw {
		r := rune(b)
		if b >= 0x80 && b < 0xa0 {
			r = windows1252[b-0x80]
		}
		out = utf8.AppendRune(out, r)
	}
	return out
}

// wrongSeparator notices a heading row parted by semicolons or tabs.
func wrongSeparator(line string) *fault.Fault {
	if strings.Contains(line, ",") {
		return nil
	}
	for _, sign := range [][2]string{{";", "semicolons"}, {"\t", "tabs"}} {
		if strings.Contains(line, sign[0]) {
			return &fault.Fault{
				What:   "the columns are parted by " + sign[1],
				Remedy: "part them by commas, and write decimals with a point",
			}
		}
	}
	return nil
}

// cut tells whether two neighbouring cells make a number cut by a decimal
// comma, and gives the number with a point.
func cut(left, right cell) (string, bool) {
	touching := right.column == left.column+utf8.RuneCountInString(left.text)+1
	if touching && digits(strings.TrimLeft(left.text, "+-")) && digits(right.text) {
		return left.text + "." + right.text, true
	}
	return "", false
}

func digits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }
