package main

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
)

// ownOutput are the tests that compare with what the program printed before,
// and those that wait for a browser.
const ownOutput = "^Example|^TestGolden|^TestScripts$|^TestReadmeExamples$|^TestConsoleExamples$|^TestHelpExamples$|Browser|OnPaper|DividedRows"

// try builds the program with the error in it and gives the test that finds it,
// "" for none; near keeps to the package's own tests.
func (e slip) try(near bool) (string, error) {
	dir, err := os.MkdirTemp("", "mutate")
	if err != nil {
		return "", err
	}
	defer os.RemoveAll(dir)
	overlay, err := e.overlay(dir)
	if err != nil {
		return "", err
	}
	packages := users(filepath.Dir(e.file))
	if near {
		packages = packages[:1]
	}
	for _, p := range packages {
		if found, err := p.fails(overlay); found != "" || err != nil {
			return found, err
		}
	}
	return "", nil
}

// overlay writes the changed file and the list that lays it over the real one.
func (e slip) overlay(dir string) (string, error) {
	text, err := e.changed()
	if err != nil {
		return "", err
	}
	real, err := filepath.Abs(e.file)
	if err != nil {
		return "", err
	}
	changed, list := filepath.Join(dir, "changed.go"), filepath.Join(dir, "overlay.json")
	over, err := json.Marshal(map[string]map[string]string{"Replace": {real: changed}})
	if err != nil {
		return "", err
	}
	if err := os.WriteFile(changed, []byte(text), 0o600); err != nil {
		return "", err
	}
	return list, os.WriteFile(list, over, 0o600)
}

// tested is a package with tests.
type tested struct {
	path  string
	rapid bool // has tests by package rapid
	uses  []string
}

var failed = regexp.MustCompile(`(?m)^\s*--- FAIL: (\S+)`)

// fails runs the package's tests and names the first that fails.
func (p tested) fails(overlay string) (string, error) {
	args := []string{"test", "-overlay", overlay, "-skip", ownOutput, "-failfast", "-vet=off", "-timeout", "5m", p.path}
	if p.rapid {
		args = append(args, "-rapid.shrinktime=0s")
	}
	out, err := exec.Command("go", args...).CombinedOutput()
	text := string(out)
	switch m := failed.FindStringSubmatch(text); {
	case err == nil:
		return "", nil
	case m != nil:
		return m[1] + " (" + strings.TrimPrefix(p.path, "scalepair/") + ")", nil
	case strings.Contains(text, "panic:"):
		return "a panic (" + strings.TrimPrefix(p.path, "scalepair/") + ")", nil
	}
	return "", fmt.Errorf("%s does not build or run:\n%s", p.path, text)
}

// users are the packages whose tests can see one in dir: itself first, then
// those that use it, nearest first.
func users(dir string) []tested {
	all := packages()
	own := "scalepair/" + dir
	var out []tested
	for _, p := range all {
		if p.path == own || slices.Contains(p.uses, own) {
			out = append(out, p)
		}
	}
	slices.SortStableFunc(out, func(a, b tested) int {
		if near := len(a.uses) - len(b.uses); (a.path == own) == (b.path == own) {
			return near
		}
		if a.path == own {
			return -1
		}
		return 1
	})
	return out
}

// packages lists the packages with all that they and their tests use.
var packages = sync.OnceValue(func() []tested {
	const form = `{{.ImportPath}}|{{join .Deps " "}}|{{join .TestImports " "}} {{join .XTestImports " "}}`
	out, err := exec.Command("go", "list", "-f", form, "./...").Output()
	if err != nil {
		panic(err)
	}
	var list []tested
	for _, line := range strings.Fields(strings.ReplaceAll(string(out), " ", ",")) {
		parts := strings.Split(line, "|")
		tests := strings.Split(parts[2], ",")
		list = append(list, tested{path: parts[0], rapid: slices.Contains(tests, "pgregory.net/rapid"),
			uses: slices.Concat(strings.Split(parts[1], ","), tests)})
	}
	return list
})
