package mark

import (
	"scalepair/fan"
)

// Bench is what a setting-out list depends on beside the layout.
type Bench struct {
	// Resolution is the least difference that calipers or ruler show.
	Resolution Resolution
	// KerfMM is the width of the saw's cut, for the fences; 0 to 3 mm.
	KerfMM float64
}

// FigureKind says how a figure is to be read.
type FigureKind int

// The kinds of figure.
const (
	FigureLength FigureKind = iota
	FigureAngle
)

// Figure is one number of a step.
type Figure struct {
	Name     string
	Kind     FigureKind
	Length   Rounded // of FigureLength
	AngleRad float64 // of FigureAngle
}

// MarkRow is one mark on a string line, both ways.
type MarkRow struct {
	Fret    int
	FromNut Rounded
	Step    Rounded // from the mark before: the difference of the rounded positions
	// MMPerCent is how far the mark may stand off for one cent of pitch.
	MMPerCent float64
}

// SlotRow is one slot.
type SlotRow struct {
	Fret            int
	SlantRad        float64 // positive where the bass end is nearer the bridge
	Bass, Treble    Rounded // end points along the board's edges, from where the nut line meets the edge
	Length          Rounded // along the slot
	FenceBass       Rounded // where the fence's working face meets the bass edge, half a kerf nearer the nut
	FenceTreble     Rounded // the same at the treble edge
	SquareBoxServes bool    // true for the slot that stands square
}

// DotRow is one dot.
type DotRow struct {
	Fret  int
	Along Rounded // face dots: along the centreline from where the nut line crosses it; side dots: along the bass edge from the nut line
	Out   Rounded // face dots: out from the centreline, bass side positive; 0 for side dots
}

// Task is one step of the setting-out list.
type Task struct {
	Title   string
	Do      string   // what to do, in a builder's words, without numbers
	Figures []Figure // the numbers it needs
	Marks   []MarkRow
	Slots   []SlotRow
	Dots    []DotRow
}

// List is the setting-out list in working order.
type List struct {
	Resolution Resolution
	Tasks      []Task
}

// SettingOut gives the setting-out list of a layout, in working order. The
// error is a fault.List.
func SettingOut(l *fan.Layout, b Bench) (List, error) { return List{}, nil }
