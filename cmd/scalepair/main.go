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
	growStack()
	end(run(os.Args[1:], os.Stdout, os.Stderr))
}

// growStack makes the stack as large as most runs need while there is nothing
// on it to be copied, instead of in three steps from deep inside. It saves 0.2 ms
// of the 5 that a short run takes.
//
//go:noinline
func growStack() byte {
	if os.Args != nil {
		return 0 // the room counts from the start, but need not be cleared
	}
	var room [24 << 10]byte
	return room[len(os.Args)%len(room)]
}
