package answer

import (
	"bytes"

	"github.com/spf13/pflag"

	"scalepair/cmd/scalepair/report"
	"scalepair/fan/mark"
)

// Check judges measured marks.
type Check struct{ tolerance mark.Tolerance }

// Flags defines the flags.
func (o *Check) Flags(f *pflag.FlagSet) {
	TextVar(f, &o.tolerance, "tolerance", "how far a mark may be off: a `length` or cents, such as 0.1mm or 3cents (default: the build file's, else 2 cents)")
}

// Check judges the marks that were measured; pass reports whether all of them are
// sure and in tolerance.
func (q *Question) Check(o Check, measured []mark.Reading) (r *report.Check, pass bool, err error) {
	l, err := q.layout()
	if err != nil {
		return nil, false, err
	}
	options := q.Run.CheckOptions()
	if t := o.tolerance; t != (mark.Tolerance{}) {
		options.Tolerance, options.ToleranceCents = t.Length, t.Cents
	}
	found, err := mark.Check(l, measured, options)
	if err != nil {
		return nil, false, err
	}
	return report.NewCheck(q.Input, l, found, options), found.Pass, nil
}

// Form gives an empty form for the measuring, as CSV.
func (q *Question) Form() ([]byte, error) {
	l, err := q.layout()
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	err = mark.WriteForm(&b, l, q.Units.Length)
	return b.Bytes(), err
}
