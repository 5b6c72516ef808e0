package report_test

import (
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/job"
	"scalepair/cmd/scalepair/report"
	"scalepair/cmd/scalepair/show"
	"scalepair/tension/choice"
)

// inWords are the formulas that a pocket calculator cannot follow.
var inWords = regexp.MustCompile(`^(by trial, |by changing |least squares |root of the summed squares )`)

// worked is the printed work for one string of a build.
func worked(t *testing.T, file string, over *build.Flags, number int, fret float64) (*show.Report, *choice.Detail, *job.Work) {
	t.Helper()
	j, err := job.Load(file, over)
	require.NoError(t, err)
	p, err := j.Plan()
	require.NoError(t, err)
	pick, err := j.Pick()
	require.NoError(t, err)
	d, err := p.Detail(pick.BassMM, pick.TrebleMM, pick.Gauges)
	require.NoError(t, err)
	w, err := j.Work(p, d, 0, number, fret)
	require.NoError(t, err)
	return report.Explain(&report.Input{Job: j, Plan: p}, d, w), d, w
}

// follow works every printed step out from the printed numbers above it, and
// gives the notepad and the number of steps that were worked out.
func follow(t *testing.T, r *show.Report) (pocket, int) {
	t.Helper()
	notes, done := pocket{}, 0
	for _, b := range r.Blocks {
		table, ok := b.(*show.Table)
		if !ok || table.Name == "sources" {
			continue
		}
		for _, row := range table.Rows {
			symbol, formula, both := strings.Cut(row[0], " = ")
			if !both && row[2] == "%" {
				symbol, formula = "", row[0]
			}
			value, err := strconv.ParseFloat(row[1], 64)
			require.NoError(t, err, row[0])
			switch {
			case formula == "":
			case inWords.MatchString(formula):
				if strings.HasPrefix(formula, "root") {
					assert.InEpsilon(t, value, tensionU(notes), 2e-5, row[0])
				}
			default:
				got, err := notes.work(formula)
				require.NoError(t, err)
				assert.InDelta(t, value, got, tolerance(row, value), row[0])
				done++
			}
			if symbol != "" {
				notes[symbol] = value
			}
		}
	}
	return notes, done
}

// tolerance is what the printed digits leave open: half a hundredth of a
// percent where only that is printed, and more where a small difference of two
// readings is squared.
func tolerance(row []string, value float64) float64 {
	switch {
	case row[2] == "%":
		return 0.0051 + 2e-5*value
	case strings.HasPrefix(row[0], "chi2") || strings.HasPrefix(row[0], "wide"):
		return 1e-3 * math.Abs(value)
	}
	return 2e-5 * math.Abs(value)
}

// tensionU adds up the parts of the tension's uncertainty.
func tensionU(p pocket) float64 {
	e := p["e"]
	u := math.Pow(p["T"]*(1+e)/(1+2*e)*p["u(w)"]/p["w"], 2)
	if p["d"] > 0 && e > 0 {
		u += math.Pow(p["T"]*2*e/(1+2*e)*p["u(d)"]/p["d"], 2)
	}
	return math.Sqrt(u)
}

func TestTheWorkOfTheDemoCanBeFollowed(t *testing.T) {
	for _, c := range []struct {
		name, gauges string
		over         []string
		fret         float64
	}{
		{"plain and wound", "w56 w44 w34 w24 p17 p13", nil, 5},
		{"estimated and three readings", "w58 w44 w34 w22 p21 p105", nil, 12},
		{"a capo, a retuned string, another pitch", "w58 w44 w36 w26 p21 p10", []string{"--capo", "2", "--retune", "6=A1-14c", "--pitch", "442"}, 7},
		{"no bend", "w80 w60 w50 w40 p24 p09", nil, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			over := append(c.over, "--bass", "700 mm", "--treble", "650 mm", "--gauges", c.gauges)
			for number := 1; number <= 6; number++ {
				r, d, _ := worked(t, demoFile, flags(t, over...), number, c.fret)
				notes, done := follow(t, r)
				assert.Greater(t, done, 25)
				s := d.Strings[number-1]
				assert.InDelta(t, 1000*s.CompensationM[1], 1000*notes["most"], 1e-6)
				if c.fret > 0 {
					assert.InEpsilon(t, s.Cases[0].FreqHz*math.Pow(2, c.fret/12), notes["f0"], 1e-6, "the fret counts from the nut, whatever the capo")
					assert.InDelta(t, 200, notes["rise"], 1e-6)
				}
			}
		})
	}
}

const demoFile = "../../../data/demo/build.toml"

// hardBuild has what the demo has not: hung readings, constructions, a family
// without cores, rows on one step of the balance, own materials.
const hardBuild = `
readings = "readings.csv"
[strings]
tuning = "E2 A2 D3 G3 B3 E4"
gauges = ["w46", "b36", "b26", "p17", "p13", "p10"]
[chosen]
scale = "648 mm"
gauges = ["w46", "b36", "b26", "p17", "p13", "p10"]
[neck]
string_spread_at_nut = "36 mm"
string_spread_at_saddle = "52 mm"
[limits]
breaking_open_percent = 85
[measuring]
balance_resolution = "0.01 g"
balance_accuracy = "0.01 g"
ruler_resolution = "1 mm"
ruler_accuracy = "0.3 mm"
caliper_resolution = "0.01 mm"
caliper_accuracy = "0.02 mm"
[[constructions]]
gauge = "b36"
construction = "bronze"
core = "0.41 mm"
core_shape = "hex"
diameters = "measured"
wraps = [{ wire = "0.25 mm", material = "phosphor bronze" }]
[[constructions]]
gauge = "b26"
construction = "bronze"
core = "0.36 mm"
core_shape = "round"
wraps = [{ wire = "0.10 mm", material = "phosphor bronze" }, { wire = "0.05 mm", material = "silver-plated copper", form = "flat", packing = 0.95 }]
`

const hardReadings = `gauge,construction,outer_mm,core_mm,core_shape,kind,pieces,length_mm,mass_g,hung_mass_g,speaking_length_mm,pitch
p10,plain,0.254,,,weighed,4,500,0.79,,,
p10,plain,0.254,,,weighed,4,500.2,0.79,,,
p10,plain,0.254,,,weighed,2,900,0.72,,,
p10,plain,0.254,,,weighed,3,700,0.83,,,
p10,plain,0.254,,,hung,,,,5000,640,252 Hz
p13,plain,0.330,,,hung,,,,6000,640,214 Hz
p13,plain,0.330,,,hung,,,,5000,640,195 Hz
p13,plain,0.330,,,hung,,,,4000,640,174 Hz
p17,plain,0.432,,,listed,,,,,,
p20,plain,0.508,,,weighed,2,600,1.91,,,
w40,steel wound,1.016,,,weighed,1,800,4.1,,,
w44,steel wound,1.118,,,weighed,1,700,4.3,,,
w50,steel wound,1.270,,,weighed,1,700,5.6,,,
w46,steel wound,1.168,,,listed,,,,,,
b36,bronze,0.973,0.41,hex,weighed,2,400,4.6,,,
`

func hard(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	file := filepath.Join(dir, "build.toml")
	require.NoError(t, os.WriteFile(file, []byte(hardBuild), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "readings.csv"), []byte(hardReadings), 0o644))
	return file
}

func TestTheWorkOfEveryKindOfGaugeCanBeFollowed(t *testing.T) {
	file := hard(t)
	for number, least := range []int{60, 45, 25, 40, 40, 10} {
		r, d, w := worked(t, file, nil, number+1, 12)
		notes, done := follow(t, r)
		assert.GreaterOrEqual(t, done, least, w.Gauge.Label)
		assert.InEpsilon(t, w.Gauge.LinearDensity, notes["w"], 1e-8, w.Gauge.Label)
		assert.InEpsilon(t, w.Gauge.U, notes["u(w)"], 1e-6, w.Gauge.Label)
		assert.InEpsilon(t, d.Strings[number].Cases[0].TensionN, notes["T"], 0.01, "the last T is that of the compensation")
	}
}

// flags are those of a command line.
func flags(t *testing.T, args ...string) *build.Flags {
	t.Helper()
	f, err := build.FlagsOf(args...)
	require.NoError(t, err)
	return f
}
