// Package report turns results into what a builder reads: the blocks of a
// show.Report, and the values that JSON prints. It takes finished results and
// does no physics.
//
// The commands that print are one file each; what several of them share
// (string table, marks, cautions, limits in words) has a file of its own.
package report

import (
	"fmt"
	"strconv"
	"strings"

	"scalepair/cmd/scalepair/job"
	"scalepair/cmd/scalepair/show"
	"scalepair/gauges"
	"scalepair/tension/choice"
	"scalepair/tuning"
)

// Input is what every report needs beside its result.
type Input struct {
	Job   *job.Job
	Plan  *choice.Plan
	Units show.Units

	tunings []tuning.Tuning // those of Plan's cases where they are not the job's
}

// Tunings gives the tunings of the plan's cases.
func (in *Input) Tunings() []tuning.Tuning {
	if in.tunings != nil {
		return in.tunings
	}
	return in.Job.Tunings()
}

// none stands in a cell that has no value.
const none = "–"

// note gives the name of string number n (1 the highest) in case c.
func (in *Input) note(c, n int) string { return in.Tunings()[c].OfString(n).Name() }

// gauge names a gauge of the stock with the marks that must go wherever it
// appears.
func (in *Input) gauge(g int) string { return marked(in.Plan.Stock()[g]) }

// marked is a gauge's label with 'estimated' or 'suspect' where its unit
// weight cannot be relied on; a gauge whose own readings disagree is suspect
// too. Other flags are told where the gauge table is printed.
func marked(g gauges.Gauge) string {
	switch {
	case g.Estimated:
		return g.Label + " (estimated)"
	case g.Suspect || g.Disagrees:
		return g.Label + " (suspect)"
	}
	return g.Label
}

// Set names a set of gauges, low string first, as a tuning is spoken.
func (in *Input) Set(set []int) string {
	words := make([]string, len(set))
	for i, g := range set {
		words[len(set)-1-i] = in.gauge(g)
	}
	return strings.Join(words, " ")
}

// Pair names a scale pair: "690.0 / 650.0 mm".
func (in *Input) Pair(bassMM, trebleMM float64) string {
	return in.scale(bassMM) + " / " + in.Units.LenText(trebleMM, scaleDecimals)
}

func (in *Input) scale(mm float64) string { return in.Units.Len(mm, scaleDecimals) }

// scaleDecimals is how scale lengths are printed, in decimals of a millimetre;
// markDecimals holds for marks on the board, which calipers can follow.
const (
	scaleDecimals = 1
	markDecimals  = 2
)

// numbers lists string or fret numbers: "1, 2 and 3".
func numbers[T int | float64](list []T) string {
	words := make([]string, len(list))
	for i, n := range list {
		words[i] = strconv.FormatFloat(float64(n), 'f', -1, 64)
	}
	return listed(words)
}

// listed joins words: "a, b and c".
func listed(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// plural gives "1 pair" or "5 pairs".
func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
