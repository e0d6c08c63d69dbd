package report

import (
	"encoding/json"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/rig"
	"coldseam/profile/sun"
	"coldseam/profile/trip"
	"coldseam/profile/unit"
)

const tripFt = 0.3048

func tripDay(text string) time.Time {
	d, err := time.Parse(time.DateOnly, text)
	if err != nil {
		panic(err)
	}
	return d
}

// aTrip is one for a fish to a lake 38 ft deep, with what it is expected to be.
func aTrip(t *testing.T, wanted, units string, rules rig.Rules, e trip.Expectation) Trip {
	t.Helper()
	f, err := fish.Find(wanted)
	if err != nil {
		t.Fatal(err)
	}
	u, err := unit.ParseSystem(units)
	if err != nil {
		t.Fatal(err)
	}
	in := trip.Input{Day: tripDay("2026-08-01"), Deepest: profile.Some(38 * tripFt), ClearanceM: tripFt}
	tackle := trip.Tackle{Tackle: rig.DefaultTackle(), StepM: rig.Step(u.Feet()), Rules: rules, Suspended: f.OpenWater, Teeth: f.Teeth, UsualKg: f.FlyG.Value / 1000}
	return Trip{
		Water: "Alder Kettle", Day: in.Day, Fish: f, Units: u, Rules: rules, Expect: e,
		Kit: trip.Pack(e, in, tackle, u.Feet(), u.DepthStepM()),
	}
}

func estimate(low, best, high float64) *profile.Estimate {
	return &profile.Estimate{Low: low * tripFt, Best: best * tripFt, High: high * tripFt}
}

func layered() trip.Expectation {
	return trip.Expectation{
		State: trip.Layered, From: trip.Season, Drops: 3, Last: tripDay("2026-07-25"), Thermocline: estimate(12, 14, 17), Edge: estimate(12, 14, 16), Water: estimate(14, 16, 18),
	}
}

// Half a page: it fits 80 columns and 33 lines, and no line is wider than the terminal.
func TestTripPage(t *testing.T) {
	east := profile.Some(-89.3)
	o := sun.Look(tripDay("2026-08-01"), 46.1, east, profile.Some(2.7), time.FixedZone("CDT", -5*3600))
	rules := rig.Rules{Water: "Alder Kettle", MaxLeaderM: 18 * tripFt, Checked: "2026-05-01"}
	got := aTrip(t, "rainbow", "ft F", rules, layered())
	got.Sun = &o
	text := got.Text(80)
	for _, want := range []string{
		"Trip to Alder Kettle, 2026-08-01, for rainbow trout\n\nExpected from 3 drops of this season, the last of 2026-07-25.\n\n",
		"Thermocline  12 to 17 ft        in 8 of 10 cases\n", "Fish below   12 to 16 ft        where it has cooled to 66 F, in 8 of 10 cases\n",
		"Cast over    14 to 18 ft        of water, surface to bottom\n", "Marked line  45 ft              for readings down to 37 ft\n",
		"Anchor rope  90 to 130 ft       5 to 7 times 18 ft, for each of two anchors\n", "then close above the bottom, then 14 ft;\n",
		"Tie at home, by the depth of water under the fly (rig; sink time; retrieve):\n", "14 ft        17.5 ft leader     long leader; sink time ", "in/s\n",
		"Bring: thermometer, a cup of ice to check it at 32 F, marked line with 8 to 16\noz, pencil and page, Secchi disk, ", "life jacket (wear it).\n",
		"Rules of Alder Kettle as you noted them, checked 2026-05-01: leader no longer\nthan 18 ft.", "Sunrise 05:39, sunset 20:2", "Under a clear sky the light that reaches 24 ft at noon",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q:\n%s", want, text)
		}
	}
	for _, width := range []int{80, 40, 132} {
		for _, line := range strings.Split(got.Text(width), "\n") {
			if utf8.RuneCountInString(line) > width {
				t.Errorf("wider than %d: %q", width, line)
			}
		}
	}
	if n := strings.Count(text, "\n"); n > 33 {
		t.Errorf("%d lines:\n%s", n, text)
	}
	if metric := aTrip(t, "rainbow", "m C", rules, layered()).Text(80); strings.Contains(metric, " ft") || strings.Contains(metric, " F") || strings.Contains(metric, "oz") || strings.Contains(metric, "in/s") {
		t.Errorf("feet in a metric answer:\n%s", metric)
	}
}

// Every source, state and limit has its words.
func TestTripSays(t *testing.T) {
	with := func(change func(e *trip.Expectation)) trip.Expectation {
		e := layered()
		change(&e)
		return e
	}
	for _, c := range []struct {
		name, fish string
		e          trip.Expectation
		has, lacks []string
	}{
		{"one drop", "rainbow", with(func(e *trip.Expectation) { e.Drops = 1 }), []string{"Expected from one drop of this season, the last of 2026-07-25."}, nil},
		{"years", "rainbow", with(func(e *trip.Expectation) { e.From, e.Drops, e.Years, e.Last = trip.Years, 4, 3, tripDay("2025-07-30") }),
			[]string{"Expected from 4 drops about this day in 3 years, the last of 2025-07-30."}, nil},
		{"lakes", "rainbow", with(func(e *trip.Expectation) { e.From = trip.Lakes }), []string{"this is what 8 of 10 measured lakes of that depth do in summer."}, []string{"Expected"}},
		{"a shallow lake", "rainbow", trip.Expectation{State: trip.Unsure, From: trip.Lakes, Water: estimate(8, 9, 10), WaterTaken: true},
			[]string{"of measured lakes so shallow about half were layered in summer.", "Thermocline  not known          one layer or several\n", "Fish         from the top       down, unless it is warmer than 66 F there: a", "where fish feed (common practice)"}, nil},
		{"length", "rainbow", with(func(e *trip.Expectation) { e.From = trip.Length }), []string{"this is a rule of thumb by the lake's length, and its spread is a guess. The greatest depth (--deepest) tells more."}, nil},
		{"a month", "rainbow", trip.Expectation{State: trip.Unsure, From: trip.Month, Water: estimate(8, 14, 20), WaterTaken: true}, []string{"and no measured lakes tell whether the water is layered now."}, nil},
		{"one layer", "rainbow", trip.Expectation{State: trip.OneLayer, From: trip.Years, Drops: 2, Years: 1, Water: estimate(8, 9, 12)}, []string{"Thermocline  none               one layer, top to bottom, is likely\n", "in one year"}, []string{"then 14 ft"}},
		{"ice", "rainbow", trip.Expectation{State: trip.Iced, From: trip.Month}, []string{"lakes may be under ice now.", "ICE: test it as you go, never go alone, carry ice picks; clear ice of 4 in", "under ice it is colder on top", "a spud to test the ice", "a partner"},
			[]string{"Cast over", "Tie at home", "Anchor rope", "life jacket", "anchors"}},
		{"ice by the book", "rainbow", trip.Expectation{State: trip.Iced, From: trip.Years, Drops: 1, Years: 1, Last: tripDay("2025-01-24")}, []string{"Expected from one drop about this day in one year", "ICE: "}, []string{"Tie at home"}},
		{"too warm", "rainbow", with(func(e *trip.Expectation) { e.TooWarm, e.Water = true, nil }), []string{"Fish         perhaps nowhere    66 F may lie deeper than any water known here:", "Cast over    not known\n"}, []string{"Tie at home", "Anchor rope"}},
		{"perhaps cool enough on top", "rainbow", with(func(e *trip.Expectation) { e.MaybeTop = true }), []string{"in 8 of 10 cases; or from the top, if it has cooled to 66 F"}, nil},
		{"perhaps too warm", "rainbow", with(func(e *trip.Expectation) { e.EdgeUnsure = true }), []string{"where it has cooled to 66 F, if it has at all"}, nil},
		{"deep", "rainbow", with(func(e *trip.Expectation) { e.Edge, e.Water = estimate(30, 31, 36), estimate(30, 31, 36) }), []string{"sinking line; sink time ", "a sinking line, two anchors"}, []string{"indicators"}},
		{"open water", "kokanee", layered(), []string{"Fly          13 to 17 ft down   over open water\n", "by the depth of the fly (rig;"}, []string{"Cast over", "Anchor rope"}},
		{"teeth", "pike", layered(), []string{"wire for bite tippets"}, nil},
	} {
		got := aTrip(t, c.fish, "ft F", rig.Rules{}, c.e)
		text := got.Text(80)
		for _, want := range c.has {
			if !strings.Contains(strings.Join(strings.Fields(text), " "), strings.Join(strings.Fields(want), " ")) {
				t.Errorf("%s lacks %q:\n%s", c.name, want, text)
			}
		}
		for _, no := range c.lacks {
			if strings.Contains(text, no) {
				t.Errorf("%s has %q:\n%s", c.name, no, text)
			}
		}
		if strings.Contains(text, "%!") || strings.Contains(text, "NaN") {
			t.Errorf("%s:\n%s", c.name, text)
		}
	}
	got := aTrip(t, "rainbow", "ft F", rig.Rules{}, layered())
	got.Water, got.Clear = "", true
	if text := got.Text(80); !strings.HasPrefix(text, "Trip on 2026-08-01, for rainbow trout\n") || strings.Contains(text, "Secchi disk") || !strings.Contains(text, "Local rules come first") {
		t.Errorf("no name, clarity known:\n%s", text)
	}
	capped := aTrip(t, "rainbow", "ft F", rig.Rules{Water: "Alder Kettle", MaxLeaderM: 15 * tripFt, NoIndicator: true}, layered()).Text(80)
	if !strings.Contains(capped, "reaches only") && !strings.Contains(capped, "sinking line") {
		t.Errorf("a capped leader:\n%s", capped)
	}
}

func TestTripJSON(t *testing.T) {
	got := aTrip(t, "rainbow", "ft F", rig.Rules{Water: "Alder Kettle", MaxLeaderM: 18 * tripFt, NoAddedWeight: true, Checked: "2026-05-01"}, layered())
	data, err := json.Marshal(got.JSON())
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		`{"water":"Alder Kettle","date":"2026-08-01","for":"rainbow","state":"layered","from":"season","drops":3,"years":0,"last_drop":"2026-07-25","thermocline_m":{"best":4.267,"low":3.658,"high":5.182}`,
		`"band_top_m":{"best":4.267,`, `"water_m":{"best":4.877,`, `"water_by_practice":false,"too_warm":false,"marked_line_m":13.716,`, `"anchor_rope_m":{"low":27.432,"high":39.624}`,
		`"read_first_m":4.267,"leaders":[{"water_m":4.267,"rig":{"kind":"long-leader",`, `"bring":["thermometer",`, `"rules":{"max_leader_m":5.486,"added_weight":false,"indicator":true,"checked":"2026-05-01"}`,
	} {
		if !strings.Contains(string(data), want) {
			t.Errorf("lacks %s:\n%s", want, data)
		}
	}
	data, _ = json.Marshal(aTrip(t, "rainbow", "ft F", rig.Rules{}, trip.Expectation{State: trip.Iced, From: trip.Month}).JSON())
	for _, no := range []string{"thermocline_m", "water_m", "anchor_rope_m", "rules", "sun", "last_drop"} {
		if strings.Contains(string(data), `"`+no+`"`) {
			t.Errorf("ice has %s:\n%s", no, data)
		}
	}
	if !strings.Contains(string(data), `"leaders":[]`) {
		t.Errorf("%s", data)
	}
}
