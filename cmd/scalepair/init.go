package main

import (
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/atomicfile"
	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/job"
	"scalepair/data/fault"
)

func (a *app) initCommand() *cobra.Command {
	var start build.Start
	var force bool
	c := &cobra.Command{
		Use:   "init [folder]",
		Short: "Write a commented build file and a readings file to begin with",
		Long: `init writes build.toml and readings.csv into a folder, the current one unless
named. The readings in it are invented and marked so: replace them with your
own, row by row. Nothing that exists is overwritten without --force.`,
		Example: `  scalepair init
  scalepair init my-eight --tuning "eight-string F#" --lengths in
  scalepair init my-bass --strings 5 --bass`,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) > 1 {
				return usageError{fault.Fault{Place: fault.Place{Input: "scalepair init"}, What: "one folder at a time",
					Given: strings.Join(args, " "), Remedy: "quote a path with blanks"}}
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error { return a.start(first(args), start, force) },
	}
	f := c.Flags()
	f.StringVar(&start.Tuning, "tuning", "", "`notes` low to high, or a named tuning")
	f.IntVar(&start.Strings, "strings", 0, "`number` of strings, when no tuning is given (default: 6)")
	f.BoolVar(&start.Bass, "bass", false, "a bass, when no tuning is given")
	f.StringVar(&start.Name, "name", "", "`name` of the build")
	job.TextVar(f, &start.Unit, "lengths", "`unit` of lengths: mm, in, or in64 for fractions to 1/64 (default: mm)")
	f.BoolVar(&force, "force", false, "replace files that exist")
	return c
}

func (a *app) start(folder string, start build.Start, force bool) error {
	buildText, readings, err := build.Template(start)
	if err != nil {
		at := "--strings"
		if start.Tuning != "" {
			at = "--tuning"
		}
		var faults fault.List
		faults.Include(fault.Place{Input: at}, err)
		return faults.Err()
	}
	path := filepath.Join(folder, build.DefaultFile)
	files := []newFile{{path, buildText}, {filepath.Join(folder, "readings.csv"), readings}}
	if folder != "" {
		if err := os.MkdirAll(folder, 0o777); err != nil {
			return fault.Fault{Place: fault.Place{Input: folder}, What: "the folder cannot be made: " + atomicfile.Reason(err), Remedy: "name another"}
		}
	}
	if err := a.writeFiles(files, force); err != nil {
		return err
	}
	for _, f := range files {
		a.hint("wrote %s", f.Path)
	}
	a.hint("next: weigh your string ends into %s, then run: scalepair advise %s", files[1].Path, pasteable(path))
	return nil
}

// pasteable quotes a path with blanks so that every shell takes it as one.
func pasteable(path string) string {
	if strings.Contains(path, " ") {
		return `"` + path + `"`
	}
	return path
}
