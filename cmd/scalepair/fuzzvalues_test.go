package main

import (
	"math"
	"regexp"
	"strconv"
	"testing"
)

// figure matches a number of a build file, of readings or of marks that is not
// part of a name or a note.
var figure = regexp.MustCompile(`(?m)(^|[ ",\[])(-?\d+(?:\.\d+)?)($|[ ",\]])`)

// change multiplies the n-th number of a text, counted round and round, and
// leaves everything else as it is.
func change(text string, n uint16, factor float64) string {
	all := figure.FindAllStringSubmatchIndex(text, -1)
	if len(all) == 0 {
		return text
	}
	at := all[int(n)%len(all)]
	old, _ := strconv.ParseFloat(text[at[4]:at[5]], 64)
	return text[:at[4]] + strconv.FormatFloat(old*factor, 'f', -1, 64) + text[at[5]:]
}

// FuzzValues runs the whole program on real files in which single numbers are
// larger or smaller than they were: the files parse, and the numbers lie
// anywhere up to the bounds of what is taken and beyond.
func FuzzValues(f *testing.F) {
	builds := realBuilds(f)
	marks := contents(f, "../../testdata/builds/demo_marks.csv")
	for i, factor := range []float64{0.5, 2, 0.9, 1.1, 0.01, 100, 0, -1, 1e-9, 1e9, 0.999999, 3} {
		f.Add(byte(i), byte(i), uint16(5*i), factor, uint16(7*i), 1/(factor+0.1), uint16(11*i), factor)
		f.Add(byte(i+1), byte(i), uint16(5*i), 1.0, uint16(7*i), 1.0, uint16(11*i), factor)
		f.Add(byte(2*i+1), byte(i+5), uint16(13*i), factor, uint16(29*i), 1.0, uint16(11*i), 1.0)
	}
	// A board too wide for the paper that is taken where none is named.
	f.Add(byte('n'), byte('5'), uint16(143), 3.0, uint16(319), 1.0, uint16(121), 1.0)
	bench := newBench(f)
	f.Fuzz(func(t *testing.T, which, command byte, n1 uint16, x1 float64, n2 uint16, x2 float64, n3 uint16, x3 float64) {
		for _, x := range []float64{x1, x2, x3} {
			if math.IsNaN(x) || math.Abs(x) > 1e12 {
				return
			}
		}
		b := builds[int(which)%len(builds)]
		b.toml = change(change(b.toml, n1, x1), n2, x2)
		if tooWide(b.toml) {
			return
		}
		args := commands[int(command)%len(commands)]
		files := map[string]string{"build.toml": b.toml, "readings.csv": change(b.readings, n3, x3), "marks.csv": change(marks, n3, x3)}
		requireSound(t, args, files["build.toml"]+files["readings.csv"]+files["marks.csv"], bench.run(t, files, args...))
	})
}
