package main

import (
	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/report"
	"scalepair/cmd/scalepair/show"
)

func (a *app) usualCommand() *cobra.Command {
	var output outputFlags
	c := &cobra.Command{
		Use:   "usual",
		Short: "The usual ranges outside which a value is told to be looked at again",
		Long: `usual prints every quantity that is watched, with its usual range and where that
range comes from. Every command tells on stderr what falls outside: of the build
file and the readings, and of what it works out from them. JSON lists it under
"unusual", and the bench sheet at its head. The value itself is never changed.`,
		Example: `  scalepair usual
  scalepair usual --lengths in --forces lbf --only strings`,
		Args: noArguments,
		RunE: func(*cobra.Command, []string) error {
			if _, err := output.options(a); err != nil {
				return err
			}
			units, err := output.unitsOver(show.Units{})
			if err != nil {
				return err
			}
			return a.write(&output, report.Usual(units), func() any { return report.UsualValues() })
		},
	}
	output.add(c)
	return c
}
