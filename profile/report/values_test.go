package report

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/demo"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
	"coldseam/profile/sampling"
	"coldseam/profile/unit"
)

// asMap is the JSON of a plan, as a script reads it.
func asMap(t *testing.T, v any) map[string]any {
	t.Helper()
	data, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	var m map[string]any
	if err := json.Unmarshal(data, &m); err != nil {
		t.Fatal(err)
	}
	return m
}

// TestJSONValues: each key holds what its name says, in SI. 73.4 F is 23 C and 10 ft
// are 3.048 m, both exact.
func TestJSONValues(t *testing.T) {
	p := demo.PlanFor(t, "units: ft F\nbottom: 30 ft\nsecchi: 10 ft\naltitude: 1000 ft\n0 73.4\n5 73.4\n10 71.6 DO 8.5\n15 64.4\n20 55.4\n25 51.8\n", "rainbow")
	m := asMap(t, JSON(p, nil))
	number := func(path string) float64 {
		var v any = m
		for _, k := range strings.Split(path, ".") {
			switch at := v.(type) {
			case map[string]any:
				v = at[k]
			case []any:
				v = at[int(k[0]-'0')]
			}
		}
		f, ok := v.(float64)
		if !ok {
			t.Fatalf("%s is %v", path, v)
		}
		return f
	}
	for path, want := range map[string]float64{
		"bottom_m": 9.144, "secchi_m": 3.048, "altitude_m": 304.8, "readings.2.depth_m": 3.048, "readings.2.temp_c": 22, "readings.0.temp_c": 23, "readings.2.oxygen_mgl": 8.5,
		"band.cast_shallow_m": p.Band.CastShallowM, "band.cast_deep_m": p.Band.CastDeepM, "band.top_m.best": p.Band.Top.Best, "band.bottom_m.best": p.Band.Bottom.Best, "band.start_m.best": p.Band.Start.Best,
	} {
		if got := number(path); math.Abs(got-want) > 6e-4 {
			t.Errorf("%s: %v, want %v", path, got, want)
		}
	}
	// the band ends upward where the water is 19 C (North Twin Lake), between 22 C at 10 ft
	// and 18 C at 15 ft, and water to cast over is at least a foot deeper than its top
	if top := number("band.top_m.best"); top < 10*0.3048 || top > 15*0.3048 {
		t.Errorf("top_m %v", top)
	}
	if a, b := number("band.cast_shallow_m"), number("band.cast_deep_m"); !(a < b) || a < number("band.top_m.best")+0.3 {
		t.Errorf("cast_shallow_m %v, cast_deep_m %v", a, b)
	}
	if b := number("band.cast_deep_m"); math.Abs(b-20*0.3048) > 6e-4 { // common practice: no deeper than 20 ft
		t.Errorf("cast_deep_m %v", b)
	}
	c := asMap(t, Check{DepthM: 1, TempC: 2, ExpectedC: 3})
	if c["depth_m"] != 1.0 || c["temp_c"] != 2.0 || c["expected_c"] != 3.0 {
		t.Errorf("%v", c)
	}
}

// TestRigJSONWaits: the wait on the leader to cut and that on the rule's are two numbers,
// and a leader worked out for a slow draw is the shorter and the quicker.
func TestRigJSONWaits(t *testing.T) {
	e := func(v float64) *profile.Estimate { return &profile.Estimate{Best: v, Low: v - 1, High: v + 1} }
	m := asMap(t, Rig(rig.Rig{SinkTime: e(41.26), RuleSinkTime: e(65.04), LeaderM: 5, RuleLeaderM: 6, FlyM: 4,
		Window: rig.Window{Slowest: 0.01, Fastest: 0.04, Known: true}, RuleWindow: rig.Window{Slowest: 0.02, Fastest: 0.05, Known: true}}))
	at := func(k string) float64 { return m[k].(map[string]any)["best"].(float64) }
	if at("wait_s") != 41.3 || at("rule_wait_s") != 65 || m["rule_leader_m"] != 6.0 || m["fly_depth_m"] != 4.0 {
		t.Errorf("%v", m)
	}
	if m["slowest_retrieve_mps"] != 0.01 || m["fastest_retrieve_mps"] != 0.04 || m["rule_holds_to_mps"] != 0.05 {
		t.Errorf("%v", m)
	}
	in := rig.Input{WaterM: 15 * 0.3048, FlyM: 14 * 0.3048, Kind: rig.LongLeader, StepM: rig.StepFtM, Tackle: rig.DefaultTackle(),
		FlyKg: profile.Some(0.00025), Retrieve: profile.Some(0.02)}
	m = asMap(t, Rig(rig.Find(in)))
	if at("wait_s") == at("rule_wait_s") {
		t.Errorf("both waits are %v s", at("wait_s"))
	}
}

// TestNextKey: the next depth to read is depth_m, in metres.
func TestNextKey(t *testing.T) {
	if m := asMap(t, NextAsJSON(nextAt(3.048), unit.System{Depth: unit.Foot})); m["depth_m"] != 3.048 || m["enough"] != false {
		t.Errorf("%v", m)
	}
}

// TestNotedRules: what was noted of a water's rules is said, its leader in the angler's
// unit, first among the cautions.
func TestNotedRules(t *testing.T) {
	p := demo.PlanFor(t, summer, "rainbow")
	p.Rules = rig.Rules{Water: "Alder Kettle", MaxLeaderM: 18 * 0.3048, MaxFlies: 2, NoAddedWeight: true, NoIndicator: true, Checked: "2026-05-01"}
	text := cautionOf(plan.Rules).text(speak(p))
	for _, want := range []string{"Rules of Alder Kettle", "checked 2026-05-01", "2 flies at most", "leader no longer than 18 ft", "no added weight", "no indicator", "before this advice"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %q", want, text)
		}
	}
}

// TestEdges: the inner edges are said first, the outer in brackets.
func TestEdges(t *testing.T) {
	var s speaker
	s.u = unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}
	p := demo.PlanFor(t, summer, "rainbow")
	const ft = 0.3048
	p.Band.Thin, p.Band.ToDeepest = false, false
	p.Band.Top = profile.Estimate{Low: 12 * ft, Best: 14 * ft, High: 16 * ft}
	p.Band.Bottom = profile.Estimate{Low: 20 * ft, Best: 22 * ft, High: 24 * ft}
	s.p = p
	if got, want := s.edges(), "16 to 20 ft down (12 to 24)"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// nextAt is advice to read a depth.
func nextAt(depthM float64) sampling.Advice {
	return sampling.Advice{DepthM: depthM, Why: sampling.Surface}
}
