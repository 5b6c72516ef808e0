package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What a builder is told must hold by itself, so that a wanted message that was
// pasted from what the program says cannot hide a bad one.

// The most that a message may take: more is not read.
const (
	mostMessages = 21
	mostLetters  = 500
)

// messageForm is place: what; remedy. What was given stands quoted within.
var messageForm = regexp.MustCompile(`^(\S.*?)(?::(\d+))?(?::(\d+))?: (.+?); (.+)$`)

// quotedText is a text in quotation marks, with what is escaped in it.
var quotedText = regexp.MustCompile(`"(?:[^"\\]|\\.)*"`)

// foreign are words of the language that the program is written in, of its
// libraries and of the system below: nothing for a builder.
var foreign = regexp.MustCompile(`strconv\.|\bEOF\b|invalid syntax|no such file or directory|permission denied|is a directory|not a directory|` +
	`too many levels|%!|<nil>|\bnil\b|0x[0-9a-f]{6}|runtime error|goroutine|panic|U\+[0-9A-F]{4}|toml:|pflag|` +
	`\b(?:fault|csvtable|unit|build|gauges|mark|job|show|report|fan|tuning|tension|choice|os|io|fs|fmt)\.[A-Z]|^open |: open |parse error|unmarshal|\berrno\b`)

// absence are words for what is not there or is there once too often, of which
// nothing can be quoted.
var absence = regexp.MustCompile(`\d|\bno\b|\bnot\b|nothing|missing|empty|without|lacks?\b|second time|already|twice|both|left open|damaged|ends in the middle|the file is|` +
	`larger than|more than|more faults|is for saving|parted by|a heading row only|add up|do nothing|a link|this link|circle|folder|leave no room`)

// messageProblems says what is wrong with the messages of a run: each line must
// name a place that is there, say what is wrong with what was given, and what
// would do. args and dir are the run's.
func messageProblems(text string, args []string, dir string) []string {
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	var out []string
	if len(lines) > mostMessages {
		out = append(out, fmt.Sprintf("%d messages are more than anybody reads", len(lines)))
	}
	if !strings.HasSuffix(text, "\n") {
		out = append(out, "the last message has no line end")
	}
	for i, line := range lines {
		for _, problem := range lineProblems(line, args, dir) {
			out = append(out, problem+": "+line)
		}
		if slices.Contains(lines[:i], line) {
			out = append(out, "said twice: "+line)
		}
	}
	return out
}

func lineProblems(line string, args []string, dir string) []string {
	m := messageForm.FindStringSubmatch(line)
	if m == nil {
		return []string{"not of the form place: fault (given); remedy"}
	}
	place, what, remedy := m[1], m[4], m[5]
	var out []string
	add := func(bad bool, problem string) {
		if bad {
			out = append(out, problem)
		}
	}
	first, _ := utf8.DecodeRuneInString(what)
	plain := quotedText.ReplaceAllString(strings.TrimPrefix(line, place), "")
	add(unicode.IsUpper(first), "begins with a capital")
	add(strings.HasSuffix(remedy, "."), "ends with a full stop")
	add(strings.TrimSpace(remedy) == "" || utf8.RuneCountInString(remedy) < 4, "no remedy")
	add(foreign.MatchString(plain), "speaks of "+strconv.Quote(foreign.FindString(plain)))
	add(utf8.RuneCountInString(line) > mostLetters, "too long to be read")
	add(strings.ContainsFunc(line, unicode.IsControl), "has a control character")
	add(!quotedText.MatchString(what) && !absence.MatchString(what), "does not say what was given")
	return append(out, placeProblems(place, m[2], m[3], what, args, dir)...)
}

// placeProblems says what is wrong with a place: it must be a flag or word of
// the command line, the command, or a file, and then a line and column of it
// where what was given stands.
func placeProblems(place, line, column, what string, args []string, dir string) []string {
	named := func(arg string) bool { return arg != "" && strings.Contains(arg, place) }
	text, err := os.ReadFile(filepath.Join(dir, place))
	switch {
	case err == nil && line != "":
		return spotProblems(string(text), countOf(line), countOf(column), what)
	case err == nil, place == "scalepair", len(args) > 0 && place == "scalepair "+args[0], strings.HasPrefix(place, "--"):
		return nil
	case slices.ContainsFunc(args, named), slices.ContainsFunc(textsIn(dir), named):
		return nil
	}
	return []string{"the place is neither a file nor a flag nor the command"}
}

// countOf gives 0 for "".
func countOf(digits string) int {
	n, _ := strconv.Atoi(digits)
	return n
}

// textsIn are the texts of a folder, in which a file may be named that is not
// there.
func textsIn(dir string) []string {
	var out []string
	entries, _ := os.ReadDir(dir)
	for _, e := range entries {
		if text, err := os.ReadFile(filepath.Join(dir, e.Name())); err == nil {
			out = append(out, string(text))
		}
	}
	return out
}

// spotProblems holds a line and column, from 1, against the text of a file.
func spotProblems(text string, line, column int, what string) []string {
	text = strings.ReplaceAll(strings.TrimPrefix(text, "\ufeff"), "\r\n", "\n")
	lines := strings.Split(text, "\n")
	if line > len(lines) {
		return []string{fmt.Sprintf("the file has %d lines", len(lines))}
	}
	letters := []rune(lines[line-1])
	if column > len(letters)+1 {
		return []string{fmt.Sprintf("the line has %d characters", len(letters))}
	}
	given := givenIn(what)
	if given == "" || column == 0 {
		return nil
	}
	rest := strings.TrimLeft(string(letters[column-1:]), "\"'“ ")
	whole := strings.TrimSpace(lines[line-1])
	switch given = strings.TrimSuffix(strings.TrimSpace(given), "…"); {
	case strings.HasPrefix(rest, given), strings.HasPrefix(whole, given): // the value there, or its whole line
		return nil
	case strings.HasPrefix(rest, strings.Trim(strconv.Quote(given), `"`)): // with what is escaped in it
		return nil
	case column == 1 && strings.Contains(whole, given), strings.HasPrefix(whole, "["): // told at its row, or at its section
		return nil
	case firstNumber(given) != "" && strings.Contains(whole, firstNumber(given)): // told with its unit, or with what it stands against
		return nil
	}
	return []string{fmt.Sprintf("%q does not stand there", given)}
}

// givenIn is the last quoted text in brackets, as it was before it was quoted.
func givenIn(what string) string {
	all := regexp.MustCompile(`\(("(?:[^"\\]|\\.)*")\)`).FindAllStringSubmatch(what, -1)
	if all == nil {
		return ""
	}
	given, err := strconv.Unquote(all[len(all)-1][1])
	if err != nil {
		return ""
	}
	return given
}

func firstNumber(text string) string {
	digits := regexp.MustCompile(`\d+(\.\d+)?`).FindString(text)
	if strings.Contains(digits, ".") {
		digits = strings.TrimRight(strings.TrimRight(digits, "0"), ".")
	}
	return digits
}

// The check of the messages itself: what it must pass and what it must catch.
func TestMessageProblems(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "r.csv"), []byte("gauge,mass_g\np10,0,43\n"), 0o644))
	args := []string{"tension", "--bass", "650", "my build.toml"}
	for _, c := range []struct{ line, problem string }{
		{`r.csv:2:5: a comma is not read ("0,43"); write "0.43"`, ""},
		{`r.csv:2: the row lacks a cell; add it`, ""},
		{`r.csv:1: these add up to "5.0"; give another`, ""},
		{`--bass: a length needs a unit ("650"); write "650 mm"`, ""},
		{`scalepair tension: one file at a time ("a b"); quote it`, ""},
		{`my build.toml: there is no such file; make one`, ""},
		{`r.csv: no remedy here`, "not of the form"},
		{`no place here`, "not of the form"},
		{`other.csv:1:1: no such column ("x"); drop it`, "the place is neither"},
		{`r.csv:9:1: no such column ("x"); drop it`, "the file has 3 lines"},
		{`r.csv:2:50: no such column ("x"); drop it`, "the line has 8 characters"},
		{`r.csv:2:1: no such label ("p11"); drop it`, `"p11" does not stand there`},
		{`r.csv:2:5: Not read ("0,43"); write "0.43"`, "begins with a capital"},
		{`r.csv:2:5: not read ("0,43"); write it.`, "ends with a full stop"},
		{`r.csv:2:5: strconv.ParseFloat: parsing failed ("0,43"); write it`, "speaks of"},
		{`r.csv: open r.csv: no such file or directory; write it`, "speaks of"},
		{`r.csv:2:5: unexpected %!s(MISSING) ("0,43"); write it`, "speaks of"},
		{`r.csv:2:5: the value is wrong; write it`, "does not say what was given"},
		{`r.csv:2:5: not read ("` + strings.Repeat("x", 600) + `"); write it`, "too long"},
	} {
		problems := messageProblems(c.line+"\n", args, dir)
		if c.problem == "" {
			assert.Empty(t, problems, c.line)
		} else {
			assert.Contains(t, strings.Join(problems, "\n"), c.problem, c.line)
		}
	}
	assert.Contains(t, strings.Join(messageProblems(strings.Repeat("r.csv: nothing; write\n", 30), args, dir), "\n"), "30 messages")
	assert.Contains(t, strings.Join(messageProblems("r.csv: nothing; write\nr.csv: nothing; write\n", args, dir), "\n"), "said twice")
}
