package report

import (
	"encoding/json"
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/band"
	"coldseam/profile/demo"
	"coldseam/profile/light"
	"coldseam/profile/plan"
)

// Pages of a lake in July, of one after a turnover, and of a warm pond.
const (
	julyPage   = "date: 2026-07-18\nunits: ft F\nbottom: 31 ft\n0 73\n5 73\n10 72\n13 70\n15 66\n17 62\n20 58\n25 53\n29 51\n"
	oxygenAt20 = "date: 2026-07-18\nunits: ft F\nbottom: 31 ft\n0 73\n5 73\n10 72\n13 70\n15 66\n17 62\n20 58 DO 6.2\n25 53\n29 51\n"
	june       = "date: 2026-06-08\nunits: ft F\nbottom: 31 ft\n0 64\n5 64\n10 63\n13 60\n15 57\n20 52\n25 50\n29 49\n"
	turnedOver = "date: 2026-10-12\nunits: ft F\nbottom: 31 ft\n0 52\n5 51.8\n10 51.6\n20 51.5\n29 51.4\n"
	pondInMay  = "date: 2026-05-10\nunits: ft F\nbottom: 40 ft\n0 67\n5 67\n10 66.5\n15 66\n20 60\n25 55\n35 50\n"
	warmPond   = "date: 2026-08-03\nunits: ft F\nbottom: 14 ft\n0 82\n3 82\n6 80\n8 75\n10 70\n13 66\n"
	black      = "anchor: black\n"
)

// The answer promises what is known: how much of the band is the best bet for oxygen, what
// black mud takes out of it, and that cold water in one layer has been mixed.
func TestPromise(t *testing.T) {
	for _, c := range []struct {
		name, page, fish string
		want, never      []string
	}{
		{"oxygen down to 20 ft", oxygenAt20, "rainbow",
			[]string{"Cool enough from 16 to 29 ft down (14 to 31); best bet 16 to 20 ft: below that oxygen is unknown and may be too low. Oxygen not measured over the band: only 6.2 mg/L at 20 ft.",
				"above 16 ft it is too warm, and below 20 ft oxygen is unknown", "oxygen unknown below 20 ft", "Start over 18 ft."}, []string{"Fish should hold"}},
		{"the same in a deep lake", "deepest: 100 ft\n" + oxygenAt20, "rainbow", []string{"below that oxygen is unknown and may be too low, but one deep lake in three holds it all the way down."}, nil},
		{"nothing known", julyPage, "rainbow", []string{"oxygen is unknown and may be too low there, so the upper edge is the best bet. Cast", "may run out anywhere from 11 ft down"}, []string{"Oxygen not measured. "}},
		{"nothing known, a deep lake", "deepest: 100 ft\nsecchi: 25 ft\n" + julyPage, "rainbow", []string{"oxygen is unknown and may be too low there, but most clear, deep lakes hold it all the way down."}, []string{"upper edge is the best"}},
		{"cool to the top", june, "rainbow", []string{"Cool enough from top to 29 ft; best bet down to 9 ft: below that oxygen is unknown and may be too low."}, nil},
		{"a fish with two edges", julyPage, "smallmouth", []string{"The temperature suits smallmouth bass down to", "; best bet down to 11 ft: below that"}, []string{"Cool enough"}},
		{"a fish with two edges, too warm on top", warmPond, "smallmouth", []string{"The temperature suits smallmouth bass from 6 to", "oxygen is unknown and may be too low there, so the upper edge"}, []string{"Cool enough"}},
		{"no doubt", "units: ft F\n0 64\n10 64\n20 63.5\n", "rainbow", []string{"All the water that was read suits rainbow trout: top to 20 ft. Oxygen not measured. Cast"}, []string{"best bet"}},

		{"black mud, cool to the top", black + june, "rainbow",
			[]string{"Fish should hold anywhere down to 9 ft. Oxygen not measured. The mud on the anchor came up black, so no water below 9 ft is counted: oxygen may be too low there.",
				"Also 9 to 31 ft: its temperature suits, but the mud came up black and oxygen may be too low."}, []string{"ruled out", "best bet"}},
		{"black mud, oxygen read", black + strings.Replace(oxygenAt20, "0 73\n", "0 73 DO 9\n", 1), "rainbow", []string{"Fish should hold 16 to 20 ft down (14 to 20). Oxygen was read down to 20 ft. The mud on the anchor came up black, so no water below 20 ft is counted"}, nil},
		{"black mud in July", black + julyPage, "rainbow",
			[]string{"Too warm above, and little hope of oxygen below: the water suits rainbow trout only from 15 ft down, and the mud on the anchor came up black, so oxygen may be too low from 11 ft down. Measure the oxygen at 15 ft: with 5 mg/L or more, fish there. Otherwise leave these fish alone until the water cools.",
				"Read the oxygen, or read again where the anchor comes up clean.", "Oxygen of 5 mg/L or more in water of 66 F or less"}, []string{"Cast", "Fly about"}},
		{"black mud, not so warm", black + pondInMay, "brown", []string{"The water that brown trout like best (65 F or less) lies over black mud, so they should hold in the warmer water above that, 0 to 14 ft down"}, []string{"leave these fish"}},
		{"black mud in a bass pond", black + warmPond, "largemouth", []string{"The water that largemouth bass like best (70 to 81 F) lies over black mud, so they should hold in the warmer water above that, 0 to 5 ft down"}, []string{"leave these fish", "would move you up"}},
		{"black mud under the ice", black + "units: m C\nbottom: 10 m\n0.5 0.4\n2 1.8\n5 3\n9 3.9\n", "largemouth", []string{"hold where it is warmest, ", "The mud on the anchor came up black: oxygen may be too low below 5.4 m."}, nil},
		{"black mud, bottom unknown", black + "units: ft F\n0 60\n10 60\n20 60\n", "rainbow", []string{"The mud on the anchor came up black: keep well above the bottom."}, nil},

		{"after a turnover", turnedOver, "rainbow",
			[]string{"No water here is too warm for rainbow trout, top to 29 ft, and none much warmer than the rest: 51 to 52 F, colder than they like best (55 to 66 F). Look for warmer water first, in sunny, sheltered bays",
				"Oxygen not measured, but cold water in one layer has lately mixed with air from top to bottom and should hold enough.", "oxygen likely",
				"Oxygen was not measured, but the water has lately mixed from top to bottom", "nowhere much warmer: start over the shelf",
				"water that has lately mixed from top to bottom is taken to hold enough", "The water is 52 F at the top: a fall"}, []string{"best bet", "bring it to the top", "shallower first", "summer"}},
		{"after a turnover, black mud", black + turnedOver, "rainbow", []string{"should hold enough; black mud tells only of the summer."}, []string{"counted", "best bet"}},
		{"cold on top, colder below", "units: ft F\nbottom: 31 ft\n0 58\n5 57\n15 50\n25 45\n", "rainbow", []string{"The water is 58 F at the top, and wind can bring up what is 45 F below: a fall"}, nil},
		{"warm on top", julyPage, "rainbow", []string{"The water below is 51 F, and wind can bring it to the top: a fall"}, nil},
		{"cold, and the fly near the top", "units: ft F\nbottom: 31 ft\n0 50\n3 49\n6 47.5\n10 46\n15 45\n20 44.5\n29 44\n", "rainbow", []string{"Warmer is good news: they like 55 to 66 F. Colder: look for warmer water elsewhere"}, []string{"for each 2 F"}},
	} {
		p := demo.PlanFor(t, c.page, c.fish)
		got := all(p)
		for _, w := range c.want {
			if !strings.Contains(strings.ToLower(got), strings.ToLower(w)) {
				t.Errorf("%s: no %q in\n%s", c.name, w, Wrap(got, "", Width))
			}
		}
		for _, w := range c.never {
			if strings.Contains(got, w) {
				t.Errorf("%s: %q in\n%s", c.name, w, Wrap(got, "", Width))
			}
		}
	}
}

// The same at a glance.
func TestPromiseAtAGlance(t *testing.T) {
	for _, c := range []struct{ page, fish, want string }{
		{oxygenAt20, "rainbow", "66 F or less; best bet 16 to 20 ft: below that oxygen is unknown"},
		{julyPage, "rainbow", "66 F or less; oxygen unknown there, may be too low"},
		{june, "rainbow", "suits them; best bet down to 9 ft: below that oxygen is unknown"},
		{black + june, "rainbow", "suits them; black mud: nothing below 9 ft is counted"},
		{black + warmPond, "largemouth", "warmer than they like best; black mud: nothing below 5 ft is counted"},
		{turnedOver, "rainbow", "colder than they like best: look for warmer water; oxygen likely in one cold layer"},
		{"units: m C\n0.5 0.4\n2 1.8\n5 3\n9 3.9\n", "brook", "colder than they like best; oxygen not measured"},
		{"units: ft F\n0 64\n10 64\n20 63.5\n", "rainbow", "suits them; oxygen not measured"},
		{"units: ft F\n0 64 DO 9\n10 64 DO 9\n20 63.5 DO 8\n", "rainbow", "suits them, with enough oxygen"},
	} {
		if got := speak(demo.PlanFor(t, c.page, c.fish)).suits(); got != c.want {
			t.Errorf("%q\nwant %q", got, c.want)
		}
	}
}

// What is said of the top is known of the top, in the units of the page, and at its marks.
func TestSaysNoMoreThanWasRead(t *testing.T) {
	for _, c := range []struct {
		page, fish string
		has, not   []string
	}{
		{"units: ft F\n16 63\n", "rainbow", []string{"Cold water, 63 F at 16 ft: a fall", "The water is 63 F at 16 ft: a fall"}, []string{"at the top"}},
		{"units: ft F\n2 58\n6 50\n9 42\n", "rainbow", []string{"58 F at the top"}, nil},
		{"units: ft F\nbottom: 7 ft\n0 82\n3 79\n5 77.5\n", "bluegill", []string{"it may run out at any depth", "where it turns cold fastest"}, []string{"0 ft down", "down to 0 ft"}},
		{"units: m C\nbottom: 12.25 m\nsecchi: 3.5 m\n0 22.4\n2.5 22.1\n4.75 19.8\n6 14.2\n7.5 11\n9 8.9\n11 7.6\n", "brown", []string{"keep the fly 30 to 60 cm above their tops", "Under the boat it is 12.25 m"}, []string{"a foot"}},
		{"units: m C\n0.52 23.44\n2.03 23.21\n4.01 20.02\n5.06 15.55\n6.02 12.31\n8.01 9.1\n", "rainbow", []string{"of water, surface to bottom", "under the fly, not under the boat: 5.25 m", "Start over 5.25 m", "5.25 m "}, []string{"5.3 m"}},
	} {
		p := demo.PlanFor(t, c.page, c.fish)
		got := strings.Join(strings.Fields(Short(p, nil).Text(80)+" "+speak(p).where()), " ")
		for _, s := range Sections(p, nil) {
			got += " " + strings.Join(s.Items, " ")
		}
		for _, want := range c.has {
			if !strings.Contains(got, want) {
				t.Errorf("%q lacks %q:\n%s", c.page, want, got)
			}
		}
		for _, no := range c.not {
			if strings.Contains(got, no) {
				t.Errorf("%q says %q:\n%s", c.page, no, got)
			}
		}
	}
}

// In cold water warmer at the fly is good news, at a glance too; not in summer, nor under ice.
func TestWarmerIsGoodNewsAtAGlance(t *testing.T) {
	for page, want := range map[string]bool{turnedOver: true, julyPage: false, "units: m C\n0.5 0.4\n2 1.8\n5 3\n9 3.9\n": false} {
		if got := Short(demo.PlanFor(t, page, "brook"), nil).Text(80); strings.Contains(got, "warmer is good news") != want {
			t.Errorf("want %v:\n%s", want, got)
		}
	}
}

// Sky and hour that change nothing say so; where neither was noted nothing is said.
func TestLightThatChangesNothing(t *testing.T) {
	page := strings.TrimPrefix(julyPage, "date: 2026-07-18\n")
	for sky, want := range map[string]string{
		"date: 2026-07-18 14:20\n":                          "sky and hour as noted change nothing about the depth (common practice, untested)",
		"sky: partly cloudy\n":                              "sky and hour as noted change nothing about the depth (common practice, untested)",
		"date: 2026-07-18 14:20\nsky: clear\nwind: 1 mph\n": "bright sun on calm water sends fish down, but here that changes nothing: the start stays (common practice, untested)",
		"date: 2026-07-18\n":                                "",
		"":                                                  "",
		"date: 2026-07-18 06:10\n":                          "low sun brings fish up, but here that changes nothing: the start stays (common practice, untested)",
		"date: 2026-07-18 14:20\nsky: overcast\nwind: 12 mph\n": "a dull sky brings fish up, but here that changes nothing: the start stays (common practice, untested)",
		"date: 2026-07-18 14:20\nwind: 12 mph\n":                "a broken surface brings fish up, but here that changes nothing: the start stays (common practice, untested)",
	} {
		if got := speak(demo.PlanFor(t, sky+page, "rainbow")).lightReason(); got != want {
			t.Errorf("%q: %q, want %q", sky, got, want)
		}
	}
	s := speak(demo.PlanFor(t, page, "rainbow"))
	s.p.Band.Shift = light.Advice{Shift: light.Deeper, Why: light.BrightCalm}
	if got := s.lightReason(); got != "bright sun on calm water sends fish down: start deeper (common practice, untested)" {
		t.Errorf("%q", got)
	}
	s.p.Band.Shift = light.Advice{Shift: light.Shallower, Why: light.Overcast}
	if got := s.lightReason(); got != "a dull sky brings fish up: start shallower (common practice, untested)" {
		t.Errorf("%q", got)
	}
}

// Every finding, turn, first way, retreat and verdict has a sentence of its own.
func TestEveryAnswerHasWords(t *testing.T) {
	p := demo.PlanFor(t, julyPage, "rainbow")
	for _, c := range []struct {
		typeName, dir string
		words         func(code string) string
	}{
		{"Turn", "../plan", func(code string) string {
			return speak(p).expect(plan.AtFly{DepthM: 5, LowC: 12, HighC: 14, Turn: plan.Turn(code), PerDegreeM: 0.5})
		}},
		{"Way", "../plan", func(code string) string { return speak(p).noTake(plan.Way(code)) }},
		{"RetreatTo", "../plan", func(code string) string {
			return "Oxygen here would move you " + speak(p).retreat(plan.Retreat{To: plan.RetreatTo(code), TopM: 2, BottomM: 4})
		}},
		{"Finding", "../plan", func(code string) string {
			return speak(p).checked(plan.CheckedAt{Finding: plan.Finding(code), ExpectedC: 19, LowC: 18, HighC: 20, ShiftM: 1}, profile.Reading{DepthM: 4, TempC: 16})
		}},
	} {
		said := map[string]string{}
		for _, code := range codes(t, c.dir, c.typeName) {
			text := c.words(code)
			if len(text) < 20 || strings.Contains(text, "%!") || said[text] != "" {
				t.Errorf("%s %q says %q, as %q does", c.typeName, code, text, said[text])
			}
			said[text] = code
		}
	}
}

// The JSON has the part of the band that is the best bet, and none where there is none.
func TestBestBetJSON(t *testing.T) {
	for _, c := range []struct{ page, want string }{
		{oxygenAt20, `"best_bet":{"top_m":4.`},
		{oxygenAt20, `"bottom_m":6.096}`},
		{"units: ft F\n0 64 DO 9\n10 64 DO 9\n20 63.5 DO 8\n", `"best_bet":{"top_m":0,"bottom_m":6.`},
	} {
		data, err := json.Marshal(JSON(demo.PlanFor(t, c.page, "rainbow"), nil))
		if err != nil || !strings.Contains(string(data), c.want) {
			t.Errorf("no %s in %s, %v", c.want, data, err)
		}
	}
	p := demo.PlanFor(t, julyPage, "rainbow")
	if data, _ := json.Marshal(JSON(p, nil)); strings.Contains(string(data), "best_bet") {
		t.Errorf("a best bet where oxygen is unknown: %s", data)
	}
	if _, _, bet := p.Band.BestBet(p.Column.Last().DepthM); bet != band.NoPart {
		t.Errorf("%q", bet)
	}
}
