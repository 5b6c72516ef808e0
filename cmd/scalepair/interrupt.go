package main

import (
	"os"
	"os/signal"
	"syscall"
	"time"
)

// exitSignal is what shells add to the number of the signal that ended a
// program: 130 is an interrupt from the keyboard, 143 a request to end, 129 a
// terminal that was closed, 141 a pipe that nobody reads any more.
const exitSignal = 128

// interrupts catches what ends a program from outside, so that work ends in
// good order. Once the first has come, the next ends the program at once.
type interrupts struct {
	stop    chan struct{} // closed by the first
	signals chan os.Signal
	over    chan struct{} // closed by end
	done    chan struct{}
	came    os.Signal // the first, once stop is closed
}

// catchInterrupts begins to catch. What the caller was told to ignore, as by
// nohup, stays ignored.
func catchInterrupts() *interrupts {
	i := &interrupts{stop: make(chan struct{}), signals: make(chan os.Signal, 1), over: make(chan struct{}), done: make(chan struct{})}
	for _, s := range []os.Signal{os.Interrupt, syscall.SIGTERM, syscall.SIGHUP} {
		if !signal.Ignored(s) {
			signal.Notify(i.signals, s)
		}
	}
	go i.wait()
	return i
}

func (i *interrupts) wait() {
	defer close(i.done)
	select {
	case s := <-i.signals:
		i.first(s)
	case <-i.over:
	}
}

func (i *interrupts) first(s os.Signal) {
	signal.Stop(i.signals)
	i.came = s
	close(i.stop)
}

// end stops catching. One that has come by now counts.
func (i *interrupts) end() {
	signal.Stop(i.signals)
	close(i.over)
	<-i.done
	if i.came != nil {
		return
	}
	select {
	case s := <-i.signals:
		i.first(s)
	default:
	}
}

// stopped gives an interrupted error once one has come.
func (i *interrupts) stopped(what string) error {
	select {
	case <-i.stop:
		return interrupted{i.came, what}
	default:
		return nil
	}
}

// interrupted ends a run that was ended from outside. what tells what was
// written by then.
type interrupted struct {
	by   os.Signal
	what string
}

func (e interrupted) Error() string { return "interrupted; " + e.what }

// code is the exit code, as shells count it.
func (e interrupted) code() int {
	s, _ := e.by.(syscall.Signal)
	return exitSignal + int(s)
}

// end ends the program with an exit code. A run that a signal ended dies of
// it, so that a shell sees what happened and ends its own loops too.
func end(code int) {
	if code > exitSignal {
		if self, err := os.FindProcess(os.Getpid()); err == nil && self.Signal(syscall.Signal(code-exitSignal)) == nil {
			time.Sleep(time.Second) // it comes sooner
		}
	}
	os.Exit(code)
}
