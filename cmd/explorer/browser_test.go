package main

import (
	"bytes"
	"context"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"text/template"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
)

// pattern takes only the tests of the page whose names hold it:
//
//	SCALEPAIR_TESTS=full go test ./cmd/explorer -run Browser -args -page slider
var pattern = flag.String("page", ".", "run only the page's tests whose names hold this")

// hostile puts what a page must not obey into the labels of a build.
func hostile(text string) string {
	const evil = `</script><img src=x onerror=alert(1)><b>'`
	return strings.NewReplacer("(invented)", evil, "smoked oak", evil+"&amp;", "p10,", "p10<b>,", `"p10"`, `"p10<b>"`).Replace(text)
}

// reversed turns the demo's fan round.
func reversed(text string) string {
	return strings.Replace(text, "[scales]", "[chosen]\nbass = \"640 mm\"\ntreble = \"650 mm\"\n\n[scales]\nreverse_fan = true", 1)
}

// pages writes a page for each build, with the build's files in a folder beside it.
func pages(t testing.TB) string {
	t.Helper()
	dir := t.TempDir()
	p, err := makeParts(context.Background())
	require.NoError(t, err)
	same := func(text string) string { return text }
	for name, of := range map[string]struct {
		from   string
		change func(string) string
	}{
		"demo":       {"../../data/demo", same},
		"eight_inch": {"../../testdata/builds/eight_inch", same},
		"bass_five":  {"../../testdata/builds/bass_five", same},
		"reverse":    {"../../data/demo", reversed},
		"hostile":    {"../../data/demo", hostile},
	} {
		folder := filepath.Join(dir, name)
		require.NoError(t, os.MkdirAll(folder, 0o777))
		for _, file := range []string{"build.toml", "readings.csv"} {
			text, err := os.ReadFile(filepath.Join(of.from, file))
			require.NoError(t, err)
			require.NoError(t, os.WriteFile(filepath.Join(folder, file), []byte(of.change(string(text))), 0o666))
		}
		path := filepath.Join(folder, "build.toml")
		if name == "demo" {
			path = ""
		}
		state, err := firstState(path)
		require.NoError(t, err)
		page, err := p.page(state)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(dir, name+".html"), page, 0o666))
	}
	return dir
}

// script runs scripts of page/test with what harness.mjs asks for.
func script(t testing.TB, args ...string) (string, error) {
	node, chromium := testutil.NeedTool(t, "node"), testutil.NeedTool(t, "chromium")
	root, err := filepath.Abs("../..")
	require.NoError(t, err)
	program := filepath.Join(t.TempDir(), "scalepair")
	out, err := exec.Command("go", "build", "-o", program, "scalepair/cmd/scalepair").CombinedOutput()
	require.NoError(t, err, string(out))
	c := exec.Command(node, args...)
	c.Env = append(os.Environ(), "SCALEPAIR_PAGES="+pages(t), "SCALEPAIR_PROGRAM="+program, "SCALEPAIR_ROOT="+root, "SCALEPAIR_CHROMIUM="+chromium)
	out, err = c.CombinedOutput()
	return string(out), err
}

// TestBrowser runs the tests of the page in a real browser.
func TestBrowser(t *testing.T) {
	testutil.NeedFull(t)
	files, err := filepath.Glob("page/test/*.test.mjs")
	require.NoError(t, err)
	out, err := script(t, append([]string{"--test", "--test-concurrency=2", "--test-reporter=spec", "--test-name-pattern=" + *pattern}, files...)...)
	t.Log(out)
	assert.NoError(t, err)
}

// BenchmarkPage prints how fast the page is in a browser.
func BenchmarkPage(b *testing.B) {
	testutil.NeedFull(b)
	for b.Loop() {
		out, err := script(b, "page/test/speed.mjs")
		require.NoError(b, err, out)
		b.Log("\n" + out)
	}
}

func TestPagesAreTheSameBytesTwice(t *testing.T) {
	testutil.NeedFull(t)
	state, err := firstState("")
	require.NoError(t, err)
	made := func() []byte {
		p, err := makeParts(context.Background())
		require.NoError(t, err)
		page, err := p.page(state)
		require.NoError(t, err)
		return page
	}
	one, again := made(), made()
	assert.True(t, bytes.Equal(one, again))
	assert.Less(t, len(one), 5_000_000)
}

func TestThePageOpensWithABuildAndItsReadings(t *testing.T) {
	demo, err := firstState("")
	require.NoError(t, err)
	assert.True(t, demo.Demo)
	assert.Contains(t, demo.Readings, "w46")
	eight, err := firstState("../../testdata/builds/eight_inch/build.toml")
	require.NoError(t, err)
	assert.False(t, eight.Demo)
	assert.Contains(t, eight.Build, "F#1")
	assert.Contains(t, eight.Readings, "w72")
	_, err = firstState("../../testdata/builds/eight_inch/readings.csv")
	assert.ErrorContains(t, err, "readings.csv:4:6")
}

func TestNoTextEndsItsElement(t *testing.T) {
	p := &parts{html: template.Must(template.New("").Parse("<head>{{.Head}}</head>{{.Foot}}")), script: "run()", style: "a{}"}
	page, err := p.page(first{Build: hostile("name = \"(invented)\"")})
	require.NoError(t, err)
	assert.Equal(t, 5, strings.Count(string(page), "<script"))
	assert.Equal(t, 5, strings.Count(string(page), "</script>"))
	assert.NotContains(t, string(page), "<img")
}
