package document_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
)

type found struct {
	Name string       `json:"name"`
	Pull unit.Force   `json:"tension_n"`
	Rows *table.Table `json:"rows"`
}

func (f found) Document() *document.Document {
	d := &document.Document{Title: "A pair for " + f.Name}
	d.Para("The tension is %s.", table.Units{}.ForceText(f.Pull))
	d.Heading("Strings")
	d.Table(f.Rows)
	d.Cautions("A string can break and whip.")
	d.Figure("The fan", `<svg xmlns="http://www.w3.org/2000/svg"/>`)
	return d
}

func sample(name string) found {
	return found{name, 71.66, table.Of("strings", "", []int{6, 1}, table.Whole("string", "string", func(n int) int { return n }))}
}

func write(t *testing.T, r document.Result, o document.Options) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, document.Write(&b, r, o))
	return b.String()
}

func TestText(t *testing.T) {
	assert.Equal(t, strings.TrimLeft(`
A pair for six
==============

The tension is
71.7 N.

Strings
-------

string
──────
     6
     1

! A string can break
  and whip.
`, "\n"), write(t, sample("six"), document.Options{Width: 20}))
}

// Two tables stand side by side where the width holds both.
func TestTablesSideBySide(t *testing.T) {
	d := &document.Document{}
	d.Table(sample("").Rows, table.Of("more", "More", []int{7}, table.Words("word", "word", func(int) string { return "seven" })))
	text := func(width int) string {
		var b bytes.Buffer
		require.NoError(t, d.Write(&b, document.Options{Width: width}))
		return strings.ReplaceAll(b.String(), "─", "-")
	}
	beside := "          More\nstring    word\n------    -----\n     6    seven\n     1\n"
	assert.Equal(t, beside, text(20))
	assert.Equal(t, beside, text(0))
}

func TestMarkdown(t *testing.T) {
	assert.Equal(t, strings.TrimLeft(`
# A pair for six\_\*

The tension is 71.7 N.

## Strings

| string |
|-------:|
|      6 |
|      1 |

> **Cautions**
>
> - A string can break and whip.
`, "\n"), write(t, sample("six_*"), document.Options{Format: document.Markdown}))
}

func TestJSONIsTheResult(t *testing.T) {
	assert.Equal(t, strings.TrimLeft(`
{
  "name": "<six>\u202e\u007f",
  "tension_n": 71.66,
  "rows": [
    {
      "string": 6
    },
    {
      "string": 1
    }
  ]
}
`, "\n"), write(t, sample("<six>\u202e\u007f"), document.Options{Format: document.JSON}))
}

func TestOnlyNamedTables(t *testing.T) {
	assert.Equal(t, "string\n     6\n     1\n", strings.ReplaceAll(write(t, sample("six"), document.Options{Only: []string{"strings"}}), "──────\n", ""))
	assert.Equal(t, "string\n6\n1\n", write(t, sample("six"), document.Options{Only: []string{"strings"}, Format: document.CSV}))
	err := document.Write(&bytes.Buffer{}, sample("six"), document.Options{Only: []string{"string"}})
	assert.EqualError(t, err, `--only: no table of that name here ("string"); the tables are strings`)
}

func TestCSVNeedsATable(t *testing.T) {
	err := (&document.Document{Title: "none"}).Write(&bytes.Buffer{}, document.Options{Format: document.CSV})
	assert.ErrorContains(t, err, "there is no table to write")
}

func TestForeignTextSteersNothing(t *testing.T) {
	hostile := "\x1b[31m<b>red\u202e\n=1"
	for _, f := range []document.Format{document.Text, document.Markdown, document.HTML} {
		got := write(t, sample(hostile), document.Options{Format: f})
		assert.NotContains(t, got, "\x1b")
		assert.NotContains(t, got, "\u202e")
	}
	assert.NotContains(t, write(t, sample(hostile), document.Options{Format: document.HTML}), "<b>")
	assert.NotContains(t, strings.ReplaceAll(write(t, sample(hostile), document.Options{Format: document.Markdown}), `\<b>`, ""), "<b>")
}

func TestASCII(t *testing.T) {
	assert.Equal(t, "72.6 +/- 0.4, 25 1/2 in, 3 deg, ?", document.ToASCII("72.6 ± 0.4, 25½ in, 3°, é"))
}

func TestPageHoldsEverything(t *testing.T) {
	page := write(t, sample("six"), document.Options{Format: document.HTML})
	for _, want := range []string{"<h1>A pair for six</h1>", `<h2 id="part-1">Strings</h2>`, `aria-label="The fan"`, `<svg xmlns="http://www.w3.org/2000/svg"/>`} {
		assert.Contains(t, page, want)
	}
}
