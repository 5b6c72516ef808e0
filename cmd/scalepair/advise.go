package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/build"
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
	full   bool
	blank  string
	save   string
	plot   string
	force  bool
}

// preferred is the value of --save that names no pick.
const preferred = "the pick advised"

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
			if o.blank != "" {
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
	f.StringVar(&o.blank, "blank", "", "what comes out of a blank of this `size`, such as \"500 x 70 mm\"; needs no readings")
	f.StringVar(&o.save, "save", "", "write a `pick` into the build file as [chosen]: smallest fan, middle, longest bass ... (default: the one advised)")
	f.Lookup("save").NoOptDefVal = preferred
	_ = c.RegisterFlagCompletionFunc("save", words(choice.SmallestFan.String(), choice.MiddlePick.String(), choice.LongestBass.String(), choice.ClearEnough.String(), choice.BestFeel.String()))
	textVar(f, namedFile{&o.plot, ".svg"}, "plot", "draw the map of scale pairs into this SVG `file`")
	f.BoolVar(&o.force, "force", false, "with --save: replace a pair that is already chosen; with --plot: a file that exists")
	return c
}

// takePick takes the pick that stands behind --save out of the arguments, where
// a blank parts them. What is neither a pick nor a file was meant for one.
func (o *adviseOptions) takePick(args []string) ([]string, error) {
	if o.save == "" || len(args) == 0 || o.save != preferred && o.save != args[0] {
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

// pick gives the pick of a result that is to be saved.
func (o *adviseOptions) pick(r *choice.Result) (*choice.Pick, error) {
	if o.save == preferred || o.save == "" {
		return r.Preferred(), nil
	}
	var k choice.PickKind
	err := k.UnmarshalText([]byte(o.save))
	pick := r.Pick(k)
	if err == nil && pick == nil {
		var have []string
		for _, p := range r.Picks {
			have = append(have, p.Kind.String())
		}
		err = fault.Fault{What: "there is no such pick here", Given: o.save, Remedy: "there is: " + strings.Join(have, ", ")}
	}
	var faults fault.List
	faults.Include(fault.Place{Input: "--save"}, err)
	return pick, faults.Err()
}

func (a *app) advise(path string, o *adviseOptions) error {
	j, err := a.load(path, &o.over)
	if err != nil {
		return err
	}
	if err := o.checkSave(j); err != nil {
		return err
	}
	in, err := a.input(j, &o.output)
	if err != nil {
		return err
	}
	found, err := a.find(in, o)
	if err != nil {
		return err
	}
	if o.save != "" {
		if err := a.saveChosen(in, found.Pick); err != nil {
			return err
		}
	}
	advice := report.NewAdvice(in, found, o.full || len(o.output.only) > 0)
	if o.plot != "" {
		if err := a.plot(o.plot, advice.Map(), o.force); err != nil {
			return err
		}
	}
	return a.print(&o.output, advice)
}

// find searches, and works out the pick in use with all that is said of it.
func (a *app) find(in *report.Input, o *adviseOptions) (*report.Found, error) {
	defer a.working("trying pairs")()
	r, err := in.Plan.Search(a.ctx)
	if err != nil {
		return nil, a.orInterrupted(err)
	}
	f := &report.Found{Result: r}
	if f.Pick, err = o.pick(r); err != nil {
		return nil, err
	}
	if f.Pick == nil {
		return nil, in.NoPair(r, fault.Place{Input: in.Run.Build.File})
	}
	if f.Detail, err = in.Plan.Detail(f.Pick.Bass, f.Pick.Treble, f.Pick.Gauges); err != nil {
		return nil, err
	}
	if f.Taste, err = in.Plan.Taste(a.ctx, r); err != nil {
		return nil, a.orInterrupted(err)
	}
	if f.LimitCosts, err = in.Plan.LimitCosts(a.ctx, r); err != nil {
		return nil, a.orInterrupted(err)
	}
	if f.Lacks, f.With, err = in.Run.Lacks(a.ctx, in.Plan, r, f.Pick); err != nil {
		return nil, a.orInterrupted(err)
	}
	if c := in.Run.Build.Confidence; c.Trials > 0 {
		if f.Confidence, err = in.Plan.Confidence(a.ctx, r, in.Run.Stock.Drawer(), c.Trials, uint64(c.Seed)); err != nil {
			return nil, a.orInterrupted(err)
		}
	}
	return f, nil
}

// orInterrupted says that a run was ended from outside where that is why it
// failed.
func (a *app) orInterrupted(err error) error {
	if stopped := a.interrupted(); stopped != nil {
		return stopped
	}
	return err
}

// checkSave refuses a save that cannot be made, before anything is worked out.
func (o *adviseOptions) checkSave(j *build.Run) error {
	switch {
	case o.save == "":
		return nil
	case j.Demo():
		return fault.Fault{Place: fault.Place{Input: "--save"}, What: "the embedded demo cannot be changed", Remedy: "scalepair init writes a build file of your own"}
	case j.Build.Given("chosen") && !o.force:
		return fault.Fault{Place: j.Build.Place("chosen"), What: "a pair is already chosen", Remedy: "--force replaces it"}
	}
	return nil
}

// saveChosen writes a pick into the build file, and keeps the rest of the file
// as it is.
func (a *app) saveChosen(in *report.Input, p *choice.Pick) error {
	j := in.Run
	neutral := j.Neck().Neutral
	kept := build.Chosen{Pair: build.Pair{Bass: p.Bass, Treble: p.Treble}, Neutral: &neutral}
	for _, g := range p.Gauges {
		kept.Gauges = append(kept.Gauges, in.Plan.Stock()[g].Label)
	}
	text, err := kept.Save(j.Source, j.Path, j.Build.LengthUnit)
	if err != nil {
		return err
	}
	if err := a.rewriteFile(j.Path, j.Source, text); err != nil {
		return err
	}
	a.hint("%s: saved %s, the pick %q, as [chosen]", j.Path, in.Pair(p.Bass, p.Treble), p.Kind)
	return nil
}

// bareBuild stands in for a build file where a blank is asked for without one: a
// guitar in the middle of what is built (judgement).
const bareBuild = `[strings]
tuning = "E2 A2 D3 G3 B3 E4"
[scales]
bass = "648 mm"
treble = "648 mm"
[neck]
string_spread_at_nut = "36 mm"
string_spread_at_saddle = "52 mm"
`

// fromBlank answers what comes out of a blank, by geometry alone.
func (a *app) fromBlank(path string, o *adviseOptions) error {
	length, width, err := parseBlank(o.blank)
	if err != nil {
		return err
	}
	j := &build.Run{}
	if _, err = os.Stat(build.DefaultFile); path == "" && errors.Is(err, fs.ErrNotExist) {
		j.Build, err = build.Read([]byte(bareBuild), "without a build file", &o.over)
	} else {
		j, err = build.Open(path, &o.over)
	}
	if err != nil {
		return err
	}
	spec := j.Neck()
	switch {
	case j.Build.Chosen != nil:
		spec.Treble = j.Build.Chosen.Treble
	case len(j.Build.Scales.Treble) > 0:
		spec.Treble = slices.Max(j.Build.Scales.Treble)
	}
	found, err := fan.AdviseBlank(spec, fan.Blank{Length: length, Width: width}, func(f *fan.Frame) bool { return j.Limits.OfFan(f, spec.Frets) == nil })
	if err != nil {
		return err
	}
	return a.print(&o.output, report.NewFromBlank(&report.Input{Run: j, Units: o.output.units(j)}, spec, found))
}

// parseBlank reads "500 x 70 mm", or the same with a thickness, which nothing
// here depends on. A length without a unit takes that of the width.
func parseBlank(text string) (length, width unit.Length, err error) {
	parts := strings.Split(strings.ReplaceAll(text, "×", "x"), "x")
	ok := len(parts) == 2 || len(parts) == 3
	if ok {
		left, right := parts[0], parts[1]
		if _, bare := unit.ParseNumber(right); bare == nil && len(parts) == 3 {
			right += strings.TrimLeft(strings.TrimSpace(parts[2]), "0123456789./½¼¾ ")
		}
		if width, err = unit.ParseLength(right); err == nil {
			if length, err = unit.ParseLength(left); err != nil {
				length, err = unit.ParseLength(strings.TrimSpace(left) + " " + strings.TrimLeft(strings.TrimSpace(right), "0123456789./½¼¾ "))
			}
		}
	}
	if !ok || err != nil || !(length > 0 && width > 0) {
		return 0, 0, fault.Fault{Place: fault.Place{Input: "--blank"}, What: "not the size of a blank", Given: text, Remedy: `give its length and width with a unit: "500 x 70 mm" or "20 x 2 3/4 in"`}
	}
	return length, width, nil
}
