// Package notext says what a file is that was handed in where a table or a
// build file belongs, so that a builder who picked the wrong one in a folder
// is told which.
package notext

import "bytes"

// looked is how much of a file is searched for what it is.
const looked = 4096

// marks are the first bytes of the kinds of file that a builder has beside the
// right one.
var marks = []struct{ begins, kind string }{
	{"%PDF", "a PDF"},
	{"{\\rtf", "a document of a word processor"},
	{"\xd0\xcf\x11\xe0", "a spreadsheet or document of an office program"},
	{"\x89PNG", "a picture"},
	{"\xff\xd8\xff", "a picture"},
	{"GIF8", "a picture"},
	{"\x7fELF", "a program"},
	{"MZ\x90", "a program"},
	{"\x1f\x8b", "a packed file"},
}

// packed are what the files inside a packed one tell of it.
var packed = []struct{ holds, kind string }{
	{"xl/", "a spreadsheet"},
	{"opendocument.spreadsheet", "a spreadsheet"},
	{"word/", "a document of a word processor"},
	{"opendocument.text", "a document of a word processor"},
}

// Kind names a file that is no plain text of the reader's own kind: "a
// spreadsheet", "a web page"; "" for text that may be what it should.
func Kind(raw []byte) string {
	head := bytes.TrimLeft(bytes.TrimPrefix(raw, []byte("\xef\xbb\xbf")), " \t\r\n")
	for _, m := range marks {
		if bytes.HasPrefix(head, []byte(m.begins)) {
			return m.kind
		}
	}
	lower := bytes.ToLower(head[:min(len(head), 16)])
	switch {
	case bytes.HasPrefix(head, []byte("PK\x03\x04")):
		return packedKind(head[:min(len(head), looked)])
	case bytes.HasPrefix(lower, []byte("<!doctype html")), bytes.HasPrefix(lower, []byte("<html")):
		return "a web page"
	case bytes.HasPrefix(head, []byte("<?xml")):
		return "XML"
	case jsonLike(head):
		return "JSON"
	}
	return ""
}

func packedKind(head []byte) string {
	for _, p := range packed {
		if bytes.Contains(head, []byte(p.holds)) {
			return p.kind
		}
	}
	return "a packed file"
}

// jsonLike tells whether a text begins as JSON does: with a brace, or with a
// bracket and a brace behind it.
func jsonLike(head []byte) bool {
	if rest, list := bytes.CutPrefix(head, []byte("[")); list {
		return bytes.HasPrefix(bytes.TrimLeft(rest, " \t\r\n"), []byte("{"))
	}
	return bytes.HasPrefix(head, []byte("{"))
}

// UTF16 tells whether raw is text of two bytes a character, and whether it says
// so by a byte order mark.
func UTF16(raw []byte) (is, marked bool) {
	if bytes.HasPrefix(raw, []byte("\xff\xfe")) || bytes.HasPrefix(raw, []byte("\xfe\xff")) {
		return true, true
	}
	noughts := bytes.Count(raw, []byte{0})
	return noughts*3 > len(raw) && noughts < len(raw) && printable(bytes.ReplaceAll(raw, []byte{0}, nil)), false
}

// Damaged gives the offset of the first byte of nought in a file that holds text
// and such bytes or nothing but them, as a power cut leaves it; false for other
// files.
func Damaged(raw []byte) (offset int, found bool) {
	offset = bytes.IndexByte(raw, 0)
	if offset < 0 {
		return offset, false
	}
	rest := bytes.ReplaceAll(raw, []byte{0}, nil)
	return offset, len(rest) == 0 || printable(rest)
}

// printable tells whether raw has no control characters but blanks and line
// ends, in any character set of one byte.
func printable(raw []byte) bool {
	for _, b := range raw {
		if b < ' ' && b != '\t' && b != '\n' && b != '\r' || b == 0x7f {
			return false
		}
	}
	return len(raw) > 0
}

// Binary tells whether raw holds bytes that no text has.
func Binary(raw []byte) bool { return bytes.IndexByte(raw, 0) >= 0 }
