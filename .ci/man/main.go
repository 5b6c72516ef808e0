// Command man writes the man pages of a built program, one for the program and
// one for each of its commands.
//
//	go run ./.ci/man PROGRAM OUT
//
// It asks the program for its help and sets that as a page, so that pages and
// --help cannot differ, and nothing of it is in the program. The pages hold no
// date: the same program gives the same bytes.
package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

func main() {
	if len(os.Args) != 3 {
		fmt.Fprintln(os.Stderr, "usage: man PROGRAM OUT")
		os.Exit(2)
	}
	if err := pages(os.Args[1], os.Args[2]); err != nil {
		fmt.Fprintln(os.Stderr, "man:", err)
		os.Exit(1)
	}
}

// pages writes scalepair.1, scalepair-advise.1 and so on into a folder.
func pages(program, out string) error {
	version, err := say(program, "version")
	if err != nil {
		return err
	}
	version, _, _ = strings.Cut(version, "\n")
	root, err := readHelp(program)
	if err != nil {
		return err
	}
	if len(root.commands) == 0 {
		return fmt.Errorf("%s lists no commands", program)
	}
	for _, c := range root.commands {
		page, err := readHelp(program, c.term)
		if err != nil {
			return err
		}
		page.parent, page.short = root, c.text
		if err := page.write(out, version); err != nil {
			return err
		}
	}
	return root.write(out, version)
}

func (h *help) write(out, version string) error {
	return os.WriteFile(filepath.Join(out, h.pageName()+".1"), []byte(h.page(version)), 0o644)
}

// readHelp asks for the help of the program or of one of its commands.
func readHelp(program string, command ...string) (*help, error) {
	text, err := say(program, append(command, "--help")...)
	if err != nil {
		return nil, err
	}
	name := strings.TrimSuffix(filepath.Base(program), ".exe")
	return parseHelp(append([]string{name}, command...), text)
}

// say runs the program in an empty folder's stead: none of these commands
// reads a file.
func say(program string, args ...string) (string, error) {
	program, err := filepath.Abs(program)
	if err != nil {
		return "", err
	}
	c := exec.Command(program, args...)
	var errs bytes.Buffer
	c.Stderr = &errs
	text, err := c.Output()
	if err != nil || errs.Len() > 0 {
		return "", fmt.Errorf("%s: %v %s", strings.Join(c.Args, " "), err, errs.String())
	}
	return string(text), nil
}
