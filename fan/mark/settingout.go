package mark

import (
	"math"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
)

// Bench is what a setting-out list depends on beside the layout.
type Bench struct {
	// Resolution is the least difference that calipers or ruler show.
	Resolution Resolution
	// KerfMM is the width of the saw's cut, for the fences; 0 to 3 mm. With 0
	// the fence stands on the slot itself.
	KerfMM float64
	// Dots are the frets that carry dots; nil for those of fan.CommonDots.
	Dots *fan.Dots
}

// FigureKind says how a figure is to be read.
type FigureKind int

// The kinds of figure.
const (
	FigureLength FigureKind = iota
	FigureAngle
)

// Figure is one number of a task.
type Figure struct {
	Name     string
	Kind     FigureKind
	Length   Rounded // of FigureLength
	AngleRad float64 // of FigureAngle
}

// MarkRow is one mark on a string line, both ways.
type MarkRow struct {
	Fret    int
	FromNut Rounded
	Step    Rounded // from the mark before: the difference of the rounded positions
	// MMPerCent is how far the mark may stand off for one cent of pitch.
	MMPerCent float64
}

// SlotRow is one slot. A zero fret's, fret 0, comes first; its fence stands
// behind the nut line, so that its places are negative.
type SlotRow struct {
	Fret            int
	SlantRad        float64 // positive where the bass end is nearer the bridge
	Bass, Treble    Rounded // end points along the board's edges, from where the nut line meets the edge
	Length          Rounded // along the slot
	FenceBass       Rounded // where the fence's working face meets the bass edge, half a kerf nearer the nut
	FenceTreble     Rounded // the same at the treble edge
	SquareBoxServes bool    // true for a slot that stands square: a mitre box serves, the others need the fence
}

// DotRow is one dot.
type DotRow struct {
	Fret  int
	Along Rounded // face dots: along the centreline from where the nut line crosses it; side dots: along the bass edge from the nut line
	Out   Rounded // face dots: out from the centreline, bass side positive; side dots: 0
}

// Task is one step of the setting-out list.
type Task struct {
	Title   string
	Do      string   // what to do, in a builder's words, without numbers
	Figures []Figure // the numbers it needs
	Marks   []MarkRow
	Slots   []SlotRow
	Dots    []DotRow
}

// List is the setting-out list in working order.
type List struct {
	Resolution Resolution
	// Note says how the numbers are rounded.
	Note  string
	Tasks []Task
}

const roundingNote = "Every length is rounded to what the tool shows. A step is the difference of the two rounded " +
	"positions, so the steps sum to the positions exactly. Mark from the nut, so that one slip stays one slip; " +
	"the steps are for the second measuring."

// desk makes the tasks of one layout.
type desk struct {
	l     *fan.Layout
	p     plan
	r     Resolution
	blank fan.Rectangle
	kerf  float64
}

// SettingOut gives the setting-out list of a layout, in working order:
// centreline, string lines, nut, the marks of the bass line, the square line
// and the treble nut, the marks of the treble line, the checks before the
// first cut, the board's outline, the slots and their fences, the dots.
// Without dots on the face, or on the side, that task is left out.
//
// Base lines are two lines square to the centreline, as far apart as the
// smallest blank is long: on any blank, larger ones too, everything is measured
// from them. The error is a fault.List: no resolution, or a kerf outside 0 to
// 3 mm.
func SettingOut(l *fan.Layout, b Bench) (List, error) {
	var faults fault.List
	if b.Resolution.PerUnit < 1 {
		faults.Add(fault.Place{Input: "resolution"}, "missing", "", "give the least difference the calipers show, such as \"0.05 mm\"")
	}
	fences, err := l.Fences(unit.MM(b.KerfMM))
	faults.Include(fault.Place{Input: "kerf"}, err)
	if err := faults.Err(); err != nil {
		return List{}, err
	}
	d := desk{l: l, p: planOf(l), r: b.Resolution, blank: l.LeastBlank(), kerf: b.KerfMM}
	list := List{Resolution: b.Resolution, Note: roundingNote, Tasks: []Task{
		d.centreline(), d.stringLines(), d.bassNut(), d.marks(Bass),
		d.trebleNut(), d.marks(Treble), d.beforeTheCut(), d.boardEdges(), d.slots(fences),
	}}
	for _, t := range d.dots(b.Dots) {
		if len(t.Dots) > 0 {
			list.Tasks = append(list.Tasks, t)
		}
	}
	return list, nil
}

func (d desk) dots(dots *fan.Dots) []Task {
	if dots == nil {
		dots = new(fan.CommonDots(d.l.Spec.Frets))
	}
	return []Task{d.faceDots(*dots), d.sideDots(*dots)}
}

func (d desk) length(name string, mm float64) Figure {
	return Figure{Name: name, Length: d.r.Round(mm)}
}

// marks lists every mark of a line, both ways.
func (d desk) marks(line Line) Task {
	p := d.p.lines[line]
	t := Task{
		Title: "Marks on the " + line.String() + " line",
		Do: "Lay the ruler along the " + line.String() + " string line, its nought on the nut mark, and mark every fret without " +
			"lifting it. Care pays most at the high frets, where a cent is least wide.",
	}
	before := d.r.Round(0)
	for n := 1; n < len(p.marks); n++ {
		at := d.r.Round(p.marks[n])
		t.Marks = append(t.Marks, MarkRow{Fret: n, FromNut: at, Step: d.r.between(before, at), MMPerCent: p.mmPerCent(n)})
		before = at
	}
	return t
}

// slots lists every slot with its fence.
func (d desk) slots(fences []fan.Fence) Task {
	t := Task{
		Title: "Slots",
		Do: "Join the two marks of every fret and carry the line to both edges; its ends are given along the edges from the nut line. " +
			"A mitre box serves a square slot only. For the others clamp a straight fence across the board, its working face " +
			"half a kerf nearer the nut than the slot's middle, and saw along it on the bridge side.",
	}
	if d.l.Spec.ZeroFret {
		t.Do += " Fret 0 is the zero fret: its slot lies on the nut line itself, and its fence stands behind that line, so its places are below nought."
	}
	if d.kerf > 0 {
		t.Figures = append(t.Figures, d.length("half a kerf, square to the slot", d.kerf/2))
	}
	for _, f := range fences {
		fret := d.l.Frets[f.Fret]
		t.Slots = append(t.Slots, SlotRow{
			Fret: f.Fret, SlantRad: f.Slant.Rad(), SquareBoxServes: fret.Line.TanSlant == 0,
			Bass: d.r.Round(f.BassAlongEdge.MM()), Treble: d.r.Round(f.TrebleAlongEdge.MM()), Length: d.r.Round(fret.Slot.Length.MM()),
			FenceBass: d.r.Round(f.FaceBassAlongEdge.MM()), FenceTreble: d.r.Round(f.FaceTrebleAlongEdge.MM()),
		})
	}
	return t
}

func (d desk) faceDots(dots fan.Dots) Task {
	t := Task{
		Title: "Face dots",
		Do:    "Midway between two fret lines on the centreline, from where the nut line crosses it; a pair stands out to either side.",
	}
	for _, dot := range d.l.FaceDots(dots) {
		t.Dots = append(t.Dots, DotRow{Fret: dot.Fret, Along: d.r.Round(dot.At.X.MM()), Out: d.r.Round(dot.At.Y.MM())})
	}
	return t
}

func (d desk) sideDots(dots fan.Dots) Task {
	t := Task{
		Title: "Side dots",
		Do:    "Midway between two slot ends on the bass edge, along the edge from the nut line; a pair is two dots in a row.",
	}
	nut := d.l.Frets[0].Slot.Bass
	for _, dot := range d.l.SideDots(dots) {
		along := math.Hypot(dot.At.X.MM()-nut.X.MM(), dot.At.Y.MM()-nut.Y.MM())
		t.Dots = append(t.Dots, DotRow{Fret: dot.Fret, Along: d.r.Round(along), Out: d.r.Round(0)})
	}
	return t
}
