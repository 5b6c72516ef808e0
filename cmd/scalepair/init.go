package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/job"
	"scalepair/data/fault"
)

// startOptions are what init takes beside a folder.
type startOptions struct {
	build.Start
	setStrings bool // --strings was given
	force      bool
}

func (a *app) initCommand() *cobra.Command {
	o := &startOptions{}
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
		RunE: func(c *cobra.Command, args []string) error {
			o.setStrings = c.Flags().Changed("strings")
			if err := o.check(); err != nil {
				return err
			}
			return a.start(first(args), o)
		},
	}
	f := c.Flags()
	f.StringVar(&o.Tuning, "tuning", "", "`notes` low to high, or a named tuning")
	f.IntVar(&o.Strings, "strings", 6, "`number` of strings, when no tuning is given")
	f.BoolVar(&o.Bass, "bass", false, "a bass, when no tuning is given")
	f.StringVar(&o.Name, "name", "", "`name` of the build")
	textVar(f, &o.Unit, "lengths", "`unit` of lengths: mm, in, or in64 for fractions to 1/64 (default: mm)")
	f.BoolVar(&o.force, "force", false, "replace files that exist")
	return c
}

// check reads the flags that are not settled by the parser, all at once.
func (o *startOptions) check() error {
	var faults fault.List
	if o.setStrings && (o.Strings < fewestUsual || o.Strings > mostUsual) {
		faults.Add(fault.Place{Input: "--strings"}, "no usual tuning has so many strings", strconv.Itoa(o.Strings),
			fmt.Sprintf("give %d to %d, or the notes with --tuning", fewestUsual, mostUsual))
	}
	return faults.Err()
}

// Instruments of these numbers of strings have a usual tuning.
const fewestUsual, mostUsual = 4, 9

// template is the two files to begin with.
func (o *startOptions) template() (buildText, readings []byte, err error) {
	buildText, readings, err = build.Template(o.Start)
	if err != nil {
		at := "--strings"
		if o.Tuning != "" {
			at = "--tuning"
		}
		var faults fault.List
		faults.Include(fault.Place{Input: at}, err)
		return nil, nil, faults.Err()
	}
	return buildText, readings, nil
}

func (a *app) start(folder string, o *startOptions) error {
	buildText, readings, err := o.template()
	if err != nil {
		return err
	}
	path := filepath.Join(folder, job.DefaultFile)
	files := []newFile{{Path: path, Text: buildText}, {Path: filepath.Join(folder, "readings.csv"), Text: readings}}
	if folder != "" {
		if err := os.MkdirAll(folder, 0o777); err != nil {
			return err
		}
	}
	if err := a.writeFiles(files, o.force); err != nil {
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
