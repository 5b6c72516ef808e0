package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/document"
)

func TestUTF8Locale(t *testing.T) {
	for name, c := range map[string]struct {
		env  map[string]string
		want bool
	}{
		"utf-8 locale":              {map[string]string{"LANG": "en_GB.UTF-8"}, true},
		"utf8 spelt short":          {map[string]string{"LANG": "de_DE.utf8"}, true},
		"latin locale":              {map[string]string{"LANG": "de_DE.ISO-8859-1"}, false},
		"LC_ALL goes before":        {map[string]string{"LC_ALL": "C", "LC_CTYPE": "en_GB.UTF-8", "LANG": "en_GB.UTF-8"}, false},
		"LC_CTYPE goes before LANG": {map[string]string{"LC_CTYPE": "C.UTF-8", "LANG": "C"}, true},
		"nothing set":               {nil, false},
	} {
		assert.Equal(t, c.want, utf8Locale(func(k string) string { return c.env[k] }), name)
	}
}

func TestAFileIsNoTerminal(t *testing.T) {
	f, err := os.Create(filepath.Join(t.TempDir(), "out"))
	require.NoError(t, err)
	defer f.Close()
	latin := func(k string) string { return map[string]string{"LANG": "C"}[k] }
	assert.Equal(t, document.Options{Width: 80}, console(f, latin), "files and pipes are 80 wide, UTF-8, without colour")
}
