// Command scalepair helps a builder of multi-scale (fanned-fret) instruments
// choose a bass and a treble scale length before a blank is bought, and set
// the chosen fan out on the bench.
package main

import (
	"os"
	"runtime/debug"
)

func main() {
	// A run is short and its memory small, so collecting rarely is cheaper.
	debug.SetGCPercent(400)
	end(run(os.Args[1:], os.Stdout, os.Stderr))
}
