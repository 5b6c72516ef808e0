package gauges

import (
	"fmt"
	"slices"

	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/data/unit"
	"scalepair/gauges/reading"
)

// WrapForm is the form of a wrap wire.
type WrapForm int

// The forms. A flat wrap is flat wire, or round wire ground down afterwards.
const (
	RoundWire WrapForm = iota
	FlatWire
)

var wrapForms = []string{"round", "flat"}

// UnmarshalText reads one of those words.
func (f *WrapForm) UnmarshalText(text []byte) error {
	return suggest.Word(f, string(text), wrapForms)
}

// Wrap is one layer of wire around the core.
type Wrap struct {
	Wire     unit.Length `toml:"wire" range:"0.01 mm, 3 mm"` // diameter, or thickness where flat
	Material string      `toml:"material"`
	Form     WrapForm    `toml:"form"`
	Packing  unit.Ratio  `toml:"packing" range:"0.3, 1"` // filled share of the layer's ring; 0: from the formula for close round wire; a flat wrap must state it
}

// Construction is a gauge known by its core and wraps, inside out. Without
// wraps it is a plain wire.
type Construction struct {
	Place     fault.Place          `toml:"-"`
	Gauge     string               `toml:"gauge"`
	Family    string               `toml:"construction"` // the builder's name for its kind; "" is plain where there is no wrap
	Core      unit.Length          `toml:"core" range:"0.05 mm, 5 mm"`
	Shape     reading.Shape        `toml:"core_shape"`
	Material  string               `toml:"core_material"` // "" is music wire
	Diameters reading.DiameterFrom `toml:"diameters"`     // how core and wires are known
	Wraps     []Wrap               `toml:"wraps"`
	Winding   unit.Length          `toml:"winding" range:"50 mm, 5000 mm"` // wound length of a bought string; 0 not stated
}

// family is the name of the construction's kind.
func (c Construction) family() string {
	if c.Family == "" && len(c.Wraps) == 0 {
		return reading.Plain
	}
	return c.Family
}

// check reports everything that is wrong with a construction by itself.
func (c Construction) check(faults *fault.List) {
	plain := reading.IsPlain(c.family())
	for _, wrong := range []struct {
		is           bool
		what, remedy string
	}{
		{reading.Key(c.Gauge) == "", "a construction without a gauge", "give every gauge a label of its own"},
		{!(c.Core > 0), "the core's diameter is missing", "give it as 0.40 mm"},
		{plain && len(c.Wraps) > 0, "it is plain and has a wrap", "name its kind of wound string, or leave the wrap out"},
		{!plain && len(c.Wraps) == 0, "it has no wrap", "give its wraps from the inside out, or write plain"},
		{plain && c.Shape == reading.Hex, "it is plain and hexagonal", "plain strings are round"},
		{slices.ContainsFunc(c.Wraps, func(w Wrap) bool { return !(w.Wire > 0) }), "the wrap wire's diameter is missing", "give it as 0.30 mm"},
		{slices.ContainsFunc(c.Wraps, func(w Wrap) bool { return w.Packing == 0 && w.Form == FlatWire }), "a flat wrap needs its packing",
			"give the share of the ring that metal fills, as 0.95, or weigh a piece"},
	} {
		if wrong.is {
			faults.Add(c.Place, fmt.Sprintf("gauge %q: %s", c.Gauge, wrong.what), "", wrong.remedy)
		}
	}
}

// reading gives the construction's sizes as a row of the readings would.
func (c Construction) reading(w wound) reading.Reading {
	r := reading.Reading{
		Place: c.Place, Gauge: c.Gauge, Construction: c.family(), Material: c.Material, Kind: reading.Listed,
		Outer: unit.Length(w.outer()), OuterFrom: c.Diameters, Core: c.Core, CoreFrom: c.Diameters, Shape: c.Shape, Winding: c.Winding,
	}
	if reading.IsPlain(r.Construction) {
		r.Construction, r.Core = reading.Plain, 0
	}
	return r
}
