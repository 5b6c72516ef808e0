package build

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"scalepair/data/fault"
)

// Rules about keys alone. An entry of a list is written with empty brackets:
// "blanks[].length" is the length of each blank.

// needed are the keys that a section must have, with what would do. A section
// that the file does not have needs none of them.
var needed = []struct{ section, key, remedy string }{
	{"tunings[]", "tuning", `write, for instance, tuning = "A1 E2 A2 D3 F#3 B3"`},
	{"reference", "tuning", `write, for instance, tuning = "E2 A2 D3 G3 B3 E4"`},
	{"reference", "gauges", "list the labels of its strings, low string first"},
	{"blanks[]", "length", `write length = "560 mm", say: it lies along the centreline`},
	{"blanks[]", "width", `write width = "80 mm", say`},
	{"materials[]", "name", `give it one, such as name = "my wire"`},
	{"materials[]", "density_g_cm3", "write density_g_cm3 = 7.85, say"},
}

// either are keys of which a section has one only, together those of which it
// has both or none.
var (
	either = [][3]string{
		{"neck", "radius", "radius_nut"}, {"neck", "radius", "radius_last"}, {"marking", "tolerance", "tolerance_cents"},
		{"lines[]", "from_saddle", "behind_last_fret"}, {"lines[]", "along", "slant_deg"},
		{"chosen", "scale", "bass"}, {"chosen", "scale", "treble"}, {"reference", "scale", "bass"}, {"reference", "scale", "treble"},
		{"compare[]", "scale", "bass"}, {"compare[]", "scale", "treble"},
		{"neck", "string_spread_at_nut", "nut_width"}, {"neck", "string_spread_at_saddle", "other_width"},
	}
	together = [][3]string{
		{"neck", "radius_nut", "radius_last"}, {"neck", "nut_width", "other_width"},
		{"scales", "bass", "treble"}, {"chosen", "bass", "treble"}, {"reference", "bass", "treble"}, {"compare[]", "bass", "treble"},
	}
)

// onBoard are the keys of frets that the board must have, unlike the lists that
// have nothing twice, named the lists of sections each with its own name.
var (
	onBoard = set("neck.neutral_fret", "neck.other_width_at_fret", "chosen.neutral_fret", "compare[].neutral_fret", "compare[].capo_fret",
		"strings.capo_fret", "tunings[].capo_fret", "playing.from_fret", "playing.to_fret",
		"feel.bend_frets[]", "dots.face[]", "dots.side[]", "dots.double[]")
	unlike = set("feel.bend_frets[]", "feel.bend_strings[]", "dots.face[]", "dots.side[]", "dots.double[]", "strings.stock[]")
	named  = set("tunings[].name", "blanks[].name", "lines[].name", "materials[].name")
)

func set(keys ...string) map[string]bool {
	out := map[string]bool{}
	for _, key := range keys {
		out[key] = true
	}
	return out
}

var index = regexp.MustCompile(`\[\d+\]`)

// rules holds the file's keys to the rules above.
func (c checker) rules() {
	seen := map[string]*spot{}
	for _, s := range c.places.spots {
		pattern := index.ReplaceAllString(s.path, "[]")
		c.section(s.path, pattern)
		fret, err := strconv.ParseFloat(s.text, 64)
		c.wrongIf(onBoard[pattern] && err == nil && fret > float64(c.Neck.Frets), s.path, fmt.Sprintf("it is off the board, which has %d frets", c.Neck.Frets), fmt.Sprintf("give a fret up to %d", c.Neck.Frets))
		same := pattern + strings.ToLower(strings.TrimSpace(s.text))
		switch first := seen[same]; {
		case first != nil && unlike[pattern]:
			c.wrong(s.path, "this is listed twice", "keep one of them")
		case first != nil && named[pattern]:
			c.wrong(s.path, fmt.Sprintf("another has this name (line %d)", c.places.of(first).Line), "give each its own")
		}
		seen[same] = s
	}
}

// section holds one section to the rules of its keys.
func (c checker) section(path, pattern string) {
	for _, n := range needed {
		if n.section == pattern {
			c.need(path+"."+n.key, n.remedy)
		}
	}
	for _, e := range either {
		if a, b := path+"."+e[1], path+"."+e[2]; e[0] == pattern && c.Given(a) && c.Given(b) {
			c.wrong(b, fmt.Sprintf("this and %s (line %d) say the same thing", e[1], c.Place(a).Line), "keep one of them")
		}
	}
	for _, t := range together {
		if a, b := path+"."+t[1], path+"."+t[2]; t[0] == pattern && c.Given(a) != c.Given(b) {
			c.need(a, fmt.Sprintf("%s and %s belong together", t[1], t[2]))
			c.need(b, fmt.Sprintf("%s and %s belong together", t[1], t[2]))
		}
	}
}

// wrong reports a key's value.
func (c checker) wrong(key, what, remedy string) {
	at := c.Place(key)
	if at.Line > 0 {
		what = lastKey(key) + ": " + what
	}
	c.faults.Add(at, what, c.given(key), remedy)
}

// wrongIf reports a key's value where something is so.
func (c checker) wrongIf(so bool, key, what, remedy string) {
	if so {
		c.wrong(key, what, remedy)
	}
}

// need reports a key that is not there, at its section.
func (c checker) need(key, remedy string) {
	if !c.Given(key) {
		section, name := inSection(key)
		c.faults.Add(c.Place(section), name+" is missing in "+header(section), "", remedy)
	}
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
	_, key := inSection(path)
	key, _, _ = strings.Cut(key, "[")
	return key
}

// inSection parts a path into its section, "" for the top of the file, and its key.
func inSection(path string) (section, key string) {
	if i := strings.LastIndexByte(path, '.'); i >= 0 {
		return path[:i], path[i+1:]
	}
	return "", path
}

// header names a section as a file does: "[neck]", "[[blanks]]".
func header(section string) string {
	if name, _, list := strings.Cut(section, "["); list {
		return "[[" + name + "]]"
	}
	return "[" + section + "]"
}
