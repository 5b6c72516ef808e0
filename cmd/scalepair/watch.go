package main

import (
	"fmt"
	"os"
	"sync"
	"time"

	"scalepair/cmd/scalepair/show"
	"scalepair/tension/choice"
)

// quietFor is how long work goes on before its progress is shown.
const quietFor = time.Second

// watching is one stretch of work under watch: an interrupt from outside stops
// it, and after a second its progress stands on stderr, if that is a terminal.
type watching struct {
	choice.Watch
	*interrupts
	a     *app
	what  string
	began time.Time

	mu    sync.Mutex
	shown time.Time
	line  int
}

func (a *app) watch(what string) *watching {
	w := &watching{a: a, what: what, began: time.Now(), interrupts: catchInterrupts()}
	w.Watch = choice.Watch{Stop: w.stop}
	if f, ok := a.err.(*os.File); ok && show.IsTerminal(f) {
		w.Watch.Step = w.step
	}
	return w
}

// step shows how far the work has come, five times a second at most.
func (w *watching) step(done, total int) {
	now := time.Now()
	if now.Sub(w.began) < quietFor {
		return
	}
	w.mu.Lock()
	defer w.mu.Unlock()
	if now.Sub(w.shown) < quietFor/5 {
		return
	}
	w.shown = now
	text := fmt.Sprintf("%s: %d %%", w.what, 100*done/max(total, 1))
	fmt.Fprintf(w.a.err, "\r%-*s", w.line, text)
	w.line = max(w.line, len(text))
}

// end takes the progress away again and says whether the work was stopped;
// nothing has been printed or written by then.
func (w *watching) end() error {
	w.interrupts.end()
	w.mu.Lock()
	defer w.mu.Unlock()
	if w.line > 0 {
		fmt.Fprintf(w.a.err, "\r%*s\r", w.line, "")
	}
	return w.stopped("nothing was written")
}
