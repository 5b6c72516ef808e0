package choice

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/gauges"
)

// What the total tension leans on, against its differential, and its budget
// against the detail's own uncertainty.
func TestNextOfTheTension(t *testing.T) {
	req := known(baritone(), 0.02)
	for i := range req.Stock {
		req.Stock[i].Common = gauges.Parts{{Source: "balance", U: 0.01 * float64(req.Stock[i].LinearDensity)}}
		req.Stock[i].CoreParts = gauges.Parts{{Source: "caliper", U: 5e-6}}
	}
	p := must(t, req)
	set := indexesOf(req.Stock, "p13", "p17", "p22", "w46", "w46", "w56")
	d := p.drawn(unit.MM(690), unit.MM(650), set)
	n := p.NextOf(d, 1)
	assert.False(t, n.OfError)
	assert.Equal(t, d.Totals[0].Tension.Value.N(), n.Value)
	assert.InEpsilon(t, d.Totals[0].Tension.U.N(), n.U, 1e-6)
	twice := 0.0
	for _, s := range d.Strings[3:5] {
		force := s.Tunings[0].Tension.Value
		twice += force.N() * p.wires[s.Gauge].Sensitivities(force).LinearDensity
	}
	assert.InEpsilon(t, twice, n.Density[set[3]], 1e-6)
	assert.Zero(t, n.Density[req.Reference.Gauges[0]], "the reference's strings do not pull here")
	sum := 0.0
	for k, part := range n.Parts {
		sum += float64(part.Share)
		if k > 0 {
			assert.LessOrEqual(t, part.Share, n.Parts[k-1].Share)
		}
	}
	assert.InDelta(t, 1, sum, 1e-9)
	assert.Equal(t, "balance", n.Parts[0].Source, "it is common to all strings")
}

// What the error leans on, against the trials.
func TestNextOfTheError(t *testing.T) {
	req := known(baritone(), 0.01)
	req.Feel.BendingForce = Target{} // bends have corners, where slopes say little
	p, r := search(t, req)
	pick := r.Preferred()
	d := p.drawn(pick.Bass, pick.Treble, pick.Gauges)
	n := p.NextOf(d, 0.9)
	assert.True(t, n.OfError)
	assert.Equal(t, float64(d.Error), n.Value)
	c, err := p.Confidence(context.Background(), r, gauges.NewDrawer(req.Stock), 4000, 1)
	require.NoError(t, err)
	for _, k := range c.Picks {
		if k.Kind == pick.Kind {
			assert.InEpsilon(t, float64(k.High-k.Low)/2/1.96, n.U, 0.1)
		}
	}
	leans := 0
	for g, x := range n.Density {
		if math.Abs(x) > 1e-9 {
			leans++
			assert.Contains(t, append(append([]int{}, pick.Gauges...), req.Reference.Gauges...), g)
		}
	}
	assert.Greater(t, leans, 6, "the reference's strings among them")
}
