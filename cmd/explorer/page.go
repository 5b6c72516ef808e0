package main

import (
	"bytes"
	"compress/gzip"
	"context"
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"text/template"

	"github.com/evanw/esbuild/pkg/api"
)

// parts are what every page is made of, whatever it opens with.
type parts struct {
	html                                    *template.Template
	script, style, worker, engine, licences string
}

// makeParts compiles and bundles, the same bytes from the same source.
func makeParts(ctx context.Context) (*parts, error) {
	folder, err := goTool(ctx, nil, "list", "-f", "{{.Dir}}", "scalepair/cmd/explorer")
	if err != nil {
		return nil, err
	}
	page := filepath.Join(folder, "page")
	p := &parts{}
	for _, step := range []struct {
		into *string
		make func() (string, error)
	}{
		{&p.script, func() (string, error) { return bundle(filepath.Join(page, "main.js")) }},
		{&p.style, func() (string, error) { return bundle(filepath.Join(page, "style.css")) }},
		{&p.worker, func() (string, error) { return workerScript(ctx, filepath.Join(page, "worker.js")) }},
		{&p.engine, func() (string, error) { return packedEngine(ctx) }},
		{&p.licences, func() (string, error) { return licences(ctx) }},
	} {
		if *step.into, err = step.make(); err != nil {
			return nil, err
		}
	}
	p.html, err = template.ParseFiles(filepath.Join(page, "index.html"))
	return p, err
}

// page makes one file of the parts and a first state.
func (p *parts) page(state first) ([]byte, error) {
	begin, err := json.Marshal(state) // which writes < as an escape, so that no text ends the element
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	err = p.html.Execute(&out, map[string]string{
		"Head": "<meta charset=\"utf-8\">\n" +
			"<meta http-equiv=\"Content-Security-Policy\" content=\"" + policy(p.script, p.style) + "\">\n" +
			"<style>" + p.style + "</style>",
		"Foot": element("application/json", "first", string(begin)) +
			element("text/plain", "licences", p.licences) +
			element("text/plain", "worker", p.worker) +
			element("text/plain", "engine", p.engine) +
			"<script>" + p.script + "</script>",
	})
	return out.Bytes(), err
}

// element holds a text that the script reads and nothing runs.
func element(kind, id, text string) string {
	return fmt.Sprintf("<script type=%q id=%q>%s</script>\n", kind, id, strings.ReplaceAll(text, "</script", `<\/script`))
}

// policy allows the page's own script and style, by their hashes, workers and
// pictures that it makes itself, and nothing from anywhere else.
func policy(script, style string) string {
	hash := func(text string) string {
		sum := sha256.Sum256([]byte(text))
		return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
	}
	return strings.Join([]string{
		"default-src 'none'", "script-src " + hash(script) + " 'wasm-unsafe-eval'", "style-src " + hash(style),
		"img-src data: blob:", "worker-src blob:", "base-uri 'none'", "form-action 'none'",
	}, "; ")
}

// bundle makes one script or style of a file and what it imports.
func bundle(path string) (string, error) {
	return built(api.Build(api.BuildOptions{
		EntryPoints: []string{path}, Bundle: true, Write: false, Outdir: "out", LogLevel: api.LogLevelSilent,
		Format: api.FormatIIFE, Target: api.ES2022, Charset: api.CharsetUTF8, LegalComments: api.LegalCommentsNone,
		MinifyWhitespace: true, MinifyIdentifiers: true, MinifySyntax: true,
	}))
}

// built gives the one file of a build, or what is wrong with its source.
func built(r api.BuildResult) (string, error) {
	if len(r.Errors) > 0 {
		return "", errors.New(strings.Join(api.FormatMessages(r.Errors, api.FormatMessagesOptions{}), "\n"))
	}
	return strings.TrimSpace(string(r.OutputFiles[0].Contents)), nil
}

// workerScript is the worker's script behind the one with which Go's programs run in
// a browser.
func workerScript(ctx context.Context, path string) (string, error) {
	root, err := goTool(ctx, nil, "env", "GOROOT")
	if err != nil {
		return "", err
	}
	run, err := bundle(filepath.Join(root, "lib", "wasm", "wasm_exec.js"))
	if err != nil {
		return "", err
	}
	own, err := bundle(path)
	return run + "\n" + own, err
}

// packedEngine is the engine compiled for the browser, packed, as text.
func packedEngine(ctx context.Context) (string, error) {
	dir, err := os.MkdirTemp("", "explorer")
	if err != nil {
		return "", err
	}
	defer os.RemoveAll(dir)
	file := filepath.Join(dir, "engine.wasm")
	environment := []string{"GOOS=js", "GOARCH=wasm", "GOFLAGS=", "CGO_ENABLED=0"}
	if _, err := goTool(ctx, environment, "build", "-trimpath", "-buildvcs=false", "-ldflags", "-s -w", "-o", file, "scalepair/cmd/explorer/engine/wasm"); err != nil {
		return "", err
	}
	raw, err := os.ReadFile(file)
	if err != nil {
		return "", err
	}
	var packed bytes.Buffer
	w, err := gzip.NewWriterLevel(&packed, gzip.BestCompression)
	if err == nil {
		_, err = w.Write(raw)
	}
	if err == nil {
		err = w.Close()
	}
	return base64.StdEncoding.EncodeToString(packed.Bytes()), err
}

// goTool runs the go command and gives what it prints.
func goTool(ctx context.Context, environment []string, args ...string) (string, error) {
	c := exec.CommandContext(ctx, "go", args...)
	c.Env = append(os.Environ(), environment...)
	var out, errs bytes.Buffer
	c.Stdout, c.Stderr = &out, &errs
	if err := c.Run(); err != nil {
		return "", fmt.Errorf("go %s: %w\n%s", strings.Join(args, " "), err, errs.String())
	}
	return strings.TrimSpace(out.String()), nil
}
