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
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
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

// listed is a command in the program's help: two blanks, its name, its text.
// Flags begin with a hyphen.
var listed = regexp.MustCompile(`(?m)^  ([a-z]+)  +(\S.*)$`)

// pages writes scalepair.1, scalepair-advise.1 and so on into a folder.
func pages(program, out string) error {
	program, err := filepath.Abs(program)
	if err != nil {
		return err
	}
	help, err := exec.Command(program, "--help").Output()
	if err != nil {
		return err
	}
	name := strings.TrimSuffix(filepath.Base(program), ".exe")
	commands := listed.FindAllStringSubmatch(string(help), -1)
	if len(commands) == 0 {
		return fmt.Errorf("%s lists no commands", program)
	}
	all := map[string]string{name: page(name, "choose a scale pair for a fanned-fret instrument, and set it out", string(help))}
	for _, c := range commands {
		text, err := exec.Command(program, c[1], "--help").Output()
		if err != nil {
			return fmt.Errorf("%s: %w", c[1], err)
		}
		all[name+"-"+c[1]] = page(name+"-"+c[1], c[2], string(text))
	}
	for name, text := range all {
		if err := os.WriteFile(filepath.Join(out, name+".1"), []byte(text), 0o644); err != nil {
			return err
		}
	}
	return nil
}

// page sets a help text as a man page, in the macros of man(7): a line that
// begins a section becomes a heading, everything else stays as it is.
func page(name, short, help string) string {
	var b strings.Builder
	fmt.Fprintf(&b, ".TH %s 1\n.SH NAME\n%s \\- %s\n.SH DESCRIPTION\n.nf\n", strings.ToUpper(name), escape(name), escape(short))
	for line := range strings.Lines(help) {
		line = strings.TrimSuffix(line, "\n")
		if heading, ok := strings.CutSuffix(line, ":"); ok && heading != "" && heading[0] != ' ' {
			fmt.Fprintf(&b, ".fi\n.SH %s\n.nf\n", strings.ToUpper(escape(heading)))
			continue
		}
		b.WriteString(escape(line) + "\n")
	}
	b.WriteString(".fi\n")
	return b.String()
}

// escape writes what troff would obey so that it shows it.
func escape(line string) string {
	line = strings.NewReplacer(`\`, `\e`, "-", `\-`, "'", `\(aq`, "`", `\(ga`, "^", `\(ha`, "~", `\(ti`).Replace(line)
	if strings.HasPrefix(line, ".") {
		line = `\&` + line
	}
	return line
}
