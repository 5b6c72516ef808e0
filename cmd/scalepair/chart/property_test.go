package chart_test

import (
	"encoding/xml"
	"errors"
	"io"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/cmd/scalepair/chart"
)

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

// points reads a path's corners.
func (e element) points(t require.TestingT) [][2]float64 {
	fields := strings.Fields(strings.NewReplacer("M", " ", "L", " ", "Z", " ").Replace(e.attr["d"]))
	require.Zero(t, len(fields)%2)
	var out [][2]float64
	for i := 0; i < len(fields); i += 2 {
		x, errX := strconv.ParseFloat(fields[i], 64)
		y, errY := strconv.ParseFloat(fields[i+1], 64)
		require.NoError(t, errors.Join(errX, errY))
		out = append(out, [2]float64{x, y})
	}
	return out
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

// named gives the elements of one name.
func named(all []element, name string) []element {
	var out []element
	for _, e := range all {
		if e.name == name {
			out = append(out, e)
		}
	}
	return out
}

// requireInside asks that every mark and every text's place is on the sheet.
func requireInside(t require.TestingT, all []element) {
	w, h := all[0].number(t, "width"), all[0].number(t, "height")
	inside := func(x, y float64) {
		require.True(t, x >= 0 && x <= w && y >= 0 && y <= h, "%v %v outside %v x %v", x, y, w, h)
	}
	for _, e := range all {
		switch e.name {
		case "path":
			for _, p := range e.points(t) {
				inside(p[0], p[1])
			}
		case "circle":
			inside(e.number(t, "cx"), e.number(t, "cy"))
		case "text":
			inside(e.number(t, "x"), e.number(t, "y"))
		}
	}
}

var anyLabel = rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{"", "<b>&\"'", "25½", "漢字", strings.Repeat("long ", 60), "a\nb\x00"}))

// figure draws sizes from far below to far above anything on a bench.
var figure = rapid.OneOf(rapid.Float64Range(0, 200), rapid.Float64Range(0, 1e-9), rapid.Float64Range(0, 1e12), rapid.SampledFrom([]float64{0, 1, 1e12}))

func above0(v float64) float64 { return max(v, 1e-12) }

// requireSound draws twice, reads back and looks for anything off the sheet.
func requireSound(t require.TestingT, draw func() (string, error)) {
	svg, err := draw()
	require.NoError(t, err)
	again, err := draw()
	require.NoError(t, err)
	require.Equal(t, svg, again)
	require.NotContains(t, svg, "NaN")
	require.NotContains(t, svg, "Inf")
	require.NotContains(t, svg, `"-0.0"`)
	requireInside(t, read(t, svg))
}

func TestAnyFitDraws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := chart.Fit{Title: anyLabel.Draw(t, "title"), XLabel: anyLabel.Draw(t, "x"), YLabel: anyLabel.Draw(t, "y")}
		lo := above0(figure.Draw(t, "from"))
		if lo < 1e11 {
			f.Curves = []chart.Curve{{Name: "c", X: []float64{lo, 2 * lo}, Y: []float64{above0(figure.Draw(t, "y1")), above0(figure.Draw(t, "y2"))}}}
		}
		for range rapid.IntRange(1, 30).Draw(t, "points") {
			p := chart.FitPoint{X: above0(figure.Draw(t, "x")), Y: above0(figure.Draw(t, "y")), U: figure.Draw(t, "u"),
				Label: anyLabel.Draw(t, "label"), Kind: chart.Kind(rapid.IntRange(0, 2).Draw(t, "kind"))}
			if len(f.Curves) > 0 && p.X > lo/2 && p.X < 4*lo {
				p.Curve = "c"
			}
			f.Points = append(f.Points, p)
		}
		requireSound(t, f.SVG)
	})
}

func TestAnyTradeOffDraws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := chart.TradeOff{Title: anyLabel.Draw(t, "title"), XLabel: anyLabel.Draw(t, "x"), YLabel: anyLabel.Draw(t, "y")}
		for range rapid.IntRange(1, 60).Draw(t, "pairs") {
			sign := rapid.SampledFrom([]float64{1, -1}).Draw(t, "sign")
			c.Pairs = append(c.Pairs, chart.Pair{X: sign * figure.Draw(t, "x"), Y: figure.Draw(t, "y"), Label: anyLabel.Draw(t, "label"),
				Front: rapid.Bool().Draw(t, "front"), Best: rapid.IntRange(0, 9).Draw(t, "best") == 0})
		}
		requireSound(t, c.SVG)
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

// Equal ratios are equal distances on a logarithmic axis.
func TestFitIsLogarithmic(t *testing.T) {
	f := chart.Fit{Points: []chart.FitPoint{{X: 1, Y: 2}, {X: 2, Y: 8}, {X: 4, Y: 32}}}
	svg, err := f.SVG()
	require.NoError(t, err)
	var xs, ys []float64
	for _, e := range named(read(t, svg), "circle")[1:] { // the first is the legend's
		xs, ys = append(xs, e.number(t, "cx")), append(ys, e.number(t, "cy"))
	}
	require.Len(t, xs, 3)
	assert.InDelta(t, xs[1]-xs[0], xs[2]-xs[1], 0.11)
	assert.InDelta(t, ys[0]-ys[1], ys[1]-ys[2], 0.11)
	assert.Greater(t, xs[1], xs[0], "x runs right")
	assert.Less(t, ys[1], ys[0], "more stands higher")
}

// The bars' lengths stand as their values do; whisker and target stand where
// their values are.
func TestBarsAreTrue(t *testing.T) {
	b := chart.Bars{Bars: []chart.Bar{{Value: 50}, {Value: 100, U: 5, Target: 80}}}
	svg, err := b.SVG()
	require.NoError(t, err)
	var bars [][2]float64
	var target, whisker []float64
	for _, e := range named(read(t, svg), "path") {
		p := e.points(t)
		switch {
		case e.attr["fill-opacity"] != "":
			bars = append(bars, [2]float64{p[0][0], p[1][0]})
		case e.attr["stroke-width"] == "2.5" && p[0][0] == p[1][0]:
			target = append(target, p[0][0])
		case e.attr["stroke-width"] == "1.5" && p[0][1] == p[1][1]:
			whisker = []float64{p[0][0], p[1][0]} // the last is the second bar's
		}
	}
	require.Len(t, bars, 2)
	zero, unit := bars[0][0], (bars[1][1]-bars[1][0])/100
	assert.InDelta(t, zero+50*unit, bars[0][1], 0.11)
	assert.InDelta(t, zero+80*unit, target[len(target)-1], 0.11)
	assert.InDelta(t, zero+90*unit, whisker[0], 0.11)
	assert.InDelta(t, zero+110*unit, whisker[1], 0.11)
}

// The front's line takes only pairs that no other beats in what is shown.
func TestFrontLine(t *testing.T) {
	c := chart.TradeOff{Pairs: []chart.Pair{
		{X: 0, Y: 10, Front: true}, {X: 5, Y: 12, Front: true}, {X: 10, Y: 4, Front: true}, {X: 20, Y: 1}, {X: 10, Y: 3, Front: true},
	}}
	svg, err := c.SVG()
	require.NoError(t, err)
	var line [][2]float64
	diamonds := 0
	for _, e := range named(read(t, svg), "path") {
		if strings.Contains(e.attr["class"], "sp-s-accent") && e.attr["stroke-width"] == "1.5" {
			line = e.points(t) // the last: the first is the legend's
		}
		if strings.Contains(e.attr["class"], "sp-f-accent") {
			diamonds++
		}
	}
	require.Len(t, line, 2, "from (0, 10) to (10, 3)")
	assert.Less(t, line[0][0], line[1][0])
	assert.Equal(t, 4+1, diamonds, "every pair of the front, and the legend")
}

// A suspect far off does not press the others flat: it stands at the edge and
// its label says how far off it is.
func TestFarSuspectIsNamedWithItsDistance(t *testing.T) {
	svg, err := fitSample().SVG()
	require.NoError(t, err)
	var all []string
	for _, e := range named(read(t, svg), "text") {
		all = append(all, e.text)
	}
	// 0.46 against 6.1654 x 0.3048^2 = 0.57279: 19.7 % less.
	assert.Contains(t, all, "p12, 14 March -19.7 %")
	assert.Contains(t, all, "p12, 14 March")
}
