package report

import (
	"encoding/json"
	"strings"
	"testing"
	"unicode/utf8"

	"coldseam/profile/compare"
	"coldseam/profile/demo"
	"coldseam/profile/plan"
)

const (
	higherPage = "date: 2026-07-18\nunits: ft F\nbottom: 31 ft\n0 73\n3 73\n5 72\n8 70\n10 66\n12 62\n15 58\n20 53\n29 51\n"
	springPage = "date: 2026-05-02\nunits: ft F\nbottom: 31 ft\n0 50\n5 50\n10 48\n15 45\n20 44\n29 44\n"
)

func plansOf(t *testing.T, fish string, pages ...string) (plans []plan.Plan, names []string) {
	t.Helper()
	for _, page := range pages {
		plans = append(plans, demo.PlanFor(t, page, fish))
		names = append(names, "page.txt")
	}
	return plans, names
}

func TestCompare(t *testing.T) {
	warm := "units: ft F\nbottom: 10 ft\ndeepest: 10 ft\n0 80\n5 80\n10 79\n"
	for _, c := range []struct {
		name, fish string
		pages      []string
		want       []string
		never      []string
	}{
		{"wind", "rainbow", []string{"spot: reed point\nwind: SW 14 mph\nlake length: 1200 m\n" + julyPage, "spot: dam\n" + higherPage},
			[]string{"A: reed point, 2026-07-18 B: dam, 2026-07-18 WARM WATER, 73 F on top", "Fish B: water of 66 F or less begins about 5 ft shallower at B than at A.",
				"A B Fish 16 to 29 ft 11 to 29 ft Fly", "Thermocline", "Warm layer 73 F 73 F", "Oxygen unknown unknown",
				"The thermocline lies about 5 ft shallower at B than at A, and this wind alone can do that: it sets the ends about 5 ft apart, 9.5 ft at most.", "Then it turns round about"}, []string{"--wind", "days"}},
		{"oxygen read, but deeper", "rainbow", []string{oxygenAt20, higherPage}, []string{"Fish A: oxygen is likely where the fly starts; at B it is unknown and may be too low. But water of 66 F or less begins about 5 ft shallower at B than at A.", "Enough oxygen read at B, 12 ft down, would turn this round."}, nil},
		{"no wind known", "rainbow", []string{julyPage, higherPage}, []string{"whether wind alone did it can be told with --wind and --lake-length."}, nil},
		{"other days", "rainbow", []string{julyPage, strings.Replace(higherPage, "07-18", "07-21", 1)}, []string{"The drops are 3 days apart: the water may have changed more", "The thermocline lies about 5 ft shallower at B than at A."}, []string{"--wind"}},
		{"a day", "rainbow", []string{julyPage, strings.Replace(higherPage, "07-18", "07-19", 1)}, []string{"The drops are one day apart"}, nil},
		{"other waters", "rainbow", []string{"water: Alder Kettle\n" + julyPage, "water: Sedge Mere\n" + higherPage}, []string{"These are different waters."}, []string{"apart."}},
		{"both", "rainbow", []string{"water: Alder Kettle\n" + julyPage, "water: Sedge Mere\n" + springPage}, []string{"These are different waters, 77 days apart.", "A: WARM WATER"}, nil},
		{"the same", "rainbow", []string{julyPage, julyPage}, []string{"No difference between A and B that the readings can show: fish the one that is nearer.", "The thermoclines differ by less than the readings can tell."}, []string{"Fish A", "In order"}},
		{"the same, later", "rainbow", []string{julyPage, strings.Replace(julyPage, "07-18", "07-25", 1)}, []string{"No difference between A and B that the readings can show: nothing has changed that would move you."}, []string{"nearer"}},
		{"the same elsewhere, later", "rainbow", []string{"water: Alder Kettle\n" + julyPage, "water: Sedge Mere\n" + strings.Replace(julyPage, "07-18", "07-25", 1)}, []string{"No difference between A and B that the readings can show."}, []string{"nearer", "nothing has changed"}},
		{"three", "rainbow", []string{julyPage, warm, higherPage}, []string{"Fish C: water of 66 F or less", "In order: C, A, B.", "B has no thermocline: the water is one layer, top to bottom.", "Fish 16 to 29 ft none 11 to 29 ft"}, nil},
		{"one has none", "rainbow", []string{warm, julyPage}, []string{"A: page.txt B:", "Fish B: it has water that suits rainbow trout, and A has none."}, nil},
		{"none has", "rainbow", []string{warm, warm}, []string{"None of them has water that suits rainbow trout, as far as it was read."}, []string{"In order", "nearer"}},
		{"metric", "rainbow", []string{metric, strings.Replace(metric, "4.5 18.5\n5 16\n", "4.5 16\n5 14\n", 1)}, []string{" m "}, []string{" ft", " F ", "mph"}},
	} {
		plans, names := plansOf(t, c.fish, c.pages...)
		got := strings.Join(strings.Fields(Compare(plans, names, 400)), " ")
		for _, w := range c.want {
			if !strings.Contains(got, w) {
				t.Errorf("%s: no %q in\n%s", c.name, w, got)
			}
		}
		for _, w := range c.never {
			if strings.Contains(got, w) {
				t.Errorf("%s: %q in\n%s", c.name, w, got)
			}
		}
	}
	bass := demo.PlanFor(t, julyPage, "smallmouth")
	got := Compare([]plan.Plan{demo.PlanFor(t, julyPage, "lake trout"), bass}, []string{"a", "b"}, 400)
	if !strings.Contains(got, `They are for different fish: name one for all of them, e.g. --for "lake trout".`) || !strings.Contains(got, "A: 2026-07-18, for lake trout\n") || strings.Contains(got, "Fish A") {
		t.Errorf("%s", got)
	}
}

// At 30 to 100 columns no line is wider than the terminal, and no number is missing.
func TestCompareFits(t *testing.T) {
	plans, names := plansOf(t, "rainbow", "spot: off the reed point\n"+julyPage, "spot: a spot with a long name, off the dam\n"+higherPage, "wind: SW 14 mph\n"+julyPage)
	for _, n := range []int{2, 3} {
		for width := 30; width <= 100; width++ {
			got := Compare(plans[:n], names[:n], width)
			for _, line := range strings.Split(got, "\n") {
				if utf8.RuneCountInString(line) > width {
					t.Fatalf("%d columns: %q", width, line)
				}
			}
			if flat := strings.Join(strings.Fields(got), " "); strings.Count(flat, "22.5 ft") < 1 || strings.Count(flat, "73 F") < n {
				t.Fatalf("%d columns: a number is missing in\n%s", width, got)
			}
		}
	}
}

// Every reason and cause has words of its own.
func TestCompareCodesHaveWords(t *testing.T) {
	for _, pages := range [][]string{{julyPage, higherPage}, {metric, metric}, {julyPage, springPage, metric}} {
		plans, names := plansOf(t, "rainbow", pages...)
		c := newCompared(plans, names)
		for _, of := range []struct {
			typeName string
			words    func(code string) string
		}{
			{"Reason", func(code string) string { return c.reason(compare.Reason(code), 0, 1) }},
			{"Cause", func(code string) string {
				d := c
				d.a.NeedsWind, d.a.Cause = true, compare.Cause(code)
				if d.a.Cause == compare.NoThermocline {
					d.s = append([]speaker{}, c.s...)
					d.s[1].p.Layers.Thermocline = nil
				}
				return d.cause()
			}},
		} {
			said := map[string]string{}
			for _, code := range codes(t, "../compare", of.typeName) {
				text := of.words(code)
				if text == code || len(text) < 20 || strings.Contains(text, "%!") || said[text] != "" {
					t.Errorf("%s %q says %q, as %q does", of.typeName, code, text, said[text])
				}
				said[text] = code
			}
		}
	}
}

func TestCompareJSON(t *testing.T) {
	plans, names := plansOf(t, "rainbow", "wind: SW 14 mph\nlake length: 1200 m\n"+julyPage, higherPage)
	data, err := json.Marshal(CompareAsJSON(plans, names))
	for _, want := range []string{`{"drops":[{"letter":"A","name":"page.txt","date":"2026-07-18","for":"rainbow","found":true,"top_m":{"best":`, `"order":["B","A"],"why":["shallower"],"but":[],"one_fish":true,"one_water":true,"days_apart":0,"cause":"wind can","thermoclines_apart_m":{"best":1.`, `"wind_tilts_ends_apart_m":{`} {
		if err != nil || !strings.Contains(string(data), want) {
			t.Errorf("no %s in %s, %v", want, data, err)
		}
	}
	warm := "units: ft F\nbottom: 10 ft\ndeepest: 10 ft\n0 80\n5 80\n10 79\n"
	plans = []plan.Plan{demo.PlanFor(t, warm, "rainbow"), demo.PlanFor(t, julyPage, "smallmouth")}
	data, err = json.Marshal(CompareAsJSON(plans, names))
	for _, want := range []string{`"order":[],"why":[],"but":[],"one_fish":false`, `"cause":"no thermocline","text":"They are for different fish`, `"for":"rainbow","found":false,"mixed_layer_c"`} {
		if err != nil || !strings.Contains(string(data), want) {
			t.Errorf("no %s in %s, %v", want, data, err)
		}
	}
}
