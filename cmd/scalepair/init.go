package main

import (
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/job"
	"scalepair/data/fault"
)

func (a *app) initCommand() *cobra.Command {
	var s build.Start
	var force bool
	var lengths string
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
		RunE: func(_ *cobra.Command, args []string) error {
			switch lengths {
			case "mm":
			case "in":
				s.Inches = true
			default:
				return fault.Fault{Place: fault.Place{Input: "--lengths"}, What: "no such unit here", Given: lengths, Remedy: "give mm or in"}
			}
			return a.start(first(args), s, force)
		},
	}
	f := c.Flags()
	f.StringVar(&s.Tuning, "tuning", "", "`notes` low to high, or a named tuning")
	f.IntVar(&s.Strings, "strings", 6, "`number` of strings, when no tuning is given")
	f.BoolVar(&s.Bass, "bass", false, "a bass, when no tuning is given")
	f.StringVar(&s.Name, "name", "", "`name` of the build")
	f.StringVar(&lengths, "lengths", "mm", "`unit` of lengths: mm or in")
	f.BoolVar(&force, "force", false, "replace files that exist")
	return c
}

func (a *app) start(folder string, s build.Start, force bool) error {
	buildText, readings, err := build.Template(s)
	if err != nil {
		return err
	}
	path := filepath.Join(folder, job.DefaultFile)
	files := []newFile{{path, buildText}, {filepath.Join(folder, "readings.csv"), readings}}
	if folder != "" {
		if err := makeFolder(folder); err != nil {
			return err
		}
	}
	if err := a.writeFiles(files, force); err != nil {
		return err
	}
	for _, f := range files {
		a.hint("wrote %s", f.path)
	}
	a.hint("next: weigh your string ends into %s, then run: scalepair advise %s", files[1].path, pasteable(path))
	return nil
}

// pasteable quotes a path with blanks so that every shell takes it as one.
func pasteable(path string) string {
	if strings.Contains(path, " ") {
		return `"` + path + `"`
	}
	return path
}
