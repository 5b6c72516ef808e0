package fit_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/gauges"
	"scalepair/gauges/fit"
)

// plainHead is the heading of a file of weighed plain wire.
const plainHead = "gauge,construction,outer_in,length_mm,mass_g\n"

// One weighing, worked by hand: 0.43 g in 650 mm, balance 0.01 g, ruler 1 mm.
func TestOneWeighingByHand(t *testing.T) {
	g := gauge(t, combine(t, plainHead+"013,plain,0.013,650,0.43"), "013")
	w := 0.43e-3 / 0.650
	within(t, w, float64(g.LinearDensity), 1e-15)
	within(t, w*math.Hypot(0.01/math.Sqrt(12)/0.43, 1/math.Sqrt(12)/650), float64(g.U), 1e-15)
	assert.Equal(t, float64(g.U), float64(g.Indep))
	assert.Empty(t, g.Common)
	// The wire's diameter: off the packet to +-0.0003 in, and by its weight at
	// 7850 +- 8 kg/m3, weighted.
	byPacket, uPacket := 0.3302e-3, 0.0003*0.0254/math.Sqrt(3)
	byWeight := math.Sqrt(4 * w / (math.Pi * 7850))
	uWeight := byWeight / 2 * math.Hypot(float64(g.RelU()), 8.0/7850)
	sum := 1/(uPacket*uPacket) + 1/(uWeight*uWeight)
	d := (byPacket/(uPacket*uPacket) + byWeight/(uWeight*uWeight)) / sum
	near(t, d, g.Core, 1e-12)
	near(t, 1/math.Sqrt(sum), g.UCore, 1e-12)
	near(t, byPacket, g.Outer, 1e-12)
	near(t, math.Pi/4*d*d, g.AreaM2, 1e-12)
	near(t, 203.4e9*g.AreaM2, g.EA, 1e-12)
	near(t, 203.4e9*math.Pi/64*math.Pow(d, 4), g.EI, 1e-12)
	near(t, w/(math.Pi/4*byPacket*byPacket), g.Implied, 1e-9)
	assert.Contains(t, g.Notes[0], "too few of its kind")
}

// Two readings 10 % apart: widened by sqrt(chi2), flagged, and the one farther
// off named.
func TestDisagreementWidensAndIsNamed(t *testing.T) {
	s := combine(t, plainHead+"a,plain,0.017,500,0.57\na,,,400,0.50\nb,plain,0.016,600,0.61\nc,plain,0.018,600,0.77\nd,plain,0.015,600,0.54")
	g := gauge(t, s, "a")
	assert.True(t, g.Disagrees)
	assert.Contains(t, g.Flags(), "readings disagree")
	w1, w2 := 0.57/500, 0.50/400
	u1, u2 := w1*math.Hypot(0.01/math.Sqrt(12)/0.57, 1/math.Sqrt(12)/500), w2*math.Hypot(0.01/math.Sqrt(12)/0.50, 1/math.Sqrt(12)/400)
	chi := math.Abs(w1-w2) / math.Hypot(u1, u2)
	near(t, chi/math.Sqrt(1/(u1*u1)+1/(u2*u2)), float64(g.U), 1e-9)
	require.Len(t, s.Suspects(), 1)
	assert.Equal(t, 3, s.Suspects()[0].Place.Line)
	assert.Contains(t, s.Suspects()[0].Why, "has readings further apart than chance allows")
}

func TestHungAndWeighedAreCombinedAndCompared(t *testing.T) {
	const text = "gauge,construction,outer_in,kind,length_mm,mass_g,hung_mass_kg,speaking_length_mm,pitch\n" +
		"010,plain,0.010,,500,0.20,,,\n010,,,hung,,,6.5,600,333.9\n"
	s := stockOf(t, gauges.Input{Readings: read(t, text), Instruments: gauges.DefaultInstruments()})
	g := gauge(t, s, "010")
	load := 6.5 * 9.80665
	hung := load / math.Pow(2*0.6*333.9, 2) * (1 + load/float64(g.EA)) * (1 + 2*math.Sqrt(g.EI/load)/0.6)
	near(t, hung, float64(g.LinearDensity), 0.0005, "the sharper reading leads")
	assert.Contains(t, g.Notes[0], "within what their uncertainties allow")
}

func TestStockFaults(t *testing.T) {
	const head = "gauge,construction,outer_in,core_in,core_shape,material,kind,length_mm,mass_g\n"
	for _, c := range []struct{ name, rows, want string }{
		{"two diameters", "a,plain,0.010,,,,,500,0.20\na,plain,0.011,,,,,500,0.24", `r.csv:3:1: gauge "a" has another outer diameter than in r.csv:2:1, where it is 0.010 in ("0.011 in"); one label is one gauge`},
		{"two constructions", "a,plain,0.010,,,,,500,0.20\nA ,wound,,,,,,500,0.20", "another construction"},
		{"two materials", "a,plain,0.010,,,nickel,,500,0.20\na,,,,,brass,,500,0.20", "another material"},
		{"two shapes", "a,w,0.030,0.014,hex,,,500,1.6\na,,,,round,,,500,1.6", "another core shape"},
		{"no construction", "a,,0.010,,,,,500,0.20", `gauge "a" has no construction`},
		{"no diameter", "a,plain,,,,,,500,0.20", `gauge "a" has no outer diameter`},
		{"unknown material", "a,plain,0.010,,,unobtainium,,500,0.20", "no material of that name"},
		{"ten times too heavy", "a,plain,0.010,,,,,500,2.0", "is the length in centimetres? is the decimal point of length or mass one place off?"},
		{"ounces", "a,plain,0.010,,,,,500,0.00701", "is the mass in ounces?"},
		{"kilograms", "a,plain,0.010,,,,,500,0.0002", "is the mass in kilograms?"},
		{"four pieces counted as one", "a,plain,0.010,,,,,500,0.8", "were 4 pieces weighed together?"},
		{"milligrams", "a,plain,0.010,,,,,500,200", "is the mass in milligrams?"},
		{"inches", "a,plain,0.010,,,,,19.7,0.20", "is the length in inches?"},
		{"far too light", "a,plain,0.010,,,,,4000,0.02", "a density which nothing has"},
		{"lighter than its core", "a,w,0.030,0.020,,,,500,0.7", "is less than its core alone"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := fit.Combine(gauges.Input{Readings: read(t, head+c.rows), Instruments: gauges.DefaultInstruments()})
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.want)
			assert.Empty(t, s.Gauges)
		})
	}
}

// A listed gauge that no fit reaches is left out; it matters to who asks for it.
func TestListedBeyondTheFitIsLeftOut(t *testing.T) {
	const head = "gauge,construction,outer_in,core_in,core_shape,material,kind,length_mm,mass_g\n"
	for _, c := range []struct{ name, rows, want string }{
		{"one gauge makes no fit", "a,plain,0.010,,,,,500,0.20\nb,plain,0.010,,,,listed,,", `r.csv:3:1: gauge "b" has no reading, and its kind, plain, has too few for a fit: two of different diameters; weigh a piece`},
		{"nothing to fit", "a,plain,0.010,,,,,500,0.20\nb,w,0.030,,,,listed,,", "has too few for a fit"},
		{"one diameter makes no power law", "a,w,0.03,,,,,500,1.6\nb,w,0.03,,,,,500,1.7\nc,w,0.03,,,,listed,,", "has too few for a fit"},
		{"outside the fit", "a,plain,0.010,,,,,500,0.20\nb,plain,0.011,,,,,500,0.24\nc,plain,0.012,,,,listed,,", `lies outside the fitted diameters, 0.010 in to 0.011 in ("0.012 in")`},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := stockOf(t, gauges.Input{Readings: read(t, head+c.rows), Instruments: gauges.DefaultInstruments()})
			require.Len(t, s.LeftOut, 1)
			assert.ErrorContains(t, s.LeftOut[0].Why, c.want)
			for _, g := range s.Gauges {
				assert.NotEqual(t, s.LeftOut[0].Label, g.Label)
			}
			_, err := s.Lookup(s.LeftOut[0].Label)
			assert.ErrorContains(t, err, c.want)
		})
	}
}

func TestUnknownCoreAndOtherMaterials(t *testing.T) {
	s := combine(t, "gauge,construction,outer_mm,core_mm,material,youngs_gpa,density_kg_m3,length_mm,mass_g\n"+
		"w,wound,1.0,,,,,500,2.9\nn,plain,0.7,,nylon,,,1000,0.42\nf,plain,0.6,,odd stuff,2.5,1780,1000,0.50\nt,plain,0.9,,,,,500,2.5\nr,wound,1.0,0.4,,,,500,2.9")
	w := gauge(t, s, "w")
	assert.Zero(t, float64(w.Core))
	assert.Zero(t, float64(w.EA))
	assert.Zero(t, w.AreaM2)
	assert.Contains(t, w.Flags(), "core unknown")
	assert.Contains(t, strings.Join(w.Notes, ";"), "core unknown: no bend")
	n := gauge(t, s, "n")
	near(t, 5e9*n.AreaM2, float64(n.EA), 1e-12)
	assert.False(t, n.MusicWire())
	f := gauge(t, s, "f")
	near(t, 2.5e9*f.AreaM2, float64(f.EA), 1e-12)
	assert.Equal(t, 1780.0, f.DensityKgM3)
	thick := gauge(t, s, "t")
	assert.True(t, thick.MusicWire())
	assert.Equal(t, 200e9, thick.YoungsPa, "music wire above 0.81 mm")
	assert.Contains(t, gauge(t, s, "r").Flags(), "core shape assumed")
}

func TestHungTestOfAbsurdDensityAsksAfterTheOctave(t *testing.T) {
	_, err := fit.Combine(gauges.Input{Instruments: gauges.DefaultInstruments(),
		Readings: read(t, "gauge,construction,outer_in,kind,hung_mass_kg,speaking_length_mm,pitch\na,plain,0.013,hung,7.5,600,137.9")})
	assert.ErrorContains(t, err, `a density which nothing has ("a, 0.013 in, 7.5 kg on 600 mm at 137.9 Hz: 31.365 g/cm3"); is the pitch an octave higher?`)
}
