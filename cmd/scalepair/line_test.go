package main

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Slips of the command line end with exit code 2, one line on stderr, and
// nothing on stdout.
func TestSlipsOfTheLine(t *testing.T) {
	for line, want := range map[string]string{
		"adivse":                           `scalepair: there is no such command ("adivse"); did you mean advise?`,
		"sing":                             `scalepair: there is no such command ("sing"); scalepair --help lists them`,
		"my.toml":                          `scalepair: there is no such command ("my.toml"); say what to do with the build file: scalepair advise my.toml`,
		"advise --bas 3":                   "--bas: there is no such flag; did you mean --bass?",
		"advise --nonsense":                "--nonsense: there is no such flag; scalepair advise --help explains",
		"advise --bass":                    "scalepair advise: flag needs an argument: --bass; scalepair advise --help explains",
		"advise --width x":                 `--width: the value does not read ("x"); it is: line width in letters (default: the terminal's, 80 when piped)`,
		"advise --tuning=":                 `--tuning: a tuning is missing; write notes such as "E2 A2 D3 G3 B3 E4", or a name such as "baritone B"`,
		"advise --only=":                   "--only: the value is empty; leave the flag out, or give it: print these tables only, by name",
		"advise --bass=660mm --bass 670mm": "--bass: given more than once; it takes one value",
		"advise a b":                       `scalepair advise: one build file at a time ("a b"); put a path or a value with blanks in quotes: "650 mm"`,
		"version x":                        `scalepair version: this takes no file or word ("x"); scalepair version --help explains`,
	} {
		var out, errOut bytes.Buffer
		assert.Equal(t, exitUsage, run(context.Background(), strings.Fields(line), &out, &errOut), line)
		assert.Equal(t, want+"\n", errOut.String(), line)
		assert.Empty(t, out.String(), line)
	}
	var out, errOut bytes.Buffer
	assert.Equal(t, exitUsage, run(context.Background(), []string{"init", ""}, &out, &errOut))
	assert.Equal(t, "scalepair init: an argument is empty; leave it out, or give it\n", errOut.String())
}

// The commands stand in working order, each in its group.
func TestCommandsInWorkingOrder(t *testing.T) {
	var groups, names []string
	for _, c := range tree().Commands() {
		names = append(names, c.Name())
		if len(groups) == 0 || groups[len(groups)-1] != c.GroupID {
			groups = append(groups, c.GroupID)
		}
		assert.NotEmpty(t, c.Short, c.Name())
	}
	assert.Equal(t, []string{"start", "choose", "make", ""}, groups)
	assert.Equal(t, []string{"completion", "version"}, names[len(names)-2:])
}
