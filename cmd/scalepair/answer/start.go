package answer

import (
	"github.com/spf13/pflag"

	"scalepair/cmd/scalepair/build"
	"scalepair/data/fault"
)

// StartFlags defines the flags of a first build file.
func StartFlags(f *pflag.FlagSet, s *build.Start) {
	f.StringVar(&s.Tuning, "tuning", "", "`notes` low to high, or a named tuning")
	f.IntVar(&s.Strings, "strings", 0, "`number` of strings, when no tuning is given (default: 6)")
	f.BoolVar(&s.Bass, "bass", false, "a bass, when no tuning is given")
	f.StringVar(&s.Name, "name", "", "`name` of the build")
	TextVar(f, &s.Unit, "lengths", "`unit` of lengths: mm, in, or in64 for fractions to 1/64 (default: mm)")
}

// Start gives a commented build file and a readings file to begin with.
func Start(s build.Start) (buildFile, readings []byte, err error) {
	buildFile, readings, err = build.Template(s)
	at := fault.Place{Input: "--strings"}
	if s.Tuning != "" {
		at.Input = "--tuning"
	}
	var faults fault.List
	faults.Include(at, err)
	return buildFile, readings, faults.Err()
}
