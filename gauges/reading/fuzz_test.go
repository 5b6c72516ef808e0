package reading_test

import (
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/fault"
	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/gauges/reading"
)

// An error means no readings and faults with place and words; success means
// readings within the sizes that a string can have, which written down again
// read back the same.
func FuzzRead(f *testing.F) {
	for _, file := range []string{
		"../../data/demo/readings.csv", "../../testdata/builds/seven/readings.csv", "../../testdata/builds/eight_inch/readings.csv",
		"../../testdata/builds/bass_five/readings.csv", "../../testdata/readings/utf16.bin",
	} {
		text, err := os.ReadFile(file)
		require.NoError(f, err)
		f.Add(string(text))
	}
	for _, text := range []string{
		"gauge,construction,outer_in,length_mm,mass_g\n010,plain,0.010,500,0.20\n011,plain,0.011,500,0.24\n",
		"gauge,construction,outer_mm,core_mm,core_shape,kind,hung_mass_kg,speaking_length_mm,pitch\na,w,1,0.4,hex,hung,6,600,110\n",
		"gauge,kind\n\xef\xbb\xbfx,listed\n",
		"gauge,construction,outer_mm,length_mm,mass_g\na,p\x1e\x1b[31m,0.25,500,0.2\na,plain,0.25,500,0.2\n",
		"gauge,construction,material,outer,length,length_resolution,mass,mass_resolution,density_kg_m3,youngs_gpa,strength_mpa\nn,plain,nylon,0.028 in,12 1/2 in,1/32 in,3 gr,0.1 gr,1080,3,300\n",
		"gauge,construction,outer_mm,kind,hung_mass_kg,hung_resolution,speaking_length_mm,pitch_hz,pitch_cents\na,plain,0.25,hung,6,5 g,600,330,1\na,plain,0.25,hung,6.1,5 g,600,333,1\n",
		"gauge,construction,outer_mm,core_mm,length_mm,mass_g\na,w,1,0.4,500,2.5\nb,w,1.2,0.4,500,3.6\nc,w,1.4,0.5,500,4.8\nd,w,1.3,,,\n",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r, err := reading.Read(strings.NewReader(text), "r.csv", nil)
		if err != nil {
			assert.Nil(t, r)
			testutil.CheckFaults(t, err, "r.csv", text)
			return
		}
		require.NotEmpty(t, r)
		requireReadsBack(t, r)
	})
}

// requireReadsBack writes readings as a table of our own, in SI, and reads them
// again.
func requireReadsBack(t *testing.T, all []reading.Reading) {
	again, err := reading.Read(strings.NewReader(table(all)), "again.csv", nil)
	require.NoError(t, err)
	require.Len(t, again, len(all))
	for i := range all {
		requireSizes(t, all[i])
		want, got := all[i], again[i]
		for _, r := range []*reading.Reading{&want, &got} {
			r.Place, r.Written = fault.Place{}, reading.Written{}
		}
		// 1e9 and 1e6 are a multiplication each way.
		assert.InDelta(t, want.YoungsPa, got.YoungsPa, 4e-16*want.YoungsPa)
		assert.InDelta(t, want.StrengthPa, got.StrengthPa, 4e-16*want.StrengthPa)
		got.YoungsPa, got.StrengthPa = want.YoungsPa, want.StrengthPa
		assert.Equal(t, want, got)
	}
}

// requireSizes holds the sizes of a reading to finite numbers, 0 or above.
func requireSizes(t *testing.T, r reading.Reading) {
	for _, x := range []float64{
		r.Outer.M(), r.Core.M(), r.DensityKgM3, r.YoungsPa, r.StrengthPa, r.Winding.M(), r.Length.M(), r.LengthResolution.M(),
		r.Mass.Kg(), r.MassResolution.Kg(), r.HungMass.Kg(), r.HungResolution.Kg(), r.Speaking.M(), r.Pitch.Hz(), r.PitchU.Value(),
	} {
		require.False(t, !(x >= 0) || math.IsInf(x, 0) || x == 0 && math.Signbit(x), r)
	}
}

// table writes readings as a readings file, exactly.
func table(all []reading.Reading) string {
	var b strings.Builder
	// A first column that is empty, so that no label can make its line a comment.
	b.WriteString(",gauge,construction,outer,core,core_shape,diameters,material,kind,pieces,length,length_resolution,mass,mass_resolution," +
		"hung_mass,hung_resolution,speaking_length,pitch,pitch_cents,winding,density_kg_m3,youngs_gpa,strength_mpa,date,remark\n")
	number := func(x float64) string {
		if x == 0 {
			return ""
		}
		return strconv.FormatFloat(x, 'g', -1, 64)
	}
	length, mass := written[unit.Length], written[unit.Mass]
	for _, r := range all {
		shape := map[reading.Shape]string{reading.Round: "round", reading.Hex: "hex"}[r.Shape]
		diameters := map[[2]reading.DiameterFrom]string{
			{reading.Measured, reading.Measured}: "measured", {reading.Measured, reading.Nominal}: "outer measured", {reading.Nominal, reading.Measured}: "core measured",
		}[[2]reading.DiameterFrom{r.OuterFrom, r.CoreFrom}]
		pieces := ""
		if r.Pieces > 0 {
			pieces = strconv.Itoa(r.Pieces)
		}
		cells := []string{
			r.Gauge, r.Construction, length(r.Outer), length(r.Core), shape, diameters, r.Material, r.Kind.String(), pieces,
			length(r.Length), length(r.LengthResolution), mass(r.Mass), mass(r.MassResolution), mass(r.HungMass), mass(r.HungResolution), length(r.Speaking),
			number(r.Pitch.Hz()), number(r.PitchU.Value()), length(r.Winding), number(r.DensityKgM3), number(r.YoungsPa / 1e9), number(r.StrengthPa / 1e6), r.Date, r.Remark,
		}
		for i, c := range cells {
			cells[i] = `"` + strings.ReplaceAll(c, `"`, `""`) + `"`
		}
		b.WriteString("," + strings.Join(cells, ",") + "\n")
	}
	return b.String()
}

// written writes a quantity; nothing for one that was not given.
func written[T interface {
	~float64
	fmt.Stringer
}](x T) string {
	if x == 0 {
		return ""
	}
	return x.String()
}
