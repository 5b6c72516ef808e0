package fan

// Cut is one piece of fret wire.
type Cut struct {
	Fret     int
	LengthMM float64
}

// Wire is the fret wire of a board.
type Wire struct {
	Cuts    []Cut   // by fret, the lowest first
	SumMM   float64 // of the cuts
	SpareMM float64 // on top, for slips
	TotalMM float64 // to buy
}

// Wire gives the cut list with overhangMM of wire standing out at both ends of
// every slot (0 to 20), and spare as a share of the sum (0 to 2; 0.1 is a
// tenth), a zero fret's among them. The rise of a radiused crown
// makes a wire longer by chord^3/(24 R^2), less than 0.15 mm for 80 mm over
// 400 mm, and is left to the overhang. Other numbers are a fault.
func (l *Layout) Wire(overhangMM, spare float64) (Wire, error) {
	var f faults
	f.length("fret_wire.overhang", "the wire's overhang", overhangMM, 0, 20)
	if f.finite("fret_wire.spare_percent", "the spare share", spare) && (spare < 0 || spare > 2) {
		f.add("fret_wire.spare_percent", "the spare share is out of range", number(spare), "from 0 to 2; 0.1 is a tenth")
	}
	if err := f.list.Err(); err != nil {
		return Wire{}, err
	}
	var w Wire
	for _, fret := range l.Slotted() {
		cut := Cut{Fret: fret.Number, LengthMM: fret.Slot.LengthMM + 2*overhangMM}
		w.Cuts = append(w.Cuts, cut)
		w.SumMM += cut.LengthMM
	}
	w.SpareMM = float64(w.SumMM * spare)
	w.TotalMM = w.SumMM + w.SpareMM
	return w, nil
}
