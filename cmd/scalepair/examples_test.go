package main

import (
	"os"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every example of every command's help runs, in order, in an empty folder.
func TestHelpExamples(t *testing.T) {
	root := tree()
	root.InitDefaultHelpCmd()
	for _, c := range append([]*cobra.Command{root}, root.Commands()...) {
		t.Run(c.Name(), func(t *testing.T) {
			examples := helpExamples(c.Example)
			for _, e := range examples {
				assert.True(t, strings.HasPrefix(e.command, "scalepair "), e.command)
			}
			for _, problem := range newShell(t).follow(examples) {
				t.Error(problem)
			}
		})
	}
}

// Every command line of the README runs, in order, and prints what the README
// shows below it.
func TestReadmeExamples(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	for _, problem := range newShell(t).follow(consoleExamples(string(text))) {
		t.Error("README.md, " + problem)
	}
}

const consoleBlock = "```console\n"

func TestConsoleExamples(t *testing.T) {
	text := "Text with $ scalepair nothing.\n" + consoleBlock +
		"$ scalepair version\nscalepair 1\n\nbuilt\n\n$ scalepair advise \\\n> --bass 690mm\n$ cat x\n...\n```\n" +
		"scalepair in prose\n```sh\n# remark\n  scalepair init\nother\n```\n```\nscalepair layout\noutput\n```\n"
	assert.Equal(t, []example{
		{3, "scalepair version", []string{"scalepair 1", "", "built"}},
		{8, "scalepair advise \\\n--bass 690mm", nil},
		{10, "cat x", []string{"..."}},
		{16, "scalepair init", nil},
		{20, "scalepair layout", nil},
	}, consoleExamples(text))
}

// The test of the examples itself: what it must pass and what it must catch.
func TestExamplesAreHeldToTheText(t *testing.T) {
	for _, c := range []struct {
		name, text string
		problem    string // "" for none
	}{
		{"output as shown", "$ echo one; echo two\none\ntwo\n", ""},
		{"output in part", "$ printf 'a\\nb\\nc\\nd\\n'\na\n...\nd\n", ""},
		{"nothing left out", "$ printf 'a\\nd\\n'\na\n...\nd\n", ""},
		{"output not shown", "$ scalepair version\n", ""},
		{"both outputs, as a console shows them", "$ echo out; echo err >&2\nerr\nout\n", ""},
		{"both outputs, the result first", "$ echo out; echo err >&2\nout\nerr\n", ""},
		{"the result alone", "$ echo out; echo err >&2\nout\n", ""},
		{"a pipe", "$ scalepair version | head -1 | cut -c1-9\nscalepair\n", ""},
		{"files stay from command to command", "$ mkdir a\n$ cd a\n$ echo x > y\n$ cat y\nx\n", ""},
		{"not run", "$ go test ./...\n", ""},
		{"a failure that is shown", "$ scalepair advsie\nscalepair: there is no such command (\"advsie\"); did you mean advise?\n$ echo $?\n2\n", ""},
		{"a failure", "$ scalepair advsie\n", "exit 2"},
		{"a file that is not there", "$ cat nothing\n", "exit 1"},
		{"another line", "$ echo one\nOne\n", `the text has "One" where it prints "one"`},
		{"a line too few", "$ printf 'a\\nb\\n'\na\n", `the text ends before "b"`},
		{"a line too many", "$ echo a\na\nb\n", `the text has "b" where it prints "the end"`},
		{"a line twice", "$ echo a\na\n...\na\n", `the text has "a" where it prints "the end"`},
		{"an end that is not reached", "$ printf 'a\\nb\\n'\n...\na\n", `the text has "a" where it prints "b"`},
		{"a part that is not there", "$ printf 'a\\nb\\nc\\n'\n...\nb\nd\n...\n", `the text has "d" where it prints "c"`},
		{"parts in another order", "$ printf 'a\\nb\\nc\\n'\n...\nb\n...\na\n...\n", `the text has "a" where it prints "c"`},
		{"another exit code", "$ scalepair advsie\n$ echo $?\n1\n", `it prints "2"`},
		{"output that cannot be checked", "$ go version\ngo1\n", "not run"},
	} {
		t.Run(c.name, func(t *testing.T) {
			problems := newShell(t).follow(consoleExamples(consoleBlock + c.text + "```\n"))
			if c.problem == "" {
				assert.Empty(t, problems)
			} else if assert.Len(t, problems, 1) {
				assert.Contains(t, problems[0], c.problem)
			}
		})
	}
}
