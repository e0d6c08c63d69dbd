package say

import (
	"encoding/json"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
)

// planOf makes the plan of a page with the default settings.
func planOf(t testing.TB, page, wanted string) plan.Plan {
	t.Helper()
	sheets, err := notebook.Read([]byte(page), notebook.Options{Name: "page"})
	if err != nil {
		t.Fatal(err)
	}
	f, err := fish.Find(wanted)
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Make(plan.Input{Drop: sheets[0].Drop, Fish: f, Stock: rig.DefaultStock(), ClearanceM: plan.ClearanceM, LongestM: rig.LongestM, RodM: rig.RodM})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

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
			"WARM WATER: the top layer is 74 F.", "likely to die if released: no catch and release", "stop at the limit, or fish for perch or bass instead",
			"Fish should hold", "Cast where the water under the fly is", "From fly line to fly", "tippet", "from the moment the fly lands", "pauses counted",
			"The break (thermocline) is between 13 and 18 ft", "Oxygen not measured", "expect", "Read again after 2 to 3 hours", "marks assumed counted at the water",
		}, []string{"inf", "NaN", "%!", " 0 ft to 0 ft"}},
		{"bass", summer, "smallmouth", nil, []string{"WARM WATER", "likely to die"}},
		{"mixed", "units: ft F\n0 60\n10 60\n20 60\n", "rainbow", []string{"One layer, top to bottom: no break (thermocline)"}, []string{"is between", "WARM"}},
		{"two readings", "units: ft F\n0 74\n20 56\n", "rainbow", []string{"Too few readings (2) to find a break", "How sure: depth poor; oxygen"}, []string{"is between"}},
		{"winter", "units: m C\n0.5 0.4\n2 1.8\n5 3\n9 3.9\n", "brook", []string{"Colder above, below 39 F (4 C)", "If there is ice"}, []string{"wind swings", "anchors", "whitecaps"}},
		{"warm as far as read", "units: ft F\n0 74\n10 73\n20 70\n", "rainbow", []string{"Not reached here: the deepest reading, 20 ft, is still 70 F", "move to deeper water", "rest these fish"}, []string{"Cast where"}},
		{"warm to the bottom of the lake", "units: ft F\ndeepest: 21 ft\n0 76\n10 75\n20 74\n", "rainbow", []string{"No depth of this lake is cool enough for rainbow trout", "Rest these fish"}, []string{"Cast where"}},
		{"cool but not comfortable", "units: ft F\ndeepest: 21 ft\n0 69\n10 68.5\n20 68\n", "rainbow", []string{"above what they like (66 F) but not above what they use (70 F)"}, nil},
		{"cold for walleye", "units: ft F\n0 50\n10 49\n20 48\n", "walleye", []string{"All of this water is colder than walleye like"}, nil},
		{"deep", "units: m C\nbottom: 45 m\n0 21\n5 21\n10 20\n15 16\n20 9\n30 6\n44 5\n", "lake trout", []string{"Sinking line", "deeper than common practice", "can let the gas out"}, []string{"Count -"}},
		{"methods apart", "units: ft F\n0 75.2\n6.5 74.8\n10 68\n16.5 65.3\n23 59\n29.5 51.8\n36 47\n", "rainbow", []string{"How sure: depth fair; oxygen unknown", "a smooth step fitted to the readings puts the break at 15 ft"}, nil},
		{"one reading fewer", "units: ft F\n0 75.2\n6.5 74.8\n10 68\n16.5 65.3\n23 59\n29.5 51.8\n", "rainbow", nil, []string{"smooth step"}},
		{"wind", "units: ft F\nwind: 18 mph\n0 60\n10 60\n20 60\n", "rainbow", []string{"Come in"}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := all(planOf(t, c.page, c.fish))
			for _, w := range c.want {
				if !strings.Contains(strings.ToLower(got), strings.ToLower(w)) {
					t.Errorf("no %q in\n%s", w, Wrap(got, ""))
				}
			}
			for _, w := range c.never {
				if strings.Contains(got, w) {
					t.Errorf("%q in\n%s", w, Wrap(got, ""))
				}
			}
		})
	}
}

// TestWarningsFirst: what makes the plan moot is not said again under Care.
func TestWarningsFirst(t *testing.T) {
	p := planOf(t, summer, "rainbow")
	if w := Warnings(p); len(w) != 1 || !strings.HasPrefix(w[0], "WARM WATER") {
		t.Errorf("warnings %q", w)
	}
	if strings.Contains(strings.Join(Cautions(p), " "), "likely to die") {
		t.Error("the gate is said twice")
	}
}

// TestJSONKeys pins the keys that scripts rely on.
func TestJSONKeys(t *testing.T) {
	data, err := json.Marshal(JSON(planOf(t, "water: Alder Kettle\n"+summer, "rainbow"), []string{"x"}))
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
		"rig":        "fastest_retrieve_mps flies fly_depth_m kind leader_m parts reachable rule_holds_to_mps rule_leader_m rule_wait_s runner_up slowest_retrieve_mps wait_s",
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
	data, err := json.Marshal(JSON(planOf(t, "units: ft F\n0 74\n10 73.5\n20 73\n", "rainbow"), nil))
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
	p := planOf(t, summer, "rainbow")
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
		got := CheckReading(p, sheets[0])
		if got.ShiftM == nil || math.Abs(*got.ShiftM-c.shift) > 0.01 || !strings.Contains(got.Text, c.want) {
			t.Errorf("%q: %+v", c.text, got)
		}
	}
}

func TestWrap(t *testing.T) {
	long := strings.Repeat("word ", 60)
	for i, line := range strings.Split(Wrap(long, "  "), "\n") {
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
			got := all(planOf(t, string(data), f.Key))
			for _, bad := range []string{"NaN", "Inf", "%!", " -0", "  ", "..", " 0 ft down", " 0 m down"} {
				if strings.Contains(got, bad) {
					t.Errorf("%s for %s: %q in\n%s", page, f.Key, bad, Wrap(got, ""))
				}
			}
		}
	}
}
