package page

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"coldseam/chart"
	"coldseam/chart/static"
	"coldseam/profile/expect"
)

// A page in a browser without a network: the picture is drawn, readings answer to a
// finger and a mouse, nothing is asked from elsewhere, nothing complains, nothing has
// to be scrolled sideways. COLDSEAM_FULL=1 looks at everything on both screens.
func TestInBrowser(t *testing.T) {
	ctx, script := browser(t)
	full := expect.Full()
	one, more := lake(t, "alder-kettle-july"), three(t)
	with, without := Options{Script: script, Still: stillSVG, Scene: stillSVG}, Options{Still: stillSVG}
	for _, s := range []screen{phone, small, desk} {
		if s != phone && !full {
			break // the hostile names are looked at on a desk
		}
		t.Run("one drop, "+s.name, func(t *testing.T) {
			v := open(t, ctx, written(t, with, one), s)
			v.drawn(one, true)
			v.answersTo(one, 5, s.finger)
			v.fits(s.width)
			v.quiet()
		})
		t.Run("three drops, "+s.name, func(t *testing.T) {
			v := open(t, ctx, written(t, with, more...), s)
			v.drawn(more[2], false)
			v.fits(s.width)
			v.quiet()
		})
		t.Run("no script, "+s.name, func(t *testing.T) {
			v := open(t, ctx, written(t, without, one), s)
			v.still()
			v.fits(s.width)
			v.quiet()
		})
	}
	t.Run("hostile names", func(t *testing.T) {
		d := hostile(t)
		v := open(t, ctx, written(t, with, d), desk)
		v.drawn(d, true)
		v.answersTo(d, 2, false)
		v.densitySwitched()
		if n := value[int](v, `document.querySelectorAll('img').length`); n != 2 {
			t.Errorf("%d images, want the drawing to scale and the still picture alone", n)
		}
		v.quiet()
	})
	t.Run("what the counting is worth", func(t *testing.T) {
		html := `<!DOCTYPE html><title>x</title><img src="http://elsewhere.invalid/x.png"><script>console.error('x'); nothing.at.all</script>`
		v := open(t, ctx, html, phone)
		if len(v.away()) != 1 || len(v.wrong()) < 2 {
			t.Errorf("heard %q and %q", v.away(), v.wrong())
		}
	})
	for i, c := range [][2]string{
		{"throws", `throw new Error('broken')`},
		{"throws in a wait", `window.echarts = {init: function () { setTimeout(function () { throw new Error('broken'); }, 0);
			return {setOption: function () {}}; }}`},
		{"is empty", ` `},
		{"cannot begin", `window.echarts = {init: function () { throw new Error('broken'); }}`},
		{"cannot draw", `window.echarts = {init: function () { return {setOption: function () { throw new Error('broken'); }}; }}`},
	} {
		if i > 1 && !full {
			break
		}
		t.Run("a script that "+c[0], func(t *testing.T) {
			v := open(t, ctx, written(t, Options{Script: []byte(c[1]), Still: stillSVG}, one), phone)
			v.until("the still picture", `!document.documentElement.classList.contains('drawn')`)
			v.still()
			if away := v.away(); len(away) > 0 {
				t.Errorf("asked for %q", away)
			}
		})
	}
	if !full {
		return
	}
	t.Run("half a sheet", func(t *testing.T) {
		v := open(t, ctx, written(t, with, one), desk)
		pdf, err := chromedp.Run(v.ctx, chromedp.PrintToPDF(chromedp.PDFPaper(chromedp.PaperA5), chromedp.PDFPreferCSSPageSize()))
		if err != nil {
			t.Fatal(err)
		}
		if n := len(regexp.MustCompile(`/Type\s*/Page\b`).FindAll(pdf, -1)); n != 1 {
			t.Errorf("%d half sheets, want 1", n)
		}
	})
}

// On a phone the first screen holds the numbers and the whole drawing to scale, on a desk
// both stand side by side.
func TestFirstScreen(t *testing.T) {
	ctx, script := browser(t)
	d := lake(t, "alder-kettle-july")
	var wide, narrow bytes.Buffer
	if err := errors.Join(static.Scene(&wide, static.SVG, static.DeskScene, d), static.Scene(&narrow, static.SVG, static.PhoneScene, d)); err != nil {
		t.Fatal(err)
	}
	page := written(t, Options{Script: script, Still: stillSVG, Scene: wide.Bytes(), Narrow: narrow.Bytes()}, d)
	for _, s := range []screen{phone, desk} {
		v := open(t, ctx, page, s)
		v.until("the drawing", `document.querySelector('.scene img').complete && document.querySelector('.scene img').naturalWidth > 0`)
		ends := value[[]float64](v, `['.numbers', '.scene img'].map(function (q) { return document.querySelector(q).getBoundingClientRect().bottom; })`)
		if ends[0] > float64(s.height) || ends[1] > float64(s.height) {
			t.Errorf("%s: the numbers end at %.0f, the drawing at %.0f of %d px", s.name, ends[0], ends[1], s.height)
		}
		if s == phone && ends[0] > ends[1] {
			t.Errorf("the drawing, to %.0f px, stands before the numbers, to %.0f", ends[1], ends[0])
		}
		v.fits(s.width)
		v.quiet()
	}
}

// On paper every part of a comparison is open, whether there is a script or not.
func TestPrintedOpen(t *testing.T) {
	ctx, _ := browser(t)
	v := open(t, ctx, written(t, Options{Still: stillSVG}, three(t)...), desk)
	tall := `[].map.call(document.querySelectorAll('details table'), function (e) { return e.checkVisibility() && e.getBoundingClientRect().height > 20; })`
	if got := value[[]bool](v, tall); !slices.Equal(got, []bool{false, false, true}) {
		t.Errorf("on the screen: %v", got)
	}
	if _, err := chromedp.Call(v.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"}); err != nil {
		t.Fatal(err)
	}
	if got := value[[]bool](v, tall); !slices.Equal(got, []bool{true, true, true}) {
		t.Errorf("on paper: %v", got)
	}
}

// quiet fails the test for whatever went wrong and whatever was asked from elsewhere.
func (v *visit) quiet() {
	v.t.Helper()
	if away := v.away(); len(away) > 0 {
		v.t.Errorf("asked for %q", away)
	}
	if wrong := v.wrong(); len(wrong) > 0 {
		v.t.Errorf("heard %q", wrong)
	}
}

// at gives where a reading stands on the picture, px from its corner.
func (v *visit) at(d chart.Drop, i int) (x, y float64) {
	v.t.Helper()
	u := d.Units.Shown()
	r := d.Readings[i]
	p := value[[]float64](v, fmt.Sprintf(`%s.convertToPixel({xAxisIndex: 0, yAxisIndex: 0}, [%v, %v])`, chartOf, u.Temp.FromC(r.TempC), u.Depth.From(r.DepthM)))
	return p[0], p[1]
}

// drawn checks that the picture shows, and the still one does not, and that every
// reading of the drop is inked where it belongs, and the names where they are.
func (v *visit) drawn(d chart.Drop, names bool) {
	v.t.Helper()
	v.until("the picture", `document.querySelector('#picture canvas') && document.querySelector('#picture canvas').clientWidth > 200`)
	if value[bool](v, seen+`(document.querySelector('.still'))`) {
		v.t.Error("the still picture shows beside the moving one")
	}
	if !value[bool](v, seen+`(document.querySelector('.live'))`) {
		v.t.Error("the picture does not show")
	}
	var points []string
	for i := range d.Readings {
		x, y := v.at(d, i)
		points = append(points, fmt.Sprintf("[%v, %v]", x, y))
	}
	v.until("the readings", fmt.Sprintf(`%s(0x14, 0x1e, 0x28, [%s], 8, 20)`, inked, strings.Join(points, ", ")))
	if names { // there is text in the column at the right
		v.until("names", fmt.Sprintf(`%s(0x14, 0x1e, 0x28, [[document.querySelector('#picture canvas').clientWidth - 85, 300]], 35, 100)`, inked))
	}
}

// answersTo touches a reading, or points at it, and waits for its numbers.
func (v *visit) answersTo(d chart.Drop, i int, finger bool) {
	v.t.Helper()
	x, y := v.at(d, i)
	corner := value[[]float64](v, `(function () { var e = document.getElementById('picture'); e.scrollIntoView();
		var r = e.getBoundingClientRect(); return [r.left, r.top]; })()`)
	touch := chromedp.MouseEvent("mouseMoved", corner[0]+x, corner[1]+y)
	if finger {
		touch = chromedp.TapXY(corner[0]+x, corner[1]+y)
	}
	if err := chromedp.Do(v.ctx, touch); err != nil {
		v.t.Fatal(err)
	}
	v.until("the words under the finger", seen+`(document.querySelector('.tip'))`)
	got := value[string](v, `document.querySelector('.tip') ? document.querySelector('.tip').innerText : ''`)
	for _, want := range words(d.Units.Shown(), d.Readings[i]) {
		if !strings.Contains(got, want) {
			v.t.Errorf("under the finger stands %q, want %q too", got, want)
		}
	}
	box := value[[]float64](v, `(function (p, t) { return [t.left - p.left, p.right - t.right, t.top - p.top, p.bottom - t.bottom]; })(
		document.getElementById('picture').getBoundingClientRect(), document.querySelector('.tip').parentElement.getBoundingClientRect())`)
	if slices.Min(box) < -0.5 { // the library counts in whole pixels
		v.t.Errorf("the words under the finger leave the picture: room left, right, above and below %v px", box)
	}
}

// fits checks that nothing is to be scrolled sideways and all text is large.
func (v *visit) fits(width int64) {
	v.t.Helper()
	if got := value[int64](v, `Math.max(document.documentElement.scrollWidth, document.body.scrollWidth, window.innerWidth)`); got > width {
		v.t.Errorf("the page is %d wide on a screen of %d", got, width)
	}
	if got := value[float64](v, smallest); got < textPx {
		v.t.Errorf("text of %v px", got)
	}
}

// still checks that the still picture shows and the moving one does not.
func (v *visit) still() {
	v.t.Helper()
	v.until("the still picture", `(function (e) { return `+seen+`(e) && e.naturalWidth > 0; })(document.querySelector('img.still'))`)
	if value[bool](v, seen+`(document.querySelector('.live'))`) {
		v.t.Error("the moving picture's place shows too")
	}
}

// densitySwitched switches the rise of density on: its axis comes with it.
func (v *visit) densitySwitched() {
	v.t.Helper()
	shown := chartOf + `.getOption().xAxis[2].show`
	if value[bool](v, shown) {
		v.t.Error("the axis of the density shows at first")
	}
	before := value[int](v, `document.querySelectorAll('[aria-pressed=false]').length`)
	if err := chromedp.Do(v.ctx, chromedp.Click(chromedp.CSS(`[data-key=density]`))); err != nil {
		v.t.Fatal(err)
	}
	v.until("the axis of the density", shown)
	if after := value[int](v, `document.querySelectorAll('[aria-pressed=false]').length`); before != 1 || after != 0 {
		v.t.Errorf("%d switched off, then %d", before, after)
	}
}
