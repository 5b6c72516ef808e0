package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// licences are the notices of all that is built into the page: Go's library and
// modules in the engine, with the face that PDFs embed.
func licences(ctx context.Context) (string, error) {
	root, err := goTool(ctx, nil, "env", "GOROOT")
	if err != nil {
		return "", err
	}
	list, err := goTool(ctx, []string{"GOOS=js", "GOARCH=wasm"}, "list", "-deps",
		"-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Dir}}{{end}}{{end}}", "scalepair/cmd/explorer/engine/wasm")
	if err != nil {
		return "", err
	}
	parts := []string{"The Go library " + root}
	parts = append(parts, slices.Compact(slices.Sorted(strings.Lines(list+"\n")))...)
	var out strings.Builder
	for _, part := range parts {
		part = strings.TrimSpace(part)
		i := strings.LastIndexByte(part, ' ')
		if i < 0 {
			continue // a package of the library or of our own
		}
		files, _ := filepath.Glob(filepath.Join(part[i+1:], "LICEN[SC]E*"))
		if len(files) == 0 {
			return "", fmt.Errorf("no licence in %s", part[i+1:])
		}
		face, _ := filepath.Glob(filepath.Join(part[i+1:], "font", "gofont", "ttfs", "README"))
		for _, file := range append(files, face...) {
			text, err := os.ReadFile(file)
			if err != nil {
				return "", err
			}
			fmt.Fprintf(&out, "%s\n\n%s\n\n", part[:i], strings.TrimSpace(string(text)))
		}
	}
	return out.String(), nil
}
