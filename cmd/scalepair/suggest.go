package main

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"scalepair/data/fault"
	"scalepair/data/suggest"
)

// flagError puts what the parser says about a flag in our words, with the
// nearest flag where one was misspelt.
func (a *app) flagError(c *cobra.Command, err error) error {
	var missing *pflag.NotExistError
	var empty *pflag.ValueRequiredError
	var wrong *pflag.InvalidValueError
	f := fault.Fault{Place: fault.Place{Input: c.CommandPath()}, What: err.Error(), Remedy: helpOf(c)}
	switch {
	case errors.As(err, &missing):
		f = a.noSuchFlag(c, missing)
	case errors.As(err, &empty):
		f = fault.Fault{Place: fault.Place{Input: "--" + empty.GetFlag().Name}, What: "the value is missing",
			Remedy: "it is: " + inWords(empty.GetFlag())}
	case errors.As(err, &wrong):
		place := fault.Place{Input: "--" + wrong.GetFlag().Name}
		var ours fault.Fault
		if errors.As(wrong, &ours) {
			ours.Place = place
			return usageError{ours}
		}
		f = fault.Fault{Place: place, What: wanted(wrong.GetFlag()),
			Given: wrong.GetValue(), Remedy: "it is: " + inWords(wrong.GetFlag())}
	}
	return usageError{f}
}

// wanted says what a value of the flag's type must be.
func wanted(f *pflag.Flag) string {
	switch f.Value.Type() {
	case "bool":
		return "neither true nor false"
	case "int":
		return "not a whole number"
	case "uint", "uint64":
		return "not a whole number from 0 up"
	case "float64":
		return "not a number"
	}
	return "the value cannot be read"
}

// inWords is a flag's usage as help prints it.
func inWords(f *pflag.Flag) string {
	_, usage := pflag.UnquoteUsage(f)
	return usage
}

// noSuchFlag looks for the flag that was meant: a long flag written with one
// dash, a flag of another command, or the nearest of this one.
func (a *app) noSuchFlag(c *cobra.Command, e *pflag.NotExistError) fault.Fault {
	name, given := e.GetSpecifiedName(), "--"+e.GetSpecifiedName()
	if all := e.GetSpecifiedShortnames(); all != "" {
		name, given = all, "-"+all
	}
	name, _, _ = strings.Cut(name, "=")
	f := fault.Fault{Place: fault.Place{Input: given}, What: "there is no such flag", Remedy: helpOf(c)}
	var known, elsewhere []string
	c.Flags().VisitAll(func(f *pflag.Flag) {
		if !f.Hidden {
			known = append(known, f.Name)
		}
	})
	for _, other := range a.root(nil).Commands() {
		if other.Flags().Lookup(name) != nil && len(name) > 1 {
			elsewhere = append(elsewhere, other.Name())
		}
	}
	nearest := ""
	if len(name) > 1 {
		nearest = suggest.Nearest(name, known)
	}
	switch {
	case nearest != "":
		f.Remedy = "did you mean --" + nearest + "?"
	case len(elsewhere) > 0:
		f.Remedy = "it is a flag of " + strings.Join(elsewhere, ", ")
	}
	return f
}

// unknownCommand suggests the nearest command of c.
func unknownCommand(c *cobra.Command, name string) error {
	if strings.HasSuffix(strings.ToLower(name), ".toml") {
		return usageError{fault.Fault{Place: fault.Place{Input: c.CommandPath()}, What: "a build file stands where the command belongs", Given: name,
			Remedy: "say what to do with it: " + c.CommandPath() + " advise " + name}}
	}
	var known []string
	for _, sub := range c.Commands() {
		if sub.IsAvailableCommand() || sub.Name() == "help" {
			known = append(known, sub.Name())
		}
	}
	return usageError{fault.Fault{Place: fault.Place{Input: c.CommandPath()}, What: "there is no such command", Given: name,
		Remedy: meant(name, known, c.CommandPath()+" --help lists them")}}
}

// meant asks for the nearest known word, and falls back on another remedy.
func meant(word string, known []string, otherwise string) string {
	if s := suggest.Nearest(word, known); s != "" {
		return "did you mean " + s + "?"
	}
	return otherwise
}

func helpOf(c *cobra.Command) string { return c.CommandPath() + " --help explains" }

// noArguments is for commands that take flags only.
func noArguments(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return usageError{fault.Fault{Place: fault.Place{Input: c.CommandPath()}, What: "this takes no file or word",
		Given: strings.Join(args, " "), Remedy: helpOf(c)}}
}

// helpCommand explains a command, as its --help does.
func (a *app) helpCommand() *cobra.Command {
	c := &cobra.Command{
		Use:     "help [command]",
		Short:   "Explain a command",
		Long:    `help prints what a command does, its flags and examples: the same as its --help.`,
		Example: `  scalepair help advise`,
		ValidArgsFunction: func(c *cobra.Command, _ []string, _ string) ([]string, cobra.ShellCompDirective) {
			return completeCommand(c.Root())
		},
		RunE: func(c *cobra.Command, args []string) error {
			about, rest, err := c.Root().Find(args)
			if err != nil || len(rest) > 0 {
				return unknownCommand(c.Root(), strings.Join(args, " "))
			}
			about.InitDefaultHelpFlag()
			return about.Help()
		},
	}
	ownHelpFlag(c)
	return c
}

// ownHelpFlag gives a command its --help, in our words.
func ownHelpFlag(c *cobra.Command) {
	c.InitDefaultHelpFlag()
	c.Flags().Lookup("help").Usage = "explain this command"
}
