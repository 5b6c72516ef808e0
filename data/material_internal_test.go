package data

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestMaterials(t *testing.T) {
	var names []string
	for _, m := range materials() {
		assert.NotEmpty(t, m.Source, m.Name)
		assert.Contains(t, Confidences, m.Confidence, m.Name)
		assert.True(t, m.DensityKgM3 > 100 && m.DensityKgM3 < 25000, m.Name)
		assert.Positive(t, m.DensityU, m.Name)
		assert.Less(t, m.DensityU, m.DensityKgM3/10, m.Name)
		stiff := m.YoungsPa > 0 || m.StrengthPa > 0
		assert.Equal(t, stiff, m.StiffnessSource != "", m.Name)
		assert.Equal(t, stiff, m.StiffnessConfidence != "", m.Name)
		for _, n := range append([]string{m.Name}, m.Also...) {
			assert.NotContains(t, names, n)
			names = append(names, n)
			got, err := LookupMaterial(strings.ToUpper(n))
			require.NoError(t, err)
			assert.Equal(t, m, got)
		}
	}
	for _, n := range []string{"music wire", "stainless steel", "phosphor bronze", "bronze", "nickel", "nickel-plated steel", "copper", "brass", "nylon", "fluorocarbon"} {
		assert.Contains(t, names, n)
	}
	wire, err := LookupMaterial(MusicWire)
	require.NoError(t, err)
	assert.Equal(t, 7850.0, wire.DensityKgM3)
	assert.InDelta(t, 203.4e9, wire.YoungsPa, 1)
	assert.Zero(t, wire.StrengthPa, "music wire's strength depends on its diameter")
}
