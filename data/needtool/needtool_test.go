package needtool_test

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"

	"scalepair/data/needtool"
)

// recorder stands in for a test and notes how it ended.
type recorder struct {
	testing.TB
	skipped, failed string
}

func (r *recorder) Helper() {}
func (r *recorder) Skipf(format string, args ...any) {
	r.skipped = fmt.Sprintf(format, args...)
}
func (r *recorder) Fatalf(format string, args ...any) {
	r.failed = fmt.Sprintf(format, args...)
}

func TestNeed(t *testing.T) {
	here, err := os.Executable()
	assert.NoError(t, err)
	t.Setenv("PATH", filepath.Dir(here))
	for _, c := range []struct {
		name            string
		need            func(t testing.TB) string
		want            string
		skipped, failed string
	}{
		{"a program that is here", func(t testing.TB) string { return needtool.NeedTool(t, filepath.Base(here)) }, here, "", ""},
		{"a program that is not", func(t testing.TB) string { return needtool.NeedTool(t, "no-such-program") }, "",
			`==== NOT CHECKED: the program "no-such-program" is not here, so this check was left out ====`,
			`NOT INSTALLED: the program "no-such-program"; under CI=true this check must run`},
		{"a file that is here", func(t testing.TB) string { return needtool.NeedPath(t, here, "built") }, here, "", ""},
		{"a file that is not", func(t testing.TB) string { return needtool.NeedPath(t, "nowhere/such", "run npm ci") }, "nowhere/such",
			"==== NOT CHECKED: nowhere/such (run npm ci) is not here, so this check was left out ====",
			"NOT INSTALLED: nowhere/such (run npm ci); under CI=true this check must run"},
	} {
		t.Run(c.name, func(t *testing.T) {
			for ci, ended := range map[string]func(r *recorder) (got, other string){
				"":      func(r *recorder) (string, string) { return r.skipped, r.failed },
				"false": func(r *recorder) (string, string) { return r.skipped, r.failed },
				"true":  func(r *recorder) (string, string) { return r.failed, r.skipped },
			} {
				t.Setenv("CI", ci)
				r := &recorder{}
				assert.Equal(t, c.want, c.need(r))
				got, other := ended(r)
				assert.Empty(t, other)
				if ci == "true" {
					assert.Equal(t, c.failed, got)
				} else {
					assert.Equal(t, c.skipped, got)
				}
			}
		})
	}
}
