package report

import (
	"encoding/json"
	"fmt"
	"slices"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
	"scalepair/tension/choice"
)

// Bench is all that is set out and made by hand for one pair, in working order.
// What its steps say in words stands beside them as numbers.
type Bench struct {
	Head
	Resolution     unit.Length  `json:"resolution_mm"`
	Stated         unit.Length  `json:"caliper_resolution_mm,omitempty"`
	Rounding       unit.Cents   `json:"rounding_cents"` // the most that rounding a mark does to its note
	Layout         FanOf        `json:"layout"`
	LeastThickness unit.Length  `json:"least_thickness_mm,omitempty"`
	BassSide       unit.Length  `json:"least_centreline_from_bass_edge_mm"`
	TrebleSide     unit.Length  `json:"least_centreline_from_treble_edge_mm"`
	Blank          *WorkedBlank `json:"blank"` // the one worked with; nil for none
	Saw            SawOf        `json:"saw"`
	RadiusFirst    bool         `json:"radius_first"`
	Wire           WireOf       `json:"fret_wire"`
	Saddles        *SaddlesOf   `json:"saddles"` // nil where no string's compensation is known
	Lines          []LineOf     `json:"further_lines"`
	Steps          []Step       `json:"steps"`
	LimitsBroken   []string     `json:"limits_broken"`
	Cautions       []string     `json:"cautions"`

	in       *Input
	l        *fan.Layout
	left     bool           // the figure is of a left-handed board
	d        *choice.Detail // nil while no set is settled
	fineness build.Fineness
	saw      fan.Sawing
	depths   []fan.SlotDepth // empty while the tang's depth is not known
	fences   []fan.Fence
	fits     []fan.BlankFit
	blank    int // the one worked with, an index into fits; -1 for none
	wire     fan.WireList
	placed   []fan.PlacedLine
	saddles  *fan.Saddles // nil where no string's compensation is known
	lastSet  int          // the number of the last step that calipers set
}

// Step is one step of work: what to do, and the numbers that it takes.
type Step struct {
	Title  string   `json:"title"`
	Do     []string `json:"do"`
	Tables tables   `json:"tables"`
	figure string   // what the numbers of a step look like, as SVG
	beside bool     // the tables belong side by side
}

// tables encode to JSON by their names.
type tables []*table.Table

func (t tables) MarshalJSON() ([]byte, error) {
	named := map[string]*table.Table{}
	for _, one := range t {
		named[one.Name] = one
	}
	return json.Marshal(named)
}

// BenchOptions are the choices of one run.
type BenchOptions struct {
	Fineness    build.Fineness
	Blank       string // the name of a blank on offer; "" takes the first that fits
	RadiusFirst bool   // the board is radiused before it is slotted
	LeftHanded  bool   // the figure has the bass side above
}

// NewBench works a layout out for the bench. d may be nil. The error is a
// fault.List of everything the build file has wrong, each at its place.
func NewBench(in *Input, l *fan.Layout, d *choice.Detail, o BenchOptions) (*Bench, error) {
	j := in.Run
	b := &Bench{Head: in.head(), Resolution: o.Fineness.Length(), Stated: o.Fineness.Stated, RadiusFirst: o.RadiusFirst, in: in, l: l, left: o.LeftHanded, d: d, fineness: o.Fineness,
		saw: fan.Sawing{FretWire: j.Build.FretWire, RadiusFirst: o.RadiusFirst}, LimitsBroken: in.broken(in.Plan.PairLimits(&l.Frame))}
	if d != nil {
		b.Head, b.LimitsBroken = in.head(d), in.broken(d.Broken)
	}
	var faults fault.List
	include := func(err error) { faults.Include(fault.Place{Input: j.Build.File}, j.Placed(err)) }
	var err error
	b.wire, err = l.Wire(b.saw.FretWire)
	include(err)
	b.placed, err = j.FurtherLines(l)
	include(err)
	if b.saw.TangDepth > 0 {
		b.depths, err = l.Depths(b.saw)
		include(err)
		b.LeastThickness = l.LeastThickness(b.saw, b.depths)
	}
	b.fits = l.FitBlanks(j.Build.Blanks, b.saw, b.depths)
	b.blank, err = j.PickBlank(b.fits, o.Blank)
	include(err)
	b.findSaddles()
	if err := faults.Err(); err != nil {
		return nil, err
	}
	b.BassSide, b.TrebleSide = l.LeastBlank().MaxY, -l.LeastBlank().MinY
	b.Layout, b.Rounding = in.fanOf(l, b.fits), b.roundingCents(o.Fineness.Resolution)
	nut, last := l.Spec.Radii()
	b.Blank, b.Saw, b.Wire, b.Saddles = b.workedBlank(), SawOf{b.saw.FretWire, b.saw.Kerf / 2, nut, last}, WireOf{b.wire.Sum, b.wire.Total}, b.saddlesOf()
	b.fences = l.Fences(b.saw.Kerf)
	b.Steps = b.steps()
	b.Cautions = slices.Concat(steepCautions(l), benchCautions)
	if d != nil {
		b.Cautions = slices.Concat(in.detailCautions(d), benchCautions, stringCautions)
	}
	return b, nil
}

// findSaddles places every string's saddle. A string of unknown stiffness is given
// none, and is not looked at.
func (b *Bench) findSaddles() {
	if b.d == nil {
		return
	}
	back, known := make([]fan.Compensation, len(b.d.Strings)), false
	for i, c := range compensations(b.d) {
		if c != nil {
			back[i], known = *c, true
		}
	}
	if known {
		b.saddles = new(b.l.Saddles(back))
	}
}

// steps are all steps of work, in working order. On a page every row of what is
// set out can be ticked, and what was measured is written beside the marks.
func (b *Bench) steps() []Step {
	out := []Step{b.buy(), b.baseLines(), b.nutLine(), b.marks(), b.checks(), b.edges(), b.slots()}
	if dots := b.dots(); dots.Tables[0].Len() > 0 {
		out = append(out, dots)
	}
	for _, s := range out[1:] {
		for _, t := range s.Tables {
			t.Tick = true
			if s.Title == marksTitle || s.Title == checksTitle {
				t.Room = "measured"
			}
		}
	}
	b.lastSet = len(out)
	out = append(out, b.nut(), b.bridge())
	if len(b.placed) > 0 {
		out = append(out, b.further())
	}
	for i := range out {
		out[i].Title = fmt.Sprintf("%d. %s", i+1, out[i].Title)
	}
	return out
}

// Document prints it, a numbered heading a step of work.
func (b *Bench) Document() *document.Document {
	doc := &document.Document{Title: b.in.title("Setting out")}
	b.opening(doc)
	for _, s := range b.Steps {
		s.write(doc)
	}
	doc.Cautions(b.Cautions...)
	return doc
}

// opening says what is set out, and how finely.
func (b *Bench) opening(doc *document.Document) {
	text := b.in.fanWords(b.l)
	if b.d != nil {
		text += fmt.Sprintf(" Gauges %s, low string first.", b.in.Set(b.d.Gauges))
	}
	doc.Para("%s", b.weighAgain())
	doc.Para("%s", text)
	doc.Para("%s", b.rounding())
	addLimitsBroken(doc, b.LimitsBroken)
}

func (s Step) write(doc *document.Document) {
	doc.Heading("%s", s.Title)
	for _, text := range s.Do {
		doc.Para("%s", text)
	}
	doc.Figure("Lines and measures of this step", s.figure)
	if s.beside {
		doc.Table(s.Tables...)
		return
	}
	for _, t := range s.Tables {
		doc.Table(t)
	}
}

// How finely lengths of the bench are printed. What calipers set, or a slot
// needs, goes to 0.01 mm or 0.001 in, in decimals; marks and slots to the
// calipers' own resolution. What a rule lays off (blank, wire, bridge, pickups)
// goes in the builder's unit, in fractions where they want them. Differences that
// are judged and not set (errors, the width of a cent) go to 0.01 mm or
// 0.0001 in.

// rounding says how finely the list is printed, why, and what that does.
func (b *Bench) rounding() string {
	r, u := b.fineness.Resolution, b.in.Units
	text := fmt.Sprintf("What is set out (steps 2 to %d) is rounded to %s, %s. That alone moves no note by more than %s cents%s",
		b.lastSet, r, finenessWords(u, b.fineness), centsWords(b.Rounding), b.coarse())
	if u.Length == unit.InchFractions && r.Unit != unit.InchFractions {
		text += fmt.Sprintf(" The blank's size, wire, bridge and pickups are in fractions, for a rule; what is set out is not, since 1/64 in could move a note by %s cents.",
			centsWords(b.roundingCents(mark.Resolution{Unit: unit.InchFractions, PerUnit: 64})))
	}
	return text
}

// roundingCents is the most that rounding a mark can do to its note.
func (b *Bench) roundingCents(r mark.Resolution) unit.Cents {
	last := b.l.Frets[b.l.Spec.Frets]
	return unit.Cents(r.Length() / 2 / min(last.Bass.OneCent, last.Treble.OneCent))
}

func centsWords(c unit.Cents) string { return unit.Fixed(max(c.Value(), 0.01), 2) }

// coarseCents is from where a finer rounding is worth its figures (judgement).
const coarseCents = 0.5

// coarse ends the sentence on cents, with what would be finer where it matters.
func (b *Bench) coarse() string {
	if b.Rounding <= coarseCents {
		return "."
	}
	text := " (--calipers 0.05mm, or 0.002in, is finer)."
	if most := b.in.Run.CheckOptions().WithDefaults().ToleranceCents; most > 0 && b.Rounding > most {
		text += fmt.Sprintf(" That is more than the %s cents which scalepair check lets pass: such a board can fail with every mark where it was printed.", trim(most.Value()))
	}
	return text
}

// finenessWords say why marks are rounded as they are.
func finenessWords(u table.Units, f build.Fineness) string {
	switch theirs, took := f.Stated, f.Length(); {
	case f.From == "":
		return "what common calipers show (caliper_resolution under [measuring] says what yours do)"
	case f.From == "--calipers":
		return "as --calipers asks"
	case size(took-theirs) < 1e-6*unit.Millimetre:
		return "the resolution of your calipers (caliper_resolution under " + f.From + ")"
	default:
		return fmt.Sprintf("which comes nearest to your calipers' %s (caliper_resolution under %s)", resolutionText(u, theirs), f.From)
	}
}
