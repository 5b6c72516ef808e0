package fan_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
)

func zeroFretted() fan.Spec {
	s := sixStrings()
	s.ZeroFret, s.NutShelf = true, unit.MM(8)
	return s
}

func TestZeroFretIsSawnLikeTheOthers(t *testing.T) {
	l := mustLayout(t, zeroFretted())
	slotted := l.Slotted()
	require.Len(t, slotted, 25)
	require.Equal(t, l.Nut, slotted[0].Line, "on the nut line")

	fences, err := l.Fences(unit.MM(0.6))
	require.NoError(t, err)
	require.Len(t, fences, 25)
	require.Zero(t, fences[0].Fret)
	require.Zero(t, fences[0].BassAlongEdge.MM())
	require.Zero(t, fences[0].TrebleAlongEdge.MM())
	require.Negative(t, fences[0].FaceBassAlongEdge.MM(), "behind the nut line")
	require.Negative(t, fences[0].FaceTrebleAlongEdge.MM())

	saw := sawing()
	saw.RadiusNut, saw.Thickness = unit.MM(250), 0
	depths, err := saw.depths(l)
	require.NoError(t, err)
	require.Len(t, depths, 25)
	require.Zero(t, depths[0].Fret)
	require.InDelta(t, 250, depths[0].Radius.MM(), close9, "the radius at the nut")
	slot := l.Frets[0].Slot
	require.InDelta(t, 2+fan.Drop(unit.MM(250-150*-slot.Bass.X.MM()/l.Frets[24].Line.Cross.MM()), slot.Bass.Y).MM(), depths[0].Bass.MM(), close9)
}

func TestZeroFretWantsBoardBehindIt(t *testing.T) {
	for pos, refused := range map[float64]bool{0: true, 2.9: true, 3: false, 8: false} {
		s := zeroFretted()
		s.NutShelf = unit.MM(pos)
		_, err := fan.New(s)
		if !refused {
			require.NoError(t, err)
			continue
		}
		require.ErrorContains(t, err, "neck.zero_fret: a zero fret's slot wants board behind it")
		require.ErrorContains(t, err, `nut_shelf = "8 mm"`)
	}
}
