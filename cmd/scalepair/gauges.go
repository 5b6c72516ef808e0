package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/job"
	"scalepair/cmd/scalepair/report"
	"scalepair/cmd/scalepair/show"
	"scalepair/data/fault"
	"scalepair/gauges"
	"scalepair/gauges/fit"
)

// gaugesOptions are what gauges takes beside a build file and gauges.
type gaugesOptions struct {
	output outputFlags
	plot   string
	force  bool
}

func (a *app) gaugesCommand() *cobra.Command {
	o := &gaugesOptions{}
	c := &cobra.Command{
		Use:   "gauges [build.toml] [gauge...]",
		Short: "Linear densities of the stock, how sure they are, and readings that stand off",
		Long: `gauges prints what your own readings say of every gauge in stock: its unit
weight with uncertainty, the density it stands for, how far it stands from the
fit of its kind, and which readings to look at again. With gauges named, it
prints those with every reading.

` + report.Craft + `
Or hang a weight on the string and read the pitch: a row of the kind 'hung'.
` + wrapHelp(gauges.HungCaution) + `
The breaking load of a gauge is printed when you name it.`,
		Example: `  scalepair gauges
  scalepair gauges w46 p10
  scalepair gauges --lengths in --only gauges --format csv
  scalepair gauges --format html > gauges.html`,
		ValidArgsFunction: completeStock,
		RunE:              func(_ *cobra.Command, args []string) error { return a.gauges(args, o) },
	}
	o.output.add(c)
	f := c.Flags()
	f.StringVar(&o.plot, "plot", "", "draw the fits with their gauges into this SVG `file`")
	f.BoolVar(&o.force, "force", false, "with --plot: replace a file that exists")
	return c
}

// wrapHelp breaks a text to the width of help texts.
func wrapHelp(text string) string {
	const width = 79
	line, out := 0, strings.Builder{}
	for _, w := range strings.Fields(text) {
		switch {
		case line > 0 && line+1+len(w) > width:
			out.WriteByte('\n')
			line = 0
		case line > 0:
			out.WriteByte(' ')
			line++
		}
		out.WriteString(w)
		line += len(w)
	}
	return out.String()
}

// stockArguments parts the build file from the gauges behind it. The first
// argument is a file when there is one of that name, or when its name or path
// looks like one.
func stockArguments(args []string) (path string, labels []string) {
	if len(args) == 0 {
		return "", nil
	}
	info, err := os.Stat(args[0])
	isFile := err == nil && !info.IsDir()
	if isFile || strings.HasSuffix(strings.ToLower(args[0]), ".toml") || strings.ContainsAny(args[0], `/\`) {
		return args[0], args[1:]
	}
	return "", args
}

func completeStock(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	path, _ := stockArguments(args)
	j, err := job.Load(path, nil)
	if err != nil {
		return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
	}
	var out []string
	for _, g := range j.Stock.Gauges {
		out = append(out, g.Label+"\t"+g.Family)
	}
	return out, cobra.ShellCompDirectiveKeepOrder
}

// check refuses a plot that would not be what its name says.
func (o *gaugesOptions) check() error {
	if o.plot == "" || strings.EqualFold(filepath.Ext(o.plot), ".svg") {
		return nil
	}
	return fault.Fault{Place: fault.Place{Input: "--plot"}, What: "the plot is an SVG drawing", Given: o.plot,
		Remedy: fmt.Sprintf("name the file %q; a browser shows it and prints it", strings.TrimSuffix(o.plot, filepath.Ext(o.plot))+".svg")}
}

func (a *app) gauges(args []string, o *gaugesOptions) error {
	if err := o.check(); err != nil {
		return err
	}
	path, labels := stockArguments(args)
	opts, err := o.output.options(a)
	if err != nil {
		return err
	}
	j, err := a.load(path, nil)
	if err != nil {
		return err
	}
	units := o.output.units(j)
	in := &report.Input{Job: j, Units: units}
	shown, err := named(j.Stock, labels)
	if err != nil {
		return err
	}
	svg := ""
	if o.plot != "" || opts.Format == document.HTML && len(labels) == 0 {
		if svg, err = fitPlot(in, o); err != nil {
			return err
		}
	}
	return a.writeGauges(in, shown, len(labels) > 0, svg, o)
}

// writeGauges prints the report when the plot, if one is wanted, can be
// written too.
func (a *app) writeGauges(in *report.Input, shown []gauges.Gauge, some bool, svg string, o *gaugesOptions) error {
	var r *show.Report
	if some {
		r = report.GaugesShown(in, shown)
	} else {
		r = report.Gauges(in, svg)
	}
	var text bytes.Buffer
	held := *a
	held.out = &text
	if err := held.write(&o.output, r, func() any { return report.GaugesValues(in, shown) }); err != nil {
		return err
	}
	if o.plot != "" {
		if err := a.writeFiles([]newFile{{Path: o.plot, Text: []byte(svg)}}, o.force); err != nil {
			return err
		}
		a.hint("wrote %s", o.plot)
	}
	_, err := a.out.Write(text.Bytes())
	return err
}

// named gives the gauges of those labels, all of them without any. Every label
// that is not in stock is a fault.
func named(s fit.Stock, labels []string) ([]gauges.Gauge, error) {
	if len(labels) == 0 {
		return s.Gauges, nil
	}
	var out []gauges.Gauge
	var faults fault.List
	for _, label := range labels {
		g, err := s.Lookup(label)
		if err != nil {
			faults.Include(fault.Place{Input: "scalepair gauges"}, err)
			continue
		}
		out = append(out, g)
	}
	return out, faults.Err()
}

// fitPlot draws the fits as one SVG, "" where there is nothing to draw and
// nobody asked for a file.
func fitPlot(in *report.Input, o *gaugesOptions) (string, error) {
	plot := report.FitPlot(in)
	if len(plot.Points) == 0 {
		if o.plot == "" {
			return "", nil
		}
		return "", fault.Fault{Place: fault.Place{Input: "--plot"}, What: "there is no reading to draw", Remedy: "weigh a string end, or leave --plot out"}
	}
	return plot.SVG(), nil
}
