package page_test

import (
	"bytes"
	"context"
	"fmt"
	"mime"
	"net"
	"net/http"
	"net/http/httptest"
	"path"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	browserpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// host is a web host on this machine, with the site in a folder of it.
type host struct {
	*testing.T
	server  *httptest.Server
	address string

	mu    sync.Mutex
	files map[string][]byte
	asked []string
}

func (h *host) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.asked = append(h.asked, r.URL.Path)
	name, inside := strings.CutPrefix(r.URL.Path, "/lake/")
	if name == "" {
		name = "index.html"
	}
	b, ok := h.files[name]
	if !inside || !ok {
		http.NotFound(w, r)
		return
	}
	w.Header().Set("Content-Type", mime.TypeByExtension(path.Ext(name)))
	w.Header().Set("Cache-Control", "max-age=86400") // as hosts do; it must not keep an old version alive
	w.Write(b)
}

// begin begins to answer, at the same address each time.
func (h *host) begin() {
	h.Helper()
	listener, err := net.Listen("tcp", h.address)
	if err != nil {
		h.Fatal(err)
	}
	h.address = listener.Addr().String()
	h.server = &httptest.Server{Listener: listener, Config: &http.Server{Handler: h}}
	h.server.Start()
}

// gone stops answering: there is no signal.
func (h *host) gone() {
	h.server.CloseClientConnections()
	h.server.Close()
}

// gives gives another version of the site: its page says which, and it has another hash.
func (h *host) gives(version string, files map[string][]byte, without string) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.files = map[string][]byte{}
	for name, b := range files {
		switch name {
		case without:
			continue
		case "index.html":
			b = append(bytes.Clone(b), "<!-- version "+version+" -->"...)
		case "sw.js":
			b = append(bytes.Clone(b), "// "+version+"\n"...)
			b = bytes.Replace(b, []byte(`const kept = own + "`), []byte(`const kept = own + "`+version), 1)
		}
		h.files[name] = b
	}
}

// The site on a web host: installed on the first visit, it works without a signal, and takes
// a new version over at the start after the one that fetched it, whole or not at all.
func TestSite(t *testing.T) {
	if testing.Short() {
		t.Skip("starts the whole program several times")
	}
	files := site(t)
	h := &host{T: t, address: "127.0.0.1:0"}
	h.gives("one", files, "")
	h.begin()
	defer func() { h.server.Close() }()
	ctx := startBrowser(t, chromedp.Flag("host-resolver-rules", "MAP * ~NOTFOUND , EXCLUDE 127.0.0.1"))
	home := "http://" + h.address + "/lake/"
	v := newTab(t, ctx)
	v.visit(home)
	v.do(`await caches.open("another page's"); await navigator.serviceWorker.ready`)
	v.until("the service worker controls the page", `navigator.serviceWorker.controller !== null`)
	v.is("version", `document.lastChild.data`, `" version one "`)
	v.do(`window.kept = await (async () => (await (await caches.open((await caches.keys()).find((k) => k.includes("one")))).keys()).map((r) => new URL(r.url).pathname).sort())()`)
	v.is("what is kept", `window.kept`, `["/lake/","/lake/icon-192.png","/lake/icon-512.png","/lake/icon-apple.png","/lake/icon-maskable.png","/lake/manifest.webmanifest"]`)
	v.installable()

	h.gone()
	v.visit(home)
	v.visit(home + "index.html?from=a-message")
	v.is("version without a signal", `document.lastChild.data`, `" version one "`)

	h.gives("two", files, "")
	h.begin()
	v.do(`window.still = true; await (await navigator.serviceWorker.getRegistration()).update()`)
	v.until("the new version is kept, and the old one gone", `caches.keys().then((k) => k.length === 2 && k[0] === "another page's" && k[1].includes(" two"))`)
	v.is("the page that is open", `[window.still, document.lastChild.data]`, `[true," version one "]`)
	h.gone()
	v.visit(home)
	v.is("version at the next start", `document.lastChild.data`, `" version two "`)

	h.gives("three", files, "icon-512.png") // half uploaded
	h.begin()
	v.do(`const r = await navigator.serviceWorker.getRegistration(); await r.update().catch(() => {});
		await new Promise((done) => { const wait = () => r.installing ? setTimeout(wait, 50) : done(); wait(); })`)
	h.gone()
	v.visit(home)
	v.is("version where the next one is not whole", `document.lastChild.data`, `" version two "`)

	v.mu.Lock()
	defer v.mu.Unlock()
	for _, url := range v.requests {
		if !strings.HasPrefix(url, home) && !strings.HasPrefix(url, "blob:"+strings.TrimSuffix(home, "/lake/")) {
			t.Errorf("asked for %s", url)
		}
	}
	h.mu.Lock()
	defer h.mu.Unlock()
	for _, asked := range h.asked {
		if !strings.HasPrefix(asked, "/lake/") {
			t.Errorf("asked the host for %s", asked)
		}
	}
	if !slices.Contains(h.asked, "/lake/icon-maskable.png") {
		t.Errorf("the host was asked for %q alone", h.asked)
	}
	for _, f := range v.faults {
		if !strings.Contains(f, "net::ERR_CONNECTION_REFUSED") && !strings.Contains(f, "404") { // of the look for a new version
			t.Error(f)
		}
	}
}

// visit opens an address, and waits until the program has shown its first screen.
func (v *tab) visit(url string) {
	v.Helper()
	if err := chromedp.Do(v.ctx, chromedp.Navigate(url)); err != nil {
		v.Fatalf("%s: %v", url, err)
	}
	v.settled()
	v.is("no trouble", `document.getElementById("trouble").textContent`, `""`)
}

// installable asks the browser whether the page may be installed.
func (v *tab) installable() {
	v.Helper()
	for what, ask := range map[string]func(context.Context) error{
		"manifest": func(ctx context.Context) error {
			m, err := chromedp.Call(ctx, browserpage.GetAppManifest, browserpage.GetAppManifestParams{})
			if err == nil && len(m.Errors) > 0 {
				err = fmt.Errorf("%+v", m.Errors)
			}
			return err
		},
		"installing": func(ctx context.Context) error {
			e, err := chromedp.Call(ctx, browserpage.GetInstallabilityErrors, cdp.Empty{})
			if err == nil && len(e.InstallabilityErrors) > 0 {
				err = fmt.Errorf("%+v", e.InstallabilityErrors)
			}
			return err
		},
	} {
		if err := ask(v.ctx); err != nil {
			v.Errorf("%s: %v", what, err)
		}
	}
}

// The one file asks for nothing but itself.
func TestFileAsksNothing(t *testing.T) {
	if testing.Short() {
		t.Skip("starts the whole program")
	}
	b := file(t)
	v := open(t, browser(t), string(b), phone)
	v.settled()
	v.is("no trouble", `document.getElementById("trouble").textContent`, `""`)
	v.do(`window.way = await fetch("https://example.org/").then(() => "left", () => "stopped")`)
	v.is("no way out", `window.way`, `"stopped"`)
	v.faults = nil // the policy says that it stopped it
	v.quiet()
}
