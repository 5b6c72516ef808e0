package report

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/show"
	"scalepair/fan"
	"scalepair/fan/mark"
	"scalepair/tension/choice"
)

// bench writes the report of one set-out: its own state is the running number
// of the sections, which are steps of work in their order.
type bench struct {
	*Input
	s    *build.SetOut
	r    *show.Report
	step int
}

// SetOut prints what a builder sets out and makes, in working order.
func SetOut(in *Input, s *build.SetOut) *show.Report {
	b := &bench{Input: in, s: s, r: &show.Report{Title: in.title("Setting out")}}
	b.opening()
	in.limitsBroken(b.r, b.misses())
	b.blank()
	for _, t := range s.List.Tasks {
		b.task(t)
		if t.Slots != nil {
			b.depths()
		}
	}
	b.wire()
	b.spacing()
	b.nut()
	b.saddles()
	b.lines()
	b.heading("Shopping list")
	in.Shopping(b.r, s)
	b.r.Heading("Cautions")
	b.r.Cautions(b.cautions()...)
	return b.r
}

// heading opens the next step of work.
func (b *bench) heading(title string) {
	b.step++
	b.r.Heading("%d. %s", b.step, title)
}

// opening says what is set out, and how its numbers are rounded.
func (b *bench) opening() {
	l := b.s.Layout
	text := fmt.Sprintf("Pair %s, neutral %s, %d frets, %d strings.", b.Pair(l.Spec.Bass, l.Spec.Treble),
		squareWords(l.Spec.Neutral), l.Spec.Frets, l.Spec.Strings)
	if b.s.Detail != nil {
		text += fmt.Sprintf(" Gauges %s (low string first).", b.Set(b.s.Detail.Gauges))
	}
	b.r.Text(text)
	b.rounding()
}

// misses are the limits that the pair breaks, and its gauges where they are
// settled.
func (b *bench) misses() []choice.Miss {
	if b.s.Detail != nil {
		return b.s.Detail.Broken
	}
	return b.Plan.PairLimits(b.s.Layout)
}

// lastTask is the number of the last step that the rounding holds for: the
// blank comes before the tasks, the slots' depth among them.
func (b *bench) lastTask() int { return 1 + len(b.s.List.Tasks) + 1 }

// cautions are those of the bench and, where strings are named, of the
// strings.
func (b *bench) cautions() []string {
	list := append(steepCautions(b.s.Layout), benchCautions...)
	if b.s.Detail == nil {
		return list
	}
	return append(append(list, b.detailCautions(b.s.Detail)...), stringCautions...)
}

// set gives a rounded length as the tool shows it.
func (b *bench) set(x mark.Rounded) string { return b.s.List.Resolution.Format(x.Parts) }

// head gives a column head with the tool's unit.
func (b *bench) head(text string) string { return text + " " + b.s.List.Resolution.Unit.Symbol() }

// taskNames name the tasks' tables, by what they hold.
func taskName(title string) string {
	if name, ok := map[string]string{
		"Centreline and base lines": "centreline", "String lines": "string-lines", "Bass nut mark and nut line": "bass-nut",
		"Marks on the bass line": "bass-marks", "Marks on the treble line": "treble-marks",
		"Checks before the first cut": "checks", "Board edges and ends": "edges", "Slots": "slots",
		"Face dots": "face-dots", "Side dots": "side-dots",
	}[title]; ok {
		return name
	}
	return "treble-nut" // its title names the neutral fret
}

// task prints one step of the setting-out list.
func (b *bench) task(t mark.Task) {
	b.heading(t.Title)
	b.r.Text(t.Do)
	name := taskName(t.Title)
	switch {
	case t.Marks != nil:
		b.markTable(name, t.Marks)
	case t.Slots != nil:
		b.slotTable(name, t)
	case t.Dots != nil:
		b.dotTable(name, t.Dots)
	default:
		b.figures(name, t.Figures)
	}
}

// figures prints measures by name. An angle keeps its own sign and unit.
func (b *bench) figures(name string, figures []mark.Figure) {
	t := b.r.Table(name, "", show.Words("measure"), show.Figures(b.s.List.Resolution.Unit.Symbol()))
	for _, f := range figures {
		if f.Kind == mark.FigureAngle {
			t.Note("%s: %s.", capital(f.Name), slantWords(f.AngleRad))
			continue
		}
		t.Row(f.Name, b.set(f.Length))
	}
}

// slantWords says which way a line leans, so that no sign needs learning.
func slantWords(rad float64) string {
	switch text := show.DegText(math.Abs(rad)); {
	case text == show.DegText(0):
		return "square"
	case rad < 0:
		return text + " from square, the bass end nearer the head"
	default:
		return text + " from square, the bass end nearer the bridge"
	}
}

func (b *bench) markTable(name string, marks []mark.MarkRow) {
	fine := fineUnits(b.Units)
	t := b.r.Table(name, "", show.Figures("fret"), show.Figures(b.head("from nut")), show.Figures(b.head("step")),
		show.Figures(fine.HeadLen("width of a cent")))
	for _, m := range marks {
		t.Row(strconv.Itoa(m.Fret), b.set(m.FromNut), b.set(m.Step), fine.Len(m.MMPerCent, 2))
	}
	t.Note("Width of a cent: how far a mark may stand off before its note is a cent out.")
}

func (b *bench) slotTable(name string, task mark.Task) {
	half := b.s.Sawing.Kerf.MM() / 2
	fence := half > 0 && b.shows(half)
	columns := []show.Column{show.Figures("fret"), show.Figures("slant °"), show.Figures(b.head("bass edge")),
		show.Figures(b.head("treble edge")), show.Figures(b.head("slot length"))}
	if fence {
		columns = append(columns, show.Figures(b.head("fence, bass edge")), show.Figures(b.head("fence, treble edge")))
	}
	columns = append(columns, show.Words("saw with"))
	t := b.r.Table(name, "", columns...)
	for _, s := range task.Slots {
		row := []string{strconv.Itoa(s.Fret), show.Deg(s.SlantRad), b.set(s.Bass), b.set(s.Treble), b.set(s.Length)}
		if fence {
			row = append(row, b.set(s.FenceBass), b.set(s.FenceTreble))
		}
		t.Row(append(row, map[bool]string{true: "mitre box", false: "fence"}[s.SquareBoxServes])...)
	}
	if b.s.Layout.Spec.ZeroFret {
		t.Note("Fret 0: the zero fret, on the nut line.")
	}
	t.Note("Edges: along the board's edge from where the nut line meets it. Slant: positive where the bass end is nearer the bridge.")
	switch text := fineUnits(b.Units).LenText(half, 2); {
	case fence:
		t.Note("The fence's working face stands half a kerf, %s, nearer the nut than the slot's middle, square to the slot.", text)
	case half > 0:
		t.Note("The fence's own places are left out: half a kerf, %s, would be lost in steps of %s. Draw the slot's line, and set the fence off it by that much, square to the slot and towards the nut, with a strip of that thickness.", text, b.s.List.Resolution)
	default:
		t.Note("With the saw's cut given as kerf under [fret_wire], the fence's own places are printed too.")
	}
}

func (b *bench) dotTable(name string, dots []mark.DotRow) {
	face := name == "face-dots"
	columns := []show.Column{show.Figures("fret"), show.Figures(b.head("from the nut line"))}
	if face {
		columns = append(columns, show.Figures(b.head("out from the centreline")), show.Words("side"))
	}
	t := b.r.Table(name, "", columns...)
	for _, d := range dots {
		row := []string{strconv.Itoa(d.Fret), b.set(d.Along)}
		if face {
			out := b.s.List.Resolution.Format(abs(d.Out.Parts))
			row = append(row, out, sideOf(d.Out.MM, out))
		}
		t.Row(row...)
	}
	dot := b.Job.Build.Dots
	diameter := dot.SideDiameter
	if face {
		diameter = dot.FaceDiameter
	}
	t.Note("A dot lies in the space before its fret, on the nut side. Bore for dots of %s.", b.caliper().text(diameter.MM()))
}

func abs(n int64) int64 { return max(n, -n) }

// sideOf names the side of the centreline on which y lies; out is how y prints
// without its sign, and what prints as nought lies on it.
func sideOf(y float64, out string) string {
	switch {
	case strings.Trim(out, "0.") == "":
		return "on it"
	case y > 0:
		return "bass"
	}
	return "treble"
}

// outCells are how far a place lies out from the centreline, printed without
// its sign, and on which side.
func outCells(out string, y float64) []string { return []string{out, sideOf(y, out)} }

// fretWords names the fret line n: "the nut line" for 0.
func fretWords(n int) string {
	if n == 0 {
		return "nut line"
	}
	return strconv.Itoa(n)
}

// crossing is where the layout's fret n crosses the centreline.
func crossing(l *fan.Layout, n int) float64 { return l.Frets[n].Line.Cross.MM() }
