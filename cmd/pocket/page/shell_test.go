package page_test

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"coldseam/cmd/pocket/page"
	"coldseam/profile/expect"
)

const longest = 60 * time.Second // of any wait in a browser, when others keep the machine busy

// read is a file of this folder.
func read(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// shell is the page with a stand-in for the program, which shows a first screen after a time.
func shell(t *testing.T, first string, starts time.Duration) string {
	t.Helper()
	words, err := json.Marshal(first)
	if err != nil {
		t.Fatal(err)
	}
	standIn := strings.NewReplacer("FIRST", string(words), "START", strconv.Itoa(int(starts.Milliseconds()))).Replace(read(t, "testdata/stub.js"))
	return put(t, standIn+read(t, "worker.js"), "AGFzbQEAAAA=") // the smallest module there is
}

// put is the page with a worker and a program.
func put(t *testing.T, worker, program string) string {
	t.Helper()
	html, err := page.Shell(worker, program)
	if err != nil {
		t.Fatal(err)
	}
	return string(html)
}

// looks are the screens of testdata/looks.html.
func looks(t *testing.T) map[string]string {
	out := map[string]string{}
	for _, part := range strings.Split(read(t, "testdata/looks.html"), "\n== ")[1:] {
		name, html, _ := strings.Cut(part, "\n")
		out[name] = html
	}
	if len(out) < 6 {
		t.Fatalf("only %d screens to look at", len(out))
	}
	return out
}

// browser is a browser without a network, for one test.
func browser(t *testing.T) context.Context {
	t.Helper()
	return startBrowser(t,
		chromedp.Flag("host-resolver-rules", "MAP * ~NOTFOUND"),
		chromedp.ProxyServer("127.0.0.1:9"), // nobody answers there
		chromedp.Flag("proxy-bypass-list", "<-loopback>"),
	)
}

// startBrowser is a browser for one test.
func startBrowser(t *testing.T, more ...chromedp.ExecAllocatorOption) context.Context {
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
		chromedp.ExecPath(path),
	)
	options = append(options, more...)
	if os.Geteuid() == 0 {
		options = append(options, chromedp.NoSandbox)
	}
	ctx, stopAll := context.WithTimeout(context.Background(), 6*time.Minute)
	ctx, stopProcess := chromedp.NewExecAllocator(ctx, options...)
	ctx, stopTab := chromedp.NewContext(ctx)
	t.Cleanup(func() { stopTab(); stopProcess(); stopAll() })
	if err := chromedp.Do(ctx); err != nil {
		expect.Missing(t, "chromium does not start: %v", err)
	}
	return ctx
}

// screen is what a page is looked at on.
type screen struct {
	name          string
	width, height int64
	finger        bool // or a mouse
}

var (
	phone = screen{"phone", 390, 844, true}
	small = screen{"small phone", 360, 640, true}
	keys  = screen{"small phone with its keyboard open", 360, 300, true}
	desk  = screen{"desk", 1280, 800, false}
)

// tab is a page open in a tab, and what went wrong on it.
type tab struct {
	*testing.T
	ctx context.Context

	mu       sync.Mutex
	requests map[network.RequestID]string // whatever was asked for, and not stopped by the policy
	faults   []string                     // on the console, or thrown
}

// open opens a page in a new tab.
func open(t *testing.T, parent context.Context, html string, s screen) *tab {
	t.Helper()
	file := filepath.Join(t.TempDir(), "page.html")
	if err := os.WriteFile(file, []byte(html), 0o600); err != nil {
		t.Fatal(err)
	}
	v := newTab(t, parent)
	if err := chromedp.Do(v.ctx, s.size(), chromedp.Navigate("file://"+file)); err != nil {
		t.Fatal(err)
	}
	return v
}

// newTab is an empty tab.
func newTab(t *testing.T, parent context.Context) *tab {
	t.Helper()
	ctx, stop := chromedp.NewContext(parent)
	t.Cleanup(stop)
	v := &tab{T: t, ctx: ctx, requests: map[network.RequestID]string{}}
	if err := chromedp.Listen(ctx, v.hear); err != nil {
		t.Fatal(err)
	}
	return v
}

func (s screen) size() chromedp.Action[chromedp.Void] {
	if s.finger {
		return chromedp.EmulateViewport(s.width, s.height, chromedp.EmulateMobile, chromedp.EmulateTouch)
	}
	return chromedp.EmulateViewport(s.width, s.height)
}

func (v *tab) hear(event any) {
	v.mu.Lock()
	defer v.mu.Unlock()
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		v.requests[e.RequestID] = e.Request.URL
	case *network.EventLoadingFailed:
		if e.BlockedReason == network.BlockedReasonCsp {
			delete(v.requests, e.RequestID)
		}
	case *runtime.EventExceptionThrown:
		v.faults = append(v.faults, fmt.Sprint("thrown: ", e.ExceptionDetails.Text, e.ExceptionDetails.Exception))
	case *runtime.EventConsoleAPICalled:
		v.faults = append(v.faults, fmt.Sprint("console: ", e.Type))
	case *log.EventEntryAdded:
		v.faults = append(v.faults, fmt.Sprintf("log: %s %s", e.Entry.Level, e.Entry.Text))
	}
}

// away are the requests for anything but the page itself.
func (v *tab) away() (out []string) {
	v.mu.Lock()
	defer v.mu.Unlock()
	if len(v.requests) == 0 {
		v.Error("not even the page itself was heard")
	}
	for _, r := range v.requests {
		if !strings.HasPrefix(r, "file:///") && !strings.HasPrefix(r, "blob:") {
			out = append(out, r)
		}
	}
	return out
}

// quiet reports whatever went wrong.
func (v *tab) quiet() {
	v.Helper()
	for _, r := range v.away() {
		v.Errorf("asked for %s", r)
	}
	for _, f := range v.faults {
		v.Error(f)
	}
}

// value computes an expression on the page.
func value[T any](v *tab, expression string) T {
	v.Helper()
	out, err := chromedp.Run(v.ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	if err != nil {
		v.Fatalf("%s: %v", expression, err)
	}
	return out
}

// do runs a script on the page.
func (v *tab) do(script string) {
	v.Helper()
	value[bool](v, "(async () => {"+script+"})().then(() => true)")
}

// is compares what an expression gives, as JSON.
func (v *tab) is(what, expression, want string) {
	v.Helper()
	if got := value[string](v, "JSON.stringify("+expression+") ?? 'undefined'"); got != want {
		v.Errorf("%s: %s, want %s", what, got, want)
	}
}

// until waits for an expression to hold.
func (v *tab) until(what, expression string) {
	v.Helper()
	if _, err := chromedp.Run(v.ctx, chromedp.Poll[chromedp.Void](expression, chromedp.WithPollingTimeout(longest))); err != nil {
		v.Fatalf("%s: %v", what, err)
	}
}

// settled waits until the program has done all that it was given.
func (v *tab) settled() {
	v.Helper()
	v.until("the program is done", `!given && !waiting.length`)
}

// shows has the stand-in show something: main, and whatever more as JSON without braces.
func (v *tab) shows(main, more string) {
	v.Helper()
	words, err := json.Marshal(main)
	if err != nil {
		v.Fatal(err)
	}
	v.do(fmt.Sprintf(`send({ do: "show", fields: {}, value: JSON.stringify({ main: %s, %s }) })`, words, more))
	v.settled()
}

// touch touches the middle of an element with a finger.
func (v *tab) touch(query string) {
	v.Helper()
	at := value[[]float64](v, fmt.Sprintf(`(() => { const e = document.querySelector(%q); e.scrollIntoView({ block: "nearest" });
		const r = e.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })()`, query))
	down := input.DispatchTouchEventParams{Type: input.DispatchTouchEventTypeTouchStart, TouchPoints: []*input.TouchPoint{{X: at[0], Y: at[1]}}}
	up := input.DispatchTouchEventParams{Type: input.DispatchTouchEventTypeTouchEnd, TouchPoints: []*input.TouchPoint{}}
	for _, p := range []input.DispatchTouchEventParams{down, up} {
		if _, err := chromedp.Call(v.ctx, input.DispatchTouchEvent, p); err != nil {
			v.Fatal(err)
		}
	}
}

// types types into what has the focus.
func (v *tab) types(text string) {
	v.Helper()
	if _, err := chromedp.Call(v.ctx, input.InsertText, input.InsertTextParams{Text: text}); err != nil {
		v.Fatal(err)
	}
}

// press presses a key: Tab, Enter or a space.
func (v *tab) press(key string) {
	v.Helper()
	code := map[string]int64{"Tab": 9, "Enter": 13, " ": 32}[key]
	p := input.DispatchKeyEventParams{Type: input.DispatchKeyEventTypeKeyDown, Key: key, WindowsVirtualKeyCode: code}
	switch key {
	case "Enter":
		p.Text = "\r"
	case " ":
		p.Text, p.Code = " ", "Space"
	}
	up := p
	up.Type, up.Text = input.DispatchKeyEventTypeKeyUp, ""
	for _, p := range []input.DispatchKeyEventParams{p, up} {
		if _, err := chromedp.Call(v.ctx, input.DispatchKeyEvent, p); err != nil {
			v.Fatal(err)
		}
	}
}

// prefers sets what the person prefers: a feature of CSS and its value.
func (v *tab) prefers(feature, is string) {
	v.Helper()
	p := emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: feature, Value: is}}}
	if _, err := chromedp.Call(v.ctx, emulation.SetEmulatedMedia, p); err != nil {
		v.Fatal(err)
	}
}

// sent are the events that the stand-in was sent, as JSON.
const sent = `(shown.events ?? []).map((e) => [e.do, e.value, e.fields])`
