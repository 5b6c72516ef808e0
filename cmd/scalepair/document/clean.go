package document

import (
	"strings"
	"unicode"
)

// Clean makes text fit for one line of print or of a page: line ends, tabs and
// other control characters become blanks, invisible format characters
// (direction marks, joiners) and what no page may hold go, and runs of blanks
// become one. A label out of a file can so not steer a terminal.
func Clean(s string) string {
	s = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r) || unicode.IsControl(r):
			return ' '
		case unicode.Is(unicode.Cf, r) || r == '\ufffe' || r == '\uffff':
			return -1
		}
		return r
	}, strings.ToValidUTF8(s, "\ufffd"))
	return strings.Join(strings.Fields(s), " ")
}
