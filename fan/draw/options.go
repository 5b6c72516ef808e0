package draw

import (
	"slices"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/near"
	"scalepair/data/unit"
	"scalepair/fan"
)

// Options say what a drawing of a fan shows. The zero value shows everything
// of a right-handed instrument, in millimetres, without title and date.
type Options struct {
	// LeftHanded draws the face of a left-handed instrument: nut at the left,
	// bass side above.
	LeftHanded bool
	// Hide lists the layers to leave out. Without LayerSaddles the string
	// lines end at the blank's edge, and a template of the board alone needs
	// less paper.
	Hide []LayerName
	// Title heads the drawing; Remarks follow it, line breaks kept; Date is
	// printed as given and only when given.
	Title, Remarks, Date string
	// Unit is that of the lengths in words; the drawing's own is always mm.
	Unit unit.LengthUnit
	// Strings names the strings, string 1 first; nil for numbers alone.
	Strings []StringWords
	// SetBacks are the saddles' set-backs, string 1 first; nil puts the saddle
	// points on the theoretical line.
	SetBacks []fan.SetBack
}

// StringWords is what is written on a string: its note and its gauge, both in
// the caller's words.
type StringWords struct{ Note, Gauge string }

// ContentLayers gives the layers of a fan's drawing, which Options can hide.
func ContentLayers() []LayerName {
	return slices.DeleteFunc(LayerNames(), func(n LayerName) bool { return n == LayerJoins || n == LayerFrame })
}

// ParseLayers reads a list of content layers, separated by commas. The error
// is a fault.List that names every unknown one.
func ParseLayers(words string) ([]LayerName, error) {
	var faults fault.List
	var out []LayerName
	known := layerWords()
	for _, word := range strings.FieldsFunc(words, func(r rune) bool { return r == ',' || r == ' ' }) {
		name := LayerName(strings.ReplaceAll(strings.ToLower(word), "-", "_"))
		if slices.Contains(known, string(name)) {
			out = append(out, name)
			continue
		}
		remedy := "take one of " + strings.Join(known, ", ")
		if meant := near.Suggest(word, known); meant != "" {
			remedy = "did you mean " + meant + "?"
		}
		faults.Add(fault.Place{Input: "layers"}, "there is no layer of that name", word, remedy)
	}
	return out, faults.Err()
}

func layerWords() []string {
	var words []string
	for _, n := range ContentLayers() {
		words = append(words, string(n))
	}
	return words
}

// check finds the faults of o for a layout.
func (o Options) check(l *fan.Layout) error {
	var faults fault.List
	count := func(what string, got int) {
		if got != 0 && got != len(l.Strings) {
			faults.Add(fault.Place{Input: "drawing"}, "wrong number of "+what, unit.Fixed(float64(got), 0),
				"give one for each of the "+unit.Fixed(float64(len(l.Strings)), 0)+" strings")
		}
	}
	count("string names", len(o.Strings))
	count("set-backs", len(o.SetBacks))
	return faults.Err()
}
