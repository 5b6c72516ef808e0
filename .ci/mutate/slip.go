package main

import (
	"errors"
	"fmt"
	"os"
	"strings"
)

// slip is one error: in a file the old text, which stands there once, becomes
// the new.
type slip struct {
	line                 string // as it stands in the list
	file, old, new, what string
}

// read reads the list: "file | old text | new text | what it is" a line, blank
// lines and lines that begin with # aside.
func read(path string) ([]slip, error) {
	text, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	var out []slip
	var bad []error
	for n, line := range strings.Split(string(text), "\n") {
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		parts := strings.Split(line, " | ")
		if len(parts) != 4 {
			bad = append(bad, fmt.Errorf("%s:%d: wants file | old | new | what", path, n+1))
			continue
		}
		out = append(out, slip{line, parts[0], parts[1], parts[2], parts[3]})
	}
	return out, errors.Join(bad...)
}

// changed is the file with the error in it.
func (e slip) changed() (string, error) {
	text, err := os.ReadFile(e.file)
	if err != nil {
		return "", err
	}
	if n := strings.Count(string(text), e.old); n != 1 {
		return "", fmt.Errorf("%s: %q stands there %d times, not once", e.file, e.old, n)
	}
	return strings.Replace(string(text), e.old, e.new, 1), nil
}

// fits tells of all errors at once that no longer fit the code.
func fits(list []slip) error {
	var bad []error
	for _, e := range list {
		_, err := e.changed()
		bad = append(bad, err)
	}
	return errors.Join(bad...)
}
