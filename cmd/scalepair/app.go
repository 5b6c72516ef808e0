package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/show"
	"scalepair/data/fault"
)

// Exit codes.
const (
	exitDone  = 0
	exitInput = 1 // the input does not allow it
	exitUsage = 2 // the command line is wrong
	// exitSignal and above: ended from outside
)

// app is one run of the program: where it prints, and what it may look at.
type app struct {
	out, err io.Writer
	file     *os.File // out where it is a file, to learn its width
	env      func(string) string
	probe    func(*show.Report) // set by completion, which only wants to look
	inputs   []string           // the files that this run has read, not to be written over
}

// usageError is a fault of the command line.
type usageError struct{ error }

// exitError ends a run that has printed all it has to say.
type exitError struct{ code int }

func (e exitError) Error() string { return fmt.Sprintf("exit %d", e.code) }

// run runs one command line and gives the exit code. Results go to out,
// everything else to errOut.
func run(args []string, out, errOut io.Writer) int {
	a := &app{out: &resultOutput{to: out}, err: errOut, env: os.Getenv}
	a.file, _ = out.(*os.File)
	if err := longDash(args); err != nil {
		return a.finish(err)
	}
	root := a.root(args)
	root.SetArgs(args)
	return a.finish(root.Execute())
}

// finish prints an error, one fault a line, and gives the exit code.
func (a *app) finish(err error) int {
	var exit exitError
	var usage usageError
	var stopped interrupted
	if out, ok := a.out.(*resultOutput); ok && out.err != nil {
		err = out.err
	}
	switch {
	case err == nil:
		return exitDone
	case errors.As(err, &exit):
		return exit.code
	}
	fmt.Fprintln(a.err, a.plain(err.Error()))
	switch {
	case errors.As(err, &stopped):
		return stopped.code()
	case errors.As(err, &usage) || onlyFlags(err):
		return exitUsage
	}
	return exitInput
}

// onlyFlags says whether every fault stands on the command line.
func onlyFlags(err error) bool {
	var list fault.List
	var one fault.Fault
	switch {
	case errors.As(err, &list):
	case errors.As(err, &one):
		list = fault.List{one}
	default:
		return false
	}
	for _, f := range list {
		if !strings.HasPrefix(f.Place.Input, "--") {
			return false
		}
	}
	return len(list) > 0
}

// hint prints one line on stderr.
func (a *app) hint(format string, args ...any) {
	fmt.Fprintln(a.err, a.plain(show.Clean(fmt.Sprintf(format, args...))))
}

// plain gives text that the console can show.
func (a *app) plain(text string) string {
	if a.file != nil && show.ForConsole(a.file, a.env).ASCII {
		return show.ToASCII(text)
	}
	return text
}

// maker makes one command of the tree.
type maker struct {
	name string
	make func() *cobra.Command
}

// makers gives the commands that the line args is about: the one that it begins
// with, else all. Setting all of them up takes longer than most runs of one.
func (a *app) makers(args []string) []maker {
	all := []maker{
		{"init", a.initCommand}, {"gauges", a.gaugesCommand}, {"weigh", a.weighCommand}, {"advise", a.adviseCommand},
		{"tension", a.tensionCommand}, {"compare", a.compareCommand}, {"explain", a.explainCommand}, {"layout", a.layoutCommand},
		{"neutral", a.neutralCommand}, {"setout", a.setoutCommand}, {"check", a.checkCommand}, {"draw", a.drawCommand},
		{"sheet", a.sheetCommand},
	}
	for _, m := range all {
		if len(args) > 0 && m.name == args[0] {
			return []maker{m}
		}
	}
	return all
}

// root is the command tree as far as the line args needs it; without args the
// whole.
func (a *app) root(args []string) *cobra.Command {
	root := &cobra.Command{
		Use:   "scalepair",
		Short: "Choose a scale pair for a fanned-fret instrument, and set it out",
		Long: `scalepair helps a builder of multi-scale (fanned-fret) guitars and basses
choose a bass and a treble scale length before a blank is bought: how hard each
string pulls in the wanted tuning with the strings at hand, how it bends, how
near it is to breaking, whether the fan is comfortable and the blank long
enough. Then it sets the chosen fan out on the bench.

Every command takes a build file. Without one it takes build.toml in the
current folder, and without that an invented demo, and says so.`,
		Example: `  scalepair init                  # write a build file and a readings file to begin with
  scalepair advise                # choose a pair
  scalepair layout                # the marks of the chosen pair`,
		SilenceErrors: true, SilenceUsage: true,
		PersistentPreRunE: func(c *cobra.Command, _ []string) error { return emptyFlags(c) },
		Args:              cobra.ArbitraryArgs,
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) > 0 {
				return unknownCommand(c, args[0])
			}
			return c.Help()
		},
	}
	root.SetOut(a.out)
	root.SetErr(a.err)
	root.SetFlagErrorFunc(a.flagError)
	makers := a.makers(args)
	for _, m := range makers {
		root.AddCommand(m.make())
	}
	a.everyday(root, len(makers) > 1)
	return root
}

// refuse prints on stderr why there is no result, and ends the run.
func (a *app) refuse(report *show.Report) error {
	opts := show.Options{Width: 80}
	if f, ok := a.err.(*os.File); ok {
		opts = show.ForConsole(f, a.env)
	}
	if err := show.Write(a.err, report, opts); err != nil {
		return err
	}
	return exitError{exitInput}
}

// write prints a report, or the values of its JSON, whole or not at all. The
// values are asked for where JSON is wanted.
func (a *app) write(o *outputFlags, report *show.Report, values func() any) error {
	if a.probe != nil {
		a.probe(report)
		return errProbed
	}
	opts, err := o.options(a)
	if err != nil {
		return err
	}
	var buf bytes.Buffer
	if opts.Format == show.JSONFormat {
		err = show.JSON(&buf, values())
	} else {
		err = show.Write(&buf, report, opts)
	}
	if err != nil {
		return err
	}
	_, err = a.out.Write(buf.Bytes())
	return err
}
