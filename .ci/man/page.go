package main

import (
	"fmt"
	"strings"
)

// pageName is "scalepair" or "scalepair-advise".
func (h *help) pageName() string { return strings.Join(h.path, "-") }

// page sets the help as a man page, in the macros of man(7).
func (h *help) page(version string) string {
	var b strings.Builder
	fmt.Fprintf(&b, ".TH %s 1 \"\" \"%s\" \"User commands\"\n", strings.ToUpper(h.pageName()), escape(version))
	b.WriteString(".SH NAME\n" + escape(h.pageName()) + ` \- ` + escape(h.inShort()) + "\n")
	b.WriteString(".SH SYNOPSIS\n")
	for i, u := range h.usage {
		if i > 0 {
			b.WriteString(".br\n")
		}
		b.WriteString(".B " + escape(u) + "\n")
	}
	b.WriteString(".SH DESCRIPTION\n")
	paragraphs(&b, h.about)
	items(&b, "COMMANDS", h.commands)
	items(&b, "OPTIONS", h.flags)
	if len(h.examples) > 0 {
		b.WriteString(".SH EXAMPLES\n")
		verbatim(&b, h.examples)
	}
	b.WriteString(exitStatus)
	h.seeAlso(&b)
	return b.String()
}

const exitStatus = `.SH EXIT STATUS
.TP
.B 0
Done.
.TP
.B 1
The input does not allow it; stderr says where, what is wrong and what would do.
.TP
.B 2
The command line is wrong.
`

// inShort is one line: the program's is the first sentence of its description.
func (h *help) inShort() string {
	if h.short != "" {
		return h.short
	}
	first, _, _ := strings.Cut(strings.Join(h.about, " "), ":")
	return strings.TrimPrefix(first, h.path[0]+" ")
}

func (h *help) seeAlso(b *strings.Builder) {
	var pages []string
	if h.parent != nil {
		pages = append(pages, h.parent.pageName())
	}
	for _, c := range h.commands {
		pages = append(pages, h.pageName()+"-"+c.term)
	}
	b.WriteString(".SH SEE ALSO\n")
	for i, p := range pages {
		end := ","
		if i == len(pages)-1 {
			end = ""
		}
		b.WriteString(".BR " + escape(p) + " (1)" + end + "\n")
	}
}

// items sets a list of terms.
func items(b *strings.Builder, heading string, list []item) {
	if len(list) == 0 {
		return
	}
	b.WriteString(".SH " + heading + "\n")
	for _, i := range list {
		b.WriteString(".TP\n.B " + escape(i.term) + "\n" + escape(i.text) + "\n")
	}
}

// paragraphs sets text: a blank line parts paragraphs, indented lines stay as
// they are.
func paragraphs(b *strings.Builder, lines []string) {
	open := false // a paragraph has begun
	for len(lines) > 0 {
		n := 1
		switch {
		case lines[0] == "":
			open = false
		case strings.HasPrefix(lines[0], " "):
			for n < len(lines) && strings.HasPrefix(lines[n], " ") {
				n++
			}
			verbatim(b, lines[:n])
			open = false
		default:
			if !open {
				b.WriteString(".PP\n")
			}
			open = true
			b.WriteString(escape(lines[0]) + "\n")
		}
		lines = lines[n:]
	}
}

// verbatim sets lines as they are.
func verbatim(b *strings.Builder, lines []string) {
	b.WriteString(".PP\n.RS 4\n.nf\n")
	for _, l := range lines {
		b.WriteString(escape(strings.TrimPrefix(l, "  ")) + "\n")
	}
	b.WriteString(".fi\n.RE\n")
}

// escape writes text so that it is set as it stands: the page is ASCII, no
// line of text is taken for a request, and a hyphen can be pasted.
func escape(text string) string {
	var b strings.Builder
	for i, r := range text {
		switch {
		case r == '\\':
			b.WriteString(`\e`)
		case r == '-':
			b.WriteString(`\-`)
		case r == '"':
			b.WriteString(`\(dq`)
		case i == 0 && (r == '.' || r == '\''):
			b.WriteString(`\&` + string(r))
		case r == '\'':
			b.WriteString(`\(aq`)
		case r > 126:
			fmt.Fprintf(&b, `\[u%04X]`, r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
