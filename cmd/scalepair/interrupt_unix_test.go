//go:build linux || darwin

package main

import (
	"bufio"
	"fmt"
	"os/exec"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// stubborn goes on with its work when it is interrupted.
func stubborn() {
	i := catchInterrupts()
	fmt.Println("ready")
	<-i.stop
	fmt.Println(i.stopped("nothing was written"), interrupted{by: i.came}.code())
	time.Sleep(time.Minute)
}

// The second interrupt ends even a run that does not heed the first. What the
// caller has told to ignore is none.
func TestSecondInterruptEndsAtOnce(t *testing.T) {
	for _, c := range []struct {
		name, begin string
		first       []syscall.Signal
	}{
		{"as a shell starts it", "exec stubborn", []syscall.Signal{syscall.SIGTERM}},
		{"as nohup starts it", "trap '' HUP INT; exec stubborn", []syscall.Signal{syscall.SIGHUP, syscall.SIGINT, syscall.SIGTERM}},
	} {
		t.Run(c.name, func(t *testing.T) {
			run := exec.Command("sh", "-c", c.begin)
			out, err := run.StdoutPipe()
			require.NoError(t, err)
			require.NoError(t, run.Start())
			defer func() { _ = run.Process.Kill() }()
			says := bufio.NewScanner(out)
			require.True(t, says.Scan())
			for _, s := range c.first {
				require.NoError(t, run.Process.Signal(s))
			}
			require.True(t, says.Scan())
			assert.Equal(t, "interrupted; nothing was written 143", says.Text())
			require.NoError(t, run.Process.Signal(syscall.SIGTERM))
			_ = run.Wait()
			assert.Equal(t, syscall.SIGTERM, run.ProcessState.Sys().(syscall.WaitStatus).Signal())
		})
	}
}

// What one run has caught it does not keep from the next: an interrupt that
// comes with the end of the work still counts.
func TestInterruptAtTheEnd(t *testing.T) {
	i := catchInterrupts()
	close(i.over) // nobody listens any more
	<-i.done
	i.signals <- syscall.SIGTERM
	i.over = make(chan struct{})
	i.end()
	assert.EqualError(t, i.stopped("nothing was written"), "interrupted; nothing was written")
	quiet := catchInterrupts()
	quiet.end()
	assert.NoError(t, quiet.stopped("nothing was written"))
}
