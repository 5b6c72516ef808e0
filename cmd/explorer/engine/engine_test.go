package engine_test

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/explorer/engine"
	"scalepair/data/testutil"
)

// builds are those on which page and command line must say the same: the embedded
// demo, and one with each peculiarity.
var builds = []string{"demo", "eight_inch", "bass_five", "seven", "reverse"}

// some are the builds of a run: in short ones two.
func some() []string { return builds[:testutil.Times(2, len(builds))] }

var program string

func TestMain(m *testing.M) {
	dir, err := os.MkdirTemp("", "scalepair")
	if err != nil {
		panic(err)
	}
	program = filepath.Join(dir, "scalepair")
	if out, err := exec.Command("go", "build", "-o", program, "scalepair/cmd/scalepair").CombinedOutput(); err != nil {
		panic(string(out))
	}
	code := m.Run()
	os.RemoveAll(dir)
	os.Exit(code)
}

// folder copies a build into a folder of its own and gives its texts.
func folder(t *testing.T, name string) (dir, build, readings string) {
	t.Helper()
	from := map[string]string{"demo": "../../../data/demo", "reverse": "../../../data/demo"}[name]
	if from == "" {
		from = "../../../testdata/builds/" + name
	}
	dir = t.TempDir()
	for file, text := range map[string]*string{"build.toml": &build, "readings.csv": &readings} {
		b, err := os.ReadFile(filepath.Join(from, file))
		require.NoError(t, err)
		*text = string(b)
		if name == "reverse" {
			*text = reversed(*text)
		}
		require.NoError(t, os.WriteFile(filepath.Join(dir, file), []byte(*text), 0o666))
	}
	return dir, build, readings
}

// reversed turns the demo's fan round.
func reversed(text string) string {
	return strings.NewReplacer("[scales]", "[scales]\nreverse_fan = true").Replace(text)
}

// command runs the command line and gives what it prints.
func command(t *testing.T, dir string, args ...string) (out, errs string) {
	t.Helper()
	c := exec.Command(program, args...)
	c.Dir = dir
	var stderr strings.Builder
	c.Stderr = &stderr
	b, _ := c.Output() // check ends with 1 where marks are off
	return string(b), stderr.String()
}

type answer struct {
	OK     bool
	Result json.RawMessage
	Notes  []string
	Faults []engine.Fault
}

func call(t *testing.T, e *engine.Engine, name string, request map[string]any) answer {
	t.Helper()
	text, err := json.Marshal(request)
	require.NoError(t, err)
	var a answer
	require.NoError(t, json.Unmarshal(e.Call(name, text), &a))
	return a
}

func TestEngineSaysWhatTheCommandLineSays(t *testing.T) {
	marks, err := os.ReadFile("../../../testdata/builds/demo_marks.csv")
	require.NoError(t, err)
	for _, name := range some() {
		var e engine.Engine
		dir, build, readings := folder(t, name)
		require.NoError(t, os.WriteFile(filepath.Join(dir, "measured.csv"), marks, 0o666))
		pair := map[string]any{"bass": "27 in", "treble": "25.5 in"}
		if name == "reverse" {
			pair = map[string]any{"bass": "640 mm", "treble": "650 mm"}
		}
		for _, c := range []struct {
			call  string
			line  []string
			flags map[string]any
		}{
			{"advise", []string{"advise"}, map[string]any{"trials": "200"}},
			{"advise", []string{"advise", "--full"}, map[string]any{"full": true, "trials": "0", "lengths": "in"}},
			{"tension", []string{"tension"}, pair},
			{"tension", []string{"tension"}, map[string]any{"explain": "2"}},
			{"tension", []string{"tension"}, map[string]any{"pitch": "432", "capo": "2"}},
			{"layout", []string{"layout"}, pair},
			{"layout", []string{"layout"}, map[string]any{"neutral": "bridge"}},
			{"neutral", []string{"layout", "--neutral-table"}, map[string]any{"played": "1-9"}},
			{"gauges", []string{"gauges"}, nil},
			{"next", []string{"gauges", "--next"}, nil},
			{"compare", []string{"compare"}, nil},
			{"compare", []string{"compare"}, map[string]any{"pair": []string{"690 / 650 mm", "25.5 in"}, "gauges": "suggested"}},
			{"bench", []string{"bench"}, map[string]any{"calipers": "0.05mm"}},
			{"blank", []string{"advise"}, map[string]any{"blank": "600 x 80 mm"}},
			{"check", []string{"check", "measured.csv"}, pair},
		} {
			line := append(c.line, "--format", "json")
			for flag, value := range c.flags {
				switch v := value.(type) {
				case string:
					line = append(line, "--"+flag, v)
				case []string:
					for _, one := range v {
						line = append(line, "--"+flag, one)
					}
				}
			}
			t.Run(name+" "+strings.Join(line, " "), func(t *testing.T) {
				want, errs := command(t, dir, line...)
				got := call(t, &e, c.call, map[string]any{"build": build, "readings": readings, "marks": string(marks), "flags": c.flags})
				if want == "" {
					require.False(t, got.OK)
					var said []string
					for _, f := range got.Faults {
						said = append(said, f.Text)
					}
					for _, line := range strings.Split(strings.TrimSpace(errs), "\n") {
						if !strings.Contains(line, ", here and in ") { // of many alike the command line prints one
							assert.Contains(t, append(said, got.Notes...), line)
						}
					}
					return
				}
				require.True(t, got.OK, "%+v", got.Faults)
				result := got.Result
				if c.call == "advise" { // which has the map too
					var all map[string]json.RawMessage
					require.NoError(t, json.Unmarshal(result, &all))
					delete(all, "map")
					result, err = json.Marshal(all)
					require.NoError(t, err)
				}
				assert.JSONEq(t, want, string(result))
				for _, note := range got.Notes {
					assert.Contains(t, errs, note)
				}
			})
		}
	}
}

func TestFilesAreThoseOfTheCommands(t *testing.T) {
	for _, name := range some() {
		t.Run(name, func(t *testing.T) {
			var e engine.Engine
			dir, build, readings := folder(t, name)
			for _, c := range []struct {
				file, kind string
				line       []string
				flags      map[string]any
			}{
				{"fan.pdf", "pdf", []string{"draw", "--out", "fan.pdf"}, nil},
				{"letter.pdf", "pdf", []string{"draw", "--out", "letter.pdf", "--paper", "Letter", "--left-handed"}, map[string]any{"paper": "Letter", "left-handed": true}},
				{"fan.svg", "svg", []string{"draw", "--out", "fan.svg"}, nil},
				{"fan.dxf", "dxf", []string{"draw", "--out", "fan.dxf"}, nil},
				{"sheet.html", "sheet", []string{"bench", "--out", "sheet.html", "--date", "3 May"}, map[string]any{"date": "3 May"}},
			} {
				_, errs := command(t, dir, c.line...)
				want, err := os.ReadFile(filepath.Join(dir, c.file))
				require.NoError(t, err, errs)
				flags := map[string]any{"kind": c.kind}
				for k, v := range c.flags {
					flags[k] = v
				}
				a := call(t, &e, "file", map[string]any{"build": build, "readings": readings, "flags": flags})
				require.True(t, a.OK, "%+v", a.Faults)
				var got struct{ Bytes []byte }
				require.NoError(t, json.Unmarshal(a.Result, &got))
				assert.Equal(t, string(want), string(got.Bytes), c.file)
			}
			want, _ := command(t, dir, "check", "--form")
			a := call(t, &e, "form", map[string]any{"build": build, "readings": readings})
			var got struct{ Marks string }
			require.NoError(t, json.Unmarshal(a.Result, &got))
			assert.Equal(t, want, got.Marks)
		})
	}
}

func TestSavedAsAdviseSaves(t *testing.T) {
	for _, name := range some() {
		t.Run(name, func(t *testing.T) {
			var e engine.Engine
			dir, build, readings := folder(t, name)
			_, errs := command(t, dir, "advise", "--save=longest bass", "--force")
			want, err := os.ReadFile(filepath.Join(dir, "build.toml"))
			require.NoError(t, err, errs)
			a := call(t, &e, "save", map[string]any{"build": build, "readings": readings, "flags": map[string]any{"pick": "longest bass"}})
			require.True(t, a.OK, "%+v", a.Faults)
			var got struct{ Build string }
			require.NoError(t, json.Unmarshal(a.Result, &got))
			assert.Equal(t, string(want), got.Build)
		})
	}
}
