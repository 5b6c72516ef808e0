package tile

import (
	"strings"

	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/data/unit"
)

// Paper is what the printer takes. Width is the shorter side of a cut sheet or
// the width of a roll; Length is the longer side, 0 for a roll.
type Paper struct {
	Name          string
	Width, Length unit.Length
}

// Papers gives the cut sheets that are known by name: A4 and A3 (ISO 216), and
// Letter, Legal and Tabloid in whole parts of an inch (Letter and Tabloid: ANSI
// Y14.1, sizes A and B; Legal: common practice, no source).
func Papers() []Paper {
	const mm, in = unit.Millimetre, unit.Inch
	return []Paper{
		{"A4", 210 * mm, 297 * mm}, {"A3", 297 * mm, 420 * mm},
		{"Letter", 8.5 * in, 11 * in}, {"Legal", 8.5 * in, 14 * in}, {"Tabloid", 11 * in, 17 * in},
	}
}

// PaperNames gives the names of Papers.
func PaperNames() []string {
	var out []string
	for _, p := range Papers() {
		out = append(out, p.Name)
	}
	return out
}

// Roll is paper of that width and any length, on a plotter.
func Roll(width unit.Length) Paper { return Paper{Name: "roll", Width: width} }

// IsRoll reports whether the paper is a roll.
func (p Paper) IsRoll() bool { return p.Length == 0 }

// UnmarshalText reads the name of one of Papers, or "roll" with a width from 150
// to 5000 mm, such as "roll 610 mm" or "roll 24 in".
func (p *Paper) UnmarshalText(text []byte) error {
	words := strings.TrimSpace(string(text))
	if rest, ok := strings.CutPrefix(strings.ToLower(words), "roll"); ok {
		width, err := unit.ParseLength(strings.TrimSpace(rest))
		if err != nil {
			return fault.Fault{What: "a roll needs its width with a unit", Given: words, Remedy: "write it as `roll 610 mm`"}
		}
		if !(width >= 150*unit.Millimetre && width <= 5000*unit.Millimetre) {
			return fault.Fault{What: "the paper's width is out of range", Given: words, Remedy: "it goes from 150 to 5000 mm"}
		}
		*p = Roll(width)
		return nil
	}
	var i int
	if err := suggest.Word(&i, words, append(PaperNames(), "roll 610 mm")); err != nil {
		return err
	}
	*p = Papers()[i]
	return nil
}
