package plan

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/oxygen"
	"coldseam/profile/rig"
)

// A reading written 2 for 72 is left out, and the answer stays where it would be: no
// edge of the band moves by a foot.
func TestSlippedDigit(t *testing.T) {
	page := func(atTen float64) Plan {
		d := feet(0, 74, 5, 73.5, 10, atTen, 15, 65, 20, 56, 25, 52)
		d.Bottom = profile.Some(30 * ft)
		return planOf(t, d, "rainbow")
	}
	right, slipped := page(72), page(2)
	r := slipped.Drop.Readings[2]
	if r.Flag != profile.SlippedDigit || r.Guess != "72 F" || r.Used() {
		t.Errorf("flag %q, guess %q, used %v: want a slipped digit, 72 F, not used", r.Flag, r.Guess, r.Used())
	}
	if flagged, unused := slipped.Flagged(); flagged != 1 || unused != 1 {
		t.Errorf("%d flagged, %d not used, want one", flagged, unused)
	}
	if flagged, _ := right.Flagged(); flagged != 0 {
		t.Errorf("%d readings of the right page are flagged", flagged)
	}
	for _, e := range []struct {
		what           string
		right, slipped float64
	}{
		{"top", right.Band.Top.Best, slipped.Band.Top.Best},
		{"bottom", right.Band.Bottom.Best, slipped.Band.Bottom.Best},
	} {
		if d := math.Abs(e.right - e.slipped); !(d < 0.3048) {
			t.Errorf("the band's %s moves by %.3f m (from %.3f to %.3f m), want less than 1 ft", e.what, d, e.right, e.slipped)
		}
	}
	if !right.Band.Found || !slipped.Band.Found {
		t.Error("no band")
	}
}

func TestNoReadings(t *testing.T) {
	for _, c := range []struct {
		name string
		drop profile.Drop
	}{
		{"none", feet()},
		{"one, and it is flagged", feet(0, 742)},
	} {
		if _, err := Make(input(t, c.drop, "rainbow")); err == nil {
			t.Errorf("%s: no error", c.name)
		}
	}
}

// The depth of water to begin in is a whole mark of the line where there is room,
// and the rig is worked out for it.
func TestWholeMarks(t *testing.T) {
	for _, c := range []struct {
		name  string
		drop  profile.Drop
		markM float64
		stepM float64
	}{
		{"feet", feet(0, 74, 5, 73.5, 10, 72, 15, 65, 20, 56, 25, 52), ft, rig.StepFtM},
		{"metres", metres(0, 24, 2, 24, 4, 21, 5, 17, 6, 14, 7, 11), 0.25, rig.StepM},
	} {
		p := planOf(t, c.drop, "rainbow")
		n := p.Band.WaterM / c.markM
		if math.Abs(n-math.Round(n)) > 1e-9 {
			t.Errorf("%s: %.4f m of water is no whole mark", c.name, p.Band.WaterM)
		}
		if math.Abs(p.Rig.RuleLeaderM-1.25*p.Band.WaterM) > 1e-9 || math.Abs(p.Rig.FlyM-(p.Band.WaterM-ClearanceM)) > 1e-9 {
			t.Errorf("%s: a rule's leader of %.4f m and a fly at %.4f m over %.4f m of water", c.name, p.Rig.RuleLeaderM, p.Rig.FlyM, p.Band.WaterM)
		}
		if n := p.Rig.LeaderM / c.stepM; math.Abs(n-math.Round(n)) > 1e-6 {
			t.Errorf("%s: a leader of %.4f m is no whole step", c.name, p.Rig.LeaderM)
		}
	}
}

// The water's rules reach the rig.
func TestRulesReachTheRig(t *testing.T) {
	in := input(t, feet(0, 74, 5, 74, 10, 73, 15, 72, 18, 64, 20, 56, 25, 52), "rainbow")
	in.Drop.Wind = profile.Some(2)
	in.Rules = rig.Rules{Water: "Alder Kettle", MaxLeaderM: 18 * ft, NoIndicator: true}
	p, err := Make(in)
	if err != nil {
		t.Fatal(err)
	}
	if p.Rig == nil || p.Rig.LeaderM > 18*ft+1e-9 || p.Rig.Reachable || p.Rig.Kind == rig.Hung {
		t.Errorf("%+v, want a long leader capped at 18 ft", p.Rig)
	}
}

// Whatever was read, Make gives a plan that holds together or an error.
func TestMakeHoldsTogether(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		var pairs []float64
		for range rapid.IntRange(0, 9).Draw(rt, "readings") {
			pairs = append(pairs, rapid.Float64Range(0, 60).Draw(rt, "depth"), rapid.Float64Range(-10, 110).Draw(rt, "temp"))
		}
		d := feet(pairs...)
		if rapid.Bool().Draw(rt, "metric") {
			d = metres(pairs...)
		}
		if rapid.Bool().Draw(rt, "bottom known") {
			d.Bottom = profile.Some(rapid.Float64Range(0.5, 25).Draw(rt, "bottom"))
		}
		if rapid.Bool().Draw(rt, "deepest known") {
			d.Deepest = profile.Some(rapid.Float64Range(0.5, 60).Draw(rt, "deepest"))
		}
		in := input(t, d, rapid.SampledFrom(fish.All()).Draw(rt, "fish").Key)
		p, err := Make(in)
		if err != nil {
			return
		}
		if (p.Rig != nil) != p.Band.Found {
			rt.Fatalf("band %v, rig %v", p.Band.Found, p.Rig)
		}
		if p.Depths.Level == "" || len(p.Depths.Why) == 0 || p.Oxygen.Level == "" || len(p.Oxygen.Why) == 0 || p.Cautions[len(p.Cautions)-1] != Rules {
			rt.Fatalf("depths %v, oxygen %v, cautions %v", p.Depths, p.Oxygen, p.Cautions)
		}
		if p.Band.Found {
			b := p.Band
			if b.WaterM < b.CastShallowM-1e-6 || b.WaterM > b.CastDeepM+1e-6 || p.Rig.FlyM < 0 || p.Rig.FlyM > b.WaterM+1e-6 {
				rt.Fatalf("water %.3f m of %.3f to %.3f m, fly at %.3f m", b.WaterM, b.CastShallowM, b.CastDeepM, p.Rig.FlyM)
			}
		}
		again, _ := Make(in)
		if !reflect.DeepEqual(p, again) {
			rt.Fatal("the same page gave two plans")
		}
	})
}

func BenchmarkMake(b *testing.B) {
	in := input(b, withOxygen(feet(0, 73.9, 2, 73.7, 5, 73.4, 10, 72.8, 13, 70.6, 15, 66.9, 17, 62.4, 20, 58.1, 25, 53, 29, 51.2), 8, 8, 8, 8, 8, 7.8, 7, 6.2, 5.4, 3), "rainbow")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Make(in); err != nil {
			b.Fatal(err)
		}
	}
}

// What is known of the lake softens the words about oxygen that nobody measured: the
// deepest water known, wherever it is from.
func TestHope(t *testing.T) {
	layered := []float64{0, 24, 2, 24, 4, 23.5, 5, 20.5, 6, 15, 8, 9}
	measured := withOxygen(metres(layered...), 9, 9, 9, 9, 9, 9)
	measured.Deepest = profile.Some(40)
	for _, c := range []struct {
		name string
		drop profile.Drop
		set  func(*profile.Drop)
		want oxygen.LakeClass
	}{
		{"nothing known", metres(layered...), func(*profile.Drop) {}, oxygen.AnyLake},
		{"deepest known", metres(layered...), func(d *profile.Drop) { d.Deepest = profile.Some(40) }, oxygen.DeepLake},
		{"deep under the boat", metres(layered...), func(d *profile.Drop) { d.Bottom = profile.Some(25) }, oxygen.DeepLake},
		{"read that deep", metres(append(slices.Clone(layered), 22, 6)...), func(*profile.Drop) {}, oxygen.DeepLake},
		{"deep and clear", metres(layered...), func(d *profile.Drop) { d.Deepest, d.Secchi = profile.Some(40), profile.Some(7) }, oxygen.DeepClearLake},
		{"deep and green", metres(layered...), func(d *profile.Drop) { d.Deepest, d.Colour = profile.Some(40), "green" }, oxygen.AnyLake},
		{"black mud", metres(layered...), func(d *profile.Drop) { d.Deepest, d.Anchor = profile.Some(40), "black" }, oxygen.AnyLake},
		{"oxygen measured", measured, func(*profile.Drop) {}, oxygen.AnyLake},
	} {
		c.set(&c.drop)
		if p := planOf(t, c.drop, "rainbow"); p.LakeClass != c.want {
			t.Errorf("%s: %q, want %q", c.name, p.LakeClass, c.want)
		}
	}
}
