package document

import (
	"bytes"
	_ "embed"
	"fmt"
	"html"
	"strings"
	"unicode"
)

//go:embed style.css
var style string

// htmlHead begins a page that needs nothing from outside: its title, the style, and
// what stands at the foot of every printed page.
const htmlHead = `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8"/>
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"/>
<meta name="viewport" content="width=device-width, initial-scale=1"/>
<meta name="color-scheme" content="light dark"/>
<title>%s</title>
<style>
%s@page {
  @bottom-left { content: "scalepair · %s"; font: 9pt system-ui, sans-serif; color: #333; }
  @bottom-right { content: "page " counter(page) " of " counter(pages); font: 9pt system-ui, sans-serif; color: #333; }
}
</style>
</head>
<body>
<a class="skip" href="#main">Skip to the content</a>
<header>
<h1>%s</h1>
`

// fewHeadings is how many a page has without a list of them at its top.
const fewHeadings = 3

// writeHTML writes one page.
func (d *Document) writeHTML(b *bytes.Buffer) {
	title := html.EscapeString(d.Title)
	fmt.Fprintf(b, htmlHead, title, style, cssText(foot(d.Title)), title)
	var headings strings.Builder
	n := 0
	for i, block := range d.Blocks {
		if block.Kind == Heading {
			n++
			fmt.Fprintf(&headings, "<li class=\"level%d\"><a href=\"#part-%d\">%s</a></li>\n", block.Level, i, html.EscapeString(block.Text))
		}
	}
	if n > fewHeadings {
		fmt.Fprintf(b, "<nav aria-label=\"On this page\">\n<ul>\n%s</ul>\n</nav>\n", headings.String())
	}
	b.WriteString("</header>\n<main id=\"main\">\n")
	for i, block := range d.Blocks {
		block.writeHTML(b, i)
	}
	b.WriteString("</main>\n</body>\n</html>\n")
}

// writeHTML writes block number i. A drawing is this program's own, with its texts
// escaped.
func (block Block) writeHTML(b *bytes.Buffer, i int) {
	text := html.EscapeString(block.Text)
	items := func() {
		b.WriteString("<ul>\n")
		for _, item := range block.Items {
			fmt.Fprintf(b, "<li>%s</li>\n", html.EscapeString(item))
		}
		b.WriteString("</ul>\n")
	}
	switch block.Kind {
	case Heading:
		fmt.Fprintf(b, "<h%d id=\"part-%d\">%s</h%d>\n", block.Level, i, text, block.Level)
	case Paragraph:
		fmt.Fprintf(b, "<p>%s</p>\n", text)
	case List:
		items()
	case Cautions:
		b.WriteString("<div class=\"cautions\" role=\"note\" aria-label=\"Cautions\">\n")
		items()
		b.WriteString("</div>\n")
	case Figure:
		fmt.Fprintf(b, "<figure class=\"across\" role=\"group\" tabindex=\"0\" aria-label=\"%s\">\n%s</figure>\n", text, block.SVG)
	case Tables:
		b.WriteString("<div class=\"tables\">\n")
		for _, t := range block.Tables {
			fmt.Fprintf(b, "<div>\n%s\n</div>\n", t.HTML())
		}
		b.WriteString("</div>\n")
	case Break:
		b.WriteString("<div class=\"break\"></div>\n")
	}
}

// foot is the title as far as it fits beside the page's number.
func foot(title string) string {
	const most = 70
	if letters := []rune(title); len(letters) > most {
		return string(letters[:most-1]) + "…"
	}
	return title
}

// cssText writes a text between the quotation marks of a style: what could end it, or
// the style, as its number.
func cssText(text string) string {
	var b strings.Builder
	for _, r := range text {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || strings.ContainsRune(" ,.()#-", r) {
			b.WriteRune(r)
		} else {
			fmt.Fprintf(&b, `\%x `, r)
		}
	}
	return b.String()
}
