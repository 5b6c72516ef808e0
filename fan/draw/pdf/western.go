package pdf

import (
	"strings"
	"sync"
)

// high are the characters that Windows code page 1252 puts at 0x80 to 0x9F, in
// order; a blank stands where it has none. From 0xA0 on it agrees with Unicode.
const high = "€ ‚ƒ„…†‡ˆ‰Š‹Œ Ž  ‘’“”•–—˜™š›œ žŸ"

// spellings give the nearest western letters for signs of the trade and for the
// letters of European alphabets: keys and values in turn, separated by blanks.
const spellings = `♯ # ♭ b ♮ n − - ‐ - ‑ - ‒ - ― — ′ ' ″ " ⁄ / ∕ / × × ≤ <= ≥ >= ≈ ~ ≠ != ⌀ Ø → -> ← <- √ sqrt ∞ inf
Ω Ohm ⅓ 1/3 ⅔ 2/3 ⅛ 1/8 ⅜ 3/8 ⅝ 5/8 ⅞ 7/8 ⅕ 1/5 ⅙ 1/6 № No
Ā A ā a Ă A ă a Ą A ą a Ć C ć c Ĉ C ĉ c Ċ C ċ c Č C č c Ď D ď d Đ D đ d Ē E ē e Ĕ E ĕ e Ė E ė e Ę E ę e Ě E ě e
Ĝ G ĝ g Ğ G ğ g Ġ G ġ g Ģ G ģ g Ĥ H ĥ h Ħ H ħ h Ĩ I ĩ i Ī I ī i Ĭ I ĭ i Į I į i İ I ı i Ĳ IJ ĳ ij Ĵ J ĵ j Ķ K ķ k ĸ k
Ĺ L ĺ l Ļ L ļ l Ľ L ľ l Ŀ L ŀ l Ł L ł l Ń N ń n Ņ N ņ n Ň N ň n ŉ n Ŋ Ng ŋ ng Ō O ō o Ŏ O ŏ o Ő Ö ő ö Ŕ R ŕ r Ŗ R ŗ r Ř R ř r
Ś S ś s Ŝ S ŝ s Ş S ş s Ș S ș s Ţ T ţ t Ț T ț t Ť T ť t Ŧ T ŧ t Ũ U ũ u Ū U ū u Ŭ U ŭ u Ů U ů u Ű Ü ű ü Ų U ų u Ŵ W ŵ w Ŷ Y ŷ y
Ź Z ź z Ż Z ż z ẞ SS
Α A Β V Γ G Δ D Ε E Ζ Z Η I Θ Th Ι I Κ K Λ L Μ M Ν N Ξ X Ο O Π P Ρ R Σ S Τ T Υ Y Φ F Χ Ch Ψ Ps
α a β v γ g δ d ε e ζ z η i θ th ι i κ k λ l μ µ ν n ξ x ο o π p ρ r σ s ς s τ t υ y φ f χ ch ψ ps ω o
ά á έ é ή í ί í ό ó ύ ý ώ ó Ά Á Έ É Ή Í Ί Í Ό Ó Ύ Ý Ώ Ó
А A Б B В V Г G Д D Е E Ё Yo Ж Zh З Z И I Й Y К K Л L М M Н N О O П P Р R С S Т T У U Ф F Х Kh Ц Ts Ч Ch Ш Sh Щ Shch Ъ " Ы Y Ь ' Э E Ю Yu Я Ya
а a б b в v г g д d е e ё yo ж zh з z и i й y к k л l м m н n о o п p р r с s т t у u ф f х kh ц ts ч ch ш sh щ shch ъ " ы y ь ' э e ю yu я ya
Є Ye є ye І I і i Ї Yi ї yi Ґ G ґ g`

// unknown stands for a character that has no spelling here: a raised dot says
// that something stood there.
const unknown = '\xB7'

// bytesOf gives, for every character that has one, its bytes in code page 1252.
var bytesOf = sync.OnceValue(table)

func table() map[rune]string {
	t := map[rune]string{}
	for r := rune(' '); r < 0x7F; r++ {
		t[r] = string(byte(r))
	}
	for r := rune(0xA0); r <= 0xFF; r++ {
		t[r] = string([]byte{byte(r)})
	}
	for i, r := range []rune(high) {
		if r != ' ' {
			t[r] = string([]byte{byte(0x80 + i)})
		}
	}
	words := strings.Fields(spellings)
	for i := 0; i+1 < len(words); i += 2 {
		var spelt strings.Builder
		for _, r := range words[i+1] {
			spelt.WriteString(t[r])
		}
		if key := []rune(words[i])[0]; t[key] == "" {
			t[key] = spelt.String()
		}
	}
	return t
}

// western gives s in Windows code page 1252, the encoding of the PDF's face.
// Letters beyond it are spelt with its own, accents that stand alone are left
// out, and what has no spelling becomes a raised dot.
func western(s string) string {
	var b strings.Builder
	bytesOf := bytesOf()
	for _, r := range s {
		switch known, ok := bytesOf[r]; {
		case ok:
			b.WriteString(known)
		case r >= 0x300 && r <= 0x36F: // combining accents
		default:
			b.WriteByte(unknown)
		}
	}
	return b.String()
}
