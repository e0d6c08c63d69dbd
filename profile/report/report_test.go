package report

import (
	"encoding/json"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"coldseam/profile/demo"
	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/plan"
)

const summer = "units: ft F\nbottom: 30 ft\n0 74\n5 73.5\n10 72\n15 65\n20 56\n25 52\n"

// all is everything that is printed about a plan, in one run of words.
func all(p plan.Plan) string {
	why, changes := Reasons(p)
	parts := slices.Concat([]string{Title(p)}, Warnings(p), Answer(p), []string{Sure(p)}, Confirm(p), why, changes, Assumed(p), AsRead(p, nil), Cautions(p))
	return strings.Join(strings.Fields(strings.Join(parts, " ")), " ")
}

func TestWords(t *testing.T) {
	for _, c := range []struct {
		name, page, fish string
		want             []string
		never            []string
	}{
		{"midsummer", summer, "rainbow", []string{
			"WARM WATER: the top layer is 74 F.", "likely to die if released: no catch and release", "stop at your limit, or fish for perch or bass instead",
			"Cool enough from 15 to 25 ft down", "oxygen is unknown and may be too low there, so the upper edge is the best bet", "Cast where the water under the fly is", "From fly line to fly", "tippet", "holding the line tight", "averaged over pauses",
			"The thermocline is between 13 and 17 ft", "oxygen is unknown in all of the band", "Not measured, so no depth was ruled out for oxygen", "expect", "Read again after 2 to 3 hours", "the marks are taken as read at the water's surface",
		}, []string{"inf", "NaN", "%!", " 0 ft to 0 ft"}},
		{"bass", summer, "smallmouth", nil, []string{"WARM WATER", "likely to die"}},
		{"mixed", "units: ft F\n0 60\n10 60\n20 60\n", "rainbow", []string{"One layer, top to bottom: no thermocline"}, []string{"is between", "WARM"}},
		{"two readings", "units: ft F\n0 74\n20 56\n", "rainbow", []string{"Too few readings (2) to find a thermocline", "Confidence: depth poor, oxygen"}, []string{"is between"}},
		{"winter", "units: m C\n0.5 0.4\n2 1.8\n5 3\n9 3.9\n", "brook", []string{"Colder above, below 4 C", "If there is ice"}, []string{"wind turns", "anchors", "whitecaps"}},
		{"warm as far as read", "units: ft F\n0 74\n10 73\n20 70\n", "rainbow", []string{"Not reached here: the deepest reading, 20 ft, is still 70 F", "move to deeper water", "leave these fish alone until the water cools"}, []string{"Cast where"}},
		{"warm to the bottom of the lake", "units: ft F\ndeepest: 21 ft\n0 76\n10 75\n20 74\n", "rainbow", []string{"No depth of this lake is cool enough for rainbow trout", "Leave these fish alone until the water cools"}, []string{"Cast where"}},
		{"cool but not comfortable", "units: ft F\ndeepest: 21 ft\n0 69\n10 68.5\n20 68\n", "rainbow", []string{"above what they like (66 F) but not above what they use (70 F)"}, nil},
		{"cold for walleye", "units: ft F\n0 50\n10 49\n20 48\n", "walleye", []string{"All of this water is colder than walleye like"}, nil},
		{"deep", "units: m C\nbottom: 45 m\n0 21\n5 21\n10 20\n15 16\n20 9\n30 6\n44 5\n", "lake trout", []string{"Sinking line", "deeper than common practice", "can let the gas out"}, []string{"Count -"}},
		{"methods apart", "units: ft F\n0 75.2\n6.5 74.8\n10 68\n16.5 65.3\n23 59\n29.5 51.8\n36 47\n", "rainbow", []string{"Confidence: depth fair, oxygen unknown", "a smooth step fitted to the readings puts the thermocline at 15 ft"}, nil},
		{"one reading fewer", "units: ft F\n0 75.2\n6.5 74.8\n10 68\n16.5 65.3\n23 59\n29.5 51.8\n", "rainbow", nil, []string{"smooth step"}},
		{"too warm above, no oxygen below", "units: ft F\nbottom: 20 ft\n0 76 DO 8\n5 75.5 DO 8\n10 74.8 DO 6\n15 73 DO 1.2\n19 70 DO 0.2\n", "rainbow", []string{
			"No water here is both cool and safe for rainbow trout: too warm above, no oxygen below", "It is over 66 F down to the deepest reading, 19 ft, and below about 11 ft there is less than the 5 mg/L they need",
			"Leave these fish alone", "the oxygen too",
		}, []string{"deeper water and read", "Not reached", "Cast where", "or less further down"}},
		{"cool below where oxygen ends", "units: ft F\n0 76 DO 8\n5 75.5 DO 8\n10 74.8 DO 6\n15 70 DO 1.2\n19 60 DO 0.2\n", "rainbow", []string{"too warm above, no oxygen below", "over 66 F down to about 17 ft", "Leave these fish alone"}, []string{"move to deeper"}},
		{"oxygen short at every depth, all cool", "units: ft F\n0 36 DO 2\n5 38 DO 1.5\n10 39 DO 1\n", "rainbow", []string{"at no depth where oxygen was measured", "Leave these fish alone"}, []string{"too warm", "move to deeper"}},
		{"bass's water starved", "units: m C\n0 24 DO 2\n3 22 DO 2\n6 15 DO 8\n9 10 DO 8\n", "smallmouth", []string{"No water here suits smallmouth bass", "Leave these fish alone"}, []string{"cool and safe"}},
		{"oxygen holds, warm as far as read", "units: ft F\n0 76 DO 8\n10 75 DO 8\n20 72 DO 7\n", "rainbow", []string{"Not reached here", "move to deeper water"}, []string{"no oxygen below"}},
		{"spring", "units: ft F\n0 51.5\n5 49.5\n10 48\n15 46\n20 45\n25 44.5\n", "rainbow", []string{
			"colder than they like best (55 to 66 F)", "fish the warmest you find", "Warmer is good news", "shallower first: the warmer water is there", "would move you there", "start where it is warmest",
		}, []string{"Warmer: go deeper", "would move you down", "too warm there", "Fish should hold"}},
		{"spring, the fly where it cools fast", "units: m C\n0 10 DO 11\n1 9 DO 11\n2 7 DO 11\n3 5.5 DO 11\n6 5 DO 11\n", "rainbow", []string{"Warmer is good news: they like 13 to 19 C. Colder: go shallower"}, []string{"Warmer: go deeper"}},
		{"autumn, a cooled top", "units: m C\n0 8\n1 8\n2 8.4\n4 10\n8 10\n", "walleye", []string{"Warmer is good news", "look for warmer water elsewhere"}, []string{"Warmer: go deeper", "would move you down", "shallower first"}},
		{"under ice, oxygen measured", "units: m C\n0.5 0.4 DO 12\n2 1.8 DO 11\n5 3 DO 9\n9 3.9 DO 7\n", "brook", []string{"start where it is warmest"}, []string{"shallower first", "sunny"}},
		{"under ice", "units: m C\n0.5 0.4\n2 1.8\n5 3\n9 3.9\n", "brook", []string{"Under the ice all of it is colder", "shallower first: late in winter oxygen fails from the bottom up", "start no deeper than over the shelf"}, []string{"sunny", "good news", "wind blows"}},
		{"cool to the top", "units: m C\n0 17\n3 16\n5 12\n8 8\n", "rainbow", []string{"Anything from 13 to 19 C suits them"}, []string{"would move you down", "Warmer: go deeper", "good news", "too warm there"}},
		{"too little oxygen above the band", "units: m C\nbottom: 14 m\n0 24 DO 2\n3 23 DO 3\n6 17 DO 4\n9 11 DO 8\n12 9 DO 8\n", "rainbow", []string{"deeper first: above", "there is too little oxygen", "would move you down: above it there is too little as well"}, []string{"colder: go shallower", "hardly any water above"}},
		{"a warm edge", summer, "rainbow", []string{"Warmer: go deeper", "deeper first: above", "would move you down"}, []string{"good news", "suits them"}},
		{"bass in a cold lake", "units: m C\n0 14\n2 13.5\n4 11\n8 7\n", "largemouth", []string{"All of this water is colder than largemouth bass like (21 to 27 C)", "Warmer is good news"}, []string{"Warmer: go deeper", "would move you down", "warmer than they like"}},
		{"bass between its edges", "units: m C\n0 25\n3 24\n5 21\n6 17\n8 12\n", "smallmouth", []string{"Anything from 19 to 27 C suits them", "water under 19 C at"}, []string{"would move you down", "good news"}},
		{"a lake of which nothing is known", summer, "rainbow", []string{"may be too low there, so the upper edge", "Temperature alone cannot tell: in clear, deep lakes this doubt is nearly always a false alarm. Note the lake's deepest water and the Secchi depth"}, []string{"hold it all the way", "one deep lake in three"}},
		{"a shallow lake", "deepest: 35 ft\n" + summer, "rainbow", []string{"may be too low there, so the upper edge"}, []string{"false alarm"}},
		{"a deep lake", "deepest: 90 ft\n" + summer, "rainbow", []string{"oxygen is unknown and may be too low there, but one deep lake in three holds it all the way down. They", "Note the Secchi depth"}, []string{"nearly always"}},
		{"a deep, clear lake", "deepest: 90 ft\nsecchi: 24 ft\n" + summer, "rainbow", []string{"oxygen is unknown and may be too low there, but most clear, deep lakes hold it all the way down. They", "nearly always a false alarm (common practice)"}, []string{"Note the"}},
		{"a deep, clear lake with black mud", "deepest: 90 ft\nsecchi: 24 ft\nanchor: black\n" + summer, "rainbow", []string{"the mud on the anchor came up black"}, []string{"all the way down", "false alarm"}},
		{"wind", "units: ft F\nwind: 18 mph\n0 60\n10 60\n20 60\n", "rainbow", []string{"Come in"}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := all(demo.PlanFor(t, c.page, c.fish))
			for _, w := range c.want {
				if !strings.Contains(strings.ToLower(got), strings.ToLower(w)) {
					t.Errorf("no %q in\n%s", w, Wrap(got, "", Width))
				}
			}
			for _, w := range c.never {
				if strings.Contains(got, w) {
					t.Errorf("%q in\n%s", w, Wrap(got, "", Width))
				}
			}
		})
	}
}

// TestWarningsFirst: what makes the plan moot is not said again under Care.
func TestWarningsFirst(t *testing.T) {
	p := demo.PlanFor(t, summer, "rainbow")
	if w := Warnings(p); len(w) != 1 || !strings.HasPrefix(w[0], "WARM WATER") {
		t.Errorf("warnings %q", w)
	}
	if strings.Contains(strings.Join(Cautions(p), " "), "likely to die") {
		t.Error("the gate is said twice")
	}
}

// TestJSONKeys pins the keys that scripts rely on.
func TestJSONKeys(t *testing.T) {
	data, err := json.Marshal(JSON(demo.PlanFor(t, "water: Alder Kettle\n"+summer, "rainbow"), []notebook.Note{{Line: 1, Text: "x"}}))
	if err != nil {
		t.Fatal(err)
	}
	var got map[string]any
	if err := json.Unmarshal(data, &got); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{
		"":           "band bottom_m cautions confidence for layers notes readings rig water",
		"layers":     "bottom_reached_first metalimnion_bottom_m metalimnion_top_m mixed_layer_m other_breaks steepest_c_per_m structure thermocline_m",
		"band":       "bottom_m cast_deep_m cast_shallow_m changes doubtful_below_m found others oxygen start_m suspended top_m why",
		"rig":        "add_bite_tippet fastest_retrieve_mps flies fly_assumed fly_depth_m fly_g kind leader_m parts reachable rule_holds_to_mps rule_leader_m rule_wait_s runner_up slowest_retrieve_mps spool wait_s",
		"confidence": "depth oxygen",
	} {
		m := got
		if path != "" {
			m = got[path].(map[string]any)
		}
		if keys := strings.Join(slices.Sorted(maps.Keys(m)), " "); keys != want {
			t.Errorf("keys of %q: %s\nwant %s", path, keys, want)
		}
	}
	if top := got["band"].(map[string]any)["top_m"].(map[string]any); len(top) != 3 || top["low"].(float64) > top["best"].(float64) || top["best"].(float64) > top["high"].(float64) {
		t.Errorf("top_m %v", top)
	}
	parts, sum := got["rig"].(map[string]any)["parts"].([]any), 0.0
	for _, p := range parts {
		sum += p.(map[string]any)["length_m"].(float64)
	}
	if leader := got["rig"].(map[string]any)["leader_m"].(map[string]any)["best"].(float64); math.Abs(sum-leader) > 0.0006 {
		t.Errorf("the parts sum to %v m, the leader is %v m", sum, leader)
	}
}

// TestJSONWithout: with no band there is no rig and no edge, and unknown is absent.
func TestJSONWithout(t *testing.T) {
	data, err := json.Marshal(JSON(demo.PlanFor(t, "units: ft F\n0 74\n10 73.5\n20 73\n", "rainbow"), nil))
	if err != nil {
		t.Fatal(err)
	}
	for _, never := range []string{`"rig"`, `"top_m"`, `"water"`, `"bottom_m"`, `"thermocline_m"`, "null"} {
		if strings.Contains(string(data), never) {
			t.Errorf("%s in %s", never, data)
		}
	}
	for _, want := range []string{`"found":false`, `"suspended":false`, `"bottom_reached_first":false`, `"others":[]`, `"structure":"mixed"`} {
		if !strings.Contains(string(data), want) {
			t.Errorf("no %s in %s", want, data)
		}
	}
}

func TestCheckReading(t *testing.T) {
	p := demo.PlanFor(t, summer, "rainbow")
	for _, c := range []struct {
		text, want string
		shift      float64 // m
	}{
		{"units: ft F\n15 65", "as expected", 0},
		{"units: ft F\n15 56", "shallower", -5 * 0.3048}, // 56 F lay at 20 ft
		{"units: ft F\n20 65", "deeper", 5 * 0.3048},     // 65 F lay at 15 ft
	} {
		sheets, err := notebook.Read([]byte(c.text), notebook.Options{})
		if err != nil {
			t.Fatal(err)
		}
		got := CheckReading(p, sheets[0].Drop.Readings[0])
		if got.ShiftM == nil || math.Abs(*got.ShiftM-c.shift) > 0.01 || !strings.Contains(got.Text, c.want) {
			t.Errorf("%q: %+v", c.text, got)
		}
	}
}

// What one reading changes hangs on the side of the fish's range on which the water lies.
func TestCheckTurnsRound(t *testing.T) {
	const spring = "units: ft F\n0 50\n5 49.5\n10 48\n15 46\n20 45\n25 44.5\n"
	const ice = "units: m C\n0.5 0.4\n2 1.8\n5 3\n9 3.9\n"
	for _, c := range []struct {
		name, page, fish, reading string
		has, not                  string
	}{
		{"warmer in spring", spring, "rainbow", "10 49.6", "good news", "too warm"},
		{"warmer than all of it", spring, "rainbow", "6 52", "That is good news: rainbow trout like 55 to 66 F", "deeper here"},
		{"too warm for it all the same", spring, "rainbow", "6 69", "too warm there for rainbow trout: go deeper", "good news"},
		{"colder in spring", spring, "rainbow", "10 46.5", "fly about 3 ft down", "good news"},
		{"far colder in spring", spring, "rainbow", "10 45", "Read it again first: if it is right, the layers lie about 10 ft shallower here than on the page, and one reading is too little to go by. If it stays so, take a new drop", "So "},
		{"far warmer in spring", spring, "rainbow", "20 49.5", "15 ft deeper here than on the page, and one reading is too little to go by. It would be good news: they like it warmer", "So "},
		{"a slipped digit", summer, "rainbow", "14 640", "Check: 640 F at 14 ft does not look right (64 F?). Read it again: until then nothing changes", "layers"},
		{"colder than all of it", spring, "rainbow", "10 42", "They like it warmer", "go deeper"},
		{"colder for bass", "units: ft F\n0 57\n6 56\n13 52\n26 45\n", "largemouth", "13 40", "They like it warmer", "good news"},
		{"warmer under ice", ice, "brook", "2 2.9", "good news", "too warm"},
		{"warmer in summer", summer, "rainbow", "20 65", "fish should hold", "good news"},
		{"warmer deep in summer", summer, "rainbow", "25 57", "the layers lie about 5.5 ft deeper here than on the page", "good news"},
		{"far warmer in summer", summer, "rainbow", "25 72", "Read it again first", "fly about"},
		{"warm to the bottom now", "units: ft F\nbottom: 22 ft\n0 74\n10 72\n16 68\n22 64\n", "rainbow", "22 68", "Not reached here", "good news"},
		{"a suspended fish", summer, "kokanee", "20 52", "So hang the fly", "water under the fly"},
	} {
		page := c.page
		sheets, err := notebook.Read([]byte(page[:strings.Index(page, "\n")+1]+c.reading), notebook.Options{})
		if err != nil {
			t.Fatal(err)
		}
		got := CheckReading(demo.PlanFor(t, page, c.fish), sheets[0].Drop.Readings[0]).Text
		if !strings.Contains(got, c.has) || strings.Contains(got, c.not) {
			t.Errorf("%s: want %q and not %q in %s", c.name, c.has, c.not, got)
		}
	}
}

func TestWrap(t *testing.T) {
	long := strings.Repeat("word ", 60)
	for i, line := range strings.Split(Wrap(long, "  ", Width), "\n") {
		if n := len(line); n > Width || i > 0 && !strings.HasPrefix(line, "  word") {
			t.Errorf("%d columns: %q", n, line)
		}
	}
	if plain.Line("a\x1bb\u202ec\n") != "a\ufffdb\ufffdc\ufffd" {
		t.Errorf("%q", plain.Line("a\x1bb\u202ec\n"))
	}
}

// TestEveryFishOnEveryDemo: no fish and no page makes nonsense of the words.
func TestEveryFishOnEveryDemo(t *testing.T) {
	pages, _ := filepath.Glob("../../testdata/*.txt")
	if len(pages) == 0 {
		t.Fatal("no demo pages")
	}
	for _, page := range pages {
		data, err := os.ReadFile(page)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range fish.All() {
			got := all(demo.PlanFor(t, string(data), f.Key))
			for _, bad := range []string{"NaN", "Inf", "%!", " -0", "  ", "..", " 0 ft down", " 0 m down"} {
				if strings.Contains(got, bad) {
					t.Errorf("%s for %s: %q in\n%s", page, f.Key, bad, Wrap(got, "", Width))
				}
			}
		}
	}
}
