package report

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"scalepair/data/unit"
)

// Nothing is known to 0.0 %.
func TestHowWellItIsKnown(t *testing.T) {
	assert.Equal(t, "0.1", known(unit.Percent(0.1)))
	assert.Equal(t, "< 0.1", known(unit.Percent(0.09)))
}
