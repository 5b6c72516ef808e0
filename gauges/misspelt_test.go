package gauges_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/gauges"
)

// A plain string whose kind is misspelt would be a wound one without a core:
// no stretch, no bend, no breaking share, and nothing would show it.
func TestPlainMisspeltIsRefused(t *testing.T) {
	for _, kind := range []string{"plian", "plan", "plainn", "pl ain", "pl\u0430in", "PLIAN"} {
		_, err := gauges.ReadReadings(strings.NewReader(
			"gauge,construction,outer_mm,length_mm,mass_g\na,plain,0.254,500,0.2\nb,"+kind+",0.279,500,0.24\n"), "r.csv", nil)
		assert.EqualError(t, err, `r.csv:3:3: this kind of string is written almost as another ("`+kind+`"); did you mean "plain"? two kinds need names that are less alike`, kind)
	}
}

// Names that differ only in the script of a letter look the same; others may be
// two, and are for the builder to choose.
func TestKindsThatAreWrittenAlike(t *testing.T) {
	read := func(a, b string) ([]gauges.Reading, error) {
		return gauges.ReadReadings(strings.NewReader(
			"gauge,construction,outer_mm,length_mm,mass_g\na,"+a+",1.0,500,2.5\nb,"+b+",1.1,500,3.1\n"), "r.csv", nil)
	}
	_, err := read("nickel wound", "ni\u0441kel wound")
	assert.EqualError(t, err, `r.csv:3:3: this kind of string is written almost as another ("niсkel wound"); did you mean "nickel wound"? two kinds need names that are less alike`)
	for _, pair := range [][2]string{{"round wound", "ground wound"}, {"halfround", "halfwound"}, {"set 1", "set 11"}, {"plain", "plated"}, {"steel", "stele 2"}, {"Nickel  Wound", "nickel wound"}} {
		_, err := read(pair[0], pair[1])
		assert.NoError(t, err, pair)
	}
}

// Two kinds as common as each other that differ by a slip of the keyboard are
// fitted apart, and that is noted.
func TestKindsAsCommonAreNoted(t *testing.T) {
	for _, other := range []string{"nickle wound", "nickel-wound", "nickelwound"} {
		stock := combine(t, "gauge,construction,outer_mm,core_mm,length_mm,mass_g\na,nickel wound,1.0,0.4,500,2.5\nb,"+other+",1.1,0.4,500,3.1\n")
		require.Len(t, stock.Gauges, 2)
		for _, g := range stock.Gauges {
			assert.Contains(t, strings.Join(g.Notes, " "), "two kinds with almost the same name", other)
		}
	}
	stock := combine(t, "gauge,construction,outer_mm,core_mm,length_mm,mass_g\na,round wound,1.0,0.4,500,2.5\nb,ground wound,1.1,0.4,500,3.1\n")
	for _, g := range stock.Gauges {
		assert.NotContains(t, strings.Join(g.Notes, " "), "almost the same name")
	}
}

// Length and mass under each other's headings are one slip, not one a row. One
// likely row shows that the headings are right.
func TestExchangedColumnsAreNoticed(t *testing.T) {
	const head = "gauge,construction,outer_mm,mass_g,length_mm\n"
	read := func(rows string) error {
		_, err := gauges.ReadReadings(strings.NewReader(head+rows), "r.csv", nil)
		return err
	}
	assert.EqualError(t, read("a,plain,0.254,319,0.13\nb,plain,0.330,326.5,0.65\n"),
		`r.csv:2:19: length and mass look exchanged, in every row ("0.13 mm, 319 g"); exchange the two headings`)
	assert.ErrorContains(t, read("a,plain,0.254,319,0.13\nb,plain,0.330,0.22,326.5\n"), "r.csv:2:19: length is no size of a string's")
	assert.ErrorContains(t, read("a,plain,0.254,319,0.13\n"), "r.csv:2:19: length is no size of a string's")
	assert.NoError(t, read("a,plain,0.254,0.13,319\nb,plain,0.330,0.22,326.5\n"))
}
