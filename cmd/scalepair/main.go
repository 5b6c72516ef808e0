// Command scalepair helps a builder of multi-scale (fanned-fret) instruments
// choose a bass and a treble scale length before a blank is bought, and set
// the chosen fan out on the bench.
//
// In reading order: main.go and app.go the run and the tree of commands,
// line.go, flags.go, files.go, output.go and complete.go what commands share, then
// one file a command. What a command works out is in answer.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"syscall"

	"scalepair/data/fault"
)

// Exit codes.
const (
	exitDone        = 0
	exitInput       = 1   // the input does not allow it
	exitUsage       = 2   // the command line is wrong
	exitInterrupted = 130 // ended from outside, as shells count an interrupt
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	context.AfterFunc(ctx, stop) // a second signal ends the program at once
	os.Exit(run(ctx, os.Args[1:], os.Stdout, os.Stderr))
}

// run runs one command line and returns the exit code. Results go to out,
// everything else to errOut. Messages end up here and are printed in one place:
// one fault a line, "place: what is wrong (what was given); what would do".
func run(ctx context.Context, args []string, out, errOut io.Writer) int {
	a := &app{ctx: ctx, err: errOut, args: args}
	result := &resultOutput{to: out, app: a}
	a.out = result
	a.file, _ = out.(*os.File)
	a.rest = a.working()
	root := a.root()
	root.SetArgs(args)
	err := root.Execute()
	a.rest()
	if result.err != nil {
		err = result.err
	}
	if err == nil {
		return exitDone
	}
	var silent exitError
	if errors.As(err, &silent) {
		return silent.code
	}
	if errors.Is(err, context.Canceled) {
		a.hint("interrupted; nothing was written")
		return exitInterrupted
	}
	for _, line := range strings.Split(err.Error(), "\n") {
		a.hint("%s", line)
	}
	var usage usageError
	if errors.As(err, &usage) || onlyFlags(err) {
		return exitUsage
	}
	return exitInput
}

// usageError is a fault of the command line.
type usageError struct{ error }

// exitError ends a run that has printed all it has to say.
type exitError struct{ code int }

func (e exitError) Error() string { return fmt.Sprintf("exit %d", e.code) }

// onlyFlags reports whether every fault stands on the command line.
func onlyFlags(err error) bool {
	var faults fault.List
	faults.Include(fault.Place{}, err)
	for _, f := range faults {
		if !strings.HasPrefix(f.Place.Input, "--") {
			return false
		}
	}
	return true
}
