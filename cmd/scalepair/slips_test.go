package main

import (
	"bytes"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Words may be left empty, and arguments that only look like slips are taken as
// they are.
func TestWhatIsNoSlipOfTheLine(t *testing.T) {
	dir := soundFolder(t)
	t.Chdir(dir)
	for _, line := range []string{
		`draw --out fan.svg --remark "" --date ""`,
		`draw --out fan.svg --force --remark "– for the bench –"`,
		`tension --bass 650mm build.toml`,
	} {
		var out, errOut bytes.Buffer
		assert.Equal(t, exitDone, run(argumentsOf(t, line), &out, &errOut), "scalepair %s\n%s", line, errOut.String())
	}
}

// Every flag that takes a value refuses an empty one but for words, so that an
// empty variable of a script does not make another run of it.
func TestEmptyFlagsAreRefused(t *testing.T) {
	t.Chdir(soundFolder(t))
	for _, f := range allFlagged() {
		if slices.Contains(freeWords, f.flag) {
			continue
		}
		var out, errOut bytes.Buffer
		code := run(append(append([]string{}, f.args...), "--"+f.flag+"="), &out, &errOut)
		assert.Equal(t, exitUsage, code, "%v --%s=\n%s", f.args, f.flag, errOut.String())
		assert.Empty(t, out.String())
		assert.Contains(t, errOut.String(), "--"+f.flag+": ")
	}
}
