package plan

import (
	"math"
	"testing"

	"coldseam/profile"
	"coldseam/profile/rig"
)

// Ice is likely where the top is at most 33 F, whatever the date, and at 2 C in a winter
// month (common practice); the plan is then a jig's, and the caution about ice stands in it.
// A cold lake in spring is fished from the boat.
func TestIceMakesAJig(t *testing.T) {
	for _, c := range []struct {
		name, date string
		topC       float64
		want       bool
	}{
		{"33 F on top", "", 0.5, true},
		{"33 F on top in May", "2027-05-02", 0.5, true},
		{"a cold top in January", "2027-01-20", 1.9, true},
		{"a cold top in December", "2026-12-20 11:00", 1.9, true},
		{"a cold top in April", "2027-04-20", 1.9, false},
		{"a cold top of no date", "", 1.9, false},
		{"one cold layer in March", "2027-03-20", 3.6, false},
	} {
		d := metres(0, c.topC, 3, c.topC, 6, c.topC+0.1, 9, c.topC+0.1)
		d.Date = c.date
		p := planOf(t, d, "rainbow")
		if p.Rig == nil || (p.Rig.Kind == rig.Jig) != c.want {
			t.Fatalf("%s: %+v, want a jig: %v", c.name, p.Rig, c.want)
		}
		iced := false
		for _, code := range p.Cautions {
			iced = iced || code == Ice
		}
		if iced != c.want {
			t.Errorf("%s: cautions %q, want one about ice: %v", c.name, p.Cautions, c.want)
		}
	}
}

// The fly of a plan is that of the page, else the fish's, and a pike's plan asks for a bite
// tippet.
func TestFlyOfTheFish(t *testing.T) {
	d := metres(0, 20, 2, 19.5, 4, 18, 6, 17, 7, 16)
	d.Bottom = profile.Some(8)
	trout, pike := planOf(t, d, "rainbow").Rig, planOf(t, d, "pike").Rig
	if math.Abs(trout.FlyKg-0.00012) > 1e-9 || !trout.FlyAssumed || trout.AddBite || math.Abs(pike.FlyKg-0.0015) > 1e-9 || !pike.AddBite {
		t.Errorf("trout %v kg, bite tippet %v; pike %v kg, bite tippet %v", trout.FlyKg, trout.AddBite, pike.FlyKg, pike.AddBite)
	}
	d.FlyWeight = profile.Some(0.0003)
	if r := planOf(t, d, "rainbow").Rig; r.FlyKg != 0.0003 || r.FlyAssumed {
		t.Errorf("named: %v kg, assumed %v", r.FlyKg, r.FlyAssumed)
	}
}
