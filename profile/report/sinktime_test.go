package report

import (
	"reflect"
	"testing"

	"coldseam/profile"
	"coldseam/profile/demo"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
)

// The timer has the numbers of the short answer and its sentence, without what was touched
// before; a plan without a sink time has none.
func TestSinkTime(t *testing.T) {
	p := demo.Plan(t, july)
	p.Rig.SinkTime = &profile.Estimate{Best: 88, Low: 66, High: 113}
	p.Rig.Correction = 1.3
	want := Timer{90, 65, 115, "Let it sink 90 seconds (65 to 115), holding the line tight."}
	if got, ok := SinkTime(p); !ok || got != want {
		t.Errorf("%v, want %v", got, want)
	}
	p.Rig.SinkTime = nil
	if got, ok := SinkTime(p); ok {
		t.Error(got)
	}
	p.Rig = nil
	if got, ok := SinkTime(p); ok {
		t.Error(got)
	}
}

// What is said of a bottom that was touched, in feet and in metres.
func TestBottomTouched(t *testing.T) {
	feet, metres := demo.Plan(t, july), demo.Plan(t, "units: m C\n0 23\n3 22\n5 16\n8 11\n")
	at := func(p plan.Plan, correction float64) plan.Plan {
		r := rig.Rig{Kind: rig.LongLeader, Correction: correction, SinkTime: &profile.Estimate{Best: 103, Low: 79, High: 136}}
		p.Rig = &r
		return p
	}
	const far = " That is far from what was worked out, so only a part of it is believed: something else may have been touched. Try it again."
	for _, c := range []struct {
		got, want string
	}{
		{BottomTouched(at(feet, 1.2), 17*0.3048, 119.6), "Noted: bottom touched after 120 seconds over 17 ft. The sink time is now 105 seconds (80 to 135)."},
		{BottomTouched(at(metres, 0.5), 5.2, 20), "Noted: bottom touched after 20 seconds over 5.2 m. The sink time is now 105 seconds (80 to 135)." + far},
		{BottomTouched(at(feet, 2), 17*0.3048, 400), "Noted: bottom touched after 400 seconds over 17 ft. The sink time is now 105 seconds (80 to 135)." + far},
		{BottomTouched(plan.Plan{Drop: feet.Drop}, 17*0.3048, 60), "Noted: bottom touched after 60 seconds over 17 ft."},
		{BottomTakenBack(at(feet, 0)), "Taken back: the sink time is 105 seconds (80 to 135) again."},
	} {
		if c.got != c.want {
			t.Errorf("%q\nwant %q", c.got, c.want)
		}
	}
}

// The parts of the whole answer stand in their order, each with something to say.
func TestSections(t *testing.T) {
	order := []string{ConfirmTitle, "Why", "What would change it", "Light of the day", "The whole lake", "Assumed or not measured", "Your readings", "Safety"}
	seen := map[string]bool{}
	for _, page := range []string{july, "latitude: 45\nsky: clear\n" + july, "units: ft F\n0 60\n"} {
		at := 0
		for _, s := range Sections(demo.Plan(t, page), nil) {
			for at < len(order) && order[at] != s.Title {
				at++
			}
			if at == len(order) || len(s.Items) == 0 {
				t.Errorf("%q is out of order or empty", s.Title)
			}
			seen[s.Title] = true
		}
	}
	if len(seen) < 7 {
		t.Errorf("only %v", seen)
	}
	p := demo.Plan(t, july)
	for _, s := range Sections(p, nil) {
		if s.Title == "Safety" && !reflect.DeepEqual(s.Items, Cautions(p)) {
			t.Errorf("%q", s.Items)
		}
	}
}
