package build_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
	"scalepair/data"
)

func BenchmarkRead(b *testing.B) {
	src, err := data.Demo("build.toml")
	require.NoError(b, err)
	for b.Loop() {
		_, err = build.Read(src, "build.toml", nil)
	}
	require.NoError(b, err)
}
