package show

import (
	"strings"
	"sync"
)

// ToASCII writes text with the 95 printable ASCII characters, for consoles
// that cannot show more: ± as +/-, ½ as 1/2, ° as deg, letters without their
// accents. A character without a likeness becomes "?". Line ends stay.
func ToASCII(s string) string {
	if isASCII(s) {
		return s
	}
	var b strings.Builder
	var before rune
	for _, r := range s {
		b.WriteString(plain(r, before))
		before = r
	}
	return b.String()
}

func isASCII(s string) bool {
	for i := range len(s) {
		if s[i] >= 0x80 {
			return false
		}
	}
	return true
}

// plain gives the likeness of r. After a figure, fractions and the degree
// sign are set apart by a blank: "25½" is 25 1/2, not 251/2.
func plain(r, before rune) string {
	if r < 0x80 {
		return string(r)
	}
	word, ok := likeness()[r]
	switch {
	case ok && before >= '0' && before <= '9' && strings.ContainsRune(apart, r):
		return " " + word
	case ok:
		return word
	case r >= 0x300 && r <= 0x36f: // combining accents
		return ""
	case r >= 0x2500 && r <= 0x257f: // box drawing
		return "+"
	case r >= 0xff01 && r <= 0xff5e: // full-width forms
		return string(r - 0xfee0)
	}
	return "?"
}

// apart are the signs that are set apart from a figure.
const apart = "½¼¾⅛⅜⅝⅞⅓⅔°"

// likeness is built when first used: most consoles never need it.
var likeness = sync.OnceValue(func() map[rune]string {
	return spell(map[string]string{
		"±": "+/-", "×": "x", "÷": "/", "−": "-", "·": ".", "≤": "<=", "≥": ">=", "≈": "~", "≠": "!=",
		"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3", "°": "deg",
		"√": "sqrt", "∞": "inf", "‰": "o/oo", "∆": "delta", "∑": "sum", "∝": "~", "⁻": "-",
		"²": "^2", "³": "^3", "¹": "^1", "⁴": "^4", "⁰": "^0",
		"–—―‐‑‒": "-", "‘’‚′": "'", "“”„″": `"`, "«": "<<", "»": ">>", "‹": "<", "›": ">",
		"…": "...", "•●◦▪■": "*", "\u00a0": " ", "¡": "!", "¿": "?", "¦": "|", "´": "'", "¨": `"`, "¸": ",", "¯": "-",
		"→": "->", "←": "<-", "↔": "<->", "↑": "^", "↓": "v", "⇒": "=>", "✓✔": "ok", "✗✘": "x",
		"☐": "[ ]", "☑☒": "[x]", "△▲": "^", "▽▼": "v", "◆◇○": "o",
		"♯": "#", "♭": "b", "♮": "nat", "⌀": "dia ", "№": "No.", "§": "sec. ", "¶": "par. ", "†‡": "+",
		"€": "EUR", "£": "GBP", "¥": "JPY", "¢": "c", "©": "(c)", "®": "(R)", "™": "(TM)",
		"─═━┄┈": "-", "│║┃": "|",
		"ÀÁÂÃÄÅĀĂĄ": "A", "àáâãäåāăąª": "a", "Æ": "AE", "æ": "ae", "ÇĆĈĊČ": "C", "çćĉċč": "c",
		"ÐĎĐ": "D", "ðďđ": "d", "ÈÉÊËĒĔĖĘĚ": "E", "èéêëēĕėęě": "e", "ĜĞĠĢ": "G", "ĝğġģ": "g",
		"ĤĦ": "H", "ĥħ": "h", "ÌÍÎÏĨĪĬĮİ": "I", "ìíîïĩīĭįı": "i", "Ĵ": "J", "ĵ": "j", "Ķ": "K", "ķĸ": "k",
		"ĹĻĽĿŁ": "L", "ĺļľŀł": "l", "ÑŃŅŇŊ": "N", "ñńņňŉŋ": "n", "ÒÓÔÕÖØŌŎŐ": "O", "òóôõöøōŏőº": "o",
		"Œ": "OE", "œ": "oe", "ŔŖŘ": "R", "ŕŗř": "r", "ŚŜŞŠȘ": "S", "śŝşšſș": "s", "ß": "ss",
		"ŢŤŦȚ": "T", "ţťŧț": "t", "Þ": "Th", "þ": "th", "ÙÚÛÜŨŪŬŮŰŲ": "U", "ùúûüũūŭůűų": "u",
		"Ŵ": "W", "ŵ": "w", "ÝŶŸ": "Y", "ýÿŷ": "y", "ŹŻŽ": "Z", "źżž": "z",
		"α": "alpha", "β": "beta", "γ": "gamma", "δ": "delta", "ε": "epsilon", "ζ": "zeta", "η": "eta",
		"θ": "theta", "κ": "kappa", "λ": "lambda", "µμ": "u", "ν": "nu", "ξ": "xi", "π": "pi", "ρ": "rho",
		"σς": "sigma", "τ": "tau", "φ": "phi", "χ": "chi", "ψ": "psi", "ω": "omega",
		"Δ": "Delta", "Σ": "Sigma", "Φ": "Phi", "Ω": "Ohm",
	})
})

// spell gives each letter of a key the key's word.
func spell(groups map[string]string) map[rune]string {
	out := map[rune]string{}
	for letters, word := range groups {
		for _, r := range letters {
			out[r] = word
		}
	}
	return out
}
