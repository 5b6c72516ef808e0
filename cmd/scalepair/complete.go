package main

import (
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"scalepair/cmd/scalepair/job"
	"scalepair/cmd/scalepair/show"
	"scalepair/data/unit"
	"scalepair/tuning"
)

// completer gives what may stand at one place of the command line, each
// choice with a tab and a remark behind it.
type completer = cobra.CompletionFunc

// complete gives every argument and flag of the tree its choices, argument by
// argument as the usage line names them and flags by their names, so that a
// new command has them without asking.
func (a *app) complete(root *cobra.Command) {
	known := a.flagChoices()
	for _, c := range root.Commands() {
		if c.ValidArgsFunction == nil {
			c.ValidArgsFunction = completeArgument(c)
		}
		c.Flags().VisitAll(func(f *pflag.Flag) {
			choices := known[c.Name()+" --"+f.Name]
			if choices == nil {
				choices = known["--"+f.Name]
			}
			if value, _ := pflag.UnquoteUsage(f); choices == nil && value != "file" {
				choices = cobra.NoFileCompletions
			}
			if choices != nil {
				_ = c.RegisterFlagCompletionFunc(f.Name, choices) // an error says that the command has set its own
			}
		})
	}
}

// flagChoices lists the completers by flag; one with a command before it
// holds for that command. Of other flags, those whose value is a file complete
// files.
func (a *app) flagChoices() map[string]completer {
	return map[string]completer{
		"--tuning":         completeTuning,
		"--gauges":         completeGauges(),
		"compare --gauges": completeGauges("today", "suggested"),
		"--bass":           completeScale(func(s scales) []unit.Length { return s.Bass }),
		"--treble":         completeScale(func(s scales) []unit.Length { return s.Treble }),
		"--neutral":        completeFret("bridge"),
		"--capo":           completeFret(),
		"--pitch":          words("440", "442", "432", "415"),
		"--format":         words(show.FormatWords()...),
		"--lengths":        words("mm", "in", "in64"),
		"init --lengths":   words("mm", "in"),
		"--forces":         words("N", "lbf", "kgf"),
		"--only":           a.completeOnly,
		"weigh --for":      words("ranking", "tension"),
	}
}

// words completes from a fixed list, in its order.
func words(list ...string) completer {
	return cobra.FixedCompletions(list, cobra.ShellCompDirectiveNoFileComp|cobra.ShellCompDirectiveKeepOrder)
}

// completeArgument goes by the usage line: "[build.toml]" completes files of
// that kind, "[folder]" folders, "string" the strings of the build at hand, in
// the order of the line.
func completeArgument(c *cobra.Command) completer {
	named := strings.Fields(c.Use)[1:]
	return func(c *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
		if len(args) >= len(named) {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		place := strings.Trim(named[len(args)], "[].")
		_, kind, isFile := strings.Cut(place, ".")
		switch {
		case isFile:
			return []string{kind}, cobra.ShellCompDirectiveFilterFileExt
		case place == "folder":
			return nil, cobra.ShellCompDirectiveFilterDirs
		case place == "string":
			return completeString(c, args)
		}
		return nil, cobra.ShellCompDirectiveDefault
	}
}

func completeCommand(root *cobra.Command) ([]string, cobra.ShellCompDirective) {
	var out []string
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() {
			out = append(out, c.Name()+"\t"+c.Short)
		}
	}
	return out, cobra.ShellCompDirectiveNoFileComp
}

// completeString offers the numbers of the strings with their notes.
func completeString(c *cobra.Command, args []string) ([]string, cobra.ShellCompDirective) {
	var out []string
	if j := atHand(c, args); j != nil {
		t := j.Build.Strings.Tuning
		for n := range t.Strings() {
			out = append(out, fmt.Sprintf("%d\t%s", n+1, t.OfString(n+1).Name()))
		}
	}
	return out, cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveKeepOrder
}

func completeTuning(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	var out []string
	for _, t := range tuning.Named() {
		out = append(out, t.Name+"\t"+t.String())
	}
	return out, cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveKeepOrder
}

// atHand reads the build file that the command line names, as the command
// will: the argument before, build.toml, or the demo; nil when it is faulty.
func atHand(c *cobra.Command, args []string) *job.Job {
	at := slices.Index(strings.Fields(c.Use)[1:], "[build.toml]")
	path := ""
	if at >= 0 && at < len(args) {
		path = args[at]
	}
	j, err := job.Load(path, nil)
	if err != nil {
		cobra.CompDebugln(err.Error(), false)
		return nil
	}
	return j
}

// completeGauges offers the stock of the build file at hand, one gauge after
// another, and words that may stand for a whole set.
func completeGauges(sets ...string) completer {
	const directive = cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveNoSpace | cobra.ShellCompDirectiveKeepOrder
	return func(c *cobra.Command, args []string, typed string) ([]string, cobra.ShellCompDirective) {
		var out []string
		if !strings.ContainsAny(typed, " ,") {
			out = append(out, sets...)
		}
		if j := atHand(c, args); j != nil {
			out = append(out, lastOf(typed, " ,", stockWords(j))...)
		}
		return out, directive
	}
}

// stockWords are the labels of the stock, but for one that a list on the
// command line could not hold or that a terminal would obey.
func stockWords(j *job.Job) []string {
	var out []string
	for _, g := range j.Stock.Gauges {
		if !strings.ContainsAny(g.Label, " ,") && g.Label == show.Clean(g.Label) {
			out = append(out, fmt.Sprintf("%s\t%s, %s mm, %s g/m", g.Label, show.Clean(g.Family), unit.Fixed(g.Outer.MM(), 2), unit.Fixed(g.LinearDensity.GramsPerMetre(), 3)))
		}
	}
	return out
}

// lastOf offers the words behind what is typed already of a list.
func lastOf(typed, separators string, list []string) []string {
	before := typed[:strings.LastIndexAny(typed, separators)+1]
	out := make([]string, len(list))
	for i, w := range list {
		out[i] = before + w
	}
	return out
}

// scales are the lengths that a build file lets be tried.
type scales = struct{ Bass, Treble []unit.Length }

// completeScale offers the lengths of the build file's grid, in its unit.
func completeScale(side func(scales) []unit.Length) completer {
	return func(c *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
		var out []string
		if j := atHand(c, args); j != nil {
			for _, l := range side(scales{j.Build.Scales.Bass, j.Build.Scales.Treble}) {
				out = append(out, lengthWord(j.Build.LengthUnit, l))
			}
		}
		return out, cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveKeepOrder
	}
}

// lengthWord writes a length as a flag takes it, without a blank, to the
// millionth of its unit: what is finer comes from the conversion.
func lengthWord(u unit.LengthUnit, l unit.Length) string {
	value, symbol := l.MM(), "mm"
	if u != unit.Millimetres {
		value, symbol = l.Inches(), "in"
	}
	return trimNumber(math.Round(value*1e6)/1e6) + symbol
}

// completeFret offers the frets of the build at hand, 0 to the last, and words
// that may stand for one.
func completeFret(places ...string) completer {
	return func(c *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
		var out []string
		if j := atHand(c, args); j != nil {
			for fret := range j.Build.Neck.Frets + 1 {
				out = append(out, fmt.Sprint(fret))
			}
		}
		return append(out, places...), cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveKeepOrder
	}
}

// errProbed ends a command that was run to learn what it would print.
var errProbed = errors.New("probed")

// completeOnly offers the tables of what the command would print. It runs the
// command as far as its report.
func (a *app) completeOnly(c *cobra.Command, args []string, typed string) ([]string, cobra.ShellCompDirective) {
	var names []string
	a.err = io.Discard
	a.probe = func(r *show.Report) { names = r.TableNames() }
	if c.RunE != nil {
		_ = c.RunE(c, args) // a faulty build file has no tables to offer
	}
	return lastOf(typed, ",", names), cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveNoSpace
}
