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
		{"lengths stay as given", "378.3 mm (not 480 mm) would fit", "378.3 mm (not 480 mm) would fit", "378.3 mm (not 480 mm) would fit"},
		{"linear densities", "weighing gives 0.4 g/m, hanging 0.3987 g/m: apart", "weighing gives 0.4 g/m, hanging 0.3987 g/m: apart",
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
