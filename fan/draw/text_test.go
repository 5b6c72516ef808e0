package draw_test

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"codeberg.org/go-pdf/fpdf"
	"github.com/stretchr/testify/assert"
	"golang.org/x/image/font/gofont/goregular"

	"scalepair/fan/draw"
)

func TestOneLine(t *testing.T) {
	tests := []struct{ name, in, want string }{
		{"plain", "Trial 1", "Trial 1"},
		{"newline", "two\nlines", "two lines"},
		{"returns and tabs", "a\r\n\tb", "a b"},
		{"outer blanks", "  a  ", "a"},
		{"control", "a\x00b\x1bc", "abc"},
		{"turned writing", "a\u202Eb", "ab"},
		{"broken UTF-8", "a\xffb", "a\uFFFDb"},
		{"noncharacter", "a\uFFFFb", "a\uFFFDb"},
		{"private use", "a\uE000b", "a\uFFFDb"},
		{"signs", `<é & "½">`, `<é & "½">`},
		{"nothing", "\n", ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) { assert.Equal(t, tt.want, draw.OneLine(tt.in)) })
	}
}

func TestLongTextIsCutToItsRoom(t *testing.T) {
	words := draw.Text{Height: 3, Room: 60, Body: strings.Repeat("wide words ", 28)}
	shown := words.Shown()
	assert.True(t, strings.HasSuffix(shown, "…"), shown)
	assert.LessOrEqual(t, words.Width(), 60.0)
	assert.Greater(t, words.Width(), 52.0, "not cut shorter than need be")
	words.Room = 0
	assert.Equal(t, strings.TrimSpace(words.Body), words.Shown())
	// Eleven figures of 0.556 at a size of 5 mm are 30.58 mm long.
	exact := draw.Text{Height: 5 * draw.CapShare, Room: 30.58 + 1e-9, Body: "12345678901"}
	assert.Equal(t, "12345678901", exact.Shown())
	exact.Room = 30.57
	assert.Equal(t, "123456789…", exact.Shown())
	tiny := draw.Text{Height: 3, Room: 0.5, Body: "abc"}
	assert.Equal(t, "…", tiny.Shown())
}

func TestWrap(t *testing.T) {
	assert.Equal(t, []string{"one two", "three"}, draw.Wrap("one two\nthree", 3, 100, 4))
	assert.Equal(t, []string{"one two", "three"}, draw.Wrap("one two three", 3, 20, 4))
	assert.Equal(t, []string{"one two", "three four…"}, draw.Wrap("one two\nthree four\nmore", 3, 25, 2)[:2])
	assert.Empty(t, draw.Wrap("\n", 3, 100, 4))
}

// The widths are those of the face in the PDF library, and so of the PDF.
func TestWidthsAreThePDFFacesOwn(t *testing.T) {
	doc := fpdf.New("P", "mm", "A4", "")
	const capsMM = 3
	doc.AddUTF8FontFromBytes("Go", "", goregular.TTF)
	doc.SetFont("Go", "", 10)
	for r := ' '; r <= '~'; r++ {
		words := draw.Text{Height: capsMM, Body: "|" + string(r) + "|"}
		want := doc.GetStringWidth("|"+string(r)+"|") / (10 * 25.4 / 72) * capsMM / draw.CapShare
		assert.InDelta(t, want, words.Width(), 1e-9, "%q", r)
	}
}

func TestMiddleLowersTheBaseline(t *testing.T) {
	words := draw.Text{At: draw.Point{X: 1, Y: 2}, Height: 4}
	assert.Equal(t, draw.Point{X: 1, Y: 0}, words.Middle().At)
}

func FuzzOneLine(f *testing.F) {
	for _, s := range hostile {
		f.Add(s, 40.0)
	}
	// 28 wide signs and an ellipsis, where the room is a whole number of them.
	f.Add("\xa9\xae\x9b\x9d\xfd\xf0\x9cG\xd2\xc4/n\xa2\x86\xb9\xd5\xc4͔\x134\x80\x9c\x86&P\xc4z\x85\xb2\xb2\xb2\xb6", 117.0)
	f.Fuzz(func(t *testing.T, s string, room float64) {
		words := draw.Text{Height: 3, Room: room, Body: s}
		shown := words.Shown()
		if !utf8.ValidString(shown) {
			t.Fatalf("not UTF-8: %q", shown)
		}
		for _, r := range shown {
			if unicode.IsControl(r) || r == '\n' {
				t.Fatalf("%q in %q", r, shown)
			}
		}
		// Room goes through a division by the size and back: two roundings.
		if room > 10 && words.Width() > room*(1+4e-16) {
			t.Fatalf("%q is longer than %g mm", shown, room)
		}
		if draw.OneLine(shown) != shown {
			t.Fatalf("cleaning %q again changes it", shown)
		}
	})
}

// hostile are texts that have broken writers before.
var hostile = []string{
	"", " ", "plain", "<b>&amp; & \"quoted\" 'single'</b>", "é ½ ø Ø ± °", "two\nlines\r\nthree", strings.Repeat("long words ", 28),
	"Ж ψ 弦 🎸 ♭ ″", "]]>", "(unbalanced \\ ) )", "50%%d %% %", `\U+0041 \P ^J ^`, "\x00\x01\x7f\u0085\u2028", "\xff\xfe", "e\u0301", "a\u202Eb", "%%%%",
	"  0\r\nENTITIES", "endstream endobj", "\u00a0",
}
