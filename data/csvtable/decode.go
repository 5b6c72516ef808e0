package csvtable

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"scalepair/data/fault"
)

// mostBytes bounds a table: ten thousand rows of a hundred letters take a
// quarter of it (judgement). A larger file is another file, and is not read.
const mostBytes = 4 << 20

const saveAsCSV = `save the sheet as "CSV UTF-8", with commas`

// decode reads the whole input as text. It takes a byte order mark off, and
// refuses what is not UTF-8.
func decode(in io.Reader, file string, faults *fault.List) (string, bool) {
	at := fault.Place{Input: file}
	raw, err := readAll(io.LimitReader(in, mostBytes+1), lengthOf(in))
	if err != nil {
		faults.Add(at, "cannot be read: "+err.Error(), "", "copy the file anew, or look whether another program holds it")
		return "", false
	}
	raw = bytes.TrimPrefix(raw, []byte("\xef\xbb\xbf"))
	switch {
	case len(raw) > mostBytes:
		faults.Add(at, fmt.Sprintf("the file is larger than %d MB, which no table of this kind is", mostBytes>>20), "", "name the right file, or keep the rows that belong here")
		return "", false
	case !utf8.Valid(raw) || bytes.IndexByte(raw, 0) >= 0:
		faults.Add(at, "the file is not UTF-8 text", "", saveAsCSV)
		return "", false
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
