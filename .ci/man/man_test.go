package main

import (
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

const help = `fan draws a fan.
.so it begins

Usage:
  fan [flags]

To make:
  draw        The fan's drawing

Flags:
  -h, --help   help for fan
`

func TestPage(t *testing.T) {
	got := page("fan", "draw a fan", help)
	assert.True(t, strings.HasPrefix(got, ".TH FAN 1\n.SH NAME\nfan \\- draw a fan\n.SH DESCRIPTION\n.nf\nfan draws a fan.\n\\&.so it begins\n"), got)
	assert.Contains(t, got, ".fi\n.SH TO MAKE\n.nf\n  draw        The fan\\(aqs drawing\n")
	assert.Contains(t, got, "  \\-h, \\-\\-help   help for fan\n")
	if groff, err := exec.LookPath("groff"); err == nil {
		c := exec.Command(groff, "-man", "-ww", "-z")
		c.Stdin = strings.NewReader(got)
		out, err := c.CombinedOutput()
		assert.NoError(t, err)
		assert.Empty(t, string(out))
	}
}

func TestListedCommands(t *testing.T) {
	assert.Equal(t, [][]string{{"  draw        The fan's drawing", "draw", "The fan's drawing"}}, listed.FindAllStringSubmatch(help, -1))
}
