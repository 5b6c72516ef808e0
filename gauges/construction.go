package gauges

import (
	"fmt"

	"scalepair/data/fault"
)

// WrapForm is the form of a wrap wire.
type WrapForm int

// The forms. A flat wrap is flat wire, or round wire ground down afterwards.
const (
	RoundWire WrapForm = iota
	FlatWire
)

// Wrap is one layer of wire around the core.
type Wrap struct {
	WireM    float64 // diameter, or thickness where flat, m
	Material string
	Form     WrapForm
	Place    fault.Place // of the material in its file; the construction's where it is zero
	Packing  float64     // filled share of the layer's ring; 0: from the formula for close round wire; a flat wrap must state it
}

// Construction is a gauge known by its core and wraps, inside out. Without
// wraps it is a plain wire.
type Construction struct {
	Place        fault.Place
	Gauge        string
	Family       string // Plain where there is no wrap
	CoreM        float64
	Shape        Shape
	CoreMaterial string       // "" is music wire
	CorePlace    fault.Place  // of the core's material in its file; Place where it is zero
	Diameters    DiameterFrom // how core and wires are known
	Wraps        []Wrap
	WindingM     float64
}

// at is a place within the construction, or its own where that is not known.
func (c Construction) at(p fault.Place) fault.Place {
	if p == (fault.Place{}) {
		return c.Place
	}
	return p
}

// check reports everything that is wrong with a construction by itself.
func (c Construction) check(faults *fault.List) {
	at := func(string) fault.Place { return c.Place }
	before := len(*faults)
	wires := []sized{{"core", c.CoreM, 0.05e-3, 3e-3, nil, showDiameter}, {"winding", c.WindingM, 0.1, 5, nil, showMM}}
	for _, w := range c.Wraps {
		wires = append(wires, sized{"wrap wire", w.WireM, 0.02e-3, 1.5e-3, nil, showDiameter})
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
	case isPlain(c.Family) && len(c.Wraps) > 0:
		faults.Add(c.Place, fmt.Sprintf("gauge %q is plain and has a wrap", c.Gauge), "", "name its kind of wound string, or leave the wrap out")
	case !isPlain(c.Family) && len(c.Wraps) == 0:
		faults.Add(c.Place, fmt.Sprintf("gauge %q has no wrap", c.Gauge), c.Family, "give its wraps from the inside out, or write plain")
	case isPlain(c.Family) && c.Shape == Hex:
		faults.Add(c.Place, fmt.Sprintf("gauge %q is plain and hexagonal", c.Gauge), "", "plain strings are round")
	}
	for _, w := range c.Wraps {
		switch {
		case w.Packing != 0 && !(w.Packing >= 0.3 && w.Packing <= 1):
			faults.Add(c.Place, fmt.Sprintf("gauge %q: a packing outside 0.3 to 1", c.Gauge), decimals(w.Packing, 3), "it is the share of the wrap's ring that metal fills")
		case w.Packing == 0 && w.Form == FlatWire:
			faults.Add(c.Place, fmt.Sprintf("gauge %q: a flat wrap needs its packing", c.Gauge), "",
				"give the share of the ring that metal fills, as 0.95, or weigh a piece")
		}
	}
}

// reading gives the construction's sizes as a row of the readings would.
func (c Construction) reading(w wound) Reading {
	r := Reading{
		Place: c.Place, Gauge: c.Gauge, Construction: c.Family, Material: c.CoreMaterial, Kind: Listed,
		OuterM: w.outer(), OuterFrom: c.Diameters, CoreM: c.CoreM, CoreFrom: c.Diameters, Shape: c.Shape, WindingM: c.WindingM,
	}
	if isPlain(c.Family) {
		r.Construction, r.CoreM = Plain, 0
	}
	return r
}
