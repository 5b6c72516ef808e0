package dxf

import (
	"fmt"
	"strings"
)

// symbol gives the format's own code for a character that has one, and plain
// characters for a sign that its stroked fonts lack; "" for any other.
func symbol(r rune) string {
	switch r {
	case '°':
		return "%%d"
	case '±':
		return "%%p"
	case 'Ø', '⌀':
		return "%%c"
	case '“', '”', '„', '″':
		return `"`
	case '‘', '’', '′':
		return "'"
	case '–', '—', '−', '·':
		return "-"
	case '…':
		return "..."
	case '♯':
		return "#"
	case '♭':
		return "b"
	case '×':
		return "x"
	}
	return ""
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
		code := symbol(r)
		switch {
		case r == '%' && previous == '%':
			b.WriteString(" %")
		case code != "":
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
