package build

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tuning"
)

// checker collects what is wrong between keys.
type checker struct {
	*Build
	faults *fault.List
}

// wrong reports a key's value.
func (c checker) wrong(key, what, remedy string) {
	at := c.Place(key)
	if at.Line > 0 {
		what = lastKey(key) + ": " + what
	}
	c.faults.Add(at, what, c.given(key), remedy)
}

// about begins a fault with the key that it is of, unless a flag stands for it.
func (b *Build) about(key string, err error) error {
	if b.Place(key).Line == 0 {
		return err
	}
	return fault.About(lastKey(key), err)
}

// lastKey is the key of a path, without its sections and its place in a list.
func lastKey(path string) string {
	path, _, _ = strings.Cut(path[strings.LastIndexByte(path, '.')+1:], "[")
	return path
}

// header names a section as a file does: "[neck]", "[[blanks]]".
func header(section string) string {
	name, _, list := strings.Cut(section, "[")
	if list {
		return "[[" + name + "]]"
	}
	return "[" + name + "]"
}

// need reports a key that is not there, at its section.
func (c checker) need(key, remedy string) bool {
	if c.Given(key) {
		return true
	}
	section := key[:strings.LastIndexByte(key, '.')]
	c.faults.Add(c.Place(section), lastKey(key)+" is missing in "+header(section), "", remedy)
	return false
}

// either reports two keys of which only one may be given.
func (c checker) either(a, b, remedy string) {
	if c.Given(a) && c.Given(b) {
		c.wrong(b, fmt.Sprintf("this and %s (line %d) say the same thing", lastKey(a), c.Place(a).Line), remedy)
	}
}

// settle fills in what follows from other keys, turns the lists over strings
// round, and checks what belongs together.
func (b *Build) settle(faults *fault.List) {
	c := checker{b, faults}
	c.tunings()
	if len(*faults) > 0 {
		return // the lists follow the number of strings
	}
	n := b.Strings.Tuning.Strings()
	c.readings()
	c.neck(n)
	c.pairs()
	c.reference()
	c.feel(n)
	c.lists(n)
	c.bench()
	for _, s := range []struct {
		key string
		v   any
	}{{"strings", &b.Strings}, {"feel", &b.Feel}, {"tails", &b.Tails}} {
		b.settleAll(s.v, s.key, n, faults)
	}
	if b.Chosen != nil {
		b.settleAll(b.Chosen, "chosen", n, faults)
	}
	for i := range b.Columns {
		b.settleAll(&b.Columns[i], fmt.Sprintf("compare[%d]", i), n, faults)
	}
}

func (c checker) readings() {
	if strings.ContainsFunc(c.Readings, unicode.IsControl) {
		c.wrong("readings", "a backslash in double quotes has a meaning of its own", "put the path between single quotes, or write / for \\")
	}
	c.Readings = strings.ReplaceAll(c.Readings, `\`, "/")
}

// Strings 2 to 24 can be laid out.
const fewestStrings, mostStrings = 2, 24

func (c checker) tunings() {
	b := c.Build
	main := b.Strings.Tuning
	if len(b.Tunings) == 0 {
		c.need("strings.tuning", `write tuning = "B1 E2 A2 D3 F#3 B3", low string first, or a name such as "baritone B"`)
	} else if main.Strings() == 0 {
		b.Strings.Tuning = b.Tunings[0].Tuning
	}
	c.tuning("strings.tuning", main)
	if b.Given("tunings_by") && len(b.Tunings) == 0 {
		c.wrong("tunings_by", "there is nothing to put together", "add the tunings under [[tunings]]")
	}
	heeded := len(b.Tunings) == 0 || main.Strings() == 0
	for i := range b.Tunings {
		t, key := &b.Tunings[i], fmt.Sprintf("tunings[%d]", i)
		c.need(key+".tuning", `write, for instance, tuning = "A1 E2 A2 D3 F#3 B3"`)
		c.tuning(key+".tuning", t.Tuning)
		heeded = heeded || slices.Equal(t.Tuning.Notes, main.Notes)
		if !b.Given(key + ".weight") {
			t.Weight = 1
		}
		if !b.Given(key + ".capo_fret") {
			t.CapoFret = b.Strings.CapoFret
		}
		if t.Name == "" {
			t.Name = Title(t.Tuning)
		}
	}
	if !heeded {
		c.wrong("strings.tuning", "it counts for nothing beside [[tunings]], none of which is the same", "add it as one more of [[tunings]], or leave it out")
	}
	for i := range b.Columns {
		if t := b.Columns[i].Tuning; t != nil {
			c.tuning(fmt.Sprintf("compare[%d].tuning", i), *t)
		}
	}
	c.names("tunings", len(b.Tunings), func(i int) string { return b.Tunings[i].Name })
}

// Title is a tuning's name, or its notes.
func Title(t tuning.Tuning) string {
	if t.Name != "" {
		return t.Name
	}
	return t.String()
}

// tuning checks one tuning; one without strings is none.
func (c checker) tuning(key string, t tuning.Tuning) {
	switch n := t.Strings(); {
	case n == 0:
	case n < fewestStrings || n > mostStrings:
		c.wrong(key, "the number of strings is out of range", fmt.Sprintf("%d to %d can be laid out", fewestStrings, mostStrings))
	case n != c.Strings.Tuning.Strings() && !strings.HasPrefix(key, "reference"):
		c.wrong(key, fmt.Sprintf("it has %d strings, the build has %d", n, c.Strings.Tuning.Strings()), "all tunings of one build have the same number of strings")
	case c.Strings.Ordering && falls(t):
		c.wrong(key, "it falls from its first note to its last", fmt.Sprintf("low string first? write %q; a tuning that is meant so needs ordering = false under [strings]", LowFirst(t)))
	}
}

// LowFirst gives the notes of a tuning in the other order.
func LowFirst(t tuning.Tuning) string {
	notes := slices.Clone(t.Notes)
	slices.Reverse(notes)
	return tuning.Tuning{Notes: notes}.String()
}

// falls reports whether no note is higher than the one before it, and some is
// lower.
func falls(t tuning.Tuning) bool {
	hz := t.FreqsHz(tuning.ConcertA) // string 1, written last, first
	return slices.IsSorted(hz) && len(hz) > 1 && hz[0] < hz[len(hz)-1]
}

// names reports an entry of a list that has the name of an earlier one, since
// neither table nor flag could tell them apart.
func (c checker) names(list string, n int, name func(int) string) {
	seen := map[string]bool{}
	for i := range n {
		key := strings.ToLower(strings.TrimSpace(name(i)))
		if seen[key] {
			at := fmt.Sprintf("%s[%d].name", list, i)
			c.faults.Add(c.Place(at), "two "+list+" of one name", name(i), "give each its own")
		}
		seen[key] = true
	}
}

func (c checker) neck(n int) {
	k := &c.Neck
	frets := float64(k.Frets)
	if !c.Given("neck.neutral_fret") {
		k.Neutral.Fret = min(k.Neutral.Fret, frets)
	}
	c.onBoard("neck.neutral_fret", k.Neutral.Fret)
	c.spreads()
	if c.Given("neck.edge_margin") && k.BassMargin != nil && k.TrebleMargin != nil {
		c.wrong("neck.edge_margin", "it does nothing beside bass_margin and treble_margin", "leave it out")
	}
	k.Neck.NutSpacing, k.Neck.SaddleSpacing = k.NutSpacing.lines(), k.SaddleSpacing.lines()
	c.radius()
}

// onBoard reports a fret beyond the last one.
func (c checker) onBoard(key string, fret float64) {
	if fret > float64(c.Neck.Frets) && c.Given(key) {
		c.wrong(key, fmt.Sprintf("it is off the board, which has %d frets", c.Neck.Frets), fmt.Sprintf("give a fret up to %d", c.Neck.Frets))
	}
}

func (c checker) spreads() {
	any := func(keys ...string) bool { return slices.ContainsFunc(keys, c.Given) }
	widths := any("neck.nut_width", "neck.other_width", "neck.other_width_at_fret")
	switch spreads := any("neck.string_spread_at_nut", "neck.string_spread_at_saddle"); {
	case spreads && widths:
		c.faults.Add(c.Place("neck"), "string spreads and board widths are both given", "",
			"give string_spread_at_nut and string_spread_at_saddle, or nut_width and other_width, since one follows from the other")
	case widths:
		c.need("neck.nut_width", `write nut_width = "43 mm", say, beside other_width`)
		c.need("neck.other_width", `write other_width = "57 mm", say, beside nut_width`)
		if c.Neck.WidthAtFret == 0 {
			c.Neck.WidthAtFret = float64(c.Neck.Frets)
		}
		c.onBoard("neck.other_width_at_fret", c.Neck.WidthAtFret)
	default:
		c.need("neck.string_spread_at_nut", `write string_spread_at_nut = "36 mm", say: between the outer strings; or give nut_width and other_width of the board`)
		c.need("neck.string_spread_at_saddle", `write string_spread_at_saddle = "52 mm", say: between the outer strings; or give nut_width and other_width of the board`)
	}
}

func (c checker) radius() {
	compound := c.Given("neck.radius_nut") || c.Given("neck.radius_last")
	c.either("neck.radius", "neck.radius_nut", "keep radius, or radius_nut with radius_last")
	if compound {
		c.need("neck.radius_nut", "a compound radius needs both ends")
		c.need("neck.radius_last", "a compound radius needs both ends")
	}
}

// pairs settles the scale pairs of the build, and what is searched.
func (c checker) pairs() {
	b := c.Build
	if b.Chosen != nil {
		c.pair("chosen", &b.Chosen.Pair, true)
		if b.Chosen.Neutral == nil {
			b.Chosen.Neutral = &b.Neck.Neutral
		}
		c.onBoard("chosen.neutral_fret", b.Chosen.Neutral.Fret)
	}
	for i := range b.Columns {
		col, key := &b.Columns[i], fmt.Sprintf("compare[%d]", i)
		c.pair(key, &col.Pair, false)
		if col.PitchStandard == 0 {
			col.PitchStandard = b.Strings.PitchStandard
		}
		if col.Neutral != nil {
			c.onBoard(key+".neutral_fret", col.Neutral.Fret)
		}
	}
	s := b.Scales
	if b.Given("scales.bass") || b.Given("scales.treble") {
		c.need("scales.bass", "give both, each as a range, a list or one length")
		c.need("scales.treble", "give both, each as a range, a list or one length")
	}
	if len(s.Bass) == 0 || len(s.Treble) == 0 {
		return
	}
	if pairs := len(s.Bass) * len(s.Treble); pairs > mostPairs {
		c.wrong("scales.treble", fmt.Sprintf("%d bass and %d treble lengths make %d pairs", len(s.Bass), len(s.Treble), pairs),
			fmt.Sprintf("take larger steps; up to %d pairs are searched", mostPairs))
	}
	for _, l := range []Lengths{s.Bass, s.Treble} {
		slices.Sort(l)
	}
	c.notReversed("scales", s.Bass[len(s.Bass)-1], s.Treble[0])
}

// mostPairs bounds a search (judgement: still done in seconds).
const mostPairs = 5_000_000

// pair settles one scale pair: bass and treble, or scale for straight frets.
func (c checker) pair(section string, p *Pair, required bool) {
	switch fanned := c.Given(section+".bass") || c.Given(section+".treble"); {
	case p.Scale > 0 && fanned:
		c.either(section+".scale", section+".bass", "keep scale for straight frets, or bass with treble")
		c.either(section+".scale", section+".treble", "keep scale for straight frets, or bass with treble")
	case fanned:
		c.need(section+".bass", "a scale pair needs both lengths")
		c.need(section+".treble", "a scale pair needs both lengths")
		c.notReversed(section, p.Bass, p.Treble)
	case required && p.Scale == 0:
		c.need(section+".scale", `write scale = "648 mm", or bass and treble for a fan`)
	default:
		p.Bass, p.Treble = p.Scale, p.Scale
	}
}

// notReversed reports a bass length shorter than its treble, unless that was
// asked for. A length of 0 is not known.
func (c checker) notReversed(section string, bass, treble unit.Length) {
	if bass > 0 && bass < treble && !c.Scales.ReverseFan {
		c.wrong(section+".bass", "the bass is shorter than the treble of "+treble.String(),
			"exchange them, or write reverse_fan = true under [scales] if a reverse fan is wanted")
	}
}

// reference gives the reference instrument what it leaves out.
func (c checker) reference() {
	r := c.Build.Reference
	if r == nil {
		return
	}
	c.pair("reference", &r.Pair, true)
	if c.need("reference.tuning", `write, for instance, tuning = "E2 A2 D3 G3 B3 E4"`) {
		c.tuning("reference.tuning", r.Tuning)
	}
	c.need("reference.gauges", "list the labels of its strings, low string first")
	if r.Frets == 0 {
		r.Frets = c.Neck.Frets
	}
	if r.Neutral == nil {
		neutral := c.Neck.Neutral
		neutral.Fret = min(neutral.Fret, float64(r.Frets))
		r.Neutral = &neutral
	} else if r.Neutral.Fret > float64(r.Frets) {
		c.wrong("reference.neutral_fret", fmt.Sprintf("it is off its board, which has %d frets", r.Frets), fmt.Sprintf("give a fret up to %d", r.Frets))
	}
	if r.PitchStandard == 0 {
		r.PitchStandard = c.Strings.PitchStandard
	}
	r.TailsAssumed = r.NutTail == nil || r.SaddleTail == nil
	assume(&r.NutTail, assumedNutTail)
	assume(&r.SaddleTail, assumedSaddleTail)
	c.settleAll(r, "reference", r.Tuning.Strings(), c.faults)
}

// Lengths of string beyond nut and saddle where none are stated (judgement).
const (
	assumedNutTail    = 60 * unit.Millimetre
	assumedSaddleTail = 25 * unit.Millimetre
)

// assume puts one length for all strings where none is stated.
func assume(p *PerString[unit.Length], l unit.Length) (assumed bool) {
	if *p == nil {
		*p, assumed = PerString[unit.Length]{l}, true
	}
	return assumed
}

// lists settles what is a list of sections, or of frets.
func (c checker) lists(n int) {
	b := c.Build
	b.Tails.NutAssumed = assume(&b.Tails.Nut, assumedNutTail)
	b.Tails.SaddleAssumed = assume(&b.Tails.Saddle, assumedSaddleTail)
	for i := range b.Blanks {
		k, key := &b.Blanks[i], fmt.Sprintf("blanks[%d]", i)
		if k.Name == "" {
			k.Name = fmt.Sprintf("blank %d", i+1)
		}
		c.need(key+".length", `write length = "560 mm", say: it lies along the centreline`)
		c.need(key+".width", `write width = "80 mm", say`)
		if k.Length > 0 && k.Width > k.Length {
			c.wrong(key+".width", "the blank is wider than its length", "exchange them; the length lies along the centreline")
		}
	}
	c.names("blanks", len(b.Blanks), func(i int) string { return b.Blanks[i].Name })
	for i := range b.Lines {
		c.line(&b.Lines[i], fmt.Sprintf("lines[%d]", i), i)
	}
	c.names("lines", len(b.Lines), func(i int) string { return b.Lines[i].Name })
	for i := range b.Materials {
		key := fmt.Sprintf("materials[%d]", i)
		c.need(key+".name", `give it one, such as name = "my wire"`)
		c.need(key+".density_g_cm3", "write density_g_cm3 = 7.85, say")
	}
	c.names("materials", len(b.Materials), func(i int) string { return b.Materials[i].Name })
	for i := range b.Constructions {
		b.Constructions[i].Place = b.Place(fmt.Sprintf("constructions[%d]", i))
	}
	c.dots()
}

func (c checker) line(l *fan.Line, key string, i int) {
	if l.Name == "" {
		l.Name = fmt.Sprintf("line %d", i+1)
	}
	c.either(key+".from_saddle", key+".behind_last_fret", "keep one of them")
	if !c.Given(key + ".behind_last_fret") {
		c.need(key+".from_saddle", `write from_saddle = "40 mm", along the centreline, or behind_last_fret`)
	}
	c.either(key+".along", key+".slant_deg", "keep one of them")
}

func (c checker) dots() {
	d, common := &c.Dots, fan.CommonDots(c.Neck.Frets)
	for _, list := range []struct {
		key          string
		have, common *[]int
	}{{"dots.face", &d.Face, &common.Face}, {"dots.side", &d.Side, &common.Side}, {"dots.double", &d.Double, &common.Double}} {
		if c.Given(list.key) {
			c.frets(list.key, *list.have)
		} else {
			*list.have = *list.common
		}
	}
	d.FaceDiameter, d.SideDiameter = cmp.Or(d.FaceDiameter, common.FaceDiameter), cmp.Or(d.SideDiameter, common.SideDiameter)
	for i, fret := range d.Double {
		if c.Given("dots.double") && !slices.Contains(d.Face, fret) && !slices.Contains(d.Side, fret) {
			c.wrong(fmt.Sprintf("dots.double[%d]", i), fmt.Sprintf("fret %d has no dot that could be double", fret), "add it to face or side, or leave it out")
		}
	}
}

// frets checks a list of unlike frets of the board.
func (c checker) frets(key string, list []int) {
	c.unlike(key, list)
	for i, fret := range list {
		c.onBoard(fmt.Sprintf("%s[%d]", key, i), float64(fret))
	}
}

// unlike reports a number that a list has twice.
func (c checker) unlike(key string, list []int) {
	for i, n := range list {
		if slices.Contains(list[:i], n) {
			c.wrong(fmt.Sprintf("%s[%d]", key, i), "this is listed twice", "keep one of them")
		}
	}
}

// bench checks limits, wire, playing and marking.
func (c checker) bench() {
	if l := c.Limits; l.MostTension > 0 && l.LeastTension > l.MostTension {
		c.wrong("limits.least_tension", "it is above most_tension", "exchange them")
	}
	if c.Limits.Blank && len(c.Blanks) == 0 {
		c.wrong("limits.blank", "there is no blank to fit", "describe the blanks on offer under [[blanks]], or leave the line out")
	}
	c.Saddle.Assumed = !c.Given("saddle.action_treble") && !c.Given("saddle.action_bass")
	p := &c.Playing
	if c.Given("playing.from_fret") && !c.Given("playing.to_fret") {
		p.ToFret = float64(c.Neck.Frets)
	}
	c.onBoard("playing.to_fret", p.ToFret)
	if p.FromFret > p.ToFret {
		c.wrong("playing.from_fret", "the frets played begin above their end", "exchange from_fret and to_fret")
	}
	c.onBoard("strings.capo_fret", float64(c.Strings.CapoFret))
	for i, t := range c.Build.Tunings {
		c.onBoard(fmt.Sprintf("tunings[%d].capo_fret", i), float64(t.CapoFret))
	}
	c.either("marking.tolerance", "marking.tolerance_cents", "keep one of them")
}

// HighFirst reports a tuning that falls from its first note to its last, since
// tunings are written low string first. given is the tuning as it was written.
func HighFirst(t tuning.Tuning, given string) error {
	if !falls(t) {
		return nil
	}
	return fault.Fault{What: "the tuning falls from its first note to its last", Given: given,
		Remedy: fmt.Sprintf("low string first? write %q; a tuning that is meant so needs ordering = false under [strings]", LowFirst(t))}
}
