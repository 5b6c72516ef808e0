package main

import (
	"strconv"
	"strings"
	"testing"
	"unicode"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/require"
)

// flagged is a command line and a flag that takes a value.
type flagged struct {
	args []string
	flag string
}

// allFlagged gives every flag that takes a value, but for those that name files,
// on the first line of its command that the fuzzers try.
func allFlagged() []flagged {
	var out []flagged
	seen := map[string]bool{}
	for _, args := range commands {
		if seen[args[0]] {
			continue
		}
		seen[args[0]] = true
		for _, c := range tree().Commands() {
			if c.Name() != args[0] {
				continue
			}
			c.Flags().VisitAll(func(f *pflag.Flag) { // in the order of their names
				if value, _ := pflag.UnquoteUsage(f); value != "file" && f.Value.Type() != "bool" {
					out = append(out, flagged{args, f.Name})
				}
			})
		}
	}
	return out
}

// FuzzFlags gives any text to any flag. The command line may then be wrong too.
func FuzzFlags(f *testing.F) {
	all := allFlagged()
	for i := range all {
		for _, value := range []string{"25 1/2 in", "7.5"} {
			f.Add(uint16(i), value)
		}
	}
	for i, value := range []string{
		"NaN", "-Inf", "1e999", "-0", "bridge", "690 / 650 mm", "6=A1", "6=A1,1=E4", "B1 E2 A2 D3 F#3 B3", "baritone A", "w54 w42 w32 w22 p17 p13", "today",
		"440", "432.5", "24", "0.1mm", "3cents", "roll 610mm", "A3", "99.2mm", "slots,dots", "1-9", "-4 deg", "25 deg", "0.05mm", "1/64in", "5%", "json",
		"in64", "strings,marks", "\xff\x1b\n", strings.Repeat("9", 500), "%s", "",
	} {
		for n := range 4 {
			f.Add(uint16(31*i+13*n), value)
		}
	}
	build := realBuilds(f)[1]
	files := map[string]string{"build.toml": build.toml, "readings.csv": build.readings, "marks.csv": contents(f, "../../testdata/builds/demo_marks.csv")}
	bench := newBench(f)
	f.Fuzz(func(t *testing.T, n uint16, value string) {
		chosen := all[int(n)%len(all)]
		if draws, err := strconv.Atoi(value); chosen.flag == "trials" && err == nil && draws > 500 {
			return
		}
		args := append(append([]string{}, chosen.args...), "--"+chosen.flag+"="+value)
		requireSoundOr2(t, args, files["build.toml"]+files["readings.csv"]+value, bench.run(t, files, args...))
	})
}

// requireSoundOr2 is requireSound for a command line that may be wrong.
func requireSoundOr2(t *testing.T, args []string, given string, o outcome) {
	if o.code != exitUsage {
		requireSound(t, args, given, o)
		return
	}
	require.Empty(t, o.out)
	require.NotEmpty(t, o.errOut)
	require.Empty(t, o.files)
	for _, r := range o.errOut {
		require.False(t, unicode.IsControl(r) && r != '\n', "%q", o.errOut)
	}
}

// Whatever a gauge is called and whatever is typed, what completion offers is a
// line for each choice, without a character that a terminal would obey.
func FuzzComplete(f *testing.F) {
	for _, label := range []string{"p12", "w54", "a b", "a,b", "\x1b[31m", "\u202e", "q\tr", "é\u0085", `"quoted"`, "$(x)", "`x`", "-n", "\xff", ":4"} {
		f.Add(label, "", byte(0))
		f.Add(label, "w54 ", byte(7))
		f.Add(label, "", byte(4))
		f.Add("n1", label, byte(8+6))
		f.Add(label, "", byte(14))
	}
	build := realBuilds(f)[1]
	bench := newBench(f)
	f.Fuzz(func(t *testing.T, label, typed string, which byte) {
		if strings.ContainsFunc(typed, obeyed) {
			return // what was typed stands before what is offered
		}
		flag := []string{"--gauges", "--tuning", "--bass", "--neutral", "--only", "--capo", "--retune"}[int(which)%7]
		cell, kind := `"`+strings.ReplaceAll(label, `"`, `""`)+`"`, "plain"
		if which&8 != 0 {
			kind = cell
		}
		readings := build.readings + cell + "," + kind + ",0.254,,,,weighed,5,319,0.65,,,\n"
		o := bench.run(t, map[string]string{"build.toml": build.toml, "readings.csv": readings}, "__complete", "tension", "build.toml", flag, typed)
		require.Equal(t, exitDone, o.code)
		lines := strings.Split(strings.TrimSuffix(o.out, "\n"), "\n")
		require.Regexp(t, `^:\d+$`, lines[len(lines)-1])
		for _, line := range lines[:len(lines)-1] {
			offered, remark, _ := strings.Cut(strings.TrimPrefix(line, typed), "\t")
			require.False(t, strings.ContainsFunc(offered+remark, obeyed), "%q", line)
		}
	})
}

// obeyed tells whether a terminal may obey a character rather than show it.
func obeyed(r rune) bool { return unicode.IsControl(r) || unicode.Is(unicode.Cf, r) }
