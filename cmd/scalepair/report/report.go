// Package report turns results into what a builder reads: one result type a
// command, with the keys of its JSON, its tables, and its document. It takes
// finished results and does no physics.
//
// In reading order: report.go and head.go have what every result shares,
// strings.go one string, strung.go a pair with its set, worst.go its worst string
// and bend, bars.go their tensions as a picture; limits.go, cautions.go and
// warnings.go what is said about them. Then the commands: advise.go with
// reasons.go, lack.go, tradeoff.go, asked.go, map.go and fromblank.go; compare.go
// with columns.go; tension.go and explain.go; gauges.go with gaugetable.go,
// gaugewords.go and gaugeplot.go, next.go; layout.go with neutral.go; bench.go with
// shopping.go, benchlines.go, benchfigure.go, benchboard.go, benchstrings.go and
// benchsaddles.go, its steps in working order; check.go with checkverdict.go and
// checkwords.go. picture.go has the words of a drawing, sheet.go the bench sheet;
// pairs.go and fanlines.go give what is drawn elsewhere.
package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/tension/choice"
	"scalepair/tuning"
)

// Input is what every report needs beside its result.
type Input struct {
	Run   *build.Run
	Plan  *choice.Plan
	Units table.Units

	tunings []tuning.Tuning // those of Plan's cases where they are not the run's
}

// Tunings gives the tunings of the plan's cases.
func (in *Input) Tunings() []tuning.Tuning {
	if in.tunings != nil {
		return in.tunings
	}
	return in.Run.Tunings()
}

// none stands in a cell that has no value.
const none = "–"

// title heads a document with the build's name.
func (in *Input) title(what string) string {
	if in.Run.Build.Name == "" {
		return what + " " + in.Run.Tunings()[0].String()
	}
	return what + " " + in.Run.Build.Name
}

// note gives the name of string number n (1 the highest) in case c.
func (in *Input) note(c, n int) string { return in.Tunings()[c].OfString(n).Name() }

// gauge names a gauge of the stock with the marks that must go wherever it
// appears.
func (in *Input) gauge(g int) string { return marked(in.Plan.Stock()[g]) }

// marked is a gauge's label with 'estimated' or 'suspect' where its linear
// density cannot be relied on; a gauge whose own readings disagree is suspect
// too. Other flags are said where the gauge table is printed.
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

// labels gives the labels of a set, low string first, for programs.
func (in *Input) labels(set []int) []string {
	out := make([]string, len(set))
	for i, g := range set {
		out[len(set)-1-i] = in.Plan.Stock()[g].Label
	}
	return out
}

// Pair names a scale pair: "690.0 / 650.0 mm", or "650.0 mm (straight)".
func (in *Input) Pair(bass, treble unit.Length) string {
	if bass == treble {
		return in.length(bass) + " (straight)"
	}
	return in.Units.Len(bass, scaleDecimals) + " / " + in.length(treble)
}

// length prints a scale length, or another one that is no mark, with its unit.
func (in *Input) length(l unit.Length) string { return in.Units.LenText(l, scaleDecimals) }

// atLeast is a least length of wood, rounded up.
func (in *Input) atLeast(l unit.Length) string { return in.Units.AtLeastText(l, scaleDecimals) }

// scaleDecimals is how scale lengths are printed, in decimals of a millimetre;
// markDecimals holds for marks on the board, which calipers can follow.
const (
	scaleDecimals = 1
	markDecimals  = 2
)

// cents prints an interval with its unit.
func cents(c unit.Cents) string { return unit.Fixed(c.Value(), 1) + " cents" }

// trim prints a number as it was written.
func trim(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// numbers lists string or fret numbers: "1, 2 and 3".
func numbers[T int | float64](list []T) string {
	words := make([]string, len(list))
	for i, n := range list {
		words[i] = trim(float64(n))
	}
	return listed(words)
}

// several names strings or frets: "string 3", "strings 1, 2 and 3".
func several[T int | float64](what string, list []T) string {
	if len(list) == 1 {
		return what + " " + numbers(list)
	}
	return what + "s " + numbers(list)
}

// listed joins words: "a, b and c".
func listed(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// lines are sentences in the making.
type lines []string

// say adds a sentence.
func (l *lines) say(format string, args ...any) { *l = append(*l, fmt.Sprintf(format, args...)) }

// sayIf adds a sentence where it holds.
func (l *lines) sayIf(holds bool, format string, args ...any) {
	if holds {
		l.say(format, args...)
	}
}

// shared is a text with those for whom it holds.
type shared struct {
	text string
	by   []string
}

// share adds a text to a list that has every text once, in the order in which they
// come.
func share(list []shared, text, who string) []shared {
	i := slices.IndexFunc(list, func(s shared) bool { return s.text == text })
	if i < 0 {
		return append(list, shared{text, []string{who}})
	}
	list[i].by = append(list[i].by, who)
	return list
}

// plural gives "1 pair" or "5 pairs".
func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return strconv.Itoa(n) + " " + word + "s"
}

// capital begins a sentence with a name.
func capital(name string) string {
	first, size := utf8.DecodeRuneInString(name)
	return string(unicode.ToUpper(first)) + name[size:]
}

// pitchStandard is the frequency of A4.
func (in *Input) pitchStandard() unit.Frequency { return in.Run.Build.Strings.PitchStandard }
