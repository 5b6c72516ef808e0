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
// modules in the engine, and what lies in page/vendor.
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
	folder, err := goTool(ctx, nil, "list", "-f", "{{.Dir}}", "scalepair/cmd/explorer")
	if err != nil {
		return "", err
	}
	parts := []string{"The Go library " + root}
	parts = append(parts, slices.Compact(slices.Sorted(strings.Lines(list+"\n")))...)
	vendor, err := filepath.Glob(filepath.Join(folder, "page", "vendor", "*", "LICEN[SC]E*"))
	if err != nil {
		return "", err
	}
	for _, file := range vendor {
		parts = append(parts, filepath.Base(filepath.Dir(file))+" "+filepath.Dir(file))
	}
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
		text, err := os.ReadFile(files[0])
		if err != nil {
			return "", err
		}
		fmt.Fprintf(&out, "%s\n\n%s\n\n", part[:i], strings.TrimSpace(string(text)))
	}
	return out.String(), nil
}
