package main

import "github.com/spf13/cobra"

// everyday gives the finished command tree what every program has: help and,
// on the whole tree, version and completion, in our words. It comes last, since
// it looks at all commands.
func (a *app) everyday(root *cobra.Command, whole bool) {
	root.SetHelpCommand(a.helpCommand())
	root.CompletionOptions.DisableDefaultCmd = true // ours is the other one
	if whole {
		root.Version = versionText()
		root.SetVersionTemplate("{{.Version}}")
		root.AddCommand(a.versionCommand(), a.completionCommand(root))
		a.complete(root)
		root.InitDefaultVersionFlag()
		root.Flags().Lookup("version").Usage = "print the version"
	}
	for _, c := range append(root.Commands(), root) {
		ownHelpFlag(c)
	}
}
