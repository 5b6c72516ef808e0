package main

import (
	"fmt"
	"runtime"
	"runtime/debug"

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

// versionText is what version prints: the release, else the revision. No time
// goes in, so that the same source always says the same.
func versionText() string {
	version := stamp
	if version == "" {
		version = "unreleased"
		if info, ok := debug.ReadBuildInfo(); ok {
			for _, s := range info.Settings {
				if s.Key == "vcs.revision" {
					version += ", revision " + s.Value[:min(12, len(s.Value))]
				}
			}
		}
	}
	return fmt.Sprintf("scalepair %s\nbuilt with %s for %s/%s\n", version, runtime.Version(), runtime.GOOS, runtime.GOARCH)
}
