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
	prints  []string // nil: not shown. A line "..." stands for any number of lines
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
		if r.out[i].prints = trimBlank(r.out[i].prints); len(r.out[i].prints) == 0 {
			r.out[i].prints = nil
		}
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
		out, errOut := s.run(e.command)
		expected := i+1 < len(examples) && examples[i+1].command == "echo $?"
		if s.status != 0 && !expected {
			say("exit %d\n%s", s.status, errOut)
		}
		if e.prints != nil && e.differs(out) != "" && e.differs(errOut+out) != "" && e.differs(out+errOut) != "" {
			say("%s; on stderr:\n%s", e.differs(out), errOut)
		}
	}
	return problems
}

// run runs one command line and gives what it prints on stdout and stderr.
func (s *shell) run(line string) (string, string) {
	if to, ok := strings.CutPrefix(line, "cd "); ok {
		s.dir = filepath.Join(s.dir, to)
		line = ":"
	}
	c := exec.Command("sh", "-c", fmt.Sprintf("(exit %d)\n%s", s.status, line))
	var out, errOut bytes.Buffer
	c.Dir, c.Stdout, c.Stderr = s.dir, &out, &errOut
	if err := c.Run(); c.ProcessState == nil {
		panic(err) // there is no such folder, or no shell
	}
	s.status = c.ProcessState.ExitCode()
	return out.String(), errOut.String()
}

// differs compares what the text has below the command with what was printed,
// and tells the first line that is unlike.
func (e example) differs(printed string) string {
	got := trimBlank(strings.Split(printed, "\n"))
	parts := splitAt(e.prints, "...")
	for i, part := range parts {
		at, alike := 0, 0
		switch last := i == len(parts)-1; {
		case i == 0: // from the first line on
			alike = common(part, got)
			if last && alike == len(part) && len(got) > len(part) {
				return fmt.Sprintf("the text ends before %q", got[alike])
			}
		case last: // to the last line
			at = max(0, len(got)-len(part))
			alike = common(part, got[at:])
		default: // anywhere
			at, alike = find(part, got)
		}
		if alike < len(part) {
			return fmt.Sprintf("the text has %q where it prints %q", part[alike], append(got, "the end")[at+alike])
		}
		got = got[at+alike:]
	}
	return ""
}

// find gives the first place where all of part stands in lines, else the one
// where most of it does, and how many lines of it.
func find(part, lines []string) (at, most int) {
	for i := range lines {
		if n := common(part, lines[i:]); n > most {
			at, most = i, n
		}
	}
	return at, most
}

// common counts the lines that are alike from the first on.
func common(a, b []string) int {
	n := 0
	for n < len(a) && n < len(b) && a[n] == b[n] {
		n++
	}
	return n
}

// splitAt parts lines where one is the mark.
func splitAt(lines []string, mark string) [][]string {
	parts := [][]string{nil}
	for _, l := range lines {
		if l == mark {
			parts = append(parts, nil)
		} else {
			parts[len(parts)-1] = append(parts[len(parts)-1], l)
		}
	}
	return parts
}

// trimBlank drops blank lines at the end.
func trimBlank(lines []string) []string {
	for len(lines) > 0 && strings.TrimSpace(lines[len(lines)-1]) == "" {
		lines = lines[:len(lines)-1]
	}
	return lines
}
