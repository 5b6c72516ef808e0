package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/cmd/scalepair/internal/trial"
)

// The property tests have one seed, unless the command line names another: every
// run draws the same builds.
func init() {
	for name, value := range map[string]string{"rapid.seed": "161803", "rapid.nofailfile": "true"} {
		if err := flag.Set(name, value); err != nil {
			panic(err)
		}
	}
}

// trials is a folder in which random builds are tried, one after the other, and
// the count of how it went.
type trials struct {
	folder            string
	accepted, refused int
}

// overTrials runs a check over random builds. At least half of them must be
// accepted, or the check would hold for nothing.
func overTrials(t *testing.T, check func(t *rapid.T, s *trials, b *trial.Build)) {
	s := &trials{folder: t.TempDir()}
	rapid.Check(t, func(t *rapid.T) {
		b := trial.New(rapid.Uint64().Draw(t, "build of seed"))
		s.write(t, "build", b.TOML(false), b.Readings(false))
		check(t, s, b)
	})
	if !t.Failed() {
		assert.Greater(t, s.accepted, s.refused, "of the builds tried at least half must be accepted")
	}
}

// write puts a build with its readings into the folder of that name.
func (s *trials) write(t require.TestingT, name, toml, readings string) {
	dir := filepath.Join(s.folder, name)
	require.NoError(t, os.MkdirAll(dir, 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "build.toml"), []byte(toml), 0o600))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "readings.csv"), []byte(readings), 0o600))
}

// path is a file in the folder of trials.
func (s *trials) path(parts ...string) string {
	return filepath.Join(append([]string{s.folder}, parts...)...)
}

// ran is what a run printed.
type ran struct {
	code        int
	out, errOut string
}

// run runs a command on the build of that name, and holds it to what every run
// must keep.
func (s *trials) run(t require.TestingT, name string, args ...string) ran {
	line := slices.Insert(slices.Clone(args), 1, s.path(name, "build.toml"))
	if args[0] == "explain" { // string first
		line[1], line[2] = line[2], line[1]
	}
	var out, errOut bytes.Buffer
	o := ran{code: run(line, &out, &errOut)}
	o.out, o.errOut = out.String(), errOut.String()
	o.errOut = strings.ReplaceAll(o.errOut, s.path(name)+string(filepath.Separator), "")
	switch o.code {
	case exitDone:
		requireNumbers(t, o.out, "%q", args)
	default:
		requireRefusedCleanly(t, args, o)
	}
	requireNumbers(t, o.errOut, "%q", args)
	return o
}

// requireNumbers looks for what no number may look like, and shows its line.
func requireNumbers(t require.TestingT, text string, about ...any) {
	if !noNumber.MatchString(text) {
		return
	}
	for line := range strings.Lines(text) {
		require.NotRegexp(t, noNumber, line, about...)
	}
}

var (
	// faultLine matches a message with place, what is wrong, and what would do.
	faultLine = regexp.MustCompile(`^[^ ].*?: .+; .+$`)
	// hintLine matches what is said beside a result or before a fault.
	hintLine = regexp.MustCompile(`^(pair and gauges are not all settled|no pair is settled): `)
)

// requireRefusedCleanly holds a refusal to exit code 1, nothing on stdout, and
// messages that name place, fault and remedy. advise, when a limit drops every
// pair, prints what was dropped in place of messages.
func requireRefusedCleanly(t require.TestingT, args []string, o ran) {
	require.Equal(t, exitInput, o.code, "%q: %s", args, o.errOut)
	require.Empty(t, o.out, "%q", args)
	if strings.Contains(o.errOut, "No pair is left") {
		require.Regexp(t, `Most pairs fall to: .+\. [A-Z].+\.|exchange the ranges`, strings.ReplaceAll(o.errOut, "\n", " "))
		return
	}
	faults := 0
	for line := range strings.Lines(o.errOut) {
		if line = strings.TrimSpace(line); hintLine.MatchString(line) {
			continue
		}
		faults++
		require.Regexp(t, faultLine, line, "%q", args)
	}
	require.Positive(t, faults, "%q says nothing", args)
}

// values runs a command for its JSON; false when the build is refused.
func values[T any](t require.TestingT, s *trials, name string, args ...string) (v T, ok bool) {
	o := s.run(t, name, append(args, "--format", "json")...)
	if o.code != exitDone {
		return v, false
	}
	d := json.NewDecoder(strings.NewReader(o.out))
	d.DisallowUnknownFields()
	require.NoError(t, d.Decode(&v), "%q", args)
	return v, true
}

// others are the commands of which each build gets one, beside those of other
// tests.
var others = [][]string{
	{"neutral", "--format", "json"},
	{"neutral", "--step", "0.5"},
	{"compare", "--format", "json"},
	{"compare", "--gauges", "suggested", "--capo", "0", "--capo", "2"},
	{"explain", "1", "--format", "json"},
	{"explain", "3"},
	{"weigh", "--format", "json"},
	{"gauges"},
	{"setout", "--lengths", "in64"},
	{"advise", "--front", "--lengths", "in", "--forces", "lbf"},
	{"tension", "--format", "html", "--forces", "kgf"},
	{"layout", "--format", "markdown", "--lengths", "in"},
	{"draw", "--out", "fan.svg", "--out", "fan.dxf", "--force"},
	{"draw", "--out", "strips.pdf", "--paper", "A3", "--strips", "--force"},
	{"sheet", "--out", "bench.html", "--force"},
}

// Every build is either worked out, with sound numbers, or refused with its
// fault and remedy; and what one command takes, the others do not choke on.
func TestTrialsAreSoundOrRefused(t *testing.T) {
	overTrials(t, func(t *rapid.T, s *trials, b *trial.Build) {
		args := slices.Clone(others[b.Seed%uint64(len(others))])
		for i := range args {
			if i > 0 && args[i-1] == "--out" {
				args[i] = s.path(args[i])
			}
		}
		if s.run(t, "build", args...).code == exitDone {
			s.accepted++
			for i := range args {
				if i > 0 && args[i-1] == "--out" && !strings.HasSuffix(args[i], ".pdf") {
					requireNumbers(t, contents(t, args[i]), "%q", args)
				}
			}
		} else {
			s.refused++
		}
	})
}
