package fan_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/fan"
)

func zeroFretted() fan.Spec {
	s := sixStrings()
	s.ZeroFret, s.NutShelfMM = true, 8
	return s
}

func TestZeroFretIsSawnLikeTheOthers(t *testing.T) {
	l := mustLayout(t, zeroFretted())
	slotted := l.Slotted()
	require.Len(t, slotted, 25)
	require.Equal(t, l.Nut, slotted[0].Line, "on the nut line")

	fences, err := l.Fences(0.6)
	require.NoError(t, err)
	require.Len(t, fences, 25)
	require.Zero(t, fences[0].Fret)
	require.Zero(t, fences[0].BassAlongEdgeMM)
	require.Zero(t, fences[0].TrebleAlongEdgeMM)
	require.Negative(t, fences[0].FenceBassMM, "behind the nut line")
	require.Negative(t, fences[0].FenceTrebleMM)

	saw := fan.Sawing{RadiusNutMM: 250, RadiusLastMM: 400, TangMM: 1.6, ClearanceMM: 0.4}
	depths, err := l.Depths(saw)
	require.NoError(t, err)
	require.Len(t, depths, 25)
	require.Zero(t, depths[0].Fret)
	require.InDelta(t, 250, depths[0].RadiusMM, close9, "the radius at the nut")
	slot := l.Frets[0].Slot
	require.InDelta(t, 2+fan.Drop(250-150*-slot.Bass.X/l.Frets[24].Line.CrossMM, slot.Bass.Y), depths[0].BassMM, close9)
}

func TestZeroFretWantsBoardBehindIt(t *testing.T) {
	for seat, refused := range map[float64]bool{0: true, 2.9: true, 3: false, 8: false} {
		s := zeroFretted()
		s.NutShelfMM = seat
		_, err := fan.New(s)
		if !refused {
			require.NoError(t, err)
			continue
		}
		require.ErrorContains(t, err, "neck.zero_fret: a zero fret's slot wants board behind it")
		require.ErrorContains(t, err, `nut_shelf = "8 mm"`)
	}
}
