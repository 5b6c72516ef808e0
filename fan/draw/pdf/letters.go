package pdf

import (
	"strings"
	"unicode"
)

// has are the characters that the face has and a builder may write: Latin with
// European accents, Greek, Cyrillic and the signs of the trade. A test looks for
// every one of them.
var has = &unicode.RangeTable{R16: []unicode.Range16{
	{' ', '~', 1}, {0xA0, 0x17F, 1}, {0x218, 0x21B, 1}, {0x384, 0x386, 1}, {0x388, 0x38A, 1}, {0x38C, 0x38C, 1}, {0x38E, 0x3A1, 1},
	{0x3A3, 0x3CE, 1}, {0x400, 0x45F, 1}, {0x490, 0x491, 1}, {0x2013, 0x2014, 1}, {0x2018, 0x201A, 1}, {0x201C, 0x201E, 1},
	{'…', '…', 1}, {'′', '″', 1}, {'€', '€', 1}, {'⅛', '⅞', 1}, {'←', '→', 1}, {'−', '−', 1}, {'√', '√', 1}, {'≈', '≈', 1}, {'≠', '≠', 1}, {'≤', '≥', 1},
}}

// nearest spells signs of the trade that the face lacks.
var nearest = strings.NewReplacer(strings.Fields(`♯ # ♭ b ♮ n ‐ - ‑ - ‒ - ― — ⁄ / ⌀ Ø ⅓ 1/3 ⅔ 2/3 Ω Ω`)...)

// spelt gives s in characters that the face has. Accents that stand alone are left
// out, and what has no spelling becomes a raised dot, which says that something
// stood there.
func spelt(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.Is(has, r):
			return r
		case unicode.Is(unicode.Mn, r):
			return -1
		}
		return '·'
	}, nearest.Replace(s))
}
