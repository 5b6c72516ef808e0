package main

import (
	"bytes"
	"testing"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/assert"
)

// A wrong command line exits with 2, a file that does not allow it with 1, and
// neither prints a result.
func TestExitCodes(t *testing.T) {
	for _, c := range []struct {
		name string
		line []string
		want int
	}{
		{"done", []string{"version"}, exitDone},
		{"help", []string{"advise", "--help"}, exitDone},
		{"no such command", []string{"advsie"}, exitUsage},
		{"help of no such command", []string{"help", "advsie"}, exitUsage},
		{"no such flag", []string{"advise", "--tunning", "E2"}, exitUsage},
		{"a flag without its value", []string{"advise", "--bass"}, exitUsage},
		{"a flag's value of the wrong kind", []string{"advise", "--width", "wide"}, exitUsage},
		{"a flag's value that does not exist", []string{"advise", "--format", "tabel"}, exitUsage},
		{"too many files", []string{"advise", "a.toml", "b.toml"}, exitUsage},
		{"a word where none belongs", []string{"version", "now"}, exitUsage},
		{"no such shell", []string{"completion", "bsh"}, exitUsage},
		{"no such file", []string{"advise", "bild.toml"}, exitInput},
	} {
		t.Run(c.name, func(t *testing.T) {
			var out, errOut bytes.Buffer
			assert.Equal(t, c.want, run(c.line, &out, &errOut), errOut.String())
			if c.want != exitDone {
				assert.Empty(t, out.String())
				assert.NotEmpty(t, errOut.String())
				assert.NotContains(t, errOut.String(), "strconv")
			}
		})
	}
}

// Every command says what it is, with examples to paste, and every flag what
// its value is, in another word than the program's own types.
func TestEveryCommandIsExplained(t *testing.T) {
	for _, c := range tree().Commands() {
		assert.NotEmpty(t, c.Short, c.Name())
		assert.NotEmpty(t, c.Long, c.Name())
		assert.NotEmpty(t, c.Example, c.Name())
		assert.NotRegexp(t, `\.$`, c.Short, c.Name())
		c.Flags().VisitAll(func(f *pflag.Flag) {
			value, usage := pflag.UnquoteUsage(f)
			assert.NotEmpty(t, usage, f.Name)
			assert.NotRegexp(t, `^(string|strings|stringArray|u?int|float|duration|value)$`, value, c.Name()+" --"+f.Name)
		})
	}
}
