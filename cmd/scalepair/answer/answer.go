// Package answer does what a command does between reading its input and printing its
// result: it settles the pair and the set, searches, lays out, draws and checks.
// The command line and the page in a browser both take their results from here.
// It knows the flags of a command, and neither prints nor opens a file.
//
// In reading order: answer.go one run, settle.go the pair and the set in use; then by
// command start.go, next.go, advise.go, blank.go, compare.go, tension.go, layout.go,
// draw.go with drawflags.go, bench.go, check.go; strung.go what only the page asks
// for; flags.go what their flags share.
package answer

import (
	"context"
	"strings"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
)

// Question is one run of one command: its build with the strings in stock, and what
// reports need.
type Question struct {
	*report.Input
	Context context.Context // ends the work
	// Note says what was settled or left out on the builder's behalf.
	Note func(format string, args ...any)

	missing error // readings, where nothing is known of strings
}

// New makes the question of a run; err is that of reading it.
func New(ctx context.Context, run *build.Run, err error, u Units, note func(format string, args ...any)) (*Question, error) {
	if err != nil && (run == nil || !run.Bare) {
		return nil, err
	}
	return &Question{&report.Input{Run: run, Units: u.over(run)}, ctx, note, err}, nil
}

// strings makes the choice ready for what needs readings.
func (q *Question) strings() (err error) {
	if q.missing == nil && q.Plan == nil {
		q.Plan, err = q.Run.Plan()
		return err
	}
	return q.missing
}

// marks makes the choice ready for what follows from lengths. Without readings, or
// with gauges named that are not in stock, it is noted what is left out.
func (q *Question) marks() (err error) {
	if q.missing != nil {
		q.Note("%v; without them nothing is known of strings, and only what follows from lengths is printed", q.missing)
	}
	var unknown error
	if q.Plan, unknown, err = q.Run.PlanOfMarks(); unknown != nil {
		for line := range strings.Lines(unknown.Error()) {
			q.Note("%s", strings.TrimSpace(line))
		}
		q.Note("what follows without it is printed")
	}
	return err
}

// place is where what is wrong with the build as a whole stands.
func (q *Question) place() fault.Place { return fault.Place{Input: q.Run.Build.File} }
