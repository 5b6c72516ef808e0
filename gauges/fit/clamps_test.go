package fit_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
)

// stiffPitch is the exact fundamental, Hz, of a stiff string under the pull T
// (N), of stiffness ei (N m2), length l (m) and stretched weight (kg/m), both
// ends held by springs against turning: hold 0 is a hinge, 1 a firm clamp, and
// between them a spring of stiffness hold/(1 - hold) sqrt(T EI).
//
// The shape cos(b x) + C cosh(a x) about the middle solves T y” - EI y”” =
// -m w^2 y with a^2 - b^2 = T/EI and m w^2 = EI a^2 b^2; its ends neither move
// nor carry a moment but the spring's:
//
//	EI (a^2 + b^2) + k (b tan(b l/2) + a tanh(a l/2)) = 0
//
// which rises with b from the hinge at pi/l towards 2 pi/l.
func stiffPitch(pull, ei, l, weight, hold float64) float64 {
	a := func(b float64) float64 { return math.Sqrt(b*b + pull/ei) }
	over := func(b float64) float64 {
		turning := (1 - hold) * ei * (a(b)*a(b) + b*b)
		return turning + hold*math.Sqrt(pull*ei)*(b*math.Tan(b*l/2)+a(b)*math.Tanh(a(b)*l/2))
	}
	low, high := math.Pi/l, 2*math.Pi/l
	for range 60 {
		if b := (low + high) / 2; hold > 0 && over(b) < 0 {
			low = b
		} else {
			high = b
		}
	}
	if hold == 0 {
		high = low
	}
	return high * a(high) * math.Sqrt(ei/weight) / (2 * math.Pi)
}

// The exact pitch has the known limits: the plain string without stiffness, the
// hinged string's square root, the clamped bar without pull.
func TestStiffPitchHasItsLimits(t *testing.T) {
	near(t, 100.0, stiffPitch(64, 1e-9, 0.5, 64.0/10000, 1), 1e-4)
	eps := 0.02
	near(t, 100*math.Sqrt(1+math.Pow(math.Pi*eps, 2)), stiffPitch(64, 64*math.Pow(eps*0.5, 2), 0.5, 64.0/10000, 0), 1e-12)
	bar := 4.730041 * 4.730041 / (2 * math.Pi) // geometry of cos x cosh x = 1
	near(t, bar, stiffPitch(1e-6, 1, 1, 1, 1), 1e-4)
	near(t, 100*(1+eps), stiffPitch(64, 64*math.Pow(eps*0.5, 2), 0.5, 64.0/10000, 0.5), 0.003, "half way in the pitch")
}

// A string hung between ends of any firmness sounds the exact pitch, and its
// linear density comes back within the range that Work states: sqrt(3) of the
// standard uncertainty of the clamps on either side, both ends of it reached.
func TestClampsAreWithinTheirRange(t *testing.T) {
	for _, c := range []struct {
		name             string
		d, weight, n, l  float64
		wantOld, wantNew float64 // share by which a firm clamp is off without and with the correction
	}{
		{"plain 0.254 mm", 0.254e-3, 0.000397, 70, 0.62, 0.0050, 0.0025},
		{"cored 0.40 mm", 0.40e-3, 0.0034, 75, 0.62, 0.0121, 0.0060},
		{"cored 0.65 mm", 0.65e-3, 0.0160, 75, 0.62, 0.0325, 0.0160},
	} {
		t.Run(c.name, func(t *testing.T) {
			area := math.Pi / 4 * c.d * c.d
			ea, ei := 203.4e9*area, 203.4e9*area*c.d*c.d/16
			tools := gauges.DefaultInstruments()
			stretched := c.weight / (1 + c.n/ea)
			for _, hold := range []float64{0, 0.1, 0.5, 0.9, 1} {
				r := reading.Reading{Kind: reading.Hung, HungMass: unit.Mass(c.n / 9.80665), Speaking: unit.Length(c.l), Pitch: unit.Frequency(stiffPitch(c.n, ei, c.l, stretched, hold))}
				w, in := tools.Value(r, unit.Force(ea), ei)
				range3 := math.Sqrt(3) * clampsOf(t, in)
				off := w.W/c.weight - 1
				assert.LessOrEqual(t, math.Abs(off), range3*1.02+1e-6, "hold %g", hold)
				if hold == 0 || hold == 1 {
					near(t, math.Copysign(range3, 0.5-hold), off, 0.03, "the range is no wider than it has to be")
				}
				if hold == 1 {
					old, _ := tools.Value(r, unit.Force(ea), 0)
					within(t, -c.wantOld, old.W/c.weight-1, 0.1*c.wantOld)
					within(t, -c.wantNew, off, 0.1*c.wantNew)
				}
			}
		})
	}
}

// clampsOf finds the part of the clamps, which every hung reading shares.
func clampsOf(t *testing.T, inputs []gauges.Component) float64 {
	t.Helper()
	for _, in := range inputs {
		if strings.HasPrefix(in.Name, "clamps") {
			assert.Equal(t, "clamps of hung strings", in.Source)
			return in.RelU
		}
	}
	require.Fail(t, "no clamps among the inputs")
	return 0
}

// The clamps are one source for all hung gauges, so that repeating does not
// make them smaller, and a string too stiff to hang is refused.
func TestClampsAreSharedAndTooStiffIsRefused(t *testing.T) {
	const head = "gauge,construction,outer_mm,core_mm,kind,hung_mass_kg,speaking_length_mm,pitch\n"
	once := combine(t, head+"a,w,1.2,0.5,hung,6,600,75")
	twice := combine(t, head+"a,w,1.2,0.5,hung,6,600,75\na,,,,hung,6,600,75.02\nb,w,1.4,,hung,6,600,66")
	part := func(s fit.Stock, label string) float64 {
		for _, p := range gauge(t, s, label).Common {
			if p.Source == "clamps of hung strings" {
				return p.U / gauge(t, s, label).LinearDensity.KgPerM()
			}
		}
		return 0
	}
	near(t, part(once, "a"), part(twice, "a"), 1e-3)
	near(t, 0.008, part(twice, "b"), 1e-9)
	_, err := fit.Combine(gauges.Input{Readings: read(t, head+"a,w,1.2,0.65,hung,0.3,120,85"), Instruments: gauges.DefaultInstruments()})
	assert.ErrorContains(t, err, `r.csv:2:1: gauge "a": too stiff a string for so light a weight on so short a length; its clamps alone may raise the pitch by a tenth`, "eps = sqrt(1.782e-3/2.94)/0.12 = 0.2052")
}

// The work shows the ends where the core is known, and says what it takes for
// them where it is not.
func TestTheWorkShowsTheClamps(t *testing.T) {
	in := gauges.Input{Instruments: gauges.DefaultInstruments(),
		Readings: read(t, "gauge,construction,outer_mm,core_mm,kind,hung_mass_kg,speaking_length_mm,pitch\na,w,1.2,0.5,hung,6,600,75\nb,w,1.4,,hung,6,600,66")}
	stock, err := fit.Combine(in)
	require.NoError(t, err)
	work := func(label string) (values map[string]float64, formulas map[string]string) {
		steps, err := fit.Explain(label, in)
		require.NoError(t, err)
		values, formulas = map[string]float64{}, map[string]string{}
		for _, s := range steps {
			values[s.Symbol], formulas[s.Symbol] = s.Value, s.Formula
		}
		assert.Equal(t, gauge(t, stock, label).LinearDensity.KgPerM(), values["w"])
		assert.Equal(t, float64(gauge(t, stock, label).U), values["u(w)"])
		return values, formulas
	}
	v, f := work("a")
	assert.Equal(t, "Mh1 gh1/(2 lh1 fh1)^2 (1 + eh1) Kh1", f["wh1"])
	eps := math.Sqrt(203.4e9*math.Pi/64*math.Pow(0.5e-3, 4)/(6*9.80665)) / 0.6
	near(t, eps, v["epsh1"], 1e-12)
	near(t, 1+2*eps, v["Kh1"], 1e-3)
	_, f = work("b")
	assert.Equal(t, "Mh1 gh1/(2 lh1 fh1)^2", f["wh1"])
	assert.NotContains(t, f, "epsh1")
	_, err = fit.Explain("c", in)
	assert.ErrorContains(t, err, "not in stock")
}
