package trial

import (
	"fmt"
	"slices"
)

// writeNeck says how the strings are spread, and what board they lie on.
func (b *Build) writeNeck() {
	gaps := float64(b.Strings - 1)
	nut := mm(gaps * b.within(b.sort.nutStep)).round()
	saddle := mm(gaps * b.within(b.sort.saddleStep)).round()
	b.Put("neck", "frets", Number(float64(b.Frets)))
	b.writeNeutral("neck")
	margin := mm(b.within([2]float64{2, 5})).round()
	switch b.r.IntN(3) {
	case 0:
		b.Put("neck", "nut_width", (nut + 2*margin).Value())
		b.Put("neck", "other_width", (nut + (saddle-nut)*7/10 + 2*margin).Value())
		if at := b.between([2]int{12, b.Frets}); b.one(2) {
			b.Put("neck", "other_width_at_fret", Number(float64(at)))
		}
		b.Put("neck", "edge_margin", margin.Value())
	default:
		b.Put("neck", "string_spread_at_nut", nut.Value())
		b.Put("neck", "string_spread_at_saddle", saddle.Value())
		if b.one(2) {
			b.Put("neck", "bass_margin", margin.Value())
			b.Put("neck", "treble_margin", mm(b.within([2]float64{1, 5})).round().Value())
		}
	}
	b.writeSpacing("nut_spacing", nut, "equal centres", "equal gaps")
	b.writeSpacing("saddle_spacing", saddle, "equal centres", "equal gaps", "like the nut", "like the nut")
	if b.one(3) {
		b.Put("neck", "nut_shelf", mm(b.within([2]float64{3, 8})).round().Value())
		if b.one(2) {
			b.Put("neck", "zero_fret", Literal("true"))
		}
	}
	if b.one(4) {
		b.Put("neck", "body_end", Quoted("square"))
	}
	if b.one(4) {
		b.Put("neck", "body_end_overhang", mm(b.within([2]float64{0.5, 10})).round().Value())
	}
	if b.one(4) {
		b.Put("neck", "saw_allowance", mm(b.within([2]float64{0.5, 4})).round().Value())
	}
	b.writeCrown()
}

// writeNeutral puts the neutral fret anywhere: as it is by default, at the nut,
// at the last fret, at the bridge, on a fret or between two.
func (b *Build) writeNeutral(section string) {
	switch b.r.IntN(7) {
	case 0:
		b.Put(section, "neutral_fret", Literal("0"))
	case 1:
		b.Put(section, "neutral_fret", Number(float64(b.Frets)))
	case 2:
		b.Put(section, "neutral_fret", Quoted("bridge"))
	case 3:
		b.Put(section, "neutral_fret", Number(float64(b.between([2]int{0, 10 * b.Frets}))/10))
	case 4, 5:
		b.Put(section, "neutral_fret", Number(float64(b.between([2]int{3, 12}))))
	}
}

func (b *Build) writeSpacing(key string, span Size, rules ...string) {
	switch {
	case b.one(3):
	case b.one(5):
		// Steps that grow towards the bass, as thick strings want them, and add
		// up to the span.
		var steps []Size
		whole := 0.0
		for i := range b.Strings - 1 {
			whole += 20 - float64(i)
		}
		for i := range b.Strings - 1 {
			steps = append(steps, mm(span.MM()*(20-float64(i))/whole))
		}
		b.Put("neck", key, Sizes(steps))
	default:
		b.Put("neck", key, Quoted(rules[b.r.IntN(len(rules))]))
	}
}

func (b *Build) writeCrown() {
	switch b.r.IntN(3) {
	case 0:
		b.Put("neck", "radius", mm(b.within([2]float64{180, 600})).round().Value())
	case 1:
		b.Put("neck", "radius_nut", mm(b.within([2]float64{180, 300})).round().Value())
		b.Put("neck", "radius_last", mm(b.within([2]float64{300, 600})).round().Value())
	}
}

// writeFeel says what is wanted of the strings, and what must not be.
func (b *Build) writeFeel() {
	if b.one(2) {
		b.writeReference()
	}
	b.writeTargets()
	if b.one(3) {
		b.Put("feel", "bend_cents", Number(float64(b.between([2]int{50, 250}))))
	}
	if b.one(4) {
		b.Put("feel", "bend_frets", numbers([]int{b.between([2]int{1, 7}), b.between([2]int{8, b.Frets})}))
	}
	if b.one(4) {
		b.Put("feel", "bend_strings", numbers([]int{1, 2, b.Strings}))
	}
	if b.one(6) {
		b.Put("feel", "weights", Literal("{ tension = 1, bending_force = 0.5, inharmonicity = 0.2 }"))
	}
	if b.one(4) {
		b.Put("limits", "breaking_open_percent", Literal("85"))
	}
	if b.one(6) {
		b.Put("limits", "least_tension", (b.pulls[0] / 3).Value())
		b.Put("limits", "most_tension", (b.pulls[0] * 3).Value())
	}
	if b.one(6) {
		b.Put("limits", "saddle_slant_deg", Literal("55"))
	}
	if b.one(8) {
		b.Put("limits", "nut_to_fret_1", mm(0.0563*b.Bass.MM()).round().Value())
	}
	if b.one(10) {
		b.Put("limits", "saddle_travel", mm(b.within([2]float64{3, 20})).round().Value())
	}
	b.Put("confidence", "trials", Number(float64([]int{0, 20, 40}[b.r.IntN(3)])))
}

// writeTargets wants the strings to pull as stated, evenly or like the
// reference's.
func (b *Build) writeTargets() {
	low := slices.Clone(b.pulls)
	slices.Reverse(low)
	switch b.r.IntN(4) {
	case 0:
		b.Put("feel", "tension", b.pulls[0].Value())
	case 1:
		b.Put("feel", "tension", listOf(low, Pull.Value))
	case 2:
		if b.Has("strings", "gauges") {
			b.Put("feel", "tension", Quoted("even"))
		}
	}
	if b.one(4) {
		b.Put("feel", "bending_force", (b.pulls[0] / 8).Value())
	}
	if b.one(4) {
		b.Put("feel", "inharmonicity", Quoted("20 cents"))
	}
	if !b.Has("feel", "tension") && !b.Has("reference", "") && !b.Has("strings", "gauges") {
		b.Put("feel", "tension", b.pulls[0].Value())
	}
}

// writeReference describes an instrument of as many strings or one less, a
// little shorter and higher, straight or fanned.
func (b *Build) writeReference() {
	n := b.Strings - b.r.IntN(2)
	up := b.r.IntN(3)
	scale := mm(b.Treble.MM() * 0.97 / (1 + 0.06*float64(up))).round()
	notes := slices.Clone(b.Notes[:n])
	for i := range notes {
		notes[i] += up
	}
	b.Put("reference", "name", Quoted("the one I know"))
	if b.one(4) {
		b.Put("reference", "bass", (scale + mm(10).round()).Value())
		b.Put("reference", "treble", scale.Value())
	} else {
		b.Put("reference", "scale", scale.Value())
	}
	b.Put("reference", "tuning", Quoted(Spelled(notes)))
	b.Put("reference", "gauges", Texts(b.setFor(notes, func(int) float64 { return scale.MM() }, b.pulls)))
	if b.one(3) {
		b.Put("reference", "nut_tail", mm(50).round().Value())
	}
	if b.one(3) {
		b.Put("feel", "more_strings", Quoted("across"))
	}
}

// writeBench says how the strings are held, and what is done at the bench.
func (b *Build) writeBench() {
	if b.one(2) {
		b.Put("tails", "nut", mm(b.within([2]float64{0, 90})).round().Value())
		b.Put("tails", "saddle", Sizes(slices.Repeat([]Size{mm(b.within([2]float64{5, 60})).round()}, b.Strings)))
	}
	if b.one(3) {
		b.Put("saddle", "action_treble", mm(b.within([2]float64{1, 2})).round().Value())
		b.Put("saddle", "action_bass", mm(b.within([2]float64{1.5, 3})).round().Value())
	}
	if b.one(3) {
		b.Put("fret_wire", "tang_depth", mm(b.within([2]float64{1.2, 1.8})).round().Value())
		b.Put("fret_wire", "kerf", mm(0.6).round().Value())
	}
	if b.one(3) {
		b.Put("playing", "from_fret", Literal("1"))
		b.Put("playing", "to_fret", Number(float64(b.between([2]int{5, b.Frets}))))
	}
	if b.one(3) {
		b.Put("lines[0]", "from_saddle", mm(b.within([2]float64{20, 60})).round().Value())
		b.Put("lines[0]", "along", Quoted([]string{"square", "the saddle line", "the last fret"}[b.r.IntN(3)]))
	}
	b.Put("measuring", "ruler_resolution", mm(b.within([2]float64{0.1, 1})).round().Value())
	if b.one(3) {
		b.Put("marking", "caliper_resolution", mm(0.127).Value())
	}
	for i := range b.r.IntN(3) {
		section := fmt.Sprintf("blanks[%d]", i)
		b.Put(section, "length", mm(0.8*b.Bass.MM()+80*b.r.Float64()).round().Value())
		b.Put(section, "width", mm(float64(b.Strings-1)*b.sort.saddleStep[1]+40*b.r.Float64()).round().Value())
		if b.one(2) {
			b.Put(section, "thickness", mm(b.within([2]float64{5, 9})).round().Value())
		}
	}
	if b.Has("blanks[0]", "") && b.one(3) {
		b.Put("limits", "blank", Literal("true"))
	}
}
