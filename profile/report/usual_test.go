package report

import (
	"fmt"
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/catches"
	"coldseam/profile/demo"
	"coldseam/profile/plan"
)

// TestUsual: what was caught before, as the answer says it in each case, in both units.
func TestUsual(t *testing.T) {
	book := func(water string, temps ...float64) (taken []catches.Taken) {
		for i := range 14 {
			taken = append(taken, catches.Taken{Fish: "rainbow", Count: 1, Water: water, DepthM: profile.Some(5), TempC: profile.Some(temps[i*len(temps)/14])})
		}
		return taken
	}
	metric := "water: Alder Kettle\nunits: m C\nbottom: 9.5 m\nsecchi: 2.7 m\ndeepest: 11.6 m\n0 23\n1.5 22.7\n3 22.4\n4 21.2\n4.6 19.1\n5.2 16.6\n6.1 14.2 DO 6.2\n7.6 11.4\n8.8 10.4\n"
	for _, tc := range []struct {
		page  string
		taken []catches.Taken
		heed  plan.Heed
		row   string // at a glance: none where it is ""
		said  string
	}{
		{july, nil, plan.NoOpinion, "", ""},
		{metric, book("Alder Kettle", 15, 15, 15, 10), plan.Deeper, "11 of 14 at 15 C, 5 m down; so the start is 0.4 m deeper",
			"You took 11 of 14 rainbow trout at 15 C, 5 m down: so the start is 0.4 m deeper."},
		{metric, book("Marl Hole", 15, 15.5), plan.Deeper, "all 14 at 15 to 15.5 C, 5 m down in all waters; so the start is 0.3 m deeper",
			"You took all 14 rainbow trout at 15 to 15.5 C, 5 m down in all waters: so the start is 0.3 m deeper."},
		{metric, book("Alder Kettle", 16.5, 17), plan.Agrees, "all 14 at 16.5 to 17 C, 5 m down; the start is as warm",
			"You took all 14 rainbow trout at 16.5 to 17 C, 5 m down: the start is as warm."},
		{metric, book("Alder Kettle", 17.8, 18.1), plan.Near, "all 14 at 18 C, 5 m down; the start is close to that",
			"You took all 14 rainbow trout at 18 C, 5 m down: the start is close to that."},
		{metric, book("Alder Kettle", 24, 25), plan.Absent, "",
			"You took all 14 rainbow trout at 24 to 25 C, 5 m down: the band has no such water today."},
		{strings.Replace(metric, " DO 6.2", "", 1), book("Alder Kettle", 12, 12.5), plan.Apart, "all 14 at 12 to 12.5 C, 5 m down; the start stays where it is safe",
			"You took all 14 rainbow trout at 12 to 12.5 C, 5 m down: the start stays where it is safe."},
		{metric, book("Alder Kettle", 8, 20), plan.Contradicts, "", "You took 14 rainbow trout at 8 to 20 C: too far apart to move the start."},
		{"units: ft F\n0 80\n5 79\n10 78\n15 78\n", book("Alder Kettle", 15, 15.5), plan.NoWater, "", "You took all 14 rainbow trout at 59 to 60 F, 16 ft down in all waters."},
	} {
		in := demo.Input(t, tc.page, "rainbow")
		in.Taken = tc.taken
		p, err := plan.Make(in)
		if err != nil {
			t.Fatal(err)
		}
		if heed, _ := p.Heed(); heed != tc.heed {
			t.Errorf("%s: %s", tc.heed, heed)
		}
		row := ""
		for _, r := range Short(p, nil).Rows {
			if r.Label == "You took" {
				row = r.Value + " " + r.Detail
			}
		}
		if row != tc.row {
			t.Errorf("%s: at a glance %q\nwant %q", tc.heed, row, tc.row)
		}
		said := ""
		if last := Answer(p)[len(Answer(p))-1]; strings.HasPrefix(last, "You took") {
			said = last
		}
		if said != tc.said {
			t.Errorf("%s: %q\nwant %q", tc.heed, said, tc.said)
		}
		j := JSON(p, nil).Usual
		if (j == nil) != (tc.heed == plan.NoOpinion) || j != nil && (j.Heed != tc.heed || j.Of != 14 || (j.Without != nil) != (tc.heed == plan.Deeper)) {
			t.Errorf("%s: %s", tc.heed, fmt.Sprintf("%+v", j))
		}
	}
}

// TestCatchSaid: what the command says that notes a catch, and takes it away.
func TestCatchSaid(t *testing.T) {
	in := func(units string) profile.Drop {
		return demo.Input(t, "water: Alder Kettle\ndate: 2026-07-18\nunits: "+units+"\n0 20\n", "rainbow").Drop
	}
	all := profile.Catch{Text: "18:10 rainbow 16 ft", Fish: "rainbow", Depth: profile.Some(16)}
	noDepth, noFish, neither := all, all, profile.Catch{Text: "x"}
	noDepth.Depth, noFish.Fish = profile.Optional{}, ""
	const head = "Noted in drop 3 (Alder Kettle, 2026-07-18): "
	for _, tc := range []struct{ got, want string }{
		{CatchNoted(3, in("ft F"), all), head + "18:10 rainbow 16 ft."},
		{CatchNoted(3, in("ft F"), noDepth), head + "18:10 rainbow 16 ft. No depth could be read in it: one has its unit, 16 ft."},
		{CatchNoted(3, in("m C"), noDepth), head + "18:10 rainbow 16 ft. No depth could be read in it: one has its unit, 5 m."},
		{CatchNoted(3, in("ft F"), noFish), head + "18:10 rainbow 16 ft. No fish could be read in it."},
		{CatchNoted(3, in("m C"), neither), head + "x. No fish and no depth could be read in it: undo it, then write e.g. rainbow 5 m."},
		{CatchNoted(3, profile.Drop{}, all), "Noted in drop 3: 18:10 rainbow 16 ft."},
		{CatchTaken(3, profile.Drop{Catches: []profile.Catch{all}}, all), "Taken away from drop 3: 18:10 rainbow 16 ft; none is left."},
		{CatchTaken(3, profile.Drop{Catches: []profile.Catch{all, all}}, all), "Taken away from drop 3: 18:10 rainbow 16 ft; 1 left."},
	} {
		if tc.got != tc.want {
			t.Errorf("got  %s\nwant %s", tc.got, tc.want)
		}
	}
}
