package build

import (
	"bytes"
	"fmt"
	"regexp"
	"unicode/utf8"

	"scalepair/data/fault"
)

var byteOrderMark = []byte("\xEF\xBB\xBF")

// mostBytes bounds a build file, which has some ten thousand bytes (judgement).
// A larger one is another file, and is not read.
const mostBytes = 1 << 20

const initWrites = "'scalepair init' writes a build file to begin with"

// plainText strips a byte order mark and refuses what is no build file at all.
func plainText(src []byte, file string) ([]byte, error) {
	at := fault.Place{Input: file}
	refuse := func(what, remedy string) ([]byte, error) {
		return nil, fault.List{{Place: at, What: what, Remedy: remedy}}
	}
	text := bytes.TrimPrefix(src, byteOrderMark)
	switch {
	case len(src) > mostBytes:
		return refuse(fmt.Sprintf("the file is larger than %d MB, which no build file is", mostBytes>>20), "name the right file")
	case len(bytes.TrimSpace(text)) == 0:
		return refuse("the build file is empty", "'scalepair init' writes one to begin with")
	case !utf8.Valid(text) || bytes.IndexByte(text, 0) >= 0:
		at = newLineIndex(file, text).place(firstInvalid(text))
		return refuse("the file is not UTF-8 text from here on", "save it as plain text in UTF-8; "+initWrites)
	}
	if other := otherText(text); other != "" {
		return refuse("the file is "+other+", not a build file", "name the build file; "+initWrites)
	}
	return text, nil
}

func firstInvalid(text []byte) int {
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRune(text[i:])
		if r == 0 || r == utf8.RuneError && size == 1 {
			return i
		}
		i += size
	}
	return len(text)
}

// ownLine tells whether a trimmed line is one of a build file: a header, or a
// key of one word with its value.
func ownLine(line []byte) bool {
	if line[0] == '[' && bytes.IndexByte(line, ']') > 0 {
		return true
	}
	const blanks = " \t\r\f"
	key, _, found := bytes.Cut(line, []byte("="))
	key = bytes.TrimRight(key, blanks)
	return found && len(key) > 0 && !bytes.ContainsAny(key, blanks)
}

// The lines of other kinds of text.
var (
	yamlLine  = regexp.MustCompile(`^\s*[\w-]+:(\s|$)`)
	tableLine = regexp.MustCompile(`^[^=\[]*([,;\t][^=\[]*){2,}$`)
)

// otherText names text of another kind, in which no line is one of a build
// file; "" where there is one.
func otherText(text []byte) string {
	yaml, table, lines := 0, 0, 0
	for line := range bytes.Lines(text) {
		line = bytes.TrimSpace(line)
		switch {
		case len(line) == 0 || line[0] == '#':
			continue
		case ownLine(line):
			return ""
		case yamlLine.Match(line):
			yaml++
		case tableLine.Match(line):
			table++
		}
		lines++
	}
	switch {
	case lines > 0 && table == lines:
		return "a table"
	case yaml > 1 && yaml*2 > lines:
		return "YAML"
	}
	return ""
}
