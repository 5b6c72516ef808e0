package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/answer"
	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
	"scalepair/tension/choice"
)

// adviseOptions are what advise takes beside a build file.
type adviseOptions struct {
	output outputFlags
	over   build.Flags
	full   bool
	blank  answer.Blank
	save   string
	plot   string
	force  bool
}

func (a *app) adviseCommand() *cobra.Command {
	o := &adviseOptions{}
	var paths []string // the arguments without the pick behind --save
	c := &cobra.Command{
		Use:   "advise [build.toml]",
		Short: "Choose the scale pair and the gauges: the main job",
		Long: `advise tries every scale pair of the build's ranges with the gauges given, or the
best ones in stock, and prints the answer first: the pair, its fan, the set, its
tension, how near it feels to what is wanted, and the blank. Feel says which pairs
are good enough; among them the smallest fan, the longest bass and the middle of
the two are the picks, with what stops them. prefer under [feel] names the pick
that is worked out. --blank asks the other way round: what comes out of a blank.`,
		Example: `  scalepair init; scalepair advise
  scalepair advise --full --lengths in
  scalepair advise --tuning "baritone C" --bass "26.5 in to 28 in"
  scalepair advise --save
  scalepair advise --save "longest bass" --force
  scalepair advise --plot map.svg
  scalepair advise --blank "500 x 70 mm"`,
		Args: func(c *cobra.Command, args []string) error {
			var err error
			if paths, err = o.takePick(args); err != nil {
				return err
			}
			return buildFile(c, paths)
		},
		RunE: func(*cobra.Command, []string) error {
			path := first(paths)
			if o.blank != (answer.Blank{}) {
				return a.fromBlank(path, o)
			}
			return a.advise(path, o)
		},
	}
	o.output.add(c)
	o.over.Add(c.Flags())
	f := c.Flags()
	o.over.Add(f, "trials", "seed")
	f.BoolVar(&o.full, "full", false, "add the trade-off, the bends, the blanks, what was asked and what was dropped")
	answer.TextVar(f, &o.blank, "blank", "what comes out of a blank of this `size`, such as \"500 x 70 mm\"; needs no readings")
	f.StringVar(&o.save, "save", "", "write a `pick` into the build file as [chosen]: smallest fan, middle, longest bass ... (default: the one advised)")
	f.Lookup("save").NoOptDefVal = answer.Preferred
	fileVar(f, &o.plot, ".svg", "plot", "draw the map of scale pairs into this SVG `file`")
	f.BoolVar(&o.force, "force", false, "with --save: replace a pair that is already chosen; with --plot: a file that exists")
	return c
}

// takePick takes the pick that stands behind --save out of the arguments, where
// a blank parts them. What is neither a pick nor a file was meant for one.
func (o *adviseOptions) takePick(args []string) ([]string, error) {
	if o.save == "" || len(args) == 0 || o.save != answer.Preferred && o.save != args[0] {
		return args, nil
	}
	var k choice.PickKind
	if err := k.UnmarshalText([]byte(args[0])); err != nil && isPath(args[0]) {
		return args, nil
	} else if err != nil {
		return nil, usageError{fault.Fault{Place: fault.Place{Input: "--save"}, What: "there is no such pick, and no such file", Given: args[0],
			Remedy: fmt.Sprintf("the picks are %v, %v, %v, %v and %v", choice.SmallestFan, choice.MiddlePick, choice.LongestBass, choice.ClearEnough, choice.BestFeel)}}
	}
	o.save = args[0]
	return args[1:], nil
}

func (a *app) advise(path string, o *adviseOptions) error {
	j, err := a.open(path, &o.over, o.output.units)
	if err != nil {
		return err
	}
	if err := o.checkSave(j.Run); err != nil {
		return err
	}
	found, err := j.Find(o.save)
	if err != nil {
		return err
	}
	if o.save != "" {
		text, err := j.Keep(found.Pick.Pair)
		if err == nil {
			err = a.rewriteFile(j.Run.Path, j.Run.Source, text)
		}
		if err != nil {
			return err
		}
		a.hint("%s: saved %s, the pick %q, as [chosen]", j.Run.Path, j.Pair(found.Pick.Bass, found.Pick.Treble), found.Pick.Kind)
	}
	advice := report.NewAdvice(j.Input, found, o.full || len(o.output.only) > 0)
	if o.plot != "" {
		err = a.plot(o.plot, advice.Map(), o.force)
	}
	return a.print(&o.output, advice, err)
}

// checkSave refuses a save that cannot be made, before anything is worked out.
func (o *adviseOptions) checkSave(run *build.Run) error {
	switch {
	case o.save == "":
		return nil
	case run.Demo():
		return fault.Fault{Place: fault.Place{Input: "--save"}, What: "the embedded demo cannot be changed", Remedy: "scalepair init writes a build file of your own"}
	case run.Build.Given("chosen") && !o.force:
		return fault.Fault{Place: run.Build.Place("chosen"), What: "a pair is already chosen", Remedy: "--force replaces it"}
	}
	return nil
}

// fromBlank answers what comes out of a blank, without a build file too.
func (a *app) fromBlank(path string, o *adviseOptions) error {
	run := &build.Run{}
	var err error
	if _, missing := os.Stat(build.DefaultFile); path == "" && errors.Is(missing, fs.ErrNotExist) {
		run.Build, err = build.Read([]byte(answer.BareBuild), "without a build file", &o.over)
	} else {
		run, err = build.Open(path, &o.over)
	}
	if err != nil {
		return err
	}
	r, err := answer.FromBlank(run, o.output.units, o.blank)
	return a.print(&o.output, r, err)
}
