package page

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	browserpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"coldseam/chart/asset"
	"coldseam/profile/expect"
)

const longest = 20 * time.Second // of any wait in a browser

// started is the one browser of all tests, which reaches no network, as a context in which
// tabs are opened; and why there is none. TestMain stops it.
var started = sync.OnceValues(func() (context.Context, error) {
	path := ""
	for _, name := range []string{"chromium", "chromium-browser"} {
		if p, err := exec.LookPath(name); err == nil {
			path = p
			break
		}
	}
	if path == "" {
		return nil, errors.New("there is no chromium here (Debian: chromium)")
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path),
		chromedp.Flag("host-resolver-rules", "MAP * ~NOTFOUND"),
		chromedp.ProxyServer("127.0.0.1:9"), // nobody answers there
		chromedp.Flag("proxy-bypass-list", "<-loopback>"),
	)
	if os.Geteuid() == 0 {
		options = append(options, chromedp.NoSandbox)
	}
	ctx, stopAll := context.WithTimeout(context.Background(), 4*time.Minute)
	ctx, stopProcess := chromedp.NewExecAllocator(ctx, options...)
	ctx, stopTab := chromedp.NewContext(ctx)
	stopBrowser = func() { stopTab(); stopProcess(); stopAll() }
	if err := chromedp.Do(ctx); err != nil {
		return nil, fmt.Errorf("chromium does not start: %w", err)
	}
	return ctx, nil
})

var stopBrowser = func() {}

func TestMain(m *testing.M) {
	code := m.Run()
	stopBrowser()
	os.Exit(code)
}

// browser is the browser, and the script for the pages.
func browser(t *testing.T) (context.Context, []byte) {
	t.Helper()
	script := asset.Script()
	if script == nil {
		expect.Missing(t, "the script was not fetched: go generate ./chart/asset")
	}
	ctx, err := started()
	if err != nil {
		expect.Missing(t, "%v", err)
	}
	return ctx, script
}

// screen is what a page is looked at on.
type screen struct {
	name          string
	width, height int64
	finger        bool // or a mouse
}

var (
	phone = screen{"phone", 390, 844, true}
	small = screen{"small phone", 320, 568, true}
	desk  = screen{"desk", 1280, 800, false}
)

// visit is a page open in a tab, and what went wrong on it.
type visit struct {
	t   *testing.T
	ctx context.Context

	mu       sync.Mutex
	requests []string // whatever was asked for
	faults   []string // on the console, thrown, or a dialog
}

// open opens a page in a new tab.
func open(t *testing.T, parent context.Context, html string, s screen) *visit {
	t.Helper()
	file := filepath.Join(t.TempDir(), "page.html")
	if err := os.WriteFile(file, []byte(html), 0o600); err != nil {
		t.Fatal(err)
	}
	ctx, stop := chromedp.NewContext(parent)
	t.Cleanup(stop)
	ctx, stop = context.WithTimeout(ctx, longest)
	t.Cleanup(stop)
	v := &visit{t: t, ctx: ctx}
	if err := chromedp.Listen(ctx, v.hear); err != nil {
		t.Fatal(err)
	}
	size := chromedp.EmulateViewport(s.width, s.height)
	if s.finger {
		size = chromedp.EmulateViewport(s.width, s.height, chromedp.EmulateMobile, chromedp.EmulateTouch)
	}
	if err := chromedp.Do(ctx, size, chromedp.Navigate("file://"+file)); err != nil {
		t.Fatal(err)
	}
	return v
}

func (v *visit) hear(event any) {
	v.mu.Lock()
	defer v.mu.Unlock()
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		v.requests = append(v.requests, e.Request.URL)
	case *runtime.EventExceptionThrown:
		v.faults = append(v.faults, "thrown: "+e.ExceptionDetails.Text)
	case *runtime.EventConsoleAPICalled:
		v.faults = append(v.faults, fmt.Sprint("console: ", e.Type))
	case *log.EventEntryAdded:
		v.faults = append(v.faults, fmt.Sprintf("log: %s %s", e.Entry.Level, e.Entry.Text))
	case *browserpage.EventJavascriptDialogOpening:
		v.faults = append(v.faults, "dialog: "+e.Message)
	}
}

// away gives the requests that would have left the machine, having made sure that
// requests are heard at all.
func (v *visit) away() []string {
	v.mu.Lock()
	defer v.mu.Unlock()
	if len(v.requests) == 0 {
		v.t.Error("not even the page itself was heard")
	}
	var out []string
	for _, r := range v.requests {
		if !strings.HasPrefix(r, "file:///") && !strings.HasPrefix(r, "data:") {
			out = append(out, r)
		}
	}
	return out
}

func (v *visit) wrong() []string {
	v.mu.Lock()
	defer v.mu.Unlock()
	return v.faults
}

// value computes an expression on the page.
func value[T any](v *visit, expression string) T {
	v.t.Helper()
	out, err := chromedp.Run(v.ctx, chromedp.Evaluate[T](expression))
	if err != nil {
		v.t.Fatalf("%s: %v", expression, err)
	}
	return out
}

// until waits for an expression to hold.
func (v *visit) until(what, expression string) {
	v.t.Helper()
	if _, err := chromedp.Run(v.ctx, chromedp.Poll[chromedp.Void](expression, chromedp.WithPollingTimeout(longest/2))); err != nil {
		v.t.Errorf("%s: %v", what, err)
	}
}

const (
	chartOf = `echarts.getInstanceByDom(document.getElementById('picture'))`

	// inked tells whether there are enough dots of a colour within reach of each of the
	// points on the picture, px.
	inked = `(function (red, green, blue, points, reach, enough) {
	var c = document.querySelector('#picture canvas'), k = c.width / c.clientWidth, copy = document.createElement('canvas');
	copy.width = c.width;
	copy.height = c.height;
	var pen = copy.getContext('2d', {willReadFrequently: true});
	pen.drawImage(c, 0, 0);
	return points.every(function (p) {
		var n = 0, d = pen.getImageData((p[0] - reach) * k, (p[1] - reach) * k, 2 * reach * k, 2 * reach * k).data;
		for (var i = 0; i < d.length; i += 4) {
			if (Math.abs(d[i] - red) + Math.abs(d[i + 1] - green) + Math.abs(d[i + 2] - blue) < 24 && d[i + 3] > 200) { n++; }
		}
		return n > enough;
	});
})`

	// seen tells whether an element shows.
	seen = `(function (e) { return !!e && getComputedStyle(e).display !== 'none' && e.getBoundingClientRect().height > 20; })`

	// smallest is the smallest size of any text on the page, px.
	smallest = `Math.min.apply(null, [].filter.call(document.querySelectorAll('body *'), function (e) {
	return e.tagName !== 'SCRIPT' && [].some.call(e.childNodes, function (n) { return n.nodeType === 3 && n.textContent.trim(); });
}).map(function (e) { return parseFloat(getComputedStyle(e).fontSize); }))`
)
