// Command explorer writes scalepair.html: the whole program as one page that opens
// with a double click and needs no network.
//
//	go run ./cmd/explorer --out scalepair.html
//
// It compiles the engine for the browser, bundles the page's script and style, and
// puts all of it into one file. In reading order: main.go, page.go what the file is
// made of, licences.go what is built in. engine has the program, page the script.
package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/atomicfile"
	"scalepair/cmd/scalepair/build"
	"scalepair/data"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := command().ExecuteContext(ctx); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func command() *cobra.Command {
	var from, out string
	var force bool
	c := &cobra.Command{
		Use:   "explorer",
		Short: "Write the program as one page that a browser opens",
		Args:  cobra.NoArgs, SilenceErrors: true, SilenceUsage: true,
		RunE: func(c *cobra.Command, _ []string) error {
			state, err := firstState(from)
			if err != nil {
				return err
			}
			if err := atomicfile.Check(out, force); err != nil {
				return err
			}
			p, err := makeParts(c.Context())
			if err != nil {
				return err
			}
			page, err := p.page(state)
			if err != nil {
				return err
			}
			return atomicfile.Write(out, page, force)
		},
	}
	c.Flags().StringVar(&from, "build", "", "`file` of the build that it opens with; its readings go with it (default: the invented demo)")
	c.Flags().StringVar(&out, "out", "scalepair.html", "`file` to write")
	c.Flags().BoolVar(&force, "force", false, "replace a file that exists")
	return c
}

// first is what the page opens with.
type first struct {
	Build    string `json:"build"`
	Readings string `json:"readings"`
	Marks    string `json:"marks"`
	Demo     bool   `json:"demo"`
}

// firstState reads a build file and its readings, the demo's for "". A build that
// does not read is refused.
func firstState(path string) (first, error) {
	if path == "" {
		b, err := data.Demo(build.DefaultFile)
		if err != nil {
			return first{}, err
		}
		r, err := data.Demo(build.ReadingsFile)
		return first{Build: string(b), Readings: string(r), Demo: true}, err
	}
	run, err := build.Load(path, nil)
	if err != nil && (run == nil || !run.Bare) {
		return first{}, err
	}
	state := first{Build: string(run.Source)}
	if !run.Bare {
		var readings []byte
		readings, err = os.ReadFile(run.Inputs()[1])
		state.Readings = string(readings)
	} else {
		err = nil
	}
	return state, err
}
