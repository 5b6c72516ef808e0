package chart_test

import (
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/cmd/scalepair/chart"
	"scalepair/data/testutil"
)

var update = flag.Bool("update", false, "rewrite the goldens")

const goldens = "../../../testdata/charts"

var _ = testutil.Seed("1")

// fitSample is a plain and a wound family with one slipped reading. Invented.
func fitSample() chart.Fit {
	r := rand.New(rand.NewPCG(1, 2))
	f := chart.Fit{Title: "Readings against their fits", XLabel: "outer diameter, mm", YLabel: "heavier than the fit, %",
		Caption: strings.Repeat("What the points are, in words. ", 6), Families: []string{"plain", "wound"}}
	add := func(family int, from, to, step float64) {
		for d := from; d <= to; d += step {
			f.Points = append(f.Points, chart.Point{X: d, Y: 0.6 * r.NormFloat64(), U: 0.6, Family: family})
		}
	}
	add(0, 0.2032, 0.5, 0.0254)
	add(1, 0.508, 1.6, 0.1016)
	f.Points[4].Label, f.Points[4].Kind, f.Points[4].Y = "p12, 14 March", chart.Suspect, -6.4
	f.Points = append(f.Points, chart.Point{X: 1.143, U: 1.4, Label: "w45", Kind: chart.Estimated, Family: 1})
	return f
}

// barsSample is a set of six. Invented.
func barsSample() chart.Bars {
	b := chart.Bars{Title: "Tension of each string", XLabel: "tension N"}
	for _, s := range []struct {
		label            string
		value, u, target float64
	}{{"1  B3", 64.2, 0.3, 65.5}, {"2  F#3", 65.0, 0.4, 66.1}, {"3  D3", 71.9, 1.4, 70}, {"4  A2", 80.6, 0.5, 79.8}, {"5  E2", 83.8, 3.1, 88}, {"6  B1", 86.1, 0.9, 80}} {
		b.Bars = append(b.Bars, chart.Bar{Label: s.label, Value: s.value, U: s.u, Target: s.target, Note: fmt.Sprintf("%.1f ± %.1f", s.value, s.u)})
	}
	return b
}

// mapSample is a valley of feel error with a limit on the difference. Invented.
func mapSample() chart.Map {
	m := chart.Map{Title: "Scale pairs", XLabel: "bass, mm", YLabel: "treble, mm", UpperLabel: "inharmonicity of the lowest string, cents", Caption: "What is as good as the best.", Picks: []chart.Pick{
		{665, 645, "smallest fan"}, {680, 645, "middle"}, {695, 640, "longest bass"}, {695, 640, "clear enough"},
	}}
	for bass := 640.0; bass <= 720; bass += 5 {
		m.Upper = append(m.Upper, chart.Upper{X: bass, Text: fmt.Sprintf("%.1f", 20-(bass-640)/10)})
		for treble := 618.0; treble <= 648; treble += 5 {
			if bass-treble > 70 || bass < treble {
				continue
			}
			e := 1.5 + math.Hypot((bass-680)/12, (treble-644)/9)
			m.Pairs = append(m.Pairs, chart.Pair{X: bass, Y: treble, Error: e, Good: e <= 3.5})
		}
	}
	return m
}

func TestGoldens(t *testing.T) {
	for name, got := range map[string]string{"fit.svg": fitSample().SVG(), "bars.svg": barsSample().SVG(), "map.svg": mapSample().SVG()} {
		file := filepath.Join(goldens, name)
		if *update {
			require.NoError(t, os.MkdirAll(goldens, 0o755))
			require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
		}
		want, err := os.ReadFile(file)
		require.NoError(t, err)
		assert.True(t, string(want) == got, "differs from %s; look at both, then run with -update", file)
	}
}

func TestNothingToDraw(t *testing.T) {
	assert.Empty(t, chart.Fit{Title: "t"}.SVG())
	assert.Empty(t, chart.Bars{Title: "t"}.SVG())
	assert.Empty(t, chart.Map{Title: "t"}.SVG())
}

// element is one shape or text of a chart, read back as strict XML.
type element struct {
	name, text string
	attr       map[string]string
}

func (e element) number(t require.TestingT, name string) float64 {
	v, err := strconv.ParseFloat(e.attr[name], 64)
	require.NoError(t, err, "%s of %s", name, e.name)
	return v
}

// corners gives the places of an element.
func (e element) corners(t require.TestingT) [][2]float64 {
	switch e.name {
	case "circle":
		return [][2]float64{{e.number(t, "cx"), e.number(t, "cy")}}
	case "text":
		return [][2]float64{{e.number(t, "x"), e.number(t, "y")}}
	case "rect":
		x, y := e.number(t, "x"), e.number(t, "y")
		return [][2]float64{{x, y}, {x + e.number(t, "width"), y + e.number(t, "height")}}
	case "path":
		var out [][2]float64
		fields := strings.Fields(strings.NewReplacer("M", " ", "L", " ").Replace(e.attr["d"]))
		for i := 0; i < len(fields); i += 2 {
			x, errX := strconv.ParseFloat(fields[i], 64)
			y, errY := strconv.ParseFloat(fields[i+1], 64)
			require.NoError(t, errors.Join(errX, errY))
			out = append(out, [2]float64{x, y})
		}
		return out
	}
	return nil
}

func read(t require.TestingT, svg string) []element {
	d := xml.NewDecoder(strings.NewReader(svg))
	var out []element
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			e := element{name: token.Name.Local, attr: map[string]string{}}
			for _, a := range token.Attr {
				e.attr[a.Name.Local] = a.Value
			}
			out = append(out, e)
		case xml.CharData:
			if len(out) > 0 && strings.TrimSpace(string(token)) != "" {
				out[len(out)-1].text += string(token)
			}
		}
	}
}

// classed gives the elements of one class.
func classed(all []element, class string) []element {
	var out []element
	for _, e := range all {
		if e.attr["class"] == class {
			out = append(out, e)
		}
	}
	return out
}

// requireSound draws twice, reads back and looks for anything off the sheet.
func requireSound(t require.TestingT, draw func() string) {
	svg := draw()
	require.Equal(t, svg, draw())
	require.NotContains(t, svg, `"-0.0"`)
	all := read(t, svg)
	w, h := all[0].number(t, "width"), all[0].number(t, "height")
	for _, e := range all {
		for _, p := range e.corners(t) {
			require.True(t, p[0] >= -0.1 && p[0] <= w+0.1 && p[1] >= -0.1 && p[1] <= h+0.1, "%v of a %s outside %v x %v", p, e.name, w, h)
		}
	}
}

var anyLabel = rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{"", "<b>&\"'", "25½", "漢字", strings.Repeat("long ", 60), "a\nb\x00"}))

// figure draws sizes from far below to far above anything on a bench.
var figure = rapid.OneOf(rapid.Float64Range(0, 200), rapid.Float64Range(0, 1e-9), rapid.Float64Range(0, 1e12), rapid.SampledFrom([]float64{0, 1, 1e12}))

func TestAnyFitDraws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := chart.Fit{Title: anyLabel.Draw(t, "title"), XLabel: anyLabel.Draw(t, "x"), YLabel: anyLabel.Draw(t, "y")}
		for range rapid.IntRange(1, 30).Draw(t, "points") {
			f.Points = append(f.Points, chart.Point{X: figure.Draw(t, "x"), Y: figure.Draw(t, "y"), U: figure.Draw(t, "u"),
				Label: anyLabel.Draw(t, "label"),
				Kind:  chart.Kind(rapid.IntRange(0, 2).Draw(t, "kind")), Family: rapid.IntRange(0, 5).Draw(t, "family")})
		}
		requireSound(t, f.SVG)
	})
}

func TestAnyBarsDraw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := chart.Bars{Title: anyLabel.Draw(t, "title"), XLabel: anyLabel.Draw(t, "x")}
		for range rapid.IntRange(1, 12).Draw(t, "bars") {
			c.Bars = append(c.Bars, chart.Bar{Label: anyLabel.Draw(t, "label"), Value: figure.Draw(t, "value"),
				U: figure.Draw(t, "u"), Target: figure.Draw(t, "target"), Note: anyLabel.Draw(t, "note")})
		}
		requireSound(t, c.SVG)
	})
}

func TestAnyMapDraws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := chart.Map{Title: anyLabel.Draw(t, "title"), XLabel: anyLabel.Draw(t, "x"), YLabel: anyLabel.Draw(t, "y")}
		for i := range rapid.IntRange(1, 8).Draw(t, "columns") {
			for j := range rapid.IntRange(1, 8).Draw(t, "rows") {
				q := chart.Pair{X: 600 + 5*float64(i), Y: 590 + 2.5*float64(j), Error: figure.Draw(t, "error"), Good: rapid.Bool().Draw(t, "good")}
				c.Pairs = append(c.Pairs, q)
				if rapid.IntRange(0, 9).Draw(t, "picked") == 0 {
					c.Picks = append(c.Picks, chart.Pick{X: q.X, Y: q.Y, Name: anyLabel.Draw(t, "name")})
				}
			}
		}
		requireSound(t, c.SVG)
	})
}

// A name stands on no mark; and beside its own it stands where no other is near,
// or a line leads to it.
func TestNamesCoverNoMark(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := chart.Map{Pairs: []chart.Pair{{X: 600, Y: 600}, {X: 700, Y: 650}}}
		n := rapid.IntRange(1, 5).Draw(t, "picks")
		for i := range n {
			m.Picks = append(m.Picks, chart.Pick{X: 600 + float64(i) + rapid.Float64Range(0, 90).Draw(t, "x"), Y: rapid.Float64Range(600, 650).Draw(t, "y"), Name: rapid.SampledFrom([]string{"middle", "longest bass"}).Draw(t, "name")})
		}
		all := read(t, m.SVG())
		marks, names := classed(all, "sp-open"), classed(all, "sp-over sp-bold")
		require.Len(t, names, n, "all have room")
		beside := 0
		for _, name := range names {
			x, y := name.number(t, "x"), name.number(t, "y")
			near := 0
			for _, mark := range marks {
				mx, my := mark.number(t, "cx"), mark.number(t, "cy")
				away := math.Hypot(math.Max(math.Max(x-mx, mx-x-8.4*float64(len(name.text))), 0), math.Max(math.Max(y-12-my, my-y-4), 0))
				require.Greater(t, away, 5.0, "the mark's own radius")
				if away < 12 {
					near++
				}
			}
			if near == 1 {
				beside++
			}
		}
		require.GreaterOrEqual(t, beside+len(classed(all, "sp-thin")), n)
	})
}

// The bars' lengths stand as their values do; whisker and target stand where
// their values are.
func TestBarsAreToScale(t *testing.T) {
	all := read(t, chart.Bars{Bars: []chart.Bar{{Label: "a", Value: 30}, {Label: "b", Value: 90, U: 5, Target: 60}}}.SVG())
	bars := classed(all, "sp-bar")
	require.Len(t, bars, 2)
	a, b := bars[0].number(t, "width"), bars[1].number(t, "width")
	assert.InDelta(t, 3*a, b, 0.3)
	left := bars[1].number(t, "x")
	targets := classed(all, "sp-target")
	assert.InDelta(t, left+2*a, targets[len(targets)-1].corners(t)[2][0], 0.2, "the target of 60")
	axes := classed(all, "sp-axis")
	var whisker [][2]float64
	for _, e := range axes {
		if c := e.corners(t); len(c) == 6 {
			whisker = c
		}
	}
	assert.InDelta(t, left+a/30*80, whisker[0][0], 0.2)
	assert.InDelta(t, left+a/30*100, whisker[5][0], 0.2)
}

// A suspect ten times as heavy stands at the edge and leaves the others apart.
func TestAFarSuspectPressesNothingFlat(t *testing.T) {
	all := read(t, chart.Fit{Points: []chart.Point{{X: 1, Y: -5}, {X: 2, Y: 5}, {X: 3, Y: 900, Kind: chart.Suspect, Label: "w42"}}}.SVG())
	readings := classed(all, "sp-reading")
	require.Len(t, readings, 3, "two, and one of the legend")
	assert.Greater(t, readings[1].number(t, "cy")-readings[2].number(t, "cy"), 200.0)
	require.Len(t, classed(all, "sp-over sp-warn sp-bold"), 1)
}

// Every pair stands on the tint of its own shade, and the outline goes about
// those as good as the best and nothing else.
func TestMapShowsEveryPair(t *testing.T) {
	m := chart.Map{Pairs: []chart.Pair{
		{640, 630, 1, true}, {645, 630, 2, true}, {650, 630, 9, false},
		{640, 635, 4, false}, {650, 635, 9, false},
	}, Picks: []chart.Pick{{640, 630, "a"}, {640, 630, "b"}}}
	all := read(t, m.SVG())
	assert.Len(t, classed(all, "sp-outline"), 6, "two neighbours have six outer sides")
	cells := 0
	for _, e := range classed(all, "sp-paper") {
		cells += int(math.Round(e.number(t, "width") / classed(all, "sp-paper")[1].number(t, "width")))
	}
	assert.Equal(t, 5, cells)
	require.Len(t, classed(all, "sp-over sp-bold"), 1)
	assert.Equal(t, "a, b", classed(all, "sp-over sp-bold")[0].text)
}
