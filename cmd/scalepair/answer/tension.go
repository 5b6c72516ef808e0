package answer

import (
	"fmt"
	"slices"

	"github.com/spf13/pflag"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
)

// Explain asks for the work of one string, with a bend at one fret.
type Explain struct {
	String int
	Fret   float64
}

// buildsFret is the value of --fret that leaves the fret to the build.
const buildsFret = -1

// Flags defines the flags.
func (o *Explain) Flags(f *pflag.FlagSet) {
	f.IntVar(&o.String, "explain", 0, "show the work for the `string` of this number, 1 the highest")
	f.Float64Var(&o.Fret, "fret", buildsFret, "with --explain: `fret` of the bend, 0 for none (default: the build's first, on a string that is bent)")
	f.Lookup("fret").DefValue = "0" // the usage says it in words
}

// Tension works up the strings of the pair and the set in use, or the work of one
// of them.
func (q *Question) Tension(o Explain) (document.Result, error) {
	if err := q.strings(); err != nil {
		return nil, err
	}
	if err := o.check(q); err != nil {
		return nil, err
	}
	d, err := q.detail()
	if err != nil {
		return nil, err
	}
	if o.String == 0 {
		return report.NewTension(q.Input, d), nil
	}
	w, err := q.Run.Work(q.Plan, d, o.String, o.Fret)
	if err != nil {
		return nil, err
	}
	return report.NewExplained(q.Input, d, w), nil
}

// check settles the fret, and refuses a string or a fret that is not there.
func (o *Explain) check(q *Question) error {
	strings, last := q.Plan.Request().Neck.Strings, q.Plan.Request().Neck.Frets
	if o.String < 0 || o.String > strings {
		return fault.Fault{Place: fault.Place{Input: "--explain"}, What: "there is no such string", Given: fmt.Sprint(o.String), Remedy: fmt.Sprintf("use 1 to %d, 1 the highest", strings)}
	}
	if o.Fret == buildsFret {
		o.Fret = 0
		if frets := q.Plan.Request().Feel.BendFrets; len(frets) > 0 && slices.Contains(q.Plan.BendStrings(), o.String) {
			o.Fret = float64(frets[0])
		}
	}
	if o.Fret != 0 && !(o.Fret >= 1 && o.Fret <= float64(last)) {
		return fault.Fault{Place: fault.Place{Input: "--fret"}, What: "there is no such fret to bend at", Given: fmt.Sprint(o.Fret), Remedy: fmt.Sprintf("give 1 to %d, or 0 for no bend", last)}
	}
	return nil
}
