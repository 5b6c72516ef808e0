//go:build unix

package job

import (
	"os"
	"syscall"
)

// openInput opens a file for reading. Without O_NONBLOCK a pipe that nobody
// writes to would hold the program for ever.
func openInput(path string) (*os.File, error) {
	return os.OpenFile(path, os.O_RDONLY|syscall.O_NONBLOCK, 0)
}
