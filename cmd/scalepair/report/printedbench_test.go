package report_test

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/report"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
	"scalepair/gauges"
)

// apart is how far two points are from one another.
func apart(a, b fan.Point) float64 { return math.Hypot(a.X.MM()-b.X.MM(), a.Y.MM()-b.Y.MM()) }

// edge is one edge of the board: where the nut line meets it, and its direction
// towards the bridge.
type edge struct{ at, way fan.Point }

func edgeThrough(nut, last fan.Point) edge {
	d := apart(nut, last)
	return edge{nut, fan.Point{X: unit.MM((last.X.MM() - nut.X.MM()) / d), Y: unit.MM((last.Y.MM() - nut.Y.MM()) / d)}}
}

// fence is how much nearer the nut, along the edge, a line runs that lies half
// a kerf off a slot, square to it.
func (e edge) fence(slot fan.Slot, half float64) float64 {
	across := fan.Point{X: unit.MM((slot.Bass.X.MM() - slot.Treble.X.MM()) / slot.Length.MM()), Y: unit.MM((slot.Bass.Y.MM() - slot.Treble.Y.MM()) / slot.Length.MM())}
	return half / math.Abs(e.way.X.MM()*across.Y.MM()-e.way.Y.MM()*across.X.MM())
}

func TestSettingOutPrintsWhatItsHeadsName(t *testing.T) {
	for name, system := range systems {
		t.Run(name, func(t *testing.T) {
			w := demoBench(t, system.Units)
			p := printed{system, report.SetOut(&report.Input{Job: w.j, Plan: w.p, Units: system.Units}, w.s)}
			frets := w.l.Frets[1:]
			fret := func(value func(f fan.Fret) float64) func(i int) float64 {
				return func(i int) float64 { return value(frets[i]) }
			}
			p.marks(t, "bass-marks", frets, func(f fan.Fret) fan.Mark { return f.Bass })
			p.marks(t, "treble-marks", frets, func(f fan.Fret) fan.Mark { return f.Treble })

			nut, last := w.l.Frets[0].Slot, frets[len(frets)-1].Slot
			bass, treble := edgeThrough(nut.Bass, last.Bass), edgeThrough(nut.Treble, last.Treble)
			half := w.s.Sawing.Kerf.MM() / 2
			require.Positive(t, half)
			along := func(f fan.Fret) float64 { return apart(f.Slot.Bass, nut.Bass) }
			alongTreble := func(f fan.Fret) float64 { return apart(f.Slot.Treble, nut.Treble) }
			p.holds(t, "slots", len(frets), p.plain("fret", number),
				p.degrees("slant °", fret(func(f fan.Fret) float64 { return math.Atan(f.Line.TanSlant) })),
				p.mm("bass edge", fret(along)), p.mm("treble edge", fret(alongTreble)),
				p.mm("slot length", fret(func(f fan.Fret) float64 { return apart(f.Slot.Bass, f.Slot.Treble) })),
				p.mm("fence, bass edge", fret(func(f fan.Fret) float64 { return along(f) - bass.fence(f.Slot, half) })),
				p.mm("fence, treble edge", fret(func(f fan.Fret) float64 { return alongTreble(f) - treble.fence(f.Slot, half) })))
			p.depths(t, w, frets)
			over := w.j.Build.FretWire.Overhang.MM()
			p.holds(t, "wire", len(frets), p.plain("fret", number),
				p.mm("slot", fret(func(f fan.Fret) float64 { return f.Slot.Length.MM() })),
				p.mm("cut to", fret(func(f fan.Fret) float64 { return f.Slot.Length.MM() + 2*over })))
			p.ends(t, w)
			p.saddles(t, w)
			p.pickup(t, w)
		})
	}
}

// marks holds the marks of one line; a printed step is the difference of two
// printed places.
func (p printed) marks(t *testing.T, name string, frets []fan.Fret, of func(f fan.Fret) fan.Mark) {
	t.Helper()
	table := p.table(t, name)
	shown := func(i int) float64 {
		if i < 0 {
			return 0
		}
		x, err := strconv.ParseFloat(table.Rows[i][1], 64)
		require.NoError(t, err)
		return x / p.perMM
	}
	p.holds(t, name, len(frets), p.plain("fret", number),
		p.mm("from nut", func(i int) float64 { return of(frets[i]).FromNut.MM() }),
		p.mm("step", func(i int) float64 { return shown(i) - shown(i-1) }),
		p.mm("width of a cent", func(i int) float64 { return of(frets[i]).OneCent.MM() }))
}

// depths: the demo's crown runs from 300 to 400 mm, its tang is 1.5 mm deep,
// with 0.4 mm of air.
func (p printed) depths(t *testing.T, w benchWork, frets []fan.Fret) {
	t.Helper()
	end := frets[len(frets)-1].Line.Cross.MM()
	radius := func(x float64) float64 { return 300 + 100*x/end }
	depth := func(at fan.Point) float64 {
		r := radius(at.X.MM())
		return 1.5 + 0.4 + r - math.Sqrt(r*r-at.Y.MM()*at.Y.MM())
	}
	saw := func(i int) float64 { return math.Max(depth(frets[i].Slot.Bass), depth(frets[i].Slot.Treble)) }
	thick := w.s.Blanks[w.s.Blank].Blank.Thickness.MM()
	p.holds(t, "depths", len(frets), p.plain("fret", number),
		p.mm("radius", func(i int) float64 { return radius(frets[i].Line.Cross.MM()) }),
		p.mm("needed, middle", func(int) float64 { return 1.9 }),
		p.mm("bass end", func(i int) float64 { return depth(frets[i].Slot.Bass) }),
		p.mm("treble end", func(i int) float64 { return depth(frets[i].Slot.Treble) }),
		p.mm("saw to", saw), p.mm("left under", func(i int) float64 { return thick - saw(i) }))
}

// ends holds where the strings lie at nut and saddles, from their end points.
func (p printed) ends(t *testing.T, w benchWork) {
	t.Helper()
	strings := w.l.Strings
	p.holds(t, "spacing", 5,
		p.mm("nut, along", func(i int) float64 { return apart(strings[i+1].Nut, strings[i].Nut) }),
		p.mm("nut, square", func(i int) float64 { return strings[i+1].Nut.Y.MM() - strings[i].Nut.Y.MM() }),
		p.mm("saddles, along", func(i int) float64 { return apart(strings[i+1].Saddle, strings[i].Saddle) }),
		p.mm("saddles, square", func(i int) float64 { return strings[i+1].Saddle.Y.MM() - strings[i].Saddle.Y.MM() }))
	thick := func(i int) float64 { return w.gauge(i).Outer.MM() }
	p.holds(t, "nut", 6, p.plain("string", number),
		p.mm("from the nut's bass end", func(i int) float64 { return apart(strings[i].Nut, w.l.Frets[0].Slot.Bass) }),
		p.mm("to the next string", func(i int) float64 {
			if i == 5 {
				return absent
			}
			return apart(strings[i+1].Nut, strings[i].Nut)
		}),
		p.mm("string thick", thick),
		p.mm("slot wide", func(i int) float64 { return thick(i) + w.j.Build.Neck.NutSlotClearance.MM() }))
}

func (w benchWork) gauge(i int) gauges.Gauge { return w.p.Stock()[w.d.Gauges[i]] }

// saddles holds the compensations, and the places that they make on the body: along
// the string from its saddle end, and 1 mm before the line with the saddle
// forward.
func (p printed) saddles(t *testing.T, w benchWork) {
	t.Helper()
	least := func(i int) float64 { return w.d.Strings[i].Compensation[0].MM() }
	most := func(i int) float64 { return w.d.Strings[i].Compensation[1].MM() }
	begin := func(i int) float64 { return (least(i) + most(i)) / 2 }
	p.holds(t, "compensation", 6, p.plain("string", number), p.mm("least", least), p.mm("most", most), p.mm("begin at", begin),
		p.mm("nut to saddle", func(i int) float64 { return w.l.Strings[i].Length.MM() + begin(i) }),
		p.mm("screw back", func(i int) float64 { return begin(i) + 1 }))
	at := func(i int, back float64) fan.Point {
		s := w.l.Strings[i]
		return fan.Point{X: unit.MM(s.Saddle.X.MM() + back*(s.Saddle.X.MM()-s.Nut.X.MM())/s.Length.MM()), Y: unit.MM(s.Saddle.Y.MM() + back*(s.Saddle.Y.MM()-s.Nut.Y.MM())/s.Length.MM())}
	}
	from := func(x float64) func(i int) float64 {
		return func(i int) float64 { return at(i, begin(i)).X.MM() - x }
	}
	last := w.l.Frets[w.l.Spec.Frets].Line.Cross.MM()
	p.holds(t, "saddle-points", 6, p.plain("string", number),
		p.mm("out", func(i int) float64 { return math.Abs(at(i, begin(i)).Y.MM()) }),
		p.mm("along, from fret 12", from(w.l.Frets[12].Line.Cross.MM())), p.mm("from last fret", from(last)),
		p.mm("from body end", from(w.l.Board().BodyEnd.Cross.MM())),
		p.mm("foremost, from last fret", func(i int) float64 { return at(i, -1).X.MM() - last }))
	for i, row := range p.table(t, "saddle-points").Rows {
		assert.Equal(t, map[bool]string{true: "bass", false: "treble"}[i > 2], row[2], "side of string %d", i+1)
	}
}

// pickup: the demo's line stands 42 mm before the saddle line and slants as it
// does, so that every string meets it as far before its saddle, square to the
// line.
func (p printed) pickup(t *testing.T, w benchWork) {
	t.Helper()
	tan := w.l.Saddle.TanSlant
	at := func(i int) fan.Point {
		s := w.l.Strings[i]
		x, y := s.Saddle.X.MM()-s.Nut.X.MM(), s.Saddle.Y.MM()-s.Nut.Y.MM()
		back := 42 / (x - y*tan) // 42 mm along the centreline, measured across the slant
		return fan.Point{X: unit.MM(s.Saddle.X.MM() - back*x), Y: unit.MM(s.Saddle.Y.MM() - back*y)}
	}
	next := func(value func(a, b fan.Point) float64) func(i int) float64 {
		return func(i int) float64 {
			if i == 5 {
				return absent
			}
			return value(at(i), at(i+1))
		}
	}
	p.holds(t, "line-1", 6, p.plain("string", number),
		p.mm("from bass string, along", func(i int) float64 { return apart(at(i), at(5)) }),
		p.mm("to the next, along", next(apart)),
		p.mm("to the next, square", next(func(a, b fan.Point) float64 { return b.Y.MM() - a.Y.MM() })),
		p.mm("out from the centreline", func(i int) float64 { return math.Abs(at(i).Y.MM()) }))
}

func TestLayoutPrintsWhatItsHeadsName(t *testing.T) {
	for name, system := range systems {
		t.Run(name, func(t *testing.T) {
			w := demoBench(t, system.Units)
			p := printed{system, report.Layout(&report.Input{Job: w.j, Plan: w.p, Units: system.Units}, w.l)}
			frets, strings := w.l.Frets[1:], w.l.Strings
			table := p.table(t, "marks")
			step := func(k int) func(i int) float64 {
				shown := func(i int) float64 {
					if i < 0 {
						return 0
					}
					x, err := strconv.ParseFloat(table.Rows[i][k], 64)
					require.NoError(t, err)
					return x / p.perMM
				}
				return func(i int) float64 { return shown(i) - shown(i-1) }
			}
			p.holds(t, "marks", len(frets), p.plain("fret", number),
				p.mm("bass, from nut", func(i int) float64 { return 700 * fan.K(number(i)) }), p.mm("bass, step", step(1)),
				p.mm("treble, from nut", func(i int) float64 { return 650 * fan.K(number(i)) }), p.mm("treble, step", step(3)),
				p.degrees("slant °", func(i int) float64 { return math.Atan(frets[i].Line.TanSlant) }))
			p.holds(t, "lines", 6, p.plain("string", number),
				p.mm("own length", func(i int) float64 { return apart(strings[i].Nut, strings[i].Saddle) }),
				p.mm("along the nut line", func(i int) float64 { return apart(strings[i].Nut, strings[5].Nut) }),
				p.mm("nut, from centreline", func(i int) float64 { return strings[i].Nut.Y.MM() }),
				p.mm("along the saddle line", func(i int) float64 { return apart(strings[i].Saddle, strings[5].Saddle) }),
				p.mm("saddle, from centreline", func(i int) float64 { return strings[i].Saddle.Y.MM() }))
		})
	}
}

// What is measured by name, a number a row.
func TestNamedMeasuresAreWhatTheyAreNamed(t *testing.T) {
	for name, system := range systems {
		t.Run(name, func(t *testing.T) {
			w := demoBench(t, system.Units)
			p := printed{system, report.SetOut(&report.Input{Job: w.j, Plan: w.p, Units: system.Units}, w.s)}
			l, blank := w.l, w.l.LeastBlank()
			bass, last := l.Strings[5], l.Frets[24].Line
			onLine := func(x float64) float64 { // where the bass string's line, carried on, stands out
				return bass.Nut.Y.MM() + (x-bass.Nut.X.MM())*(bass.Saddle.Y.MM()-bass.Nut.Y.MM())/(bass.Saddle.X.MM()-bass.Nut.X.MM())
			}
			start := fan.Point{X: blank.MinX, Y: unit.MM(onLine(blank.MinX.MM()))}
			for table, rows := range map[string][]float64{
				"centreline":   {blank.MaxX.MM() - blank.MinX.MM(), -blank.MinX.MM(), blank.MaxY.MM(), -blank.MinY.MM()},
				"string-lines": {start.Y.MM(), onLine(blank.MaxX.MM())},
				"bass-nut":     {apart(start, bass.Nut)},
				"checks": {350, 700 * (fan.K(24) - 0.5), 325, 650 * (fan.K(24) - 0.5),
					apart(l.Nut.Bass, last.Treble), apart(l.Nut.Treble, last.Bass)},
			} {
				got := p.table(t, table).Rows
				require.Len(t, got, len(rows), table)
				for i, want := range rows {
					p.same(t, got[i][1], want*p.perMM, "%s: %s", table, got[i][0])
				}
			}
			checks := p.table(t, "checks").Rows
			assert.Equal(t, mark.DiagonalName(mark.Treble, 24), checks[4][0], "the diagonal that ends on the treble line begins at the bass nut")
		})
	}
}
