package tension_test

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/trace"
	"scalepair/data/unit"
	"scalepair/tension"
)

// pocket holds what stands on the calculator's notepad, by symbol.
type pocket map[string]float64

// keys are the formulas of the work as typed into a pocket calculator.
var keys = map[string]func(p pocket) float64{
	"w (2 L f)^2":                func(p pocket) float64 { return p["w"] * math.Pow(2*p["L"]*p["f"], 2) },
	"2 q/(1 + sqrt(1 + 4 q/EA))": func(p pocket) float64 { return 2 * p["q"] / (1 + math.Sqrt(1+4*p["q"]/p["EA"])) },
	"T/EA":                       func(p pocket) float64 { return p["T"] / p["EA"] },
	"T/A":                        func(p pocket) float64 { return p["T"] / p["A"] },
	"Ty/A":                       func(p pocket) float64 { return p["Ty"] / p["A"] },
	"100 x stress open/S":        func(p pocket) float64 { return 100 * p["stress open"] / p["S"] },
	"100 x stress bent/S":        func(p pocket) float64 { return 100 * p["stress bent"] / p["S"] },
	"pi^2 EI/(T L^2)":            func(p pocket) float64 { return math.Pi * math.Pi * p["EI"] / p["T"] / p["L"] / p["L"] },
	"600 log2(1 + 100 B)":        func(p pocket) float64 { return 600 * math.Log2(1+100*p["B"]) },
	"L (1 - 2^(-n/12))":          func(p pocket) float64 { return p["L"] * (1 - math.Pow(2, -p["n"]/12)) },
	"L - x":                      func(p pocket) float64 { return p["L"] - p["x"] },
	"L + tails":                  func(p pocket) float64 { return p["L"] + p["tails"] },
	"R/(1 + e)":                  func(p pocket) float64 { return p["R"] / (1 + p["e"]) },
	"sqrt(T (1 + e)/w)/(2 s)":    func(p pocket) float64 { return math.Sqrt(p["T"]*(1+p["e"])/p["w"]) / 2 / p["s"] },
	"x + y t":                    func(p pocket) float64 { return p["x"] + p["y"]*p["t"] },
	"s - y t":                    func(p pocket) float64 { return p["s"] - p["y"]*p["t"] },
	"sqrt(a^2 + y^2)":            func(p pocket) float64 { return math.Sqrt(p["a"]*p["a"] + p["y"]*p["y"]) },
	"sqrt(b^2 + y^2)":            func(p pocket) float64 { return math.Sqrt(p["b"]*p["b"] + p["y"]*p["y"]) },
	"F + H + tails":              func(p pocket) float64 { return p["F"] + p["H"] + p["tails"] },
	"EA (Ry/R0 - 1)":             func(p pocket) float64 { return p["EA"] * (p["Ry"]/p["R0"] - 1) },
	"w R0/Ry":                    func(p pocket) float64 { return p["w"] * p["R0"] / p["Ry"] },
	"sqrt(Ty/wy)/(2 H)":          func(p pocket) float64 { return math.Sqrt(p["Ty"]/p["wy"]) / 2 / p["H"] },
	"1200 log2(fy/f0)":           func(p pocket) float64 { return 1200 * math.Log2(p["fy"]/p["f0"]) },
	"Ty ((y + t a)/F + (y - t b)/H)": func(p pocket) float64 {
		return p["Ty"] * ((p["y"]+p["t"]*p["a"])/p["F"] + (p["y"]-p["t"]*p["b"])/p["H"])
	},
}

// noKeys are formulas that no single line of keys follows.
var noKeys = []string{
	"", "root of the summed squares of its parts", "by trial, until the rise below is the one asked",
	"100 (T (1 + e)/(1 + 2 e) u(w)/w / u)^2", "100 (T 2 e/(1 + 2 e) u(d)/d / u)^2",
}

// shown is a value with a step's digits, as printed.
func shown(t *testing.T, s trace.Step) float64 {
	x, err := strconv.ParseFloat(strconv.FormatFloat(s.Value, 'g', s.Digits, 64), 64)
	require.NoError(t, err)
	return x
}

func known() (wire, bendAt) {
	w, at := steel(0.254e-3), wholeTone()
	w.ULinearDensity, w.UCoreDia = 0.012*w.LinearDensity, 0.005*w.CoreDia
	w.Strength, _ = minStrength(w.CoreDia)
	return w, at
}

func TestTheWorkCanBeFollowed(t *testing.T) {
	w, at := known()
	steps, err := explain(w, at)
	require.NoError(t, err)
	p, followed := pocket{}, 0
	for _, s := range steps {
		assert.NotEmpty(t, s.Name)
		assert.NotEmpty(t, s.Source, s.Name)
		if press, ok := keys[s.Formula]; ok {
			followed++
			assert.InEpsilon(t, s.Value, press(p), 2e-5, "%s: %s", s.Name, s.Formula)
		} else {
			assert.Contains(t, noKeys, s.Formula)
		}
		if s.Symbol != "" {
			_, twice := p[s.Symbol]
			assert.False(t, twice, "the symbol %s stands twice", s.Symbol)
			p[s.Symbol] = shown(t, s)
		}
	}
	assert.Equal(t, len(keys), followed)
}

func TestTheWorkAgreesWithTheAnswers(t *testing.T) {
	w, at := known()
	steps, err := explain(w, at)
	require.NoError(t, err)
	bend, err := bendString(w, at)
	require.NoError(t, err)
	force := openAt(w, at.Length, at.Pitch)
	u := w.real().WithU(nil, unit.Force(force)).U.N()
	assert.Equal(t, force, valueOf(t, steps, "T"))
	assert.Equal(t, u, valueOf(t, steps, "u"))
	assert.Equal(t, bend.Distance, valueOf(t, steps, "y"))
	assert.InEpsilon(t, bend.Tension, valueOf(t, steps, "Ty"), 1e-10)
	assert.InEpsilon(t, bend.Force, valueOf(t, steps, "P"), 1e-10)
	assert.InDelta(t, at.Rise, valueOf(t, steps, "rise"), 1e-8)
	total := 0.0
	for _, s := range steps {
		if s.Unit == "%" && s.Symbol == "" {
			total += s.Value
		}
	}
	assert.InDelta(t, 100, total, 1e-9, "the shares make up the whole")
}

func TestTheWorkLeavesOutWhatIsNotKnown(t *testing.T) {
	bare := wire{LinearDensity: 4e-4}
	at := wholeTone()
	at.Fret = 0
	steps, err := explain(bare, at)
	require.NoError(t, err)
	assert.Len(t, steps, 5, "weight, length, pitch, textbook tension, tension")
	assert.Equal(t, openAt(bare, at.Length, at.Pitch), valueOf(t, steps, "T"))

	at.Fret = 5
	steps, err = explain(bare, at)
	assert.ErrorIs(t, err, tension.ErrNoStiffness)
	assert.Len(t, steps, 5, "the open string stands")

}

func TestTheWorkOfAWoundString(t *testing.T) {
	w, at := known()
	name := func() string {
		steps, err := explain(w, at)
		require.NoError(t, err)
		for _, s := range steps {
			if s.Symbol == "rise of partial 10" {
				return s.Name
			}
		}
		return ""
	}
	assert.Equal(t, "inharmonicity", name())
	w.Plain = false
	assert.Equal(t, "inharmonicity, at least", name())
}
