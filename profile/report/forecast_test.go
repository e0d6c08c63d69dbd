package report

import (
	"encoding/json"
	"strings"
	"testing"
	"time"

	"coldseam/profile/demo"
	"coldseam/profile/forecast"
	"coldseam/profile/plan"
)

// expectedOf is what is expected on a day from pages of one water, the last of them last.
func expectedOf(t *testing.T, day, fish string, pages ...string) plan.Expected {
	t.Helper()
	on, err := time.Parse(time.DateOnly, day)
	if err != nil {
		t.Fatal(err)
	}
	in := forecast.Input{Day: on.Add(12 * time.Hour)}
	var made plan.Plan
	for _, page := range pages {
		made = demo.PlanFor(t, page, fish)
		when, ok := made.Drop.When()
		if !ok {
			t.Fatalf("no date: %s", page)
		}
		in.Drops = append(in.Drops, forecast.Drop{When: when, Layers: made.Layers})
	}
	f, err := forecast.Make(in)
	if err != nil {
		t.Fatal(err)
	}
	return made.Expect(demo.Input(t, pages[len(pages)-1], fish), f, in.Day)
}

const (
	kettleJuly = "water: Alder Kettle\ndate: 2026-07-02\nunits: ft F\nbottom: 31 ft\n0 74\n5 73\n10 71.5\n12 68\n14 63\n16 58\n20 51\n28 46\n"
	kettleLate = "water: Alder Kettle\ndate: 2026-07-21\nunits: ft F\nbottom: 31 ft\n0 73\n5 72.5\n10 72\n13 70\n15 66\n17 61\n20 55\n25 49\n28 47\n"
	kettlePast = "water: Alder Kettle\ndate: 2025-07-28\nunits: ft F\n0 74\n5 73.5\n10 73\n14 71\n16 66\n18 61\n20 56\n25 49\n28 47\n"
	kettleMay  = "water: Alder Kettle\ndate: 2026-05-10\nunits: ft F\nbottom: 31 ft\n0 58\n5 57\n8 55\n10 51\n12 48\n15 46\n20 44\n28 43\n"
	kettleTwo  = "water: Sedge Mere\ndate: 2026-07-18\nunits: m C\n0 20\n2 20\n4 19.5\n5 17\n6 13\n8 10\n11 9\n"
	kettleHot  = "water: Sedge Mere\ndate: 2026-07-18\nunits: m C\n0 27\n2 27\n4 26.5\n5 24\n6 22.5\n8 22\n"
	kettleAir  = "water: Alder Kettle\ndate: 2026-07-21\nunits: ft F\nbottom: 31 ft\ndepth ft, temp F, oxygen mg/L\n0 73 8\n5 72.5 8\n10 72 8\n13 70 8\n15 66 7\n17 61 6\n20 55 3\n25 49 1\n28 47 0.2\n"
)

func TestExpected(t *testing.T) {
	for _, c := range []struct {
		name, day, fish string
		pages           []string
		want, never     []string
	}{
		{"July", "2026-08-02", "rainbow", []string{kettlePast, kettleJuly, kettleLate}, []string{
			"Alder Kettle, 2026-08-02, for rainbow trout When last read: WARM WATER, 73 F on top",
			"No reading: an expectation from 2 drops of this season and one earlier year, the last 12 days before. Ranges hold in 8 of 10 cases.",
			"Fish from 16 ft 14 to 17 ft; 66 F or less from there down", "Thermocline 16 ft", "Top water 73 F 67 to 78 F",
			"Cast over 18 ft of water; floating line, long leader of 22", "Read first 14, 16 and 17 ft 66 F should be near 16 ft; if not, take a whole drop",
			"Confidence: depth fair; oxygen is not forecast.", "a storm or a cold week moves all of this"}, []string{"measure it again"}},
		{"one drop", "2026-07-22", "rainbow", []string{kettleLate}, []string{"an expectation from one drop, one day before."}, []string{"earlier year"}},
		{"the same day", "2026-07-21", "rainbow", []string{kettleLate}, []string{"from one drop, hours before."}, nil},
		{"one drop and an earlier year", "2026-07-31", "rainbow", []string{kettlePast, kettleLate}, []string{"from one drop and one earlier year, the last 10 days before."}, nil},
		{"May", "2026-05-20", "rainbow", []string{kettleMay}, []string{"Fish from not known the top may be over 66 F by then; the last drop had no water so warm", "if it is otherwise, take a whole drop"}, []string{"WARM"}},
		{"bass in May", "2026-05-20", "largemouth", []string{kettleMay}, []string{"Fish from the surface nothing should be warmer than 81 F", "Fish to not known all of it was colder than 70 F when last read"}, nil},
		{"bass in July", "2026-08-02", "largemouth", []string{kettleLate}, []string{"Fish to 1", "; colder than 70 F below", "fixed indicator, fly"}, nil},
		{"nearly cool enough", "2026-08-02", "rainbow", []string{kettleTwo}, []string{"or from the surface, if it has cooled to 19 C", " m"}, []string{" ft", "inch", " F "}},
		{"too warm as far as was read", "2026-07-28", "rainbow", []string{kettleHot}, []string{"Fish from not known the last drop did not reach water of 19 C or less"}, []string{"Cast over"}},
		{"oxygen measured", "2026-08-02", "rainbow", []string{kettleAir}, []string{"oxygen is not forecast: measure it again."}, nil},
		{"a fish of open water", "2026-08-02", "kokanee", []string{kettleLate}, []string{"Fly ", "over open water; "}, nil},
	} {
		got := strings.Join(strings.Fields(Expected(expectedOf(t, c.day, c.fish, c.pages...), 4000)), " ")
		for _, w := range c.want {
			if !strings.Contains(got, w) {
				t.Errorf("%s: no %q in: %s", c.name, w, got)
			}
		}
		for _, w := range c.never {
			if strings.Contains(got, w) {
				t.Errorf("%s: %q in: %s", c.name, w, got)
			}
		}
	}
}

// Nothing is wider than the terminal, and all of it fits one of 24 lines.
func TestExpectedFits(t *testing.T) {
	for _, width := range []int{40, 80} {
		text := Expected(expectedOf(t, "2026-08-02", "rainbow", kettlePast, kettleJuly, kettleLate), width)
		lines := strings.Split(strings.TrimSpace(text), "\n")
		for _, line := range lines {
			if len([]rune(line)) > width {
				t.Errorf("%d wide: %q", width, line)
			}
		}
		if width == 80 && len(lines) > 20 {
			t.Errorf("%d lines:\n%s", len(lines), text)
		}
	}
}

func TestExpectedJSON(t *testing.T) {
	b, err := json.Marshal(ExpectedAsJSON(expectedOf(t, "2026-08-02", "rainbow", kettlePast, kettleLate)))
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range []string{`"water":"Alder Kettle"`, `"on":"2026-08-02"`, `"for":"rainbow"`, `"last":"2026-07-21"`, `"days_ahead":12`, `"drops":1`, `"earlier_years":1`, `"thermocline_m":{"best":4.`,
		`"surface":"warmer"`, `"fish_from_m":{`, `"water_m":5.`, `"leader_m":`, `"rig":"long-leader"`, `"read_m":[`, `"confidence_depth":"fair"`, `"warnings":["When last read: WARM`} {
		if !strings.Contains(string(b), w) {
			t.Errorf("no %s in %s", w, b)
		}
	}
	b, _ = json.Marshal(ExpectedAsJSON(expectedOf(t, "2026-07-28", "rainbow", kettleHot)))
	for _, w := range []string{"fish_from_m", "water_m", "leader_m", `"rig"`} {
		if strings.Contains(string(b), w) {
			t.Errorf("%s, which is not known, in %s", w, b)
		}
	}
}

// Every refusal is a sentence that says what to do, with the day of the drop it is about.
func TestNoForecast(t *testing.T) {
	day := time.Date(2026, 8, 2, 12, 0, 0, 0, time.UTC)
	last := day.AddDate(0, 0, -12)
	for why, want := range map[forecast.Why]string{
		forecast.NoDrop:      "take one with coldseam drop",
		forecast.NotAhead:    "the last drop, of 2026-07-21, is not before 2026-08-02: ask for a day after it",
		forecast.OtherSeason: "the last drop, of 2026-07-21, is of another season: a forecast needs one at most 35 days before",
		forecast.TooOld:      "the last drop, of 2026-07-21, was more than 35 days before, and so far ahead nothing holds: read again",
		forecast.TooEarly:    "the last drop, of 2026-07-21, was taken before the layers have settled",
		forecast.TooLate:     "from the end of September (March in the south) waters turn over, and nothing is forecast: take a drop",
		forecast.TooFew:      "the last drop, of 2026-07-21, has under three depths: read again",
		forecast.UnderIce:    "the last drop, of 2026-07-21, is colder on top, as under ice",
		forecast.OneLayer:    "the last drop, of 2026-07-21, is one layer, top to bottom: there is no thermocline to forecast",
	} {
		if got := NoForecast(forecast.Refusal{Why: why, Last: last}, day); !strings.Contains(got, want) {
			t.Errorf("%q: %q, without %q", why, got, want)
		}
	}
}
