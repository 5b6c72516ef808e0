package trace_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"scalepair/data/trace"
)

func TestSteps(t *testing.T) {
	var tr trace.Trace
	assert.Equal(t, 2.0, tr.Step("T, tension, open", "q", 2, "N", "string law"))
	tr.Carry(11)
	tr.Given(", share", 3, "%", "as asked")
	assert.Equal(t, []trace.Step{
		{Symbol: "T", Name: "tension, open", Formula: "q", Value: 2, Unit: "N", Source: "string law", Digits: 7},
		{Name: "share", Value: 3, Unit: "%", Source: "as asked", Digits: 11},
	}, tr.Steps)
}

func TestNoTraceRecordsNothing(t *testing.T) {
	var tr *trace.Trace
	tr.Carry(11)
	assert.Equal(t, 2.0, tr.Step("T", "q", 2, "N", "string law"))
	assert.Zero(t, testing.AllocsPerRun(10, func() { tr.Given("T", 2, "N", "") }))
}
