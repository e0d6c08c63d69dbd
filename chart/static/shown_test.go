package static

import (
	"image/color"
	"math"
	"slices"
	"strings"
	"testing"

	"coldseam/chart"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/recorder"
)

// stroked is a line as it was drawn.
type stroked struct {
	color color.Color
	dash  []vg.Length
	path  vg.Path
}

// strokes are the lines drawn on a recorded page.
func strokes(c *recorder.Canvas) []stroked {
	var out []stroked
	var now stroked
	for _, a := range c.Actions {
		switch a := a.(type) {
		case *recorder.SetColor:
			now.color = a.Color
		case *recorder.SetLineDash:
			now.dash = a.Dashes
		case *recorder.Stroke:
			now.path = a.Path
			out = append(out, now)
		}
	}
	return out
}

// The curve is drawn through between the readings, and broken where it is assumed.
func TestAssumedBroken(t *testing.T) {
	d := dropOf(t, "units: m C\nbottom: 12 m\n0.8 20\n4 16\n10 10\n")
	p, rec := recorded(Desk)
	c := layColumn(p, d)
	c.curve(p)
	deepest, through := math.Inf(-1), 0
	for _, s := range strokes(rec) {
		for _, q := range s.path {
			y := p.h - q.Pos.Y.Points()
			assumed := y < c.y(0.8)-1e-6 || y > c.y(10)+1e-6
			if assumed && len(s.dash) == 0 {
				t.Fatalf("at %.1f points, where nothing was read, the curve is drawn through", y)
			}
			if len(s.dash) == 0 {
				through++
			}
			deepest = math.Max(deepest, y)
		}
	}
	if through < 100 || deepest < c.y(10.3) {
		t.Errorf("%d points drawn through, the curve goes to %v", through, deepest)
	}
}

// The oxygen of a reading that was left out is no part of its curve, nor of its scale:
// 19.9 mg/L at 10 ft.
func TestOxygenLeftOut(t *testing.T) {
	d := dropOf(t, "units: ft F\nbottom: 26 ft\n0 74 DO 9\n5 73 DO 9\n10 720 DO 19.9\n15 62 DO 8\n20 55 DO 7\n25 52 DO 6\n")
	if slices.IndexFunc(d.Readings, func(r chart.Reading) bool { return !r.Used && r.Oxygen.Value == 19.9 }) < 0 {
		t.Fatal("the reading was used")
	}
	p, rec := recorded(Desk)
	c := layColumn(p, d)
	c.oxygens(p)
	lines := strokes(rec)
	if len(lines) != 1 || len(lines[0].path) != 5 || c.oxygen.hi > 10 {
		t.Errorf("%d lines, the scale goes to %v", len(lines), c.oxygen.hi)
	}
	d.Readings = slices.DeleteFunc(d.Readings, func(r chart.Reading) bool { return r.Used })
	if c := layColumn(p, d); c.oxygen.hi != 0 || slices.ContainsFunc(c.legend, func(e entry) bool { return e.text == "oxygen" }) {
		t.Error("a scale of oxygen for readings that were left out")
	}
}

// The part of the band whose oxygen is unknown is hatched across the plot, the rest of the
// band is not.
func TestBandUnknownHatched(t *testing.T) {
	d := lake(t, "alder-kettle-july")
	p, rec := recorded(Desk)
	c := layColumn(p, d)
	c.ground(p)
	u, ok := d.BandUnknown()
	if !ok {
		t.Fatal("oxygen is known in all of the band")
	}
	top, bottom, lines := c.y(u.TopM), c.y(u.BottomM), 0
	for _, s := range strokes(rec) {
		for k := 1; k < len(s.path); k++ {
			a, b := s.path[k-1].Pos, s.path[k].Pos
			if s.path[k].Type != vg.LineComp || a.X == b.X || a.Y == b.Y {
				continue
			}
			lines++
			for _, q := range []vg.Point{a, b} {
				if y := p.h - q.Y.Points(); y < top-1e-6 || y > bottom+1e-6 {
					t.Errorf("a hatch at %v, out of %v to %v", y, top, bottom)
				}
			}
		}
	}
	if lines < 5 {
		t.Errorf("%d hatches", lines)
	}
}

// The water of which oxygen is not known has a lane of its own, hatched from the depth
// that its label names down to the bottom.
func TestUnprovenLane(t *testing.T) {
	d := lake(t, "alder-kettle-july")
	p, rec := recorded(Desk)
	c := layColumn(p, d)
	c.zones(p)
	l := c.lanes[oxygenLane]
	i := slices.IndexFunc(d.Zones, func(z chart.Zone) bool { return z.Kind == chart.Unproven })
	top, bottom, lines := c.y(d.Zones[i].TopM), c.y(d.Zones[i].BottomM), 0
	for _, s := range strokes(rec) {
		for k := 1; k < len(s.path); k++ {
			a, b := s.path[k-1].Pos, s.path[k].Pos
			if s.path[k].Type == vg.LineComp && a.X != b.X && a.Y != b.Y && a.X.Points() >= l.x0 && b.X.Points() >= l.x0 {
				lines++
				for _, q := range []vg.Point{a, b} {
					if y := p.h - q.Y.Points(); y < top-1e-6 || y > bottom+1e-6 {
						t.Errorf("a hatch at %v, out of %v to %v", y, top, bottom)
					}
				}
			}
		}
	}
	if want := (bottom - top) / p.em; float64(lines) < want {
		t.Errorf("%d hatches over %v points", lines, bottom-top)
	}
	k := slices.IndexFunc(c.labels(), func(l label) bool { return l.name == "oxygen unknown" })
	if k < 0 || !strings.HasPrefix(c.labels()[k].value, "below ") {
		t.Errorf("labels %+v", c.labels())
	}
}
