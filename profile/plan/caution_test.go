package plan

import (
	"slices"
	"testing"

	"coldseam/profile"
)

// The steps of care are 65, 68 and 70 F, by the mixed layer's temperature, and only
// for the salmon family.
func TestWarmWater(t *testing.T) {
	at := func(topF float64) profile.Drop {
		return feet(0, topF, 5, topF, 10, topF, 15, topF-8, 20, topF-12, 25, topF-14)
	}
	for _, c := range []struct {
		topF float64
		fish string
		want Caution // "" for none
	}{
		{64.5, "rainbow", ""},
		{65, "rainbow", Warm65},
		{67.5, "rainbow", Warm65},
		{68, "rainbow", Warm68},
		{69.5, "rainbow", Warm68},
		{70, "rainbow", Warm70},
		{74, "rainbow", Warm70},
		{74, "lake trout", Warm70},
		{74, "kokanee", Warm70},
		{74, "smallmouth", ""},
		{74, "walleye", ""},
		{74, "pike", ""},
	} {
		p := planOf(t, at(c.topF), c.fish)
		var got []Caution
		for _, w := range []Caution{Warm65, Warm68, Warm70} {
			if slices.Contains(p.Cautions, w) {
				got = append(got, w)
			}
		}
		if c.want == "" && got != nil || c.want != "" && (len(got) != 1 || got[0] != c.want) {
			t.Errorf("%s at %v F: %v, want %q", c.fish, c.topF, got, c.want)
		}
		if p.Gate() != (c.want == Warm70) {
			t.Errorf("%s at %v F: gate %v", c.fish, c.topF, p.Gate())
		}
	}
}

// A sunny skin is not what fish are brought up through: the layer under it counts.
func TestGateUnderTheSkin(t *testing.T) {
	p := planOf(t, feet(0, 74, 2, 68.5, 5, 68.3, 10, 68, 15, 60, 20, 54, 25, 52), "rainbow")
	if p.Layers.SkinM == 0 {
		t.Fatalf("no skin found: %v", p.Layers)
	}
	if p.Gate() || !slices.Contains(p.Cautions, Warm68) {
		t.Errorf("gate %v, cautions %v: want warm-68 from the 68.5 F under the skin", p.Gate(), p.Cautions)
	}
	p = planOf(t, feet(0, 76, 2, 72, 5, 71.8, 10, 71.6, 15, 62, 20, 56, 25, 54), "rainbow")
	if !p.Gate() {
		t.Errorf("72 F under the skin: cautions %v, want the gate", p.Cautions)
	}
}

// The band stands though the gate is shut.
func TestGateKeepsTheBand(t *testing.T) {
	p := planOf(t, feet(0, 74, 5, 73, 10, 72, 15, 65, 20, 56, 25, 52), "rainbow")
	if !p.Gate() || !p.Band.Found || p.Rig == nil || p.Cautions[0] != Warm70 {
		t.Errorf("gate %v, band %v, cautions %v", p.Gate(), p.Band.Found, p.Cautions)
	}
}

func TestCautions(t *testing.T) {
	summer := func() profile.Drop { return feet(0, 74, 5, 73.5, 10, 72, 15, 65, 20, 56, 25, 52) }
	blown := summer()
	blown.Wind = profile.Some(15 * 0.44704)
	breeze := summer()
	breeze.Wind = profile.Some(14 * 0.44704)
	deep := feet(0, 74, 10, 74, 20, 73.5, 27, 72, 32, 62, 37, 54, 42, 50)
	everything := deep
	everything.Wind = profile.Some(12)
	thunder, caps := summer(), summer()
	thunder.Sky, caps.Sky = "No thunder this morning, thunder now", "calm at six, no whitecaps then, whitecaps now"
	for _, c := range []struct {
		name string
		drop profile.Drop
		fish string
		want []Caution
	}{
		{"summer", summer(), "rainbow", []Caution{Warm70, Cold, Anchors, Rules}},
		{"15 mph", blown, "rainbow", []Caution{Warm70, Wind, Cold, Anchors, Rules}},
		{"14 mph", breeze, "rainbow", []Caution{Warm70, Cold, Anchors, Rules}},
		{"thunder after a morning without", thunder, "rainbow", []Caution{Warm70, Thunder, Cold, Anchors, Rules}},
		{"whitecaps after a calm", caps, "rainbow", []Caution{Warm70, Wind, Cold, Anchors, Rules}},
		{"fished deeper than 25 ft", deep, "rainbow", []Caution{Warm70, Pressure, Cold, Anchors, Rules}},
		{"all that can apply in summer", everything, "rainbow", []Caution{Warm70, Wind, Pressure, Cold, Anchors, Rules}},
		{"bass in warm water", metres(0, 26, 2, 26, 4, 25, 6, 24), "smallmouth", []Caution{Anchors, Rules}},
		{"under ice", metres(0, 0.5, 2, 2.2, 4, 3.4, 6, 3.9), "rainbow", []Caution{Ice, Rules}},
		{"under ice, two readings", metres(0, 0.5, 4, 3.8), "rainbow", []Caution{Ice, Rules}},
		{"3 C, two readings, no warmer below", metres(0, 3.5, 4, 3.6), "rainbow", []Caution{Cold, Anchors, Rules}},
		{"3 C, one reading", metres(0, 3.5), "rainbow", []Caution{Cold, Anchors, Rules}},
		{"spring, 8 C", metres(0, 8, 2, 8, 4, 7.5, 6, 7), "rainbow", []Caution{Cold, Anchors, Rules}},
		{"no band to anchor for", metres(0, 27, 2, 26.5, 4, 26), "rainbow", []Caution{Warm70, Rules}},
	} {
		if p := planOf(t, c.drop, c.fish); !slices.Equal(p.Cautions, c.want) {
			t.Errorf("%s: %v, want %v", c.name, p.Cautions, c.want)
		}
	}
}
