package page

import (
	"os"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"coldseam/profile/expect"
)

// No page has what axe-core calls a fault for those who hear a page, use no mouse or see
// few contrasts, by day or by night. COLDSEAM_AXE names its script, which is not kept here;
// .ci/run fetches it.
func TestAxe(t *testing.T) {
	ctx, script := browser(t)
	file := os.Getenv("COLDSEAM_AXE")
	if file == "" {
		expect.Missing(t, "COLDSEAM_AXE names no script of axe-core: see .ci/run")
	}
	axe, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	o := Options{Script: script, Still: stillSVG, Scene: stillSVG, Narrow: stillSVG}
	one := written(t, o, lake(t, "alder-kettle-july"))
	for _, c := range []struct {
		name, html, scheme string
		screen             screen
	}{
		{"one drop", one, "light", desk},
		{"one drop", one, "dark", phone},
		{"no water", written(t, o, lake(t, "duck-puddle-august")), "light", phone},
		{"three drops", written(t, o, three(t)...), "dark", desk},
		{"season", seasonPage(t, seasonOf(t, "Alder Kettle")), "light", phone},
		// what the looking is worth: an image without words, faint text, no language
		{"faulty", `<!DOCTYPE html><title>x</title><img src="data:,"><p style="color: #999">faint</p>`, "light", phone},
	} {
		v := open(t, ctx, c.html, c.screen)
		scheme := emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: c.scheme}}}
		if _, err := chromedp.Call(v.ctx, emulation.SetEmulatedMedia, scheme); err != nil {
			t.Fatal(err)
		}
		if !value[bool](v, string(axe)+`; window.axe.run(document, { resultTypes: ['violations'] }).then(function (r) {
			window.found = r.violations.map(function (f) { return f.impact + ': ' + f.help + ': ' + f.nodes[0].html.slice(0, 200); });
		}); true`) {
			t.Fatal("axe-core does not run")
		}
		v.until("the findings", `!!window.found`)
		found := value[[]string](v, `window.found`)
		if c.name == "faulty" {
			if len(found) < 3 {
				t.Errorf("a faulty page: only %q", found)
			}
			continue
		}
		for _, f := range found {
			t.Errorf("%s, %s, %s: %s", c.name, c.screen.name, c.scheme, f)
		}
	}
}
