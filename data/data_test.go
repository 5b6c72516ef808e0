package data_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data"
	"scalepair/data/csvtable"
	"scalepair/data/fault"
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
	rows, err := csvtable.Read(bytes.NewReader(data.WireStrength()), "a228.csv", []csvtable.Column{
		{Name: "diameter_in", Required: true}, {Name: "min_ksi", Required: true}, {Name: "max_ksi", Required: true},
	})
	require.NoError(t, err)
	require.Len(t, rows, 20)
	var faults fault.List
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

func TestMaterials(t *testing.T) {
	var names []string
	for _, m := range data.AllMaterials() {
		assert.NotEmpty(t, m.Source, m.Name)
		assert.Contains(t, data.Confidences, m.Confidence, m.Name)
		assert.True(t, m.DensityKgM3 > 100 && m.DensityKgM3 < 25000, m.Name)
		assert.Positive(t, m.DensityU, m.Name)
		assert.Less(t, m.DensityU, m.DensityKgM3/10, m.Name)
		stiff := m.YoungsPa > 0 || m.StrengthPa > 0
		assert.Equal(t, stiff, m.StiffnessSource != "", m.Name)
		assert.Equal(t, stiff, m.StiffnessConfidence != "", m.Name)
		for _, n := range append([]string{m.Name}, m.Also...) {
			assert.NotContains(t, names, n)
			names = append(names, n)
			got, err := data.LookupMaterial(strings.ToUpper(n))
			require.NoError(t, err)
			assert.Equal(t, m, got)
		}
	}
	for _, n := range []string{"music wire", "stainless steel", "phosphor bronze", "bronze", "nickel", "nickel-plated steel", "copper", "brass", "nylon", "fluorocarbon"} {
		assert.Contains(t, names, n)
	}
	wire, err := data.LookupMaterial(data.MusicWire)
	require.NoError(t, err)
	assert.Equal(t, 7850.0, wire.DensityKgM3)
	assert.InDelta(t, 203.4e9, wire.YoungsPa, 1)
	assert.Zero(t, wire.StrengthPa, "music wire's strength depends on its diameter")
}

func TestAllMaterialsIsACopy(t *testing.T) {
	data.AllMaterials()[0].Name = "changed"
	assert.Equal(t, data.MusicWire, data.AllMaterials()[0].Name)
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
