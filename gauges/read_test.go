package gauges_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/gauges"
)

func read(t *testing.T, text string) []gauges.Reading {
	t.Helper()
	r, err := gauges.ReadReadings(strings.NewReader(text), "r.csv", nil)
	require.NoError(t, err)
	return r
}

// combine makes a stock of a readings file with the usual tools.
func combine(t *testing.T, text string) gauges.Stock {
	t.Helper()
	s, err := gauges.Combine(read(t, text), nil, gauges.DefaultInstruments(), gauges.Options{})
	require.NoError(t, err)
	return s
}

func gauge(t *testing.T, s gauges.Stock, label string) gauges.Gauge {
	t.Helper()
	g, err := s.Lookup(label)
	require.NoError(t, err)
	return g
}

func TestReadReadsEveryColumn(t *testing.T) {
	const text = "\ufeff# my stock\r\n" +
		"gauge,construction,outer_in,core_mm,core_shape,diameters,material,kind,pieces,length_mm,length_resolution_mm,mass_g,mass_resolution_g," +
		"hung_mass_kg,hung_resolution_g,speaking_length,pitch,pitch_cents,winding_mm,density_kg_m3,youngs_gpa,strength_mpa,date,remark\r\n" +
		"042w,nickel round,0.042,0.41,hex,core measured,,weighed,2,300,0.5,3.84,0.01,,,,,,900,7850,200,2200,2024-05-01,cut off\r\n" +
		"042w,,,,,,,hung,,,,,,6.5,5,600 mm,G3-4c,1.5,,,,,,\r\n" +
		"050w,nickel round,0.050,,,,,listed,,,,,,,,,,,,,,,,\r\n"
	note := func(s string) (float64, error) {
		if s != "G3-4c" {
			return 0, errors.New("no note")
		}
		return 195.5, nil
	}
	r, err := gauges.ReadReadings(strings.NewReader(text), "r.csv", note)
	require.NoError(t, err)
	require.Len(t, r, 3)
	first := gauges.Reading{
		Place: r[0].Place, Gauge: "042w", Construction: "nickel round", OuterM: 0.0010668, CoreM: 0.00041, Shape: gauges.Hex,
		CoreFrom: gauges.Measured, DensityKgM3: 7850, YoungsPa: 200e9, StrengthPa: 2200e6, WindingM: 0.9, Pieces: 2,
		LengthM: 0.3, LengthStepM: 0.0005, MassKg: 0.00384, MassStepKg: 0.00001, Date: "2024-05-01", Remark: "cut off",
	}
	assert.Equal(t, "r.csv:3:1", r[0].Place.String())
	written, hung := r[0].Given, r[1].Given
	r[0].Given, r[1].Given = gauges.Given{}, gauges.Given{}
	assert.Equal(t, first, r[0])
	assert.Equal(t, gauges.AsWritten{Text: "0.042", Unit: "in"}, written.Outer())
	assert.Equal(t, gauges.AsWritten{Text: "0.41", Unit: "mm"}, written.Core())
	assert.Equal(t, gauges.AsWritten{Text: "300", Unit: "mm"}, written.Length())
	assert.Equal(t, gauges.AsWritten{Text: "3.84", Unit: "g"}, written.Mass())
	assert.Equal(t, gauges.AsWritten{Text: "600 mm"}, hung.Speaking())
	assert.Equal(t, gauges.AsWritten{Text: "6.5", Unit: "kg"}, hung.Hung())
	assert.Equal(t, gauges.Reading{
		Place: r[1].Place, Gauge: "042w", Kind: gauges.Hung, HungKg: 6.5, HungResolutionKg: 0.005, SpeakingM: 0.6, FreqHz: 195.5, PitchCents: 1.5,
	}, r[1])
	assert.Equal(t, gauges.Listed, r[2].Kind)
}

func TestPitchesInHertzNeedNoNotes(t *testing.T) {
	for _, text := range []string{"pitch\n110", "pitch\n110 Hz", "pitch_hz\n110", "pitch\n110hz"} {
		parts := strings.Split(text, "\n")
		r := read(t, "gauge,kind,hung_mass_kg,speaking_length_mm,"+parts[0]+"\na,hung,3,600,"+parts[1])
		assert.Equal(t, 110.0, r[0].FreqHz, text)
	}
}

// Every fault is named at its line and column, with what would do.
func TestReadFaults(t *testing.T) {
	const head = "gauge,construction,outer_in,core_mm,core_shape,kind,pieces,length_mm,mass_g,hung_mass_kg,speaking_length_mm,pitch\n"
	for _, c := range []struct{ name, row, want string }{
		{"no mass", "a,plain,0.010,,,,,500,,,,", `r.csv:2:23: a weighing without mass; give the mass, as 0.43 g`},
		{"zero mass", "a,plain,0.010,,,,,500,0,,,", `r.csv:2:23: mass must be above 0 ("0"); leave the cell empty where it is not known`},
		{"negative length", "a,plain,0.010,,,,,-500,0.2,,,", `r.csv:2:19: length must be above 0 ("-500")`},
		{"neither", "a,plain,0.010,,,,,,,,,", "without mass and length"},
		{"no length", "a,plain,0.010,,,,,,0.2,,,", "give the length of the piece"},
		{"nan", "a,plain,0.010,,,,,500,nan,,,", "r.csv:2:23: mass: "},
		{"infinity", "a,plain,inf,,,,,500,0.2,,,", "r.csv:2:9: outer: "},
		{"25 in gauge", "a,plain,25,,,,,500,0.2,,,", `r.csv:2:9: outer is no size of a string's ("25 in"); did you mean 0.025 in? 0.002 in to 0.23 in is possible`},
		{"absurd length", "a,plain,0.010,,,,,50000,0.2,,,", "length is no size of a string's"},
		{"no label", ",plain,0.010,,,,,500,0.2,,,", "gauge is empty"},
		{"unknown kind", "a,plain,0.010,,,weihed,,500,0.2,,,", `r.csv:2:17: kind does not know this word ("weihed"); did you mean "weighed"?`},
		{"unknown shape", "a,w,0.040,0.4,square,,,500,0.2,,,", `core shape does not know this word ("square"); write round, hex`},
		{"no pieces", "a,plain,0.010,,,,0,500,0.2,,,", "pieces must be 1 to 1000"},
		{"half a piece", "a,plain,0.010,,,,1.5,500,0.2,,,", "pieces: not a whole number"},
		{"pitch of 0", "a,plain,0.010,,,hung,,,,6,600,0", `r.csv:2:31: pitch must be above 0 ("0")`},
		{"pitch as note", "a,plain,0.010,,,hung,,,,6,600,G3", "pitch: "},
		{"empty hertz", "a,plain,0.010,,,hung,,,,6,600,Hz", "pitch: "},
		{"hung without pitch", "a,plain,0.010,,,hung,,,,6,600,", "a hung test without pitch"},
		{"hung without mass", "a,plain,0.010,,,hung,,,,,600,110", "a hung test without hung mass"},
		{"hung and weighed", "a,plain,0.010,,,hung,,500,0.2,6,600,110", "a weighing has a row of its own"},
		{"weighed and hung", "a,plain,0.010,,,,,500,0.2,6,600,110", "write the kind as hung"},
		{"listed and weighed", "a,plain,0.010,,,listed,,500,0.2,,,", "listed is for a gauge without a reading"},
		{"plain with another core", "a,plain,0.010,0.2,,,,500,0.2,,,", "a plain gauge with a core of another diameter"},
		{"core too thick", "a,w,0.020,0.45,hex,,,500,1,,,", "the core is as thick as the whole string"},
		{"decimal comma", `a,plain,0.010,,,,,500,"0,2",,,`, `write "0.2"`},
		{"unknown column", "a,plain,0.010,,,,,500,0.2,,,,9", "a cell without a heading"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, err := gauges.ReadReadings(strings.NewReader(head+c.row), "r.csv", nil)
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.want)
			assert.Nil(t, r)
		})
	}
}

func TestReadReportsAllFaultsAtOnce(t *testing.T) {
	_, err := gauges.ReadReadings(strings.NewReader("gauge,outer_mm,mass_g,length_mm\na,0.010,-1,500\nb,0.25,0.2,x\nc,0.25,,\n"), "r.csv", nil)
	require.Error(t, err)
	assert.Len(t, strings.Split(err.Error(), "\n"), 4, err.Error())
	assert.Contains(t, err.Error(), "r.csv:2:3: outer is no size of a string's (\"0.010 mm\"); did you mean 0.010 in?")
}

func TestReadRefusesWhatIsNoTable(t *testing.T) {
	for name, text := range map[string]string{
		"empty": "", "heading only": "gauge,mass_g\n", "semicolons": "gauge;mass_g\na;0.2\n", "utf-16": "\xff\xfeg\x00a\x00",
		"unknown column": "gauge,mas_g\na,1\n",
	} {
		_, err := gauges.ReadReadings(strings.NewReader(text), "r.csv", nil)
		assert.ErrorContains(t, err, "r.csv", name)
	}
}
