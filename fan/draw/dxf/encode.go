package dxf

import (
	"fmt"
	"strings"
)

// symbols are the format's own codes for characters that have one, and plain
// characters for signs that its stroked fonts lack.
var symbols = strings.NewReplacer(
	"%°", "% %%d", "%±", "% %%p", "%Ø", "% %%c", "%⌀", "% %%c",
	"°", "%%d", "±", "%%p", "Ø", "%%c", "⌀", "%%c",
	"“", `"`, "”", `"`, "„", `"`, "″", `"`, "‘", "'", "’", "'", "′", "'",
	"–", "-", "—", "-", "−", "-", "·", "-", "…", "...", "♯", "#", "♭", "b", "×", "x",
)

// encode gives s in ASCII: signs by their codes, other characters, and those that
// begin a code, as \U+ and four hexadecimal digits; doubled percent signs, which
// begin a code too, are set apart. Characters beyond the first 65,536 have no code
// in this format and become U+FFFD.
func encode(s string) string {
	for range 2 { // the first leaves pairs where four stood
		s = strings.ReplaceAll(s, "%%", "% %")
	}
	var b strings.Builder
	for _, r := range symbols.Replace(s) {
		switch {
		case r == '\\' || r == '^' || r > '~' && r <= 0xFFFF:
			fmt.Fprintf(&b, `\U+%04X`, r)
		case r > 0xFFFF:
			b.WriteString(`\U+FFFD`)
		case r >= ' ':
			b.WriteRune(r)
		}
	}
	return b.String()
}
