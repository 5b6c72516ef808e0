package fit_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A kind that is named almost as a commoner one is noted, unless the names
// differ by a number.
func TestAlmostTheSameName(t *testing.T) {
	const head = "gauge,construction,outer_mm,length_mm,mass_g\n"
	s := combine(t, head+"a,nickel wound,1.0,500,2.5\nb,nickel wound,1.2,500,3.6\nc,nickle wound,1.4,500,4.8\nd,nickel wounds,1.3,500,4.2\n")
	assert.Contains(t, strings.Join(gauge(t, s, "d").Notes, ";"), `almost the same name, "nickel wounds" and "nickel wound"`)
	assert.Contains(t, strings.Join(gauge(t, s, "c").Notes, ";"), `almost the same name, "nickle wound" and`)
	assert.NotContains(t, strings.Join(gauge(t, s, "a").Notes, ";"), "almost the same")
	s = combine(t, head+"a,set 1,1.0,500,2.5\nb,set 1,1.2,500,3.6\nc,set 2,1.4,500,4.8\n")
	assert.NotContains(t, strings.Join(gauge(t, s, "c").Notes, ";"), "almost the same")
}
