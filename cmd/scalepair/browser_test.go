package main

import (
	"bytes"
	"context"
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
)

// site serves pages to a browser under test, and notes every request.
type site struct {
	*httptest.Server
	mu    sync.Mutex
	pages map[string][]byte // by path
	asked []string
}

func newSite(t *testing.T, pages map[string][]byte) *site {
	s := &site{pages: pages}
	s.Server = httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		s.mu.Lock()
		s.asked = append(s.asked, r.URL.Path)
		s.mu.Unlock()
		page, ok := s.pages[r.URL.Path]
		if !ok {
			http.NotFound(w, r)
			return
		}
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		_, _ = w.Write(page)
	}))
	t.Cleanup(s.Close)
	return s
}

// strangers are the requests for what the site does not have. A browser asks
// for an icon by itself, whatever the page says.
func (s *site) strangers() []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	var out []string
	for _, path := range s.asked {
		if s.pages[path] == nil && path != "/favicon.ico" {
			out = append(out, path)
		}
	}
	return out
}

// visit is what a browser printed about one page.
type visit struct {
	dom     string
	console []string // messages of the page's console
	outside []string // addresses asked for beyond this machine
}

// browse opens an address in a headless browser that finds no other machine.
func browse(t *testing.T, address string, args ...string) visit {
	t.Helper()
	chromium := testutil.NeedTool(t, "chromium")
	dir := t.TempDir()
	netLog := filepath.Join(dir, "net.json")
	ctx, cancel := context.WithTimeout(context.Background(), 2*time.Minute)
	defer cancel()
	c := exec.CommandContext(ctx, chromium, append(append([]string{
		"--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-component-update",
		"--disable-sync", "--disable-extensions", "--disable-default-apps", "--user-data-dir=" + filepath.Join(dir, "profile"),
		"--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1", "--enable-logging=stderr", "--log-level=0", "--log-net-log=" + netLog,
	}, args...), address)...)
	var out, errs bytes.Buffer
	c.Stdout, c.Stderr = &out, &errs
	require.NoError(t, c.Run(), errs.String())
	v := visit{dom: out.String()}
	for _, line := range strings.Split(errs.String(), "\n") {
		if strings.Contains(line, ":CONSOLE") {
			v.console = append(v.console, line)
		}
	}
	log, err := os.ReadFile(netLog)
	require.NoError(t, err)
	v.outside = outside(t, log)
	return v
}

// outside gives the addresses that pages asked for elsewhere, by the log of
// the network. What the browser asks for its own sake has no page behind it.
func outside(t *testing.T, log []byte) []string {
	var parsed struct {
		Events []struct {
			Params struct{ Initiator, URL string }
		}
	}
	require.NoError(t, json.Unmarshal(log, &parsed))
	require.NotEmpty(t, parsed.Events)
	var out []string
	for _, e := range parsed.Events {
		if strings.HasPrefix(e.Params.Initiator, "http://127.0.0.1") && !strings.HasPrefix(e.Params.URL, "http://127.0.0.1") {
			out = append(out, e.Params.URL)
		}
	}
	return out
}

// printed prints a page to a PDF and gives the text of every sheet of paper,
// in the order of the page.
func printed(t *testing.T, page []byte) (pdf string, sheets []string) {
	t.Helper()
	pdftotext := testutil.NeedTool(t, "pdftotext")
	s := newSite(t, map[string][]byte{"/page.html": page})
	pdf = filepath.Join(t.TempDir(), "page.pdf")
	browse(t, s.URL+"/page.html", "--no-pdf-header-footer", "--print-to-pdf="+pdf)
	text, err := exec.Command(pdftotext, "-raw", pdf, "-").Output()
	require.NoError(t, err)
	return pdf, strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
}
