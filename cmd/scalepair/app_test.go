package main

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A run that makes only the command it was asked for must find it, and help on
// it must not differ from that of the whole tree.
func TestOneCommandAloneIsAsInTheTree(t *testing.T) {
	a := &app{env: func(string) string { return "" }}
	for _, m := range a.makers(nil) {
		alone, _, err := a.root([]string{m.name}).Find([]string{m.name})
		require.NoError(t, err)
		among, _, err := a.root(nil).Find([]string{m.name})
		require.NoError(t, err)
		assert.Equal(t, m.name, alone.Name())
		assert.Equal(t, among.UsageString(), alone.UsageString())
		assert.Equal(t, among.Long, alone.Long)
	}
}
