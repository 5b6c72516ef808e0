package data_test

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data"
	"scalepair/data/csvtable"
)

func TestEveryEmbeddedFileOpensWithItsProvenance(t *testing.T) {
	texts := map[string][]byte{
		"tunings": data.Tunings(), "materials": data.Materials(), "wire strength": data.WireStrength(),
	}
	for _, name := range []string{"build.toml", "readings.csv"} {
		text, err := data.Demo(name)
		require.NoError(t, err)
		texts[name] = text
	}
	for name, text := range texts {
		assert.True(t, bytes.HasPrefix(text, []byte("# ")), name)
	}
}

func TestWireStrengthFallsWithTheDiameter(t *testing.T) {
	rows, faults := csvtable.Read(bytes.NewReader(data.WireStrength()), "a228.csv", []csvtable.Column{
		{Name: "diameter_in", Required: true}, {Name: "min_ksi", Required: true}, {Name: "max_ksi", Required: true},
	})
	require.Len(t, rows, 20)
	var d, low float64
	for i, r := range rows {
		diameter, _ := r.Number("diameter_in", &faults)
		least, _ := r.Number("min_ksi", &faults)
		most, _ := r.Number("max_ksi", &faults)
		assert.Less(t, least, most)
		if i > 0 {
			assert.Greater(t, diameter, d)
			assert.Less(t, least, low)
		}
		d, low = diameter, least
	}
	assert.Empty(t, faults)
}

func TestLookupMaterialSuggests(t *testing.T) {
	_, err := data.LookupMaterial("fosfor bronze")
	assert.EqualError(t, err, `no material of that name ("fosfor bronze"); did you mean "phosphor bronze"?`)
	_, err = data.LookupMaterial("wood")
	assert.ErrorContains(t, err, `no material of that name ("wood"); the materials are music wire, stainless steel, `)
	got, err := data.LookupMaterial("Nickel plated-steel")
	require.NoError(t, err)
	assert.Equal(t, "nickel-plated steel", got.Name)
}
