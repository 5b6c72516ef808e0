package mark_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

func settingOut(t testing.TB, l *fan.Layout, b mark.Bench) mark.List {
	t.Helper()
	list, err := mark.SettingOut(l, b)
	require.NoError(t, err)
	return list
}

func titles(list mark.List) []string {
	var out []string
	for _, task := range list.Tasks {
		out = append(out, task.Title)
	}
	return out
}

func TestSettingOutOrder(t *testing.T) {
	list := settingOut(t, layout(t), mark.Bench{Resolution: resolution(t, "0.05 mm"), KerfMM: 0.6})
	assert.Equal(t, []string{
		"Centreline and base lines", "String lines", "Bass nut mark and nut line", "Marks on the bass line",
		"Square line at fret 7 and treble nut mark", "Marks on the treble line", "Checks before the first cut",
		"Board edges and ends", "Slots", "Face dots", "Side dots",
	}, titles(list))
	assert.Contains(t, list.Note, "sum to the positions exactly")
	for _, task := range list.Tasks {
		assert.NotEmpty(t, task.Do)
		assert.True(t, len(task.Figures)+len(task.Marks)+len(task.Slots)+len(task.Dots) > 0, task.Title)
	}
}

func TestTrebleNutTask(t *testing.T) {
	for _, c := range []struct {
		name, title string
		change      func(*fan.Spec)
		figures     int
	}{
		{"a fret", "Square line at fret 7 and treble nut mark", func(s *fan.Spec) {}, 3},
		{"between two frets", "Square line at fret 7.5 and treble nut mark", func(s *fan.Spec) { s.Neutral.Fret = 7.5 }, 3},
		{"quarter", "Square line at fret 8.25 and treble nut mark", func(s *fan.Spec) { s.Neutral.Fret = 8.25 }, 3},
		{"the nut", "Treble nut mark", func(s *fan.Spec) { s.Neutral.Fret = 0 }, 1},
		{"the bridge", "Treble nut mark", func(s *fan.Spec) { s.Neutral = fan.Neutral{Bridge: true} }, 1},
		{"parallel", "Treble nut mark", func(s *fan.Spec) { s.Bass = unit.MM(650) }, 1},
		{"reverse", "Square line at fret 7 and treble nut mark", func(s *fan.Spec) { s.Bass, s.AllowReverse = unit.MM(620), true }, 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			l := layout(t, c.change)
			list := settingOut(t, l, mark.Bench{Resolution: resolution(t, "0.05 mm")})
			task := list.Tasks[4]
			assert.Equal(t, c.title, task.Title)
			require.Len(t, task.Figures, c.figures)
			// Along the treble line from the square through the bass nut: the
			// difference of the lengths times the neutral fret's fraction.
			offset := math.Abs(l.Spec.Bass.MM()-l.Spec.Treble.MM()) * l.Spec.Neutral.K()
			assert.InDelta(t, offset, task.Figures[c.figures-1].Length.ExactMM, 1e-9)
			if c.figures == 3 {
				assert.InDelta(t, l.Spec.Bass.MM()*l.Spec.Neutral.K(), task.Figures[0].Length.ExactMM, 1e-9)
				assert.InDelta(t, l.Spec.Treble.MM()*l.Spec.Neutral.K(), task.Figures[1].Length.ExactMM, 1e-9)
			}
		})
	}
}

// At a whole neutral fret the treble nut is set back by exactly the rounded
// position of that treble mark, so that square line and mark agree in print.
func TestNeutralMarkAgreesWithTheSquareLine(t *testing.T) {
	list := settingOut(t, layout(t), mark.Bench{Resolution: resolution(t, "0.5 mm")})
	assert.Equal(t, list.Tasks[3].Marks[6].FromNut.Parts, list.Tasks[4].Figures[0].Length.Parts)
	assert.Equal(t, list.Tasks[5].Marks[6].FromNut.Parts, list.Tasks[4].Figures[1].Length.Parts)
}

// pencil is a builder who does only what the list says, on bare paper: base
// lines, string lines through two points, distances along them, squares. What
// is drawn so must be the layout.
type pencil struct{ bass0, bass1, treble0, treble1 fan.Point }

func (p pencil) along(line mark.Line, mm float64) fan.Point {
	a, b := p.bass0, p.bass1
	if line == mark.Treble {
		a, b = p.treble0, p.treble1
	}
	d := math.Hypot(b.X.MM()-a.X.MM(), b.Y.MM()-a.Y.MM())
	return fan.Point{X: unit.MM(a.X.MM() + mm*(b.X.MM()-a.X.MM())/d), Y: unit.MM(a.Y.MM() + mm*(b.Y.MM()-a.Y.MM())/d)}
}

// square gives how far along the treble line a square through a point of the
// bass line meets it.
func (p pencil) square(at fan.Point) float64 {
	run, rise := p.treble1.X.MM()-p.treble0.X.MM(), p.treble1.Y.MM()-p.treble0.Y.MM()
	return (at.X.MM() - p.treble0.X.MM()) * math.Hypot(run, rise) / run
}

func TestDrawingTheListGivesTheLayout(t *testing.T) {
	l := layout(t)
	list := settingOut(t, l, mark.Bench{Resolution: resolution(t, "0.01 mm"), KerfMM: 0.6})
	figure := func(task, n int) float64 { return list.Tasks[task].Figures[n].Length.ExactMM }
	apart, cross := figure(0, 0), figure(0, 1)
	p := pencil{
		fan.Point{X: unit.MM(-cross), Y: unit.MM(figure(1, 0))}, fan.Point{X: unit.MM(apart - cross), Y: unit.MM(figure(1, 1))},
		fan.Point{X: unit.MM(-cross), Y: unit.MM(-figure(1, 0))}, fan.Point{X: unit.MM(apart - cross), Y: unit.MM(-figure(1, 1))},
	}
	bassNut := figure(2, 0)
	bassSquare := p.along(mark.Bass, bassNut+figure(4, 0))
	trebleNut := p.square(bassSquare) - figure(4, 1)
	assert.InDelta(t, p.square(p.along(mark.Bass, bassNut))+figure(4, 2), trebleNut, 1e-9, "the second way to the treble nut")
	near := func(want, got fan.Point, what string) {
		assert.InDelta(t, 0, math.Hypot(want.X.MM()-got.X.MM(), want.Y.MM()-got.Y.MM()), 1e-9, what)
	}
	near(l.Strings[5].Nut, p.along(mark.Bass, bassNut), "bass nut")
	near(l.Strings[0].Nut, p.along(mark.Treble, trebleNut), "treble nut")
	for i, m := range list.Tasks[3].Marks {
		near(l.Frets[i+1].Line.Bass, p.along(mark.Bass, bassNut+m.FromNut.ExactMM), "bass mark")
		tr := list.Tasks[5].Marks[i]
		near(l.Frets[i+1].Line.Treble, p.along(mark.Treble, trebleNut+tr.FromNut.ExactMM), "treble mark")
		assert.InDelta(t, (650-tr.FromNut.ExactMM)*math.Ln2/1200, tr.MMPerCent, 1e-12)
	}
	diagonal := func(a, b fan.Point) float64 { return math.Hypot(b.X.MM()-a.X.MM(), b.Y.MM()-a.Y.MM()) }
	checks := list.Tasks[6].Figures
	require.Len(t, checks, 6)
	assert.InDelta(t, 350, checks[0].Length.ExactMM, 1e-9)
	assert.InDelta(t, 175, checks[1].Length.ExactMM, 1e-9)
	assert.InDelta(t, diagonal(l.Strings[5].Nut, l.Frets[24].Line.Treble), checks[4].Length.ExactMM, 1e-9)
	assert.InDelta(t, diagonal(l.Strings[0].Nut, l.Frets[24].Line.Bass), checks[5].Length.ExactMM, 1e-9)
}

// Slot ends along the edges, the fence half a kerf nearer the nut, a square
// box for the neutral fret only.
func TestSlotRows(t *testing.T) {
	l := layout(t)
	list := settingOut(t, l, mark.Bench{Resolution: resolution(t, "0.01 mm"), KerfMM: 0.6})
	slots := list.Tasks[8].Slots
	require.Len(t, slots, 24)
	bass, treble := l.Frets[0].Slot.Bass, l.Frets[0].Slot.Treble
	for i, s := range slots {
		f := l.Frets[i+1]
		assert.InDelta(t, math.Hypot(f.Slot.Bass.X.MM()-bass.X.MM(), f.Slot.Bass.Y.MM()-bass.Y.MM()), s.Bass.ExactMM, 1e-9)
		assert.InDelta(t, math.Hypot(f.Slot.Treble.X.MM()-treble.X.MM(), f.Slot.Treble.Y.MM()-treble.Y.MM()), s.Treble.ExactMM, 1e-9)
		assert.InDelta(t, math.Hypot(f.Slot.Bass.X.MM()-f.Slot.Treble.X.MM(), f.Slot.Bass.Y.MM()-f.Slot.Treble.Y.MM()), s.Length.ExactMM, 1e-9)
		assert.Equal(t, f.Number == 7, s.SquareBoxServes)
		// Going back along the edge by that much leads half a kerf off the slot.
		edge := fan.Point{X: unit.MM((f.Slot.Bass.X.MM() - bass.X.MM()) / s.Bass.ExactMM), Y: unit.MM((f.Slot.Bass.Y.MM() - bass.Y.MM()) / s.Bass.ExactMM)}
		slot := fan.Point{X: unit.MM((f.Slot.Treble.X.MM() - f.Slot.Bass.X.MM()) / s.Length.ExactMM), Y: unit.MM((f.Slot.Treble.Y.MM() - f.Slot.Bass.Y.MM()) / s.Length.ExactMM)}
		off := (s.Bass.ExactMM - s.FenceBass.ExactMM) * math.Abs(edge.X.MM()*slot.Y.MM()-edge.Y.MM()*slot.X.MM())
		assert.InDelta(t, 0.3, off, 1e-9)
	}
	assert.Equal(t, 0.3, list.Tasks[8].Figures[0].Length.ExactMM)
}

func TestDots(t *testing.T) {
	list := settingOut(t, layout(t), mark.Bench{Resolution: resolution(t, "0.1 mm")})
	face, side := list.Tasks[9].Dots, list.Tasks[10].Dots
	require.Len(t, face, 12)
	require.Len(t, side, 12)
	assert.Equal(t, face[4].Out.Parts, -face[5].Out.Parts, "the pair at 12")
	// On the bass edge the third dot row lies between marks 2 and 3 of a board
	// whose edge runs as the bass line does.
	assert.InDelta(t, 700*(fan.K(2)+fan.K(3))/2, side[0].Along.MM, 1)
}

func TestDotsOfOnesOwn(t *testing.T) {
	l := layout(t)
	list := settingOut(t, l, mark.Bench{Resolution: resolution(t, "0.1 mm"), Dots: &fan.Dots{Side: []int{5, 12}, Double: []int{12}}})
	require.Equal(t, "Side dots", list.Tasks[9].Title, "no dots on the face")
	require.Len(t, list.Tasks, 10)
	var frets []int
	for _, d := range list.Tasks[9].Dots {
		frets = append(frets, d.Fret)
	}
	assert.Equal(t, []int{5, 12, 12}, frets)
}

// Drawn from the base lines and the slots, the outline is the layout's board.
func TestBoardEdges(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*fan.Spec)
		last   int // figures after those of the edges
	}{
		{"as usual", func(*fan.Spec) {}, 4},
		{"unlike margins, a seat, a square heel", func(s *fan.Spec) {
			s.BassMargin, s.TrebleMargin, s.NutShelf, s.BodyEnd = new(unit.MM(4)), new(unit.MM(3)), unit.MM(5), fan.SquareEnd
		}, 5},
	} {
		t.Run(c.name, func(t *testing.T) {
			l := layout(t, c.change)
			task := settingOut(t, l, mark.Bench{Resolution: resolution(t, "0.01 mm")}).Tasks[7]
			blank, corners := l.LeastBlank(), l.Board().Corners
			figures := task.Figures[:len(task.Figures)-c.last]
			figure := func(i int) float64 { return figures[i%len(figures)].Length.ExactMM }
			on := func(corner fan.Point, nut, bodyEnd float64) {
				u := (corner.X.MM() - blank.MinX.MM()) / (blank.MaxX.MM() - blank.MinX.MM())
				assert.InDelta(t, math.Abs(corner.Y.MM()), nut+u*(bodyEnd-nut), 1e-9)
			}
			for _, p := range corners[:2] {
				on(p, figure(0), figure(1))
			}
			for _, p := range corners[2:] {
				on(p, figure(2), figure(3))
			}
			rest := task.Figures[len(figures):]
			if c.last == 5 {
				assert.Equal(t, 5.0, rest[0].Length.ExactMM)
				rest = rest[1:]
			}
			// The edges run at the outer strings' angle, which has this cosine.
			along := (l.Strings[5].Saddle.X.MM() - l.Strings[5].Nut.X.MM()) / 700
			slot := l.Frets[24].Slot
			assert.InDelta(t, corners[1].X.MM(), slot.Bass.X.MM()+along*rest[0].Length.ExactMM, 1e-9)
			assert.InDelta(t, corners[2].X.MM(), slot.Treble.X.MM()+along*rest[1].Length.ExactMM, 1e-9)
			assert.InDelta(t, (l.Spec.NutSpread + 7*unit.Millimetre).MM(), rest[2].Length.ExactMM, 1e-9)
			assert.Greater(t, rest[3].Length.ExactMM, rest[2].Length.ExactMM)
		})
	}
}

// Half of what lies twelve frets before, on any board beyond fret 12.
func TestOctaveChecks(t *testing.T) {
	for frets, figures := range map[int]int{11: 2, 12: 4, 13: 6, 22: 6} {
		l := layout(t, func(s *fan.Spec) { s.Frets = frets })
		list := settingOut(t, l, mark.Bench{Resolution: resolution(t, "0.01 mm")})
		checks := list.Tasks[6].Figures
		require.Len(t, checks, figures)
		if frets > 12 {
			before := list.Tasks[3].Marks[frets-13].FromNut.ExactMM
			assert.InDelta(t, before/2, checks[1].Length.ExactMM, 1e-9)
		}
	}
}

func TestShortBoardHasNoTwelfthFret(t *testing.T) {
	l := layout(t, func(s *fan.Spec) { s.Frets, s.Neutral.Fret = 9, 5 })
	list := settingOut(t, l, mark.Bench{Resolution: resolution(t, "0.1 mm")})
	assert.Len(t, list.Tasks[6].Figures, 2)
	assert.False(t, strings.Contains(list.Tasks[6].Do, "12"))
}

func TestSettingOutFaults(t *testing.T) {
	_, err := mark.SettingOut(layout(t), mark.Bench{KerfMM: -1})
	require.Error(t, err)
	assert.Contains(t, err.Error(), `resolution: missing; give the least difference the calipers show, such as "0.05 mm"`)
	assert.Contains(t, err.Error(), "kerf")
}
