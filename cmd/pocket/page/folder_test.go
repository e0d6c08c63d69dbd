package page_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"coldseam/cmd/pocket/page/testdata/folder/same"
	"coldseam/profile/expect"
)

// The files of the program in the browser.
func TestFolder(t *testing.T) {
	f := startFolders(t)
	t.Run("as a disk", f.asADisk)
	t.Run("killed", f.killed)
	t.Run("two tabs", f.twoTabs)
	t.Run("full", f.full)
	t.Run("fast", f.fast)
}

// Scripts that come before all else in the worker, and break what it finds there.
const (
	whole     = "const whole = IDBDatabase.prototype.transaction; let n = 0;\n"
	impatient = "const late = setTimeout; globalThis.setTimeout = (f, ms, ...a) => late(f, ms / 10, ...a);\n"

	// every other transaction that writes is complete, and its answer is lost
	lostAnswers = whole + `IDBDatabase.prototype.transaction = function (...args) {
	const tx = whole.apply(this, args);
	if (tx.mode === "readwrite" && ++n % 2) {
		let abort;
		Object.defineProperty(tx, "onabort", { set(f) { abort = f; } });
		Object.defineProperty(tx, "oncomplete", { set() { tx.addEventListener("complete", () => abort.call(tx)); } });
	}
	return tx;
};`
	// one of 23 that write is complete, and nobody hears of it
	silent = impatient + whole + `IDBDatabase.prototype.transaction = function (...args) {
	const tx = whole.apply(this, args);
	if (tx.mode === "readwrite" && ++n % 23 === 0) Object.defineProperty(tx, "oncomplete", { set() {} });
	return tx;
};`
	// every other is aborted
	aborted = whole + `IDBDatabase.prototype.transaction = function (...args) {
	const tx = whole.apply(this, args);
	if (++n % 2) queueMicrotask(() => tx.abort());
	return tx;
};`
	// every other finds the connection closed
	closed = whole + `IDBDatabase.prototype.transaction = function (...args) {
	if (++n % 2) this.close();
	return whole.apply(this, args);
};`

	missing = `Object.defineProperty(globalThis, "indexedDB", { value: undefined });`
	refused = `Object.defineProperty(globalThis, "indexedDB", { get() { throw new DOMException("not here", "SecurityError"); } });`
	failing = `IDBFactory.prototype.open = function () { const asked = {}; setTimeout(() => { asked.error = new DOMException("broken", "UnknownError"); asked.onerror(); }); return asked; };`
	newer   = `const first = IDBFactory.prototype.open; const other = first.call(indexedDB, "newer", 2); other.onsuccess = () => other.result.close();
IDBFactory.prototype.open = function () { return first.call(this, "newer", 1); };`
	hanging = impatient + `IDBFactory.prototype.open = () => ({});`
)

// asADisk compares what package os and a book do in the browser with what they do on a
// disk: from a file and from a server, where the browser loses connections or answers all
// the time, and in memory, where it has no storage. COLDSEAM_FULL=1 tries them all.
func (f *folders) asADisk(t *testing.T) {
	lines := same.System(t.TempDir())
	files, err := same.Book(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name   string
		from   int
		before string
		why    string // it is not durable
	}{
		{"file", byFile, "", ""},
		{"server", byHTTP, "", ""},
		{"lost answers", byFile, lostAnswers, ""},
		{"silent", byFile, silent, ""},
		{"aborted", byFile, aborted, ""},
		{"closed", byFile, closed, ""},
		{"missing", byFile, missing, "TypeError"},
		{"refused", byFile, refused, "SecurityError: not here"},
		{"failing", byFile, failing, "UnknownError: broken"},
		{"newer", byFile, newer, "VersionError: "},
		{"hanging", byFile, hanging, "Error: the storage does not open"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if !expect.Full() && !slices.Contains([]string{"file", "lost answers", "refused"}, c.name) {
				t.Skip("with COLDSEAM_FULL=1")
			}
			v := f.open(t, c.from, c.before)
			if got := v.ask("durable", "").Lines; got[0] != fmt.Sprint(c.why == "") || !strings.Contains(got[1], c.why) || c.why == "" && got[1] != "" {
				t.Errorf("durable: %q", got)
			}
			if c.why != "" && c.name != "refused" {
				return // all of these are in memory
			}
			got := v.ask("system", "system "+c.name).Lines
			differ(t, strings.Join(got, "\n"), strings.Join(lines, "\n"))
			all := v.ask("book", "book "+c.name).Files
			for name := range files {
				differ(t, name+": "+all[name], name+": "+files[name])
			}
			if len(all) != len(files) {
				t.Errorf("%d files, on a disk %d", len(all), len(files))
			}
			v.stop()
		})
	}
}

// differ tells the first line that differs.
func differ(t *testing.T, got, want string) {
	t.Helper()
	g, w := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range max(len(g), len(w)) {
		a, b := "(nothing)", "(nothing)"
		if i < len(g) {
			a = g[i]
		}
		if i < len(w) {
			b = w[i]
		}
		if a != b {
			t.Errorf("line %d:\nin the browser %s\non a disk      %s", i+1, a, b)
		}
	}
}
