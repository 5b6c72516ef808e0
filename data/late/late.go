// Package late holds regular expressions that are compiled where first needed.
// A program has many and a run needs few, most of them to word a fault; a table
// of these costs nothing at its start.
package late

import (
	"regexp"
	"sync"
)

// Regexp is a regular expression that is not compiled yet.
type Regexp struct {
	text     string
	once     sync.Once
	compiled *regexp.Regexp
}

// MustCompile gives the expression of a text in the syntax of [regexp]. It does
// so little that the compiler lays a package's variables out by itself.
func MustCompile(text string) *Regexp { return &Regexp{text: text} }

// Get compiles the expression at its first call; a text that is none is a bug
// and panics.
func (r *Regexp) Get() *regexp.Regexp {
	r.once.Do(func() { r.compiled = regexp.MustCompile(r.text) })
	return r.compiled
}
