package report

import (
	"fmt"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension/choice"
)

// Bench is all that is set out and made by hand for one pair, in working order.
type Bench struct {
	Head
	Resolution     unit.Length  `json:"resolution_mm"`
	Stated         unit.Length  `json:"caliper_resolution_mm,omitempty"`
	Rounding       unit.Cents   `json:"rounding_cents"` // the most that rounding a mark does to its note
	Layout         FanOf        `json:"layout"`
	LeastThickness unit.Length  `json:"least_thickness_mm,omitempty"`
	Steps          []Step       `json:"steps"`
	Blank          *WorkedBlank `json:"blank"` // the one worked with; nil for none
	Saw            SawOf        `json:"saw"`
	RadiusFirst    bool         `json:"radius_first"`
	Depths         *table.Table `json:"slot_depths"`
	Kerf           string       `json:"kerf_and_tang"`
	Wire           WireOf       `json:"fret_wire"`
	Spacing        *table.Table `json:"spacing"`
	OutOfTune      *table.Table `json:"inner_strings_out_of_tune"`
	Nut            *table.Table `json:"nut"`
	Saddles        *SaddlesOf   `json:"saddles"`
	Lines          []LineOf     `json:"further_lines"`
	Shopping       *table.Table `json:"shopping"`
	LimitsBroken   []string     `json:"limits_broken"`
	Cautions       []string     `json:"cautions"`

	in       *Input
	l        *fan.Layout
	d        *choice.Detail // nil while no set is settled
	fineness build.Fineness
	saw      fan.Sawing
	depths   []fan.SlotDepth // empty while the tang's depth is not known
	fits     []fan.BlankFit
	blank    int // the one worked with, an index into fits; -1 for none
	wire     fan.WireList
	placed   []fan.PlacedLine
	saddles  *fan.Saddles // nil where no string's compensation is known
}

// BenchOptions are the choices of one run.
type BenchOptions struct {
	Fineness    build.Fineness
	Blank       string // the name of a blank on offer; "" takes the first that fits
	RadiusFirst bool   // the board is radiused before it is slotted
}

// NewBench works a layout out for the bench. d may be nil. The error is a
// fault.List of everything the build file has wrong, each at its place.
func NewBench(in *Input, l *fan.Layout, d *choice.Detail, o BenchOptions) (*Bench, error) {
	j := in.Run
	b := &Bench{Head: in.head(), Resolution: o.Fineness.Length(), RadiusFirst: o.RadiusFirst, in: in, l: l, d: d, fineness: o.Fineness,
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
	b.Layout = in.fanOf(l, b.fits)
	b.Stated, b.Rounding, b.Blank, b.Saw = o.Fineness.Stated, b.roundingCents(o.Fineness.Resolution), b.workedBlank(), b.sawOf()
	b.Steps = b.steps(l.Fences(b.saw.Kerf))
	b.Depths, b.Kerf, b.Wire = b.depthTable(), kerfWords[b.saw.TangInCut()], b.wireOf()
	b.Spacing, b.OutOfTune, b.Nut = b.spacingTable(), b.intonation(), b.nutTable()
	b.Saddles, b.Lines, b.Shopping = b.saddlesOf(), b.linesOf(), b.shoppingTable()
	b.Cautions = append(steepCautions(l), benchCautions...)
	if d != nil {
		b.Cautions = append(append(b.Cautions, in.detailCautions(d)...), stringCautions...)
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
	for i, s := range b.d.Strings {
		if s.CompensationErr == nil {
			back[i], known = fan.Compensation{Lo: s.Compensation[0], Hi: s.Compensation[1]}, true
		}
	}
	if known {
		b.saddles = new(b.l.Saddles(back))
	}
}

// Document prints it, a numbered heading a step of work.
func (b *Bench) Document() *document.Document {
	in := b.in
	doc := &document.Document{Title: in.title("Setting out")}
	text := in.fanWords(b.l)
	if b.d != nil {
		text += fmt.Sprintf(" Gauges %s, low string first.", in.Set(b.d.Gauges))
	}
	doc.Para("%s", text)
	doc.Para("%s", b.rounding())
	addLimitsBroken(doc, b.LimitsBroken)
	step := 0
	for _, part := range b.parts() {
		if part.write == nil {
			continue
		}
		step++
		doc.Heading("%d. %s", step, part.title)
		part.write(doc)
	}
	doc.Cautions(b.Cautions...)
	return doc
}

// part is one step of work: its title, and what is said of it; nil where there is
// nothing to do.
type part struct {
	title string
	write func(*document.Document)
}

// parts are all steps of work. What calipers set comes first but for the blank.
func (b *Bench) parts() []part {
	out := []part{{"The blank", b.writeBlank}}
	for _, s := range b.Steps {
		out = append(out, part{s.Title, s.write})
		if s.Slots != nil {
			out = append(out, part{"Slot depth and kerf", b.writeDepths})
		}
	}
	lines := part{title: "Strings at further lines"}
	if len(b.Lines) > 0 {
		lines.write = b.writeLines
	}
	return append(out,
		part{"Fret wire", b.writeWire}, part{"String spacing", b.writeSpacing}, part{"Nut", b.writeNut},
		part{"Bridge and saddles", b.writeSaddles}, lines,
		part{"Shopping list", func(doc *document.Document) { doc.Table(b.Shopping) }})
}
