package fan

import "scalepair/data/unit"

// Cut is one piece of fret wire.
type Cut struct {
	Fret   int
	Length unit.Length
}

// Wire is the fret wire of a board.
type Wire struct {
	Cuts  []Cut       // by fret, the lowest first
	Sum   unit.Length // of the cuts
	Spare unit.Length // on top, for slips
	Total unit.Length // to buy
}

// Wire gives the cut list with an overhang of wire standing out at both ends of
// every slot (0 to 20), and spare as a part of the sum (0 to 2), a zero fret's among them. The rise of a radiused crown
// makes a wire longer by chord^3/(24 R^2), less than 0.15 mm for 80 mm over
// 400 mm, and is left to the overhang. Other numbers are a fault.
func (l *Layout) Wire(overhang unit.Length, spare unit.Ratio) (Wire, error) {
	var f faults
	f.length("fret_wire.overhang", "the wire's overhang", overhang, 0, 20*unit.Millimetre)
	if f.finite("fret_wire.spare_percent", "the spare share", float64(spare)) && (spare < 0 || spare > 2) {
		f.add("fret_wire.spare_percent", "the spare share is out of range", number(float64(spare)), "from 0 to 2; 0.1 is a tenth")
	}
	if err := f.list.Err(); err != nil {
		return Wire{}, err
	}
	var w Wire
	for _, fret := range l.Slotted() {
		cut := Cut{Fret: fret.Number, Length: fret.Slot.Length + 2*overhang}
		w.Cuts = append(w.Cuts, cut)
		w.Sum += cut.Length
	}
	w.Spare = w.Sum * unit.Length(spare)
	w.Total = w.Sum + w.Spare
	return w, nil
}
