//go:build js && wasm

// Command wasm is the engine as a browser runs it: it gives the worker's script one
// function, scalepair(name, request), from JSON to JSON.
package main

import (
	"syscall/js"

	"scalepair/cmd/explorer/engine"
)

func main() {
	var e engine.Engine
	js.Global().Set("scalepair", js.FuncOf(func(_ js.Value, args []js.Value) any {
		return string(e.Call(args[0].String(), []byte(args[1].String())))
	}))
	select {}
}
