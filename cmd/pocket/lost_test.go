package main

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/inspector"
	browserpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// A page that crashes in the middle of a drop loses nothing that it said was saved, and the
// drop is offered again: twenty times, every other time with a reading on its way.
func TestCrashed(t *testing.T) {
	address := pocket(t)
	ctx, _ := browser(t, t.TempDir())
	sure := 0 // readings that were said to be saved
	for n := range 20 {
		v := open(t, ctx, address, phone)
		if n == 0 {
			v.begins()
		} else {
			v.touch("Go on with")
		}
		v.until("the drop", `!!document.getElementById('line')`)
		if got := v.readings(); got < sure || got > sure+1 {
			t.Fatalf("crash %d: %d readings of %d that were said to be saved", n, got, sure)
		}
		sure = v.readings()
		v.line(fmt.Sprintf("%d %s", n+1, lake(float64(n+1), true)))
		if n%2 == 0 {
			sure++
			v.until("a reading is saved", fmt.Sprintf(`document.querySelectorAll('.column li').length === %d`, sure))
		}
		v.crash()
	}
	if sure < 10 {
		t.Errorf("only %d readings were taken", sure)
	}
}

// Of two pages at once only one takes a drop, and the other says so; what was read stays.
func TestTwoPages(t *testing.T) {
	address := pocket(t)
	ctx, _ := browser(t, t.TempDir())
	one := open(t, ctx, address, phone)
	one.begins()
	one.line("2 73")
	one.until("a reading is saved", `document.querySelectorAll('.column li').length === 1`)
	other := open(t, ctx, address, phone)
	other.touch("Go on with")
	other.shows("another window or tab")
	other.touch("New drop")
	other.shows("another window or tab")
	one.line("9 70")
	one.until("another is saved", `document.querySelectorAll('.column li').length === 2`)
	one.touch("Leave it for later")
	one.shows("New drop")
	other.touch("Go on with")
	other.until("both readings", `document.querySelectorAll('.column li').length === 2`)
	one.quiet()
	other.quiet()
}

// begins begins a drop in feet over 31 ft of water.
func (v *tab) begins() {
	v.t.Helper()
	v.touch("New drop")
	v.until("the first question", `['How deep', 'Which units'].some(function (w) { return document.querySelector('main').innerText.includes(w); })`)
	if strings.Contains(v.text(), "Which units") {
		v.touch("Feet and Fahrenheit")
	}
	v.shows("How deep")
	v.types("31")
	v.key(kb.Enter)
	v.until("a depth", `!!document.querySelector('h1.depth')`)
}

// line types a line into the field for anything else, and sends it.
func (v *tab) line(text string) {
	v.t.Helper()
	v.until("the field for a line", `!!document.getElementById('line')`)
	v.touchAt(`document.getElementById('line')`)
	v.until("the focus", `document.activeElement.id === 'line'`)
	v.types(text)
	v.touch("Note it")
}

func (v *tab) readings() int { return value[int](v, `document.querySelectorAll('.column li').length`) }

// crash has the process behind the page crash, and waits for it.
func (v *tab) crash() {
	v.t.Helper()
	gone := make(chan bool, 1)
	if err := chromedp.Listen(v.ctx, func(e any) {
		if _, ok := e.(*inspector.EventTargetCrashed); ok {
			gone <- true
		}
	}); err != nil {
		v.t.Fatal(err)
	}
	go chromedp.Call(v.ctx, browserpage.Crash, struct{}{}) // it never answers
	select {
	case <-gone:
	case <-v.ctx.Done():
		v.t.Fatal("the page does not crash")
	}
}
