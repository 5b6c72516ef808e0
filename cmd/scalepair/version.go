package main

import (
	"fmt"
	"regexp"
	"runtime/debug"
	"strings"

	"github.com/spf13/cobra"
)

// stamp is the version of a release. The linker sets it:
// go build -ldflags "-X main.stamp=1.2.0".
var stamp string

func (a *app) versionCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "version",
		Short: "Print the version, and what it was built with",
		Long: `version prints which scalepair this is, and the Go release and system it was
built for. Copies built from the same source say the same.`,
		Example: `  scalepair version`,
		Args:    noArguments,
		RunE: func(*cobra.Command, []string) error {
			_, err := fmt.Fprint(a.out, versionText())
			return err
		},
	}
}

// versionText is what version prints.
func versionText() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		info = &debug.BuildInfo{}
	}
	return describe(stamp, info)
}

// describe says in two lines which program this is and what it was built with.
// No time goes in, so that the same source always says the same.
func describe(stamp string, info *debug.BuildInfo) string {
	return fmt.Sprintf("scalepair %s\nbuilt with %s for %s/%s\n", versionOf(stamp, info),
		info.GoVersion, setting(info, "GOOS"), setting(info, "GOARCH"))
}

// pseudo is a version that Go makes up for a commit without a tag; it holds
// the commit's time.
var pseudo = regexp.MustCompile(`[-.]\d{14}-[0-9a-f]{12}(\+.*)?$`)

// versionOf gives the stamp; without one the version of the module that was
// installed; without that the revision it was built from.
func versionOf(stamp string, info *debug.BuildInfo) string {
	version := strings.TrimPrefix(info.Main.Version, "v")
	revision := setting(info, "vcs.revision")
	switch {
	case stamp != "":
		return stamp
	case version != "" && version != "(devel)" && !pseudo.MatchString(version):
		return version
	case revision == "":
		return "unreleased"
	}
	revision = "unreleased, revision " + revision[:min(12, len(revision))]
	if setting(info, "vcs.modified") == "true" {
		revision += " with changes"
	}
	return revision
}

// setting looks up how the program was built; "" when it is not recorded.
func setting(info *debug.BuildInfo, key string) string {
	for _, s := range info.Settings {
		if s.Key == key {
			return s.Value
		}
	}
	return ""
}
