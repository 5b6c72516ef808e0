package tuning

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Further names lead to their tuning too, and no name stands for two.
func TestNoNameStandsForTwoTunings(t *testing.T) {
	seen := map[string]string{}
	for _, e := range list() {
		for _, n := range e.names {
			assert.NotContains(t, seen, fold(n), n)
			seen[fold(n)] = n
			got, err := Lookup(n)
			require.NoError(t, err)
			assert.Equal(t, e.tuning(), got)
		}
	}
}
