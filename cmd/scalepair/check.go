package main

import (
	"strings"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/answer"
	"scalepair/cmd/scalepair/build"
	"scalepair/data/fault"
)

// checkOptions are what check takes beside its files.
type checkOptions struct {
	output outputFlags
	over   build.Flags
	check  answer.Check
	form   bool
}

func (a *app) checkCommand() *cobra.Command {
	o := &checkOptions{}
	c := &cobra.Command{
		Use:   "check measured.csv [build.toml]",
		Short: "Judge measured marks before the saw, and name the likely slip",
		Long: `check takes what you measured of the finished marks, on either line, by ruler
from the nut and by calipers from mark to mark, with both diagonals and the nut
offset where you have them. It puts the two passes together, says how far every
mark is off in millimetres and in cents, and which reading, step or mark is
the likely slip. It ends with 0 in tolerance, with 1 otherwise,
also where marks that are not sure have to be measured again.

  scalepair check --form > measured.csv   makes a form to fill in
  scalepair check measured.csv            judges it

Leave empty what you did not measure. The form does not name the nominal values,
so that nobody reads what they expect.`,
		Example: `  scalepair check --form > measured.csv
  scalepair check --form --lengths in > measured.csv`,
		Args: func(c *cobra.Command, args []string) error { return checkArgs(c, args, o.form) },
		RunE: func(_ *cobra.Command, args []string) error {
			if o.form {
				return a.form(first(args), o)
			}
			return a.check(args[0], first(args[1:]), o)
		},
	}
	o.output.add(c)
	o.over.Add(c.Flags())
	f := c.Flags()
	o.check.Flags(f)
	f.BoolVar(&o.form, "form", false, "print an empty form for the measuring, as CSV")
	return c
}

// checkArgs wants the measured marks first, then a build file; for a form only
// the build file.
func checkArgs(c *cobra.Command, args []string, form bool) error {
	refuse := func(what, given, remedy string) error {
		return usageError{fault.Fault{Place: fault.Place{Input: c.CommandPath()}, What: what, Given: given, Remedy: remedy}}
	}
	switch {
	case form:
		return buildFile(c, args)
	case len(args) == 0:
		return refuse("the measured marks are missing", "", "scalepair check measured.csv; an empty form to fill in comes from scalepair check --form > measured.csv")
	case strings.HasSuffix(strings.ToLower(args[0]), ".toml"):
		return refuse("the measured marks come first, then the build file", args[0], "scalepair check measured.csv "+args[0])
	case len(args) > 2:
		return refuse("one file of measured marks and one build file at a time", strings.Join(args, " "), "quote a path with blanks")
	}
	return nil
}

// form prints an empty measurement file.
func (a *app) form(path string, o *checkOptions) error {
	j, err := a.open(path, &o.over, o.output.units)
	if err != nil {
		return err
	}
	text, err := j.Form()
	if err != nil {
		return err
	}
	_, err = a.out.Write(text)
	return err
}

func (a *app) check(measured, path string, o *checkOptions) error {
	readings, err := build.ReadMeasured(measured)
	if err != nil {
		return err
	}
	j, err := a.open(path, &o.over, o.output.units)
	if err != nil {
		return err
	}
	r, pass, err := j.Check(o.check, readings)
	if err != nil {
		return err
	}
	if err := a.print(&o.output, r, nil); err != nil {
		return err
	}
	if !pass {
		return exitError{exitInput}
	}
	return nil
}
