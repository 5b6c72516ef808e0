package csvtable

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"scalepair/data/fault"
	"scalepair/data/notext"
)

// mostBytes bounds a table: ten thousand rows of a hundred letters take a
// quarter of it (judgement). A larger file is another file, and is not read.
const mostBytes = 4 << 20

const saveAsCSV = `save the sheet as "CSV UTF-8", with commas`

// decode reads the whole input as text. It takes a byte order mark off, reads
// Windows-1252 where the bytes are no UTF-8, and refuses what is no text.
func decode(in io.Reader, file string, faults *fault.List) (string, bool) {
	at := fault.Place{Input: file}
	raw, err := readAll(io.LimitReader(in, mostBytes+1), lengthOf(in))
	if err != nil {
		faults.Add(at, "cannot be read: "+err.Error(), "", "copy the file anew, or look whether another program holds it")
		return "", false
	}
	if f := noText(raw, at); f != nil {
		*faults = append(*faults, *f)
		return "", false
	}
	raw = bytes.TrimPrefix(raw, []byte("\xef\xbb\xbf"))
	if !utf8.Valid(raw) {
		raw = fromWindows1252(raw)
	}
	text := strings.ReplaceAll(string(raw), "\r\n", "\n")
	return strings.ReplaceAll(text, "\r", "\n"), true
}

// lengthOf is how many bytes are left in a reader that knows, else 0.
func lengthOf(in io.Reader) int {
	if r, ok := in.(interface{ Len() int }); ok {
		return r.Len()
	}
	return 0
}

// readAll reads to the end, with room for as many bytes as are expected.
func readAll(in io.Reader, expected int) ([]byte, error) {
	var buf bytes.Buffer
	buf.Grow(min(expected, mostBytes) + bytes.MinRead)
	_, err := buf.ReadFrom(in)
	return buf.Bytes(), err
}

// noText gives the fault of a file that is no table of plain text; nil for one
// that may be.
func noText(raw []byte, at fault.Place) *fault.Fault {
	refuse := func(what, remedy string) *fault.Fault { return &fault.Fault{Place: at, What: what, Remedy: remedy} }
	utf16, marked := notext.UTF16(raw)
	kind := notext.Kind(raw)
	damage, damaged := notext.Damaged(raw)
	switch {
	case len(raw) > mostBytes:
		return refuse(fmt.Sprintf("the file is larger than %d MB, which no table of this kind is", mostBytes>>20), "name the right file, or keep the rows that belong here")
	case utf16 && marked:
		return refuse("the file is in UTF-16", saveAsCSV)
	case kind != "":
		return refuse("the file is "+kind+", not a table in plain text", saveAsCSV)
	case utf16:
		return refuse("the file is in UTF-16 without a byte order mark", saveAsCSV)
	case damaged:
		before := raw[:damage]
		at.Line, at.Column = bytes.Count(before, []byte{'\n'})+1, utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:])+1
		return refuse("bytes of nought stand here: the file is damaged", "take an earlier copy, or save the sheet anew")
	case notext.Binary(raw):
		return refuse("the file is no text", saveAsCSV)
	}
	return nil
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
