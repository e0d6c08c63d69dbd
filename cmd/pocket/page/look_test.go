package page_test

import (
	"maps"
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"coldseam/profile/expect"
)

// What is to be read has a contrast of 7 to 1 to what it stands on, and the borders of what
// can be touched one of 3 to 1, by day and by night (WCAG 2.2, 1.4.6 and 1.4.11).
func TestContrast(t *testing.T) {
	day, night, _ := strings.Cut(read(t, "page.css"), "(prefers-color-scheme: dark)")
	light := colours(day)
	dark := maps.Clone(light)
	night, _, _ = strings.Cut(night, "* {")
	maps.Copy(dark, colours(night))
	for name, c := range map[string]map[string]string{"day": light, "night": dark} {
		for _, pair := range []struct {
			ink, paper string
			least      float64
		}{
			{"ink", "paper", 7}, {"ink", "soft", 7}, {"quiet", "paper", 7}, {"quiet", "soft", 7}, {"accent", "paper", 7},
			{"on-accent", "accent", 7}, {"warn", "warn-paper", 7}, {"line", "paper", 3}, {"line", "soft", 3}, {"accent", "soft", 3},
		} {
			if got := contrast(t, c[pair.ink], c[pair.paper]); got < pair.least {
				t.Errorf("%s: %s on %s has %.2f to 1, want %g", name, pair.ink, pair.paper, got, pair.least)
			}
		}
	}
	if light["paper"] == dark["paper"] || len(light) < 9 {
		t.Errorf("day and night: %v, %v", light, dark)
	}
	if got := contrast(t, "#767676", "#ffffff"); math.Abs(got-4.54) > 0.01 { // WCAG's own example of a grey that is just enough
		t.Errorf("the grey #767676 on white: %.2f", got)
	}
	if left := regexp.MustCompile(`#[0-9a-f]{3,8}\b`).FindAllString(regexp.MustCompile(`--[a-z-]+: #[0-9a-f]{6}`).ReplaceAllString(read(t, "page.css"), ""), -1); left != nil {
		t.Errorf("colours without a name: %q", left)
	}
}

// colours are the variables of a style sheet that are colours.
func colours(css string) map[string]string {
	out := map[string]string{}
	for _, m := range regexp.MustCompile(`--([a-z-]+): (#[0-9a-f]{6})`).FindAllStringSubmatch(css, -1) {
		out[m[1]] = m[2]
	}
	return out
}

// contrast of two colours by WCAG 2.2, "contrast ratio" and "relative luminance".
func contrast(t *testing.T, a, b string) float64 {
	light := func(colour string) float64 {
		n, err := strconv.ParseUint(strings.TrimPrefix(colour, "#"), 16, 32)
		if err != nil {
			t.Fatalf("%q is no colour", colour)
		}
		part := func(shift uint) float64 {
			v := float64(n>>shift&255) / 255
			if v <= 0.04045 {
				return v / 12.92
			}
			return math.Pow((v+0.055)/1.055, 2.4)
		}
		return 0.2126*part(16) + 0.7152*part(8) + 0.0722*part(0)
	}
	la, lb := light(a), light(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

// Every kind of screen, on every size of screen: nothing is wider than the screen, also with
// text twice as large; what can be touched is at least 48 px high and wide, and nothing
// overlaps it; what is asked, its field and its button can be seen above an open keyboard;
// nothing moves but where the screen is another.
func TestLooks(t *testing.T) {
	ctx := browser(t)
	all := looks(t)
	v := open(t, ctx, shell(t, all["home"], 0), phone)
	v.do(`window.shifts = []; new PerformanceObserver((list) => { for (const e of list.getEntries()) shifts.push(e.value); }).observe({ type: "layout-shift", buffered: true })`)
	v.settled()
	v.still("the start")
	for _, s := range []screen{phone, small, keys, desk} {
		if err := chromedp.Do(v.ctx, s.size()); err != nil {
			t.Fatal(err)
		}
		for _, name := range slices.Sorted(maps.Keys(all)) {
			v.shows(all[name], `turn: true`)
			where := name + ", " + s.name
			v.fits(where)
			v.targets(where)
			if name == "taking" && s == keys {
				v.is("above the keyboard", `["#depth", "#value", "#reading .go"].map((q) => main.querySelector(q).getBoundingClientRect().bottom <= innerHeight)`, `[true,true,true]`)
			}
			if name == "doubt" && s == keys {
				v.do(`scrollTo(0, 60)`)
				v.shows(all[name]+"<p>.</p>", `focus: "value"`)
				v.is("the question above the keyboard", `[scrollY, main.querySelector("form").getBoundingClientRect().bottom <= innerHeight]`, `[0,true]`)
			}
			if name == "doubt" && s == small {
				v.is("what is remarked stands beside the reading", `main.querySelector(".remark").getBoundingClientRect().bottom < main.querySelector(".value").getBoundingClientRect().bottom`, `true`)
			}
			v.do(`document.documentElement.style.fontSize = "200%"`)
			if name == "answer" && s == small {
				v.is("pictures grow with the text", `main.querySelector("svg").getBoundingClientRect().width`, `640`)
			}
			v.fits(where + ", text twice as large")
			v.do(`document.documentElement.style.fontSize = ""`)
		}
	}
	v.shows(all["taking"], `turn: true`)
	v.do(`await new Promise((go) => requestAnimationFrame(() => requestAnimationFrame(go))); shifts.length = 0`)
	v.shows(strings.NewReplacer("17.5", "12.5", "this reading says where", "it says where").Replace(all["taking"]), `say: "61.2 F at 17.5 ft noted"`)
	v.do(`send({ do: "slow", value: "700", fields: {} })`)
	v.settled()
	v.still("the next reading")
	v.do(`document.querySelector(".depth").style.marginTop = "50px"`)
	v.until("what the looking is worth: a shift is seen", `shifts.length > 0`)
	if err := chromedp.Do(v.ctx, small.size()); err != nil {
		t.Fatal(err)
	}
	v.shows(all["timer"], `turn: true`)
	v.do(`await new Promise((go) => requestAnimationFrame(() => requestAnimationFrame(go))); shifts.length = 0`)
	v.touch("#sink")
	v.do(`const now = Date.now(); Date.now = () => now + 120000; await new Promise((go) => setTimeout(go, 300))`)
	v.is("the digits", `main.querySelector(".clock").textContent.length`, `3`)
	v.fits("three digits of the timer")
	v.is("the digits stand in a line", `main.querySelector(".clock").getClientRects()[0].height < 1.5 * parseFloat(getComputedStyle(main.querySelector(".clock")).fontSize)`, `true`)
	v.still("the timer")
	v.do(`document.documentElement.style.fontSize = "200%"`)
	v.fits("three digits of the timer, text twice as large")
	v.do(`document.documentElement.style.fontSize = ""`)
	v.prefers("prefers-reduced-motion", "reduce")
	v.is("reduced motion", `getComputedStyle(byId("busy")).animationName`, `"none"`)
	v.prefers("prefers-reduced-motion", "no-preference")
	v.is("motion", `getComputedStyle(byId("busy")).animationName`, `"appear"`)
}

// still: nothing has moved by itself.
func (v *tab) still(what string) {
	v.Helper()
	v.do(`await new Promise((go) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(go, 50))))`)
	if sum := value[float64](v, `shifts.reduce((a, b) => a + b, 0)`); sum != 0 {
		v.Errorf("%s: what is read moves by %g", what, sum)
	}
}

// fits: nothing is wider than the screen.
func (v *tab) fits(what string) {
	v.Helper()
	if got := value[[]string](v, `[...document.body.querySelectorAll("*")].filter((e) => e.getClientRects().length && !e.closest("figure > svg") && (e.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5 || e.getBoundingClientRect().left < -0.5) || e.matches("button, label, p, span") && e.scrollWidth > e.clientWidth + 1 && e.clientWidth).map((e) => e.outerHTML.slice(0, 100))`); len(got) > 0 {
		v.Errorf("%s: wider than it may be: %q", what, got)
	}
}

// targets: what is touched is large enough, and a touch in its middle reaches it.
func (v *tab) targets(what string) {
	v.Helper()
	got := value[[]string](v, `[...main.querySelectorAll("button, input, select, textarea, summary")].filter((e) => e.getClientRects().length).map((e) => e.closest("label") ?? e).filter((e) => {
		e.scrollIntoView({ block: "center" });
		const r = e.getBoundingClientRect(), there = document.elementFromPoint(r.x + r.width / 2, r.y + r.height / 2);
		return r.width < 48 || r.height < 48 || !(e.disabled || e.contains(there));
	}).map((e) => e.outerHTML.slice(0, 100) + JSON.stringify(e.getBoundingClientRect()))`)
	if len(got) > 0 {
		v.Errorf("%s: too small, or covered: %q", what, got)
	}
}

// No screen has what axe-core calls a fault for those who hear a page, use no mouse or see
// few contrasts, by day or by night. COLDSEAM_AXE names its script, which is not kept here;
// .ci/run fetches it.
func TestAxe(t *testing.T) {
	file := os.Getenv("COLDSEAM_AXE")
	if file == "" {
		expect.Missing(t, "COLDSEAM_AXE names no script of axe-core: see .ci/run")
	}
	axe := read(t, file)
	ctx := browser(t)
	all := looks(t)
	all["faulty"] = `<h1>Faulty</h1><input><button></button><ul><p>no item</p></ul>` // what the looking is worth
	v := open(t, ctx, shell(t, all["home"], 0), phone)
	if !value[bool](v, axe+`; true`) {
		t.Fatal("axe-core does not run")
	}
	for _, scheme := range []string{"light", "dark"} {
		v.prefers("prefers-color-scheme", scheme)
		for _, name := range slices.Sorted(maps.Keys(all)) {
			v.shows(all[name], `turn: true, say: "noted"`)
			found := value[[]string](v, `window.axe.run(document, { resultTypes: ["violations"] }).then((r) => r.violations.map((f) => f.impact + ": " + f.help + ": " + f.nodes[0].html.slice(0, 200)))`)
			if name == "faulty" {
				if len(found) < 3 {
					t.Errorf("a faulty screen: only %q", found)
				}
				continue
			}
			for _, f := range found {
				t.Errorf("%s, %s: %s", name, scheme, f)
			}
		}
	}
	v.do(`fail("ended")`)
	if found := value[int](v, `window.axe.run(byId("trouble")).then((r) => r.violations.length)`); found > 0 {
		t.Errorf("%d faults where the program has ended", found)
	}
}
