package mark_test

import (
	"bytes"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/fan/mark"
)

// An error means no readings and faults with place and words; success means
// finite readings that, written down again, read back the same. Check takes them
// or refuses them, and then reports nothing but finite numbers.
func FuzzReadReadings(f *testing.F) {
	demo, err := os.ReadFile("../../testdata/builds/demo_marks.csv")
	require.NoError(f, err)
	f.Add(string(demo))
	l := layout(f)
	for _, u := range []unit.LengthUnit{unit.Millimetres, unit.DecimalInches} {
		var form bytes.Buffer
		require.NoError(f, mark.WriteForm(&form, l, u))
		f.Add(form.String())
		f.Add(strings.Replace(form.String(), "bass,ruler,1,,,", "bass,ruler,1,39.5,0.5,", 1))
	}
	f.Add("line,pass,fret,from,measured_mm,resolution_mm,remark\nbass,ruler,1,,39.5,0.5,\nbass,caliper,2,,37,,x\n")
	f.Add("line,pass,fret,measured_in\ntreble,caliper,3,1 1/2\nnut offset,,,-0.01\n")
	f.Add("line;pass\nbass;ruler\n")
	f.Add("\ufeffline,pass,fret,measured\ndiagonal from bass nut,,12,340 mm\n")
	f.Add("line,pass,fret,measured_mm,resolution_mm\nbass,caliper,24,1e-300,1e-3\nbass,ruler,24,2999,5\n")
	f.Fuzz(func(t *testing.T, in string) {
		readings, err := mark.ReadReadings(strings.NewReader(in), "f.csv")
		if err != nil {
			require.Nil(t, readings)
			testutil.CheckFaults(t, err, "f.csv", in)
			return
		}
		require.NotEmpty(t, readings)
		requireReadsBack(t, readings)
		report, err := mark.Check(l, readings, mark.Options{})
		if err != nil {
			require.Equal(t, mark.Report{}, report)
			testutil.CheckFaults(t, err, "f.csv", in)
			return
		}
		testutil.CheckFinite(t, report)
	})
}

// requireReadsBack writes readings as a file of our own and reads them again.
func requireReadsBack(t *testing.T, all []mark.Reading) {
	b := "line,pass,fret,from,measured,resolution\n"
	for _, r := range all {
		testutil.CheckFinite(t, r)
		require.True(t, r.Resolution >= 0 && r.Resolution < 0.05, r)
		line, pass, fret, from, resolution := r.Kind.String(), "", strconv.Itoa(r.Fret), "", ""
		switch {
		case r.Kind == mark.FromNut || r.Kind == mark.Step:
			if line, pass = r.Line.String(), r.Kind.String(); r.Kind == mark.Step {
				from = strconv.Itoa(r.From)
			}
		case r.Fret == 0:
			fret = ""
		}
		if r.Resolution > 0 {
			resolution = r.Resolution.String()
		}
		b += strings.Join([]string{line, pass, fret, from, r.Measured.String(), resolution}, ",") + "\n"
	}
	again, err := mark.ReadReadings(strings.NewReader(b), "f.csv")
	require.NoError(t, err, b)
	require.Len(t, again, len(all))
	for i, want := range all {
		require.NotZero(t, want.Place.Line)
		again[i].Place, again[i].Written = want.Place, want.Written
		require.Equal(t, want, again[i])
	}
}

// A tool's least difference reads, prints, and reads back to itself, and is one
// that a workshop has.
func FuzzParseResolution(f *testing.F) {
	for _, s := range []string{"0.01 mm", "0.05 mm", "0.5 mm", "0.001 in", "1/64 in", "1/32 in", "0.0005 in", "0.3 mm", "1 mm", "1/3 in", "½ mm", "0.02\"", "1e-3 in", ""} {
		f.Add(s, 39.4567)
	}
	f.Fuzz(func(t *testing.T, s string, mm float64) {
		r, err := mark.ParseResolution(s)
		if err != nil {
			require.Zero(t, r)
			require.NotEmpty(t, err.Error())
			return
		}
		require.Positive(t, r.PerUnit)
		require.True(t, r.Length().MM() > 0.0004 && r.Length().MM() < 1.2, r)
		again, err := mark.ParseResolution(r.String())
		require.NoError(t, err, r.String())
		require.Equal(t, r.PerUnit, again.PerUnit)
		require.InDelta(t, r.Length().MM(), again.Length().MM(), 0)
		if math.IsNaN(mm) || math.Abs(mm) > 1e4 {
			return
		}
		rounded := r.Round(unit.MM(mm))
		require.InDelta(t, mm, rounded.Set.MM(), r.Length().MM()/2*(1+1e-9)+1e-12)
		text := r.Format(rounded.Parts)
		back, err := unit.ParseLengthIn(text, r.Unit.Symbol())
		require.NoError(t, err, text)
		require.InDelta(t, rounded.Set.MM(), back.MM(), 1e-9, text)
		require.Equal(t, rounded.Parts, r.Round(back).Parts, text)
	})
}
