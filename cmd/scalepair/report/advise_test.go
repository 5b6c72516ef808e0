package report_test

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/report"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
)

// found is what advise finds on a build; trials are few, for speed.
func found(t *testing.T, file string) (*report.Input, *report.Found) {
	t.Helper()
	r, err := build.Load(file, nil)
	require.NoError(t, err)
	in := &report.Input{Run: r, Units: table.Units{Length: r.LengthUnit, Force: r.ForceUnit}}
	in.Plan, err = r.Plan()
	require.NoError(t, err)
	ctx := context.Background()
	f := &report.Found{}
	f.Result, err = in.Plan.Search(ctx)
	require.NoError(t, err)
	f.Pick = f.Result.Preferred()
	require.NotNil(t, f.Pick)
	f.Detail, err = in.Plan.Detail(f.Pick.Bass, f.Pick.Treble, f.Pick.Gauges)
	require.NoError(t, err)
	f.Taste, err = in.Plan.Taste(ctx, f.Result)
	require.NoError(t, err)
	f.Confidence, err = in.Plan.Confidence(ctx, f.Result, r.Stock.Drawer(), 100, 1)
	require.NoError(t, err)
	return in, f
}

func everyBuild() []string {
	out := []string{demoFile}
	for _, name := range []string{"bass_five", "eight_inch", "seven"} {
		out = append(out, filepath.Join("../../../testdata/builds", name, "build.toml"))
	}
	return out
}

// A fan that feel does not ask for is said to gain nothing but inharmonicity.
func TestWhatTheFanGains(t *testing.T) {
	for _, file := range everyBuild()[:2] {
		in, f := found(t, file)
		straight, fan := f.Result.Picks[0], f.Pick
		require.Zero(t, straight.Difference)
		require.Positive(t, fan.Difference)
		assert.Less(t, fan.Inharmonicity, straight.Inharmonicity)
		assert.Contains(t, report.NewAdvice(in, f, false).Reasons, "Smaller fan: straight frets feel as good; a fan only lowers inharmonicity.")
	}
}

func printed80(t *testing.T, r document.Result) []string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, document.Write(&b, r, document.Options{Width: 80}))
	return strings.Split(strings.TrimRight(b.String(), "\n"), "\n")
}

// What a builder can act on stands in the first 14 lines, all of it on a screen.
func TestTheAnswerComesFirst(t *testing.T) {
	for _, file := range everyBuild() {
		in, f := found(t, file)
		lines := printed80(t, report.NewAdvice(in, f, false))
		first := strings.Join(lines[:min(len(lines), 14)], "\n")
		for _, word := range []string{"Pair: ", "Fan: ", "Set, low string first: ", "Feel error: ", "Total tension", "Blank: "} {
			if file == demoFile || word != "Blank: " {
				assert.Contains(t, first, word, file)
			}
		}
		if file == demoFile {
			assert.LessOrEqual(t, len(lines), 48)
		}
		assert.Greater(t, len(printed80(t, report.NewAdvice(in, f, true))), len(lines))
	}
}

// Every row of the trade-off is what tension says of that pair with that set, and
// JSON has the same numbers whatever the units printed.
func TestTheTradeOffIsWhatTensionSays(t *testing.T) {
	for _, file := range everyBuild() {
		in, f := found(t, file)
		a := report.NewAdvice(in, f, true)
		assert.InDelta(t, float64(f.Pick.Error), float64(a.Strung.Pair.Error), 1e-12, "the pick is the pair that is strung")
		for _, row := range a.TradeOff {
			d, err := in.Plan.Detail(row.Bass, row.Treble, row.Pair.Gauges)
			require.NoError(t, err)
			assert.InDelta(t, float64(d.Error), float64(row.Error), 1e-12)
			assert.Equal(t, d.Inharmonicity, row.Inharmonicity)
			assert.Equal(t, d.SaddleSlant, row.SaddleSlant)
			assert.Len(t, row.Gauges, len(row.Pair.Gauges))
		}
		metric, err := json.Marshal(a)
		require.NoError(t, err)
		in.Units = table.Units{Length: unit.InchFractions, Force: unit.KilogramsForce}
		other := report.NewAdvice(in, f, true)
		var x, y map[string]any
		require.NoError(t, json.Unmarshal(metric, &x))
		imperial, err := json.Marshal(other)
		require.NoError(t, err)
		require.NoError(t, json.Unmarshal(imperial, &y))
		for _, key := range []string{"pair", "picks", "trade_off", "confidence", "tunings", "blanks"} {
			assert.Equal(t, x[key], y[key], key)
		}
	}
}

// Lists of strings run low string first, and a table says what its detail does.
func TestStringsRunLowFirst(t *testing.T) {
	in, f := found(t, demoFile)
	text, err := json.Marshal(report.NewTension(in, f.Detail))
	require.NoError(t, err)
	var got struct {
		Tunings []struct {
			Strings []struct {
				String    int     `json:"string"`
				Tension   float64 `json:"tension_n"`
				Wanted    float64 `json:"wanted_tension_n"`
				Deviation float64 `json:"tension_deviation_percent"`
				Bends     []struct {
					Force float64 `json:"bending_force_n"`
				} `json:"bends"`
			} `json:"strings"`
		} `json:"tunings"`
		Pair struct {
			Gauges []string `json:"gauges"`
		} `json:"pair"`
	}
	require.NoError(t, json.Unmarshal(text, &got))
	rows := got.Tunings[0].Strings
	require.Len(t, rows, 6)
	for i, row := range rows {
		s := f.Detail.Strings[5-i]
		assert.Equal(t, 6-i, row.String)
		assert.InEpsilon(t, s.Tunings[0].Tension.Value.N(), row.Tension, 1e-8)
		assert.InDelta(t, 100*(row.Tension/row.Wanted-1), row.Deviation, 1e-6)
		assert.Equal(t, in.Plan.Stock()[s.Gauge].Label, got.Pair.Gauges[i])
		assert.Len(t, row.Bends, len(s.Tunings[0].Bends))
	}
}

// A limit that needs a core says so where no core is known, and one on bends where
// nothing is bent; what cannot be looked at is not passed in silence.
func TestLimitsThatCannotBeJudgedAreNamed(t *testing.T) {
	folder := filepath.Join("..", "..", "..", "testdata", "builds", "bass_five")
	source, err := os.ReadFile(filepath.Join(folder, "build.toml"))
	require.NoError(t, err)
	readings, err := os.ReadFile(filepath.Join(folder, "readings.csv"))
	require.NoError(t, err)
	text := strings.Replace(string(source), "[limits]", "[limits]\nsaddle_travel = \"90 mm\"\nmost_bending_force = \"20 N\"", 1)
	limits := func(readings string) string {
		r, err := build.New([]byte(text), []byte(readings), nil)
		require.NoError(t, err)
		in := &report.Input{Run: r}
		in.Plan, err = r.Plan()
		require.NoError(t, err)
		result, err := in.Plan.Search(context.Background())
		require.NoError(t, err)
		pick := result.Preferred()
		d, err := in.Plan.Detail(pick.Bass, pick.Treble, pick.Gauges)
		require.NoError(t, err)
		asked := report.NewAdvice(in, &report.Found{Result: result, Pick: pick, Detail: d}, true).Asked
		return asked[len(asked)-1]
	}
	bare := regexp.MustCompile(`(?m)^(w\d+,[^,]*,[^,]*),[^,]*,[^,]*,`).ReplaceAllString(string(readings), "$1,,,")
	bare = strings.ReplaceAll(bare, "core measured", "")
	assert.Contains(t, limits(bare), "Not judged: saddle travel of any gauge in stock; core or strength not known. Not judged: bending force; no string is bent.")
	assert.NotContains(t, limits(string(readings)), "saddle travel of")
}
