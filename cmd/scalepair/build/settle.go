package build

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"scalepair/data"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/gauges/reading"
)

// checker collects what is wrong between keys.
type checker struct {
	*Build
	faults *fault.List
}

// settle fills in what follows from other keys, turns the lists over strings
// round, and checks what belongs together.
func (b *Build) settle(faults *fault.List) {
	c := checker{b, faults}
	c.tunings()
	if len(*faults) > 0 {
		return // the lists follow the number of strings
	}
	c.rules()
	c.readings()
	c.neck()
	c.pairs()
	c.reference()
	c.feel()
	c.lists()
	c.bench()
	c.perString()
}

// perString settles the lists over strings.
func (c checker) perString() {
	n := c.Strings.Tuning.Strings()
	c.settleAll(&c.Strings, "strings", n, c.faults)
	c.settleAll(&c.Feel, "feel", n, c.faults)
	c.settleAll(&c.Tails, "tails", n, c.faults)
	if c.Chosen != nil {
		c.settleAll(c.Chosen, "chosen", n, c.faults)
	}
	if r := c.Build.Reference; r != nil {
		c.settleAll(r, "reference", r.Tuning.Strings(), c.faults)
	}
	for i := range c.Columns {
		c.settleAll(&c.Columns[i], fmt.Sprintf("compare[%d]", i), n, c.faults)
	}
	c.feelTogether()
	c.oneSet()
}

// oneSet reports two sets where one is meant, and a set beyond the only gauges
// that may be chosen: no output could say which of them counts.
func (c checker) oneSet() {
	given, key := c.Strings.Gauges, "strings.gauges"
	if c.Chosen != nil && c.Chosen.Gauges != nil {
		c.wrongIf(given != nil && !slices.Equal(given, c.Chosen.Gauges), "strings.gauges", fmt.Sprintf("[chosen] has another set (line %d)", c.Place("chosen.gauges").Line), "keep one of the two")
		given, key = c.Chosen.Gauges, "chosen.gauges"
	}
	for i, label := range given {
		if c.Strings.Stock != nil && !slices.ContainsFunc(c.Strings.Stock, func(s string) bool { return reading.Key(s) == reading.Key(label) }) {
			c.faults.Add(c.Place("strings.stock"), fmt.Sprintf("stock: the set (%s) has a gauge that is not listed, on string %d", c.PlaceOfString(key, i+1), i+1), label, "add it, or take another gauge")
		}
	}
}

func (c checker) readings() {
	c.wrongIf(strings.ContainsFunc(c.Readings, unicode.IsControl), "readings", "a backslash in double quotes has a meaning of its own", "put the path between single quotes, or write / for \\")
	c.Readings = strings.ReplaceAll(c.Readings, `\`, "/")
}

func (c checker) neck() {
	k := &c.Neck
	if !c.Given("neck.neutral_fret") {
		k.Neutral.Fret = min(k.Neutral.Fret, float64(k.Frets))
	}
	if k.NutWidth == 0 && k.OtherWidth == 0 {
		const remedy = "give string_spread_at_nut and string_spread_at_saddle between the outer strings, or nut_width and other_width of the board"
		c.need("neck.string_spread_at_nut", remedy)
		c.need("neck.string_spread_at_saddle", remedy)
	}
	c.wrongIf(c.Given("neck.edge_margin") && k.BassMargin != nil && k.TrebleMargin != nil, "neck.edge_margin", "it does nothing beside bass_margin and treble_margin", "leave it out")
	k.Neck.NutSpacing, k.Neck.SaddleSpacing = k.NutSpacing.lines(), k.SaddleSpacing.lines()
}

// mostPairs bounds a search (judgement: still done in seconds).
const mostPairs = 5_000_000

// pairs settles the scale pairs of the build, and what is searched.
func (c checker) pairs() {
	b := c.Build
	if b.Chosen != nil {
		c.pair("chosen", &b.Chosen.Pair, true)
		b.Chosen.Neutral = cmp.Or(b.Chosen.Neutral, &b.Neck.Neutral)
	}
	for i := range b.Columns {
		c.pair(fmt.Sprintf("compare[%d]", i), &b.Columns[i].Pair, false)
	}
	s := b.Scales
	if len(s.Bass) == 0 || len(s.Treble) == 0 {
		return
	}
	if pairs := len(s.Bass) * len(s.Treble); pairs > mostPairs {
		c.wrong("scales.treble", fmt.Sprintf("%d bass and %d treble lengths make %d pairs", len(s.Bass), len(s.Treble), pairs),
			fmt.Sprintf("take larger steps; up to %d pairs are searched", mostPairs))
	}
	slices.Sort(s.Bass)
	slices.Sort(s.Treble)
	c.notReversed("scales", s.Bass[len(s.Bass)-1], s.Treble[0])
}

// pair settles one scale pair: bass and treble, or scale for straight frets.
func (c checker) pair(section string, p *Pair, required bool) {
	if p.Scale > 0 {
		p.Bass, p.Treble = p.Scale, p.Scale
	} else if required && p.Bass == 0 && p.Treble == 0 {
		c.need(section+".scale", `write scale = "648 mm", or bass and treble for a fan`)
	}
	c.notReversed(section, p.Bass, p.Treble)
}

// notReversed reports a bass length shorter than its treble, unless that was
// asked for. A length of 0 is not known.
func (c checker) notReversed(section string, bass, treble unit.Length) {
	c.wrongIf(bass > 0 && bass < treble && !c.Scales.ReverseFan, section+".bass", "the bass is shorter than the treble of "+treble.String(),
		"exchange them, or write reverse_fan = true under [scales] if a reverse fan is wanted")
}

// reference gives the reference instrument what it leaves out.
func (c checker) reference() {
	r := c.Build.Reference
	if r == nil {
		return
	}
	c.pair("reference", &r.Pair, true)
	r.Frets, r.PitchStandard = cmp.Or(r.Frets, c.Neck.Frets), cmp.Or(r.PitchStandard, c.Strings.PitchStandard)
	if r.Neutral == nil {
		neutral := c.Neck.Neutral
		neutral.Fret = min(neutral.Fret, float64(r.Frets))
		r.Neutral = &neutral
	} else if r.Neutral.Fret > float64(r.Frets) {
		c.wrong("reference.neutral_fret", fmt.Sprintf("it is off its board, which has %d frets", r.Frets), fmt.Sprintf("give a fret up to %d", r.Frets))
	}
	nut, saddle := assume(&r.NutTail, AssumedNutTail), assume(&r.SaddleTail, AssumedSaddleTail)
	r.TailsAssumed = nut || saddle
}

// Lengths of string beyond nut and saddle where none are stated (judgement).
const (
	AssumedNutTail    = 60 * unit.Millimetre
	AssumedSaddleTail = 25 * unit.Millimetre
)

// assume puts one length for all strings where none is stated.
func assume(p *PerString[unit.Length], l unit.Length) (assumed bool) {
	if *p == nil {
		*p, assumed = PerString[unit.Length]{l}, true
	}
	return assumed
}

// lists settles what is a list of sections, or of frets.
func (c checker) lists() {
	b := c.Build
	b.Tails.NutAssumed = assume(&b.Tails.Nut, AssumedNutTail)
	b.Tails.SaddleAssumed = assume(&b.Tails.Saddle, AssumedSaddleTail)
	for i := range b.Blanks {
		k := &b.Blanks[i]
		k.Name = cmp.Or(k.Name, fmt.Sprintf("blank %d", i+1))
		c.wrongIf(k.Length > 0 && k.Width > k.Length, fmt.Sprintf("blanks[%d].width", i), "the blank is wider than its length", "exchange them; the length lies along the centreline")
	}
	for i := range b.Lines {
		key := fmt.Sprintf("lines[%d]", i)
		b.Lines[i].Name = cmp.Or(b.Lines[i].Name, fmt.Sprintf("line %d", i+1))
		if !c.Given(key + ".behind_last_fret") {
			c.need(key+".from_saddle", `write from_saddle = "40 mm", along the centreline, or behind_last_fret`)
		}
	}
	for i, m := range b.Materials {
		if _, err := data.LookupMaterial(m.Name); err == nil {
			c.wrong(fmt.Sprintf("materials[%d].name", i), "a material of this name is known already", "give yours a name of its own")
		}
	}
	for i := range b.Constructions {
		b.Constructions[i].Place = b.Place(fmt.Sprintf("constructions[%d]", i))
	}
	c.dots()
}

func (c checker) dots() {
	d, common := &c.Dots, fan.CommonDots(c.Neck.Frets)
	for key, list := range map[string][2]*[]int{"face": {&d.Face, &common.Face}, "side": {&d.Side, &common.Side}, "double": {&d.Double, &common.Double}} {
		if !c.Given("dots." + key) {
			*list[0] = *list[1]
		}
	}
	d.FaceDiameter, d.SideDiameter = cmp.Or(d.FaceDiameter, common.FaceDiameter), cmp.Or(d.SideDiameter, common.SideDiameter)
	for i, fret := range d.Double {
		c.wrongIf(c.Given("dots.double") && !slices.Contains(d.Face, fret) && !slices.Contains(d.Side, fret), fmt.Sprintf("dots.double[%d]", i), fmt.Sprintf("fret %d has no dot that could be double", fret), "add it to face or side, or leave it out")
	}
}

// bench checks limits and playing.
func (c checker) bench() {
	if l := c.Limits; l.MostTension > 0 && l.LeastTension > l.MostTension {
		c.wrong("limits.least_tension", "it is above most_tension", "exchange them")
	}
	c.wrongIf(c.Limits.Blank && len(c.Blanks) == 0, "limits.blank", "there is no blank to fit", "describe the blanks on offer under [[blanks]], or leave the line out")
	c.Saddle.Assumed = !c.Given("saddle.action_treble") && !c.Given("saddle.action_bass")
	if p := &c.Playing; c.Given("playing.from_fret") && !c.Given("playing.to_fret") {
		p.ToFret = float64(c.Neck.Frets)
	} else if p.FromFret > p.ToFret {
		c.wrong("playing.from_fret", "the frets played begin above their end", "exchange from_fret and to_fret")
	}
}
