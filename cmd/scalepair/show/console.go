package show

import (
	"os"
	"runtime"
	"strconv"
	"strings"
)

// pipedWidth is the line length where there is no terminal to ask.
const pipedWidth = 80

// ForConsole gives the options that suit f: its width (80 where it has none),
// ASCII where the console cannot show more, colour on a terminal unless
// NO_COLOR is set or TERM is "dumb". env is os.Getenv.
func ForConsole(f *os.File, env func(string) string) Options {
	if !IsTerminal(f) {
		return Options{Width: pipedWidth}
	}
	o := Options{Width: TerminalWidth(f)}
	if o.Width == 0 {
		o.Width = pipedWidth
	}
	o.ASCII = ConsoleNeedsASCII(env, runtime.GOOS, codePage)
	o.Color = env("NO_COLOR") == "" && env("TERM") != "dumb" && paints(f)
	return o
}

// ConsoleNeedsASCII tells whether a terminal cannot show more than ASCII: on
// Windows by its output code page (65001 is UTF-8), elsewhere by the locale:
// the first of LC_ALL, LC_CTYPE and LANG that is set, which must name UTF-8.
// Ask it for a terminal only: what is piped or written to a file is UTF-8.
func ConsoleNeedsASCII(env func(string) string, goos string, codepage func() int) bool {
	if goos == "windows" {
		return codepage() != 65001
	}
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if v := strings.ToLower(env(name)); v != "" {
			return !strings.Contains(v, "utf-8") && !strings.Contains(v, "utf8")
		}
	}
	return true
}

// TerminalWidth gives the width of the terminal f in cells: COLUMNS where
// that is a number above 0, else what the system says; 0 when f is no
// terminal or the width is unknown.
func TerminalWidth(f *os.File) int {
	if !IsTerminal(f) {
		return 0
	}
	if n, err := strconv.Atoi(os.Getenv("COLUMNS")); err == nil && n > 0 {
		return n
	}
	columns, _ := console(f)
	return columns
}

// IsTerminal tells whether f is a terminal.
func IsTerminal(f *os.File) bool {
	_, ok := console(f)
	return ok
}
