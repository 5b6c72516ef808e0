package main

import "github.com/spf13/cobra"

// benchCommands are the commands of the bench: before the saw and after it.
func (a *app) benchCommands() []*cobra.Command {
	return []*cobra.Command{a.neutralCommand()}
}
