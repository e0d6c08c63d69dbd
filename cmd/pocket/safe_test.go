package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"coldseam/cmd/pocket/page"
	"coldseam/profile/expect"
)

// Names that would be markup are text on every screen that shows them.
func TestHostileNames(t *testing.T) {
	ctx, _ := browser(t, t.TempDir())
	v := open(t, ctx, pocket(t), phone)
	bad := `<img src=x onerror=document.title=1><script>document.title=2</script>"'&`
	v.until("the field", `!!document.getElementById('page')`)
	v.touchAt(`document.getElementById('page')`)
	v.types("water: " + bad + "\nspot: " + bad + "\nunits: m C\nbottom: 9 m\n0 22\n2 21.5\n4 18\n6 10\n8 7\nnote " + bad + "\ncaught " + bad + " 4 m\n")
	v.touch("Read these readings")
	v.shows("Confidence")
	for _, way := range []string{"Sink timer", "Back", "Caught one", "Back", "Message", "Back", "Correct this drop", "Back", "Book", "Copy or send", "Back", "Back"} {
		v.touch(way)
		v.until("a screen", `!!document.querySelector('main h1') && document.getElementById('busy').hidden`)
		if n := value[int](v, `document.querySelectorAll('main img, main script, main iframe, main a[href]').length`); n != 0 {
			t.Errorf("after %s: %d elements that no screen has", way, n)
		}
		v.fits(phone.width)
		if small := value[[]string](v, smallTargets); len(small) > 0 {
			t.Errorf("after %s: smaller than a thumb: %q", way, small)
		}
	}
	v.quiet()
}

// smallTargets are what is to be touched and is less than 48 px high or wide.
const smallTargets = `[].map.call(document.querySelectorAll('button, input, select, textarea, summary'), function (e) { return e.closest('label') || e; }).filter(function (e) {
	var r = e.getBoundingClientRect();
	return e.getClientRects().length && (r.width < 48 || r.height < 48);
}).map(function (e) { return e.outerHTML.slice(0, 100); })`

// before gives the address of a page in whose worker a script runs before all else.
func before(t *testing.T, script string) string {
	t.Helper()
	file, err := page.File()
	if err != nil {
		expect.Missing(t, "%v", err)
	}
	const start = `<script id="worker" type="text/plain">`
	if !strings.Contains(string(file), start) {
		t.Fatal("no worker on the page")
	}
	name := filepath.Join(t.TempDir(), "coldseam.html")
	if err := os.WriteFile(name, []byte(strings.Replace(string(file), start, start+script, 1)), 0o600); err != nil {
		t.Fatal(err)
	}
	return "file://" + name
}

// Where the browser keeps nothing the page says so, and a drop is taken, answered and
// copied out all the same.
func TestNothingKept(t *testing.T) {
	ctx, _ := browser(t, t.TempDir())
	v := open(t, ctx, before(t, `Object.defineProperty(globalThis, "indexedDB", { get() { throw new DOMException("no", "SecurityError"); } });`), phone)
	v.shows("keeps nothing")
	v.begins()
	v.line("0 74, 8 73, 14 66, 20 54, 28 47")
	v.until("five readings", `document.querySelectorAll('.column li').length === 5`)
	v.touch(value[string](v, `[].map.call(document.querySelectorAll('main button'), function (b) { return b.innerText; }).filter(function (w) { return /^(End the drop|Show the answer)/.test(w); })[0]`))
	v.shows("Confidence")
	v.touch("Book")
	v.touch("Copy or send")
	v.until("the page", `!!document.querySelector('main pre')`)
	if n := len(planned(t, value[string](v, `document.querySelector('main pre').textContent`)).Drop.Readings); n != 5 {
		t.Errorf("%d readings were carried out", n)
	}
}

// Where there is no room the reading is not said to be saved, the drop can be copied, and
// what was saved before is there.
func TestNoRoom(t *testing.T) {
	ctx, _ := browser(t, t.TempDir())
	full := `const put = IDBObjectStore.prototype.put, add = IDBObjectStore.prototype.add;
const room = (f) => function (v, ...k) {
	if (new TextDecoder().decode(v?.data ?? new Uint8Array()).includes("61.1")) throw new DOMException("no room", "QuotaExceededError");
	return f.call(this, v, ...k);
};
IDBObjectStore.prototype.put = room(put);
IDBObjectStore.prototype.add = room(add);`
	v := open(t, ctx, before(t, full), phone)
	v.begins()
	v.line("0 74")
	v.until("one is saved", `document.querySelectorAll('.column li').length === 1`)
	v.line("14 61.1")
	v.shows("61.1 F at 14 ft is not saved")
	if text := v.text(); strings.Contains(text, "Saved: 61.1") || !strings.Contains(text, "no room left") {
		t.Errorf("not told why: %s", text)
	}
	if page := value[string](v, `document.querySelector('main pre').textContent`); !strings.Contains(page, "61.1") || !strings.Contains(page, "74") {
		t.Errorf("the drop cannot be copied: %q", page)
	}
	again := open(t, ctx, pocket(t), phone)
	again.shows("1 reading")
}

// No screen has what axe-core calls a fault, by day or by night.
func TestScreensAxe(t *testing.T) {
	file := os.Getenv("COLDSEAM_AXE")
	if file == "" {
		expect.Missing(t, "COLDSEAM_AXE names no script of axe-core: see .ci/run")
	}
	axe, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	ctx, _ := browser(t, t.TempDir())
	for _, scheme := range []string{"light", "dark"} {
		v := open(t, apart(t, ctx), pocket(t), phone)
		params := emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}}
		if _, err := chromedp.Call(v.ctx, emulation.SetEmulatedMedia, params); err != nil {
			t.Fatal(err)
		}
		look := func(name string) {
			v.until("a screen", `!!document.querySelector('main h1') && document.getElementById('busy').hidden && document.getElementById('say').textContent.indexOf('Starting') < 0`)
			value[bool](v, `window.found = null; true`)
			value[bool](v, string(axe)+`; window.axe.run(document, { resultTypes: ['violations'] }).then(function (r) {
				window.found = r.violations.map(function (f) { return f.impact + ': ' + f.help + ': ' + f.nodes[0].html.slice(0, 200); });
			}); true`)
			v.until("the findings", `!!window.found`)
			for _, f := range value[[]string](v, `window.found`) {
				t.Errorf("%s, %s: %s", name, scheme, f)
			}
		}
		look("home")
		v.begins()
		look("first reading")
		v.line("0 74, 8 73, 14 66, 14.5 40, 20 54, 28 47")
		v.until("the readings", `document.querySelectorAll('.column li').length === 6`)
		look("readings")
		v.touchAt(`document.querySelector('.column li button')`)
		v.shows("Take it out")
		look("one reading")
		v.touch("Leave it as it is")
		v.until("the readings", `document.querySelectorAll('.column li').length === 6`)
		v.touch(value[string](v, `[].map.call(document.querySelectorAll('main button'), function (b) { return b.innerText; }).filter(function (w) { return /^(End the drop|Show the answer|Keep)/.test(w); })[0]`))
		v.until("the answer, or the drop", `true`)
		if !strings.Contains(v.text(), "Confidence") {
			v.touch(value[string](v, `[].map.call(document.querySelectorAll('main button'), function (b) { return b.innerText; }).filter(function (w) { return /^(End the drop|Show the answer)/.test(w); })[0]`))
		}
		v.shows("Confidence")
		look("answer")
		for _, way := range []string{"Sink timer", "Back", "Caught one", "Back", "Message", "Back", "Book", "Copy or send", "Back"} {
			v.touch(way)
			look(way)
		}
	}
}
