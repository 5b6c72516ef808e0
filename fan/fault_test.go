package fan_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
)

func TestBadSpecs(t *testing.T) {
	widths := func(s *fan.Spec, nut, other, at float64) {
		s.NutSpread, s.SaddleSpread = 0, 0
		s.NutWidth, s.OtherWidth, s.WidthAtFret = unit.MM(nut), unit.MM(other), at
	}
	for name, c := range map[string]struct {
		change func(*fan.Spec)
		want   string
	}{
		"bass of 25 mm":                        {func(s *fan.Spec) { s.Bass = unit.MM(25.5) }, `scales.bass: the bass length is out of range ("25.5 mm"); from 200 to 2000 mm`},
		"treble of 3 m":                        {func(s *fan.Spec) { s.Treble = unit.MM(3000) }, `scales.treble: the treble length is out of range ("3000 mm"); from 200 to 2000 mm`},
		"bass no number":                       {func(s *fan.Spec) { s.Bass = unit.MM(math.NaN()) }, `scales.bass: the bass length is not a number; give a plain number`},
		"treble endless":                       {func(s *fan.Spec) { s.Treble = unit.MM(math.Inf(1)) }, `scales.treble: the treble length is not a number; give a plain number`},
		"reverse unasked":                      {func(s *fan.Spec) { s.Bass = unit.MM(640) }, `scales.bass: the bass is shorter than the treble ("bass 640 mm, treble 650 mm"); exchange them, or ask for it with reverse_fan = true`},
		"spread of 0":                          {func(s *fan.Spec) { s.NutSpread = 0 }, `neck.string_spread_at_nut: the string spread at the nut is out of range ("0 mm"); from 1 to 2000 mm`},
		"spread of -0":                         {func(s *fan.Spec) { s.NutSpread = unit.MM(math.Copysign(0, -1)) }, `neck.string_spread_at_nut: the string spread at the nut is out of range ("0 mm"); from 1 to 2000 mm`},
		"string spread at the saddle negative": {func(s *fan.Spec) { s.SaddleSpread = unit.MM(-54) }, `neck.string_spread_at_saddle: the string spread at the saddle is out of range ("-54 mm"); from 1 to 2000 mm`},
		"spread of no width":                   {func(s *fan.Spec) { s.NutSpread = unit.MM(1e-7) }, `neck.string_spread_at_nut: the string spread at the nut is out of range ("1e-07 mm"); from 1 to 2000 mm`},
		"spread without end":                   {func(s *fan.Spec) { s.NutSpread = unit.MM(1e308) }, `neck.string_spread_at_nut: the string spread at the nut is out of range ("1e+308 mm"); from 1 to 2000 mm`},
		"lengths with a tail":                  {func(s *fan.Spec) { s.Bass, s.Treble = unit.MM(600), unit.MM(657.2249999999999) }, `scales.bass: the bass is shorter than the treble ("bass 600 mm, treble 657.225 mm"); exchange them, or ask for it with reverse_fan = true`},
		"one string":                           {func(s *fan.Spec) { s.Strings = 1 }, `strings.tuning: the number of strings is out of range ("1"); from 2 to 24`},
		"no frets":                             {func(s *fan.Spec) { s.Frets = 0 }, `neck.frets: the number of frets is out of range ("0"); from 1 to 36`},
		"forty frets":                          {func(s *fan.Spec) { s.Frets = 40 }, `neck.frets: the number of frets is out of range ("40"); from 1 to 36`},
		"neutral 24 of 22":                     {func(s *fan.Spec) { s.Frets, s.Neutral.Fret = 22, 24 }, `neck.neutral_fret: the neutral fret is off the board ("24"); from 0 (the nut) to 22 (the last fret), or "bridge"`},
		"neutral below 0":                      {func(s *fan.Spec) { s.Neutral.Fret = -1 }, `neck.neutral_fret: the neutral fret is off the board ("-1"); from 0 (the nut) to 24 (the last fret), or "bridge"`},
		"neutral no number":                    {func(s *fan.Spec) { s.Neutral.Fret = math.NaN() }, `neck.neutral_fret: the neutral fret is not a number; give a plain number`},
		"margin negative":                      {func(s *fan.Spec) { s.EdgeMargin = unit.MM(-1) }, `neck.edge_margin: the edge margin is out of range ("-1 mm"); from 0 to 2000 mm`},
		"one margin negative":                  {func(s *fan.Spec) { s.TrebleMargin = new(unit.MM(-1)) }, `neck.treble_margin: the treble margin is out of range ("-1 mm"); from 0 to 2000 mm`},
		"nut shelf":                            {func(s *fan.Spec) { s.NutShelf = unit.MM(-3) }, `neck.nut_shelf: the nut shelf is out of range ("-3 mm"); from 0 to 2000 mm`},
		"body_end":                             {func(s *fan.Spec) { s.BodyEndOverhang = unit.MM(-200) }, `neck.body_end_overhang: the body end overhang is out of range ("-200 mm"); from 0 to 2000 mm`},
		"saw":                                  {func(s *fan.Spec) { s.SawAllowance = unit.MM(-2) }, `neck.saw_allowance: the saw allowance is out of range ("-2 mm"); from 0 to 2000 mm`},
		"spreads and widths": {func(s *fan.Spec) { widths(s, 45, 57, 24); s.NutSpread = unit.MM(38) },
			`neck.string_spread_at_nut: string spreads and board widths are both given; leave one pair out: the other follows from it`},
		"margins wider than the board": {func(s *fan.Spec) { widths(s, 45, 57, 24); s.EdgeMargin = unit.MM(25) },
			`neck.nut_width: the board's width at the nut leaves too little between the edge margins ("45 mm"); the margins take 50 mm of it`},
		"width past the last fret": {func(s *fan.Spec) { widths(s, 45, 57, 25) }, `neck.other_width_at_fret: the fret of the other width is off the board ("25"); from 1 to 24`},
		"no width":                 {func(s *fan.Spec) { widths(s, 45, 0, 12) }, `neck.other_width: the board's other width is out of range ("0 mm"); from 1 to 2000 mm`},
		"width no number":          {func(s *fan.Spec) { widths(s, 45, 57, math.NaN()) }, `neck.other_width_at_fret: the fret of the other width is off the board ("NaN"); from 1 to 24`},
		"gaps without gauges":      {func(s *fan.Spec) { s.NutSpacing.Rule = fan.EqualGaps }, `strings.gauges: equal gaps need the diameter of every string ("0 diameters"); give 6 gauges, or take equal centres`},
		"a string of no width": {func(s *fan.Spec) { s.NutSpacing.Rule, s.Diameters = fan.EqualGaps, millimetres(0.3, 0.4, 0.5, 0, 1, 2) },
			`strings.gauges: the diameter of string 4 is out of range ("0 mm"); over 0 and up to 10 mm`},
		"a string of 25 mm": {func(s *fan.Spec) {
			s.NutSpacing.Rule, s.Diameters = fan.EqualGaps, millimetres(0.3, 0.4, 0.5, 0.7, 1, 25.4)
		},
			`strings.gauges: the diameter of string 6 is out of range ("25.4 mm"); over 0 and up to 10 mm`},
		"list too short": {func(s *fan.Spec) { s.SaddleSpacing = fan.Spacing{Rule: fan.Listed, Steps: millimetres(54)} },
			`neck.saddle_spacing: 1 steps are listed, 6 strings have 5; give the steps from centre to centre, bass side first`},
		"strings crossing": {func(s *fan.Spec) {
			s.NutSpacing = fan.Spacing{Rule: fan.Listed, Steps: millimetres(10, 10, -2, 10, 10)}
		}, `neck.nut_spacing: two strings cross or lie on each other ("-2 mm"); every step must be greater than 0`},
		"a step no number": {func(s *fan.Spec) {
			s.NutSpacing = fan.Spacing{Rule: fan.Listed, Steps: millimetres(10, 10, math.NaN(), 10, 10)}
		}, `neck.nut_spacing: two strings cross or lie on each other ("NaN mm"); every step must be greater than 0`},
		"steps of another spread": {func(s *fan.Spec) {
			s.NutSpacing = fan.Spacing{Rule: fan.Listed, Steps: millimetres(7, 7, 7, 7, 7)}
		}, `neck.nut_spacing: the steps add up to 35.00 mm, the string spread is 38.00 mm; give steps that add up to the spread, or string_spread_at_nut = "35.00 mm"; both are square to the centreline`},
		"nut like the nut": {func(s *fan.Spec) { s.NutSpacing.Rule = fan.LikeNut }, `neck.nut_spacing: the nut cannot be spaced like the nut; this rule is for the saddles`},
		"unknown rule":     {func(s *fan.Spec) { s.SaddleSpacing.Rule = 9 }, `neck.saddle_spacing: the spacing rule is unknown ("9"); equal centres, equal gaps, a list, or (saddles) like the nut`},
		"strings too thick": {func(s *fan.Spec) {
			s.NutSpread, s.NutSpacing.Rule, s.Diameters = unit.MM(7), fan.EqualGaps, millimetres(1, 1, 2, 2, 2, 2)
		}, `neck.nut_spacing: the strings are thicker than the spread holds ("bass 690 mm, treble 650 mm"); take equal centres, or a greater spread`},
		"too steep": {func(s *fan.Spec) { s.Bass = unit.MM(900) }, `scales.bass: the nut or saddle line slants more than 60 degrees ("bass 900 mm, treble 650 mm"); bring the lengths closer together, or move the neutral fret`},
		"body end under the strings' ends": {func(s *fan.Spec) { s.Frets, s.BodyEndOverhang = 36, unit.MM(100) },
			`neck.frets: the end of the board reaches the saddle line ("bass 690 mm, treble 650 mm"); take fewer frets or less body end overhang`},
		"frets crossing": {func(s *fan.Spec) {
			*s = fan.Spec{Bass: unit.MM(600), Treble: unit.MM(450), AllowReverse: true, Strings: 4, Neck: fan.Neck{Frets: 24, Neutral: fan.Neutral{Fret: 1},
				NutSpread: unit.MM(8), SaddleSpread: unit.MM(300), EdgeMargin: unit.MM(50)}}
		}, `neck.edge_margin: two fret lines meet on the board ("bass 600 mm, treble 450 mm"); take smaller margins, or bring the lengths closer together`},
		"strings meeting": {func(s *fan.Spec) { s.Frets = 24; widths(s, 60, 13, 12) },
			`neck.string_spread_at_saddle: the outer strings meet between nut and saddle ("bass 690 mm, treble 650 mm"); take a greater spread there`},
	} {
		t.Run(name, func(t *testing.T) {
			spec := sixStrings()
			c.change(&spec)
			l, err := fan.New(spec)
			require.Nil(t, l)
			require.EqualError(t, err, c.want)
			frame, err := fan.NewFrame(spec)
			require.EqualError(t, err, c.want)
			require.Zero(t, frame)
			require.Zero(t, frame.Strings())
		})
	}
}

// The least and the most that is taken.
func TestBoundsAreTaken(t *testing.T) {
	for _, c := range [][2]int{{2, 1}, {24, 36}} {
		spec := sixStrings()
		spec.Strings, spec.Frets = c[0], c[1]
		spec.Neutral.Fret = 0
		spec.NutSpread, spec.SaddleSpread = unit.MM(150), unit.MM(180)
		_, err := fan.New(spec)
		require.NoError(t, err)
	}
}

func TestSpacingRulesHaveNames(t *testing.T) {
	names := map[string]bool{}
	for rule := fan.EqualCentres; rule <= fan.Listed+1; rule++ {
		names[rule.String()] = true
	}
	require.Len(t, names, 5, "four rules and the unknown")
}

func TestEveryFaultAtOnce(t *testing.T) {
	spec := sixStrings()
	spec.Bass, spec.Treble, spec.Frets, spec.Strings = unit.MM(25), unit.MM(-1), 99, 0
	spec.NutSpread, spec.SaddleSpread, spec.BassMargin = 0, unit.MM(math.NaN()), new(unit.MM(-1))
	spec.Neutral.Fret = math.Inf(-1)
	_, err := fan.New(spec)
	var list fault.List
	require.True(t, errors.As(err, &list))
	require.Len(t, list, 8)
	_, err = fan.NewBase(spec)
	require.True(t, errors.As(err, &list))
	require.Len(t, list, 6, "the pair is not read")
}

func TestCheapRouteReasons(t *testing.T) {
	base, err := fan.NewBase(sixStrings())
	require.NoError(t, err)
	for _, c := range []struct {
		bass, treble float64
		want         fan.Reason
	}{
		{690, 650, fan.Fits}, {650, 650, fan.Fits}, {650, 690, fan.ReverseUnasked}, {25, 20, fan.LengthAbsurd},
		{690, math.NaN(), fan.LengthAbsurd}, {math.Inf(1), 650, fan.LengthAbsurd}, {900, 600, fan.TooSteep},
	} {
		f, reason := base.Frame(unit.MM(c.bass), unit.MM(c.treble))
		require.Equal(t, c.want, reason)
		require.Equal(t, reason == fan.Fits, f.Strings() == 6)
	}
	for r := fan.Fits; r <= fan.NotSettled; r++ {
		require.NotEmpty(t, r.String())
	}
	require.Equal(t, "unknown reason", fan.Reason(99).String())
}

// Anything at all goes in; either every fault comes out, or a layout in which
// every number is finite and every fret lies behind the one before it, all
// along its slot.
func TestWildSpecs(t *testing.T) {
	built := 0
	rapid.Check(t, func(t *rapid.T) {
		spec := wildSpec(t)
		l, err := fan.New(spec)
		if err != nil {
			var list fault.List
			require.True(t, errors.As(err, &list))
			for _, f := range list {
				require.NotEmpty(t, f.Place.Input)
				require.False(t, strings.Contains(f.Error(), "NaN") || strings.Contains(f.Error(), "Inf"), f.Error())
			}
			return
		}
		built++
		requireSound(t, l, l.Board(), l.LeastBlank(), l.FaceDots(fan.CommonDots(l.Spec.Frets)), l.SideDots(fan.CommonDots(l.Spec.Frets)))
		for n, fret := range l.Frets[1:] {
			require.Greater(t, fret.Slot.Bass.X.MM(), l.Frets[n].Slot.Bass.X.MM())
			require.Greater(t, fret.Slot.Treble.X.MM(), l.Frets[n].Slot.Treble.X.MM())
			require.Greater(t, fret.Slot.Bass.Y.MM(), fret.Slot.Treble.Y.MM())
		}
		for i := range l.Strings[1:] {
			require.Greater(t, l.Strings[i+1].Nut.Y.MM(), l.Strings[i].Nut.Y.MM())
			require.Greater(t, l.Strings[i+1].Saddle.Y.MM(), l.Strings[i].Saddle.Y.MM())
		}
	})
	require.Positive(t, built, "some of them can be built")
}

func wildSpec(t *rapid.T) fan.Spec {
	s := randomNeck(t)
	if rapid.IntRange(0, 2).Draw(t, "nearly sane") > 0 {
		s.Bass = unit.MM(s.Treble.MM() + rapid.Float64Range(-300, 300).Draw(t, "wild difference"))
		s.NutSpread = unit.MM(rapid.Float64Range(5, 300).Draw(t, "wild string spread at the nut"))
		s.SaddleSpread = unit.MM(rapid.Float64Range(5, 300).Draw(t, "wild string spread at the saddle"))
		s.BassMargin = new(unit.MM(rapid.Float64Range(0, 50).Draw(t, "wild margin")))
		return s
	}
	for _, field := range []*unit.Length{&s.Bass, &s.Treble, &s.NutSpread, &s.SaddleSpread, s.BassMargin,
		s.TrebleMargin, (*unit.Length)(&s.Neutral.Fret), &s.NutShelf, &s.BodyEndOverhang, &s.SawAllowance} {
		if rapid.IntRange(0, 3).Draw(t, "spoil") == 0 {
			*field = rapid.SampledFrom([]unit.Length{unit.Length(math.NaN()), unit.Length(math.Inf(1)), unit.Length(math.Inf(-1)), 0, -1, 1e300, 5e-324}).Draw(t, "spoilt")
		}
	}
	return s
}
