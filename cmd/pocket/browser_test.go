package main

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"coldseam/cmd/pocket/page"
	"coldseam/profile/expect"
)

const longest = 60 * time.Second // of any wait in a browser, when others keep the machine busy

// pocket is the folder of the page, and its address.
func pocket(t testing.TB) string {
	t.Helper()
	html, err := page.File()
	if err != nil {
		expect.Missing(t, "%v", err)
	}
	file := filepath.Join(t.TempDir(), "coldseam.html")
	if err := os.WriteFile(file, html, 0o600); err != nil {
		t.Fatal(err)
	}
	return "file://" + file
}

// browser starts a browser of its own with the profile in a folder, so that what is saved
// there outlives it. It reaches no network.
func browser(t testing.TB, profile string, more ...chromedp.ExecAllocatorOption) (ctx context.Context, stop func()) {
	t.Helper()
	if testing.Short() {
		t.Skip("no browser in a short run")
	}
	path := ""
	for _, name := range []string{"chromium", "chromium-browser"} {
		if p, err := exec.LookPath(name); err == nil {
			path = p
			break
		}
	}
	if path == "" {
		expect.Missing(t, "there is no chromium here (Debian: chromium)")
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.UserDataDir(profile),
		chromedp.Flag("host-resolver-rules", "MAP * ~NOTFOUND"),
		chromedp.ProxyServer("127.0.0.1:9"), // nobody answers there
		chromedp.Flag("proxy-bypass-list", "<-loopback>"),
	)
	if os.Geteuid() == 0 {
		options = append(options, chromedp.NoSandbox)
	}
	ctx, stopAll := context.WithTimeout(context.Background(), 6*time.Minute)
	ctx, stopProcess := chromedp.NewExecAllocator(ctx, append(options, more...)...)
	ctx, stopTab := chromedp.NewContext(ctx)
	stop = sync.OnceFunc(func() { stopTab(); stopProcess(); stopAll() })
	t.Cleanup(stop)
	if err := chromedp.Do(ctx); err != nil {
		expect.Missing(t, "chromium does not start: %v", err)
	}
	return ctx, stop
}

// tab is the page open in a tab, and what went wrong on it.
type tab struct {
	t   testing.TB
	ctx context.Context

	mu       sync.Mutex
	requests []string // whatever was asked for
	faults   []string // on the console, or thrown
}

// screen is what the page is looked at on.
type screen struct {
	name          string
	width, height int64
	finger        bool // or a mouse
}

var (
	phone = screen{"phone", 390, 844, true}
	small = screen{"small phone", 360, 640, true}
	desk  = screen{"desk", 1280, 800, false}
)

// open opens the page in a new tab.
func open(t testing.TB, parent context.Context, address string, s screen) *tab {
	t.Helper()
	ctx, stop := chromedp.NewContext(parent)
	t.Cleanup(stop)
	ctx, stop = context.WithTimeout(ctx, 4*time.Minute)
	t.Cleanup(stop)
	v := &tab{t: t, ctx: ctx}
	if err := chromedp.Listen(ctx, v.hear); err != nil {
		t.Fatal(err)
	}
	size := chromedp.EmulateViewport(s.width, s.height)
	if s.finger {
		size = chromedp.EmulateViewport(s.width, s.height, chromedp.EmulateMobile, chromedp.EmulateTouch)
	}
	if err := chromedp.Do(ctx, size, chromedp.Navigate(address)); err != nil {
		t.Fatal(err)
	}
	return v
}

func (v *tab) hear(event any) {
	v.mu.Lock()
	defer v.mu.Unlock()
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		v.requests = append(v.requests, e.Request.URL)
	case *runtime.EventExceptionThrown:
		v.faults = append(v.faults, fmt.Sprint("thrown: ", e.ExceptionDetails.Text, e.ExceptionDetails.Exception))
	case *runtime.EventConsoleAPICalled:
		v.faults = append(v.faults, fmt.Sprint("console: ", e.Type))
	case *log.EventEntryAdded:
		v.faults = append(v.faults, fmt.Sprintf("log: %s %s", e.Entry.Level, e.Entry.Text))
	}
}

// quiet reports what went wrong, and whatever was asked for from elsewhere.
func (v *tab) quiet() {
	v.t.Helper()
	v.mu.Lock()
	defer v.mu.Unlock()
	if len(v.requests) == 0 {
		v.t.Error("not even the page itself was heard")
	}
	for _, r := range v.requests {
		if !strings.HasPrefix(r, "file:///") && !strings.HasPrefix(r, "data:") && !strings.HasPrefix(r, "blob:") {
			v.t.Errorf("asked for %s", r)
		}
	}
	for _, f := range v.faults {
		v.t.Error(f)
	}
}

// value computes an expression on the page.
func value[T any](v *tab, expression string) T {
	v.t.Helper()
	out, err := chromedp.Run(v.ctx, chromedp.Evaluate[T](expression))
	if err != nil {
		v.t.Fatalf("%s: %v\nthe screen: %s", expression, err, v.text())
	}
	return out
}

// until waits for an expression to hold.
func (v *tab) until(what, expression string) {
	v.t.Helper()
	if _, err := chromedp.Run(v.ctx, chromedp.Poll[chromedp.Void](expression, chromedp.WithPollingTimeout(longest))); err != nil {
		v.t.Fatalf("%s: %v\nthe screen: %s", what, err, v.text())
	}
}

// text is what is to be read on the screen.
func (v *tab) text() string {
	out, err := chromedp.Run(v.ctx, chromedp.Evaluate[string](`document.querySelector('main').innerText`))
	if err != nil {
		return err.Error()
	}
	return out
}

// shows waits for words on the screen.
func (v *tab) shows(words string) {
	v.t.Helper()
	v.until("waiting for "+words, fmt.Sprintf(`document.querySelector('main').innerText.includes(%q)`, words))
}

// button finds the button, link or summary with these words that can be seen.
const button = `(function (words) {
	var all = [].filter.call(document.querySelectorAll('main button, main summary, main a, main label, nav button'), function (e) {
		return e.innerText.trim().startsWith(words) && e.getClientRects().length && !e.disabled;
	});
	return all[0];
})`

// touch touches the button with these words, with a finger.
func (v *tab) touch(words string) {
	v.t.Helper()
	v.until("waiting for the button "+words, fmt.Sprintf(`!!%s(%q)`, button, words))
	v.touchAt(fmt.Sprintf(`%s(%q)`, button, words))
}

// touchAt touches the middle of an element.
func (v *tab) touchAt(element string) {
	v.t.Helper()
	at := value[[]float64](v, fmt.Sprintf(`(function (e) { e.scrollIntoView({block: 'center'}); var r = e.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })(%s)`, element))
	point := &input.TouchPoint{X: at[0], Y: at[1]}
	down := input.DispatchTouchEventParams{Type: input.DispatchTouchEventTypeTouchStart, TouchPoints: []*input.TouchPoint{point}}
	if _, err := chromedp.Call(v.ctx, input.DispatchTouchEvent, down); err != nil {
		v.t.Fatal(err)
	}
	up := input.DispatchTouchEventParams{Type: input.DispatchTouchEventTypeTouchEnd, TouchPoints: []*input.TouchPoint{}}
	if _, err := chromedp.Call(v.ctx, input.DispatchTouchEvent, up); err != nil {
		v.t.Fatal(err)
	}
}

// types types into what has the focus.
func (v *tab) types(text string) {
	v.t.Helper()
	if _, err := chromedp.Call(v.ctx, input.InsertText, input.InsertTextParams{Text: text}); err != nil {
		v.t.Fatal(err)
	}
}
