package main

import (
	"errors"
	"io"
	"os"
	"syscall"

	"scalepair/cmd/scalepair/whole"
	"scalepair/data/fault"
)

// resultOutput is where results go. It keeps the first failure, whoever
// printed, so that no run that lost a result ends as done.
type resultOutput struct {
	to  io.Writer
	err error
}

func (o *resultOutput) Write(text []byte) (int, error) {
	n, err := o.to.Write(text)
	switch {
	case err == nil:
		return n, nil
	case nobodyReads(err):
		err = exitError{exitSignal + int(syscall.SIGPIPE)}
	default:
		err = lostFault(err)
	}
	if o.err == nil {
		o.err = err
	}
	return n, err
}

func lostFault(err error) error {
	remedy := "send it elsewhere"
	if whole.NoRoom(err) {
		remedy = "make room there, or " + remedy
	}
	return fault.Fault{Place: fault.Place{Input: "standard output"}, What: "the result cannot be printed: " + whole.Reason(err), Remedy: remedy}
}

// What Windows says of a pipe that was closed.
const (
	windowsBrokenPipe = syscall.Errno(109)
	windowsNoData     = syscall.Errno(232)
)

// nobodyReads says whether a pipe was closed from behind, as head does when it
// has enough: no fault, and nothing to tell. Elsewhere than on Windows the
// program has died of it by now, which shells count as 141.
func nobodyReads(err error) bool {
	if os.PathSeparator == '\\' && (errors.Is(err, windowsBrokenPipe) || errors.Is(err, windowsNoData)) {
		return true
	}
	return errors.Is(err, syscall.EPIPE)
}
