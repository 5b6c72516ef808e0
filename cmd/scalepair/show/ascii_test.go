package show_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"scalepair/cmd/scalepair/show"
)

func TestToASCII(t *testing.T) {
	for in, want := range map[string]string{
		"72.6 ± 0.4 N":        "72.6 +/- 0.4 N",
		"25½ in":              "25 1/2 in",
		"½ in":                "1/2 in",
		"¼ ¾ ⅛":               "1/4 3/4 1/8",
		"6.9°":                "6.9 deg",
		"no dash – none — −1": "no dash - none - -1",
		"nut → saddle":        "nut -> saddle",
		"“so” ‘it’ is…":       `"so" 'it' is...`,
		"F♯3 G♭3":             "F#3 Gb3",
		"Ø 0.3 × 2":           "O 0.3 x 2",
		"µ²":                  "u^2",
		"Ébène, Nuß, Łódź":    "Ebene, Nuss, Lodz",
		"e\u0301":             "e",
		"ｗ６０":                 "w60",
		"弦":                   "?",
		"≥ 2.1":               ">= 2.1",
		"plain\n":             "plain\n",
		"━┓":                  "-+",
	} {
		t.Run(in, func(t *testing.T) { assert.Equal(t, want, show.ToASCII(in)) })
	}
}
