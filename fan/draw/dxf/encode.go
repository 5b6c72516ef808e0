package dxf

import (
	"fmt"
	"strings"
)

// symbols are the characters that the format has a code of its own for, and signs
// that its stroked fonts lack, in plain ones.
var symbols = map[rune]string{
	'°': "%%d", '±': "%%p", 'Ø': "%%c", '⌀': "%%c",
	'“': `"`, '”': `"`, '„': `"`, '‘': "'", '’': "'", '–': "-", '—': "-", '−': "-", '…': "...",
	'·': "-", '♯': "#", '♭': "b", '′': "'", '″': `"`, '×': "x",
}

// encode gives s in ASCII: the degree, plus-minus and diameter signs by their
// own codes, other characters as \U+ and four
// hexadecimal digits. Doubled percent signs, backslashes and
// carets that stand in s are kept from being read as codes. Characters beyond
// the first 65,536 have no code in this format and become U+FFFD.
func encode(s string) string {
	var b strings.Builder
	previous := rune(0)
	for _, r := range s {
		code, known := symbols[r]
		switch {
		case r == '%' && previous == '%':
			b.WriteString(" %")
		case known:
			// A percent sign before a code would make three of them.
			if previous == '%' && code[0] == '%' {
				b.WriteByte(' ')
			}
			b.WriteString(code)
		case r == '\\' || r == '^' || r > '~' && r <= 0xFFFF:
			fmt.Fprintf(&b, `\U+%04X`, r)
		case r > 0xFFFF:
			b.WriteString(`\U+FFFD`)
		case r >= ' ':
			b.WriteRune(r)
		}
		previous = r
	}
	return b.String()
}
