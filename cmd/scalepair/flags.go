package main

import (
	"encoding"
	"os"
	"strconv"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/fault"
	"scalepair/data/unit"
)

// textFlag is a flag whose value reads itself, and says what is wrong with it.
type textFlag struct {
	encoding.TextUnmarshaler
	given string
}

func (f *textFlag) Set(text string) error {
	f.given = text
	return f.UnmarshalText([]byte(text))
}

// String returns what was given: "" before, so that help shows no default.
func (f *textFlag) String() string { return f.given }

// Type is the word that help shows where the usage has none.
func (f *textFlag) Type() string { return "value" }

// textVar defines a flag that is read into a value by itself.
func textVar(f *pflag.FlagSet, into encoding.TextUnmarshaler, name, usage string) {
	f.Var(&textFlag{TextUnmarshaler: into}, name, usage)
}

// outputFlags say how a result is printed.
type outputFlags struct {
	flags   *pflag.FlagSet
	format  document.Format
	lengths unit.LengthUnit
	forces  unit.ForceUnit
	only    []string
	width   int
	ascii   bool
}

func (o *outputFlags) add(c *cobra.Command) {
	o.addUnits(c)
	f := c.Flags()
	textVar(f, &o.format, "format", "`kind` of output: text, markdown, csv, html or json (default: text)")
	f.StringSliceVar(&o.only, "only", nil, "print these `tables` only, by name")
	f.IntVar(&o.width, "width", 0, "line width in `letters` (default: the terminal's, 80 when piped)")
	f.BoolVar(&o.ascii, "ascii", false, "write +/- and 1/2 where the console has no ± and ½")
}

// addUnits adds the units alone, for a command that prints no result.
func (o *outputFlags) addUnits(c *cobra.Command) {
	o.addLengths(c)
	textVar(o.flags, &o.forces, "forces", "`unit` of forces: N, lbf or kgf (default: the build file's)")
}

// addLengths adds the unit of lengths alone.
func (o *outputFlags) addLengths(c *cobra.Command) {
	o.flags = c.Flags()
	textVar(o.flags, &o.lengths, "lengths", "`unit` of lengths: mm, in, or in64 for fractions to 1/64 (default: the build file's)")
}

// options is how to print, on the console at hand.
func (o *outputFlags) options(a *app) (document.Options, error) {
	out := document.Options{Width: pipedWidth}
	if a.file != nil {
		out = console(a.file, os.Getenv)
	}
	if o.width != 0 {
		out.Width = o.width
		if o.width < 40 {
			return out, fault.Fault{Place: fault.Place{Input: "--width"}, What: "the width is too small for a table", Given: strconv.Itoa(o.width), Remedy: "give 40 or more"}
		}
	}
	out.Format, out.Only, out.ASCII = o.format, o.only, out.ASCII || o.ascii
	return out, nil
}

// units are the units to print in: the flags', else the build file's.
func (o *outputFlags) units(j *build.Run) table.Units {
	return o.unitsOver(table.Units{Length: j.Build.LengthUnit, Force: j.Build.ForceUnit})
}

// unitsOver puts the flags' units over others.
func (o *outputFlags) unitsOver(u table.Units) table.Units {
	if o.flags.Changed("lengths") {
		u.Length = o.lengths
	}
	if o.flags.Changed("forces") {
		u.Force = o.forces
	}
	return u
}

func first(args []string) string {
	if len(args) == 0 {
		return ""
	}
	return args[0]
}
