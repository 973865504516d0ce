package main

import (
	"context"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// browser opens pages and notes what a page must not do: complain on the
// console, ask for anything over a network, or put up a dialog.
type browser struct {
	ctx context.Context
	mu  sync.Mutex
	bad []string
}

// newBrowser starts a headless browser; the test is skipped where none is
// installed.
func newBrowser(t *testing.T) *browser {
	t.Helper()
	path := ""
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome-stable", "google-chrome"} {
		if found, err := exec.LookPath(name); err == nil && path == "" {
			path = found
		}
	}
	if path == "" {
		t.Skip("no Chromium is installed (Debian: apt-get install chromium), so the page is not tried in a browser")
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.DisableGPU, chromedp.NoFirstRun,
		chromedp.Flag("disable-background-networking", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-sync", true), chromedp.UserDataDir(t.TempDir()), chromedp.WindowSize(1400, 1000))
	allocated, stop := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, cancel := chromedp.NewContext(allocated)
	ctx, expire := context.WithTimeout(ctx, 5*time.Minute)
	t.Cleanup(func() { expire(); cancel(); stop() })
	b := &browser{ctx: ctx}
	require.NoError(t, chromedp.Listen(ctx, b.heard))
	_, err := chromedp.Call(ctx, network.Enable, network.EnableParams{})
	require.NoError(t, err)
	_, err = chromedp.Call(ctx, log.Enable, cdp.Empty{})
	require.NoError(t, err)
	return b
}

func (b *browser) heard(event any) {
	note := func(format string, args ...any) {
		b.mu.Lock()
		defer b.mu.Unlock()
		b.bad = append(b.bad, fmt.Sprintf(format, args...))
	}
	switch e := event.(type) {
	case *runtime.EventExceptionThrown:
		note("exception: %v", e.ExceptionDetails)
	case *runtime.EventConsoleAPICalled:
		note("console: %s", e.Type)
	case *log.EventEntryAdded:
		note("log: %s %s", e.Entry.Level, e.Entry.Text)
	case *network.EventRequestWillBeSent:
		if u := e.Request.URL; !strings.HasPrefix(u, "file:") && !strings.HasPrefix(u, "data:") && u != "about:blank" {
			note("request: %s", u)
		}
	case *page.EventJavascriptDialogOpening:
		note("dialog: %s", e.Message)
		go func() {
			_, _ = chromedp.Call(b.ctx, page.HandleJavaScriptDialog, page.HandleJavaScriptDialogParams{Accept: true})
		}()
	}
}

// open opens a file at a size of the screen.
func (b *browser) open(t *testing.T, file string, width int64) {
	t.Helper()
	address := url.URL{Scheme: "file", Path: filepath.ToSlash(file)}
	require.NoError(t, chromedp.Do(b.ctx, chromedp.EmulateViewport(width, 900), chromedp.Navigate(address.String())))
}

// eval evaluates an expression in the page.
func eval[T any](t *testing.T, b *browser, expression string) T {
	t.Helper()
	out, err := chromedp.Run(b.ctx, chromedp.Evaluate[T](expression))
	require.NoError(t, err, expression)
	return out
}

// press evaluates an expression for what it does.
func press(t *testing.T, b *browser, expression string) {
	t.Helper()
	eval[bool](t, b, expression+", true")
}

func (b *browser) do(t *testing.T, actions ...chromedp.Action[chromedp.Void]) {
	t.Helper()
	require.NoError(t, chromedp.Do(b.ctx, actions...))
}

func (b *browser) wellBehaved(t *testing.T) {
	t.Helper()
	b.mu.Lock()
	defer b.mu.Unlock()
	require.Empty(t, b.bad)
}

// What the other tests hold against a page is seen when it happens.
func TestBrowserSeesMisbehaviour(t *testing.T) {
	b := newBrowser(t)
	file := filepath.Join(t.TempDir(), "bad.html")
	require.NoError(t, os.WriteFile(file, []byte(`<img src="http://127.0.0.1:9/x"><script>console.error("torn"); alert(1); missing()</script>`), 0o600))
	b.open(t, file, 1400)
	require.Eventually(t, func() bool {
		b.mu.Lock()
		defer b.mu.Unlock()
		all := strings.Join(b.bad, "\n")
		return strings.Contains(all, "request: http://127.0.0.1:9/x") && strings.Contains(all, "console: error") &&
			strings.Contains(all, "dialog: 1") && strings.Contains(all, "exception:")
	}, 2*time.Minute, 50*time.Millisecond)
}

func onScreen(t *testing.T, b *browser, selector string) bool {
	t.Helper()
	return eval[bool](t, b, `(() => { const r = document.querySelector('`+selector+`').getBoundingClientRect();
		return r.bottom > 0 && r.top < innerHeight && r.right > 0 && r.left < innerWidth })()`)
}
