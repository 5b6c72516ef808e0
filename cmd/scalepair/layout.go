package main

import (
	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/answer"
	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/document"
)

// layoutOptions are what layout takes beside a build file.
type layoutOptions struct {
	output       outputFlags
	over         build.Flags
	neutralTable bool
	neutral      answer.Neutral
}

func (a *app) layoutCommand() *cobra.Command {
	o := &layoutOptions{}
	c := &cobra.Command{
		Use:   "layout [build.toml]",
		Short: "String lines, marks, slants, spacing and blank of one pair",
		Long: `layout prints the fan of one scale pair: marks on both outer string lines from
the nut and as steps, slants, string positions along nut and saddle line, and
the blank it needs.

--neutral-table moves the fret that stands square from the nut to the last fret,
and to the bridge, and prints what that does to the slants. It names the choices
that stand out; no rule decides among them.`,
		Example: `  scalepair layout
  scalepair layout --bass 27in --treble 25.5in --lengths in64
  scalepair layout --neutral 7.5 --only marks --format csv
  scalepair layout --neutral-table --played 1-9 --neck-angle "30 deg"`,
		Args: buildFile,
		RunE: func(_ *cobra.Command, args []string) error { return a.layout(first(args), o) },
	}
	o.output.add(c)
	o.over.Add(c.Flags())
	f := c.Flags()
	f.BoolVar(&o.neutralTable, "neutral-table", false, "print what moving the neutral fret does")
	o.neutral.Flags(f)
	o.over.Add(f, "neck-angle")
	c.MarkFlagsMutuallyExclusive("neck-angle", "hand")
	return c
}

func (a *app) layout(path string, o *layoutOptions) error {
	j, err := a.open(path, &o.over, o.output.units)
	if err != nil {
		return err
	}
	var r document.Result
	if o.neutralTable {
		r, err = j.Neutral(o.neutral)
	} else {
		r, err = j.Layout()
	}
	return a.print(&o.output, r, err)
}
