package vector

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"coldseam/chart"
	"coldseam/profile"
	"coldseam/profile/demo"
)

// Every picture is well-formed, holds nothing that a strict page forbids, nothing outside of it
// and no text on another (read), says what it is, and is the same each time.
func TestPictures(t *testing.T) {
	for _, p := range plans(t) {
		all, again := pictures(p.plan), pictures(p.plan)
		if len(all) < 3 {
			t.Errorf("%s: %d pictures", p.name, len(all))
		}
		for i, svg := range all {
			shapes, wide, _ := read(named{t, p.name}, svg)
			if svg != again[i] {
				t.Errorf("%s: another picture the second time", p.name)
			}
			if wide != Wide || shapes[0].attr["role"] != "img" || shapes[1].tag != "title" || shapes[2].tag != "desc" ||
				shapes[0].attr["aria-labelledby"] != shapes[1].attr["id"]+" "+shapes[2].attr["id"] || shapes[1].text == "" || shapes[2].text == "" {
				t.Errorf("%s: %v", p.name, shapes[:3])
			}
		}
	}
}

// named puts the name of what is tested before each message.
type named struct {
	*testing.T
	name string
}

func (n named) Errorf(s string, a ...any) { n.Helper(); n.T.Errorf(n.name+": "+s, a...) }

// So are those of pages that were made up.
func TestAnyPage(t *testing.T) {
	made := 0
	for range 2 { // 200 pages
		rapid.Check(t, func(t *rapid.T) {
			page := madeUp(t)
			d := demo.Input(t, page, "rainbow").Drop
			for _, next := range []float64{math.NaN(), 0, 900} {
				if svg := Growing(d, next); svg != "" {
					read(t, svg)
				}
			}
			p, err := demo.Try(t, page, rapid.SampledFrom([]string{"rainbow", "lake trout", "perch", "largemouth bass"}).Draw(t, "fish"))
			if err != nil {
				return
			}
			made++
			for _, svg := range pictures(p) {
				read(t, svg)
			}
		})
	}
	if !testing.Short() && made < 100 { // a short run tries fewer pages
		t.Errorf("%d plans", made)
	}
}

// madeUp is a page that no lake wrote.
func madeUp(t *rapid.T) string {
	metric := rapid.Bool().Draw(t, "metric")
	units, unit, warm, cold := "ft F", "ft", 85.0, 32.0
	if metric {
		units, unit, warm, cold = "m C", "m", 30, 0
	}
	page := "water: <b>\"'&\nunits: " + units + "\n"
	scale := rapid.SampledFrom([]float64{3, 12, 40, 90}).Draw(t, "scale")
	for i, k := range []string{"bottom", "secchi"} {
		if rapid.Bool().Draw(t, k) {
			page += fmt.Sprintf("%s: %.1f %s\n", k, math.Max(1, scale*[]float64{1, 0.2}[i]*rapid.Float64Range(0.1, 3).Draw(t, k)), unit)
		}
	}
	page += rapid.SampledFrom([]string{"", "date: 2026-07-18\n", "date: 2027-01-20\n", "date: 2026-10-20 17:30\n"}).Draw(t, "date")
	sorted := rapid.Bool().Draw(t, "like a lake")
	top, z := rapid.Float64Range(cold, warm).Draw(t, "top"), 0.0
	for range rapid.IntRange(1, 14).Draw(t, "n") {
		temp := rapid.Float64Range(cold, warm).Draw(t, "t")
		if sorted {
			top -= rapid.Float64Range(-0.02, 0.4).Draw(t, "colder") * (top - cold)
			temp = top
		}
		page += fmt.Sprintf("%.1f %.1f", z, temp)
		if rapid.IntRange(0, 2).Draw(t, "oxygen") == 0 {
			page += fmt.Sprintf(" DO %.1f", rapid.Float64Range(0, 15).Draw(t, "mg"))
		}
		page += "\n"
		z += scale * rapid.Float64Range(0, 0.3).Draw(t, "deeper")
	}
	return page
}

// Names that others wrote are shown as text.
func TestHostile(t *testing.T) {
	p := demo.Plan(t, demo.Page(t, "alder-kettle-july"))
	const hostile = "</desc><script>alert(1)</script>\"'&\x1b[2J\u202e"
	p.Fish.Name = hostile
	d := chart.Of(p)
	d.Brief.NoWater = hostile
	for i := range d.Zones {
		d.Zones[i].Name = hostile
	}
	for i := range d.Marks {
		d.Marks[i].Name = hostile
	}
	for i := range d.Readings {
		d.Readings[i].Flag = strings.Repeat(hostile, 9)
	}
	for _, svg := range []string{Scene(d), Profile(d)} {
		read(t, svg)
		if strings.Contains(svg, "<script") || strings.Contains(svg, "\x1b") || strings.Contains(svg, "\u202e") || !strings.Contains(svg, "&lt;/desc&gt;") {
			t.Errorf("%s", svg)
		}
	}
}

// What there is nothing of is not drawn.
func TestNothing(t *testing.T) {
	if s := Scene(chart.Drop{}) + Profile(chart.Drop{}) + Growing(profile.Drop{}, 3); s != "" {
		t.Error(s)
	}
}
