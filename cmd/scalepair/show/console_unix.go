//go:build linux || darwin || freebsd || netbsd || openbsd || dragonfly

package show

import (
	"os"
	"syscall"
	"unsafe"
)

// console gives the terminal's width in cells (0 when it does not know), and
// whether f is one: only terminals answer TIOCGWINSZ.
func console(f *os.File) (columns int, ok bool) {
	var size struct{ rows, columns, xPixels, yPixels uint16 }
	_, _, errno := syscall.Syscall(syscall.SYS_IOCTL, f.Fd(), syscall.TIOCGWINSZ, uintptr(unsafe.Pointer(&size)))
	return int(size.columns), errno == 0
}

// paints tells whether the terminal understands colours.
func paints(*os.File) bool { return true }

// codePage is asked on Windows only.
func codePage() int { return 65001 }
