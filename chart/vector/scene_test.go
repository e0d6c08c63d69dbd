package vector

import (
	"math"
	"testing"

	"coldseam/chart"
	"coldseam/profile/demo"
)

// A metre is as long across as down, and the fly hangs where the plan has it: the leader's
// places in the picture against those of the scene.
func TestSceneToScale(t *testing.T) {
	seen := 0
	for _, p := range plans(t) {
		d := chart.Of(p.plan)
		if d.Scene == nil {
			if Scene(d) != "" {
				t.Errorf("%s: a picture without an answer", p.name)
			}
			continue
		}
		seen++
		shapes, _, _ := read(t, Scene(d))
		var lead, line []at
		for _, s := range of(shapes, "line") {
			if lead == nil && s.attr["stroke-width"] == "1.5" {
				lead = s.spots
			}
		}
		line = of(shapes, "flyline")[0].spots
		if len(lead) != len(d.Scene.Leader) || len(line) != len(d.Scene.Line) {
			t.Fatalf("%s: a leader of %d places, a line of %d", p.name, len(lead), len(line))
		}
		from, fly := d.Scene.Line[0], d.Scene.Fly()
		perM := (lead[len(lead)-1].y - line[0].y) / (fly.DepthM - from.DepthM)
		for i, q := range d.Scene.Leader {
			x, y := line[0].x+(q.XM-from.XM)*perM, line[0].y+(q.DepthM-from.DepthM)*perM
			if math.Abs(x-lead[i].x) > 0.3 || math.Abs(y-lead[i].y) > 0.3 {
				t.Errorf("%s: place %d of the leader is at %v, by the scale at %.1f, %.1f", p.name, i, lead[i], x, y)
			}
		}
		if d.Scene.Bottom {
			bed := of(shapes, "bed")[0].spots[0].y
			if want := line[0].y + (d.Scene.BottomM-from.DepthM)*perM; math.Abs(bed-want) > 0.3 {
				t.Errorf("%s: the bottom is at %v, by the scale at %v", p.name, bed, want)
			}
		}
	}
	if seen < 12 {
		t.Errorf("%d scenes", seen)
	}
}

// The numbers are those of the answer, all of them.
func TestSceneNumbers(t *testing.T) {
	for _, p := range plans(t) {
		d := chart.Of(p.plan)
		if d.Scene == nil {
			continue
		}
		shapes, _, _ := read(t, Scene(d))
		for _, n := range d.SceneNames() {
			if !shows(shapes, n.What+" "+n.Value) {
				t.Errorf("%s: %s %s is not in the picture", p.name, n.What, n.Value)
			}
		}
	}
}

// No name stands across the tackle, the thermocline, the bottom's line or what points from another
// name, and those that stand in the water stand in it.
func TestSceneNames(t *testing.T) {
	within := 0
	for _, p := range plans(t) {
		d := chart.Of(p.plan)
		if d.Scene == nil {
			continue
		}
		shapes, _, _ := read(t, Scene(d))
		for _, s := range shapes {
			if s.tag != "text" {
				continue
			}
			b := s.boxes(t)[0]
			for _, class := range []string{"line", "flyline", "pointer"} {
				for _, l := range of(shapes, class) {
					for _, run := range l.runs() {
						if (frame{b.x0 + 0.5, b.y0 + 1, b.x1 - 0.5, b.y1 - 1}).crossed(run) {
							t.Errorf("%s: %q stands across %v", p.name, s.text, run)
						}
					}
				}
			}
		}
		if s := layScene(d); s.inside {
			within++
			for i, n := range s.names {
				if bottom := d.Scene.Bottom && i == len(s.names)-1; n.at.y-lineGap/2 < s.surface || !bottom && n.at.y+lineGap/2 > s.depth.to {
					t.Errorf("%s: %s stands at %v, the water goes from %v to %v", p.name, n.what, n.at.y, s.surface, s.depth.to)
				}
			}
		}
	}
	if within < 5 {
		t.Errorf("%d scenes with their names in the water", within)
	}
}

// Names that would stand across the tackle, or across what points from another, are not let into
// the water.
func TestNamesAreClear(t *testing.T) {
	lay := func() (s *scene, leader, fly *name) {
		s = layScene(chart.Of(demo.Plan(t, demo.Page(t, "alder-kettle-july"))))
		for i := range s.names {
			switch s.names[i].what {
			case "leader":
				leader = &s.names[i]
			case "fly":
				fly = &s.names[i]
			}
		}
		return s, leader, fly
	}
	s, leader, _ := lay()
	if !s.inside || !s.isClear() {
		t.Fatal("no room in the water")
	}
	if leader.at.x += leader.to.x - leader.end() + 5; s.isClear() {
		t.Error("the leader's name stands across the leader")
	}
	s, leader, fly := lay()
	if fly.at = (at{leader.end() + 5, leader.to.y}); s.isClear() {
		t.Error("the fly's name stands across the pointer to the leader")
	}
}
