package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"sync"
	"time"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/document"
)

// app is one run of the program: where it prints, and what it has read.
type app struct {
	ctx      context.Context // ends with a signal from outside
	out, err io.Writer
	file     *os.File // out where it is a file, to learn its width
	args     []string // the command line
	inputs   []string // the files that this run has read, not to be written over
	rest     func()   // ends what is said while the program works
}

// root is the command tree, in working order.
func (a *app) root() *cobra.Command {
	cobra.EnableCommandSorting = false
	root := &cobra.Command{
		Use:   "scalepair",
		Short: "Choose a scale pair for a fanned-fret instrument, and set it out",
		Long: `scalepair helps a builder of multi-scale (fanned-fret) guitars and basses
choose a bass and a treble scale length before a blank is bought: how hard each
string pulls in the wanted tuning with the strings at hand, how it bends, how
near it is to breaking, whether the fan is comfortable and the blank long
enough. Then it sets the chosen fan out on the bench.

Every command takes a build file. Without one it takes build.toml in the
current folder, and without that an invented demo, and says so.`,
		Example: `  scalepair init                  # write a build file and a readings file to begin with
  scalepair advise                # choose a pair
  scalepair layout                # the marks of the chosen pair`,
		Version:       versionText(),
		SilenceErrors: true, SilenceUsage: true,
		PersistentPreRunE: a.checkLine,
		Args:              cobra.ArbitraryArgs,
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) > 0 {
				return unknownCommand(c, args[0])
			}
			return c.Help()
		},
	}
	root.SetOut(a.out)
	root.SetErr(a.err)
	root.SetFlagErrorFunc(flagError)
	root.SetVersionTemplate("{{.Version}}")
	for _, g := range []struct {
		id, title string
		commands  []*cobra.Command
	}{
		{"start", "To start:", []*cobra.Command{a.initCommand(), a.gaugesCommand()}},
		{"choose", "To choose:", []*cobra.Command{a.adviseCommand(), a.compareCommand(), a.tensionCommand()}},
		{"make", "To make:", []*cobra.Command{a.layoutCommand(), a.drawCommand(), a.benchCommand(), a.checkCommand()}},
	} {
		root.AddGroup(&cobra.Group{ID: g.id, Title: g.title})
		for _, c := range g.commands {
			c.GroupID = g.id
			completions(c)
			root.AddCommand(c)
		}
	}
	root.InitDefaultCompletionCmd()
	root.AddCommand(a.versionCommand())
	return root
}

// hint prints one line on stderr.
func (a *app) hint(format string, args ...any) {
	a.rest()
	text := document.Clean(fmt.Sprintf(format, args...))
	if f, ok := a.err.(*os.File); ok && console(f, os.Getenv).ASCII {
		text = document.ToASCII(text)
	}
	fmt.Fprintln(a.err, text)
}

// working says on a terminal that a run takes more than a second, until rest is
// called.
func (a *app) working() (rest func()) {
	f, ok := a.err.(*os.File)
	if !ok || !isTerminal(f) {
		return func() {}
	}
	const what = "working ..."
	said := make(chan bool, 1)
	timer := time.AfterFunc(time.Second, func() {
		fmt.Fprint(f, what)
		said <- true
	})
	return sync.OnceFunc(func() {
		if !timer.Stop() {
			<-said
			fmt.Fprintf(f, "\r%*s\r", len(what), "")
		}
	})
}
