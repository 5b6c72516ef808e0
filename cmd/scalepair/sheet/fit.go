package sheet

import (
	"fmt"
	"html/template"
	"slices"
	"strings"
	"unicode/utf8"

	"scalepair/cmd/scalepair/show"
)

const (
	// slim is the number of letters that a table may take on the narrowest
	// screen looked after, 360 px; a wider one becomes a list of cards there.
	slim = 30
	// halfPage is the number of letters that half a page of paper takes; a long
	// table as slim as that is set in two halves side by side.
	halfPage = 34
	// manyRows is from how many rows on.
	manyRows = 10
	// wholeRows is the length up to which a table to tick is not divided
	// between two pages, so that a list of marks stays under one's eyes: a page
	// takes about 35 rows with their heading.
	wholeRows = 30
	// fewRows is the same for every other table.
	fewRows = 9
)

// lettersAcross is the least width of a table, in letters. A column takes its
// longest cell where that is kept on one line, else its longest word.
func lettersAcross(t *show.Table, s Section) int {
	const gap = 2
	sum := -gap
	if s.Tick {
		sum += 3 + gap
	}
	if s.Room != "" {
		sum += longestWord(s.Room) + gap
	}
	for i, c := range t.Columns {
		most := longestWord(c.Head)
		unbroken := unbrokenColumn(t, i)
		for _, row := range t.Rows {
			if unbroken {
				most = max(most, utf8.RuneCountInString(row[i]))
			} else {
				most = max(most, longestWord(row[i]))
			}
		}
		if t.Foot != nil {
			most = max(most, longestWord(t.Foot[i]))
		}
		sum += most + gap
	}
	return sum
}

// halved says that a table is long, slim and without words that wrap, so that
// its halves stand side by side.
func (s Section) halved(t *show.Table) bool {
	if len(t.Rows) < manyRows || s.Room != "" || lettersAcross(t, s) > halfPage {
		return false
	}
	for i := range t.Columns {
		if !unbrokenColumn(t, i) {
			return false
		}
	}
	return true
}

// shortWords is the length up to which cells of words are kept on one line, so
// that a row is not made taller by two short words.
const shortWords = 14

// unbrokenColumn says that the cells of a column are kept on one line: figures,
// and words that are short in every row.
func unbrokenColumn(t *show.Table, i int) bool {
	if t.Columns[i].Align == show.Right {
		return true
	}
	return !slices.ContainsFunc(t.Rows, func(row []string) bool { return utf8.RuneCountInString(row[i]) > shortWords })
}

func longestWord(text string) int {
	most := 0
	for _, w := range strings.Fields(text) {
		most = max(most, utf8.RuneCountInString(w))
	}
	return most
}

// foot is what stands at the foot of every printed page.
func foot(s Sheet) string {
	const most = 70 // letters beside the page's number
	text := s.Title
	if s.Date != "" {
		text += " · " + s.Date
	}
	if letters := []rune(text); len(letters) > most {
		text = string(letters[:most-1]) + "…"
	}
	return text
}

// cssString quotes a text for CSS: every sign but letters, figures and the
// blank goes by its number (CSS Syntax 3, section 4.3.7).
func cssString(text string) template.CSS {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range text {
		switch {
		case r == ' ', r >= '0' && r <= '9', r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z':
			b.WriteRune(r)
		default:
			fmt.Fprintf(&b, `\%06x `, r) // the blank ends the number
		}
	}
	b.WriteByte('"')
	return template.CSS(b.String())
}
