package main

import (
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/answer"
	"scalepair/cmd/scalepair/atomicfile"
	"scalepair/cmd/scalepair/build"
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
	answer.StartFlags(f, &start)
	f.BoolVar(&force, "force", false, "replace files that exist")
	return c
}

func (a *app) start(folder string, start build.Start, force bool) error {
	buildText, readings, err := answer.Start(start)
	if err != nil {
		return err
	}
	path := filepath.Join(folder, build.DefaultFile)
	files := []newFile{{path, buildText}, {filepath.Join(folder, build.ReadingsFile), readings}}
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
