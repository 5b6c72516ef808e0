package mark_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

func TestZeroFretIsSetOut(t *testing.T) {
	s := fan.DefaultSpec()
	s.Bass, s.Treble, s.NutSpread, s.SaddleSpread = unit.MM(686), unit.MM(648), unit.MM(43), unit.MM(62)
	s.ZeroFret, s.NutShelf = true, unit.MM(8)
	l, err := fan.New(s)
	require.NoError(t, err)
	r, err := mark.ParseResolution("0.01 mm")
	require.NoError(t, err)
	list, err := mark.SettingOut(l, mark.Bench{Resolution: r, KerfMM: 0.6})
	require.NoError(t, err)
	for _, task := range list.Tasks {
		switch task.Title {
		case "Slots":
			require.Len(t, task.Slots, 25)
			assert.Zero(t, task.Slots[0].Fret)
			assert.Zero(t, task.Slots[0].Bass.MM)
			assert.Negative(t, task.Slots[0].FenceBass.MM)
			assert.Contains(t, task.Do, "zero fret")
		case "Board edges and ends":
			assert.Contains(t, task.Do, "The board goes on behind it")
			assert.NotContains(t, task.Do, "is the board's end")
		case "Marks on the bass line":
			assert.Equal(t, 1, task.Marks[0].Fret, "the nut mark is the zero fret's")
		}
	}
}
