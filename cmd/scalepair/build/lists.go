package build

import (
	"fmt"
	"slices"
	"strings"

	"scalepair/data/unit"
)

// entries gives the key's list, or the key's single value as a list of one;
// nil when the file does not have the key or the list is empty, which is
// reported.
func (s *section) entries(key string) []*node {
	n := s.find(key)
	switch {
	case n == nil:
		return nil
	case n.kind != kindList:
		return []*node{n}
	case len(n.items) == 0:
		s.wrong(n, say(key)+" is an empty list", "fill it, or leave the line out")
		return nil
	}
	return n.items
}

// texts reads a list of texts, none of them empty.
func (s *section) texts(key string) []string {
	n := s.want(key, kindList, `write a list: ["w46", "w36", "p16"]`)
	if n == nil {
		return nil
	}
	if numbers(n.items) {
		s.wrong(n.items[0], say(key)+" lists numbers", s.labelsRemedy(key))
		return nil
	}
	var out []string
	for _, item := range s.entries(key) {
		if item.kind != kindText || strings.TrimSpace(item.text) == "" {
			s.wrong(item, "an entry of "+say(key)+" must be text", s.labelsRemedy(key))
			continue
		}
		out = append(out, strings.TrimSpace(item.text))
	}
	if len(out) < len(n.items) {
		return nil
	}
	return out
}

// numbers tells whether a list holds nothing but numbers.
func numbers(items []*node) bool {
	return len(items) > 0 && !slices.ContainsFunc(items, func(n *node) bool { return n.kind != kindNumber })
}

// labelsRemedy says what an entry of a list of texts is.
func (s *section) labelsRemedy(key string) string {
	if key == "gauges" || key == "stock" {
		return "write each gauge's label in quotes, as the readings have it"
	}
	return "write it in quotes"
}

// perString reads one text for each string, low string first, and gives them
// from string 1. A wrong number is reported unless strings is 0, which means
// that their number is not known.
func (s *section) perString(key string, strings int) []string {
	out := s.texts(key)
	if out == nil || !s.countFits(key, len(out), strings) {
		return nil
	}
	slices.Reverse(out)
	return out
}

// countFits reports a list whose length is not the number of strings.
func (s *section) countFits(key string, have, strings int) bool {
	if strings == 0 || have == strings {
		return true
	}
	s.wrong(s.find(key), fmt.Sprintf("%s lists %d, the tuning has %d strings", say(key), have, strings),
		"give one for each string, low string first")
	return false
}

// spread reads one quantity for all strings, or a list of one for each, low
// string first, and gives them from string 1; nil when the file does not have
// the key or it is wrong.
func spread[T unit.Quantity](s *section, key string, strings int, lo, hi T, parse func(string) (T, error)) []T {
	items := s.entries(key)
	var out []T
	for _, item := range items {
		if x, ok := quantityOf(s, item, key, lo, hi, parse); ok {
			out = append(out, x)
		}
	}
	if len(out) == 0 || len(out) < len(items) {
		return nil
	}
	if s.find(key).kind != kindList {
		return slices.Repeat(out, max(strings, 1))
	}
	if !s.countFits(key, len(out), strings) {
		return nil
	}
	slices.Reverse(out)
	return out
}

func (s *section) lengthsPerString(key string, strings int, lo, hi unit.Length) []unit.Length {
	return spread(s, key, strings, lo, hi, unit.ParseLength)
}

const wholesRemedy = "write a list of whole numbers: [5, 12]"

// wholes reads a list of unlike whole numbers from lo to hi, which may be
// empty; nil when the file does not have the key or it is wrong.
func (s *section) wholes(key string, lo, hi int) []int {
	n := s.want(key, kindList, wholesRemedy)
	if n == nil {
		return nil
	}
	out := []int{}
	for _, item := range n.items {
		i, ok := s.wholeOf(item, key, lo, hi)
		if ok && slices.Contains(out, i) {
			s.wrong(item, say(key)+" names this twice", "keep one of them")
			ok = false
		}
		if ok {
			out = append(out, i)
		}
	}
	if len(out) < len(n.items) {
		return nil
	}
	return out
}

func (s *section) wholeOf(item *node, key string, lo, hi int) (int, bool) {
	if item.kind != kindNumber {
		s.wrong(item, fmt.Sprintf("an entry of %s must be a whole number, not %s", say(key), kindWords[item.kind]), wholesRemedy)
		return 0, false
	}
	x, ok := s.inRange(item, key, float64(lo), float64(hi))
	if ok && x != float64(int(x)) {
		s.wrong(item, "an entry of "+say(key)+" must be a whole number", wholesRemedy)
		return 0, false
	}
	return int(x), ok
}
