package fan

import "math"

// Fence is how a straight fence is set for one slot: a square mitre box serves
// the neutral fret only. The fence lies on the nut side of the slot, and the
// blade runs against its bridge side.
type Fence struct {
	Fret int
	// BassAlongEdgeMM and TrebleAlongEdgeMM are the slot's end points along
	// the board's edges, from where the nut line meets that edge.
	BassAlongEdgeMM, TrebleAlongEdgeMM float64
	// FenceBassMM and FenceTrebleMM are where the fence's working face meets
	// the edges, measured the same way: half a kerf nearer the nut, square to
	// the slot. Negative where that falls behind the nut line.
	FenceBassMM, FenceTrebleMM float64
	FenceBass, FenceTreble     Point   // the same as points
	SlantRad                   float64 // of slot and fence
}

// Fences gives the fence of every slot (see [Layout.Slotted]), for a saw that cuts kerfMM
// wide. A kerf below 0 or above 3 mm is a fault.
func (l *Layout) Fences(kerfMM float64) ([]Fence, error) {
	var f faults
	if !f.length(keyKerf, "the saw's cut", kerfMM, 0, maxKerfMM) {
		return nil, f.list.Err()
	}
	list := make([]Fence, 0, len(l.Frets))
	for _, fret := range l.Slotted() {
		list = append(list, l.fence(fret, kerfMM))
	}
	return list, nil
}

func (l *Layout) fence(fret Fret, kerf float64) Fence {
	f := &l.Frame
	line := fret.Line
	line.CrossMM -= float64(kerf / 2 * math.Sqrt(1+float64(line.TanSlant*line.TanSlant)))
	face := f.slot(line)
	bassZero, trebleZero := l.Frets[0].Slot.Bass.X, l.Frets[0].Slot.Treble.X
	// Both edges run at the outer strings' angle: x grows by c along them.
	along := func(x, zero float64) float64 { return plain((x - zero) / f.c) }
	return Fence{
		Fret:              fret.Number,
		BassAlongEdgeMM:   along(fret.Slot.Bass.X, bassZero),
		TrebleAlongEdgeMM: along(fret.Slot.Treble.X, trebleZero),
		FenceBassMM:       along(face.Bass.X, bassZero),
		FenceTrebleMM:     along(face.Treble.X, trebleZero),
		FenceBass:         face.Bass, FenceTreble: face.Treble,
		SlantRad: line.SlantRad,
	}
}
