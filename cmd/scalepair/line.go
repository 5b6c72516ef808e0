package main

import (
	"errors"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"scalepair/data/fault"
	"scalepair/data/suggest"
)

// The rules of the command line that all commands share.

// flagError puts what the parser says about a flag in our form, with the nearest
// flag where one was misspelt.
func flagError(c *cobra.Command, err error) error {
	f := fault.Fault{Place: fault.Place{Input: c.CommandPath()}, What: err.Error(), Remedy: helpOf(c)}
	var unknown *pflag.NotExistError
	var wrong *pflag.InvalidValueError
	switch {
	case errors.As(err, &unknown):
		var known []string
		c.Flags().VisitAll(func(f *pflag.Flag) { known = append(known, f.Name) })
		name := unknown.GetSpecifiedName()
		f = fault.Fault{Place: fault.Place{Input: "--" + name}, What: "there is no such flag", Remedy: meant(name, known, "--", helpOf(c))}
	case errors.As(err, &wrong):
		at := fault.Place{Input: "--" + wrong.GetFlag().Name}
		if errors.As(err, &f) { // a value that reads itself says what is wrong
			f.Place = at
			break
		}
		_, usage := pflag.UnquoteUsage(wrong.GetFlag())
		f = fault.Fault{Place: at, What: "the value does not read", Given: wrong.GetValue(), Remedy: "it is: " + usage}
	}
	return usageError{f}
}

// meant asks for the nearest known word, and falls back on another remedy.
func meant(word string, known []string, dashes, otherwise string) string {
	if s := suggest.Nearest(word, known); s != "" {
		return "did you mean " + dashes + s + "?"
	}
	return otherwise
}

func helpOf(c *cobra.Command) string { return c.CommandPath() + " --help explains" }

// unknownCommand suggests the nearest command of c.
func unknownCommand(c *cobra.Command, name string) error {
	var known []string
	for _, sub := range c.Commands() {
		known = append(known, sub.Name())
	}
	remedy := meant(name, known, "", c.CommandPath()+" --help lists them")
	if strings.HasSuffix(strings.ToLower(name), ".toml") {
		remedy = "say what to do with the build file: " + c.CommandPath() + " advise " + name
	}
	return usageError{fault.Fault{Place: fault.Place{Input: c.CommandPath()}, What: "there is no such command", Given: name, Remedy: remedy}}
}

// freeWords are the flags that may be given nothing: words to be printed.
var freeWords = []string{"date", "remark", "name"}

// checkLine refuses what would make a run another one than was meant: an empty
// argument or value, as of a variable that is not set, and a flag of one value
// that was given twice.
func (a *app) checkLine(c *cobra.Command, args []string) error {
	var faults fault.List
	if strings.HasPrefix(c.Name(), "__") { // the shell asks what may stand here
		return nil
	}
	if slices.Contains(args, "") {
		faults.Add(fault.Place{Input: c.CommandPath()}, "an argument is empty", "", "leave it out, or give it")
	}
	times := map[string]int{}
	for _, arg := range a.args {
		name, _, _ := strings.Cut(arg, "=")
		times[name]++
	}
	c.Flags().Visit(func(f *pflag.Flag) {
		_, list := f.Value.(pflag.SliceValue)
		switch at := (fault.Place{Input: "--" + f.Name}); {
		case strings.TrimSpace(strings.Trim(f.Value.String(), "[]")) == "" && !slices.Contains(freeWords, f.Name):
			_, usage := pflag.UnquoteUsage(f)
			faults.Add(at, "the value is empty", "", "leave the flag out, or give it: "+usage)
		case !list && times["--"+f.Name] > 1:
			faults.Add(at, "given more than once", "", "it takes one value")
		}
	})
	if err := faults.Err(); err != nil {
		return usageError{err}
	}
	return nil
}

// buildFile is the one argument that most commands take.
func buildFile(c *cobra.Command, args []string) error {
	if len(args) <= 1 {
		return nil
	}
	return usageError{fault.Fault{Place: fault.Place{Input: c.CommandPath()}, What: "one build file at a time", Given: strings.Join(args, " "),
		Remedy: "put a path or a value with blanks in quotes: \"650 mm\""}}
}

// noArguments is for commands that take flags only.
func noArguments(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return usageError{fault.Fault{Place: fault.Place{Input: c.CommandPath()}, What: "this takes no file or word",
		Given: strings.Join(args, " "), Remedy: helpOf(c)}}
}
