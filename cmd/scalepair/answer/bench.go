package answer

import (
	"bytes"
	"errors"

	"github.com/spf13/pflag"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan/mark"
)

// Bench asks for the setting-out list.
type Bench struct {
	calipers    mark.Resolution
	blank       string
	radiusFirst bool
	date        string // of the sheet
	leftHanded  bool   // its figure
	set         *pflag.FlagSet
}

// Flags defines the flags.
func (o *Bench) Flags(f *pflag.FlagSet) {
	o.set = f
	TextVar(f, &o.calipers, "calipers", "least `difference` your calipers show, such as 0.05mm, 0.001in or 1/64in (default: the build file's, else 0.01mm or 0.001in)")
	f.StringVar(&o.blank, "blank", "", "`name` of the blank on offer to work with (default: the first that fits)")
	f.BoolVar(&o.radiusFirst, "radius-first", false, "the board is radiused before it is slotted")
	f.BoolVar(&o.leftHanded, "left-handed", false, "with --out: the figure of a left-handed board, bass side above")
	f.StringVar(&o.date, "date", "", "with --out: `date` to print, in your own words")
}

// Bench works the setting-out list out.
func (q *Question) Bench(o Bench) (*report.Bench, error) {
	if err := q.marks(); err != nil {
		return nil, err
	}
	fineness := o.fineness(q)
	l, d, err := q.fretted()
	if err != nil {
		return nil, err
	}
	return report.NewBench(q.Input, l, d, report.BenchOptions{Fineness: fineness, Blank: o.blank, RadiusFirst: o.radiusFirst, LeftHanded: o.leftHanded})
}

// fineness is how finely marks are printed. Where --calipers is given and
// --lengths is not, everything is printed in the calipers' unit; inches of either
// kind go together.
func (o *Bench) fineness(q *Question) build.Fineness {
	if o.calipers == (mark.Resolution{}) {
		return q.Run.Calipers(q.Units.Length)
	}
	if !o.set.Changed("lengths") && !(o.calipers.Unit == unit.DecimalInches && q.Units.Length == unit.InchFractions) {
		q.Units.Length = o.calipers.Unit
	}
	return build.Fineness{Resolution: o.calipers, From: "--calipers", Stated: o.calipers.Length()}
}

// Sheet writes the bench sheet: what the commands print of the choice, then the
// setting-out list, as one page of HTML.
func (q *Question) Sheet(o Bench) ([]byte, error) {
	list, err := q.Bench(o)
	if err != nil {
		return nil, err
	}
	var advice *report.Advice
	found, err := q.Find("")
	var nothing fault.List // no pair keeps every limit, and one was chosen by hand
	switch {
	case err == nil:
		advice = report.NewAdvice(q.Input, found, false)
	case !errors.As(err, &nothing):
		return nil, err
	}
	var b bytes.Buffer
	err = report.NewSheet(q.Input, advice, list, o.date).Write(&b, document.Options{Format: document.HTML})
	return b.Bytes(), err
}
