package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const sample = `saw cuts slots:
on a slanted line.

.dot first, 'quote first, back\slash

  kept   as it is
  second line

Usage:
  fan saw [build.toml] [flags]

Examples:
  fan saw
  fan saw --depth "2 mm"

Flags:
      --depth length   how deep, ± a little
                       and more of it
  -h, --help           explain this command

Use "fan [command] --help" for more information about a command.
`

func TestParseHelp(t *testing.T) {
	h, err := parseHelp([]string{"fan", "saw"}, sample)
	require.NoError(t, err)
	assert.Equal(t, "saw cuts slots:", h.about[0])
	assert.Equal(t, []string{"fan saw [build.toml] [flags]"}, h.usage)
	assert.Equal(t, []string{"fan saw", `fan saw --depth "2 mm"`}, h.examples)
	assert.Equal(t, []item{
		{"--depth length", "how deep, ± a little and more of it"},
		{"-h, --help", "explain this command"},
	}, h.flags)
	assert.Empty(t, h.commands)
}

func TestParseHelpOfTheProgram(t *testing.T) {
	h, err := parseHelp([]string{"fan"}, "Text.\n\nUsage:\n  fan\n\nAvailable Commands:\n  saw         Cut slots\n  glue\n\nFlags:\n  -h, --help   help\n")
	require.NoError(t, err)
	assert.Equal(t, []item{{"saw", "Cut slots"}, {"glue", ""}}, h.commands)
}

func TestParseHelpRefuses(t *testing.T) {
	for _, text := range []string{
		"", "Text.\n", "Usage:\n  fan\n\nFlags:\n  -h   help\n", "Text.\n\nUsage:\n  fan\n",
		"Text.\n\nUsage:\n  fan\n\nNews:\n  something else\n\nFlags:\n  -h   help\n",
	} {
		_, err := parseHelp([]string{"fan"}, text)
		assert.Error(t, err, text)
	}
}

// A page is ASCII, and no line of the text is taken for a request.
func TestPage(t *testing.T) {
	h, err := parseHelp([]string{"fan", "saw"}, sample)
	require.NoError(t, err)
	h.short = "Cut slots"
	h.parent = &help{path: []string{"fan"}}
	page := h.page("fan 1.0")
	for _, want := range []string{
		".TH FAN-SAW 1 \"\" \"fan 1.0\" \"User commands\"\n",
		".SH NAME\nfan\\-saw \\- Cut slots\n",
		".SH SYNOPSIS\n.B fan saw [build.toml] [flags]\n",
		".SH DESCRIPTION\n.PP\nsaw cuts slots:\non a slanted line.\n.PP\n\\&.dot first, \\(aqquote first, back\\eslash\n.PP\n.RS 4\n.nf\nkept   as it is\nsecond line\n.fi\n.RE\n",
		".TP\n.B \\-\\-depth length\nhow deep, \\[u00B1] a little and more of it\n",
		"fan saw \\-\\-depth \\(dq2 mm\\(dq\n",
		".SH SEE ALSO\n.BR fan (1)\n",
	} {
		assert.Contains(t, page, want)
	}
	for _, line := range strings.Split(page, "\n") {
		if strings.HasPrefix(line, ".") {
			assert.Regexp(t, `^\.(TH|SH|PP|TP|B|BR|RS|RE|nf|fi|br)\b`, line)
		}
		for _, r := range line {
			assert.Less(t, r, rune(127))
		}
	}
}

func TestShortOfTheProgramIsItsFirstSentence(t *testing.T) {
	h := &help{path: []string{"fan"}, about: []string{"fan sets out frets", "and slots: all of them."}}
	assert.Equal(t, "sets out frets and slots", h.inShort())
}
