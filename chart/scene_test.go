package chart

import (
	"math"
	"strings"
	"testing"

	"coldseam/profile/demo"
	"coldseam/profile/report"
	"coldseam/profile/rig"
)

// The numbers of a scene are those of the answer, its fly hangs at the depth advised and not
// under the bottom, and all of it is inside the drawing.
func TestScene(t *testing.T) {
	for _, page := range []string{
		"alder-kettle-july", "alder-kettle-october", "alder-kettle-january", "marl-hole-july", "long-scar-july", "thimble-flat-june", "sedge-mere-august", "duck-puddle-august",
	} {
		p := demo.Plan(t, demo.Page(t, page))
		d := Of(p)
		if p.Rig == nil {
			if d.Scene != nil || d.SceneNames() != nil {
				t.Errorf("%s: a scene without an answer", page)
			}
			continue
		}
		s := d.Scene
		if s.Ice != (p.Rig.Kind == rig.Jig) {
			t.Errorf("%s: on ice %v, rig %s", page, s.Ice, p.Rig.Kind)
		}
		if got := s.Fly().DepthM; p.Rig.Reachable && math.Abs(got-p.FlyM()) > 0.02*p.FlyM() || s.Bottom && got > s.BottomM+1e-6 {
			t.Errorf("%s: the fly is drawn at %v m, advised is %v over %v", page, got, p.FlyM(), s.BottomM)
		}
		for _, at := range append(s.Line, s.Leader...) {
			if at.XM < 0 || at.XM > s.WideM || at.DepthM < -s.HighM || at.DepthM > s.DepthM+1e-6 {
				t.Errorf("%s: %+v is outside of %+v", page, at, s)
			}
		}
		rows := map[string]report.Row{}
		for _, r := range d.Brief.Rows {
			rows[r.Label] = r
		}
		for _, n := range d.SceneNames() {
			want := map[string]string{"leader": rows["Leader"].Value, "fly": rows["Fly"].Value, "thermocline": rows["Thermocline"].Value,
				"band": rows["Fish"].Value, "cast over": rows["Cast over"].Value, "anchor over": rows["Anchor over"].Value, "hole over": rows["Hole over"].Value}[n.What]
			if !strings.Contains(want, n.Value) && n.What != "bottom" {
				t.Errorf("%s: %s %q in the scene, %q in the answer", page, n.What, n.Value, want)
			}
		}
	}
}
