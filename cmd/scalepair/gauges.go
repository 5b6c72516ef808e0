package main

import (
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/answer"
	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/report"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/gauges"
)

// gaugesOptions are what gauges takes beside a build file and gauges.
type gaugesOptions struct {
	output  outputFlags
	plot    string
	force   bool
	next    bool
	longest unit.Length
}

func (a *app) gaugesCommand() *cobra.Command {
	o := &gaugesOptions{}
	c := &cobra.Command{
		Use:   "gauges [build.toml] [gauge...]",
		Short: "Linear densities of the strings in stock, how sure they are, and readings to look at again",
		Long: `gauges prints what your own readings say of every gauge in stock: its linear
density (unit weight) with uncertainty, how far it deviates from the fit of its
kind, and which readings to look at again. With gauges named, it prints those with
every reading. --next says what to weigh next for the pair and the set in use.

` + report.Craft + `
Or hang a weight on the string and read the pitch: a row of the kind 'hung'.
` + strings.Join(table.Wrap(gauges.HungCaution, 79), "\n") + `
The breaking load of a gauge is printed when you name it.`,
		Example: `  scalepair gauges
  scalepair gauges w46 p10
  scalepair gauges --next
  scalepair gauges --lengths in --only gauges --format csv
  scalepair gauges --format html > gauges.html`,
		ValidArgsFunction: completeStock,
		RunE:              func(_ *cobra.Command, args []string) error { return a.gauges(args, o) },
	}
	o.output.add(c)
	f := c.Flags()
	f.BoolVar(&o.next, "next", false, "what to weigh next for the pair and the set in use, and how long a piece")
	answer.LongestVar(f, &o.longest)
	fileVar(f, &o.plot, ".svg", "plot", "draw the fits with their gauges into this SVG `file`")
	f.BoolVar(&o.force, "force", false, "with --plot: replace a file that exists")
	return c
}

// stockArguments parts the build file from the gauges behind it.
func stockArguments(args []string) (path string, labels []string) {
	if len(args) == 0 {
		return "", nil
	}
	if isPath(args[0]) {
		return args[0], args[1:]
	}
	return "", args
}

// isPath reports whether an argument is a file: there is one of that name, or its
// name or path looks like one.
func isPath(arg string) bool {
	info, err := os.Stat(arg)
	return err == nil && !info.IsDir() || strings.HasSuffix(strings.ToLower(arg), ".toml") || strings.ContainsAny(arg, `/\`)
}

func completeStock(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	path, _ := stockArguments(args)
	j, err := build.Load(path, nil)
	if err != nil {
		return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
	}
	var out []string
	for _, g := range j.Stock.Gauges {
		out = append(out, g.Label+"\t"+g.Family)
	}
	return out, cobra.ShellCompDirectiveKeepOrder
}

// check refuses options that do not go together.
func (o *gaugesOptions) check(labels []string) error {
	if o.next && (o.plot != "" || len(labels) > 0) {
		return fault.Fault{Place: fault.Place{Input: "--next"}, What: "it is of the pair and set in use, not of gauges or their plot", Remedy: "leave the other out"}
	}
	for _, label := range labels {
		if strings.HasSuffix(strings.ToLower(label), ".toml") {
			return fault.Fault{Place: fault.Place{Input: "scalepair gauges"}, What: "the build file comes first, then the gauges", Given: label}
		}
	}
	return nil
}

func (a *app) gauges(args []string, o *gaugesOptions) error {
	path, labels := stockArguments(args)
	if err := o.check(labels); err != nil {
		return err
	}
	j, err := a.open(path, nil, o.output.units)
	if err != nil {
		return err
	}
	if o.next {
		r, err := j.Next(o.longest)
		return a.print(&o.output, r, err)
	}
	r, err := j.Gauges(labels)
	if err != nil {
		return err
	}
	svg := report.FitPlot(j.Input).SVG()
	switch {
	case o.plot != "" && svg == "":
		err = fault.Fault{Place: fault.Place{Input: "--plot"}, What: "there is no reading to draw", Remedy: "weigh a string end, or leave --plot out"}
	case o.plot != "":
		if err = document.Write(io.Discard, r, o.output.options(a)); err == nil { // a table that is not there leaves no file
			err = a.plot(o.plot, svg, o.force)
		}
	}
	return a.print(&o.output, r, err)
}
