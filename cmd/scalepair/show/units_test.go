package show_test

import (
	"flag"
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"

	"scalepair/cmd/scalepair/show"
	"scalepair/data/unit"
)

func TestMain(m *testing.M) {
	if err := flag.Set("rapid.seed", "1"); err != nil {
		panic(err)
	}
	os.Exit(m.Run())
}

// Lengths: 25.4 mm is 1 in exactly. Forces: 1 lbf is 4.4482216152605 N.
func TestUnits(t *testing.T) {
	mm := show.Units{}
	in := show.Units{Length: unit.DecimalInches, Force: unit.PoundsForce}
	in64 := show.Units{Length: unit.InchFractions, Force: unit.KilogramsForce}
	for _, c := range []struct{ name, want, got string }{
		{"mm", "647.7", mm.Len(647.7, 1)},
		{"metres", "647.70", mm.LenM(0.6477, 2)},
		{"inches", "25.500", in.Len(647.7, 1)},
		{"fractions", "25 1/2", in64.Len(647.7, 1)},
		{"with unit", "25 1/2 in", in64.LenText(647.7, 1)},
		{"longer", "+2.5", mm.SignedLen(2.54, 1)},
		{"shorter", "-2.5", mm.SignedLen(-2.54, 1)},
		{"longer by a fraction", "+1/4", in64.SignedLen(6.35, 1)},
		{"no longer", "0.0", mm.SignedLen(-0.01, 1)},
		{"newtons", "72.6", mm.ForceN(72.592)},
		{"pounds-force", "16.32", in.ForceN(72.592)},
		{"force with unit", "16.32 lbf", in.ForceText(72.592)},
		{"uncertainty", "72.6 ± 0.4", mm.ForceU(72.592, 0.41)},
		{"uncertainty in lbf", "16.32 ± 0.09", in.ForceU(72.592, 0.41)},
		{"uncertainty below a step", "72.6 ± 0.1", mm.ForceU(72.592, 0.0001)},
		{"no uncertainty", "72.6", mm.ForceU(72.592, 0)},
		{"uncertainty with unit", "72.6 ± 0.4 N", mm.ForceTextU(72.592, 0.41)},
		{"head of lengths", "own length mm", mm.HeadLen("own length")},
		{"head of forces", "tension kgf", in64.HeadForce("tension")},
		{"degrees", "6.9", show.Deg(0.1204)},
		{"degrees with sign", "-6.9°", show.DegText(-0.1204)},
		{"percent", "54", show.Percent(0.537, 0)},
		{"percent with sign", "53.7 %", show.PercentText(0.537, 1)},
		{"change", "+10", show.SignedPercent(0.1, 0)},
		{"cents", "12.3", show.Cents(12.34)},
		{"cents sharp", "+12.3", show.SignedCents(12.34)},
		{"number ± uncertainty", "0.1020 ± 0.0003", show.WithU(0.10201, 0.00031, 4)},
		{"minus nothing", "0.0", show.Fixed(-0.04, 1)},
		{"signed nothing", "0.0", show.Signed(0.04, 1)},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, c.got) })
	}
}

func TestNoNumberNoText(t *testing.T) {
	u := show.Units{}
	for name, f := range map[string]func(){
		"nan length":           func() { u.Len(math.NaN(), 1) },
		"infinite force":       func() { u.ForceN(math.Inf(1)) },
		"nan uncertainty":      func() { u.ForceU(1, math.NaN()) },
		"infinite uncertainty": func() { u.ForceU(1, math.Inf(1)) },
		"negative uncertainty": func() { u.ForceU(1, -0.1) },
		"nan angle":            func() { show.Deg(math.NaN()) },
		"nan share":            func() { show.Percent(math.NaN(), 1) },
		"nan signed":           func() { show.Signed(math.NaN(), 1) },
	} {
		t.Run(name, func(t *testing.T) { assert.Panics(t, f) })
	}
}
