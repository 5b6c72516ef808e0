// Command mutate puts small errors into formulas, one at a time, and asks that
// a test of the package, or of its neighbours, finds each: a sign, a factor of 2,
// the core for the outside.
//
//	go run ./.ci/mutate [-sample N] [WORD...]
//
// With words, only errors whose line holds them all are tried; with -sample only
// N of them, others on every day. The working tree is not touched: the changed
// file is laid over the real one for the build.
//
// Tests that compare with what the program printed before (goldens, scripts,
// the text of examples) do not count: they find any change, right or wrong. Exit
// 1 when an error is not found, 2 when a line of the list no longer fits the
// code.
package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"time"
)

const listFile = ".ci/mutate/errors.txt"

func main() {
	sample := flag.Int("sample", 0, "try so many, chosen by the date")
	flag.Parse()
	list, err := read(listFile)
	if err != nil {
		fmt.Fprintln(os.Stderr, "mutate:", err)
		os.Exit(2)
	}
	chosen := only(list, flag.Args())
	if *sample > 0 {
		chosen = ofDay(chosen, *sample, int(time.Now().Unix()/86400))
	}
	code := 0
	for _, e := range chosen {
		found, err := e.try()
		switch {
		case err != nil:
			fmt.Fprintln(os.Stderr, "mutate:", err)
			found, code = "NOT TRIED", 2
		case found == "":
			found, code = "NOT FOUND", max(code, 1)
		}
		fmt.Printf("%-34s %-58s %s\n", e.file, e.what, found)
	}
	os.Exit(code)
}

// slip is one error: in a file the old text, which stands there once, becomes
// the new.
type slip struct {
	line                 string // as it stands in the list
	file, old, new, what string
}

// read reads the list: "file | old text | new text | what it is" a line, blank
// lines and lines that begin with # aside.
func read(path string) ([]slip, error) {
	text, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	var out []slip
	var bad []error
	for n, line := range strings.Split(string(text), "\n") {
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		parts := strings.Split(line, " | ")
		if len(parts) != 4 {
			bad = append(bad, fmt.Errorf("%s:%d: wants file | old | new | what", path, n+1))
			continue
		}
		out = append(out, slip{line, parts[0], parts[1], parts[2], parts[3]})
	}
	return out, errors.Join(bad...)
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

// changed is the file with the error in it.
func (e slip) changed() (string, error) {
	text, err := os.ReadFile(e.file)
	if err != nil {
		return "", err
	}
	if n := strings.Count(string(text), e.old); n != 1 {
		return "", fmt.Errorf("%s: %q stands there %d times, not once", e.file, e.old, n)
	}
	return strings.Replace(string(text), e.old, e.new, 1), nil
}

// ownOutput are the tests that compare with what the program printed before.
const ownOutput = "^Example|^TestGolden|^TestScripts$|^TestReadmeExamples$|^TestHelpExamples$"

var failed = regexp.MustCompile(`(?m)^\s*--- FAIL: (\S+)`)

// try tests the package with the error in it, then all of its room, and returns
// the test that finds it, "" for none.
func (e slip) try() (string, error) {
	dir, err := os.MkdirTemp("", "mutate")
	if err != nil {
		return "", err
	}
	defer os.RemoveAll(dir)
	text, err := e.changed()
	if err != nil {
		return "", err
	}
	real, err := filepath.Abs(e.file)
	if err != nil {
		return "", err
	}
	file, overlay := filepath.Join(dir, "changed.go"), filepath.Join(dir, "overlay.json")
	over, err := json.Marshal(map[string]map[string]string{"Replace": {real: file}})
	if err := errors.Join(err, os.WriteFile(file, []byte(text), 0o600), os.WriteFile(overlay, over, 0o600)); err != nil {
		return "", err
	}
	room, _, _ := strings.Cut(e.file, "/")
	for _, tested := range []string{"./" + filepath.Dir(e.file), "./" + room + "/..."} {
		out, err := exec.Command("go", "test", "-overlay", overlay, "-skip", ownOutput, "-failfast", "-vet=off", "-timeout", "5m", tested).CombinedOutput()
		switch m := failed.FindSubmatch(out); {
		case err == nil:
		case m != nil:
			return string(m[1]), nil
		case strings.Contains(string(out), "panic:"):
			return "a panic", nil
		default:
			return "", fmt.Errorf("%s does not build or run:\n%s", e.file, out)
		}
	}
	return "", nil
}
