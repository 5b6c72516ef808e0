package main

import (
	"context"
	"io"
	"testing"
)

// The whole of a command on the embedded demo, but for the start of the
// process: reading, combining, choosing, printing.
func BenchmarkDemo(b *testing.B) {
	b.Chdir(b.TempDir())
	for _, command := range []string{"tension", "layout", "advise", "gauges"} {
		b.Run(command, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if code := run(context.Background(), []string{command}, io.Discard, io.Discard); code != exitDone {
					b.Fatalf("exit code %d", code)
				}
			}
		})
	}
}
