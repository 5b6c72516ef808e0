package tension_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/tension"
)

// formula computes what a published row asks for.
type formula func(in func(string) float64) float64

func checkPublished(t *testing.T, file string, formulas map[string]formula) {
	for _, row := range testutil.LoadPublished(t, file) {
		t.Run(row.ID, func(t *testing.T) {
			compute, ok := formulas[row.Quantity]
			require.True(t, ok, "no formula for %q", row.Quantity)
			row.Check(t, compute(func(name string) float64 { return row.Input(t, name) }))
		})
	}
}

// speed is the wave speed of a string that does not stretch, by way of the
// pitch of one of half a metre.
func speed(linearDensity, tensionN float64) float64 {
	return pitchAt(wire{LinearDensity: linearDensity}, 0.5, tensionN)
}

func TestPublishedStringLaw(t *testing.T) {
	ofWire := func(in func(string) float64) float64 {
		r := in("radius_m")
		return in("density_kg_m3") * math.Pi * r * r
	}
	checkPublished(t, "string_law.csv", map[string]formula{
		"speed": func(in func(string) float64) float64 { return speed(in("linear_density_kg_m"), in("tension_n")) },
		"tension of speed": func(in func(string) float64) float64 {
			return openAt(wire{LinearDensity: in("linear_density_kg_m")}, 0.5, in("speed_m_s"))
		},
		"speed of hung mass": func(in func(string) float64) float64 {
			return speed(in("linear_density_kg_m"), in("mass_kg")*in("gravity_m_s2"))
		},
		"partial of hung mass": func(in func(string) float64) float64 {
			w := wire{LinearDensity: in("linear_density_kg_m")}
			return in("partial") * pitchAt(w, in("length_m"), in("mass_kg")*in("gravity_m_s2"))
		},
		"tension": func(in func(string) float64) float64 {
			return openAt(wire{LinearDensity: in("linear_density_kg_m")}, in("length_m"), in("freq_hz"))
		},
		"partial": func(in func(string) float64) float64 {
			w := wire{LinearDensity: in("linear_density_kg_m")}
			return in("partial") * pitchAt(w, in("length_m"), in("tension_n"))
		},
		"linear density of wire": ofWire,
		"speed of wire":          func(in func(string) float64) float64 { return speed(ofWire(in), in("tension_n")) },
		"speed ratio at double weight": func(in func(string) float64) float64 {
			w, n := in("linear_density_kg_m"), in("tension_n")
			return speed(2*w, n) / speed(w, n)
		},
	})
}

func TestPublishedWire(t *testing.T) {
	stretch := func(lengthM, tensionN, ea float64) float64 {
		return lengthM * tensionN * wire{EA: ea}.Compliance()
	}
	checkPublished(t, "wire.csv", map[string]formula{
		"strength fit": func(in func(string) float64) float64 {
			return strengthFit(in("factor"), in("exponent"), in("diameter"))
		},
		"modulus": func(in func(string) float64) float64 {
			return in("modulus_mpsi") * 1000 * unit.KilopoundPerSquareInch / 1e9
		},
		"stress": func(in func(string) float64) float64 {
			return breaking(in("mass_kg")*in("gravity_m_s2"), in("area_m2"), 1)
		},
		"stretch of hung mass": func(in func(string) float64) float64 {
			return stretch(in("length_m"), in("mass_kg")*in("gravity_m_s2"), in("youngs_pa")*in("area_m2"))
		},
		"stretch of wire": func(in func(string) float64) float64 {
			d := in("diameter_m")
			return stretch(in("length_m"), in("tension_n"), in("youngs_pa")*math.Pi/4*d*d)
		},
	})
}

// strengthFit is S = A/d^m, in the unit of A.
func strengthFit(factor, exponent, diameter float64) float64 {
	return factor / math.Pow(diameter, exponent)
}

func TestPublishedBend(t *testing.T) {
	// leverAt is bending force over tension of a string held at its middle, at an angle.
	leverAt := func(deg float64) float64 {
		w, at := steel(0.254e-3), midpoint()
		contact := tension.NewContact(at.real())
		y := at.Length / 2 * math.Tan(deg*math.Pi/180)
		at.Rise = contact.Rise(contact.Strain(w.real()), y)
		bend, err := bendString(w, at)
		require.NoError(t, err)
		return bend.Force / bend.Tension
	}
	checkPublished(t, "bend.csv", map[string]formula{
		"rise in percent": func(in func(string) float64) float64 {
			w, at := steel(0.254e-3), wholeTone()
			at.Rise = in("cents")
			bend, err := bendString(w, at)
			require.NoError(t, err)
			o := newOracle(w, at)
			return 100 * (o.freq(bend.Distance)/o.freq(0) - 1)
		},
		"tension of load": func(in func(string) float64) float64 { return in("load_n") / leverAt(in("angle_deg")) },
		"load of tension": func(in func(string) float64) float64 { return in("tension_n") * leverAt(in("angle_deg")) },
	})
}

func TestPublishedInharmonicity(t *testing.T) {
	checkPublished(t, "inharmonicity.csv", map[string]formula{
		"cents": func(in func(string) float64) float64 {
			const rho = 7850
			w := plain(in("diameter_m"), in("q_over_rho_m2_s2")*rho, rho)
			b := spreadB(w, textbook(w.LinearDensity, in("length_m"), in("freq_hz")), in("length_m"))
			return 600 / math.Ln2 * b * in("partial") * in("partial")
		},
	})
}

func TestPublishedFretIntonation(t *testing.T) {
	// The share of the length that sounds at a fret, read off the work.
	sounding := func(fret float64) float64 {
		w, at := steel(0.254e-3), wholeTone()
		at.Fret = fret
		steps, err := explain(w, at)
		require.NoError(t, err)
		return valueOf(t, steps, "s") / at.Length
	}
	checkPublished(t, "fret_intonation.csv", map[string]formula{
		"pitch ratio":            func(in func(string) float64) float64 { return 1 / sounding(in("fret")) },
		"length over first step": func(in func(string) float64) float64 { return 1 / (1 - sounding(in("fret"))) },
	})
}
