//go:build unix

package main

import (
	"context"
	"fmt"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/systeminfo"
	"github.com/chromedp/chromedp"

	"coldseam/profile/demo"
)

// How long the page takes from its opening until the program is ready, and for an answer
// from the touch on a pasted page to the screen, the first and the second one, in times of
// what the terminal's program takes for the same page from its start to its end; at the
// machine's pace, and with all processes of pages slowed to a fourth.
func BenchmarkPage(b *testing.B) {
	address := pocket(b)
	ctx, _ := browser(b, b.TempDir())
	text := demo.Page(b, "alder-kettle-july")
	native := terminal(b, text)
	for _, slower := range []int{1, 4} {
		b.Run(fmt.Sprintf("slowed %d times", slower), func(b *testing.B) {
			took := map[string]time.Duration{}
			for range b.N {
				func() {
					v := open(b, apart(b, ctx), "about:blank", phone)
					defer slow(b, v.ctx, slower)()
					if err := chromedp.Do(v.ctx, chromedp.Navigate(address)); err != nil {
						b.Fatal(err)
					}
					v.until("the program", `document.getElementById('say').textContent === ''`)
					took["ready"] += ms(value[float64](v, `performance.now()`))
					for _, which := range []string{"answer", "again"} {
						v.until("the field", `!!document.getElementById('page')`)
						v.touchAt(`document.getElementById('page')`)
						v.types(text)
						value[bool](v, answering)
						v.touch("Read these readings")
						v.shows("Confidence")
						took[which] += ms(value[float64](v, `answered - touched`))
						v.touch("To the first screen")
					}
				}()
			}
			for what, all := range took {
				each := all.Seconds() / float64(b.N)
				b.ReportMetric(each*1000, "ms-"+what)
				b.ReportMetric(each/native.Seconds(), what+"/terminal")
			}
		})
	}
}

// answering notes when a button is touched and when an answer is there.
const answering = `document.addEventListener('click', function () { window.touched = performance.now(); }, { capture: true, once: true });
new MutationObserver(function (all, watch) {
	if (!document.querySelector('main .confidence')) return;
	window.answered = performance.now();
	watch.disconnect();
}).observe(document.querySelector('main'), { childList: true, subtree: true });
true`

// slow stops the processes of all pages for most of the time, so that they work as on a
// processor that is slower by so many times. The browser's own way slows no workers.
func slow(b *testing.B, ctx context.Context, times int) (end func()) {
	if times == 1 {
		return func() {}
	}
	const slice = 5 * time.Millisecond
	stop, done := make(chan bool), make(chan bool)
	go func() {
		defer close(done)
		var pages []int
		signal := func(s syscall.Signal) {
			for _, pid := range pages {
				syscall.Kill(pid, s)
			}
		}
		for n := 0; ; n++ {
			if n%10 == 0 { // a new page may have begun another process
				all, err := chromedp.CallBrowser(ctx, systeminfo.GetProcessInfo, cdp.Empty{})
				if err != nil {
					return
				}
				pages = nil
				for _, p := range all.ProcessInfo {
					if p.Type == "renderer" {
						pages = append(pages, int(p.ID))
					}
				}
			}
			signal(syscall.SIGSTOP)
			time.Sleep(time.Duration(times-1) * slice)
			signal(syscall.SIGCONT)
			select {
			case <-stop:
				return
			case <-time.After(slice):
			}
		}
	}()
	return func() { close(stop); <-done }
}

func ms(v float64) time.Duration { return time.Duration(v * float64(time.Millisecond)) }

// terminal is how long the terminal's program takes for a plan, the median of nine runs.
func terminal(b *testing.B, text string) time.Duration {
	program := filepath.Join(b.TempDir(), "coldseam")
	build(b, program, nil, "coldseam/cmd/coldseam")
	var all []time.Duration
	for range 9 {
		cmd := exec.Command(program, "plan")
		cmd.Stdin, cmd.Env = strings.NewReader(text), []string{"HOME=" + b.TempDir()}
		began := time.Now()
		if err := cmd.Run(); err != nil {
			b.Fatal(err)
		}
		all = append(all, time.Since(began))
	}
	slices.Sort(all)
	return all[len(all)/2]
}
