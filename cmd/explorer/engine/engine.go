// Package engine answers the page in a browser: the texts of a build file, readings
// and measured marks in, with the flags of a command; the JSON of that command, or
// files, out. What it answers comes from package answer, as the command line's does;
// it has no arithmetic of its own and opens nothing.
//
// In reading order: engine.go a call and its answer, request.go what is asked,
// calls.go the calls by name, texts.go those that change a text. wasm has the
// program that a browser runs.
package engine

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"runtime/debug"
	"slices"

	"scalepair/cmd/scalepair/build"
	"scalepair/data/fault"
)

// Engine answers calls. It keeps what it read last, since a page asks of one build
// again and again.
type Engine struct {
	last *build.Run
	of   [3]string // what last was read of: build, readings, and flags but for the pair
}

// Answer is what a call comes to. Where it is not ok, Faults say why; a result that
// comes all the same is said at its call.
type Answer struct {
	OK     bool     `json:"ok"`
	Result any      `json:"result,omitempty"`
	Notes  []string `json:"notes"` // what was settled on the builder's behalf
	Faults []Fault  `json:"faults,omitempty"`
}

// Fault is one thing that is wrong.
type Fault struct {
	Input  string `json:"input"` // "build.toml", "readings.csv", "--bass"
	Line   int    `json:"line"`  // from 1, 0 for none, as Column
	Column int    `json:"column"`
	Key    string `json:"key"` // of the build file, or a column's name; "" for none
	What   string `json:"what"`
	Given  string `json:"given"`
	Remedy string `json:"remedy"`
	Text   string `json:"text"` // all of it, as the command line prints it
}

// Call answers one call by its name: JSON in, JSON out.
func (e *Engine) Call(name string, request []byte) []byte {
	var out bytes.Buffer
	to := json.NewEncoder(&out)
	to.SetEscapeHTML(false)
	if err := to.Encode(e.answer(name, request)); err != nil {
		out.Reset()
		_ = to.Encode(failed(err, &Request{})) // which holds texts alone
	}
	return out.Bytes()
}

// answer answers a call. What panics ends the call and not the engine, which
// forgets what it kept.
func (e *Engine) answer(name string, request []byte) (a Answer) {
	r := &Request{engine: e, ctx: context.Background()}
	defer func() {
		if p := recover(); p != nil {
			*e = Engine{}
			a = failed(fmt.Errorf("the program failed: %v\n%s", p, debug.Stack()), r)
		}
	}()
	call, known := calls[name]
	if !known {
		return failed(fmt.Errorf("there is no call %q; the calls are %q", name, slices.Sorted(maps.Keys(calls))), r)
	}
	if err := json.Unmarshal(request, r); err != nil {
		return failed(err, r)
	}
	result, err := call(r)
	if err != nil {
		a = failed(err, r)
		a.Result = r.despite
		return a
	}
	return Answer{OK: true, Result: result, Notes: r.notes}
}

// failed is the answer of a call that did not come to its end.
func failed(err error, r *Request) Answer {
	var list fault.List
	list.Include(fault.Place{}, err)
	a := Answer{Notes: r.notes}
	for _, f := range list {
		a.Faults = append(a.Faults, Fault{f.Place.Input, f.Place.Line, f.Place.Column, r.keyAt(f.Place), f.What, f.Given, f.Remedy, f.Error()})
	}
	return a
}
