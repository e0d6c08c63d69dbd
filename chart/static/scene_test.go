package static

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"coldseam/chart"
	"coldseam/profile/demo"
)

// A scene alone is drawn for a desk and a phone, carries every name with its value, says the
// answer in its title, and is the same each time. A drop without an answer has none.
func TestScene(t *testing.T) {
	d := chart.Of(demo.Plan(t, demo.Page(t, "alder-kettle-july")))
	for _, size := range []Size{DeskScene, PhoneScene} {
		var a, b bytes.Buffer
		if err := Scene(&a, SVG, size, d); err != nil {
			t.Fatal(err)
		}
		if err := Scene(&b, SVG, size, d); err != nil || !bytes.Equal(a.Bytes(), b.Bytes()) {
			t.Errorf("drawn twice it differs, %v", err)
		}
		for _, n := range d.SceneNames() {
			if !strings.Contains(a.String(), ">"+n.Value+"<") || !strings.Contains(a.String(), ">"+n.What+"<") {
				t.Errorf("no %s %s", n.What, n.Value)
			}
		}
		if !strings.Contains(a.String(), "<title>To scale: Fish 15 to 29 ft; fly 16 ft down") {
			t.Errorf("no title that says the answer")
		}
	}
	var b bytes.Buffer
	if err := Scene(&b, SVG, PhoneScene, chart.Of(demo.Plan(t, demo.Page(t, "duck-puddle-august")))); err == nil || b.Len() > 0 {
		t.Errorf("a scene without an answer: %v", err)
	}
	if err := Scene(&b, SVG, Size{WidthPt: 300, HeightPt: 100, TextPt: 11, DPI: 96}, d); err == nil {
		t.Error("a scene too low for its names")
	}
}

// The first picture of a still is the scene, with its names in full; the readings follow with
// the fish's limits, the Secchi disk, the weed limit and the oxygen readings by their numbers.
func TestStillBegins(t *testing.T) {
	d := chart.Of(demo.Plan(t, demo.Page(t, "alder-kettle-july")))
	for _, s := range sizes {
		p, c := recorded(s.size)
		lay := layColumn(p, d)
		lay.draw(p)
		legible(t, s.name, p, c)
		if lay.scene.x1 <= lay.scene.x0 || lay.scene.y0 > lay.depth.from {
			t.Errorf("%s: the scene at %+v, the readings from %v", s.name, lay.scene, lay.depth.from)
		}
		all := ""
		for _, w := range texts(p, c) {
			all += w.text + " "
		}
		for _, want := range []string{"leader 21.5 ft", "Secchi disk 9 ft", "weed limit 13 ft", "66 F, the fish's limit", "5 mg/L, its limit of oxygen", " 6.2 "} {
			if !strings.Contains(all, want) {
				t.Errorf("%s: no %q in %s", s.name, want, all)
			}
		}
	}
}

// The lines of the limits stand where the scales have 66 F (18.9 C) and 5 mg/L.
func TestLimits(t *testing.T) {
	d := chart.Of(demo.Plan(t, demo.Page(t, "alder-kettle-july")))
	p, _ := recorded(Desk)
	c := layColumn(p, d)
	got := c.limits()
	if len(got) != 2 || got[0].x != c.temp.at(c.t(d.Limits.WarmC.Value)) || got[1].x != c.oxygen.at(5) {
		t.Errorf("%+v", got)
	}
	perch := chart.Of(demo.PlanFor(t, demo.Page(t, "alder-kettle-july"), "perch"))
	if !perch.Limits.ColdC.Known || d.Limits.ColdC.Known {
		t.Errorf("cold limits %+v of perch, %+v of trout, which no cold keeps away", perch.Limits.ColdC, d.Limits.ColdC)
	}
}

// No two drops of a comparison have colour and dash alike.
func TestPensDiffer(t *testing.T) {
	for i := range mostCompared {
		for k := range i {
			a, _ := penOf(i)
			b, _ := penOf(k)
			if a.color == b.color && slices.Equal(a.dash, b.dash) {
				t.Errorf("drops %d and %d", k, i)
			}
		}
	}
}
