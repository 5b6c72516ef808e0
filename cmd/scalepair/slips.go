package main

import (
	"os"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Slips of the command line that the flag parser does not know.

// longDash refuses a flag that begins with a typographic dash, which a web page
// or a word processor made of two hyphens.
func longDash(args []string) error {
	for _, arg := range args {
		first, size := utf8.DecodeRuneInString(arg)
		rest := strings.TrimLeft(arg[size:], "-\u2013\u2014")
		letter, _ := utf8.DecodeRuneInString(rest)
		if (first == '\u2013' || first == '\u2014') && unicode.IsLetter(letter) {
			name, _, _ := strings.Cut(rest, "=")
			return usageError{fault.Fault{Place: fault.Place{Input: "scalepair"}, What: "a long dash stands where a flag begins with two hyphens",
				Given: arg, Remedy: "write --" + name}}
		}
	}
	return nil
}

// freeWords are the flags that may be given nothing: words to be printed.
var freeWords = []string{"date", "remark", "name"}

// emptyFlags refuses flags that were given an empty value, as by a variable
// that is not set: taken for a flag not given, the run would be another one.
func emptyFlags(c *cobra.Command) error {
	var faults fault.List
	c.Flags().Visit(func(f *pflag.Flag) {
		if isEmpty(f) && !slices.Contains(freeWords, f.Name) {
			faults.Add(fault.Place{Input: "--" + f.Name}, "the value is empty", "", "leave the flag out, or give it: "+inWords(f))
		}
	})
	if err := faults.Err(); err != nil {
		return usageError{err}
	}
	return nil
}

func isEmpty(f *pflag.Flag) bool {
	if list, ok := f.Value.(pflag.SliceValue); ok {
		for _, v := range list.GetSlice() {
			if strings.TrimSpace(v) == "" {
				return true
			}
		}
		return len(list.GetSlice()) == 0
	}
	return f.Value.Type() == "string" && strings.TrimSpace(f.Value.String()) == ""
}

// buildFile is the one argument that most commands take.
func buildFile(c *cobra.Command, args []string) error {
	refuse := func(what, remedy string) error {
		return usageError{fault.Fault{Place: fault.Place{Input: c.CommandPath()}, What: what, Given: strings.Join(args, " "), Remedy: remedy}}
	}
	switch {
	case len(args) > 0 && strings.ContainsAny(strings.Join(args, " "), "“”„") && !exists(args[0]):
		return refuse("curly quotation marks hold nothing together here", "use the straight ones of the keyboard: \"650 mm\"")
	case len(args) == 1 && partOfAValue(args[0]) && !exists(args[0]):
		return refuse("this is no build file, but looks like a part of the value before it", "put a value with blanks in quotes: \"650 mm\"")
	case len(args) > 1:
		return refuse("one build file at a time", "put a path or a value with blanks in quotes; flags take their value right behind")
	}
	return nil
}

// partOfAValue tells whether an argument is a unit or a fraction with its unit,
// as the shell leaves them of 650 mm and 25 1/2 in.
func partOfAValue(arg string) bool {
	_, isUnit := unit.ParseLength("1 " + arg)
	_, isForce := unit.ParseForce("1 " + arg)
	_, isLength := unit.ParseLength(arg)
	return isUnit == nil || isForce == nil || isLength == nil
}

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}
