package notext_test

import (
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"

	"scalepair/data/notext"
)

// The first bytes are those that the file formats state: PDF 7.5.2, PNG 5.2,
// JFIF, ZIP 4.3.7, the compound file header, ELF; from memory.
func TestKind(t *testing.T) {
	for _, c := range []struct{ name, raw, want string }{
		{"a table", "gauge,outer_mm\np10,0.254\n", ""},
		{"a build file", "[neck]\nfrets = 22\n", ""},
		{"tables in a list", "[[blanks]]\nlength = \"1 m\"\n", ""},
		{"a list over lines", "a = [\n{ b = 1 } ]", ""},
		{"nothing", "", ""},
		{"a mark alone", "\ufeff", ""},
		{"a PDF", "%PDF-1.7\n", "a PDF"},
		{"a picture", "\x89PNG\r\n\x1a\n", "a picture"},
		{"a photograph", "\xff\xd8\xff\xe0", "a picture"},
		{"a program", "\x7fELF\x02", "a program"},
		{"a sheet", "PK\x03\x04..xl/workbook.xml", "a spreadsheet"},
		{"another sheet", "PK\x03\x04..mimetypeapplication/vnd.oasis.opendocument.spreadsheet", "a spreadsheet"},
		{"a document", "PK\x03\x04..word/document.xml", "a document of a word processor"},
		{"packed", "PK\x03\x04..readings.csv", "a packed file"},
		{"an old sheet", "\xd0\xcf\x11\xe0\xa1\xb1", "a spreadsheet or document of an office program"},
		{"rich text", "{\\rtf1\\ansi", "a document of a word processor"},
		{"a web page", "\n<!DOCTYPE HTML>\n", "a web page"},
		{"a web page with a mark", "\ufeff<html lang=\"en\">", "a web page"},
		{"JSON", "{\n \"neck\": 1}", "JSON"},
		{"a list of JSON", "[\n  {\"gauge\": \"p10\"}]", "JSON"},
		{"XML", "<?xml version=\"1.0\"?>", "XML"},
		{"noughts", "\x00\x00\x00", ""},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, notext.Kind([]byte(c.raw))) })
	}
}

func TestUTF16(t *testing.T) {
	var le strings.Builder
	for _, u := range utf16.Encode([]rune("gauge,outer_mm\r\np10,0.254\r\n")) {
		le.WriteByte(byte(u))
		le.WriteByte(byte(u >> 8))
	}
	for _, c := range []struct {
		name, raw  string
		is, marked bool
	}{
		{"with its mark", "\xff\xfe" + le.String(), true, true},
		{"without", le.String(), true, false},
		{"with an umlaut", "f\x00r\x00\xfc\x00h\x00", true, false},
		{"the other way round", "\xfe\xff\x00g", true, true},
		{"plain text", "gauge", false, false},
		{"noughts", "\x00\x00\x00\x00", false, false},
		{"a program", "\x7fELF\x01\x00\x00\x00\x02\x00\x00\x00", false, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			is, marked := notext.UTF16([]byte(c.raw))
			assert.Equal(t, c.is, is)
			assert.Equal(t, c.marked, marked)
		})
	}
}

func TestDamaged(t *testing.T) {
	at, found := notext.Damaged([]byte("gauge\np10\x00\x00\n"))
	assert.True(t, found)
	assert.Equal(t, 9, at)
	at, found = notext.Damaged([]byte("\x00\x00"))
	assert.True(t, found)
	assert.Zero(t, at)
	for _, raw := range []string{"", "gauge\n", "\x7fELF\x01\x00\x02"} {
		_, found = notext.Damaged([]byte(raw))
		assert.False(t, found, "%q", raw)
	}
}
