package main

import (
	"context"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

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
func pages(t *testing.T) string {
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

// TestBrowser runs the tests of page/test in a real browser.
func TestBrowser(t *testing.T) {
	testutil.NeedFull(t)
	node, chromium := testutil.NeedTool(t, "node"), testutil.NeedTool(t, "chromium")
	root, err := filepath.Abs("../..")
	require.NoError(t, err)
	program := filepath.Join(t.TempDir(), "scalepair")
	out, err := exec.Command("go", "build", "-o", program, "scalepair/cmd/scalepair").CombinedOutput()
	require.NoError(t, err, string(out))
	c := exec.Command(node, "--test", "--test-reporter=spec", "--test-name-pattern="+*pattern, "page/test/")
	c.Env = append(os.Environ(), "SCALEPAIR_PAGES="+pages(t), "SCALEPAIR_PROGRAM="+program, "SCALEPAIR_ROOT="+root, "SCALEPAIR_CHROMIUM="+chromium)
	out, err = c.CombinedOutput()
	t.Logf("%s", out)
	assert.NoError(t, err)
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
	assert.True(t, string(one) == string(again))
	assert.Less(t, len(one), 5_000_000)
	assert.NotContains(t, string(one), "://", "no address")
}
