package report_test

import (
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
	"scalepair/tension/choice"
)

const demoFile = "../../../data/demo/build.toml"

// work is the demo on one pair, with one set.
type work struct {
	in *report.Input
	l  *fan.Layout
	d  *choice.Detail
}

func demo(t *testing.T, args ...string) work {
	t.Helper()
	return demoWith(t, func(*build.Build) {}, args...)
}

// demoWith is the demo with something changed.
func demoWith(t *testing.T, change func(*build.Build), args ...string) work {
	t.Helper()
	j, err := build.Load(demoFile, report.FlagsOf(t, append([]string{"--bass", "700 mm", "--treble", "650 mm", "--gauges", "w56 w44 w34 w24 p17 p13"}, args...)...))
	require.NoError(t, err)
	change(j.Build)
	w := work{in: &report.Input{Run: j}}
	w.in.Plan, err = j.Plan()
	require.NoError(t, err)
	pick, err := j.Pick()
	require.NoError(t, err)
	w.d, err = w.in.Plan.Detail(pick.Bass, pick.Treble, pick.Gauges)
	require.NoError(t, err)
	w.l, err = fan.New(w.d.Spec)
	require.NoError(t, err)
	return w
}

func (w work) bench(t *testing.T, o report.BenchOptions) *report.Bench {
	t.Helper()
	if o.Fineness.PerUnit == 0 {
		o.Fineness = w.in.Run.Calipers(unit.Millimetres)
	}
	b, err := report.NewBench(w.in, w.l, w.d, o)
	require.NoError(t, err)
	return b
}

// list is a setting-out list as a reader of its JSON finds it.
type list struct {
	Steps []struct {
		Title  string
		Do     []string
		Tables struct {
			Checks, Edges []measure
			Base          []measure  `json:"base-lines"`
			Nut           []measure  `json:"nut-line"`
			Bass          []fretMark `json:"bass-marks"`
			Treble        []fretMark `json:"treble-marks"`
			Slots         []struct {
				Fret      int
				Slant     float64 `json:"slant_deg"`
				Bass      float64 `json:"set_bass_edge_mm"`
				FenceBass float64 `json:"set_fence_bass_edge_mm"`
				Saw       float64 `json:"saw_to_mm"`
				Wire      float64 `json:"wire_length_mm"`
			}
			Spacing []struct {
				String int
				Square float64 `json:"to_the_string_before_square_mm"`
			} `json:"nut"`
			Compensation []struct {
				Begin float64 `json:"begin_at_mm"`
				Back  float64 `json:"screw_back_mm"`
			}
		}
	}
	Saddles struct {
		Front  float64 `json:"saddle_travel_front_mm"`
		Needed float64 `json:"saddle_travel_needed_mm"`
		Rear   float64 `json:"saddle_travel_rear_mm"`
	}
}

type measure struct {
	Measure string
	Exact   float64 `json:"exact_mm"`
}

type fretMark struct {
	Fret    int
	Set     float64 `json:"set_from_nut_mm"`
	Step    float64 `json:"set_step_mm"`
	FromNut float64 `json:"from_nut_mm"`
	OneCent float64 `json:"one_cent_mm"`
}

func read(t *testing.T, result any) list {
	t.Helper()
	text, err := json.Marshal(result)
	require.NoError(t, err)
	var out list
	require.NoError(t, json.Unmarshal(text, &out))
	return out
}

// exact gives a measure by the beginning of its name.
func (l list) exact(t *testing.T, name string) float64 {
	t.Helper()
	for _, s := range l.Steps {
		for _, m := range slices.Concat(s.Tables.Base, s.Tables.Nut, s.Tables.Checks, s.Tables.Edges) {
			if strings.HasPrefix(m.Measure, name) {
				return m.Exact
			}
		}
	}
	require.Fail(t, "no such measure", name)
	return 0
}

// Every step of work has its number, and further lines only where there are some.
func TestBenchIsInWorkingOrder(t *testing.T) {
	w := demo(t)
	titles := func() (out []string) {
		for _, s := range read(t, w.bench(t, report.BenchOptions{})).Steps {
			out = append(out, s.Title)
		}
		return out
	}
	want := []string{
		"1. Blank and shopping list", "2. Centreline, base lines and string lines", "3. Nut line and both nut marks", "4. Marks on both lines", "5. Checks before the first cut",
		"6. Board edges and ends", "7. Slots and fret wire", "8. Dots", "9. Nut", "10. Bridge and saddles",
	}
	w.in.Run.Build.Lines = nil
	assert.Equal(t, want, titles())
	w.in.Run.Build.Lines = []fan.Line{{Name: "neck pickup", FromSaddle: unit.MM(150)}}
	assert.Equal(t, append(want, "11. Strings at further lines"), titles())
}

// pencil is a builder who does only what the list says, on bare paper: base
// lines, string lines through two points, distances along them, squares. What
// is drawn so must be the layout. Points are in millimetres.
type pencil struct{ bass0, bass1, treble0, treble1 point }

type point struct{ x, y float64 }

func (p point) to(q point) float64 { return math.Hypot(q.x-p.x, q.y-p.y) }

func (p pencil) along(line mark.Line, mm float64) point {
	a, b := p.bass0, p.bass1
	if line == mark.Treble {
		a, b = p.treble0, p.treble1
	}
	return point{a.x + mm*(b.x-a.x)/a.to(b), a.y + mm*(b.y-a.y)/a.to(b)}
}

// square gives how far along the treble line a square through a point of the
// bass line meets it.
func (p pencil) square(at point) float64 {
	return (at.x - p.treble0.x) * p.treble0.to(p.treble1) / (p.treble1.x - p.treble0.x)
}

func TestDrawingTheListGivesTheLayout(t *testing.T) {
	w := demo(t)
	l, list := w.l, read(t, w.bench(t, report.BenchOptions{}))
	apart, cross := list.exact(t, "a:"), list.exact(t, "b:")
	out0, out1 := list.exact(t, "c:"), list.exact(t, "d:")
	p := pencil{point{-cross, out0}, point{apart - cross, out1}, point{-cross, -out0}, point{apart - cross, -out1}}
	bassNut := list.exact(t, "e:")
	trebleNut := p.square(p.along(mark.Bass, bassNut+list.exact(t, "f:"))) - list.exact(t, "g:")
	assert.InDelta(t, p.square(p.along(mark.Bass, bassNut))+list.exact(t, "h:"), trebleNut, 1e-6, "the second way to the treble nut")
	near := func(want fan.Point, got point, what string) {
		assert.InDelta(t, 0, got.to(point{want.X.MM(), want.Y.MM()}), 2e-6, what)
	}
	near(l.Strings[5].Nut, p.along(mark.Bass, bassNut), "bass nut")
	near(l.Strings[0].Nut, p.along(mark.Treble, trebleNut), "treble nut")
	bassSum := 0.0
	for i, m := range list.Steps[3].Tables.Bass {
		near(l.Frets[i+1].Line.Bass, p.along(mark.Bass, bassNut+m.FromNut), "bass mark")
		near(l.Frets[i+1].Line.Treble, p.along(mark.Treble, trebleNut+list.Steps[3].Tables.Treble[i].FromNut), "treble mark")
		assert.InDelta(t, (700-m.FromNut)*math.Ln2/1200, m.OneCent, 1e-6)
		bassSum += m.Step
		assert.InDelta(t, m.Set, bassSum, 1e-9, "steps sum to marks")
		assert.InDelta(t, m.FromNut, m.Set, 0.005+1e-9)
	}
	assert.InDelta(t, 350, list.exact(t, "bass line, nut to fret 12"), 1e-6)
	assert.InDelta(t, l.DiagonalBassNut.MM(), list.exact(t, "diagonal from bass nut to treble mark 24"), 1e-6)
	assert.InDelta(t, l.DiagonalTrebleNut.MM(), list.exact(t, "diagonal from treble nut to bass mark 24"), 1e-6)
	corner := l.Board().Corners[1]
	edge := list.exact(t, "along the bass edge from the last slot")
	assert.InDelta(t, 0, point{corner.X.MM(), corner.Y.MM()}.to(point{l.Frets[24].Slot.Bass.X.MM(), l.Frets[24].Slot.Bass.Y.MM()})-edge, 1e-6)
	margin, _ := l.Spec.Margins()
	assert.InDelta(t, out0+margin.MM(), list.exact(t, "either edge, out from the centreline on the nut end's"), 1e-6)
}

// Along the treble line from the square through the bass nut: the difference of
// the lengths times the neutral fret's fraction.
func TestTrebleNutByEveryNeutral(t *testing.T) {
	for neutral, c := range map[string]struct {
		measures int
		k        float64
	}{"7": {4, fan.K(7)}, "7.5": {4, fan.K(7.5)}, "bridge": {2, 1}} {
		list := read(t, demo(t, "--neutral", neutral).bench(t, report.BenchOptions{}))
		require.Len(t, list.Steps[2].Tables.Nut, c.measures, neutral)
		assert.InDelta(t, 50*c.k, list.exact(t, "h:"), 1e-6)
	}
	assert.Len(t, read(t, demo(t, "--neutral", "0").bench(t, report.BenchOptions{})).Steps[2].Tables.Nut, 1, "square across from the bass nut mark")
}

func TestSlotsAndFences(t *testing.T) {
	w := demo(t)
	wire := w.in.Run.Build.FretWire
	kerf := wire.Kerf.MM()
	depths, err := w.l.Depths(fan.Sawing{FretWire: wire})
	require.NoError(t, err)
	for i, s := range read(t, w.bench(t, report.BenchOptions{})).Steps[6].Tables.Slots {
		assert.Equal(t, depths[i].Fret, s.Fret)
		assert.InDelta(t, depths[i].Saw.MM(), s.Saw, 1e-6)
		assert.InDelta(t, (w.l.Frets[s.Fret].Slot.Length + 2*wire.Overhang).MM(), s.Wire, 1e-6)
		assert.Equal(t, s.Fret == 7, s.Slant == 0)
		assert.Less(t, s.FenceBass, s.Bass)
		slant := (w.l.Frets[s.Fret].Line.Slant).Rad()
		assert.InDelta(t, kerf/2/math.Cos(slant), s.Bass-s.FenceBass, 0.03, "half a kerf, square to the slot")
	}
}

func TestBlankWorkedWith(t *testing.T) {
	w := demo(t)
	_, err := report.NewBench(w.in, w.l, w.d, report.BenchOptions{Fineness: w.in.Run.Calipers(unit.Millimetres), Blank: "smokd oak"})
	assert.ErrorContains(t, err, `no such blank on offer ("smokd oak"); did you mean "smoked oak"?`)
	_, err = report.NewBench(w.in, w.l, w.d, report.BenchOptions{Fineness: w.in.Run.Calipers(unit.Millimetres), Blank: "short pear"})
	assert.ErrorContains(t, err, "short pear is too small for this board")
	b := w.bench(t, report.BenchOptions{})
	at := slices.IndexFunc(w.in.Run.Build.Blanks, func(one fan.Blank) bool { return one.Name == b.Blank.Name })
	blank, list := w.in.Run.Build.Blanks[at], read(t, b)
	apart, cross := list.exact(t, "a:"), list.exact(t, "b:")
	assert.InDelta(t, blank.Length.MM(), 2*b.Blank.BaseLine.MM()+apart, 1e-6, "what is spare is shared")
	assert.InDelta(t, b.Blank.NutLine.MM(), b.Blank.BaseLine.MM()+cross, 1e-6)
	need := w.l.LeastBlank()
	assert.InDelta(t, b.Blank.Centreline.MM()-need.MaxY.MM(), blank.Width.MM()-b.Blank.Centreline.MM()+need.MinY.MM(), 1e-6)
}

// Strings spaced by their gaps at the nut and by their centres at the saddles are
// out of tune inside, which is said of the worst; the nut's spacing is that of the
// strings.
func TestInnerStringsOutOfTune(t *testing.T) {
	w := demo(t)
	spec := w.d.Spec
	spec.NutSpacing.Rule, spec.SaddleSpacing.Rule = fan.EqualGaps, fan.EqualCentres
	var err error
	w.l, err = fan.New(spec)
	require.NoError(t, err)
	nut := read(t, w.bench(t, report.BenchOptions{})).Steps[8]
	worst, at := 0.0, [2]int{}
	for _, f := range w.l.Frets[1:] {
		for i, c := range f.CentsSharp {
			if math.Abs(c.Value()) > math.Abs(worst)+1e-9 {
				worst, at = c.Value(), [2]int{i + 1, f.Number}
			}
		}
	}
	assert.Contains(t, nut.Do[1], fmt.Sprintf("the worst is string %d at fret %d, %+.2f cents", at[0], at[1], worst))
	for i, row := range nut.Tables.Spacing {
		assert.Equal(t, 6-i, row.String)
		if i > 0 {
			assert.InDelta(t, (w.l.Strings[row.String].Nut.Y - w.l.Strings[row.String-1].Nut.Y).MM(), row.Square, 1e-6)
		}
	}
}

// The travel that saddles need is held against what the build states.
func TestSaddleTravel(t *testing.T) {
	w := demo(t)
	need := w.bench(t, report.BenchOptions{}).Saddles.Needed
	for words, yours := range map[string]unit.Length{
		"Measure that yours have it": 0, "which is NOT enough": need - unit.MM(0.1), "which is enough": need + unit.MM(0.1),
	} {
		w.in.Run.Build.Limits.SaddleTravel = yours
		var text strings.Builder
		require.NoError(t, w.bench(t, report.BenchOptions{}).Document().Write(&text, document.Options{Width: 1000}))
		assert.Contains(t, text.String(), words)
	}
}

// What a saddle is screwed back is counted from the front of its travel.
func TestSaddlesBeginWithinTheirTravel(t *testing.T) {
	got := read(t, demo(t).bench(t, report.BenchOptions{}))
	assert.InDelta(t, got.Saddles.Rear-got.Saddles.Front, got.Saddles.Needed, 1e-6)
	for _, row := range got.Steps[9].Tables.Compensation {
		assert.InDelta(t, row.Begin, got.Saddles.Front+row.Back, 1e-6)
	}
}

// The wound part of a string to buy reaches from beyond the nut to what holds the
// string behind the saddle, on the longest of the strings that have the gauge.
func TestWindingToBuy(t *testing.T) {
	w := demoWith(t, func(b *build.Build) {
		b.Tails.Saddle = build.PerString[unit.Length]{unit.MM(21), unit.MM(22), unit.MM(60), unit.MM(24), unit.MM(25), unit.MM(70)}
	}, "--gauges", "w56 w56 w34 w34 p17 p13")
	var got struct {
		Steps []struct {
			Tables struct {
				Shopping []struct {
					Gauge   string
					Strings []int   `json:"for_strings"`
					Winding float64 `json:"least_winding_mm"`
				}
			}
		}
	}
	text, err := json.Marshal(w.bench(t, report.BenchOptions{}))
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(text, &got))
	for i, want := range []struct {
		gauge   string
		strings []int
		tail    float64
		longest int // of the strings, from 1
	}{{"w56", []int{6, 5}, 70, 6}, {"w34", []int{4, 3}, 60, 3}, {"p17", []int{2}, 0, 0}} {
		row := got.Steps[0].Tables.Shopping[i]
		assert.Equal(t, want.gauge, row.Gauge)
		assert.Equal(t, want.strings, row.Strings)
		if want.longest > 0 {
			assert.InDelta(t, w.l.Strings[want.longest-1].Length.MM()+want.tail+10, row.Winding, 1e-6)
		} else {
			assert.Zero(t, row.Winding)
		}
	}
}

// The unit "in" does not meet the word: no length is "0.2 in in the edge".
func TestInchesReadAsEnglish(t *testing.T) {
	var text strings.Builder
	w := demo(t)
	w.in.Units.Length = unit.DecimalInches
	require.NoError(t, w.bench(t, report.BenchOptions{Fineness: w.in.Run.Calipers(unit.DecimalInches)}).Document().Write(&text, document.Options{Width: 1000}))
	assert.Contains(t, text.String(), "Bore 0.236 in for the dots on the face and 0.079 in for those in the edge.") // 6 and 2 mm
	assert.NotRegexp(t, `\bin in\b`, text.String())
}

// What rounding can do to a note: the mark that it moves most, moved by half of what
// the tool shows.
func TestRoundingInCents(t *testing.T) {
	w := demo(t)
	o := build.Fineness{Resolution: mark.Resolution{Unit: unit.Millimetres, PerUnit: 10}}
	worst := 0.0
	for _, f := range w.l.Frets {
		for _, sounding := range []float64{700 - f.Bass.FromNut.MM(), 650 - f.Treble.FromNut.MM()} {
			worst = max(worst, 1200*math.Log2(sounding/(sounding-0.05)))
		}
	}
	assert.InEpsilon(t, worst, w.bench(t, report.BenchOptions{Fineness: o}).Rounding.Value(), 1e-3)
}

// With the nut at the left the face of a right-handed board has its bass side below,
// as high strings stand above in tablature (common practice, no source).
func TestFigureLiesAsTheBoardDoes(t *testing.T) {
	w := demo(t)
	for _, left := range []bool{false, true} {
		var page strings.Builder
		b := w.bench(t, report.BenchOptions{LeftHanded: left})
		require.NoError(t, b.Document().Write(&page, document.Options{Format: document.HTML}))
		height := func(words string) float64 {
			found := regexp.MustCompile(`<text[^>]* y="([\d.]+)"[^>]*>` + words + `<`).FindStringSubmatch(page.String())
			require.NotNil(t, found, words)
			y, err := strconv.ParseFloat(found[1], 64)
			require.NoError(t, err)
			return y
		}
		assert.Equal(t, left, height("bass line") < height("centreline"))
		assert.Equal(t, left, height("treble line") > height("centreline"))
	}
}
