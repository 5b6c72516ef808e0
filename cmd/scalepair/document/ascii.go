package document

import "strings"

// ascii writes what our own texts use beyond ASCII; combinations first.
var ascii = strings.NewReplacer(
	"±", "+/-", "×", "x", "−", "-", "–", "-", "—", "-", "·", ".", "≤", "<=", "≥", ">=", "≈", "~",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "°", " deg", "²", "^2", "³", "^3", "π", "pi", "√", "sqrt",
	"’", "'", "‘", "'", "“", `"`, "”", `"`, "…", "...", "→", "->", "─", "-", "\u00a0", " ",
)

// ToASCII writes text for consoles that show no more than ASCII: ± as +/-, ½ as
// 1/2. A letter without a likeness becomes "?".
func ToASCII(s string) string {
	return strings.Map(func(r rune) rune {
		if r >= 0x80 {
			return '?'
		}
		return r
	}, ascii.Replace(s))
}
