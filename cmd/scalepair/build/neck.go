package build

import (
	"fmt"
	"math"

	"scalepair/data/unit"
)

// Neutral is the fret that stands square to the centreline.
type Neutral struct {
	// Fret may lie between two frets: 7.5. It is 0 to the last fret.
	Fret float64
	// Bridge puts the square line at the bridge; Fret is then 0.
	Bridge bool
}

// Within is the neutral fret of a board of so many frets: its last where the fret
// lies beyond.
func (n Neutral) Within(frets int) Neutral {
	n.Fret = min(n.Fret, float64(frets))
	return n
}

// SpacingRule says how strings are spread along the nut or the saddles.
type SpacingRule int

// The spacing rules.
const (
	// EqualCentres: equal steps from centre to centre.
	EqualCentres SpacingRule = iota
	// EqualGaps: equal gaps between the strings' sides.
	EqualGaps
	// ListedSteps: as listed.
	ListedSteps
	// LikeNut, at the saddles only: the fractions that hold at the nut.
	LikeNut
)

// Spacing of the strings along the nut line or the saddle line.
type Spacing struct {
	Rule SpacingRule
	// Fractions, with ListedSteps only: 0 at string 1, rising to 1 at the last.
	// The file lists the steps from centre to centre, bass side first; only
	// their proportions count.
	Fractions []float64
	// Sum is that of the steps as listed: within 2 % of the span where one is
	// given.
	Sum unit.Length
}

// Widths are board widths given in place of spans.
type Widths struct {
	// Nut is the board's width at the nut, Other at fret AtFret, each square to
	// the centreline where that line crosses it.
	Nut, Other unit.Length
	// AtFret is 1 to the last fret; the last unless given.
	AtFret float64
}

// Neck is the neck and its board.
type Neck struct {
	// Frets: 1 to 36.
	Frets int
	// Neutral is 7 unless given, and the last fret where that is lower.
	Neutral Neutral
	// ZeroFret puts a fret on the nut line.
	ZeroFret bool
	// NutSpread and SaddleSpread are between the outer strings' ends, square to the
	// centreline. Either NutSpread and SaddleSpread are given, or Widths is not nil.
	NutSpread, SaddleSpread unit.Length
	Widths                  *Widths
	// BassMargin and TrebleMargin are from the outer string lines to the
	// board's edges: 3.5 mm unless given.
	BassMargin, TrebleMargin unit.Length
	// NutSpacing and SaddleSpacing are EqualCentres unless given.
	NutSpacing, SaddleSpacing Spacing
	// NutSlotClearance is what a nut slot is wider than its string: 0.05 mm
	// unless given (judgement).
	NutSlotClearance unit.Length
	// NutShelf is the board left behind the nut line for the nut to sit on.
	NutShelf unit.Length
	// BodyEndOverhang is the board beyond the last fret: 6 mm unless given.
	BodyEndOverhang unit.Length
	// BodyEndSquare cuts the body end square; else it runs along the last fret.
	BodyEndSquare bool
	// SawAllowance is on every side of the blank: 2 mm unless given.
	SawAllowance unit.Length
	// RadiusNut and RadiusLast are the board's radii where nut line and last
	// fret cross the centreline; both 0 for a flat board, alike for a single
	// radius.
	RadiusNut, RadiusLast unit.Length
}

// Scale lengths that are taken: from the shortest small instrument to twice
// an upright bass (judgement; it keeps 25 mm and 25 m out).
const shortestScale, longestScale unit.Length = 200 * unit.Millimetre, 2000 * unit.Millimetre

// defaultNeutral stands square unless given (judgement; 7 lies near the middle
// of the played board).
const defaultNeutral = 7

// readNeck reads [neck] but for its frets, which were read before.
func readNeck(s *section, strings, frets int) Neck {
	n := Neck{Frets: frets, BodyEndOverhang: unit.MM(6), SawAllowance: unit.MM(2), NutSlotClearance: unit.MM(0.05)}
	n.Neutral = Neutral{Fret: min(defaultNeutral, float64(n.Frets))}
	s.neutral("neutral_fret", &n.Neutral, n.Frets)
	s.truth("zero_fret", &n.ZeroFret)
	readSpans(s, &n)
	readMargins(s, &n)
	readSpacing(s, "nut_spacing", &n.NutSpacing, strings, "equal centres", "equal gaps")
	readSpacing(s, "saddle_spacing", &n.SaddleSpacing, strings, "equal centres", "equal gaps", "like the nut")
	if n.Widths == nil {
		stepsMakeSpan(s, "nut_spacing", "string_spread_at_nut", n.NutSpacing, n.NutSpread)
		stepsMakeSpan(s, "saddle_spacing", "string_spread_at_saddle", n.SaddleSpacing, n.SaddleSpread)
	}
	s.length("nut_slot_clearance", &n.NutSlotClearance, 0, unit.MM(1))
	s.length("nut_shelf", &n.NutShelf, 0, unit.MM(30))
	s.length("body_end_overhang", &n.BodyEndOverhang, 0, unit.MM(200))
	bodyEnd := 0
	choice(s, "body_end", &bodyEnd, "along the last fret", "square")
	n.BodyEndSquare = bodyEnd == 1
	s.length("saw_allowance", &n.SawAllowance, 0, unit.MM(50))
	readRadius(s, &n)
	return n
}

// neutral reads a neutral fret: a number from 0 to the last fret, or "bridge".
func (s *section) neutral(key string, into *Neutral, frets int) {
	n := s.find(key)
	switch {
	case n == nil:
	case n.kind == kindText && wordIndex(n.text, []string{"bridge"}) == 0:
		*into = Neutral{Bridge: true}
	case n.kind == kindNumber:
		if x, err := parseNumber(n.text); err == nil && x > float64(frets) && x <= 36 {
			s.wrong(n, fmt.Sprintf("%s is off the board, which has %d frets", say(key), frets), neutralRemedy(frets))
		} else if x, ok := s.inRange(n, key, 0, float64(frets)); ok {
			*into = Neutral{Fret: x}
		}
	default:
		s.wrong(n, say(key)+" must be a number or \"bridge\"", neutralRemedy(frets))
	}
}

func neutralRemedy(frets int) string {
	return fmt.Sprintf("a number from 0 to %d without quotes, or \"bridge\", will do", frets)
}

// readSpans reads the two spans or, in their place, two board widths.
func readSpans(s *section, n *Neck) {
	w := Widths{AtFret: float64(n.Frets)}
	s.length("string_spread_at_nut", &n.NutSpread, unit.MM(5), unit.MM(300))
	s.length("string_spread_at_saddle", &n.SaddleSpread, unit.MM(5), unit.MM(400))
	s.length("nut_width", &w.Nut, unit.MM(10), unit.MM(300))
	s.length("other_width", &w.Other, unit.MM(10), unit.MM(400))
	s.number("other_width_at_fret", &w.AtFret, 1, float64(n.Frets))
	spans := s.first("string_spread_at_nut", "string_spread_at_saddle")
	widths := s.first("nut_width", "other_width", "other_width_at_fret")
	switch {
	case spans != nil && widths != nil:
		s.faults.Add(s.place(widths.key), fmt.Sprintf("spans (line %d) and board widths are both given", spans.key.line), "",
			"give string_spread_at_nut and string_spread_at_saddle, or nut_width and other_width, since one follows from the other")
	case widths != nil:
		s.require("nut_width", `write nut_width = "43 mm", say, beside other_width`)
		s.require("other_width", `write other_width = "57 mm", say, beside nut_width`)
		n.Widths = &w
	case spans != nil:
		s.require("string_spread_at_nut", `write string_spread_at_nut = "36 mm", say, beside string_spread_at_saddle`)
		s.require("string_spread_at_saddle", `write string_spread_at_saddle = "52 mm", say, beside string_spread_at_nut`)
	default:
		s.missing("the string spread is missing in "+s.name,
			`give string_spread_at_nut and string_spread_at_saddle between the outer strings, such as "43 mm" and "62 mm", or nut_width and other_width of the board`,
			"string_spread_at_nut", "string_spread_at_saddle", "nut_width", "other_width")
	}
}

// first gives the first of the keys that the file states, nil for none.
func (s *section) first(keys ...string) *node {
	for _, key := range keys {
		if s.has(key) {
			return s.find(key)
		}
	}
	return nil
}

func readMargins(s *section, n *Neck) {
	both := unit.MM(3.5)
	s.length("edge_margin", &both, 0, unit.MM(50))
	n.BassMargin, n.TrebleMargin = both, both
	s.length("bass_margin", &n.BassMargin, 0, unit.MM(50))
	s.length("treble_margin", &n.TrebleMargin, 0, unit.MM(50))
	if s.has("edge_margin") && s.has("bass_margin") && s.has("treble_margin") {
		s.faults.Add(s.place(s.find("edge_margin").key), "edge_margin does nothing beside bass_margin and treble_margin", "", "leave it out")
	}
	if n.Widths != nil && n.BassMargin+n.TrebleMargin >= min(n.Widths.Nut, n.Widths.Other) && n.Widths.Nut > 0 && n.Widths.Other > 0 {
		s.faults.Add(s.place(s.find("nut_width").at), fmt.Sprintf("the edge margins, %s and %s, leave no room on the board", s.written("nut_width", n.BassMargin), s.written("nut_width", n.TrebleMargin)),
			"", "give smaller margins or a wider board")
	}
}

// readSpacing reads a rule's name or a list of steps from centre to centre,
// bass side first.
func readSpacing(s *section, key string, into *Spacing, strings int, words ...string) {
	n := s.find(key)
	if n == nil {
		return
	}
	if n.kind != kindList {
		rule := 0
		choice(s, key, &rule, words...)
		into.Rule = [...]SpacingRule{EqualCentres, EqualGaps, LikeNut}[rule]
		return
	}
	var steps []unit.Length
	for _, item := range s.entries(key) {
		if step, ok := quantityOf(s, item, key, unit.MM(1), unit.MM(100), unit.ParseLength); ok {
			steps = append(steps, step)
		}
	}
	if len(steps) < len(n.items) || len(steps) == 0 {
		return
	}
	if strings > 0 && len(steps) != strings-1 {
		s.wrong(n, fmt.Sprintf("%s lists %d steps, %d strings have %d", say(key), len(steps), strings, strings-1),
			"give the steps from centre to centre, bass side first")
		return
	}
	*into = Spacing{Rule: ListedSteps, Fractions: fractions(steps)}
	for _, step := range steps {
		into.Sum += step
	}
}

// stepsMakeSpan reports listed steps that add up to another span than the one
// given: stretched to it, none of them would be what the builder wrote. 2 % is
// allowed for steps measured along a slanted line and for rounding (judgement).
func stepsMakeSpan(s *section, spacingKey, spanKey string, spacing Spacing, span unit.Length) {
	const allowed = 0.02
	if spacing.Rule != ListedSteps || span <= 0 || math.Abs(float64(spacing.Sum-span)) <= allowed*float64(span) {
		return
	}
	s.wrong(s.find(spacingKey), fmt.Sprintf("the steps of %s add up to %.2f mm, the %s is %.2f mm", say(spacingKey), spacing.Sum.MM(), say(spanKey), span.MM()),
		fmt.Sprintf("give steps that add up to the span, or %s = \"%.2f mm\"; both are square to the centreline", spanKey, spacing.Sum.MM()))
}

// fractions turns steps, bass side first, into fractions from string 1 on. The
// last is exactly 1.
func fractions(steps []unit.Length) []float64 {
	out := make([]float64, len(steps)+1)
	sum := 0.0
	for i := range steps {
		sum += float64(steps[len(steps)-1-i])
		out[i+1] = sum
	}
	for i := range out {
		out[i] /= sum
	}
	return out
}

// readRadius reads one radius for all of the board or two for a compound one.
func readRadius(s *section, n *Neck) {
	lo, hi := unit.MM(50), unit.MM(10000)
	s.length("radius", &n.RadiusNut, lo, hi)
	n.RadiusLast = n.RadiusNut
	s.length("radius_nut", &n.RadiusNut, lo, hi)
	s.length("radius_last", &n.RadiusLast, lo, hi)
	compound := s.first("radius_nut", "radius_last")
	switch {
	case compound == nil:
	case s.has("radius"):
		s.faults.Add(s.place(compound.key), "radius and a compound radius are both given", "", "keep radius, or radius_nut with radius_last")
	default:
		s.require("radius_nut", "a compound radius needs both ends")
		s.require("radius_last", "a compound radius needs both ends")
	}
}
