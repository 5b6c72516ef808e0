// Command mutate puts small errors into formulas, one at a time, and asks that
// a test finds each: a sign, a factor of 2, radians for degrees, the core for
// the outside.
//
//	go run ./.ci/mutate [-near] [-sample N] [-list .ci/mutate/errors.txt] [WORD...]
//
// With words, only errors whose line holds them all are tried; with -sample only
// N of them, others on every day. The working tree
// is not touched: the changed file is laid over the real one for the build. It
// takes some seconds an error, and minutes for one that no test finds, unless
// -near keeps to the tests of the error's own package.
//
// Tests that compare with what the program printed before (goldens, scripts,
// the text of examples) do not count: they find any change, right or wrong. An
// error counts as found by the first other test that fails, in the package
// itself or else in one that uses it. Exit 1 when one is not found, 2 when a
// line of the list no longer fits the code.
package main

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"time"
)

func main() {
	near := flag.Bool("near", false, "try the tests of the error's own package alone")
	sample := flag.Int("sample", 0, "try so many, chosen by the date")
	path := flag.String("list", ".ci/mutate/errors.txt", "the errors, one a line")
	flag.Parse()
	list, err := read(*path)
	if err != nil {
		fmt.Fprintln(os.Stderr, "mutate:", err)
		os.Exit(2)
	}
	chosen := only(list, flag.Args())
	if *sample > 0 {
		chosen = ofDay(chosen, *sample, int(time.Now().Unix()/86400))
	}
	code := try(chosen, *near)
	if err := fits(list); err != nil {
		fmt.Fprintln(os.Stderr, "mutate: these lines no longer fit:", err)
		code = 2
	}
	os.Exit(code)
}

// try tries one error after another and gives the exit code.
func try(list []slip, near bool) (code int) {
	finds := 0
	for _, e := range list {
		found, err := e.try(near)
		switch {
		case err != nil:
			fmt.Fprintln(os.Stderr, "mutate:", err)
			found, code = "NOT TRIED", 2
		case found == "":
			found, code = "NOT FOUND", max(code, 1)
		default:
			finds++
		}
		fmt.Printf("%-34s %-58s %s\n", e.file, e.what, found)
	}
	fmt.Printf("%d of %d found\n", finds, len(list))
	return code
}

// only keeps the errors whose line holds all words.
func only(list []slip, words []string) []slip {
	var out []slip
	for _, e := range list {
		holds := true
		for _, w := range words {
			holds = holds && strings.Contains(e.line, w)
		}
		if holds {
			out = append(out, e)
		}
	}
	return out
}

// ofDay takes n of a list, the next n on the next day, round and round.
func ofDay(list []slip, n, day int) []slip {
	var out []slip
	for i := range min(n, len(list)) {
		out = append(out, list[(day*n+i)%len(list)])
	}
	return out
}
