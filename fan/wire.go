package fan

import (
	"scalepair/data/fault"
	"scalepair/data/unit"
)

// FretWire is the wire and the saw for it. 0 means not known.
type FretWire struct {
	// TangDepth is from the underside of the fret's crown to the tang's foot.
	TangDepth unit.Length `toml:"tang_depth" json:"tang_depth_mm" range:"0.5 mm, 5 mm"`
	// TangWidth is the tang's thickness without its barbs, BarbWidth with them;
	// Kerf is the width of the saw's cut.
	TangWidth unit.Length `toml:"tang_width" json:"tang_width_mm" range:"0.2 mm, 2 mm"`
	BarbWidth unit.Length `toml:"barb_width" json:"barb_width_mm" range:"0.2 mm, 2 mm"`
	Kerf      unit.Length `toml:"kerf" json:"kerf_mm" range:"0.2 mm, 3 mm"`
	// Clearance is the air left under the tang.
	Clearance unit.Length `toml:"clearance" json:"clearance_mm" range:"0 mm, 3 mm"`
	// Overhang is how far the wire stands out at each edge before it is trimmed.
	Overhang unit.Length `toml:"overhang" json:"overhang_mm" range:"0 mm, 50 mm"`
	// Spare is bought on top, for slips.
	Spare unit.Ratio `toml:"spare_percent" json:"spare_percent" range:"0, 100"`
}

// DefaultFretWire has 0.4 mm of clearance, 3 mm of overhang and a tenth to spare
// (all judgement).
func DefaultFretWire() FretWire {
	return FretWire{Clearance: 0.4 * unit.Millimetre, Overhang: 3 * unit.Millimetre, Spare: unit.Percent(10)}
}

// KerfFit says how a fret wire's tang sits in a saw cut.
type KerfFit int

const (
	KerfUnknown KerfFit = iota // a width is not known
	KerfHolds                  // the web enters and, as far as the barbs are known, they bite
	KerfWedges                 // narrower than the web: the wire wedges the slots open and bends the neck back
	KerfLoose                  // not narrower than the barbs: nothing bites
)

// kerfSlack is how much narrower than the web a cut may be before the wire is
// said to wedge: about what wood gives without pushing back (judgement).
const kerfSlack unit.Length = 0.03 * unit.Millimetre

// TangInCut compares the saw's cut with the tang.
func (w FretWire) TangInCut() KerfFit {
	switch {
	case w.Kerf == 0 || w.TangWidth == 0 && w.BarbWidth == 0:
		return KerfUnknown
	case w.Kerf < w.TangWidth-kerfSlack:
		return KerfWedges
	case w.BarbWidth > 0 && w.Kerf >= w.BarbWidth:
		return KerfLoose
	case w.TangWidth == 0:
		return KerfUnknown
	}
	return KerfHolds
}

// Cut is one piece of fret wire.
type Cut struct {
	Fret   int
	Length unit.Length
}

// WireList is the fret wire of a board.
type WireList struct {
	Cuts  []Cut       // by fret, the lowest first
	Sum   unit.Length // of the cuts
	Total unit.Length // to buy, with what is to spare
}

// Wire gives the cut list, a zero fret's piece among the others, with the
// overhang at both ends of every slot. The rise of a radiused board makes a wire
// longer by chord^3/(24 R^2), less than 0.15 mm for 80 mm over 400 mm, and is
// left to the overhang. Barbs narrower than the tang are a fault.
func (l *Layout) Wire(w FretWire) (list WireList, err error) {
	if w.BarbWidth > 0 && w.BarbWidth < w.TangWidth {
		return list, fault.List{{Place: keyed("fret_wire.barb_width"), What: "the barbs are narrower than the tang", Remedy: "measure over the barbs"}}
	}
	for _, fret := range l.Slotted() {
		cut := Cut{Fret: fret.Number, Length: fret.Slot.Length + 2*w.Overhang}
		list.Cuts = append(list.Cuts, cut)
		list.Sum += cut.Length
	}
	list.Total = list.Sum + list.Sum*unit.Length(w.Spare)
	return list, nil
}
