package report

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"scalepair/cmd/scalepair/show"
	"scalepair/data/unit"
)

func TestFiguresFollowThePage(t *testing.T) {
	for _, c := range []struct {
		name, text, mm, inches string
	}{
		{"written in millimetres", "378.3 mm (not 480.0 mm) would fit", "378.3 mm (not 480.0 mm) would fit", "378.3 mm (not 480.0 mm) would fit"},
		{"written in inches", "or 272.53329 mm (not 232.56875 mm) would fit", "or 10.730 in (not 9.156 in) would fit", "or 10.730 in (not 9.156 in) would fit"},
		{"unit weights", "weighing gives 0.4 g/m, hanging 0.3987 g/m: apart", "weighing gives 0.4 g/m, hanging 0.3987 g/m: apart",
			"weighing gives 0.00002240 lb/in, hanging 0.00002233 lb/in: apart"},
		{"no figures", "the mm and the g/m of it", "the mm and the g/m of it", "the mm and the g/m of it"},
	} {
		t.Run(c.name, func(t *testing.T) {
			assert.Equal(t, c.mm, (&Input{}).inUnits(c.text))
			in := &Input{Units: show.Units{Length: unit.DecimalInches}}
			assert.Equal(t, c.inches, in.inUnits(c.text))
		})
	}
}

func TestSlipsThatTell(t *testing.T) {
	told := telling([]string{
		"mass 0.63 g for 0.36 g (42.9 %)",
		"length 709.5 mm for 709.6 mm (0 %)",
		"length 232.56875 mm for 223.56875 mm (4 %)",
		"length 709.5 mm for 719.5 mm (1.4 %)",
	})
	assert.Equal(t, []string{"mass 0.63 g for 0.36 g (42.9 %)", "length 709.5 mm for 719.5 mm (1.4 %)"}, told)
}
