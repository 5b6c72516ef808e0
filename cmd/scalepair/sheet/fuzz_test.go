package sheet_test

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/sheet"
	"scalepair/cmd/scalepair/show"
	"scalepair/fan/draw"
)

// Whatever the words, the page is well-formed, loads nothing and runs nothing:
// it has the elements of the same page with harmless words, and no others.
func FuzzWrite(f *testing.F) {
	for _, s := range []string{
		"Baritone in B, feel of a 635 mm guitar (invented)", `Eight strings in F#, 27"-29" (invented)`, "", "<script>alert(1)</script>", "</style><img src=x>",
		`" onload="x`, "'\"&<>", "a\nb\x00\x1b", "\xff\ufffe", "*/ } body { color: red } /*", `\22 ; } @import "x"; `, "]]> <!-- -->", "{{.}}", "漢字 🎸",
	} {
		f.Add(s, s)
		f.Add("w54", s)
	}
	want := shapeOf(f, written(f, worded("a", "b")))
	f.Fuzz(func(t *testing.T, a, b string) {
		// An empty text leaves its element out.
		page := written(t, worded("x"+a, "y"+b))
		got := shapeOf(t, page)
		require.Equal(t, want, got, page)
	})
}

// worded is a sheet with the words wherever a user's words can come.
func worded(a, b string) sheet.Sheet {
	r := &show.Report{}
	r.Heading("%s", a)
	r.Text(b)
	r.Bullets(a, b)
	r.Cautions(b)
	tab := r.Table("t", a, show.Words(a), show.Figures(b))
	tab.Row(a, b)
	tab.Total(b, a)
	tab.Note("%s", a)
	s := sheet.Sheet{Title: a, Lead: b, Date: a, Facts: []sheet.Fact{{Name: a, Value: b}}, Sections: sheet.Split(r)}
	s.Sections[0].Part, s.Sections[0].Tick, s.Sections[0].Room = b, true, a
	d := ladder()
	d.Title = a
	d.Layers = append(d.Layers, draw.Layer{Name: draw.LayerTitle, Elements: []draw.Element{draw.Text{At: draw.Point{X: 10}, Height: 3, Room: 30, Body: b}}})
	drawing, err := sheet.NewDrawing(d, b)
	if err != nil {
		panic(err)
	}
	s.Sections[0].Drawing = drawing
	return s
}

// shapeOf reads the page as XML and gives its elements with the names of their
// attributes, words and words' places left out.
func shapeOf(t testing.TB, page string) []string {
	require.NotContains(t, page, "ZgotmplZ")
	d := xml.NewDecoder(strings.NewReader(page))
	d.Entity = xml.HTMLEntity
	var out []string
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		require.NoError(t, err)
		e, ok := token.(xml.StartElement)
		if !ok || e.Name.Local == "text" { // words show where they are whole
			continue
		}
		name := e.Name.Local
		for _, a := range e.Attr {
			if a.Name.Local != "class" { // columns that may wrap have another
				name += " " + a.Name.Local
			}
		}
		out = append(out, name)
	}
}
