package build_test

import (
	"testing"

	"scalepair/cmd/scalepair/build"
	"scalepair/data"
)

func BenchmarkReadDemo(b *testing.B) {
	src, err := data.Demo("build.toml")
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := build.Read(src, "build.toml"); err != nil {
			b.Fatal(err)
		}
	}
}
