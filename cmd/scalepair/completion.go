package main

import (
	"io"
	"strings"

	"github.com/spf13/cobra"

	"scalepair/data/fault"
)

// shells are those that completion writes a script for.
var shells = []string{"bash", "zsh", "fish", "powershell"}

func (a *app) completionCommand(root *cobra.Command) *cobra.Command {
	c := &cobra.Command{
		Use:   "completion [shell]",
		Short: "Write the script that lets your shell complete commands, files, tunings and gauges",
		Long: `completion writes a script for bash, zsh, fish or powershell. Load it when the
shell starts; from then on the tab key completes commands, flags, build files,
the names of tunings, the gauges of your stock and the scale lengths of your
build file.

  bash        put into ~/.bashrc:          source <(scalepair completion bash)
  zsh         put into ~/.zshrc:           source <(scalepair completion zsh)
  fish        put into config.fish:        scalepair completion fish | source
  powershell  put into the file $PROFILE:  scalepair completion powershell | Out-String | Invoke-Expression

bash needs its package bash-completion, zsh the line "autoload -U compinit;
compinit" before.`,
		Example: `  scalepair completion bash > scalepair.bash
  scalepair completion zsh > _scalepair`,
		RunE: func(_ *cobra.Command, args []string) error { return a.completion(root, args) },
	}
	c.ValidArgsFunction = words(shells...)
	return c
}

func (a *app) completion(root *cobra.Command, args []string) error {
	write := map[string]func(io.Writer) error{
		"bash":       func(w io.Writer) error { return bashScript(root, w) },
		"zsh":        root.GenZshCompletion,
		"fish":       func(w io.Writer) error { return root.GenFishCompletion(w, true) },
		"powershell": root.GenPowerShellCompletionWithDesc,
	}
	shell := strings.Join(args, " ")
	if write[shell] == nil {
		what := "no completion for such a shell"
		if shell == "" {
			what = "which shell is not said"
		}
		return usageError{fault.Fault{Place: fault.Place{Input: "scalepair completion"}, What: what, Given: shell,
			Remedy: meant(shell, shells, "give one of "+strings.Join(shells, ", "))}}
	}
	return write[shell](a.out)
}

// bashScript writes the script for bash. The generated one puts a backslash
// before every comma, although bash takes a comma as it is, and then finds no
// match for a list typed without: "--gauges w56,w4".
func bashScript(root *cobra.Command, w io.Writer) error {
	var script strings.Builder
	if err := root.GenBashCompletionV2(&script, true); err != nil {
		return err
	}
	_, err := io.WriteString(w, bareCommas(script.String())+quoteButCommas)
	return err
}

const quoteButCommas = `
# Quotes what a shell would not take as it stands, but no comma.
__scalepair_quote()
{
    local quoted
    printf -v quoted "%q\n" "$@"
    printf "%s" "${quoted//\\,/,}"
}
`

const quoteOne = `comp=$(printf "%q" "${compline%%$tab*}")`

func bareCommas(script string) string {
	return strings.NewReplacer(
		`printf "%q\n"`, "__scalepair_quote",
		quoteOne, quoteOne+`; comp=${comp//\\,/,}`,
		`$(printf "%q"`, "$(__scalepair_quote",
	).Replace(script)
}
