package build_test

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
)

var bound = regexp.MustCompile(`^(-?[0-9.]+)(.*)$`)

// Every range that a key states reads as the key's own values, takes both its
// ends, and refuses what lies beyond them, in a file as in a flag.
func TestRanges(t *testing.T) {
	checked := 0
	for _, k := range keys(t) {
		key := k.Path
		if k.Range == "" || k.List && k.Form != "text in quotes" {
			continue
		}
		checked++
		from, to, found := strings.Cut(k.Range, ", ")
		require.True(t, found, key)
		flag := build.NewFlag("flag", key)
		for i, end := range []string{from, to} {
			assert.NoError(t, flag.Set(build.WithUnit(key, end)), "%s takes %s", key, end)
			m := bound.FindStringSubmatch(end)
			require.NotNil(t, m, key)
			x, err := strconv.ParseFloat(m[1], 64)
			require.NoError(t, err)
			if step := max(1, 0.01*x); i == 0 && x > 0 && m[2] != "" {
				x /= 2
			} else {
				x += step * float64(2*i-1)
			}
			beyond := fmt.Sprint(x) + m[2]
			if strings.HasPrefix(key, "scales.") && x < 0 {
				continue // a change of the chosen pair's
			}
			assert.Error(t, flag.Set(build.WithUnit(key, beyond)), "%s refuses %s", key, beyond)
		}
	}
	assert.Greater(t, checked, 70)
}
