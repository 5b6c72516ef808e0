package main

import (
	"fmt"
	"regexp"
	"strings"
)

// help is what --help prints, taken apart.
type help struct {
	path     []string // the program, or the program and one of its commands
	short    string   // in one line; "" for the program
	about    []string // lines of the description
	usage    []string // lines, without their indent
	examples []string
	flags    []item
	commands []item // of the program
	parent   *help  // of a command
}

// item is a term with its explanation.
type item struct{ term, text string }

// parseHelp takes the text of --help apart: a description, then sections with
// a heading at the line's start and indented lines below.
func parseHelp(path []string, text string) (*help, error) {
	h := &help{path: path}
	section := ""
	for _, line := range strings.Split(strings.TrimRight(text, "\n"), "\n") {
		heading, isHeading := strings.CutSuffix(line, ":")
		switch {
		case section == "" && line != "Usage:":
			h.about = append(h.about, line)
		case isHeading && !strings.HasPrefix(line, " "):
			section = heading
		case strings.HasPrefix(line, " "):
			if err := h.take(section, line); err != nil {
				return nil, err
			}
		}
	}
	if section == "" || len(h.flags) == 0 || len(h.about) == 0 {
		return nil, fmt.Errorf("%s --help has no description, no usage or no flags", strings.Join(path, " "))
	}
	return h, nil
}

// take puts one indented line where it belongs.
func (h *help) take(section, line string) error {
	switch section {
	case "Usage":
		h.usage = append(h.usage, strings.TrimSpace(line))
	case "Examples":
		h.examples = append(h.examples, strings.TrimPrefix(line, "  "))
	case "Flags":
		return takeItem(&h.flags, line)
	default: // a group of commands
		return takeItem(&h.commands, line)
	}
	return nil
}

// listed is a term and, behind at least two blanks, its text.
var listed = regexp.MustCompile(`^ +(\S.*?)(?:  +(\S.*))?$`)

// takeItem reads a line of a list; one that begins further in than a term can
// goes on the text before.
func takeItem(list *[]item, line string) error {
	m := listed.FindStringSubmatch(line)
	indent := len(line) - len(strings.TrimLeft(line, " "))
	switch {
	case m == nil:
		return fmt.Errorf("this line is no part of a list: %s", line)
	case indent > 6 && len(*list) > 0:
		last := &(*list)[len(*list)-1]
		last.text += " " + strings.TrimSpace(line)
	default:
		*list = append(*list, item{m[1], m[2]})
	}
	return nil
}
