package show

import (
	"os"
	"syscall"
	"unsafe"
)

var (
	kernel32       = syscall.NewLazyDLL("kernel32.dll")
	screenInfoProc = kernel32.NewProc("GetConsoleScreenBufferInfo")
	outputCPProc   = kernel32.NewProc("GetConsoleOutputCP")
)

// screenInfo is the system's CONSOLE_SCREEN_BUFFER_INFO.
type screenInfo struct {
	width, height            int16
	cursorX, cursorY         int16
	attributes               uint16
	left, top, right, bottom int16
	maxWidth, maxHeight      int16
}

// console gives the width of the console window in cells, and whether f is a
// console.
func console(f *os.File) (columns int, ok bool) {
	var info screenInfo
	done, _, _ := screenInfoProc.Call(f.Fd(), uintptr(unsafe.Pointer(&info)))
	if done == 0 {
		return 0, false
	}
	return int(info.right-info.left) + 1, true
}

// virtualTerminal is the console mode in which escape sequences work
// (ENABLE_VIRTUAL_TERMINAL_PROCESSING).
const virtualTerminal = 4

// paints tells whether the console understands escape sequences.
func paints(f *os.File) bool {
	var mode uint32
	err := syscall.GetConsoleMode(syscall.Handle(f.Fd()), &mode)
	return err == nil && mode&virtualTerminal != 0
}

// codePage gives the console's output code page, 0 when there is none.
func codePage() int {
	page, _, _ := outputCPProc.Call()
	return int(page)
}
