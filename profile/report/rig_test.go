package report

import (
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/rig"
	"coldseam/profile/unit"
)

// What a person reads of a rig, case by case.
func TestRigWords(t *testing.T) {
	const ft = 0.3048
	feet, metres := unit.System{Depth: unit.Foot}, unit.System{Depth: unit.Metre}
	over := func(waterFt, grams, inches float64) rig.Input {
		in := rig.Input{WaterM: waterFt * ft, FlyM: (waterFt - 1) * ft, StepM: rig.StepFtM, Tackle: rig.DefaultTackle()}
		if grams > 0 {
			in.FlyKg = profile.Some(grams / 1000)
		}
		if inches >= 0 {
			in.Retrieve = profile.Some(inches * 0.0254)
		}
		return in
	}
	asked := func(in rig.Input, kind rig.Kind) rig.Input { in.Kind = kind; return in }
	windy := over(15, 0.25, -1)
	windy.Wind = profile.Some(3.5)
	forbidden := asked(over(15, 0.25, -1), rig.LongLeader)
	forbidden.Flies, forbidden.ShotKg = 3, 0.0004
	forbidden.Rules = rig.Rules{Water: "Alder Kettle", MaxFlies: 1, NoAddedWeight: true}
	touched := over(15, 0.25, -1)
	touched.BottomContacts = []rig.BottomContact{{Kind: rig.LongLeader, DepthM: 12 * ft, S: 40}}
	for _, c := range []struct {
		name string
		in   rig.Input
		u    unit.System
		has  []string
		not  string
	}{
		{"the rule", over(15, 0.25, -1), feet, []string{"19 ft (the depth of water plus a quarter)", "Draw in 1.7 to 2.2 inches a second", "slower lays it on the bottom"}, "assumed"},
		{"metric", over(15, 0.25, -1), metres, []string{"cm a second"}, "inch"},
		{"no fly named", over(15, 0, -1), feet, []string{"For a fly of 0.25 g, assumed"}, ""},
		{"for a draw", over(15, 0.25, 2), feet, []string{"worked out for your draw", "Draw at your 2 inches a second", "The rule's leader of 19 ft does for"}, ""},
		{"one inch", asked(over(22, 1, 1), rig.LongLeader), feet, []string{"at your 1 inch a second"}, "1 inches"},
		{"hanging still", asked(over(15, 0.25, 0), rig.LongLeader), feet, []string{"Let it hang still; this leader does for up to"}, "0 inches"},
		{"too fast", over(15, 0.1, 4), feet, []string{"At that draw the fly needs a longer leader than you cast", "a second or slower or a fly of 0.4", "So a sinking line.", "for a line of class 3", "With 60 ft of line out"}, "Draw at your"},
		{"too fast, and asked for", asked(over(30, 0.05, 4), rig.LongLeader), feet, []string{"Draw in no more than", "A sinking line with a short leader reaches it."}, "Draw at your"},
		{"hung", over(9, 0.25, -1), feet, []string{"hung 8 ft below an indicator", "less when it lands beside it"}, "tip held"},
		{"wind", windy, feet, []string{"Wind drift is not included"}, ""},
		{"what the water forbids", forbidden, feet, []string{"This water allows one fly and no more.", "no added weight: the shot is left off"}, "Droppers"},
		{"touched", touched, feet, []string{"Set right by the bottom that you touched"}, ""},
	} {
		text := strings.Join(RigAlone(rig.Find(c.in), c.in, c.u), "\n")
		for _, want := range c.has {
			if !strings.Contains(text, want) {
				t.Errorf("%s: no %q in\n%s", c.name, want, text)
			}
		}
		if c.not != "" && strings.Contains(text, c.not) {
			t.Errorf("%s: %q in\n%s", c.name, c.not, text)
		}
	}
}
