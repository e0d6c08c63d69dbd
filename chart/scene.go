package chart

import (
	"cmp"
	"math"
	"slices"

	"coldseam/profile/plan"
	"coldseam/profile/rig"
)

// Spot is a place in a scene, in metres: to the right of the boat's stern, and below the
// surface.
type Spot struct{ XM, DepthM float64 }

// Scene is the answer drawn to scale from the side: the boat, the line, the leader, the fly
// and the bottom under it. The same metre is as long across as down.
type Scene struct {
	Line      []Spot // from the rod's tip to where the leader begins
	Leader    []Spot // from there to the fly
	Ice       bool   // instead of the boat, with a hole over the fly
	Indicator bool   // floats where the leader enters the water
	BottomM   float64
	Bottom    bool // is drawn: the fly is fished near it
	WideM     float64
	HighM     float64 // above the surface
	DepthM    float64 // how deep the drawing goes at least
	leaderM   float64 // as cut
}

// Of the boat: invented, with an angler who sits in it and a rod of 9 ft held low.
var (
	Hull   = []Spot{{0, -0.5}, {0.25, 0.15}, {3.5, 0.15}, {4.3, -0.6}}
	Torso  = []Spot{{1.75, -0.4}, {2.3, -0.4}, {2.25, -1.05}, {1.85, -1.05}}
	Head   = Spot{2.08, -1.3}
	RodEnd = Spot{2.5, -0.75} // in the hand
	RodTip = Spot{5.1, -0.9}
)

// HeadM is the radius of the angler's head.
const HeadM = 0.17

// Fly is where the fly is.
func (s Scene) Fly() Spot { return s.Leader[len(s.Leader)-1] }

// sceneOf is the scene of a plan, nil where there is no water to fish.
func sceneOf(p plan.Plan) *Scene {
	r := p.Rig
	if r == nil || len(r.Course.Points) < 2 {
		return nil
	}
	const afloatM = 1.5 // of line from the rod's tip to a leader that is retrieved
	const castM = 5     // to an indicator
	s := &Scene{Bottom: !p.Band.Suspended, BottomM: p.Band.WaterM, HighM: 1.9, leaderM: r.LeaderM}
	from := RodTip.XM
	switch r.Kind {
	case rig.LongLeader:
		from += afloatM
	case rig.Hung:
		from += castM
		s.Indicator = true
	case rig.Jig:
		s.Ice = true
	}
	s.Line = []Spot{RodTip}
	if s.Ice {
		s.Line[0] = Spot{from, -0.6}
	}
	for i, at := range r.Course.Points {
		spot := Spot{from + at.BehindM, at.DepthM}
		if i <= r.Course.Leader {
			s.Line = append(s.Line, spot)
		}
		if i >= r.Course.Leader {
			s.Leader = append(s.Leader, spot)
		}
		s.WideM = math.Max(s.WideM, spot.XM)
	}
	fly := s.Fly()
	s.WideM += math.Max(1.5, 0.06*s.WideM)
	s.DepthM = s.BottomM
	if !s.Bottom {
		s.DepthM = math.Max(1.25*fly.DepthM, fly.DepthM+1)
		if bed := p.Drop.Bottom; bed.Known && bed.Value < 2*fly.DepthM {
			s.Bottom, s.BottomM, s.DepthM = true, bed.Value, bed.Value
		}
	}
	return s
}

// Name is a name in a scene with its value, and where it belongs.
type Name struct {
	What, Value string
	At          Spot
}

// SceneNames are the names that a scene shows, from the surface down, each with the number
// that the answer prints.
func (d Drop) SceneNames() []Name {
	if d.Scene == nil {
		return nil
	}
	s, u := d.Scene, d.Units.Shown()
	mid := s.Leader[len(s.Leader)/2]
	names := []Name{{"fly", u.Length(s.Fly().DepthM), s.Fly()}}
	if s.leaderM > 0 && !s.Ice {
		names = append(names, Name{"leader", u.Piece(s.leaderM), mid})
	}
	if m, ok := d.Mark(Thermocline); ok && m.At.Best < s.DepthM {
		names = append(names, Name{m.Name, m.Said(u), Spot{s.WideM, m.At.Best}})
	}
	if z, ok := d.Zone(Band); ok {
		names = append(names, Name{z.Name, z.Said(u), Spot{s.WideM, z.TopM + (math.Min(z.BottomM, s.DepthM)-z.TopM)/4}})
	}
	if s.Bottom {
		name := Name{"cast over", u.Marked(s.BottomM), Spot{s.WideM, s.BottomM}}
		if m, ok := d.Mark(Water); ok {
			name.What = m.Name
		} else {
			name.What = "bottom"
		}
		names = append(names, name)
	}
	slices.SortStableFunc(names, func(a, b Name) int { return cmp.Compare(a.At.DepthM, b.At.DepthM) })
	return names
}
