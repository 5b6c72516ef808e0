package fan_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
)

func TestSpecsThatMakeNoInstrument(t *testing.T) {
	widths := func(s *fan.Spec, nut, other, at float64) {
		s.NutSpread, s.SaddleSpread = 0, 0
		s.NutWidth, s.OtherWidth, s.WidthAtFret = unit.MM(nut), unit.MM(other), at
	}
	listed := func(mm ...float64) fan.Spacing { return fan.Spacing{Rule: fan.Listed, Steps: millimetres(mm...)} }
	const pair = `("bass 690.0 mm, treble 650.0 mm"); `
	for name, c := range map[string]struct {
		change func(*fan.Spec)
		want   string
	}{
		"reverse unasked": {func(s *fan.Spec) { s.Bass = unit.MM(640) }, `scales.bass: the bass is shorter than the treble ("bass 640.0 mm, treble 650.0 mm"); exchange them, or ask for it with reverse_fan = true`},
		"margins wider than the board": {func(s *fan.Spec) { widths(s, 45, 57, 24); s.EdgeMargin = unit.MM(25) },
			`neck.nut_width: the board's width leaves too little between the edge margins ("45.0 mm"); the margins take 50.0 mm of it`},
		"gaps without gauges": {func(s *fan.Spec) { s.NutSpacing.Rule = fan.EqualGaps }, `strings.gauges: equal gaps need the diameter of every string ("0 diameters"); give 6 gauges, or take equal centres`},
		"list too short":      {func(s *fan.Spec) { s.SaddleSpacing = listed(54) }, `neck.saddle_spacing: 1 steps are listed, 6 strings have 5; give the steps from centre to centre, bass side first`},
		"steps of another spread": {func(s *fan.Spec) { s.NutSpacing = listed(7, 7, 7, 7, 7) },
			`neck.nut_spacing: the steps add up to 35.00 mm, the string spread is 38.00 mm; give steps that add up to the spread, or string_spread_at_nut = "35.00 mm"; both are square to the centreline`},
		"nut like the nut": {func(s *fan.Spec) { s.NutSpacing.Rule = fan.LikeNut }, `neck.nut_spacing: the nut cannot be spaced like the nut; this rule is for the saddles`},
		"zero fret on the board's end": {func(s *fan.Spec) { s.ZeroFret, s.NutShelf = true, unit.MM(2.9) },
			`neck.zero_fret: a zero fret's slot wants board behind it, at least 3.0 mm (judgement), and the nut shelf is 2.9 mm; write nut_shelf = "8 mm" under [neck], room for the slot and for the nut that spaces the strings`},
		"strings too thick": {func(s *fan.Spec) {
			s.NutSpread, s.NutSpacing.Rule, s.Diameters = unit.MM(7), fan.EqualGaps, millimetres(1, 1, 2, 2, 2, 2)
		}, `neck.nut_spacing: the strings are thicker than the spread holds ` + pair + `take equal centres, or a greater spread`},
		"too steep": {func(s *fan.Spec) { s.Bass = unit.MM(900) }, `scales.bass: the nut or saddle line slants more than 60 degrees ("bass 900.0 mm, treble 650.0 mm"); bring the lengths closer together, or move the neutral fret`},
		"body end under the strings' ends": {func(s *fan.Spec) { s.Frets, s.BodyEndOverhang = 36, unit.MM(100) },
			`neck.frets: the end of the board reaches the saddle line ` + pair + `take fewer frets or less body end overhang`},
		"frets crossing": {func(s *fan.Spec) {
			*s = fan.Spec{Bass: unit.MM(600), Treble: unit.MM(450), AllowReverse: true, Strings: 4, Neck: fan.Neck{Frets: 24, Neutral: fan.Neutral{Fret: 1},
				NutSpread: unit.MM(8), SaddleSpread: unit.MM(300), EdgeMargin: unit.MM(50)}}
		}, `neck.edge_margin: two fret lines meet on the board ("bass 600.0 mm, treble 450.0 mm"); take smaller margins, or bring the lengths closer together`},
		"strings meeting": {func(s *fan.Spec) { widths(s, 60, 13, 12) },
			`neck.string_spread_at_saddle: the outer strings meet between nut and saddle ` + pair + `take a greater spread there`},
	} {
		t.Run(name, func(t *testing.T) {
			spec := sixStrings()
			c.change(&spec)
			l, err := fan.New(spec)
			require.Nil(t, l)
			require.EqualError(t, err, c.want)
		})
	}
}

// What is wrong with the neck comes at once, whatever the pair.
func TestEveryFaultAtOnce(t *testing.T) {
	spec := sixStrings()
	spec.NutSpacing.Rule, spec.SaddleSpacing.Rule, spec.ZeroFret = fan.LikeNut, fan.EqualGaps, true
	_, err := fan.NewBase(spec)
	for _, key := range []string{"neck.nut_spacing: ", "strings.gauges: ", "neck.zero_fret: "} {
		require.ErrorContains(t, err, key)
	}
}

// The least and the most that is taken.
func TestBoundsAreTaken(t *testing.T) {
	for _, c := range [][2]int{{2, 1}, {24, 36}} {
		spec := sixStrings()
		spec.Strings, spec.Frets = c[0], c[1]
		spec.Neutral.Fret = 0
		spec.NutSpread, spec.SaddleSpread = unit.MM(150), unit.MM(180)
		spec.ZeroFret, spec.NutShelf = true, fan.LeastZeroShelf
		mustLayout(t, spec)
	}
}
