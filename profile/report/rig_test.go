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
	with := func(in rig.Input, change func(*rig.Input)) rig.Input { change(&in); return in }
	noWeight := rig.Rules{Water: "Alder Kettle", MaxFlies: 1, NoAddedWeight: true}
	spools := func(in *rig.Input) {
		in.Stock = append([]rig.Piece{{Kind: rig.Tippet, Name: "nylon", Material: "nylon", DiameterMM: 0.2}, {Kind: rig.Tippet, Name: "1X", Material: "fluorocarbon", DiameterMM: 0.25}}, in.Stock...)
	}
	teeth := func(in *rig.Input) { in.Teeth = true }
	for _, c := range []struct {
		name string
		in   rig.Input
		u    unit.System
		has  []string
		not  string
	}{
		{"the rule", over(15, 0.25, -1), feet, []string{"19 ft (the depth of water plus a quarter)", "Retrieve at 1.7 to 2.2 inches a second, averaged over pauses (one slow hand twist of about 4 inches every 2 to 2.5 seconds)", "any slower drags bottom", "Let it sink 60 seconds (50 to 65), holding the line tight", "Next best: an indicator."}, "assumed"},
		{"metric", over(15, 0.25, -1), metres, []string{"cm a second", "one slow hand twist of about 10 cm every"}, "inch"},
		{"no fly named", over(15, 0, -1), feet, []string{"For a fly of 0.25 g, assumed"}, ""},
		{"no fly named, for trout", with(over(15, 0, -1), func(in *rig.Input) { in.UsualKg = 0.00012 }), feet, []string{"For a fly of 0.12 g, assumed"}, ""},
		{"for a retrieve", over(15, 0.25, 2), feet, []string{"worked out for your retrieve", "Retrieve at your 2 inches a second, averaged over pauses (one slow hand twist of about 4 inches every 2 seconds); this leader does for", "The rule's leader of 19 ft does for"}, ""},
		{"one inch", asked(over(22, 1, 1), rig.LongLeader), feet, []string{"at your 1 inch a second", "every 4 seconds"}, "1 inches"},
		{"hanging still", asked(over(15, 0.25, 0), rig.LongLeader), feet, []string{"Let it hang still; this leader does for up to"}, "0 inches"},
		{"too fast", over(15, 0.1, 4), feet, []string{"At that retrieve the fly needs a longer leader than you cast", "a second or slower or a fly of 0.4", "So take a sinking line with a short leader.", "Class 3 sinking line (3 inches a second)", "With 60 ft of line out", "Next best: an indicator."}, "Retrieve at your"},
		{"too fast, and asked for", asked(over(24, 0.05, 4), rig.LongLeader), feet, []string{"Retrieve at 0.9 to 1 inch a second", "An indicator reaches it."}, "Retrieve at your"},
		{"hung", over(9, 0.25, -1), feet, []string{"hung 8 ft below a fixed indicator", "less if it lands beside it", "swivel 18 inches above the fly", "level tippet"}, "tapered"},
		{"hung, metric", asked(over(9, 0.25, -1), rig.Hung), metres, []string{"swivel 46 cm above"}, "inch"},
		{"hung deeper than the rod", asked(over(18, 0.25, -1), rig.Hung), feet, []string{"hung 17 ft below a sliding indicator", "jams in the tip ring"}, "fixed indicator."},
		{"hung, no added weight", with(over(9, 0.25, -1), func(in *rig.Input) { in.Rules = noWeight }), feet, []string{"no swivel, all in one piece"}, "small swivel"},
		{"hung, adrift", with(over(9, 0.25, -1), func(in *rig.Input) { in.DriftMps = 0.1 }), feet, []string{"the drift lifts the fly about"}, "slow pull"},
		{"wind", with(over(15, 0.25, -1), func(in *rig.Input) { in.Wind = profile.Some(3.5) }), feet, []string{"Wind drift is not included"}, ""},
		{"over 10 mph", with(over(15, 0.25, -1), func(in *rig.Input) { in.Wind = profile.Some(5) }), feet, []string{"An indicator: wind over 10 mph bows a long leader.", "Next best: a sinking line with a short leader."}, ""},
		{"what the water forbids", with(asked(over(15, 0.25, -1), rig.LongLeader), func(in *rig.Input) { in.Flies, in.ShotKg, in.Rules = 3, 0.0004, noWeight }), feet, []string{"allows one fly and no more.", "no added weight: the shot is left off"}, "Droppers"},
		{"two flies", with(asked(over(15, 0.25, -1), rig.LongLeader), func(in *rig.Input) { in.Flies, in.Rules.MaxFlies = 3, 2 }), feet, []string{"allows 2 flies and no more.", "Droppers 5 ft apart"}, "fly or flies"},
		{"touched", with(over(15, 0.25, -1), func(in *rig.Input) {
			in.BottomContacts = []rig.BottomContact{{Kind: rig.LongLeader, DepthM: 12 * ft, S: 40}}
		}), feet, []string{"Set right by the bottom that you touched"}, ""},
		{"deep", over(40, 0.25, -1), feet, []string{"Class 5 sinking line (5 inches a second), let down to 39 ft", "most lines sink a tenth slower than their class says", "Next best: a sinking line hung straight down under the boat."}, "faster than 0"},
		{"deep, metric", over(40, 0.25, -1), metres, []string{"Class 5 sinking line (13 cm a second)"}, "inch"},
		{"deep, the own line", with(over(30, 0.25, -1), func(in *rig.Input) { in.SinkMps = 0.0762 }), feet, []string{"Your sinking line, let down to 29 ft", "than your line is rated"}, "Class"},
		{"deep, the own line too slow", with(over(40, 0.25, -1), func(in *rig.Input) { in.SinkMps = 0.0381 }), feet, []string{"Your own line would take 5.8 minutes to get there."}, ""},
		{"straight down", asked(over(40, 0.25, -1), rig.StraightDown), feet, []string{"hung straight down under the boat to 39 ft", "touch bottom once and reel up 1 ft", "Lift it slowly with hand twists", "Let it sink"}, ""},
		{"straight down, very deep", over(100, 0.25, -1), feet, []string{"by the marks on the line", "within about two minutes"}, "Next best"},
		{"teeth", with(over(15, 0.25, -1), teeth), feet, []string{"Add a bite tippet in front of the fly, a foot of wire or of 60 lb line"}, ""},
		{"teeth under ice", with(over(15, 0.25, -1), func(in *rig.Input) { in.Teeth, in.Ice = true, true }), feet, []string{"Add a bite tippet in front of the jig"}, "fly,"},
		{"down at once", with(over(4, 2, -1), func(in *rig.Input) { in.FlyDensity = 8000 }), feet, []string{"Let it sink 5 seconds if"}, "5 to 5"},
		{"teeth, metric", with(over(15, 0.25, -1), teeth), metres, []string{"30 cm of wire or of 27 kg line"}, "foot"},
		{"spools for a light fly", with(over(15, 0.12, -1), spools), feet, []string{"For tippet take 4X fluorocarbon: fluorocarbon sinks better than nylon, and it suits so light a fly."}, ""},
		{"spools for a heavy fly", with(over(15, 0.5, -1), spools), feet, []string{"For tippet take 1X: fluorocarbon sinks better than nylon, and it is strong enough for so heavy a fly."}, ""},
		{"preferred", with(over(15, 0.25, -1), func(in *rig.Input) { in.Prefer = rig.Hung }), feet, []string{"your settings prefer it, and it reaches the depth", "Next best: a long leader on a floating line."}, ""},
		{"ice", with(over(12, 0.25, -1), func(in *rig.Input) { in.Ice = true }), feet, []string{"This is a plan for jigging through a hole in the ice. Let a small jig straight down to 11 ft", "Lift it 6 to 12 inches", "there is ice, or it is likely"}, "From fly line"},
		{"ice, metric", with(over(12, 0.25, -1), func(in *rig.Input) { in.Ice = true }), metres, []string{"Lift it 15 to 30 cm"}, "inch"},
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
