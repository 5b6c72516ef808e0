// Package testutil is what the tests of several packages share: this file how
// long a test may take, its seed and which programs it needs, result.go what every reader
// promises of its results, published.go the printed check values.
package testutil

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"testing"
)

// Full reports whether the long tests are to run at their full length: where
// the environment says SCALEPAIR_TESTS=full.
func Full() bool { return os.Getenv("SCALEPAIR_TESTS") == "full" }

// Seed gives the property tests of a package one seed, unless the command line names
// another, so that every run draws the same cases:
//
//	var _ = testutil.Seed("1")
func Seed(seed string) (done bool) {
	if err := errors.Join(flag.Set("rapid.seed", seed), flag.Set("rapid.nofailfile", "true")); err != nil {
		panic(err)
	}
	return true
}

// Times returns full where Full holds, else short.
func Times(full, short int) int {
	if Full() {
		return full
	}
	return short
}

// NeedFull skips a test that has no short form, unless Full holds.
func NeedFull(t testing.TB) {
	t.Helper()
	if !Full() {
		t.Skip("a long test: SCALEPAIR_TESTS=full runs it")
	}
}

// NeedTool returns the path of a third-party program. Where it is not on the
// PATH the test is skipped with one loud line, or failed where the environment
// says CI=true.
func NeedTool(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		miss(t, fmt.Sprintf("the program %q", name))
	}
	return path
}

// NeedPath returns path itself where a file or folder stands there, under the
// rules of NeedTool. install says how it comes to be there.
func NeedPath(t testing.TB, path, install string) string {
	t.Helper()
	if _, err := os.Stat(path); err != nil {
		miss(t, fmt.Sprintf("%s (%s)", path, install))
	}
	return path
}

// NeedRun returns what a command prints, under the rules of NeedTool: a command
// that fails means that what it needs, named by install, is not there.
func NeedRun(t testing.TB, install, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(NeedTool(t, name), args...).CombinedOutput()
	if err != nil {
		miss(t, fmt.Sprintf("%s (%s %s: %v)", install, name, strings.Join(args, " "), err))
	}
	return string(out)
}

func miss(t testing.TB, what string) {
	t.Helper()
	if os.Getenv("CI") == "true" {
		t.Fatalf("NOT INSTALLED: %s; under CI=true this check must run", what)
	}
	t.Skipf("==== NOT CHECKED: %s is not here, so this check was left out ====", what)
}
