package main

import (
	"io"
	"os"
	"strings"

	"golang.org/x/term"

	"scalepair/cmd/scalepair/atomicfile"
	"scalepair/cmd/scalepair/document"
	"scalepair/data/fault"
)

// resultOutput is where results go. It keeps the first failure, whoever
// printed, so that no run that lost a result ends as done.
type resultOutput struct {
	to  io.Writer
	app *app
	err error
}

func (o *resultOutput) Write(text []byte) (int, error) {
	o.app.rest()
	n, err := o.to.Write(text)
	if err != nil && o.err == nil {
		o.err = fault.Fault{Place: fault.Place{Input: "standard output"},
			What: "the result cannot be printed: " + atomicfile.Reason(err), Remedy: "send it elsewhere"}
	}
	return n, err
}

// print writes a result to stdout, whole or not at all; err is that of working it
// out.
func (a *app) print(o *outputFlags, r document.Result, err error) error {
	if err != nil {
		return err
	}
	if err := document.Write(a.out, r, o.options(a)); err != nil {
		return err
	}
	if w, ok := r.(interface{ Warned() []string }); ok {
		for _, text := range w.Warned() {
			a.hint("warning: %s", text)
		}
	}
	return nil
}

// pipedWidth is the line length where there is no terminal to ask.
const pipedWidth = 80

// console returns the options that suit f: the width of a terminal, ASCII where
// its locale shows no more, and colour unless NO_COLOR is set or TERM is "dumb".
// What is piped or written to a file is 80 wide, UTF-8 and without colour. env
// is os.Getenv.
func console(f *os.File, env func(string) string) document.Options {
	o := document.Options{Width: pipedWidth}
	if !isTerminal(f) {
		return o
	}
	if width, _, err := term.GetSize(int(f.Fd())); err == nil && width > 0 {
		o.Width = width
	}
	windows := os.PathSeparator == '\\' // its consoles show every character, and old ones no colour
	o.ASCII = !windows && !utf8Locale(env)
	o.Colour = !windows && env("NO_COLOR") == "" && env("TERM") != "dumb"
	return o
}

// utf8Locale reports whether the first of LC_ALL, LC_CTYPE and LANG that is set
// names UTF-8.
func utf8Locale(env func(string) string) bool {
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if v := strings.ToLower(env(name)); v != "" {
			return strings.Contains(v, "utf-8") || strings.Contains(v, "utf8")
		}
	}
	return false
}

func isTerminal(f *os.File) bool { return term.IsTerminal(int(f.Fd())) }
