package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/job"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension/choice"
)

// adviseOptions are what advise takes beside a build file.
type adviseOptions struct {
	output outputFlags
	over   build.Flags
	front  bool
	save   bool
	rank   int
	force  bool
}

func (a *app) adviseCommand() *cobra.Command {
	o := &adviseOptions{}
	c := &cobra.Command{
		Use:   "advise [build.toml]",
		Short: "Choose the scale pair and the gauges: the main job",
		Long: `advise tries every scale pair of the build's grid with the gauges given, or the
best ones of the stock, and prints the best pairs with what each costs, the
strings of the best one, its fan, what was dropped and why, and how far the
weighing can tell pairs apart.`,
		Example: `  scalepair advise
  scalepair advise --tuning "baritone C" --lengths in
  scalepair advise --bass "690 mm" --format markdown`,
		Args: buildFile,
		RunE: func(c *cobra.Command, args []string) error {
			if c.Flags().Changed("rank") && !o.save {
				return usageError{fault.Fault{Place: fault.Place{Input: "--rank"}, What: "a rank is for saving", Remedy: "say --save too"}}
			}
			return a.advise(first(args), o)
		},
	}
	o.output.add(c)
	o.over.Add(c.Flags())
	f := c.Flags()
	f.BoolVar(&o.front, "front", false, "print the whole trade-off front")
	o.over.AddTrials(f)
	f.BoolVar(&o.save, "save", false, "write the best pair into the build file as [chosen]")
	f.IntVar(&o.rank, "rank", 1, "with --save: write the pair of this `rank` instead")
	f.BoolVar(&o.force, "force", false, "with --save: replace a pair that is already chosen")
	return c
}

// frontRows is how much of the trade-off front a table shows unless told.
const frontRows = 12

func (a *app) advise(path string, o *adviseOptions) error {
	j, err := a.load(path, &o.over)
	if err != nil {
		return err
	}
	if err := checkSave(j, o); err != nil {
		return err
	}
	in, err := a.input(j, &o.output)
	if err != nil {
		return err
	}
	advice, err := a.findAdvice(in)
	if err != nil {
		return err
	}
	if !o.front {
		advice.FrontRows = frontRows
	}
	if have := len(advice.Result.Compared); o.save && have > 0 && o.rank > have {
		return fault.Fault{Place: fault.Place{Input: "--rank"}, What: "there is no pair of that rank", Given: fmt.Sprint(o.rank),
			Remedy: fmt.Sprintf("%d pairs were compared", have)}
	}
	if advice.Best == nil {
		return a.refuse(report.Advise(in, advice))
	}
	if o.save {
		if err := a.saveChosen(j, in, advice, o); err != nil {
			return err
		}
	}
	return a.write(&o.output, report.Advise(in, advice), func() any { return report.AdviceValues(in, advice) })
}

// findAdvice searches, draws and works out the best pair in full.
func (a *app) findAdvice(in *report.Input) (*report.Advice, error) {
	done := a.working("trying pairs")
	watch := choice.Watch{Stop: a.ctx.Done()}
	advice := &report.Advice{Result: in.Plan.SearchWatched(watch)}
	done()
	if err := a.interrupted(); err != nil || len(advice.Result.Best) == 0 {
		return advice, err
	}
	if conf := in.Job.Build.Confidence; conf.Trials > 0 {
		done = a.working("running trials")
		advice.Confidence = in.Plan.ConfidenceWatched(advice.Result, in.Job.Stock.Drawer(), conf.Trials, uint64(conf.Seed), watch)
		done()
		if err := a.interrupted(); err != nil {
			return nil, err
		}
	}
	best := advice.Result.Best[0]
	var err error
	if advice.Best, err = in.Plan.Detail(best.BassMM, best.TrebleMM, best.Gauges); err != nil {
		return nil, err
	}
	advice.Layout, err = fan.New(advice.Best.Spec)
	return advice, err
}

// checkSave refuses a save that cannot be made, before anything is printed.
func checkSave(j *job.Job, o *adviseOptions) error {
	at := fault.Place{Input: "--save"}
	switch {
	case !o.save:
		return nil
	case j.Demo():
		return fault.Fault{Place: at, What: "the embedded demo cannot be changed", Remedy: "scalepair init writes a build file of your own"}
	case o.rank < 1:
		return fault.Fault{Place: fault.Place{Input: "--rank"}, What: "ranks count from 1", Given: fmt.Sprint(o.rank), Remedy: "give the rank of the pair to keep: --save --rank 2"}
	case j.Build.Given("chosen") && !o.force:
		return fault.Fault{Place: j.Build.Place("chosen"), What: "a pair is already chosen", Remedy: "--force replaces it"}
	}
	return nil
}

// saveChosen writes a pair of the ranking into the build file, and keeps the
// rest of the file as it is.
func (a *app) saveChosen(j *job.Job, in *report.Input, advice *report.Advice, o *adviseOptions) error {
	pick := advice.Result.Compared[o.rank-1]
	n := j.Neck().Neutral
	kept := build.Chosen{
		Pair: build.Pair{Bass: unit.MM(pick.BassMM), Treble: unit.MM(pick.TrebleMM)}, Neutral: &n,
	}
	for _, g := range pick.Gauges {
		kept.Gauges = append(kept.Gauges, in.Plan.Stock()[g].Label)
	}
	text, err := kept.Save(j.Source, j.Path, j.Build.LengthUnit)
	if err != nil {
		return err
	}
	if err := a.rewriteFile(j.Path, j.Source, text); err != nil {
		return err
	}
	a.hint("%s: saved pair %d, %s, as [chosen]", j.Path, o.rank, in.Pair(pick.BassMM, pick.TrebleMM))
	return nil
}
