package page_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	browserpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/storage"
	"github.com/chromedp/cdproto/systeminfo"
	"github.com/chromedp/chromedp"

	"coldseam/cmd/pocket/page/testdata/folder/same"
	"coldseam/profile/book"
	"coldseam/profile/expect"
	"coldseam/profile/notebook"
)

// goesOn is how a page ends whose drop has not ended.
func goesOn(t *testing.T) string {
	b, err := book.Open(t.TempDir(), book.System{})
	if err != nil {
		t.Fatal(err)
	}
	p, err := b.Begin(same.Drop("x", 1))
	if err != nil {
		t.Fatal(err)
	}
	return strings.TrimPrefix(read(t, p.Path), notebook.Write(same.Drop("x", 1)))
}

// killed kills the page while it saves the readings of a drop, again and again, and looks each
// time what is there: every reading of which it was told that it is saved, on a whole page,
// and the pages from before.
func (f *folders) killed(t *testing.T) {
	rounds := 3
	if expect.Full() {
		rounds = 8
	}
	ending, rng := goesOn(t), rand.New(rand.NewPCG(7, 18))
	was := map[string]string{}
	v := f.open(t, byFile, "")
	for round := range rounds {
		water := fmt.Sprintf("Round %d", round)
		go v.try("take", water)
		for stop := time.Now().Add(20 * time.Second); v.told() <= round%8 && time.Now().Before(stop); {
			time.Sleep(time.Millisecond)
		}
		time.Sleep(time.Duration(rng.IntN(12_000)) * time.Microsecond)
		told := v.told()
		if told == 0 {
			t.Fatal("no reading was saved")
		}
		v.crash()
		v = f.open(t, byFile, "")
		files := v.ask("files", "").Files
		page, whole := "", 0
		for name, text := range files {
			if was[name] != "" || strings.HasSuffix(name, ".txt.part") {
				continue
			}
			page = name
			for n := 1; n <= 40; n++ {
				if text == "-rw-------\n"+notebook.Write(same.Drop(water, n))+ending {
					whole = n
				}
			}
		}
		if whole < told {
			t.Errorf("round %d: %d readings were saved, %d are on %q: %q", round, told, whole, page, files[page])
		}
		for name, text := range was {
			if files[name] != text {
				t.Errorf("round %d: %s is %q, was %q", round, name, files[name], text)
			}
		}
		was[page] = files[page]
		if cut := v.ask("cut off", "").Lines; len(cut) != round+1 || !slices.Contains(cut, fmt.Sprintf("%s %d", water, whole)) {
			t.Errorf("round %d: cut off are %q", round, cut)
		}
		t.Logf("killed after reading %d: %d are there", told, whole)
	}
	v.stop()
}

// crash kills the page's process.
func (v *folderTab) crash() {
	v.t.Helper()
	ctx, stop := context.WithTimeout(v.ctx, 10*time.Second)
	defer stop()
	go chromedp.Call(ctx, browserpage.Crash, struct{}{})
	select {
	case <-v.crashed:
	case <-ctx.Done():
		v.t.Error("the page did not crash")
	}
	v.stop()
}

// twoTabs lets two pages write at once.
func (f *folders) twoTabs(t *testing.T) {
	one, two := f.open(t, byHTTP, ""), f.open(t, byHTTP, "")

	// No name is given twice, no page is lost.
	var both sync.WaitGroup
	var paths [2][]string
	for i, v := range []*folderTab{one, two} {
		both.Go(func() {
			a, err := v.try("begin", fmt.Sprintf("spot %d", i))
			if err != nil || a.Err != "" {
				t.Error(err, a.Err)
			}
			paths[i] = a.Lines
		})
	}
	both.Wait()
	files := two.ask("files", "").Files
	for i := range paths {
		if len(paths[i]) != 25 {
			t.Errorf("page %d saved %d drops", i, len(paths[i]))
		}
		for _, path := range paths[i] {
			if text := files[filepath.Base(path)]; !strings.Contains(text, fmt.Sprintf("spot: spot %d\n", i)) {
				t.Errorf("page %d saved %s, which is %q", i, path, text)
			}
		}
	}
	if len(files) != 50 {
		t.Errorf("%d files", len(files))
	}

	// The lock is one page's, until it lets go of it or is gone.
	one.ask("lock", "")
	if a, err := two.try("lock", ""); err != nil || a.Is != "in use" {
		t.Errorf("a second lock: %+v, %v", a, err)
	}
	one.ask("unlock", "")
	two.ask("lock", "")
	two.stop()
	for tries := 1; ; tries++ {
		a, err := one.try("lock", "")
		if err == nil && a.Err == "" {
			break
		}
		if err != nil || tries > 50 {
			t.Fatalf("the lock of a page that is gone: %+v, %v", a, err)
		}
		time.Sleep(100 * time.Millisecond)
	}
	one.stop()
	f.seesAll(t)
}

// seesAll reads a file in one page while another writes it: what was saved before it was
// read is seen, also where a folder was listed before.
func (f *folders) seesAll(t *testing.T) {
	reader, writer := f.open(t, byHTTP, ""), f.open(t, byHTTP, "")
	var writes []answer
	stop, done := make(chan bool), make(chan bool)
	writer.ask("write", "/book/turns\n0")
	go func() {
		defer close(done)
		for n := 1; ; n++ {
			select {
			case <-stop:
				return
			default:
			}
			a, err := writer.try("write", fmt.Sprintf("/book/turns\n%d", n))
			if a.N = n; err != nil || a.Err != "" {
				t.Error(n, err, a.Err)
				return
			}
			writes = append(writes, a)
		}
	}()
	var reads []answer
	for i := range 60 {
		what := map[bool]string{true: "read at once", false: "read"}[i%10 == 0]
		name := map[bool]string{true: "turns", false: "/book/turns"}[i%10 == 0]
		a := reader.ask(what, name)
		if _, err := fmt.Sscan(a.Lines[0], &a.N); err != nil {
			t.Fatal(a.Lines, err)
		}
		if i%10 == 0 {
			a.From = a.To - 100 // nothing was written after it listed the folder
		}
		reads = append(reads, a)
	}
	close(stop)
	<-done
	if len(writes) < 5 {
		t.Errorf("only %d writes", len(writes))
	}
	for _, r := range reads {
		for _, w := range writes {
			if w.To < r.From-1 && w.N > r.N {
				t.Errorf("read %d at %.1f to %.1f, but %d was saved at %.1f", r.N, r.From, r.To, w.N, w.To)
			}
			if w.N == r.N && w.From > r.To+1 {
				t.Errorf("read %d at %.1f, before it was written at %.1f", r.N, r.To, w.From)
			}
		}
	}
	reader.stop()
	writer.stop()
}

// full takes room away until nothing more can be saved: that is told as a full disk is, what
// was saved before is there, and there is more room afterwards. Its server is one of its own,
// as the browser takes its time to give back what others filled.
func (f *folders) full(t *testing.T) {
	shared := f.server
	f.server = httptest.NewServer(http.FileServer(http.Dir(f.dir)))
	defer func() { f.server.Close(); f.server = shared }()
	v := f.open(t, byHTTP, "")
	usage, err := chromedp.Call(v.ctx, storage.GetUsageAndQuota, storage.GetUsageAndQuotaParams{Origin: f.server.URL})
	if err != nil {
		t.Fatal(err)
	}
	room := func(bytes *float64) {
		if _, err := chromedp.Call(v.ctx, storage.OverrideQuotaForOrigin, storage.OverrideQuotaForOriginParams{Origin: f.server.URL, QuotaSize: bytes}); err != nil {
			t.Fatal(err)
		}
	}
	quota := usage.Usage + 100_000
	room(&quota)
	text := func(n int) string { return fmt.Sprint(n, strings.Repeat(" of many words", 500)) }
	saved := 0
	for ; saved < 200; saved++ {
		a, err := v.try("write", fmt.Sprintf("/book/full-%d\n%s", saved, text(saved)))
		if err != nil {
			t.Fatal(err)
		}
		if a.Err != "" {
			if a.Is != "full" {
				t.Errorf("it is full: %s", a.Err)
			}
			t.Log(a.Err)
			break
		}
	}
	if saved == 0 || saved == 200 {
		t.Errorf("%d files of %d bytes were saved in %d bytes", saved, len(text(1)), 100_000)
	}
	if a, err := v.try("take", "Full Lake"); err != nil || a.Is != "full" {
		t.Errorf("a drop in a full book: %+v, %v", a, err)
	}
	v.stop()
	v = f.open(t, byHTTP, "") // nor is it lost when the page is opened again
	files := v.ask("files", "").Files
	for n := range saved {
		if got := files[fmt.Sprintf("full-%d", n)]; got != "-rw-------\n"+text(n) {
			t.Errorf("file %d is %.40q", n, got)
		}
	}
	room(nil)
	v.ask("take", "Full Lake")
	v.stop()
}

// counting counts the transactions that are begun.
const counting = `let transactions = 0; const begun = IDBDatabase.prototype.transaction;
IDBDatabase.prototype.transaction = function (...args) { transactions++; return begun.apply(this, args); };`

// fast tells how long saving a reading and looking through a book take, and that the pages
// of a book are read in one go. As other work on the machine makes all wait, what is bounded
// is the time that the processors worked for it, in all processes of the browser.
func (f *folders) fast(t *testing.T) {
	v := f.open(t, byHTTP, counting)
	busy := func() (ms float64) {
		all, err := chromedp.CallBrowser(v.ctx, systeminfo.GetProcessInfo, cdp.Empty{})
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range all.ProcessInfo {
			ms += 1000 * p.CPUTime
		}
		return ms
	}
	begun := func() (n int) {
		fmt.Sscan(v.ask("script", "String(transactions)").Lines[0], &n)
		return n
	}

	v.ask("take", "Quick Pond")
	worked, n := busy(), begun()
	took := v.ask("take", "Quick Pool").Millis
	each := (busy() - worked) / float64(len(took))
	slices.Sort(took)
	t.Logf("a reading is saved in %.1f ms, %.1f of them work, in %d transactions; the slowest in %.1f", took[len(took)/2], each, (begun()-n)/len(took), took[len(took)-1])
	if frames := each / (1000. / 60); frames > 2 {
		t.Errorf("%.1f frames are slow", frames)
	}

	v.ask("fill", "")
	for range 3 { // until the browser has compiled well what it runs often
		v.ask("heads", "")
	}
	worked, n = busy(), begun()
	heads := v.ask("heads", "")
	work, all := busy()-worked, begun()-n
	t.Logf("%d drops are looked through in %.0f ms, %.0f of them work, in %d transactions", heads.N, heads.Millis[0], work, all)
	if heads.N < 1000 || all == 0 || all > 4 || work > 1000 {
		t.Error("that is slow")
	}
	v.stop()
}
