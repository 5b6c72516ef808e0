package fan

import (
	"math"

	"scalepair/data/unit"
)

// Fence is how a straight fence is set for one slot: a square mitre box fits
// the neutral fret only. The fence lies on the nut side of the slot, and the
// blade runs against its bridge side.
type Fence struct {
	Fret int
	// BassAlongEdge and TrebleAlongEdge are the slot's end points along
	// the board's edges, from where the nut line meets that edge.
	BassAlongEdge, TrebleAlongEdge unit.Length
	// FaceBassAlongEdge and FaceTrebleAlongEdge are where the fence's working face meets
	// the edges, measured the same way: half a kerf nearer the nut, square to
	// the slot. Negative where that falls behind the nut line.
	FaceBassAlongEdge, FaceTrebleAlongEdge unit.Length
	FenceBass, FenceTreble                 Point      // the same as points
	Slant                                  unit.Angle // of slot and fence
}

// Fences gives the fence of every slot (see [Layout.Slotted]), for a saw that cuts kerf
// wide. A kerf below 0 is a fault.
func (l *Layout) Fences(kerf unit.Length) ([]Fence, error) {
	var f faults
	if !f.size(keyKerf, "the saw's cut", kerf) {
		return nil, f.list.Err()
	}
	list := make([]Fence, 0, len(l.Frets))
	for _, fret := range l.Slotted() {
		list = append(list, l.fence(fret, kerf))
	}
	return list, nil
}

func (l *Layout) fence(fret Fret, kerf unit.Length) Fence {
	f := &l.Frame
	line := fret.Line
	line.Cross -= kerf / 2 * unit.Length(math.Sqrt(1+float64(line.TanSlant*line.TanSlant)))
	face := f.slot(line)
	bassZero, trebleZero := l.Frets[0].Slot.Bass.X, l.Frets[0].Slot.Treble.X
	// Both edges run at the outer strings' angle: x grows by c along them.
	along := func(x, zero unit.Length) unit.Length { return plain((x - zero) / unit.Length(f.c)) }
	return Fence{
		Fret:                fret.Number,
		BassAlongEdge:       along(fret.Slot.Bass.X, bassZero),
		TrebleAlongEdge:     along(fret.Slot.Treble.X, trebleZero),
		FaceBassAlongEdge:   along(face.Bass.X, bassZero),
		FaceTrebleAlongEdge: along(face.Treble.X, trebleZero),
		FenceBass:           face.Bass, FenceTreble: face.Treble,
		Slant: line.Slant,
	}
}
