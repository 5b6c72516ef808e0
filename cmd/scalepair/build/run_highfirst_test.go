package build_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
)

// demoWith writes the demo into a folder of its own with one text changed.
func demoWith(t *testing.T, old, new string) string {
	t.Helper()
	folder := t.TempDir()
	src, err := os.ReadFile(demo)
	require.NoError(t, err)
	require.Contains(t, string(src), old)
	file := filepath.Join(folder, "build.toml")
	require.NoError(t, os.WriteFile(file, []byte(strings.Replace(string(src), old, new, 1)), 0o600))
	readings, err := os.ReadFile(filepath.Join(filepath.Dir(demo), "readings.csv"))
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(folder, "readings.csv"), readings, 0o600))
	return file
}

func TestGaugesHighStringFirst(t *testing.T) {
	const tuned = `tuning = "B1 E2 A2 D3 F#3 B3"`
	for _, c := range []struct{ name, old, new, want string }{
		{"given", tuned, tuned + "\ngauges = [\"p13\", \"p17\", \"w24\", \"w34\", \"w44\", \"w56\"]",
			`:12:10: every gauge is thicker than the one before it ("p13 p17 w24 w34 w44 w56"); low string first? write ["w56", "w44", "w34", "w24", "p17", "p13"]; a set that is meant so needs ordering = false under [strings]`},
		{"reference", `["w46", "w36", "w26", "p17", "p13", "p10"]`, `["p10", "p13", "p17", "w26", "w36", "w46"]`, `write ["w46", "w36", "w26", "p17", "p13", "p10"]`},
		{"chosen", "[limits]", "[chosen]\nscale = \"660 mm\"\ngauges = [\"p13\", \"p17\", \"w24\", \"w34\", \"w44\", \"w56\"]\n[limits]", "every gauge is thicker"},
		{"a column", "[limits]", "[[compare]]\nname = \"x\"\ngauges = [\"p13\", \"p17\", \"w24\", \"w34\", \"w44\", \"w56\"]\n[limits]", "every gauge is thicker"},
		{"not all the way", tuned, tuned + "\ngauges = [\"p13\", \"p17\", \"w24\", \"w34\", \"w44\", \"w42\"]", ""},
		{"two alike", tuned, tuned + "\ngauges = [\"p13\", \"p13\", \"w24\", \"w34\", \"w44\", \"w56\"]", ""},
		{"meant so", tuned, tuned + "\nordering = false\ngauges = [\"p13\", \"p17\", \"w24\", \"w34\", \"w44\", \"w56\"]", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			err := asked(build.Load(demoWith(t, c.old, c.new), nil))
			if c.want == "" {
				assert.NoError(t, err)
				return
			}
			assert.ErrorContains(t, err, c.want)
		})
	}
	err := asked(build.Load(demo, flags(t, "--gauges", "p13 p17 w24 w34 w44 w56")))
	assert.ErrorContains(t, err, "--gauges: every gauge is thicker than the one before it")
}

func TestTuningFlagHighStringFirst(t *testing.T) {
	_, err := build.Load(demo, flags(t, "--tuning", "B3 F#3 D3 A2 E2 B1"))
	assert.ErrorContains(t, err, `--tuning: it falls from its first note to its last ("B3 F#3 D3 A2 E2 B1"); low string first? write "B1 E2 A2 D3 F#3 B3"`)
	_, err = build.Load(demo, flags(t, "--tuning", "E3 A3 D4 G3 B3 E4"))
	assert.NoError(t, err, "a tuning that turns round once")
	const tuned = `tuning = "B1 E2 A2 D3 F#3 B3"`
	_, err = build.Load(demoWith(t, tuned, tuned+"\nordering = false"), flags(t, "--tuning", "B3 F#3 D3 A2 E2 B1"))
	assert.NoError(t, err)
}

// flags are those of a command line.
func flags(t *testing.T, args ...string) *build.Flags {
	t.Helper()
	f, err := build.FlagsOf(args...)
	require.NoError(t, err)
	return f
}

// asked asks a run for everything that names gauges.
func asked(r *build.Run, err error) error {
	if err == nil {
		_, err = r.Plan()
	}
	if err == nil {
		_, err = r.Columns(build.Comparison{})
	}
	return err
}
