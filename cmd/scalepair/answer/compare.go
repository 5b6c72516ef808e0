package answer

import (
	"github.com/spf13/pflag"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
	"scalepair/tension/choice"
)

// CompareFlags defines the flags of a comparison.
func CompareFlags(f *pflag.FlagSet, c *build.Comparison) {
	f.StringArrayVar(&c.Tunings, "tuning", nil, "`notes` low to high, or a named tuning; may be repeated")
	f.StringArrayVar(&c.Retunes, "retune", nil, "the build's tuning with strings at other `notes`, such as 6=A1; may be repeated")
	f.StringArrayVar(&c.Capos, "capo", nil, "`fret` of a capo, 0 for none; may be repeated")
	f.StringArrayVar(&c.Pairs, "pair", nil, "bass and treble scale `lengths`, such as \"690 / 650 mm\", or one for straight frets; may be repeated")
	f.StringArrayVar(&c.Gauges, "gauges", nil, "`gauges` of the stock, low string first, or a word: today, reference, suggested; may be repeated")
	f.BoolVar(&c.OneSet, "one-set", false, "one set for all columns: the one that does best in all of them")
}

// Compare sets the columns asked for side by side.
func (q *Question) Compare(asked build.Comparison) (*report.Comparison, error) {
	if q.missing != nil {
		return nil, q.missing
	}
	columns, err := q.Run.Columns(asked)
	if err != nil {
		return nil, err
	}
	if err := q.settlePairs(columns); err != nil {
		return nil, err
	}
	columns, requests, err := q.Run.Requests(columns)
	if err != nil {
		return nil, err
	}
	var oneSet []int
	if asked.OneSet {
		var none choice.Miss
		if oneSet, none, err = choice.OneSet(requests); err != nil {
			return nil, err
		}
		if oneSet == nil {
			q.Plan, _ = q.Run.Plan()
			return nil, fault.Fault{Place: fault.Place{Input: "--one-set"}, What: "no set keeps the limits on strings in all columns: " + q.MissWords(none)}
		}
		for i := range requests {
			requests[i].Set, columns[i].Set, columns[i].SetName = oneSet, oneSet, "one set"
		}
	}
	found, err := choice.Compare(requests)
	if err != nil {
		return nil, err
	}
	q.Plan = found[0].Plan
	return report.NewComparison(q.Input, columns, found, oneSet), nil
}

// settlePairs puts the pick of advise into the columns whose pair is open, and
// notes it.
func (q *Question) settlePairs(columns []build.Column) error {
	var pick *choice.Pick
	for i := range columns {
		if columns[i].HasPair() {
			continue
		}
		if pick == nil {
			err := q.strings()
			if err == nil {
				pick, err = q.preferred(q.Plan)
			}
			if err != nil {
				return err
			}
			q.Note("no pair is chosen: comparing on the pick %q of advise, %s", pick.Kind, q.Pair(pick.Bass, pick.Treble))
		}
		columns[i].SetPair(pick.Bass, pick.Treble)
	}
	return nil
}
