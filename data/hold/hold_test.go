package hold_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"scalepair/data/fault"
	"scalepair/data/hold"
)

// tell notes whether a check failed, in place of a test that would end.
type tell struct{ failed bool }

func (t *tell) Errorf(string, ...any) { t.failed = true }
func (t *tell) FailNow()              { panic("stop") }

func fails(check func(t *tell)) (failed bool) {
	t := &tell{}
	defer func() {
		_ = recover()
		failed = t.failed
	}()
	check(t)
	return t.failed
}

func TestFaults(t *testing.T) {
	one := fault.Fault{Place: fault.Place{Input: "f", Line: 2}, What: "wrong", Given: "\x1b"}
	for name, c := range map[string]struct {
		err  error
		fail bool
	}{
		"sound":          {fault.List{one}, false},
		"no list":        {errors.New("f:2: wrong"), true},
		"none":           {fault.List{}, true},
		"another input":  {fault.List{{Place: fault.Place{Input: "g"}, What: "wrong"}}, true},
		"behind the end": {fault.List{{Place: fault.Place{Input: "f", Line: 3}, What: "wrong"}}, true},
		"nothing said":   {fault.List{{Place: fault.Place{Input: "f", Line: 1}}}, true},
	} {
		assert.Equal(t, c.fail, fails(func(t *tell) { hold.Faults(t, c.err, "f", "a\nb") }), name)
	}
}

func TestFinite(t *testing.T) {
	type inner struct{ Xs []float64 }
	type outer struct {
		P     *inner
		A     [2]inner
		Limit float64
		own   float64
	}
	sound := func() outer {
		return outer{P: &inner{[]float64{0, -1}}, Limit: math.Inf(1), own: math.NaN()}
	}
	assert.False(t, fails(func(t *tell) { hold.Finite(t, sound(), "Limit") }))
	assert.True(t, fails(func(t *tell) { hold.Finite(t, sound()) }))
	for _, x := range []float64{math.NaN(), math.Inf(-1), math.Copysign(0, -1)} {
		bad := sound()
		bad.P.Xs[1] = x
		assert.True(t, fails(func(t *tell) { hold.Finite(t, bad, "Limit") }), "%v", x)
		bad = sound()
		bad.A[1].Xs = []float64{x}
		assert.True(t, fails(func(t *tell) { hold.Finite(t, bad, "Limit") }), "%v", x)
	}
}
