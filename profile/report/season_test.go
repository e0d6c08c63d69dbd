package report

import (
	"encoding/json"
	"strings"
	"testing"

	"coldseam/profile/demo"
	"coldseam/profile/plan"
)

// seasonOf is the season of pages of one water, the oldest first.
func seasonOf(t *testing.T, fish string, south bool, pages ...string) plan.Season {
	t.Helper()
	var all []plan.Dated
	for _, page := range pages {
		made := demo.PlanFor(t, page, fish)
		when, ok := made.Drop.When()
		if !ok {
			t.Fatalf("no date: %s", page)
		}
		all = append(all, plan.Dated{When: when, Plan: made})
	}
	return plan.SeasonOf(all, south)
}

// dated is a page with another date.
func dated(page, date string) string {
	before, rest, _ := strings.Cut(page, "date: ")
	_, rest, _ = strings.Cut(rest, "\n")
	return before + "date: " + date + "\n" + rest
}

const (
	kettleJune  = "water: Alder Kettle\ndate: 2026-06-12\nunits: ft F\nbottom: 31 ft\n0 68\n5 67\n8 66\n10 62\n12 57\n15 52\n20 47\n28 45\n"
	kettleMixed = "water: Alder Kettle\ndate: 2026-10-20\nunits: ft F\nbottom: 31 ft\n0 50\n10 50\n20 49.8\n28 49.5\n"
	kettleCool  = "water: Alder Kettle\ndate: 2026-09-10\nunits: m C\nbottom: 9.5 m\n0 17\n2 17\n4 17\n5 16.5\n6 13\n7 10\n9 9\n"
	kettleAir2  = "water: Alder Kettle\ndate: 2026-08-10\nunits: ft F\nbottom: 31 ft\ndepth ft, temp F, oxygen mg/L\n0 73 8\n5 72.5 8\n10 72 8\n13 70 6\n15 66 3\n17 61 2\n20 55 1\n25 49 1\n28 47 0.2\n"
)

func TestSeason(t *testing.T) {
	for _, c := range []struct {
		name, fish  string
		south       bool
		pages       []string
		want, never []string
	}{
		{"July after an earlier year", "rainbow", false, []string{kettlePast, kettleJune, kettleJuly, kettleLate}, []string{
			"Alder Kettle: 3 drops, 2026-06-12 to 2026-07-21, for rainbow trout Compared with the drop before it, 19 days earlier:",
			"Thermocline 14 to 17 ft was 11 to 15 ft: about 2.5 ft deeper", "Fish from 14 to 16 ft 66 F there; was 12 to 13 ft: about 2 ft deeper",
			"Top water 73 F down to 10 ft; was 74 F", "Years before 16 ft thermocline in the same fortnight of 2025: about the same now",
			"Sinking not clear from 3 drops over 39 days: anything from 0 ft up to 1.9 ft down a week",
			"One layer in autumn a drop of August or later narrows it"}, []string{"Oxygen"}},
		{"one drop", "rainbow", false, []string{kettleLate}, []string{"Alder Kettle: one drop, 2026-07-21, for rainbow trout", "The only day of this season: nothing to compare it with yet.",
			"Fish from 14 to 16 ft 66 F there", "Sinking not known 3 drops over 21 days are the least that show it; so far 1"}, []string{"was", "Years before"}},
		{"two spots of a day", "rainbow", false, []string{kettleLate, kettleLate}, []string{"2 drops, 2026-07-21, for", "The only day of this season"}, []string{"was", "2026-07-21 to"}},
		{"the next day", "rainbow", false, []string{kettleLate, dated(kettleLate, "2026-07-22")}, []string{"Compared with the drop before it, one day earlier:", "no change that the readings show"}, nil},
		{"backwards", "rainbow", false, []string{dated(kettleLate, "2026-07-01"), dated(kettleJune, "2026-07-20")}, []string{" shallower"}, nil},
		{"a rate", "rainbow", false, []string{kettleJune, dated(kettleJune, "2026-06-13"), kettleJuly, dated(kettleJuly, "2026-07-03"), kettleLate, dated(kettleLate, "2026-07-22")}, []string{"Sinking 0.9 ft a week 0.6 to 1.3 ft, in 8 of 10 cases; from 6 drops over 40 days"}, nil},
		{"a rate upwards", "rainbow", false, []string{dated(kettleLate, "2026-06-10"), dated(kettleLate, "2026-06-11"), dated(kettleJune, "2026-07-20"), dated(kettleJune, "2026-07-21")}, []string{" a week upwards"}, nil},
		{"earlier years, deeper now", "rainbow", false, []string{dated(kettleJune, "2023-07-20"), dated(kettleJune, "2024-07-20"), dated(kettleJune, "2025-07-20"), kettleLate}, []string{"same fortnight of 2023, 2024 and 2025: now about ", " deeper"}, nil},
		{"many earlier years, shallower now", "rainbow", false, []string{dated(kettleLate, "2021-06-12"), dated(kettleLate, "2022-06-12"), dated(kettleLate, "2023-06-12"), dated(kettleLate, "2024-06-12"), dated(kettleLate, "2025-06-12"), kettleJune},
			[]string{"same fortnight of 5 years from 2021 to 2025: now about ", " shallower"}, nil},
		{"another month of another year", "rainbow", false, []string{dated(kettleLate, "2025-08-21"), kettleLate}, []string{"The only day"}, []string{"Years before"}},
		{"one layer at last", "rainbow", false, []string{kettleLate, kettleMixed}, []string{"Thermocline none one layer, top to bottom; it was 14 to 17 ft", "Fish from the surface 66 F or less all the way", "One layer now top to bottom, when last read"}, nil},
		{"one layer twice", "rainbow", false, []string{dated(kettleMixed, "2026-10-10"), kettleMixed}, []string{"one layer, top to bottom, as before"}, nil},
		{"layers again", "rainbow", false, []string{dated(kettleMixed, "2026-04-10"), dated(kettleJune, "2026-06-10")}, []string{"there was none before"}, nil},
		{"September", "rainbow", false, []string{kettleCool}, []string{"One layer 29 Sep to 27 Oct again, by 15 autumns of lakes 9 to 14 m deep", " m"}, []string{" ft", " F "}},
		{"a deep lake", "rainbow", false, []string{"deepest: 40 m\n" + kettleCool}, []string{"One layer not known deeper than 15 m it comes later than in the lakes this was learnt from"}, nil},
		{"too warm", "rainbow", false, []string{kettleHot}, []string{"Fish from not reached as far as was read it is warmer than 66 F"}, nil},
		{"bass", "largemouth", false, []string{kettleLate}, []string{"Fish to 1", "70 F there"}, nil},
		{"bass in May", "largemouth", false, []string{kettleMay}, []string{"Fish to nowhere all of it is colder than 70 F"}, nil},
		{"oxygen", "rainbow", false, []string{kettleAir, kettleAir2}, []string{"Oxygen down to 14 ft 5 mg/L there; was 17 to 20 ft: about "}, nil},
		{"under ice", "rainbow", false, []string{"date: 2026-02-10\nunits: m C\n0 0.2\n1 2\n3 3.5\n5 4\n"}, []string{"One layer in spring when the ice is gone and the top has warmed a little"}, nil},
		{"one reading", "rainbow", false, []string{"date: 2026-08-10\nunits: m C\n3 20\n"}, []string{"One layer not known three depths are the least that show layers"}, nil},
		{"another spot", "rainbow", false, []string{"spot: inlet\n" + dated(kettleJune, "2026-06-20"), "spot: dam\n" + dated(kettleLate, "2026-07-25")}, []string{"35 days earlier at another spot:"}, nil},
		{"south", "rainbow", true, []string{dated(kettleJune, "2026-12-20"), dated(kettleLate, "2027-01-25")}, []string{"2 drops, 2026-12-20 to 2027-01-25", "a drop of February or later narrows it"}, nil},
	} {
		got := strings.Join(strings.Fields(Season(seasonOf(t, c.fish, c.south, c.pages...), 4000)), " ")
		for _, w := range c.want {
			if strings.Contains(w, "66 F") && strings.Contains(got, " C ") { // of a page in metres
				w = strings.ReplaceAll(w, "66 F", "19 C")
			}
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

// It fits the terminal, and a screen of twenty lines.
func TestSeasonFits(t *testing.T) {
	e := seasonOf(t, "rainbow", false, kettlePast, kettleJune, kettleJuly, kettleLate)
	for _, width := range []int{40, 80} {
		lines := strings.Split(strings.TrimSpace(Season(e, width)), "\n")
		for _, line := range lines {
			if len([]rune(line)) > width {
				t.Errorf("%d wide: %q", width, line)
			}
		}
		if width == 80 && len(lines) > 16 {
			t.Errorf("%d lines", len(lines))
		}
	}
	for _, line := range SeasonLines(e) {
		if !strings.HasSuffix(line, ".") {
			t.Errorf("no sentence: %q", line)
		}
	}
}

func TestSeasonJSON(t *testing.T) {
	text := func(e plan.Season) string {
		b, err := json.Marshal(SeasonAsJSON(e))
		if err != nil {
			t.Fatal(err)
		}
		return string(b)
	}
	got := text(seasonOf(t, "rainbow", false, kettlePast, kettleJune, kettleJuly, kettleLate))
	for _, w := range []string{`"water":"Alder Kettle"`, `"dates":["2026-06-12","2026-07-02","2026-07-21"]`, `"thermocline_m":{`, `"thermocline_before_m":{`, `"edge_m":{`, `"edge_before_m":{`,
		`"top_temp_c":22.778`, `"top_temp_before_c":`, `"earlier_years":[2025]`, `"earlier_years_thermocline_m":{`, `"sinking_m_per_day":{`, `"one_layer_unknown":"not yet"`, `"text":["Compared`} {
		if !strings.Contains(got, w) {
			t.Errorf("no %s in %s", w, got)
		}
	}
	if strings.Contains(got, "oxygen") || strings.Contains(got, "one_layer_from") {
		t.Errorf("what is not known: %s", got)
	}
	if got := text(seasonOf(t, "rainbow", false, kettleAir, kettleAir2)); !strings.Contains(got, `"oxygen_enough_to_m":{`) || !strings.Contains(got, `"oxygen_enough_to_before_m":{`) || !strings.Contains(got, `"one_layer_from":"2026-09-29"`) {
		t.Errorf("%s", got)
	}
}
