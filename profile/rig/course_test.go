package rig

import (
	"math"
	"testing"

	"coldseam/profile"
)

// The course of every rig begins at the surface and ends at the depth of the fly that the
// answer names; the points of a leader are no further apart than the line between them is
// long, and their line is as long as it was cut.
func TestCourse(t *testing.T) {
	for _, c := range []struct {
		name string
		in   Input
	}{
		{"long", Input{WaterM: 5.2, FlyM: 4.9, Kind: LongLeader}},
		{"long, retrieve stated", Input{WaterM: 5.2, FlyM: 4.9, Kind: LongLeader, Retrieve: profile.Some(0.05)}},
		{"two flies", Input{WaterM: 5.2, FlyM: 4.9, Kind: LongLeader, Tackle: Tackle{Flies: 3}}},
		{"hung", Input{WaterM: 3.3, FlyM: 3, Kind: Hung}},
		{"sinking", Input{WaterM: 9, FlyM: 8.7, Kind: Sinking}},
		{"sinking, a fast line", Input{WaterM: 16, FlyM: 15.7, Kind: Sinking}},
		{"straight down", Input{WaterM: 40, FlyM: 39.7, Kind: StraightDown}},
	} {
		tackle := DefaultTackle()
		tackle.Flies = max(c.in.Flies, 1)
		c.in.Tackle = tackle
		r := Find(c.in)
		points := r.Course.Points
		last := points[len(points)-1]
		if first := points[0]; first.DepthM != 0 || first.BehindM != 0 {
			t.Errorf("%s: begins at %+v", c.name, first)
		}
		if math.Abs(last.DepthM-c.in.FlyM) > 0.02*c.in.FlyM {
			t.Errorf("%s: ends %v m down, the fly is at %v", c.name, last.DepthM, c.in.FlyM)
		}
		long := 0.0
		for i := max(1, r.Course.Leader+1); i < len(points); i++ {
			long += math.Hypot(points[i].DepthM-points[i-1].DepthM, points[i].BehindM-points[i-1].BehindM)
		}
		want := r.LeaderM
		if r.Kind == Hung {
			want = r.HangM
		}
		if long > want*1.001 || long < want*0.98 {
			t.Errorf("%s: %v m of leader are drawn, %v are cut", c.name, long, want)
		}
	}
}

// A course changes nothing of what it is the course of: the point fly stays where the
// physics without the points between has it.
func TestCourseWeighsNothing(t *testing.T) {
	g := (&Rig{Kind: LongLeader, FlyKg: FlyKg}).gear(Input{WaterM: 6, FlyM: 5, Tackle: DefaultTackle()})
	l := g.leader(6.5)
	want, err := l.Tow(0.05)
	if err != nil {
		t.Fatal(err)
	}
	points := courseOf(l, 0.05, 0).Points
	if got := points[len(points)-1]; math.Abs(got.DepthM-want.Point.DepthM) > 1e-3*want.Point.DepthM || math.Abs(got.BehindM-want.Point.BehindM) > 1e-3*6.5 {
		t.Errorf("%+v, want %+v", got, want.Point)
	}
}
