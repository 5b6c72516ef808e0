package main

import (
	"strconv"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/job"
	"scalepair/cmd/scalepair/show"
	"scalepair/data/fault"
	"scalepair/data/unit"
)

// outputFlags say how a result is printed.
type outputFlags struct {
	format, lengths, forces string
	only                    []string
	width                   int
	ascii                   bool
}

func (o *outputFlags) add(c *cobra.Command) {
	f := c.Flags()
	f.StringVar(&o.format, "format", "table", "`kind` of output: table, markdown, csv, html or json")
	f.StringVar(&o.lengths, "lengths", "", "`unit` of lengths: mm, in, or in64 for fractions to 1/64 (default: the build file's)")
	f.StringVar(&o.forces, "forces", "", "`unit` of forces: N, lbf or kgf (default: the build file's)")
	f.StringSliceVar(&o.only, "only", nil, "print these `tables` only, by name")
	f.IntVar(&o.width, "width", 0, "line width in `letters` (default: the terminal's, 80 when piped)")
	f.BoolVar(&o.ascii, "ascii", false, "write +/- and 1/2 where the console has no ± and ½")
}

// options checks the flags, all at once.
func (o *outputFlags) options(a *app) (show.Options, error) {
	var faults fault.List
	out := show.Options{Width: 80}
	if a.file != nil {
		out = show.ForConsole(a.file, a.env)
	}
	var err error
	if out.Format, err = show.ParseFormat(o.format); err != nil {
		faults.Include(fault.Place{Input: "--format"}, err)
	}
	if o.width != 0 {
		out.Width = o.width
		if o.width < 40 {
			faults.Add(fault.Place{Input: "--width"}, "the width is too small for a table", strconv.Itoa(o.width), "give 40 or more")
		}
	}
	out.Only = o.only
	out.ASCII = out.ASCII || o.ascii
	return out, faults.Err()
}

// units gives the units to print in: the flags', else the build file's.
func (o *outputFlags) units(j *job.Job) (show.Units, error) {
	return o.unitsOver(show.Units{Length: j.Build.LengthUnit, Force: j.Build.ForceUnit})
}

// unitsOver puts the flags' units over others.
func (o *outputFlags) unitsOver(u show.Units) (show.Units, error) {
	var faults fault.List
	var err error
	if o.lengths != "" {
		if u.Length, err = unit.ParseLengthUnit(o.lengths); err != nil {
			faults.Include(fault.Place{Input: "--lengths"}, err)
		}
	}
	if o.forces != "" {
		if u.Force, err = unit.ParseForceUnit(o.forces); err != nil {
			faults.Include(fault.Place{Input: "--forces"}, err)
		}
	}
	return u, faults.Err()
}

func first(args []string) string {
	if len(args) == 0 {
		return ""
	}
	return args[0]
}
