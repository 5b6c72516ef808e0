package main

import (
	"runtime/debug"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestVersionOf(t *testing.T) {
	revision := debug.BuildSetting{Key: "vcs.revision", Value: "0123456789abcdef0123456789abcdef01234567"}
	changed := debug.BuildSetting{Key: "vcs.modified", Value: "true"}
	for _, c := range []struct {
		name, stamp, module string
		settings            []debug.BuildSetting
		want                string
	}{
		{"a release", "1.2.0", "(devel)", []debug.BuildSetting{revision, changed}, "1.2.0"},
		{"installed by version", "", "v1.2.0", nil, "1.2.0"},
		{"installed before a release", "", "v1.2.0-beta.1", nil, "1.2.0-beta.1"},
		{"a commit without a tag", "", "v0.0.0-20250102030405-0123456789ab", []debug.BuildSetting{revision}, "unreleased, revision 0123456789ab"},
		{"a commit after a tag", "", "v1.2.1-0.20250102030405-0123456789ab+dirty", []debug.BuildSetting{revision, changed}, "unreleased, revision 0123456789ab with changes"},
		{"from a folder", "", "(devel)", nil, "unreleased"},
		{"nothing recorded", "", "", nil, "unreleased"},
		{"a short revision", "", "", []debug.BuildSetting{{Key: "vcs.revision", Value: "77"}}, "unreleased, revision 77"},
	} {
		t.Run(c.name, func(t *testing.T) {
			info := &debug.BuildInfo{Main: debug.Module{Version: c.module}, Settings: c.settings}
			assert.Equal(t, c.want, versionOf(c.stamp, info))
		})
	}
}

func TestDescribe(t *testing.T) {
	info := &debug.BuildInfo{GoVersion: "go1.99", Settings: []debug.BuildSetting{
		{Key: "GOOS", Value: "plan9"}, {Key: "GOARCH", Value: "mips"}, {Key: "vcs.time", Value: "2025-01-02T03:04:05Z"},
	}}
	assert.Equal(t, "scalepair 1.2.0\nbuilt with go1.99 for plan9/mips\n", describe("1.2.0", info))
}
