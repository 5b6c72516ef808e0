package build

import (
	"fmt"
	"slices"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/suggest"
)

// reader is what all sections of one file share.
type reader struct {
	file     string // its name for messages
	faults   fault.List
	sections []*section
	// absent are the faults of keys that are not there. Whether they are told
	// shows when all keys are known: a misspelt one is told once.
	absent []absent
	// broken: part of the file could not be read, so nothing is called missing.
	broken bool
	// unordered: the strings need not rise from the first to the last.
	unordered bool
}

// absent is a key that is not there, or one of several.
type absent struct {
	section *section
	keys    []string
	fault   fault.Fault
}

// section reads the keys of one table. Each key is known once it was asked
// for; finish reports the rest.
type section struct {
	*reader
	// name is how messages call the section: "[neck]", "[[blanks]]".
	name string
	at   fault.Place
	// table is nil when the file does not have it; asking then gives nothing.
	table *table
	known []string
}

func (r *reader) place(at spot) fault.Place { return at.in(r.file) }

func (r *reader) open(name string, at fault.Place, t *table) *section {
	s := &section{reader: r, name: name, at: at, table: t}
	r.sections = append(r.sections, s)
	return s
}

// find gives the key's node, nil when the file does not have it.
func (s *section) find(key string) *node {
	if s.known == nil {
		s.known = make([]string, 0, 8)
	}
	if !slices.Contains(s.known, key) {
		s.known = append(s.known, key)
	}
	if s.table == nil {
		return nil
	}
	return s.table.get(key)
}

// has tells whether the file states the key.
func (s *section) has(key string) bool {
	return s.table != nil && s.table.get(key) != nil
}

// want gives the key's node when it is of that kind, and reports another kind.
func (s *section) want(key string, k kind, remedy string) *node {
	return s.wantOr(key, k, func() string { return remedy })
}

// wantOr is want with a remedy that is worded only when needed.
func (s *section) wantOr(key string, k kind, remedy func() string) *node {
	n := s.find(key)
	if n == nil || n.kind == k {
		return n
	}
	s.wrong(n, fmt.Sprintf("%s must be %s, not %s", say(key), kindWords[k], kindWords[n.kind]), remedy())
	return nil
}

// require reports a key that must be there.
func (s *section) require(key, remedy string) bool {
	if s.has(key) {
		return true
	}
	s.missing(fmt.Sprintf("%s is missing in %s", say(key), s.name), remedy, key)
	return false
}

// missing reports that none of the keys is there, at the section's place.
func (s *section) missing(what, remedy string, keys ...string) {
	s.absent = append(s.absent, absent{s, keys, fault.Fault{Place: s.at, What: what, Remedy: remedy}})
}

// tellAbsent reports what is not there, unless a misspelt key or section may be
// it, or a line that could not be read.
func (r *reader) tellAbsent(root *section) {
	for _, a := range r.absent {
		if !r.broken && !a.misspelt(root) {
			r.faults = append(r.faults, a.fault)
		}
	}
}

// misspelt tells whether a key that no section has stands for an absent one, or
// a section for the one that would hold it.
func (a absent) misspelt(root *section) bool {
	if a.section.table == nil && root.table != nil {
		name := strings.Trim(a.section.name, "[]")
		return slices.ContainsFunc(root.table.nodes, func(n *node) bool {
			return !slices.Contains(root.known, n.name) && suggest.Nearest(n.name, root.known) == name
		})
	}
	return a.section.table != nil && slices.ContainsFunc(a.section.table.nodes, func(n *node) bool {
		return !slices.Contains(a.section.known, n.name) && slices.Contains(a.keys, suggest.Nearest(n.name, a.section.known))
	})
}

// wrong reports a value, quoting it.
func (s *section) wrong(n *node, what, remedy string) {
	s.faults.Add(s.place(n.at), what, given(n), remedy)
}

// given is what a message quotes of a value.
func given(n *node) string {
	if n.kind == kindList || n.kind == kindTable {
		return ""
	}
	return shorten(n.text)
}

// say turns a key into words: "string_spread_at_nut" is "string spread at the nut".
func say(key string) string { return strings.ReplaceAll(key, "_", " ") }

// sub gives the section of a table within this one.
func (s *section) sub(key string) *section {
	name := "[" + key + "]"
	if n := s.wantOr(key, kindTable, func() string { return "begin it once, with " + name + " on a line of its own" }); n != nil {
		return s.open(name, s.place(n.at), n.table)
	}
	s.broken = s.broken || s.has(key)
	return s.open(name, s.at, nil)
}

// subs gives one section for each [[key]].
func (s *section) subs(key string) []*section {
	beginEach := func() string { return fmt.Sprintf("begin each with [[%s]]", key) }
	n := s.wantOr(key, kindList, beginEach)
	if n == nil {
		return nil
	}
	var out []*section
	for _, item := range n.items {
		if item.kind != kindTable {
			s.wrong(item, fmt.Sprintf("an entry of %s must be a table, not %s", say(key), kindWords[item.kind]), beginEach())
			continue
		}
		out = append(out, s.open("[["+key+"]]", s.place(item.at), item.table))
	}
	return out
}

// finish reports every key that no section asked for.
func (r *reader) finish() {
	r.tellAbsent(r.sections[0])
	for _, s := range r.sections {
		if s.table == nil {
			continue
		}
		for _, n := range s.table.nodes {
			if !slices.Contains(s.known, n.name) && len(r.faults) < mostFaults {
				r.unknown(s, n)
			}
		}
	}
}

// unknown reports a key that its section does not have, with the key that was
// probably meant, or the section that has it.
func (r *reader) unknown(s *section, n *node) {
	key, what := n.name, "no key of "+s.name
	if s.name == topLevel && n.kind == kindTable {
		what = "no section of a build file"
	}
	remedy := "the keys are " + strings.Join(s.known, ", ")
	if best := suggest.Nearest(key, s.known); best != "" {
		remedy = fmt.Sprintf("did you mean %q?", best)
	} else if r.isSection(key) {
		remedy = "it is a section: begin it with [" + key + "] on a line of its own"
	} else if owner := r.owner(key); owner != "" {
		remedy = "it belongs in " + owner
	}
	r.faults.Add(r.place(n.key), what, key, remedy)
}

// isSection tells whether a file may have a section of that name.
func (r *reader) isSection(name string) bool {
	return slices.ContainsFunc(r.sections, func(s *section) bool { return s.name == "["+name+"]" })
}

// owner gives the section that has the key, "" when none does.
func (r *reader) owner(key string) string {
	for _, s := range r.sections {
		if slices.Contains(s.known, key) {
			return s.name
		}
	}
	return ""
}

// topLevel is how messages call the keys above the first section.
const topLevel = "the top of the file, above the first [section]"
