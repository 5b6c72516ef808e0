package report

import (
	"fmt"
	"strings"

	"scalepair/cmd/scalepair/job"
	"scalepair/cmd/scalepair/sheet"
	"scalepair/cmd/scalepair/show"
	"scalepair/tension/choice"
)

// SheetFor is what the bench sheet of one chosen pair is made of.
type SheetFor struct {
	// Advice is the ranking among which the pair was chosen. Its Best and
	// Layout are not looked at: the sheet is of the pair of SetOut, which need
	// not be the first.
	Advice *Advice
	SetOut *job.SetOut
	Date   string // printed as given, and only when given
}

// Sheet composes the bench sheet. It fails when a picture cannot be drawn.
func Sheet(in *Input, f *SheetFor) (sheet.Sheet, error) {
	c := &composer{Input: in, f: f, out: sheet.Sheet{Title: in.title("Bench sheet:"), Date: f.Date}}
	c.out.Lead = "Computed from your own readings. Measure the wood itself before every cut."
	c.facts()
	c.asked()
	c.choice()
	c.strings()
	c.bends()
	c.fan()
	c.shopping()
	c.bench()
	c.cautions()
	c.sources()
	return c.out, c.err
}

// composer adds section by section, and keeps the first error.
type composer struct {
	*Input
	f   *SheetFor
	out sheet.Sheet
	err error
}

// add adds the sections of a report that fill has filled.
func (c *composer) add(fill func(r *show.Report)) {
	r := &show.Report{}
	fill(r)
	c.out.Sections = append(c.out.Sections, sheet.Split(r)...)
}

// last is the section added last.
func (c *composer) last() *sheet.Section { return &c.out.Sections[len(c.out.Sections)-1] }

// facts are what must be known before anything else.
func (c *composer) facts() {
	l, u := c.f.SetOut.Layout, c.Units
	fact := func(name, format string, args ...any) {
		c.out.Facts = append(c.out.Facts, sheet.Fact{Name: name, Value: fmt.Sprintf(format, args...)})
	}
	fact("Bass scale", "%s", u.LenText(l.Spec.Bass.MM(), scaleDecimals))
	fact("Treble scale", "%s", u.LenText(l.Spec.Treble.MM(), scaleDecimals))
	if l.Parallel {
		fact("Frets", "%d, all square", l.Spec.Frets)
	} else {
		fact("Square to the centreline", "%s", squareWords(l.Spec.Neutral))
		fact("Frets", "%d", l.Spec.Frets)
	}
	for i, cs := range c.Plan.Request().Cases {
		fact("Tuning, low to high", "%s", c.caseWords(i, cs))
	}
	d := c.f.SetOut.Detail
	if d != nil {
		fact("Gauges, low string first", "%s", c.Set(d.Gauges))
		fact("Total tension", "%s", c.totalWords(d))
	}
	blank, size := c.blankWords(c.f.SetOut)
	if name, ok := strings.CutPrefix(blank, "fingerboard blank: "); ok {
		size = name + ", " + size
	}
	fact("Blank", "%s", size)
}

// totalWords names the total tension, the greatest of several tunings.
func (c *composer) totalWords(d *choice.Detail) string {
	most := d.Totals[0]
	for _, t := range d.Totals[1:] {
		if t.TensionN > most.TensionN {
			most = t
		}
	}
	return c.Units.ForceTextU(most.TensionN, most.UTensionN)
}

func (c *composer) asked() { c.add(c.Input.asked) }

// shopping lists what to buy, to be ticked.
func (c *composer) shopping() {
	c.add(func(r *show.Report) {
		r.Heading("To buy")
		c.Shopping(r, c.f.SetOut)
	})
	c.last().Tick = true
}

// cautions prints all of them, whole.
func (c *composer) cautions() {
	c.add(func(r *show.Report) {
		r.Heading("Cautions")
		own := steepCautions(c.f.SetOut.Layout)
		if d := c.f.SetOut.Detail; d != nil {
			own = append(own, c.detailCautions(d)...)
		}
		r.Cautions(append(own, wholeCautions()...)...)
	})
}
