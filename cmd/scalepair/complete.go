package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"scalepair/cmd/scalepair/answer"
	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/document"
	"scalepair/data/unit"
	"scalepair/fan/draw"
	"scalepair/fan/draw/tile"
	"scalepair/tension/choice"
	"scalepair/tuning"
)

// What the shell completes: build files, and the choices of the flags that
// several commands share.

const (
	inOrder  = cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveKeepOrder
	listGoes = inOrder | cobra.ShellCompDirectiveNoSpace
)

// completions returns a command's flags their choices.
func completions(c *cobra.Command) {
	c.ValidArgsFunction = func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
		if len(args) > 0 {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
	}
	for flag, choices := range map[string]cobra.CompletionFunc{
		"tuning":  completeTuning,
		"gauges":  completeGauges,
		"neutral": words("bridge"),
		"format":  words(document.FormatWords...),
		"lengths": words("mm", "in", "in64"),
		"forces":  words("N", "lbf", "kgf"),
		"save":    words(choice.SmallestFan.String(), choice.MiddlePick.String(), choice.LongestBass.String(), choice.ClearEnough.String(), choice.BestFeel.String()),
		"paper":   words(append(tile.PaperNames(), "roll 610mm")...),
		"as":      words(answer.DrawKinds...),
		"show":    words(draw.ContentLayers().Names()...),
		"hide":    words(draw.ContentLayers().Names()...),
		"margin":  cobra.NoFileCompletions, "overlap": cobra.NoFileCompletions, "bar-across": cobra.NoFileCompletions, "overrun": cobra.NoFileCompletions,
		"bar-up": cobra.NoFileCompletions, "remark": cobra.NoFileCompletions, "date": cobra.NoFileCompletions,
	} {
		if c.Flags().Lookup(flag) != nil {
			_ = c.RegisterFlagCompletionFunc(flag, choices) // fails where the command has its own
		}
	}
}

// words completes from a fixed list, in its order.
func words(list ...string) cobra.CompletionFunc { return cobra.FixedCompletions(list, inOrder) }

func completeTuning(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	var out []string
	for _, t := range tuning.Named() {
		out = append(out, t.Name+"\t"+t.String())
	}
	return out, inOrder
}

// completeGauges offers the strings in stock of the build file that the command
// line names, one after another.
func completeGauges(_ *cobra.Command, args []string, typed string) ([]string, cobra.ShellCompDirective) {
	j, err := build.Load(first(args), nil)
	if err != nil {
		return nil, cobra.ShellCompDirectiveError
	}
	before := typed[:strings.LastIndexAny(typed, " ,")+1]
	var out []string
	for _, g := range j.Stock.Gauges {
		if !strings.ContainsAny(g.Label, " ,\t") {
			remark := fmt.Sprintf("%s, %s mm", g.Family, unit.Fixed(g.Outer.MM(), 2))
			out = append(out, before+document.Clean(g.Label)+"\t"+document.Clean(remark))
		}
	}
	return out, listGoes
}
