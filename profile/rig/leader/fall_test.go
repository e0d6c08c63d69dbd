package leader

import (
	"math"
	"testing"
)

// seen is the leader at a time.
type seen struct {
	s    float64   // time
	fly  float64   // m down: the leader's end
	away float64   // m of the leader's end from where the tip began, level
	body []float64 // m down, of each body
}

// path follows a leader for some seconds, step by step. Depths are without what is pressed
// into the bottom or stands out of the surface.
func path(t *testing.T, l Leader, tip Tip, untilS float64) []seen {
	t.Helper()
	if err := l.check(); err != nil {
		t.Fatal(err)
	}
	f := rest(newChain(l, tip, usualLinks), usualMiss)
	down := func(node int) float64 { return math.Min(f.c.bottomM, math.Max(0, f.now.at[node].z)) }
	var out []seen
	for more := true; more; more = f.step(untilS) {
		end := len(f.c.link)
		s := seen{s: f.now.time, fly: down(end), away: f.now.at[end].x}
		for _, k := range f.c.body {
			s.body = append(s.body, down(k))
		}
		out = append(out, s)
	}
	return out
}

// reached is when something on the path first is at a depth, by straight lines.
func reached(path []seen, depthM float64, of func(seen) float64) float64 {
	for i := 1; i < len(path); i++ {
		a, b := of(path[i-1]), of(path[i])
		if b >= depthM {
			return path[i-1].s + (path[i].s-path[i-1].s)*(depthM-a)/(b-a)
		}
	}
	return math.NaN()
}

// The sink time is when the path says so, a light dropper is later than the heavier point
// fly, and the path ends on time.
func TestBodiesAndPath(t *testing.T) {
	l, _ := usual(15, 0.25)
	length := l.LengthM()
	l.Bodies = append([]Body{{AtM: length - 1.5, KgDry: 5e-5}}, l.Bodies...)
	way := path(t, l, Held, 90)
	if end := way[len(way)-1].s; math.Abs(end-90) > 1e-6 || way[0].fly != 0 {
		t.Errorf("from %g m deep to %g s", way[0].fly, end)
	}
	within(t, "the fly begins at the leader's end", way[0].away, length, 1e-12)
	for _, depthM := range []float64{0.5, 1.5, 2.5} {
		point := mustSink(t, l, depthM, Held)
		within(t, "leader's end", reached(way, depthM, func(s seen) float64 { return s.fly }), point, 0.02)
		within(t, "point fly", reached(way, depthM, func(s seen) float64 { return s.body[1] }), point, 0.02)
		if s := reached(way, depthM, func(s seen) float64 { return s.body[0] }); !(point < s) {
			t.Errorf("the dropper is no later at %g m (%g s) than the heavier point fly (%g s)", depthM, s, point)
		}
	}
}

// What touches the bottom lies there: the fly stays, and the leader comes down to it.
func TestBottom(t *testing.T) {
	l, _ := usual(15, 0.5)
	l.BottomM = 3
	touch := mustSink(t, l, 3, Held)
	lies := math.NaN()
	for _, s := range path(t, l, Held, 600) {
		if s.fly > 3 || s.fly < 0 {
			t.Errorf("%g m deep at %g s", s.fly, s.s)
		}
		if s.s > touch+1 {
			if s.fly < 2.999 {
				t.Errorf("off the bottom again, %g m deep at %g s, touched at %g s", s.fly, s.s, touch)
			}
			if math.IsNaN(lies) {
				lies = s.away
			}
			if math.Abs(s.away-lies) > 0.05 {
				t.Errorf("pulled along the bottom from %g to %g m", lies, s.away)
			}
		}
	}
	l.BottomM = 0
	within(t, "the bottom does not hold back what is above it", touch, mustSink(t, l, 3, Held), 0.01)
}
