// Package trial draws random builds, as a builder might write them, for the
// tests of the whole program.
package trial

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"

	"scalepair/data/unit"
	"scalepair/tuning"
)

// Build is a random build that somebody might want: a build file and its
// readings, both of which can be written in millimetres or in inches.
//
// It is drawn in this order: what sort of instrument it is, with so many
// strings; a scale pair that suits it; a tuning whose highest note the treble
// length bears and whose others lie below; a stock around the gauges that would
// pull about as hard as such strings do; then everything else that a build file
// may say, each key with a chance of its own, so that defaults are met as often
// as values.
type Build struct {
	Keys
	Seed           uint64
	Strings, Frets int
	Bass, Treble   Size
	Notes          []int    // MIDI numbers, string 1 first
	Set            []string // gauges that would do, low string first

	r        *rand.Rand
	sort     instrument
	pulls    []Pull // what every string should pull about
	stock    []gauge
	readings []reading
}

// instrument is a sort of instruments: what they are strung with, from how many
// strings to how many, and how long, high and taut they are.
type instrument struct {
	name         string
	wire         wireKind
	strings      [2]int
	treble       [2]float64 // scale length, mm
	speed        [2]float64 // of the highest string: length times pitch, m/s
	pull         [2]float64 // N
	steps        []int      // semitones from string to string
	nutStep      [2]float64 // mm from string to string
	saddleStep   [2]float64
	frets        [2]int
	longer, less float64 // most that the bass is longer, or shorter, than the treble: parts of the string spread at the saddle
	order        order
}

// order is how the strings' notes follow each other.
type order int

const (
	falling   order = iota // from string to string
	courses                // in pairs, the lower ones an octave apart
	reentrant              // but for the last, which lies above its neighbour
)

var instruments = []instrument{
	{"guitar", steelWire, [2]int{6, 9}, [2]float64{600, 700}, [2]float64{130, 225}, [2]float64{55, 95}, []int{5, 5, 5, 4, 5, 3, 7}, [2]float64{6.6, 8}, [2]float64{9.5, 11}, [2]int{19, 27}, 1, 0.4, falling},
	{"bass", steelWire, [2]int{3, 6}, [2]float64{780, 900}, [2]float64{60, 110}, [2]float64{140, 220}, []int{5, 5, 5, 4, 7}, [2]float64{8, 12}, [2]float64{14, 19}, [2]int{20, 24}, 1, 0.4, falling},
	{"nylon", nylonWire, [2]int{4, 8}, [2]float64{480, 680}, [2]float64{150, 215}, [2]float64{45, 75}, []int{5, 5, 4, 5, 3}, [2]float64{7.5, 10}, [2]float64{10, 12}, [2]int{12, 20}, 0.7, 0.3, falling},
	{"wide", steelWire, [2]int{10, 12}, [2]float64{620, 760}, [2]float64{120, 210}, [2]float64{50, 100}, []int{5, 4, 5, 5, 3}, [2]float64{6, 8}, [2]float64{7, 10.5}, [2]int{24, 28}, 0.9, 0.3, falling},
	{"short", steelWire, [2]int{3, 5}, [2]float64{330, 560}, [2]float64{120, 220}, [2]float64{35, 70}, []int{5, 7, 5, 7, 4}, [2]float64{7, 10}, [2]float64{9, 12}, [2]int{12, 24}, 0.8, 0.3, falling},
	{"courses", steelWire, [2]int{4, 6}, [2]float64{580, 660}, [2]float64{120, 210}, [2]float64{35, 60}, []int{5, 5, 4, 5, 5}, [2]float64{3.2, 4}, [2]float64{4.5, 5.5}, [2]int{18, 22}, 0.8, 0.3, courses},
	{"re-entrant", nylonWire, [2]int{4, 5}, [2]float64{340, 480}, [2]float64{130, 190}, [2]float64{35, 55}, []int{5, 4, 5}, [2]float64{8, 10}, [2]float64{9, 12}, [2]int{12, 19}, 0.6, 0.2, reentrant},
}

// New draws a build from a seed.
func New(seed uint64) *Build {
	b := &Build{Seed: seed, r: rand.New(rand.NewPCG(seed, 8))}
	b.sort = instruments[b.r.IntN(len(instruments))]
	b.Strings = b.between(b.sort.strings)
	b.Frets = b.between(b.sort.frets)
	b.drawLengths()
	b.drawNotes() // which doubles the strings of courses
	b.drawStock()
	b.writeStrings()
	b.writeScales()
	b.writeNeck()
	b.writeFeel()
	b.writeBench()
	return b
}

func (b *Build) between(r [2]int) int { return r[0] + b.r.IntN(r[1]-r[0]+1) }

func (b *Build) within(r [2]float64) float64 { return r[0] + (r[1]-r[0])*b.r.Float64() }

// one says yes once in so many times.
func (b *Build) one(in int) bool { return b.r.IntN(in) == 0 }

func (b *Build) drawLengths() {
	b.Treble = mm(b.within(b.sort.treble)).round()
	span := float64(b.Strings-1) * b.sort.saddleStep[0]
	more := b.within([2]float64{0, 0.6 * b.sort.longer}) * span
	switch {
	case b.one(8):
		more = 0
	case b.one(8):
		more = -b.within([2]float64{0, b.sort.less}) * span
	case b.one(5):
		more = b.within([2]float64{0.6, 1}) * b.sort.longer * span
	}
	b.Bass = mm(b.Treble.MM() + more).round()
}

// drawNotes takes the highest note that the treble length bears at the drawn
// speed, and goes down from there.
func (b *Build) drawNotes() {
	speed := b.within(b.sort.speed)
	note := int(69 + 12*math.Log2(speed/(b.Treble.MM()/1e3)/440))
	const lowest = 21 // A0
	for i := range b.Strings {
		if i > 0 {
			note = max(lowest-i+b.Strings, note-b.sort.steps[b.r.IntN(len(b.sort.steps))])
		}
		b.Notes = append(b.Notes, note)
	}
	for i := 1; i < len(b.Notes); i++ { // where the floor was met
		b.Notes[i] = min(b.Notes[i], b.Notes[i-1]-1)
	}
	switch b.sort.order {
	case courses:
		single := b.Notes
		b.Notes = nil
		for i, note := range single {
			b.Notes = append(b.Notes, note+map[bool]int{true: 12}[i > 1], note)
		}
		b.Strings = len(b.Notes)
	case reentrant:
		b.Notes[b.Strings-1] = b.Notes[b.Strings-2] + 3
	}
}

// length is about the own length of a string.
func (b *Build) length(i int) float64 {
	return b.Treble.MM() + (b.Bass.MM()-b.Treble.MM())*float64(i)/float64(b.Strings-1)
}

// ideal is the linear density at which a note pulls so hard on a length in mm.
func ideal(midi int, lengthMM, forceN float64) float64 {
	return forceN / square(2*lengthMM/1e3*440*math.Exp2(float64(midi-69)/12))
}

func (b *Build) drawStock() {
	usual := b.within(b.sort.pull)
	for i, note := range b.Notes {
		b.pulls = append(b.pulls, newtons(usual*(0.9+0.2*b.r.Float64())))
		w := ideal(note, b.length(i), usual)
		for _, part := range []float64{0.86, 1, 1.15} {
			b.stock = append(b.stock, b.sort.wire.gaugeOf(b.r, w*part*(0.97+0.06*b.r.Float64()), usual))
		}
	}
	b.stock = lightestFirst(b.stock)
	b.readings = weigh(b.r, b.stock)
	b.Set = b.setFor(b.Notes, b.length, b.pulls)
}

// setFor picks gauges that would pull about so hard, low string first.
func (b *Build) setFor(notes []int, length func(i int) float64, pulls []Pull) []string {
	var out []string
	at := 0
	for i, note := range notes {
		if b.sort.order != falling {
			at = 0
		}
		at = nearest(b.stock, ideal(note, length(i), 0.44482216152605*float64(pulls[i])), at)
		out = append(out, b.stock[at].label)
	}
	slices.Reverse(out)
	return out
}

// Spelled writes notes low string first.
func Spelled(notes []int) string {
	text := ""
	for i := range notes {
		text += " " + tuning.Nearest(440*unit.Frequency(math.Exp2(float64(notes[len(notes)-1-i]-69)/12)), 440).Name()
	}
	return text[1:]
}

func (b *Build) writeStrings() {
	b.Put("", "name", Quoted(fmt.Sprintf("%s of %d strings", b.sort.name, b.Strings)))
	b.Put("", "readings", Quoted("readings.csv"))
	b.Put("strings", "tuning", Quoted(Spelled(b.Notes)))
	if b.one(4) {
		b.Put("strings", "pitch_standard_hz", Number(float64(b.between([2]int{430, 446}))))
	}
	if b.one(6) {
		b.Put("strings", "capo_fret", Number(float64(b.between([2]int{1, 4}))))
	}
	if b.one(2) {
		b.Put("strings", "gauges", Texts(b.Set))
	}
	if b.sort.order != falling || b.one(8) {
		b.Put("strings", "ordering", Literal("false"))
	}
	if b.one(5) {
		b.writeTunings()
	}
}

// writeTunings asks for the build's tuning and one with a string or two lower.
func (b *Build) writeTunings() {
	lower := slices.Clone(b.Notes)
	lower[len(lower)-1] -= 2
	if b.one(2) {
		lower[0] -= 1
	}
	for i, notes := range [][]int{b.Notes, lower} {
		section := fmt.Sprintf("tunings[%d]", i)
		b.Put(section, "tuning", Quoted(Spelled(notes)))
		b.Put(section, "weight", Number(float64(1+b.r.IntN(3))))
		if b.one(4) {
			b.Put(section, "capo_fret", Number(float64(b.between([2]int{0, 3}))))
		}
	}
	if b.one(2) {
		b.Put("", "tunings_by", Quoted("worst"))
	}
}

// grid gives lengths to try, the given one among them.
func (b *Build) grid(around Size) []Size {
	if b.one(3) {
		return []Size{around}
	}
	step := mm(3 + 5*b.r.Float64()).round()
	from := around - step*Size(b.r.IntN(3))
	grid := []Size{from}
	for range 1 + b.r.IntN(3) {
		grid = append(grid, grid[len(grid)-1]+step)
	}
	if !slices.Contains(grid, around) {
		grid = append(grid, around)
	}
	return grid
}

func (b *Build) writeScales() {
	for _, s := range []struct {
		key string
		at  Size
	}{{"bass", b.Bass}, {"treble", b.Treble}} {
		grid := b.grid(s.at)
		switch {
		case len(grid) == 1:
			b.Put("scales", s.key, grid[0].Value())
		case grid[len(grid)-1]-grid[len(grid)-2] == grid[1]-grid[0] && b.one(2):
			b.Put("scales", s.key, rangeOf(grid))
		default:
			b.Put("scales", s.key, Sizes(grid))
		}
	}
	if b.Bass < b.Treble {
		b.Put("scales", "reverse_fan", Literal("true"))
	}
	if b.one(3) {
		b.Put("chosen", "bass", b.Bass.Value())
		b.Put("chosen", "treble", b.Treble.Value())
		if b.one(2) {
			b.Put("chosen", "gauges", Texts(b.Set))
		}
		if b.one(4) {
			b.Put("chosen", "neutral_fret", Number(float64(b.between([2]int{0, b.Frets}))))
		}
	}
}

// Free tells whether the build leaves its gauges to be chosen.
func (b *Build) Free() bool { return !b.Has("strings", "gauges") && !b.Has("chosen", "gauges") }

// Ordered tells whether the ordering rule holds.
func (b *Build) Ordered() bool { return !b.Has("strings", "ordering") }

// EqualGaps tells whether the strings' own diameters say where they lie.
func (b *Build) EqualGaps() bool {
	for _, x := range b.Keys {
		if strings.HasSuffix(x.key, "_spacing") && x.value(false) == `"equal gaps"` {
			return true
		}
	}
	return false
}
