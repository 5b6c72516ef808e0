package gauges

import (
	"fmt"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// WrapForm is the form of a wrap wire.
type WrapForm int

// The forms. A flat wrap is flat wire, or round wire ground down afterwards.
const (
	RoundWire WrapForm = iota
	FlatWire
)

var wrapForms = []string{"round", "flat"}

// String gives "round" or "flat".
func (f WrapForm) String() string { return wrapForms[f] }

// MarshalText gives the word of String.
func (f WrapForm) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// UnmarshalText reads one of those words.
func (f *WrapForm) UnmarshalText(text []byte) error {
	form, err := wordAmong[WrapForm]("form", text, wrapForms)
	*f = form
	return err
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
	Place     fault.Place  `toml:"-"`
	Gauge     string       `toml:"gauge"`
	Family    string       `toml:"construction"` // the builder's name for its kind; "" is Plain where there is no wrap
	Core      unit.Length  `toml:"core" range:"0.05 mm, 5 mm"`
	Shape     Shape        `toml:"core_shape"`
	Material  string       `toml:"core_material"` // "" is music wire
	Diameters DiameterFrom `toml:"diameters"`     // how core and wires are known
	Wraps     []Wrap       `toml:"wraps"`
	Winding   unit.Length  `toml:"winding" range:"50 mm, 5000 mm"` // wound length of a bought string; 0 not stated
}

// family is the name of the construction's kind.
func (c Construction) family() string {
	if c.Family == "" && len(c.Wraps) == 0 {
		return Plain
	}
	return c.Family
}

// check reports everything that is wrong with a construction by itself.
func (c Construction) check(faults *fault.List) {
	at := func(string) fault.Place { return c.Place }
	before := len(*faults)
	wires := []sized{{"core", float64(c.Core), 0.05e-3, 3e-3, nil, showDiameter}, {"winding", float64(c.Winding), 0.1, 5, nil, showMM}}
	for _, w := range c.Wraps {
		wires = append(wires, sized{"wrap wire", float64(w.Wire), 0.02e-3, 1.5e-3, nil, showDiameter})
	}
	for i, s := range wires {
		if s.x == 0 && i != 1 {
			faults.Add(c.Place, fmt.Sprintf("gauge %q: the %s's diameter is missing", c.Gauge, s.column), "", "give it as 0.40 mm")
		}
		s.check(at, nil, faults)
	}
	if labelKey(c.Gauge) == "" {
		faults.Add(c.Place, "a construction without a gauge", "", "give every gauge a label of its own")
	}
	if len(*faults) == before {
		c.checkWraps(faults)
	}
}

func (c Construction) checkWraps(faults *fault.List) {
	switch {
	case isPlain(c.family()) && len(c.Wraps) > 0:
		faults.Add(c.Place, fmt.Sprintf("gauge %q is plain and has a wrap", c.Gauge), "", "name its kind of wound string, or leave the wrap out")
	case !isPlain(c.family()) && len(c.Wraps) == 0:
		faults.Add(c.Place, fmt.Sprintf("gauge %q has no wrap", c.Gauge), c.family(), "give its wraps from the inside out, or write plain")
	case isPlain(c.family()) && c.Shape == Hex:
		faults.Add(c.Place, fmt.Sprintf("gauge %q is plain and hexagonal", c.Gauge), "", "plain strings are round")
	}
	for _, w := range c.Wraps {
		switch {
		case w.Packing != 0 && !(w.Packing >= 0.3 && w.Packing <= 1):
			faults.Add(c.Place, fmt.Sprintf("gauge %q: a packing outside 0.3 to 1", c.Gauge), decimals(float64(w.Packing), 3), "it is the share of the wrap's ring that metal fills")
		case w.Packing == 0 && w.Form == FlatWire:
			faults.Add(c.Place, fmt.Sprintf("gauge %q: a flat wrap needs its packing", c.Gauge), "",
				"give the share of the ring that metal fills, as 0.95, or weigh a piece")
		}
	}
}

// reading gives the construction's sizes as a row of the readings would.
func (c Construction) reading(w wound) Reading {
	r := Reading{
		Place: c.Place, Gauge: c.Gauge, Construction: c.family(), Material: c.Material, Kind: Listed,
		OuterM: w.outer(), OuterFrom: c.Diameters, CoreM: float64(c.Core), CoreFrom: c.Diameters, Shape: c.Shape, WindingM: float64(c.Winding),
	}
	if isPlain(c.family()) {
		r.Construction, r.CoreM = Plain, 0
	}
	return r
}
