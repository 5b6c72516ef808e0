package main

import (
	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/job"
)

// retuneFlags are a retuned string and a capo over the build file's tuning.
func retuneFlags(c *cobra.Command, o *job.Overrides) {
	f := c.Flags()
	f.StringSliceVar(&o.Retune, "retune", nil, "tune one string to another `note`, such as 6=A1 (1 is the highest)")
	f.StringVar(&o.Capo, "capo", "", "`fret` of a capo, 0 for none (default: the build file's)")
}
