package main

import (
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "rewrite the wanted output of the command scripts")

// programs are what scripts and tests can run under its own name.
var programs = map[string]func(){"scalepair": main}

func TestMain(m *testing.M) { testscript.Main(m, programs) }

// TestScripts runs every command script of testdata/script. A script finds the
// builds of testdata/builds in $BUILDS.
func TestScripts(t *testing.T) {
	builds, err := filepath.Abs("../../testdata/builds")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "../../testdata/script", UpdateScripts: *update, RequireExplicitExec: true, RequireUniqueNames: true,
		Setup: func(env *testscript.Env) error {
			env.Setenv("BUILDS", builds)
			env.Setenv("LC_ALL", "C.UTF-8")
			return os.MkdirAll(filepath.Join(env.WorkDir, "home"), 0o755)
		},
	})
}
