package gauges

import "scalepair/data/fault"

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
	Packing  float64 // filled share of the layer's ring; 0: from the formula for close round wire; a flat wrap must state it
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
	Diameters    DiameterFrom // how core and wires are known
	Wraps        []Wrap
	WindingM     float64
}
