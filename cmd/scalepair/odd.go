package main

import (
	"slices"

	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
	"scalepair/data/odd"
	"scalepair/fan"
	"scalepair/tension/choice"
)

// tell prints on stderr what looks odd, and keeps it for JSON and the sheet. It
// changes nothing else: not the result, not the exit code.
func (a *app) tell(in *report.Input, found odd.List) {
	if len(found) == 0 || a.untold {
		return
	}
	var fresh odd.List
	for _, v := range found {
		if !slices.Contains(in.Odd, v) {
			fresh = append(fresh, v)
		}
	}
	in.Odd = append(in.Odd, fresh...)
	for _, line := range in.Unusual(fresh) {
		a.hint("%s", line)
	}
}

// tellDetail tells what is odd about a pair and what its strings do.
func (a *app) tellDetail(in *report.Input, d *choice.Detail) {
	a.tell(in, in.Job.Placed(oddDetail(in.Plan, d)))
}

// oddDetail watches a pair with its set.
func oddDetail(p *choice.Plan, d *choice.Detail) odd.List {
	found := p.OddDetail(d)
	if frame, err := fan.NewFrame(d.Spec); err == nil { // d was made of such a frame
		found.Include(fault.Place{}, frame.Odd())
	}
	return found
}

// tellLayout tells what is odd about a fan.
func (a *app) tellLayout(in *report.Input, l *fan.Layout) {
	a.tell(in, in.Job.Placed(l.Frame.Odd()))
}

// tellColumns tells what is odd about the columns of a comparison; the place is
// the column.
func (a *app) tellColumns(in *report.Input, cmp *report.Comparison) {
	var found odd.List
	for i, name := range in.ColumnNames(cmp) {
		one := cmp.Compared[i]
		if one.Detail == nil {
			continue
		}
		own := oddDetail(one.Plan, one.Detail)
		for k := range own {
			own[k].Place = fault.Place{Input: "column " + name}
		}
		found = append(found, own...)
	}
	a.tell(in, found)
}
