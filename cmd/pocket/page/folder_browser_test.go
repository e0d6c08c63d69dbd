package page_test

import (
	"context"
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/inspector"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"coldseam/cmd/pocket/page"
	"coldseam/profile/expect"
)

// folders is the browser in which the files of the program are tried, and the page there.
type folders struct {
	ctx     context.Context
	program string // in base64
	parts   string // of the worker's script
	dir     string // of pages
	server  *httptest.Server
	shown   map[string]string // the file of each page, by its script
}

// answer is what the program of testdata/folder answers.
type answer struct {
	Err, Is  string
	Lines    []string
	Files    map[string]string
	Millis   []float64
	From, To float64
	N        int
}

// startFolders builds the program and starts the browser.
func startFolders(t *testing.T) *folders {
	path := ""
	for _, name := range []string{"chromium", "chromium-browser"} {
		if p, err := exec.LookPath(name); err == nil && path == "" {
			path = p
		}
	}
	if path == "" {
		expect.Missing(t, "there is no chromium here (Debian: chromium)")
	}
	if testing.Short() {
		t.Skip("no browser in a short run")
	}
	f := &folders{dir: t.TempDir(), shown: map[string]string{}}
	file := filepath.Join(f.dir, "program.wasm")
	build := exec.Command("go", "build", "-trimpath", "-ldflags", "-s -w", "-o", file, "./testdata/folder")
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	f.program = base64.StdEncoding.EncodeToString([]byte(read(t, file)))
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	f.parts = read(t, filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js")) + "\n" + page.Script("folder.js") + "\n" + page.Script("worker.js") + "\n"
	f.server = httptest.NewServer(http.FileServer(http.Dir(f.dir)))
	t.Cleanup(f.server.Close)

	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.Flag("host-resolver-rules", "MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"))
	if os.Geteuid() == 0 {
		options = append(options, chromedp.NoSandbox)
	}
	ctx, stop := context.WithTimeout(context.Background(), 9*time.Minute)
	t.Cleanup(stop)
	ctx, stop = chromedp.NewExecAllocator(ctx, options...)
	t.Cleanup(stop)
	f.ctx, stop = chromedp.NewContext(ctx)
	t.Cleanup(stop)
	if err := chromedp.Do(f.ctx); err != nil {
		expect.Missing(t, "chromium does not start: %v", err)
	}
	return f
}

// The page: starts the worker, and keeps what it answers.
const folderPage = `<!DOCTYPE html><meta charset="utf-8"><title>folder</title><script>
const asked = new Map();
let last = 0, saved = 0;
const worker = new Worker(URL.createObjectURL(new Blob([%s])));
worker.onmessage = ({ data }) => {
	if (data.saved) { saved = data.saved; window.told?.(String(saved)); }
	else if (data.trouble) { for (const give of asked.values()) give(JSON.stringify({ Err: JSON.stringify(data) })); }
	else { asked.get(data.id)(data.out); asked.delete(data.id); }
};
const ask = (what, value) => new Promise((give) => {
	asked.set(String(++last), give);
	worker.postMessage({ do: what, value, fields: { id: String(last) } });
});
worker.postMessage({ program: %s });
</script>`

// folderTab is a page of the browser with the program in it.
type folderTab struct {
	t    *testing.T
	ctx  context.Context
	stop func()

	crashed chan bool // is closed

	mu    sync.Mutex
	saved []string // readings that the page was told to be saved
}

const (
	byFile = iota
	byHTTP
)

// open opens the page in a new tab; the script runs in the worker before all else.
func (f *folders) open(t *testing.T, from int, before string) *folderTab {
	t.Helper()
	script, err := json.Marshal(before + "\nconst unpack = (bytes) => bytes;\n" + f.parts)
	if err != nil {
		t.Fatal(err)
	}
	name, there := f.shown[before]
	if !there {
		name = fmt.Sprintf("page-%d.html", len(f.shown))
		f.shown[before] = name
		text := fmt.Sprintf(folderPage, strings.ReplaceAll(string(script), "</", `<\/`), `"`+f.program+`"`)
		if err := os.WriteFile(filepath.Join(f.dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	url := "file://" + filepath.Join(f.dir, name)
	if from == byHTTP {
		url = f.server.URL + "/" + name
	}
	ctx, stopTab := chromedp.NewContext(f.ctx)
	ctx, stopTime := context.WithTimeout(ctx, time.Minute)
	v := &folderTab{t: t, ctx: ctx, stop: func() { stopTime(); stopTab() }, crashed: make(chan bool)}
	t.Cleanup(v.stop)
	if err := chromedp.Listen(ctx, v.hear); err != nil {
		t.Fatal(err)
	}
	bind := runtime.AddBindingParams{Name: "told"}
	if _, err := chromedp.Call(ctx, runtime.AddBinding, bind); err != nil {
		t.Fatal(err)
	}
	if err := chromedp.Do(ctx, chromedp.Navigate(url)); err != nil {
		t.Fatal(err)
	}
	return v
}

func (v *folderTab) hear(event any) {
	switch e := event.(type) {
	case *runtime.EventBindingCalled:
		v.mu.Lock()
		v.saved = append(v.saved, e.Payload)
		v.mu.Unlock()
	case *inspector.EventTargetCrashed:
		close(v.crashed)
	}
}

func (v *folderTab) told() int {
	v.mu.Lock()
	defer v.mu.Unlock()
	return len(v.saved)
}

// try asks the program for something.
func (v *folderTab) try(what, value string) (a answer, err error) {
	give, err := json.Marshal(value)
	if err != nil {
		return a, err
	}
	out, err := chromedp.Run(v.ctx, chromedp.Evaluate[string](fmt.Sprintf("ask(%q, %s)", what, give), chromedp.EvalAwaitPromise))
	if err != nil {
		return a, err
	}
	return a, json.Unmarshal([]byte(out), &a)
}

// ask is try where nothing may fail.
func (v *folderTab) ask(what, value string) answer {
	v.t.Helper()
	a, err := v.try(what, value)
	if err == nil && a.Err != "" {
		err = errors.New(a.Err)
	}
	if err != nil {
		v.t.Fatalf("%s %.40s: %v", what, value, err)
	}
	return a
}
