package report

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"scalepair/data/unit"
)

// Nothing is known to 0.0 %.
func TestHowWellItIsKnown(t *testing.T) {
	assert.Equal(t, "better than 0.1 %", knownText(unit.Percent(0.04)))
	assert.Equal(t, "0.1 %", knownText(unit.Percent(0.1)))
	assert.Equal(t, "< 0.1", knownCell(unit.Percent(0.09)))
}
