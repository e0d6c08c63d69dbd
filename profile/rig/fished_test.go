package rig

import (
	"strings"
	"testing"

	"coldseam/profile"
)

// Under an indicator level fluorocarbon with a small swivel 18 to 24 in above the fly
// (common practice), and no swivel where the water allows no added weight; never a tapered
// leader.
func TestUnderAnIndicator(t *testing.T) {
	for _, step := range []float64{StepFtM, StepM} {
		in := over(18)
		in.Kind, in.StepM = Hung, step
		r := Find(in)
		if len(r.Parts) != 2 || !strings.HasPrefix(r.Parts[0].Name, "level tippet") || r.Parts[1].Material != "fluorocarbon" {
			t.Fatalf("parts %+v", r.Parts)
		}
		if in := r.SwivelM / 0.0254; in < 18-1e-9 || in > 24 {
			t.Errorf("swivel %.1f in above the fly", in)
		}
		near(t, "below the swivel", r.Parts[1].LengthM, r.SwivelM, 1e-9)
		heavy := r.SinkTime.Best
		in.Rules = Rules{Water: "Alder Kettle", NoAddedWeight: true}
		r = Find(in)
		if len(r.Parts) != 1 || r.SwivelM != 0 || len(r.Less) != 1 || r.Less[0] != NoSwivel {
			t.Errorf("no added weight: parts %+v, swivel %v, less %v", r.Parts, r.SwivelM, r.Less)
		}
		if !(r.SinkTime.Best > heavy) {
			t.Errorf("without a swivel %v s, with one %v", r.SinkTime.Best, heavy)
		}
	}
}

// The class of a sinking line is about its inches a second, and lines sink a tenth slower
// than rated (handbook, measured 8 to 17 %): the slowest that is down within two minutes,
// no slower than class 3 and no faster than 7, the fastest that is sold (common practice).
func TestClass(t *testing.T) {
	for _, c := range []struct {
		flyFt float64
		want  int
	}{
		{10, 3}, {27, 3}, {27.5, 4}, {36, 4}, {40, 5}, {54, 6}, {60, 7}, {63, 7},
	} {
		in := over(c.flyFt + 1)
		in.Kind = Sinking
		r := Find(in)
		if r.Class != c.want || !r.ClassAssumed || r.SinkTime.Best > 120.01 {
			t.Errorf("%v ft: class %d, down in %.0f s; want class %d", c.flyFt, r.Class, r.SinkTime.Best, c.want)
		}
	}
}

// The angler's own line is taken where it is down within about two minutes; a slower one
// is told of, and none is waited for five minutes.
func TestOwnLine(t *testing.T) {
	in := over(27)
	in.SinkMps = 3 * inchPerS
	if r := Find(in); r.Kind != Sinking || r.ClassAssumed || r.Class != 0 || r.OwnLineS != 0 {
		t.Errorf("own line of 3 in/s: %+v", r)
	}
	in = over(35)
	in.SinkMps = 1.5 * inchPerS
	r := Find(in)
	near(t, "the own line's seconds", r.OwnLineS, 34*12/(0.9*1.5), 0.01)
	if r.Class != 4 || r.SinkTime.Best > 120 || r.RunnerUp != StraightDown {
		t.Errorf("too slow a line: %+v", r)
	}
}

// Too deep for any line to sink by itself in two minutes: it is let down by its marks.
func TestStraightDown(t *testing.T) {
	r := Find(over(100))
	if r.Kind != StraightDown || r.SinkTime != nil || !r.Reachable || r.Class != 7 || r.LeaderM > nineFtM+slack {
		t.Errorf("%+v", r)
	}
	in := over(40)
	in.Kind = StraightDown
	if r := Find(in); r.SinkTime == nil || r.SinkTime.Best > 150 {
		t.Errorf("%+v", r.SinkTime)
	}
}

// Through the ice nothing is cast and no leader cut, whatever was preferred.
func TestJig(t *testing.T) {
	in := over(12)
	in.Ice, in.Prefer, in.Teeth = true, Sinking, true
	r := Find(in)
	if r.Kind != Jig || r.RunnerUp != "" || len(r.Parts) != 0 || r.LeaderM != 0 || r.SinkTime != nil || !says(r, UnderIce) || !r.Reachable {
		t.Errorf("%+v", r)
	}
	near(t, "fly", r.FlyDepths[0], 11*ft, 1e-9)
}

// Without a named fly that of the fish is taken, its doubt half to twice; a named one wins.
func TestUsualFly(t *testing.T) {
	in := over(15)
	in.Kind = LongLeader
	plain := Find(in)
	near(t, "fly of no fish", plain.FlyKg, 0.00025, 0)
	in.UsualKg = 0.00012
	light := Find(in)
	if light.FlyKg != 0.00012 || !light.FlyAssumed || light.SinkTime.Best <= plain.SinkTime.Best {
		t.Errorf("light fly: %v kg, %v s; heavier %v s", light.FlyKg, light.SinkTime.Best, plain.SinkTime.Best)
	}
	in.FlyKg = profile.Some(0.0005)
	if r := Find(in); r.FlyKg != 0.0005 || r.FlyAssumed || r.SinkTime.Best >= plain.SinkTime.Best {
		t.Errorf("named fly: %v kg, assumed %v, %v s", r.FlyKg, r.FlyAssumed, r.SinkTime.Best)
	}
}

// A fish with teeth gets a foot of wire or 60 lb line at the fly (common practice), or the
// rig says that one is missing; the parts still sum to the leader.
func TestBiteTippet(t *testing.T) {
	wire := Piece{Kind: Bite, Name: "wire, 20 lb", DiameterMM: 0.4, Material: "wire"}
	for _, kind := range []Kind{LongLeader, Hung, Sinking} {
		in := over(15)
		in.Kind = kind
		if r := Find(in); r.AddBite {
			t.Errorf("%s: a bite tippet for a fish without teeth", kind)
		}
		in.Teeth = true
		if r := Find(in); !r.AddBite {
			t.Errorf("%s: no bite tippet in the stock, and none asked for", kind)
		}
		in.Stock = append(in.Stock, wire)
		r := Find(in)
		last := r.Parts[len(r.Parts)-1]
		if r.AddBite || !strings.HasPrefix(last.Name, "bite tippet") || last.LengthM < ft-1e-3 || last.LengthM > 1.5*ft+1e-3 {
			t.Errorf("%s: the last part is %+v", kind, last)
		}
		sum := 0.0
		for _, p := range r.Parts {
			sum += p.LengthM
		}
		near(t, string(kind)+", sum of the parts", sum, r.LeaderM, 1e-3)
	}
}

// Of several spools: fluorocarbon before nylon, which barely sinks (handbook: 0.9 and 0.3
// in/s), then about 4X for a light fly and about 1X for a heavy one (common practice).
func TestSpool(t *testing.T) {
	x := func(name, material string, x float64) Piece {
		return Piece{Kind: Tippet, Name: name, Material: material, DiameterMM: TippetMM(x)}
	}
	nylon4, f6, f4, f1 := x("nylon 4X", "nylon", 4), x("fluoro 6X", "fluorocarbon", 6), x("fluoro 4X", "fluorocarbon", 4), x("fluoro 1X", "fluorocarbon", 1)
	for _, c := range []struct {
		name  string
		stock []Piece
		kg    float64
		want  Spool
	}{
		{"one spool", []Piece{f4}, 0.0001, Spool{}},
		{"light fly", []Piece{nylon4, f1, f6, f4}, 0.00012, Spool{"fluoro 4X", 4, true, false, true}},
		{"heavy fly", []Piece{f6, f4, f1}, 0.001, Spool{"fluoro 1X", 3, false, true, true}},
		{"nylon alone beside it", []Piece{nylon4, f1}, 0.00012, Spool{"fluoro 1X", 2, true, false, false}},
		{"of thickness unknown", []Piece{{Kind: Tippet, Name: "a"}, {Kind: Tippet, Name: "b"}}, 0.00012, Spool{Name: "a", Of: 2}},
	} {
		in := over(15)
		in.Kind, in.Stock, in.FlyKg = LongLeader, append([]Piece{{Kind: Butt, Name: "butt"}}, c.stock...), profile.Some(c.kg)
		r := Find(in)
		var got Spool
		if r.Spool != nil {
			got = *r.Spool
			if last := r.Parts[len(r.Parts)-1].Name; last != "tippet ("+got.Name+")" {
				t.Errorf("%s: %s is told, %s is cut", c.name, got.Name, last)
			}
		}
		if got != c.want {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
	}
}
