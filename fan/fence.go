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
	Slant                                  unit.Angle // of slot and fence
}

// Fences gives the fence of every slot (see [Layout.Slotted]), for a saw that cuts kerf
// wide.
func (l *Layout) Fences(kerf unit.Length) (list []Fence) {
	for _, fret := range l.Slotted() {
		list = append(list, l.fence(fret, kerf))
	}
	return list
}

func (l *Layout) fence(fret Fret, kerf unit.Length) Fence {
	f := &l.Frame
	line := fret.Line
	line.Cross -= kerf / 2 * unit.Length(math.Sqrt(1+float64(line.TanSlant*line.TanSlant)))
	face := f.slot(line)
	bassZero, trebleZero := l.Frets[0].Slot.Bass.X, l.Frets[0].Slot.Treble.X
	// Both edges run at the outer strings' angle: x grows by c along them.
	along := func(x, zero unit.Length) unit.Length { return plain(f.AlongLine(x - zero)) }
	return Fence{
		Fret:                fret.Number,
		BassAlongEdge:       along(fret.Slot.Bass.X, bassZero),
		TrebleAlongEdge:     along(fret.Slot.Treble.X, trebleZero),
		FaceBassAlongEdge:   along(face.Bass.X, bassZero),
		FaceTrebleAlongEdge: along(face.Treble.X, trebleZero),
		Slant:               line.Slant,
	}
}
