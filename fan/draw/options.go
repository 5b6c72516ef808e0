package draw

import (
	"math"
	"slices"
	"strings"

	"scalepair/data/fault"
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
	Hide []LayerName
	// Title heads the drawing; Remarks follow it, line breaks kept; Date is
	// printed as given and only when given.
	Title, Remarks, Date string
	// Unit is that of the lengths in words; the drawing's own is always mm.
	Unit unit.LengthUnit
	// Strings names the strings, string 1 first; nil for numbers alone.
	Strings []StringWords
	// Compensations are the saddles' compensations, string 1 first; nil when none is
	// known. A nil one is not known: its saddle point is drawn on the theoretical
	// line, as a ring without a cross, and named so.
	Compensations []*fan.Compensation
	// Dots say which frets carry dots; nil for those of fan.CommonDots.
	Dots *Dots
}

// Dots are the frets whose space carries a dot on the face and on the bass
// edge; those that are also among Double have two. FaceMM and SideMM are the
// dots' diameters, up to 50 mm; 0 stands for 6 and 2 mm.
type Dots struct {
	Face, Side, Double []int
	FaceMM, SideMM     float64
}

// StringWords is what is written on a string: its note and its gauge, both in
// the caller's words.
type StringWords struct{ Note, Gauge string }

// ContentLayers gives the layers of a fan's drawing, which Options can hide.
func ContentLayers() []LayerName {
	return slices.DeleteFunc(LayerNames(), func(n LayerName) bool { return n == LayerJoins || n == LayerFrame })
}

// ParseLayers reads a list of content layers, the parts of a drawing, separated
// by commas. The error is a fault.List that names every unknown one.
func ParseLayers(words string) ([]LayerName, error) {
	var faults fault.List
	var out []LayerName
	known := layerWords()
	for _, word := range strings.FieldsFunc(words, func(r rune) bool { return r == ',' || r == ' ' }) {
		name := LayerName(strings.ReplaceAll(strings.ToLower(word), "_", "-"))
		if slices.Contains(known, string(name)) {
			out = append(out, name)
			continue
		}
		remedy := "take one of " + strings.Join(known, ", ")
		if meant := suggest.Nearest(word, known); meant != "" {
			remedy = "did you mean " + meant + "?"
		}
		faults.Add(fault.Place{Input: "layers"}, "there is no part of that name", word, remedy)
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
	count("compensations", len(o.Compensations))
	if o.Dots != nil {
		o.Dots.check(&faults)
	}
	return faults.Err()
}

// check refuses diameters that no dot has.
func (d Dots) check(faults *fault.List) {
	const mostMM = 50 // wider than a space between frets (judgement)
	for _, dot := range []struct {
		what string
		mm   float64
	}{{"face", d.FaceMM}, {"side", d.SideMM}} {
		switch {
		case math.IsNaN(dot.mm), math.IsInf(dot.mm, 0):
			faults.Add(fault.Place{Input: "dots"}, "the diameter of the "+dot.what+" dots is no number", "", "give it in mm")
		case dot.mm < 0, dot.mm > mostMM:
			faults.Add(fault.Place{Input: "dots"}, "the diameter of the "+dot.what+" dots is out of range", unit.Fixed(dot.mm, 2)+" mm", "from 0 to 50 mm")
		}
	}
}
