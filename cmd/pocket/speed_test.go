package main

import (
	"fmt"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"coldseam/profile/demo"
)

// How long the page takes from its opening until the program is ready, and for one answer
// from a pasted page to the screen, in times of what the terminal's program takes for the
// same page from its start to its end; at the machine's pace, and with a processor slowed
// to a fourth.
func BenchmarkPage(b *testing.B) {
	address := pocket(b)
	ctx, _ := browser(b, b.TempDir())
	text := demo.Page(b, "alder-kettle-july")
	native := terminal(b, text)
	for _, slower := range []float64{1, 4} {
		b.Run(fmt.Sprintf("slowed %g times", slower), func(b *testing.B) {
			var ready, answer time.Duration
			for range b.N {
				v := open(b, apart(b, ctx), "about:blank", phone)
				if _, err := chromedp.Call(v.ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: slower}); err != nil {
					b.Fatal(err)
				}
				if err := chromedp.Do(v.ctx, chromedp.Navigate(address)); err != nil {
					b.Fatal(err)
				}
				v.until("the program", `document.getElementById('say').textContent === ''`)
				ready += ms(value[float64](v, `performance.now()`))
				v.touchAt(`document.getElementById('page')`)
				v.types(text)
				began := value[float64](v, `performance.now()`)
				v.touch("Read this page")
				v.shows("Confidence")
				answer += ms(value[float64](v, `performance.now()`) - began)
			}
			n := float64(b.N)
			b.ReportMetric(ready.Seconds()*1000/n, "ms-ready")
			b.ReportMetric(ready.Seconds()/n/native.Seconds(), "ready/terminal")
			b.ReportMetric(answer.Seconds()*1000/n, "ms-answer")
			b.ReportMetric(answer.Seconds()/n/native.Seconds(), "answer/terminal")
		})
	}
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
