package engine_test

import (
	"encoding/json"
	"fmt"
	"testing"

	"scalepair/cmd/explorer/engine"
)

// BenchmarkPair is one movement of a slider.
func BenchmarkPair(b *testing.B) {
	var e engine.Engine
	for i := 0; b.Loop(); i++ {
		request, _ := json.Marshal(map[string]any{"flags": map[string]string{"bass": fmt.Sprintf("%d mm", 650+i%40), "treble": "635 mm"}})
		e.Call("pair", request)
	}
}
