package reading_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/gauges/reading"
)

func read(t *testing.T, text string) []reading.Reading {
	t.Helper()
	r, err := reading.Read(strings.NewReader(text), "r.csv", nil)
	require.NoError(t, err)
	return r
}

func TestReadReadsEveryColumn(t *testing.T) {
	const text = "\ufeff# my stock\r\n" +
		"gauge,construction,outer_in,core_mm,core_shape,diameters,material,kind,pieces,length_mm,length_resolution_mm,mass_g,mass_resolution_g," +
		"hung_mass_kg,hung_resolution_g,speaking_length,pitch,pitch_cents,winding_mm,density_kg_m3,youngs_gpa,strength_mpa,date,remark\r\n" +
		"042w,nickel round,0.042,0.41,hex,core measured,,weighed,2,300,0.5,3.84,0.01,,,,,,900,7850,200,2200,2024-05-01,cut off\r\n" +
		"042w,,,,,,,hung,,,,,,6.5,5,600 mm,G3-4c,1.5,,,,,,\r\n" +
		"050w,nickel round,0.050,,,,,listed,,,,,,,,,,,,,,,,\r\n"
	note := func(s string) (unit.Frequency, error) {
		if s != "G3-4c" {
			return 0, errors.New("no note")
		}
		return 195.5, nil
	}
	r, err := reading.Read(strings.NewReader(text), "r.csv", note)
	require.NoError(t, err)
	require.Len(t, r, 3)
	assert.Equal(t, "r.csv:3:1", r[0].Place.String())
	assert.Equal(t, []string{"0.042 in", "0.41 mm", "300 mm", "3.84 g"}, []string{r[0].OuterText(), r[0].CoreText(), r[0].LengthText(), r[0].MassText()})
	assert.Equal(t, []string{"600 mm", "6.5 kg"}, []string{r[1].LengthText(), r[1].MassText()})
	r[0].Written, r[1].Written = reading.Written{}, reading.Written{}
	assert.Equal(t, reading.Reading{
		Place: r[0].Place, Gauge: "042w", Construction: "nickel round", Outer: 0.0010668, Core: unit.MM(0.41), Shape: reading.Hex,
		CoreFrom: reading.Measured, DensityKgM3: 7850, YoungsPa: 200e9, StrengthPa: 2200e6, Winding: unit.MM(900), Pieces: 2,
		Length: unit.MM(300), LengthResolution: unit.MM(0.5), Mass: 0.00384, MassResolution: unit.Grams(0.01), Date: "2024-05-01", Remark: "cut off",
	}, r[0])
	assert.Equal(t, reading.Reading{
		Place: r[1].Place, Gauge: "042w", Kind: reading.Hung, HungMass: 6.5, HungResolution: unit.Grams(5), Speaking: unit.MM(600), Pitch: 195.5, PitchU: 1.5,
	}, r[1])
	assert.Equal(t, reading.Listed, r[2].Kind)
}

func TestPitchesInHertzNeedNoNotes(t *testing.T) {
	for _, text := range []string{"pitch\n110", "pitch\n110 Hz", "pitch_hz\n110", "pitch\n110hz"} {
		parts := strings.Split(text, "\n")
		r := read(t, "gauge,kind,hung_mass_kg,speaking_length_mm,"+parts[0]+"\na,hung,3,600,"+parts[1])
		assert.Equal(t, unit.Frequency(110), r[0].Pitch, text)
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
		{"25 in gauge", "a,plain,25,,,,,500,0.2,,,", `r.csv:2:9: outer is no size of a string's ("25 in"); did you mean 0.025 in? 0.001969 in to 0.2362 in is possible`},
		{"absurd length", "a,plain,0.010,,,,,50000,0.2,,,", "length is no size of a string's"},
		{"no label", ",plain,0.010,,,,,500,0.2,,,", "gauge is empty"},
		{"unknown kind", "a,plain,0.010,,,weihed,,500,0.2,,,", `r.csv:2:17: kind: no such word ("weihed"); did you mean "weighed"?`},
		{"unknown shape", "a,w,0.040,0.4,square,,,500,0.2,,,", `core shape: no such word ("square"); use "unknown" or "round" or "hex"`},
		{"no pieces", "a,plain,0.010,,,,0,500,0.2,,,", "pieces must be 1 to 1000"},
		{"half a piece", "a,plain,0.010,,,,1.5,500,0.2,,,", "pieces: not a whole number"},
		{"pitch of 0", "a,plain,0.010,,,hung,,,,6,600,0", `r.csv:2:31: pitch must be above 0 ("0")`},
		{"pitch as note", "a,plain,0.010,,,hung,,,,6,600,G3", "pitch: "},
		{"empty hertz", "a,plain,0.010,,,hung,,,,6,600,Hz", "pitch: "},
		{"hung without pitch", "a,plain,0.010,,,hung,,,,6,600,", "a hung test without pitch"},
		{"hung without mass", "a,plain,0.010,,,hung,,,,,600,110", "a hung test without hung mass"},
		{"hung and weighed", "a,plain,0.010,,,hung,,500,0.2,6,600,110", "every reading has a row and a kind of its own"},
		{"weighed and hung", "a,plain,0.010,,,,,500,0.2,6,600,110", "a row of the kind weighed with a hung mass"},
		{"listed and weighed", "a,plain,0.010,,,listed,,500,0.2,,,", "a row of the kind listed with the mass"},
		{"plain with another core", "a,plain,0.010,0.2,,,,500,0.2,,,", "a plain gauge with a core of another diameter"},
		{"core too thick", "a,w,0.020,0.45,hex,,,500,1,,,", "the core is as thick as the whole string"},
		{"decimal comma", `a,plain,0.010,,,,,500,"0,2",,,`, `write "0.2"`},
		{"unknown column", "a,plain,0.010,,,,,500,0.2,,,,9", "a cell without a heading"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, err := reading.Read(strings.NewReader(head+c.row), "r.csv", nil)
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.want)
			assert.Nil(t, r)
		})
	}
}

func TestReadReportsAllFaultsAtOnce(t *testing.T) {
	_, err := reading.Read(strings.NewReader("gauge,outer_mm,mass_g,length_mm\na,0.010,-1,500\nb,0.25,0.2,x\nc,0.25,,\n"), "r.csv", nil)
	require.Error(t, err)
	assert.Len(t, strings.Split(err.Error(), "\n"), 4, err.Error())
	_, err = reading.Read(strings.NewReader("gauge,outer_mm,mass_g,length_mm\na,0.010,0.2,500\n"), "r.csv", nil)
	assert.ErrorContains(t, err, "r.csv:2:3: outer is no size of a string's (\"0.010 mm\"); did you mean 0.010 in?")
}

func TestReadRefusesWhatIsNoTable(t *testing.T) {
	for name, text := range map[string]string{
		"empty": "", "heading only": "gauge,mass_g\n", "semicolons": "gauge;mass_g\na;0.2\n", "utf-16": "\xff\xfeg\x00a\x00",
		"unknown column": "gauge,mas_g\na,1\n",
	} {
		_, err := reading.Read(strings.NewReader(text), "r.csv", nil)
		assert.ErrorContains(t, err, "r.csv", name)
	}
}

// A label with a letter that does not show is the label as it is seen.
func TestLabelsThatLookAlikeAreAlike(t *testing.T) {
	assert.Equal(t, reading.Key("p13"), reading.Key("P1\u200b3\ufeff"))
	assert.Equal(t, reading.Key("steel wound"), reading.Key("Steel \u00a0wound"))
	assert.NotEqual(t, reading.Key("p13"), reading.Key("p 13"))
}

// A list of more gauges than any stock has is another list; many weighings of few
// gauges are none.
func TestABoundOfGauges(t *testing.T) {
	table := func(labels int) string {
		text := "gauge,kind\n"
		for i := range 2500 {
			text += fmt.Sprintf("p%d,listed\n", i%labels)
		}
		return text
	}
	_, err := reading.Read(strings.NewReader(table(2001)), "r.csv", nil)
	assert.EqualError(t, err, "r.csv: 2001 gauges, more than any stock has; keep those that you can use, up to 2000")
	_, err = reading.Read(strings.NewReader(table(2000)), "r.csv", nil)
	assert.NotContains(t, fmt.Sprint(err), "more than any stock has")
}

// A kind that is written almost as another would be a family of its own; numbers
// make different kinds.
func TestMisspeltKind(t *testing.T) {
	for text, want := range map[string]string{
		"gauge,construction,kind\nw46,nickel wound,listed\nw50,nikel wound,listed\n":    `r.csv:3:5: this kind of string is written almost as another ("nikel wound"); did you mean "nickel wound"?`,
		"gauge,construction,kind\np10,plian,listed\np11,plain,listed\n":                 "",
		"gauge,construction,kind\np10,plan,listed\n":                                    `did you mean "plain"?`,
		"gauge,construction,kind\nw46,bronze 80,listed\nw50,bronze 85,listed\n":         "",
		"gauge,construction,kind\nw46,nickel wound,listed\nw50,steel wound,listed\n":    "",
		"gauge,construction,kind\nw46,nickel wound,listed\nw50, Nickel  wound,listed\n": "",
	} {
		_, err := reading.Read(strings.NewReader(text), "r.csv", nil)
		if want == "" {
			assert.NoError(t, err, text)
		} else {
			assert.ErrorContains(t, err, want)
		}
	}
}
