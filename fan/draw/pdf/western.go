package pdf

import "strings"

// high are the characters that Windows code page 1252 puts at 0x80 to 0x9F, in
// order; a blank stands where it has none. From 0xA0 on it agrees with Unicode.
const high = "€ ‚ƒ„…†‡ˆ‰Š‹Œ Ž  ‘’“”•–—˜™š›œ žŸ"

// spelt gives signs of the trade and letters of European alphabets that the code
// page lacks by the nearest that it has.
var spelt = strings.NewReplacer(strings.Fields(`♯ # ♭ b ♮ n − - ‐ - ‑ - ‒ - ― — ′ ' ″ " ⁄ / ≤ <= ≥ >= ≈ ~ ≠ != ⌀ Ø → -> ← <- √ sqrt Ω Ohm
⅓ 1/3 ⅔ 2/3 ⅛ 1/8 ⅜ 3/8 ⅝ 5/8 ⅞ 7/8
Ā A ā a Ă A ă a Ą A ą a Ć C ć c Č C č c Ď D ď d Đ D đ d Ē E ē e Ė E ė e Ę E ę e Ě E ě e Ğ G ğ g Ģ G ģ g Ī I ī i Į I į i İ I ı i
Ķ K ķ k Ļ L ļ l Ľ L ľ l Ł L ł l Ń N ń n Ņ N ņ n Ň N ň n Ō O ō o Ő Ö ő ö Ŕ R ŕ r Ř R ř r Ś S ś s Ş S ş s Ș S ș s Ţ T ţ t Ț T ț t Ť T ť t
Ū U ū u Ů U ů u Ű Ü ű ü Ų U ų u Ź Z ź z Ż Z ż z
Α A Β V Γ G Δ D Ε E Ζ Z Η I Θ Th Ι I Κ K Λ L Μ M Ν N Ξ X Ο O Π P Ρ R Σ S Τ T Υ Y Φ F Χ Ch Ψ Ps
α a β v γ g δ d ε e ζ z η i θ th ι i κ k λ l μ µ ν n ξ x ο o π p ρ r σ s ς s τ t υ y φ f χ ch ψ ps ω o
ά á έ é ή í ί í ό ó ύ ý ώ ó Ά Á Έ É Ή Í Ί Í Ό Ó Ύ Ý Ώ Ó
А A Б B В V Г G Д D Е E Ё Yo Ж Zh З Z И I Й Y К K Л L М M Н N О O П P Р R С S Т T У U Ф F Х Kh Ц Ts Ч Ch Ш Sh Щ Shch Ъ " Ы Y Ь ' Э E Ю Yu Я Ya
а a б b в v г g д d е e ё yo ж zh з z и i й y к k л l м m н n о o п p р r с s т t у u ф f х kh ц ts ч ch ш sh щ shch ъ " ы y ь ' э e ю yu я ya
Є Ye є ye І I і i Ї Yi ї yi Ґ G ґ g`)...)

// western gives s in Windows code page 1252, the encoding of the PDF's face.
// Accents that stand alone are left out, and what has no spelling becomes a
// raised dot, which says that something stood there.
func western(s string) string {
	var b strings.Builder
	for _, r := range spelt.Replace(s) {
		switch {
		case r >= ' ' && r < 0x7F, r >= 0xA0 && r <= 0xFF:
			b.WriteByte(byte(r))
		case strings.ContainsRune(high, r):
			b.WriteByte(byte(0x80 + len([]rune(high[:strings.IndexRune(high, r)]))))
		case r >= 0x300 && r <= 0x36F: // combining accents
		default:
			b.WriteByte('\xB7')
		}
	}
	return b.String()
}
