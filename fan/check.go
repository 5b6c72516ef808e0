package fan

import (
	"fmt"
	"math"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// What a single value may be stands in the tags of [Neck], [FretWire], [Blank]
// and [Line], and is held to by whoever reads it. Here is what values must be to
// one another.

// The bounds of what is taken for an instrument (judgement).
const (
	shortest, longest unit.Length = 200 * unit.Millimetre, 2000 * unit.Millimetre
	leastSpread       unit.Length = 1 * unit.Millimetre
	maxTan                        = 1.7320508075688772 // of 60 degrees
)

// keyed is the place of a build file's key.
func keyed(key string) fault.Place { return fault.Place{Input: key} }

// checkNeck finds every fault of a spec that does not depend on the pair.
func checkNeck(s Spec) (f fault.List) {
	if s.Widths() {
		bass, treble := s.Margins()
		for i, width := range []unit.Length{s.NutWidth, s.OtherWidth} {
			if width-bass-treble < leastSpread {
				f.Add(keyed([]string{"neck.nut_width", "neck.other_width"}[i]), "the board's width leaves too little between the edge margins",
					millimetres(width), "the margins take "+millimetres(bass+treble)+" of it")
			}
		}
	}
	f = append(f, checkSpacing(s, "nut_spacing", "string_spread_at_nut", s.NutSpacing, s.NutSpread)...)
	f = append(f, checkSpacing(s, "saddle_spacing", "string_spread_at_saddle", s.SaddleSpacing, s.SaddleSpread)...)
	if s.ZeroFret && s.NutShelf < LeastZeroShelf {
		f.Add(keyed("neck.zero_fret"), fmt.Sprintf("a zero fret's slot wants board behind it, at least %s (judgement), and the nut shelf is %s",
			millimetres(LeastZeroShelf), millimetres(s.NutShelf)), "", `write nut_shelf = "8 mm" under [neck], room for the slot and for the nut that spaces the strings`)
	}
	return f
}

// checkSpacing holds the rule of one end to the strings and to the string spread.
func checkSpacing(s Spec, key, spreadKey string, spacing Spacing, spread unit.Length) (f fault.List) {
	sum := spacing.sum()
	switch {
	case spacing.Rule == EqualGaps && len(s.Diameters) != s.Strings:
		f.Add(keyed("strings.gauges"), "equal gaps need the diameter of every string", fmt.Sprintf("%d diameters", len(s.Diameters)),
			fmt.Sprintf("give %d gauges, or take equal centres", s.Strings))
	case spacing.Rule == LikeNut && key == "nut_spacing":
		f.Add(keyed("neck."+key), "the nut cannot be spaced like the nut", "", "this rule is for the saddles")
	case spacing.Rule != Listed:
	case len(spacing.Steps) != s.Strings-1:
		f.Add(keyed("neck."+key), fmt.Sprintf("%d steps are listed, %d strings have %d", len(spacing.Steps), s.Strings, s.Strings-1), "",
			"give the steps from centre to centre, bass side first")
	case spread > 0 && abs(sum-spread) > stepsMiss*spread:
		f.Add(keyed("neck."+key), fmt.Sprintf("the steps add up to %.2f mm, the string spread is %.2f mm", sum.MM(), spread.MM()), "",
			fmt.Sprintf("give steps that add up to the spread, or %s = \"%.2f mm\"; both are square to the centreline", spreadKey, sum.MM()))
	}
	return f
}

// millimetres prints a length for a message.
func millimetres(l unit.Length) string { return fmt.Sprintf("%.1f mm", plain(l.MM())) }

func abs[Q ~float64](x Q) Q { return Q(math.Abs(float64(x))) }

// plain turns -0 into 0.
func plain[Q ~float64](v Q) Q {
	if v == 0 {
		return 0
	}
	return v
}
