package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// example is one command line of a text, with what the text says it prints.
type example struct {
	line    int      // of the text, from 1
	command string   // as a shell takes it
	prints  []string // nil: not shown. A line "..." stands for any lines
}

// consoleExamples takes the command lines out of a Markdown text: in a block
// marked console they stand behind "$ ", with their output below; in any other
// block a line that begins with scalepair is one. A backslash at the end
// carries a command on.
func consoleExamples(markdown string) []example {
	var r consoleReader
	for i, text := range strings.Split(markdown, "\n") {
		if mark, ok := strings.CutPrefix(strings.TrimSpace(text), "```"); ok {
			r.fence(mark)
		} else if r.block != "" {
			r.read(i+1, text)
		}
	}
	for i := range r.out {
		r.out[i].prints = trimBlank(r.out[i].prints)
	}
	return r.out
}

// consoleReader stands in a block of a Markdown text: "", "console" or "code".
type consoleReader struct {
	block   string
	carried bool // the command goes on
	out     []example
}

func (r *consoleReader) fence(mark string) {
	switch {
	case r.block != "":
		r.block = ""
	case strings.HasPrefix(mark, "console"):
		r.block = "console"
	default:
		r.block = "code"
	}
	r.carried = false
}

func (r *consoleReader) read(line int, text string) {
	command, isCommand := strings.CutPrefix(text, "$ ")
	if r.block == "code" {
		command = strings.TrimSpace(text)
		isCommand = strings.HasPrefix(command, "scalepair ")
	}
	last := len(r.out) - 1
	switch {
	case r.carried:
		r.out[last].command += "\n" + strings.TrimPrefix(text, "> ")
	case isCommand:
		r.out = append(r.out, example{line: line, command: command})
	case r.block == "console" && last >= 0:
		r.out[last].prints = append(r.out[last].prints, text)
	}
	r.carried = (r.carried || isCommand) && strings.HasSuffix(text, `\`)
}

// helpExamples takes the command lines out of a command's Example.
func helpExamples(text string) []example {
	var out []example
	for i, line := range strings.Split(text, "\n") {
		if line = strings.TrimSpace(line); line != "" {
			out = append(out, example{line: i + 1, command: line})
		}
	}
	return out
}

// harmless commands of the shell may stand between the examples and are run.
var harmless = []string{"cat", "cd", "cp", "cut", "diff", "echo", "grep", "head", "ls", "mkdir", "printf", "sed", "sort", "tail", "wc"}

// shell runs examples one after another in one folder, as a user would paste
// them.
type shell struct {
	dir    string
	status int
}

// newShell starts in an empty folder but for the builds of testdata.
func newShell(t *testing.T) *shell {
	t.Helper()
	if runtime.GOOS == "windows" {
		t.Skip("SKIPPED: the examples need a POSIX shell")
	}
	t.Setenv("LC_ALL", "C.UTF-8")
	s := &shell{dir: t.TempDir()}
	require.NoError(t, os.CopyFS(filepath.Join(s.dir, "testdata", "builds"), os.DirFS("../../testdata/builds")))
	return s
}

// follow runs the examples in order and says what went otherwise than the text
// has it. A failure is expected where the next command shows the exit code.
func (s *shell) follow(examples []example) []string {
	var problems []string
	for i, e := range examples {
		say := func(format string, args ...any) {
			problems = append(problems, fmt.Sprintf("line %d: %s: ", e.line, e.command)+fmt.Sprintf(format, args...))
		}
		first, _, _ := strings.Cut(e.command, " ")
		if first != "scalepair" && !slices.Contains(harmless, first) {
			if e.prints != nil {
				say("this is not run, so its output cannot be held to the text")
			}
			continue
		}
		printed := s.run(e.command)
		expected := i+1 < len(examples) && examples[i+1].command == "echo $?"
		if s.status != 0 && !expected {
			say("exit %d\n%s", s.status, printed)
		}
		if e.prints != nil && !matchLines(e.prints, trimBlank(strings.Split(printed, "\n"))) {
			say("the text shows\n%s\nbut it prints\n%s", strings.Join(e.prints, "\n"), printed)
		}
	}
	return problems
}

// run runs one command line and gives what a console would show.
func (s *shell) run(line string) string {
	if to, ok := strings.CutPrefix(line, "cd "); ok {
		s.dir = filepath.Join(s.dir, to)
		line = ":"
	}
	c := exec.Command("sh", "-c", fmt.Sprintf("(exit %d)\n%s", s.status, line))
	var console bytes.Buffer
	c.Dir, c.Stdout, c.Stderr = s.dir, &console, &console
	err := c.Run()
	s.status = c.ProcessState.ExitCode()
	if err != nil && s.status <= 0 {
		return err.Error()
	}
	return console.String()
}

// matchLines compares lines; a wanted "..." stands for any number of them.
func matchLines(want, got []string) bool {
	if len(want) == 0 {
		return len(got) == 0
	}
	if want[0] == "..." {
		return matchLines(want[1:], got) || len(got) > 0 && matchLines(want, got[1:])
	}
	return len(got) > 0 && want[0] == got[0] && matchLines(want[1:], got[1:])
}

// trimBlank drops blank lines at the end.
func trimBlank(lines []string) []string {
	for len(lines) > 0 && strings.TrimSpace(lines[len(lines)-1]) == "" {
		lines = lines[:len(lines)-1]
	}
	return lines
}
