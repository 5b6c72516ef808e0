package pdf_test

import (
	"bytes"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/fan/draw"
	"scalepair/fan/draw/internal/trial"
	"scalepair/fan/draw/pdf"
)

// Any drawing is refused, with nothing written, or becomes a file whose tables
// point at its objects and whose pages hold numbers and operators only, the line
// where it was put, to the last printed digit.
func FuzzWrite(f *testing.F) {
	for _, s := range trial.AnyShapes() {
		f.Add(s.X1, s.Y1, s.X2, s.Y2, s.SizeMM, s.AngleRad, 420.0, s.Body, s.Body)
	}
	f.Add(0.0, 0.0, 1.0, 1.0, 1.0, 0.0, 100.0, "", "敮摯扪ਅ 敮摯扪ਊ") // whose UTF-16 holds the word that ends an object
	f.Fuzz(func(t *testing.T, x1, y1, x2, y2, size, angle, height float64, body, title string) {
		d := trial.AnyDrawing(trial.Shapes{X1: x1, Y1: y1, X2: x2, Y2: y2, SizeMM: size, AngleRad: angle, Body: body})
		s := draw.Sheet{Name: body, WidthMM: 297, HeightMM: height, Parts: []draw.Part{
			{Drawing: d, Window: []draw.Point{{X: x1, Y: y2}, {X: x2, Y: y2}, {X: x2, Y: y1}}}, {Drawing: d},
		}}
		var b bytes.Buffer
		if err := pdf.Write(&b, title, []draw.Sheet{s, s}); err != nil {
			require.Empty(t, b.Bytes())
			require.True(t, s.Sound() != nil || height > 5080, err)
			return
		}
		file := b.String()
		requireTables(t, file)
		pages := streams(t, file)
		require.Len(t, pages, 2)
		for _, page := range pages {
			requireContent(t, page, x1, y1, x2, y2)
		}
	})
}

var (
	startxref = regexp.MustCompile(`startxref\n(\d+)\n%%EOF\n$`)
	previous  = regexp.MustCompile(`\n/Prev (\d+)\n`)
	section   = regexp.MustCompile(`^(\d+) (\d+)\n`)
	entry     = regexp.MustCompile(`^(\d{10}) (\d{5}) ([nf]) ?\r?\n`)
)

// requireTables follows the cross-reference tables from the end of the file and
// looks for every object where they say it stands.
func requireTables(t *testing.T, file string) {
	require.True(t, strings.HasPrefix(file, "%PDF-1."))
	m := startxref.FindStringSubmatch(file)
	require.NotNil(t, m, "the end of the file")
	for n := 0; m != nil; n++ {
		require.Less(t, n, 2, "one update")
		at, err := strconv.Atoi(m[1])
		require.NoError(t, err)
		require.Less(t, at, len(file))
		rest, ok := strings.CutPrefix(file[at:], "xref\n")
		require.True(t, ok, "a table at %d", at)
		for head := section.FindStringSubmatch(rest); head != nil; head = section.FindStringSubmatch(rest) {
			rest = requireObjects(t, file, rest[len(head[0]):], head[1], head[2])
		}
		require.True(t, strings.HasPrefix(rest, "trailer\n<<\n"), "%.40q", rest)
		trailer, _, ok := strings.Cut(rest, ">>")
		require.True(t, ok)
		m = previous.FindStringSubmatch(trailer)
	}
}

// requireObjects looks up one section's objects and gives what follows it.
func requireObjects(t *testing.T, file, rest, first, count string) string {
	n, err := strconv.Atoi(first)
	require.NoError(t, err)
	total, err := strconv.Atoi(count)
	require.NoError(t, err)
	for range total {
		e := entry.FindStringSubmatch(rest)
		require.NotNil(t, e, "%.40q", rest)
		if e[3] == "n" {
			at, err := strconv.Atoi(e[1])
			require.NoError(t, err)
			require.Less(t, at, len(file))
			require.True(t, strings.HasPrefix(file[at:], fmt.Sprintf("%d 0 obj\n", n)), "object %d at %d", n, at)
			body, _, ok := strings.Cut(literalString.ReplaceAllString(file[at:], "()"), "\nendobj\n")
			require.True(t, ok)
			require.True(t, strings.HasSuffix(body, ">>") || strings.HasSuffix(body, "endstream"), body)
			require.Equal(t, strings.Count(body, "<<"), strings.Count(body, ">>"), body)
		}
		rest = rest[len(e[0]):]
		n++
	}
	return rest
}

var stream = regexp.MustCompile(`<<[^<>]*/Length (\d+)>>\nstream\n`)

// streams gives the pages' contents, by their stated lengths.
func streams(t *testing.T, file string) []string {
	var out []string
	for _, m := range stream.FindAllStringSubmatchIndex(file, -1) {
		length, err := strconv.Atoi(file[m[2]:m[3]])
		require.NoError(t, err)
		require.True(t, strings.HasPrefix(file[m[1]+length:], "\nendstream\n"), "a stream of %d", length)
		out = append(out, file[m[1]:m[1]+length])
	}
	return out
}

var (
	literalString = regexp.MustCompile(`(?s)\((?:[^\\()]|\\.)*\)`)
	operator      = regexp.MustCompile(`^([a-zA-Z]{1,3}\*?|/\w+|\[|\]|\(\))$`)
	bars          = strings.NewReplacer("[", " [ ", "]", " ] ")
)

// requireContent reads a page: strings in brackets, operators, and numbers that
// are finite and have no signed zero; the slot's line stands in it twice.
func requireContent(t *testing.T, page string, x1, y1, x2, y2 float64) {
	lines := 0
	for _, row := range strings.Split(literalString.ReplaceAllString(page, "()"), "\n") {
		var numbers []float64
		var words []string
		for _, word := range strings.Fields(bars.Replace(row)) {
			x, err := strconv.ParseFloat(word, 64)
			if err != nil {
				require.Regexp(t, operator, word, row)
				words = append(words, word)
				continue
			}
			require.False(t, math.IsInf(x, 0) || math.IsNaN(x), row)
			require.False(t, x == 0 && strings.HasPrefix(word, "-"), row)
			numbers = append(numbers, x)
		}
		if strings.Join(words, " ") == "m l S" {
			lines++
			for i, mm := range []float64{x1, y1, x2, y2} {
				require.InDelta(t, mm*72/25.4, numbers[i], 0.5e-4+1e-10, row)
			}
		}
	}
	require.Equal(t, 2, lines, page)
}
