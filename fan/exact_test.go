package fan_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
)

// Near the edges of the model what is 0 in the
// equations is 0 to the bit: the line at k = k(N) has k - k(N) as a factor,
// both from the same call, and every slant has the lengths' difference, which
// is exact for lengths within a factor of two. Equal gaps on parallel strings
// are the same fractions at both ends but for their last digits; cents below
// 1e-10 that come of those are none.
func TestGeometryNearItsEdges(t *testing.T) {
	const last, bridge = 24, -1
	for _, row := range []struct {
		name         string
		bass, treble float64
		neutral      float64 // or bridge
		spread       float64 // string spread at the saddle less string spread at the nut
		gaps         bool    // equal gaps at both ends, under strings of unlike thickness
	}{
		{"neutral nut", 686, 648, 0, 20, false},
		{"neutral a hair from the nut", 686, 648, 1e-9, 20, false},
		{"neutral last fret", 686, 648, last, 20, false},
		{"neutral a hair from fret 7", 686, 648, 7 + 1e-9, 20, false},
		{"neutral bridge", 686, 648, bridge, 20, false},
		{"parallel strings", 686, 648, 7, 0, false},
		{"spreads a hair apart", 686, 648, 7, 1e-9, false},
		{"lengths a micrometre apart", 648.001, 648, 7, 20, false},
		{"lengths a picometre apart", 648 + 1e-9, 648, 7, 20, false},
		{"lengths one bit apart", math.Nextafter(648, 649), 648, 7, 20, false},
		{"reverse by one bit, neutral bridge", 648, math.Nextafter(648, 649), bridge, 20, false},
		{"equal lengths", 648, 648, 7, 20, false},
		{"equal lengths, neutral bridge, drawing together", 648, 648, bridge, -5, false},
		{"equal gaps, parallel strings", 686, 648, 7, 0, true},
		{"equal gaps, spreads a hair apart", 686, 648, 7, 1e-9, true},
		{"equal gaps, neutral bridge", 686, 648, bridge, 20, true},
		{"equal gaps, equal lengths", 648, 648, 7, 20, true},
	} {
		t.Run(row.name, func(t *testing.T) {
			s := fan.Spec{Strings: 6, Neck: fan.DefaultNeck()}
			s.Bass, s.Treble, s.Frets, s.AllowReverse = unit.MM(row.bass), unit.MM(row.treble), last, true
			s.NutSpread, s.SaddleSpread = unit.MM(35), unit.MM(35+row.spread)
			s.Neutral = fan.Neutral{Fret: row.neutral}
			if row.neutral == bridge {
				s.Neutral = fan.Neutral{Bridge: true}
			}
			if row.gaps {
				s.NutSpacing.Rule, s.SaddleSpacing.Rule = fan.EqualGaps, fan.EqualGaps
				s.Diameters = millimetres(0.254, 0.33, 0.432, 0.66, 0.914, 1.168)
			}
			l, err := fan.New(s)
			require.NoError(t, err)
			requireExactZeros(t, l)
		})
	}
}

// requireExactZeros asks for 0 to the bit of every line that is square, and of
// no other.
func requireExactZeros(t *testing.T, l *fan.Layout) {
	equal, kN := l.Spec.Bass.MM() == l.Spec.Treble.MM(), l.Spec.Neutral.K()
	square := func(line fan.Across, k float64, name string) {
		require.Equal(t, equal || k == kN, line.TanSlant == 0, "slant of %s", name)
		if equal {
			require.Equal(t, line.Treble.X.MM(), line.Bass.X.MM(), "marks of %s", name)
			require.Equal(t, line.Treble.X.MM(), line.Cross.MM(), "crossing of %s", name)
		}
	}
	for n, fret := range l.Frets {
		square(fret.Line, fan.K(float64(n)), fmt.Sprintf("fret %d", n))
		if equal {
			require.Equal(t, fret.Bass, fret.Treble)
			require.Equal(t, fret.Slot.Treble.X.MM(), fret.Slot.Bass.X.MM())
		}
	}
	square(l.Saddle, 1, "the saddle")
	require.Equal(t, equal || kN == 0, l.NutOffset.MM() == 0, "nut offset")
}
