package fit_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
)

// A gauge is sized so that its kind's fit gives it the linear density: of solid
// wire the diameter goes with the root of it, and a size in stock comes out again.
func TestSized(t *testing.T) {
	s := combine(t, `gauge,construction,outer_mm,core_mm,kind,pieces,length_mm,mass_g
p10,plain,0.254,,weighed,1,1000,0.3977
p13,plain,0.330,,weighed,1,1000,0.6714
p17,plain,0.432,,weighed,1,1000,1.1506
w36,wound,0.914,0.40,weighed,1,1000,3.9000
w46,wound,1.168,0.45,weighed,1,1000,6.400
w56,wound,1.422,0.50,weighed,1,1000,9.500
`)
	p13 := gauge(t, s, "p13")
	half, ok := s.Sized(p13, p13.LinearDensity*1.21)
	require.True(t, ok)
	near(t, 1.1*p13.Outer, half.Outer, 0.005)
	near(t, half.Outer, half.Core, 1e-9)
	assert.Equal(t, p13.LinearDensity*1.21, half.LinearDensity)
	w46 := gauge(t, s, "w46")
	same, ok := s.Sized(gauge(t, s, "w56"), w46.LinearDensity)
	require.True(t, ok)
	near(t, w46.Outer, same.Outer, 0.02)
	assert.Equal(t, w46.Core, same.Core)
	_, ok = s.Sized(p13, unit.LinearDensity(0.1))
	assert.False(t, ok, "no fit reaches so far")
}
