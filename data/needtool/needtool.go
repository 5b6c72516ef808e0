// Package needtool lets a test use a third-party program or package: where it
// is absent the test is skipped with one loud line, so that the tests pass on
// any machine; where the environment says CI=true it fails instead, so that a
// missing install step is noticed.
package needtool

import (
	"fmt"
	"os"
	"os/exec"
	"strings"
	"testing"
)

// NeedTool gives the path of the program called name. Where it is not on the
// PATH the test is skipped, or failed under CI=true.
func NeedTool(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		miss(t, fmt.Sprintf("the program %q", name))
	}
	return path
}

// NeedPath gives path itself when a file or folder stands there, under the
// rules of NeedTool. install says in words how it comes to be there.
func NeedPath(t testing.TB, path, install string) string {
	t.Helper()
	if _, err := os.Stat(path); err != nil {
		miss(t, fmt.Sprintf("%s (%s)", path, install))
	}
	return path
}

// NeedRun gives what a command prints when it runs well, under the rules of
// NeedTool: a command that fails means that what it needs is not installed.
// install says in words what that is.
func NeedRun(t testing.TB, install, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(NeedTool(t, name), args...).CombinedOutput()
	if err != nil {
		miss(t, fmt.Sprintf("%s (%s %s: %v)", install, name, strings.Join(args, " "), err))
	}
	return string(out)
}

// NeedRoot lets a test go on where it may do what only the system's
// administrator may, under the rules of NeedTool.
func NeedRoot(t testing.TB) {
	t.Helper()
	if os.Geteuid() != 0 {
		miss(t, "the right to give files to others and to run as somebody else")
	}
}

func miss(t testing.TB, what string) {
	t.Helper()
	if os.Getenv("CI") == "true" {
		t.Fatalf("NOT INSTALLED: %s; under CI=true this check must run", what)
		return
	}
	t.Skipf("==== NOT CHECKED: %s is not here, so this check was left out ====", what)
}
