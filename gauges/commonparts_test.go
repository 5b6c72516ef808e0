package gauges_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/gauges"
)

// Every input of a reading by a difference: the reading read off by a thousandth
// of the input's standard uncertainty gives the part that is stated, with its
// sign where other readings share the error. A string without bending stiffness,
// since what that adds to the other parts is left out on purpose.
func TestPartsAreWhatTheirErrorsDo(t *testing.T) {
	tools := gauges.Instruments{
		BalanceStepKg: 1e-5, BalanceRepeatKg: 2e-5, BalanceAccuracyKg: 3e-5, RulerStepM: 1e-3, RulerAccuracyM: 0.4e-3,
		HungStepKg: 2e-3, HungAccuracyKg: 3e-3, PitchCents: 3, GravityMS2: 9.81, UGravityMS2: 0.01,
	}
	weighed := gauges.Reading{Kind: gauges.Weighed, MassKg: 1.7e-3, LengthM: 0.43, Pieces: 4}
	hung := gauges.Reading{Kind: gauges.Hung, HungKg: 6, SpeakingM: 0.62, FreqHz: 210}
	const ea, h = 14000, 1e-3
	// A digital step d leaves d/sqrt(12) = 0.28868 d, a bound a leaves
	// a/sqrt(3) = 0.57735 a; a cent is a 1200th of ln 2 = 0.693147.
	for _, row := range []struct {
		name, source string
		of           gauges.Reading
		read         func(r *gauges.Reading, i *gauges.Instruments, by float64)
		u            float64
	}{
		{"mass, step of the balance", "", weighed, mass, 0.28868e-5},
		{"mass, repeatability of the balance", "", weighed, mass, 2e-5},
		{"mass, accuracy of the balance", "balance", weighed, mass, 0.57735 * 3e-5},
		{"length, step of the ruler", "", weighed, length, -0.28868e-3},
		{"length, accuracy of the ruler", "ruler", weighed, length, 0.57735 * 0.4e-3},
		{"hung mass, step of the scales", "", hung, load, 0.28868 * 2e-3},
		{"hung mass, accuracy of the scales", "scales for the hung weight", hung, load, 0.57735 * 3e-3},
		{"length, step of the ruler", "", hung, length, -0.28868e-3},
		{"length, accuracy of the ruler", "ruler", hung, length, 0.57735 * 0.4e-3},
		{"gravity", "gravity", hung, gravity, 0.01},
		{"pitch", "", hung, pitch, -210 * 3 * 0.693147 / 1200},
	} {
		t.Run(row.of.Kind.String()+", "+row.name, func(t *testing.T) {
			_, inputs := tools.Work(row.of, ea, 0)
			found := false
			for _, in := range inputs {
				if in.Name != row.name {
					continue
				}
				found = true
				up, down, upTools, downTools := row.of, row.of, tools, tools
				row.read(&up, &upTools, h*row.u)
				row.read(&down, &downTools, -h*row.u)
				more, _ := upTools.Work(up, ea, 0)
				less, _ := downTools.Work(down, ea, 0)
				w, _ := tools.Work(row.of, ea, 0)
				assert.InEpsilon(t, (more-less)/(2*h)/w, in.RelU, 2e-5)
				assert.Equal(t, row.source, in.Source)
			}
			require.True(t, found, "%+v", inputs)
		})
	}
}

func mass(r *gauges.Reading, _ *gauges.Instruments, by float64) { r.MassKg += by }

// length is read on the piece, or from clamp to clamp.
func length(r *gauges.Reading, _ *gauges.Instruments, by float64) {
	r.LengthM += by
	r.SpeakingM += by
}

func load(r *gauges.Reading, _ *gauges.Instruments, by float64) { r.HungKg += by }

func gravity(_ *gauges.Reading, i *gauges.Instruments, by float64) { i.GravityMS2 += by }

func pitch(r *gauges.Reading, _ *gauges.Instruments, by float64) { r.FreqHz += by }

// Four weighings of one piece that read the same: the rounding is the same
// error four times, while the balance's own wandering is averaged to a half.
func TestRepeatsOfOneRounding(t *testing.T) {
	tools := gauges.Instruments{BalanceStepKg: 1e-5, BalanceRepeatKg: 0.3e-5, RulerStepM: 1e-3, CaliperStepM: 1e-5}
	row := "a,plain,0.017,500,0.57"
	s, err := gauges.Combine(read(t, plainHead+row+"\n"+row+"\n"+row+"\n"+row), nil, tools, gauges.Options{})
	require.NoError(t, err)
	g := gauge(t, s, "a")
	want := math.Sqrt(math.Pow(0.01/math.Sqrt(12)/0.57, 2) + math.Pow(0.003/2/0.57, 2) + math.Pow(1/math.Sqrt(12)/500, 2))
	assert.InEpsilon(t, want, g.Indep/g.UnitWeight, 1e-9)
}
