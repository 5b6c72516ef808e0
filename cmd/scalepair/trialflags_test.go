package main

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/cmd/scalepair/internal/trial"
)

// override is a flag and what a build file says that means the same.
type override struct {
	name     string
	commands []string // those that take it
	flags    func(b *trial.Build) []string
	inFile   func(b *trial.Build)
}

// several are the sections of a build's tunings, if it has more than one.
func several(b *trial.Build) []string {
	var out []string
	for i := 0; b.Has(fmt.Sprintf("tunings[%d]", i), ""); i++ {
		out = append(out, fmt.Sprintf("tunings[%d]", i))
	}
	return out
}

// oneTuning leaves a build that tuning alone.
func oneTuning(b *trial.Build, tuning string) {
	for _, section := range several(b) {
		b.Drop(section, "")
	}
	b.Drop("", "tunings_by")
	b.Put("strings", "tuning", trial.Quoted(tuning))
}

// given names a set as the file's.
func given(b *trial.Build) {
	b.Drop("chosen", "gauges")
	b.Put("strings", "gauges", trial.Texts(b.Set))
}

// anyCommand are commands that take all overrides.
var anyCommand = []string{"tension", "layout", "advise", "setout"}

// lower is the tuning with its lowest string a whole tone lower.
func lower(b *trial.Build) []int {
	notes := append([]int{}, b.Notes...)
	notes[len(notes)-1] -= 2
	return notes
}

var overrides = []override{
	{"pair", anyCommand, func(b *trial.Build) []string {
		return []string{"--bass", (b.Bass + 100).Text(true), "--treble", (b.Treble + 100).Text(false)}
	}, func(b *trial.Build) {
		b.Put("scales", "bass", (b.Bass + 100).Value())
		b.Put("scales", "treble", (b.Treble + 100).Value())
		if b.Has("chosen", "") {
			b.Put("chosen", "bass", (b.Bass + 100).Value())
			b.Put("chosen", "treble", (b.Treble + 100).Value())
		}
	}},
	{"bass", anyCommand, func(b *trial.Build) []string { return []string{"--bass", (b.Bass + 100).Text(true)} }, func(b *trial.Build) {
		b.Put("scales", "bass", (b.Bass + 100).Value())
		if b.Has("chosen", "") {
			b.Put("chosen", "bass", (b.Bass + 100).Value())
		}
	}},
	{"tuning", anyCommand, func(b *trial.Build) []string { return []string{"--tuning", trial.Spelled(lower(b))} },
		func(b *trial.Build) { oneTuning(b, trial.Spelled(lower(b))) }},
	{"retune", anyCommand, func(b *trial.Build) []string {
		return []string{"--retune", fmt.Sprintf("%d=%s", b.Strings, trial.Spelled(lower(b)[b.Strings-1:]))}
	}, func(b *trial.Build) { oneTuning(b, trial.Spelled(lower(b))) }},
	{"gauges", anyCommand, func(b *trial.Build) []string { return []string{"--gauges", strings.Join(b.Set, " ")} }, given},
	{"free gauges", anyCommand, func(*trial.Build) []string { return []string{"--free-gauges"} }, func(b *trial.Build) {
		b.Drop("strings", "gauges")
		b.Drop("chosen", "gauges")
	}},
	{"pitch", anyCommand, func(*trial.Build) []string { return []string{"--pitch", "435.5"} },
		func(b *trial.Build) { b.Put("strings", "pitch_standard_hz", trial.Number(435.5)) }},
	{"neutral", anyCommand, func(*trial.Build) []string { return []string{"--neutral", "9.5"} }, func(b *trial.Build) {
		b.Drop("chosen", "neutral_fret")
		b.Put("neck", "neutral_fret", trial.Number(9.5))
	}},
	{"square bridge", anyCommand, func(*trial.Build) []string { return []string{"--neutral", "bridge"} }, func(b *trial.Build) {
		b.Drop("chosen", "neutral_fret")
		b.Put("neck", "neutral_fret", trial.Quoted("bridge"))
	}},
	{"capo", anyCommand, func(*trial.Build) []string { return []string{"--capo", "2"} }, func(b *trial.Build) {
		b.Put("strings", "capo_fret", trial.Number(2))
		for _, section := range several(b) {
			b.Put(section, "capo_fret", trial.Number(2))
		}
	}},
	{"trials", []string{"advise"}, func(*trial.Build) []string { return []string{"--trials", "30", "--seed", "7"} }, func(b *trial.Build) {
		b.Put("confidence", "trials", trial.Number(30))
		b.Put("confidence", "seed", trial.Number(7))
	}},
	{"calipers", []string{"setout"}, func(*trial.Build) []string { return []string{"--calipers", "0.1mm"} },
		func(b *trial.Build) { b.Put("marking", "caliper_resolution", trial.Quoted("0.1 mm")) }},
	{"played", []string{"neutral"}, func(*trial.Build) []string { return []string{"--played", "2-9", "--neck-angle", "20 deg"} }, func(b *trial.Build) {
		b.Put("playing", "from_fret", trial.Number(2))
		b.Put("playing", "to_fret", trial.Number(9))
		b.Put("playing", "neck_angle_deg", trial.Number(20))
	}},
	{"units", []string{"tension", "layout", "advise", "setout", "gauges", "compare"},
		func(*trial.Build) []string { return []string{"--lengths", "in64", "--forces", "lbf"} }, func(b *trial.Build) {
			b.Put("", "length_unit", trial.Quoted("in64"))
			b.Put("", "force_unit", trial.Quoted("lbf"))
		}},
}

// withoutPlaces gives a JSON document without what is unusual, which is told in
// the order of its places, in the file or on the command line; and any other
// text as it is.
func withoutPlaces(t *rapid.T, text string) any {
	if !strings.HasPrefix(text, "{") {
		return text
	}
	v := testDocument(t, text).(map[string]any)
	delete(v, "unusual")
	return v
}

// A flag means what the same in the build file means, to the last letter of
// what is printed.
func TestTrialsByFlagAsByFile(t *testing.T) {
	overTrials(t, func(t *rapid.T, s *trials, b *trial.Build) {
		o := overrides[b.Seed%uint64(len(overrides))]
		command := o.commands[b.Seed/64%uint64(len(o.commands))]
		args := []string{command, "--format", []string{"json", "csv"}[b.Seed/1024%2]}
		if command == "neutral" {
			args[2] = "json" // square frets have nothing to tabulate
		}
		by := s.run(t, "build", append(args, o.flags(b)...)...)
		o.inFile(b)
		s.write(t, "build", b.TOML(false), b.Readings(false))
		in := s.run(t, "build", args...)
		require.Equal(t, in.code, by.code, "%s of %s: %s%s", o.name, command, in.errOut, by.errOut)
		if in.code != exitDone {
			s.refused++
			return
		}
		s.accepted++
		require.Equal(t, withoutPlaces(t, in.out), withoutPlaces(t, by.out), "%s of %s", o.name, command)
	})
}
