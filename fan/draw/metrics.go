package draw

// asciiWidths are the advance widths of the characters from blank to tilde in
// thousandths of the type's size, of the sans serif face that package pdf embeds;
// other sans serif faces are as wide or a little narrower. Source: the face's own
// table; a test compares the two.
var asciiWidths = [...]int{
	278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 584, 584, 316, 584, 316, 278,
	556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 306, 306, 584, 584, 584, 556,
	1015, 667, 667, 722, 722, 667, 611, 778, 722, 399, 496, 667, 556, 833, 722, 778,
	667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
	333, 556, 556, 500, 556, 556, 278, 556, 556, 247, 253, 500, 268, 833, 556, 556,
	556, 556, 333, 500, 283, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
}

// em is the advance width of r over the type's size. Characters beyond ASCII
// are counted as one whole size, the widest that a western letter or an
// ideograph takes.
func em(r rune) float64 {
	if i := int(r) - ' '; i >= 0 && i < len(asciiWidths) {
		return float64(asciiWidths[i]) / 1000
	}
	return 1
}

// ems is the length of s over the type's size.
func ems(s string) float64 {
	sum := 0.0
	for _, r := range s {
		sum += em(r)
	}
	return sum
}
