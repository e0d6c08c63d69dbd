package chart

import (
	"strings"
	"testing"

	"coldseam/profile/demo"
)

// A sketch fits the terminal, names every number of the scene in full, and has the fly in the
// row of its depth, over the bottom's.
func TestSketch(t *testing.T) {
	for _, page := range []string{"alder-kettle-july", "alder-kettle-october", "alder-kettle-january", "marl-hole-july", "long-scar-july", "thimble-flat-june", "sedge-mere-august"} {
		d := Of(demo.Plan(t, demo.Page(t, page)))
		for _, size := range [][2]int{{40, 24}, {60, 24}, {64, 24}, {80, 24}, {80, 40}, {100, 40}} {
			got := Sketch(d, size[0], size[1])
			lines := strings.Split(strings.TrimRight(got, "\n"), "\n")
			if len(lines) > size[1] {
				t.Errorf("%s: %d lines of %d:\n%s", page, len(lines), size[1], got)
			}
			for _, l := range lines {
				if len(l) > size[0] {
					t.Errorf("%s: %d columns of %d: %s", page, len(l), size[0], l)
				}
			}
			for _, n := range d.SceneNames() {
				if !strings.Contains(strings.Join(strings.Fields(got), " "), n.What+" "+n.Value) {
					t.Errorf("%s: no %s %s in\n%s", page, n.What, n.Value, got)
				}
			}
			u, found := d.Units.Shown(), false
			for _, l := range lines {
				if f := strings.Fields(l); strings.Contains(l, "*") {
					found = f[0] == u.Mark(d.Scene.Fly().DepthM)
				}
			}
			if !found {
				t.Errorf("%s: no fly at %s in\n%s", page, u.Mark(d.Scene.Fly().DepthM), got)
			}
		}
	}
	for _, page := range []string{"duck-puddle-august"} { // no answer
		if got := Sketch(Of(demo.Plan(t, demo.Page(t, page))), 80, 24); got != "" {
			t.Errorf("%s: a sketch\n%s", page, got)
		}
	}
}
