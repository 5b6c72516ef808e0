package draw

import (
	"slices"
	"strings"

	"scalepair/data/suggest"
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
	Hide Layers
	// Title heads the drawing; Remarks follow it, line breaks kept; Date is
	// printed as given and only when given.
	Title, Remarks, Date string
	// Unit is that of the lengths in words; the drawing's own is always mm.
	Unit unit.LengthUnit
	// Kerf is the width of the saw's cut, 0 where it is not known: then slots
	// have no outline. Overrun is how far the outline runs on beyond the board's
	// edges.
	Kerf, Overrun unit.Length
	// Strings names the strings, string 1 first; nil for numbers alone.
	Strings []StringWords
	// Compensations are the saddles' compensations, string 1 first; nil when
	// none is known. A nil one is not known: its saddle point is drawn on the
	// theoretical line, as a ring without a cross, and named so.
	Compensations []*fan.Compensation
	// Dots say which frets carry dots; nil for those of fan.CommonDots.
	Dots *fan.Dots
}

// StringWords is what is written on a string: its note and its gauge, both in
// the caller's words.
type StringWords struct{ Note, Gauge string }

// Layers is a list of parts of a fan's drawing.
type Layers []LayerName

// ContentLayers gives the layers of a fan's drawing, which Options can hide.
func ContentLayers() Layers {
	return slices.DeleteFunc(LayerNames(), func(n LayerName) bool { return n == LayerJoins || n == LayerFrame })
}

// Others gives the content layers that l does not name.
func (l Layers) Others() Layers {
	return slices.DeleteFunc(ContentLayers(), func(n LayerName) bool { return slices.Contains(l, n) })
}

// Names gives the layers' names.
func (l Layers) Names() []string {
	var out []string
	for _, n := range l {
		out = append(out, string(n))
	}
	return out
}

// UnmarshalText reads names of content layers, separated by commas.
func (l *Layers) UnmarshalText(text []byte) error {
	known := ContentLayers()
	*l = nil
	for _, word := range strings.FieldsFunc(string(text), func(r rune) bool { return r == ',' || r == ' ' }) {
		var i int
		if err := suggest.Word(&i, strings.ReplaceAll(word, "_", "-"), known.Names()); err != nil {
			return err
		}
		*l = append(*l, known[i])
	}
	return nil
}
