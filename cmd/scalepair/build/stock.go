package build

import (
	"fmt"

	"scalepair/data/unit"
)

// Blank is a fingerboard blank on offer.
type Blank struct {
	// Name is "blank 1" and so on unless given.
	Name          string
	Length, Width unit.Length
	// Thickness is 0 when not given.
	Thickness unit.Length
}

// Shape is the core's cross section.
type Shape int

// The shapes of a core.
const (
	// ShapeUnknown: taken as round, and marked so.
	ShapeUnknown Shape = iota
	Round
	Hex
)

// Construction is a gauge known by its core and wraps only.
type Construction struct {
	// Gauge is its stock label, Family the user's name for the construction:
	// "plain" unless given where there are no wraps.
	Gauge, Family string
	// Measured: core and wires were measured with calipers; else they are the
	// nominal sizes.
	Measured bool
	// Core is the core's diameter, across flats for a hex core.
	Core  unit.Length
	Shape Shape
	// Material of the core; "music wire" unless given.
	Material string
	// Wraps from the inside out; none for a plain string.
	Wraps []Wrap
	// Winding is the wound length; 0 when not given.
	Winding unit.Length
}

// Wrap is one layer of a wound string.
type Wrap struct {
	// Wire is the wrap wire's diameter, or its thickness where flat.
	Wire     unit.Length
	Material string
	// Flat: flat or ground wire, which fills its layer.
	Flat bool
	// Packing is the filled share of the layer's ring, 0.3 to 1; 0 when not
	// given. Flat wire must state it.
	Packing float64
}

// Material is one of the user's own.
type Material struct {
	Name string
	// DensityGCM3 in g/cm3, 0.5 to 23; DensityAccuracyGCM3 its plus or minus.
	DensityGCM3, DensityAccuracyGCM3 float64
	// YoungsGPa and StrengthMPa are 0 when not given.
	YoungsGPa, StrengthMPa float64
}

func readBlanks(root *section) []Blank {
	var out []Blank
	for i, s := range root.subs("blanks") {
		b := Blank{Name: fmt.Sprintf("blank %d", i+1)}
		s.text("name", &b.Name)
		if s.exchanged("length", "width") {
			s.wrong(s.find("width"), "the blank is wider than its length of "+s.asWritten("length"), "exchange them; the length lies along the centreline")
		} else {
			s.length("length", &b.Length, unit.MM(100), unit.MM(3000))
			s.length("width", &b.Width, unit.MM(20), unit.MM(1000))
		}
		s.length("thickness", &b.Thickness, unit.MM(1), unit.MM(100))
		s.require("length", `write length = "560 mm", say: it lies along the centreline`)
		s.require("width", `write width = "80 mm", say`)
		out = append(out, b)
	}
	return out
}

// exchanged tells whether the second of two lengths is the greater one, whatever
// their ranges.
func (s *section) exchanged(longer, shorter string) bool {
	a, b := s.find(longer), s.find(shorter)
	if a == nil || b == nil {
		return false
	}
	x, errX := unit.ParseLength(a.text)
	y, errY := unit.ParseLength(b.text)
	return errX == nil && errY == nil && x > 0 && y > x
}

func readConstructions(root *section) []Construction {
	var out []Construction
	for _, s := range root.subs("constructions") {
		c := Construction{Material: "music wire"}
		s.text("gauge", &c.Gauge)
		s.length("core", &c.Core, unit.MM(0.05), unit.MM(5))
		s.require("gauge", `give its stock label, such as gauge = "w42"`)
		s.require("core", `give the core's diameter, such as core = "0.41 mm"`)
		choice(s, "core_shape", &c.Shape, "unknown", "round", "hex")
		s.text("core_material", &c.Material)
		known := 0
		choice(s, "diameters", &known, "nominal", "measured")
		c.Measured = known == 1
		c.Wraps = readWraps(s)
		if len(c.Wraps) == 0 {
			c.Family = "plain"
		}
		s.text("construction", &c.Family)
		if len(c.Wraps) > 0 && c.Family == "" {
			s.require("construction", `name its family, such as construction = "nickel wound"`)
		}
		s.length("winding", &c.Winding, unit.MM(50), unit.MM(5000))
		out = append(out, c)
	}
	return out
}

func readWraps(construction *section) []Wrap {
	var out []Wrap
	for _, s := range construction.subs("wraps") {
		w := Wrap{}
		s.length("wire", &w.Wire, unit.MM(0.01), unit.MM(3))
		s.text("material", &w.Material)
		s.require("wire", `give the wrap wire's diameter, such as wire = "0.30 mm"`)
		s.require("material", `name it, such as material = "nickel-plated steel"`)
		form := 0
		choice(s, "form", &form, "round", "flat")
		w.Flat = form == 1
		s.number("packing", &w.Packing, 0.3, 1)
		if w.Flat {
			s.require("packing", "flat wire needs the filled share of its layer, 0.3 to 1")
		}
		out = append(out, w)
	}
	return out
}

func readMaterials(root *section) []Material {
	var out []Material
	for _, s := range root.subs("materials") {
		var m Material
		s.text("name", &m.Name)
		s.number("density_g_cm3", &m.DensityGCM3, 0.5, 23)
		s.require("name", `give it one, such as name = "my wire"`)
		s.require("density_g_cm3", "write density_g_cm3 = 7.85, say")
		s.number("density_accuracy_g_cm3", &m.DensityAccuracyGCM3, 0, 5)
		s.number("youngs_gpa", &m.YoungsGPa, 0.1, 1000)
		s.number("strength_mpa", &m.StrengthMPa, 10, 10000)
		out = append(out, m)
	}
	return out
}
