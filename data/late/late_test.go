package late

import (
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
)

var digits = MustCompile(`^\d+$`)

func TestGet(t *testing.T) {
	assert.True(t, digits.Get().MatchString("24"))
	assert.False(t, digits.Get().MatchString("24 mm"))
	assert.Same(t, digits.Get(), digits.Get(), "compiled once")
}

func TestGetFromManySides(t *testing.T) {
	r := MustCompile(`a+`)
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() { assert.Equal(t, "aa", r.Get().FindString("baab")) })
	}
	all.Wait()
}

func TestNoExpression(t *testing.T) {
	assert.Panics(t, func() { MustCompile(`(`).Get() })
}
