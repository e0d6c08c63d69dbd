package main

import (
	"context"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"coldseam/profile/notebook"
	"coldseam/profile/plan"
	"coldseam/profile/report"
	"coldseam/profile/settings"
)

// The whole job with the one file and no network: an empty book, a drop, its answer, the
// sink timer, a catch, and the page carried out, which a terminal reads to the same answer.
func TestWholeJob(t *testing.T) {
	address := pocket(t)
	ctx, _ := browser(t, t.TempDir())
	for _, c := range []struct {
		screen screen
		units  string
		do     func(v *tab, words string) // a finger, or keys
		enter  func(v *tab)
	}{
		{phone, "Feet and Fahrenheit", (*tab).touch, func(v *tab) { v.touch("Save") }},
		{small, "Metres and Celsius", (*tab).touch, func(v *tab) { v.touch("Save") }},
		{desk, "Feet and Fahrenheit", (*tab).press, func(v *tab) { v.key(kb.Enter) }},
	} {
		t.Run(c.screen.name, func(t *testing.T) {
			v := open(t, apart(t, ctx), address, c.screen)
			c.do(v, "New drop")
			c.do(v, c.units)
			v.shows("How deep is the water")
			feet := strings.HasPrefix(c.units, "Feet")
			v.types(map[bool]string{true: "31", false: "9,4"}[feet])
			v.key(kb.Enter)
			v.takes(feet, c.enter, c.do)
			c.do(v, "Show the answer")
			v.shows("Confidence")
			answer := v.rows()
			v.fits(c.screen.width)

			c.do(v, "Sink timer")
			c.do(v, "0")
			v.until("the timer runs", `parseInt(document.querySelector('.timer').innerText.match(/\d+/)[0]) >= 6`)
			v.until("the button is there", `!!document.getElementById('touched')`)
			c.do(v, "Touched bottom now")
			v.shows("Undo")
			c.do(v, "Undo")
			v.until("it is taken back", `!document.querySelector('main').innerText.includes('Undo')`)
			c.do(v, "Back")
			v.shows("Confidence")

			c.do(v, "Caught one")
			v.shows("in words of your own")
			c.do(v, "Rainbow trout")
			v.shows("Undo")

			c.do(v, "Book")
			c.do(v, "Copy or send")
			v.until("the page", `!!document.querySelector('main pre')`)
			carried := value[string](v, `document.querySelector('main pre').textContent`)
			made := planned(t, carried)
			if n := len(made.Drop.Readings); n < 8 {
				t.Errorf("%d readings were carried out:\n%s", n, carried)
			}
			if len(made.Drop.Catches) != 1 || made.Drop.Catches[0].Fish != "rainbow" {
				t.Errorf("the catch is not on the page:\n%s", carried)
			}
			for _, r := range report.Short(made, nil).Rows {
				if answer[r.Label] != r.Value {
					t.Errorf("the page says %s %q, a terminal %q", r.Label, answer[r.Label], r.Value)
				}
			}
			v.quiet()
		})
	}
}

// apart is for tabs that share nothing with those opened before.
func apart(t testing.TB, ctx context.Context) context.Context {
	t.Helper()
	ctx, stop := chromedp.NewContext(ctx, chromedp.WithNewBrowserContext())
	t.Cleanup(stop)
	if err := chromedp.Do(ctx); err != nil {
		t.Fatal(err)
	}
	return ctx
}

// takes takes the readings that are asked for, in an invented lake, until it is enough.
func (v *tab) takes(feet bool, enter func(v *tab), do func(v *tab, words string)) {
	v.t.Helper()
	read := map[float64]bool{-1: true} // -1: no depth is asked for
	for n := 0; n < 20; n++ {
		v.until("what to read next", fmt.Sprintf(`document.querySelectorAll('.column li').length === %d && (!!document.querySelector('h1.depth') || document.querySelector('main').innerText.includes('Enough is read'))`, n))
		if value[bool](v, `document.querySelector('main').innerText.includes('Enough is read')`) && n >= 8 {
			return
		}
		depth := v.asked()
		for read[depth] { // it is enough, but this test wants eight
			do(v, "Below")
			v.until("another depth", fmt.Sprintf(`!!document.querySelector('h1.depth') && parseFloat(document.querySelector('h1.depth').innerText) !== %v`, depth))
			depth = v.asked()
		}
		read[depth] = true
		v.until("the field", `document.activeElement.id === 'temp'`)
		v.types(lake(depth, feet))
		enter(v)
	}
	v.t.Error("it is never enough")
}

// asked is the depth that is asked for, -1 where none is.
func (v *tab) asked() float64 {
	v.t.Helper()
	text := value[string](v, `(document.querySelector('h1.depth') || {innerText: '-1'}).innerText`)
	depth, err := strconv.ParseFloat(strings.Fields(text)[0], 64)
	if err != nil {
		v.t.Fatal(err)
	}
	return depth
}

// lake is the temperature of an invented lake at a depth, as a thermometer shows it.
func lake(depth float64, feet bool) string {
	m := depth
	if feet {
		m *= 0.3048
	}
	c := 7 + 16/(1+math.Exp((m-5)/0.7))
	if feet {
		return strconv.FormatFloat(32+1.8*c, 'f', 1, 64)
	}
	return strings.Replace(strconv.FormatFloat(c, 'f', 1, 64), ".", ",", 1)
}

// rows are the numbers of the answer on the screen.
func (v *tab) rows() map[string]string {
	return value[map[string]string](v, `Object.fromEntries([].map.call(document.querySelectorAll('.rows > div'), function (d) {
	return [d.querySelector('.label').innerText, d.querySelector('.value').innerText];
}))`)
}

// fits reports what is wider than the screen.
func (v *tab) fits(width int64) {
	v.t.Helper()
	if n := value[int64](v, `document.documentElement.scrollWidth`); n > width {
		v.t.Errorf("the page is %d px wide on a screen of %d", n, width)
	}
}

// planned is the plan of a page as a terminal without settings makes it.
func planned(t *testing.T, text string) plan.Plan {
	t.Helper()
	sheets, err := notebook.Read([]byte(text), notebook.Options{Name: "page"})
	if err != nil || len(sheets) != 1 {
		t.Fatalf("%d drops, %v:\n%s", len(sheets), err, text)
	}
	in, err := settings.Default().Input(sheets[0].Drop)
	if err != nil {
		t.Fatal(err)
	}
	made, err := plan.Make(in)
	if err != nil {
		t.Fatal(err)
	}
	return made
}

// key presses a key.
func (v *tab) key(k string) {
	v.t.Helper()
	if err := chromedp.Do(v.ctx, chromedp.KeyEvent(k)); err != nil {
		v.t.Fatal(err)
	}
}

// press goes to the button with these words by Tab, and presses it.
func (v *tab) press(words string) {
	v.t.Helper()
	v.until("waiting for the button "+words, fmt.Sprintf(`!!%s(%q)`, button, words))
	for range 80 {
		if value[bool](v, fmt.Sprintf(`document.activeElement === %s(%q)`, button, words)) {
			v.key(kb.Enter)
			return
		}
		v.key(kb.Tab)
	}
	v.t.Fatalf("Tab does not lead to %q\nthe screen: %s", words, v.text())
}
