package chart_test

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/chart"
)

var update = flag.Bool("update", false, "rewrite the goldens")

const goldens = "../../../testdata/show"

func TestMain(m *testing.M) {
	if err := flag.Set("rapid.seed", "1"); err != nil {
		panic(err)
	}
	os.Exit(m.Run())
}

// fitSample is a plain and a wound family with one slipped reading. Invented.
func fitSample() chart.Fit {
	r := rand.New(rand.NewPCG(1, 2))
	f := chart.Fit{Title: "Linear densities against their fits", XLabel: "outer diameter mm", YLabel: "linear density g/m",
		Curves: []chart.Curve{
			{Name: "plain", X: []float64{0.2, 0.5}, Y: []float64{6.1654 * 0.04, 6.1654 * 0.25}},
			{Name: "wound", X: []float64{0.5, 1.6}, Y: []float64{5.2 * math.Pow(0.5, 1.96), 5.2 * math.Pow(1.6, 1.96)}},
		}}
	add := func(curve string, a, m, from, to, step float64) {
		for d := from; d <= to; d += step {
			w := a * math.Pow(d, m)
			f.Points = append(f.Points, chart.FitPoint{X: d, Y: w * (1 + 0.006*r.NormFloat64()), U: 0.006 * w, Curve: curve})
		}
	}
	add("plain", 6.1654, 2, 0.2032, 0.5, 0.0254)
	add("wound", 5.2, 1.96, 0.508, 1.6, 0.1016)
	f.Points[4] = chart.FitPoint{X: 0.3048, Y: 0.46, U: 0.004, Label: "p12, 14 March", Kind: chart.Suspect, Curve: "plain"}
	f.Points = append(f.Points, chart.FitPoint{X: 1.143, Y: 5.2 * math.Pow(1.143, 1.96), U: 0.1, Label: "w45", Kind: chart.Estimated, Curve: "wound"})
	return f
}

// tradeOffSample is a made-up cloud with a front. Invented.
func tradeOffSample() chart.TradeOff {
	t := chart.TradeOff{Title: "What evenness costs in difference", XLabel: "difference mm", YLabel: "tension misfit %"}
	for bass := 660; bass <= 720; bass += 5 {
		for treble := 635; treble <= 680; treble += 5 {
			d := float64(bass - treble)
			if d < 0 {
				continue
			}
			misfit := 2 + 0.004*(70-d)*(70-d)/1.6 + 0.003*math.Abs(float64(treble-655))*20/10
			t.Pairs = append(t.Pairs, chart.Pair{X: d, Y: misfit, Label: fmt.Sprintf("%d / %d", bass, treble)})
		}
	}
	for i, p := range t.Pairs {
		beaten := false
		for _, q := range t.Pairs {
			beaten = beaten || q.X <= p.X && q.Y <= p.Y && (q.X < p.X || q.Y < p.Y)
		}
		t.Pairs[i].Front = !beaten
		t.Pairs[i].Best = p.Label == "695 / 655"
	}
	return t
}

func barsSample() chart.Bars {
	b := chart.Bars{Title: "Tension of each string", XLabel: "tension N"}
	for i, s := range []struct {
		label            string
		value, u, target float64
		note             string
	}{
		{"1  B3", 64.2, 0.3, 65.5, "64.2 ± 0.3"}, {"2  F#3", 65.0, 0.4, 66.1, "65.0 ± 0.4"}, {"3  D3", 71.9, 1.4, 70, "71.9 ± 1.4"},
		{"4  A2", 80.6, 0.5, 79.8, "80.6 ± 0.5"}, {"5  E2", 83.8, 3.1, 88, "83.8 ± 3.1, estimated"}, {"6  B1", 86.1, 0.9, 80, "86.1 ± 0.9"},
	} {
		_ = i
		b.Bars = append(b.Bars, chart.Bar{Label: s.label, Value: s.value, U: s.u, Target: s.target, Note: s.note})
	}
	return b
}

func TestGoldens(t *testing.T) {
	for name, draw := range map[string]func() (string, error){
		"fit.svg":      fitSample().SVG,
		"tradeoff.svg": tradeOffSample().SVG,
		"bars.svg":     barsSample().SVG,
	} {
		t.Run(name, func(t *testing.T) {
			got, err := draw()
			require.NoError(t, err)
			file := filepath.Join(goldens, name)
			if *update {
				require.NoError(t, os.MkdirAll(goldens, 0o755))
				require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
			}
			want, err := os.ReadFile(file)
			require.NoError(t, err)
			assert.True(t, string(want) == got, "differs from %s; look at both, then run with -update", file)
		})
	}
}

// The legend says what the ringed pairs are, in the caller's words.
func TestRingedIsNamed(t *testing.T) {
	c := chart.TradeOff{Title: "t", Pairs: []chart.Pair{{X: 1, Y: 2, Label: "a", Best: true}}}
	text, err := c.SVG()
	require.NoError(t, err)
	assert.Contains(t, text, ">best</text>")
	c.Ringed = "this sheet's <pair>"
	text, err = c.SVG()
	require.NoError(t, err)
	assert.Contains(t, text, ">this sheet&#39;s &lt;pair&gt;</text>")
	assert.NotContains(t, text, ">best</text>")
}
