package settings

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"coldseam/profile/fish"
)

const fishes = `for = "rainbow"

[[fish]]
name = "Rainbow"
comfort = "55 to 62 F"
use_up_to = "70 F"
optimum = "58 F"
oxygen = "6 mg/L"
alias = ["slab", "silver bullet"]
source = "my own notes"

[[fish]]
name = "Pond Special"
like = "brown"
comfort = "12-17 C"
alias = "special"

[[fish]]
name = "rock bass"
kind = "warmwater"
comfort = "68 F to 78 F"
oxygen = "4 ppm"

[[fish]]
name = "Walleye"
kind = "warmwater"

[[fish]]
name = "splake"
like = "pond special"
`

func ownFishes(t *testing.T, text string) []fish.Fish {
	t.Helper()
	s, err := Parse("s", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return s.Fish
}

func TestFishes(t *testing.T) {
	own := ownFishes(t, fishes)
	if len(own) != 5 {
		t.Fatalf("%d fishes: %+v", len(own), own)
	}
	yours := func(fahrenheit float64) fish.Figure {
		return fish.Figure{Value: (fahrenheit - 32) / 1.8, Known: true, Source: "my own notes"}
	}
	same := func(name string, got, want fish.Figure) {
		t.Helper()
		if math.Abs(got.Value-want.Value) > 1e-9 || got.Known != want.Known || got.Source != want.Source {
			t.Errorf("%s: %+v, want %+v", name, got, want)
		}
	}
	table := func(name string) fish.Fish {
		f, err := fish.Find(name)
		if err != nil {
			t.Fatal(err)
		}
		return f
	}

	// One of the table set right keeps all that is not written.
	f, was := own[0], table("rainbow")
	if f.Key != "rainbow" || f.Name != was.Name || f.Scientific != was.Scientific || f.Kind != was.Kind || f.Note != was.Note ||
		!slices.Equal(f.Aliases, append(was.Aliases, "slab", "silver bullet")) || !f.Salmonid || !f.CanVent {
		t.Errorf("%+v", f)
	}
	same("comfort low", f.ComfortLowC, yours(55))
	same("comfort high", f.ComfortHighC, yours(62))
	same("optimum", f.OptimumC, yours(58))
	same("use up to", f.UpperUseC, yours(70))
	same("oxygen", f.OxygenMgL, fish.Figure{Value: 6, Known: true, Source: "my own notes"})
	same("lethal", f.LethalC, was.LethalC)
	same("least oxygen", f.OxygenLeastMgL, was.OxygenLeastMgL)

	// A new one like another has that one's figures and body, and names of its own.
	f, was = own[1], table("brown")
	if f.Key != "pond special" || f.Name != "Pond Special" || f.Scientific != "" || !slices.Equal(f.Aliases, []string{"special"}) || f.Kind != was.Kind || !f.Salmonid || !strings.Contains(f.Note, "brown trout") {
		t.Errorf("%+v", f)
	}
	same("comfort low", f.ComfortLowC, fish.Figure{Value: 12, Known: true, Source: "your settings"})
	same("comfort high", f.ComfortHighC, fish.Figure{Value: 17, Known: true, Source: "your settings"})
	same("optimum", f.OptimumC, was.OptimumC)

	// A new one like none has what is written alone.
	f = own[2]
	if f.Key != "rock bass" || f.Kind != fish.Warmwater || f.Salmonid || f.CanVent || f.Note == "" {
		t.Errorf("%+v", f)
	}
	same("comfort low", f.ComfortLowC, fish.Figure{Value: 20, Known: true, Source: "your settings"}) // 68 F
	same("oxygen", f.OxygenMgL, fish.Figure{Value: 4, Known: true, Source: "your settings"})
	same("optimum", f.OptimumC, fish.Figure{})
	same("lethal", f.LethalC, fish.Figure{})

	if f = own[3]; f.Kind != fish.Warmwater || f.Key != "walleye" || f.ComfortHighC != table("walleye").ComfortHighC {
		t.Errorf("%+v", f)
	}

	// Like an earlier one of the settings; the name and the body are the table's.
	f = own[4]
	if f.Key != "splake" || f.Scientific != table("splake").Scientific || f.ComfortHighC != own[1].ComfortHighC || !slices.Equal(f.Aliases, table("splake").Aliases) {
		t.Errorf("%+v", f)
	}

	for name, key := range map[string]string{"slabs": "rainbow", "bow": "rainbow", "pond special": "pond special", "rock-bass": "rock bass", "walleyes": "walleye", "perch": "perch"} {
		if got, err := fish.FindIn(own, name); err != nil || got.Key != key {
			t.Errorf("%s is %q, %v; want %q", name, got.Key, err, key)
		}
	}
}

// All that the table's own entries hold, an angler's may.
func TestFishEveryKey(t *testing.T) {
	got := ownFishes(t, page(`[[fish]]`, `name = "Zander"`, `full_name = "pike-perch"`, `scientific = "Sander lucioperca"`, `alias = "pikeperch"`,
		`kind = "coolwater"`, `can_vent = true`, `open_water = true`, `use_from = "10 C"`, `comfort_low = {value = "18 C", source = "a"}`,
		`comfort_high = {value = "75.2 F", source = "b"}`, `optimum = "22 C"`, `use_up_to = {value = "28 C"}`, `lethal = "35 C"`,
		`oxygen_least = {value = "3 ppm", source = "c"}`, `note = "A note."`, `source = "d"`, `[fish.oxygen]`, `value = "5 mg/L"`, `source = "e"`))
	at := func(v float64, source string) fish.Figure { return fish.Figure{Value: v, Known: true, Source: source} }
	want := fish.Fish{
		Key: "zander", Name: "pike-perch", Scientific: "Sander lucioperca", Aliases: []string{"pikeperch"}, Kind: fish.Coolwater, CanVent: true, OpenWater: true,
		LowerUseC: at(10, "d"), ComfortLowC: at(18, "a"), OptimumC: at(22, "d"), ComfortHighC: at(24, "b"), UpperUseC: at(28, "d"), LethalC: at(35, "d"),
		OxygenLeastMgL: at(3, "c"), OxygenMgL: at(5, "e"), Note: "A note.",
	}
	if len(got) != 1 || !reflect.DeepEqual(got[0], want) {
		t.Errorf("%+v\nwant %+v", got, want)
	}
}

// What is written shows that a lower bound of the fish begun from does not hold.
func TestFishLowerBounds(t *testing.T) {
	f := ownFishes(t, page(`[[fish]]`, `name = "rainbow"`, `comfort = "42 to 62 F"`, `oxygen = "2 mg/L"`))[0]
	if f.LowerUseC != (fish.Figure{}) || f.OxygenLeastMgL != (fish.Figure{}) {
		t.Errorf("%+v, %+v", f.LowerUseC, f.OxygenLeastMgL)
	}
}

// The table's own edges, written again, are taken: bounds are allowed themselves.
func TestFishEdges(t *testing.T) {
	for _, text := range []string{
		`comfort = "13.1 to 19 C"`, `comfort = "13 to 13,1 C"`, `comfort = "13 – 21 C"`, `optimum = "13 C"`, `optimum = "19 C"`,
		`use_up_to = "19 C"`, `use_up_to = "24.3 C"`, `oxygen = "12 mg/L"`, `oxygen = "0.5 ppm"`, `kind = "coolwater"`, `alias = []`,
		`source = "` + strings.Repeat("s", 69) + `"`,
	} {
		if _, err := Parse("s", []byte(page(`[[fish]]`, `name = "rainbow"`, text))); err != nil {
			t.Errorf("%s: %v", text, err)
		}
	}
}

func TestFishRefused(t *testing.T) {
	rainbow := func(lines ...string) []string { return append([]string{`[[fish]]`, `name = "rainbow"`}, lines...) }
	for _, c := range []struct {
		name  string
		lines []string
		line  string
		has   []string
	}{
		{"no name: its table", []string{`rod = "9 ft"`, `[[fish]]`, `like = "rainbow"`}, "2", []string{"name: ", `e.g. name = "rainbow"`}},
		{"an empty name", []string{`[[fish]]`, `name = " "`}, "2", []string{"name"}},
		{"no letters", []string{`[[fish]]`, `name = "--"`}, "2", []string{"name", "no name"}},
		{"a long name", []string{`[[fish]]`, `name = "` + strings.Repeat("trout ", 9) + `"`, `like = "brown"`}, "2", []string{"name", "at most 40 letters"}},
		{"a name that moves the cursor", []string{`[[fish]]`, `name = "a\u001b[2J"`, `like = "brown"`}, "2", []string{"name", "cannot be shown"}},
		{"like none known", rainbow(`like = "brwon"`), "3", []string{"like: ", "did you mean brown?"}},
		{"like itself", []string{`[[fish]]`, `name = "zander"`, `like = "zander"`}, "3", []string{"like: ", `"zander"`}},
		{"like a later one", []string{`[[fish]]`, `name = "a fish"`, `like = "b fish"`, `[[fish]]`, `name = "b fish"`, `like = "brown"`}, "3", []string{"like: "}},
		{"new without kind", []string{`[[fish]]`, `name = "zander"`, `comfort = "60 to 70 F"`, `oxygen = "5 mg/L"`}, "1", []string{"kind: ", `kind = "coldwater"`, `like = "rainbow"`}},
		{"new without comfort", []string{`[[fish]]`, `name = "zander"`, `kind = "coolwater"`, `oxygen = "5 mg/L"`}, "1", []string{"comfort: ", `comfort = "55 to 62 F"`}},
		{"new without oxygen", []string{`[[fish]]`, `name = "zander"`, `kind = "coolwater"`, `comfort = "60 to 70 F"`}, "1", []string{"oxygen: ", `oxygen = "6 mg/L"`}},
		{"the second lacks it", append(rainbow(), `[[fish]]`, `name = "zander"`), "3", []string{"kind"}},
		{"kind", rainbow(`kind = "cold"`), "3", []string{"kind: ", "coldwater, coolwater or warmwater"}},
		{"no range", rainbow(`comfort = "60 F"`), "3", []string{"comfort: ", "55 to 62 F"}},
		{"a range without scale", rainbow(`comfort = "55 to 62"`), "3", []string{"comfort: ", `"55 to 62"`, "55 to 62 F"}},
		{"a range of one end", rainbow(`comfort = "to 62 F"`), "3", []string{"comfort: "}},
		{"a range turned round", rainbow(`comfort = "62 to 55 F"`), "3", []string{"comfort: ", "colder end first"}},
		{"a range of nothing", rainbow(`comfort = "60 to 60 F"`), "3", []string{"comfort: ", "colder end first"}},
		{"the wrong scale", rainbow(`comfort = "55 to 62 C"`), "3", []string{"comfort: ", "not likely for water"}},
		{"colder than ice", rainbow(`optimum = "20 F"`), "3", []string{"optimum: ", "not likely for water"}},
		{"no temperature", rainbow(`use_up_to = "warm"`), "3", []string{"use_up_to: ", `"warm"`}},
		{"oxygen without unit", rainbow(`oxygen = "6"`), "3", []string{"oxygen: ", "6 mg/L"}},
		{"oxygen in percent", rainbow(`oxygen = "60 %"`), "3", []string{"oxygen: ", "6 mg/L"}},
		{"oxygen of none", rainbow(`oxygen = "0 mg/L"`), "3", []string{"oxygen: ", "not a likely value"}},
		{"oxygen below none", rainbow(`oxygen = "-6 mg/L"`), "3", []string{"oxygen: "}},
		{"more oxygen than water holds", rainbow(`oxygen = "13 mg/L"`), "3", []string{"oxygen: ", "not a likely value"}},
		{"comfort leaves out the optimum", rainbow(`comfort = "60 to 66 F"`), "3", []string{"comfort: ", "60 F", "over the optimum, 55.6 F", "Bear", "write optimum too"}},
		{"comfort is under the optimum", rainbow(`comfort = "8 to 12 C"`), "3", []string{"comfort: ", "12 C", "under the optimum, 13.1 C", "write optimum too"}},
		{"comfort is over the use", rainbow(`comfort = "55 to 72 F"`), "3", []string{"comfort: ", "72 F", "over the warmest water used, 69.8 F", "write use_up_to too"}},
		{"the optimum is outside", rainbow(`optimum = "70 F"`), "3", []string{"optimum: ", "over the high end of comfort, 66.2 F", "write comfort too"}},
		{"the optimum is under", rainbow(`optimum = "50 F"`), "3", []string{"optimum: ", "under the low end of comfort, 55.4 F"}},
		{"the use is under comfort", rainbow(`use_up_to = "60 F"`), "3", []string{"use_up_to: ", "under the high end of comfort"}},
		{"both written", rainbow(`optimum = "50 F"`, `comfort = "55 to 62 F"`), "4", []string{"comfort: ", "rising order"}},
		{"used where it dies", rainbow(`use_up_to = "80 F"`), "3", []string{"use_up_to: ", "over what kills them, 75.7 F", "Bear", "write less"}},
		{"twice the same", append(rainbow(), `[[fish]]`, `name = "Rainbow Trout"`), "4", []string{"name: ", "means another fish of your settings already, rainbow"}},
		{"an alias given already", append(rainbow(), `[[fish]]`, `name = "brown"`, `alias = ["x", "Bow"]`), "5", []string{"alias: ", `"Bow"`}},
		{"an alias that is none", rainbow(`alias = ["ok", ""]`), "3", []string{"alias: "}},
		{"an alias as a number", rainbow(`alias = ["slab", 3]`), "3", []string{"alias: ", "quotes"}},
		{"a long source", rainbow(`source = "` + strings.Repeat("note ", 20) + `"`), "3", []string{"source: ", "at most 69 letters"}},
		{"a source in two lines", rainbow(`source = "a\nb"`), "3", []string{"source: ", "cannot be shown"}},
		{"the coldest use over comfort", rainbow(`use_from = "14 C"`), "3", []string{"use_from: ", "the coldest water used, 14 C, is over the low end of comfort, 13 C", "write comfort too"}},
		{"a low end over the high", rainbow(`comfort_low = "68 F"`), "3", []string{"comfort_low: ", "68 F", "over the high end of comfort, 66.2 F", "write comfort too"}},
		{"more of the least oxygen", rainbow(`oxygen_least = "7 mg/L"`), "3", []string{"oxygen_least: ", "7 mg/L, is over the oxygen worth fishing, 5 mg/L", "write oxygen too"}},
		{"a long source of a figure", rainbow(`optimum = {value = "58 F", source = "` + strings.Repeat("note ", 20) + `"}`), "3", []string{"optimum: ", "at most 69 letters"}},
		{"a number in a figure", rainbow(`optimum = {value = 14, source = "me"}`), "3", []string{"optimum: ", "quotes"}},
		{"a part of a figure that is none", rainbow(`[fish.optimum]`, `value = "58 F"`, `by = "me"`), "5", []string{"fish.optimum.by"}},
		{"a figure in a table of its own", rainbow(`[fish.optimum]`, `value = "warm"`), "4", []string{": optimum: ", `"warm"`}},
		{"a note in two lines", rainbow(`note = "a\nb"`), "3", []string{"note: ", "cannot be shown"}},
		{"wrong key", rainbow(`confort = "55 to 62 F"`), "3", []string{"confort"}},
		{"a bare number", rainbow(`oxygen = 6`), "3", []string{"oxygen", "quotes"}},
	} {
		s, err := Parse("my settings.toml", []byte(page(c.lines...)))
		if err == nil {
			t.Errorf("%s: no error, %+v", c.name, s.Fish)
			continue
		}
		msg := err.Error()
		if !strings.HasPrefix(msg, "my settings.toml:"+c.line+": ") || strings.ContainsAny(msg, "\n\x1b") {
			t.Errorf("%s: %s\nwant line %s", c.name, msg, c.line)
		}
		for _, w := range c.has {
			if !strings.Contains(msg, w) {
				t.Errorf("%s: %s\nwant %s in it", c.name, msg, w)
			}
		}
		if s.Fish != nil {
			t.Errorf("%s: refused, and still %+v", c.name, s.Fish)
		}
	}
}

// Whatever is written, a fish that is taken keeps the order of limits, has its comfort
// range and its oxygen, with sources, and is found by its name.
func TestFishProperty(t *testing.T) {
	temp := rapid.Custom(func(t *rapid.T) string {
		return rapid.SampledFrom([]string{"", "0", "5", "12", "15.5", "18", "24", "40", "60", "75"}).Draw(t, "n") + rapid.SampledFrom([]string{" C", " F", ""}).Draw(t, "scale")
	})
	rapid.Check(t, func(t *rapid.T) {
		text := "[[fish]]\nname = \"" + rapid.SampledFrom([]string{"rainbow", "pike", "zander", "muskie", ""}).Draw(t, "name") + "\"\n"
		for _, k := range []struct{ key, value string }{
			{"like", rapid.SampledFrom([]string{"", "cisco", "perch", "rainbow", "nothing"}).Draw(t, "like")},
			{"comfort", temp.Draw(t, "low") + " to " + temp.Draw(t, "high")},
			{"optimum", temp.Draw(t, "optimum")},
			{"use_up_to", temp.Draw(t, "use")},
			{"oxygen", rapid.SampledFrom([]string{"", "2 mg/L", "12 ppm", "x"}).Draw(t, "oxygen")},
			{"kind", rapid.SampledFrom([]string{"", "warmwater", "coldwater"}).Draw(t, "kind")},
		} {
			if rapid.Bool().Draw(t, "write "+k.key) {
				text += k.key + " = \"" + k.value + "\"\n"
			}
		}
		s, err := Parse("s", []byte(text))
		if err != nil {
			if !strings.HasPrefix(err.Error(), "s:") || strings.Contains(err.Error(), "\n") {
				t.Fatalf("%q: %q", text, err)
			}
			return
		}
		f := s.Fish[0]
		if a, b, ok := f.Misplaced(); ok || !f.ComfortLowC.Known || !f.ComfortHighC.Known || !f.OxygenMgL.Known || f.Key == "" || f.Name == "" {
			t.Fatalf("%s\n%+v\n%+v %+v", text, f, a, b)
		}
		for _, g := range f.Figures() {
			if g.Known != (g.Source != "") || math.IsNaN(g.Value) || g.Value < 0 || g.Value > 40 {
				t.Fatalf("%s\n%+v", text, g)
			}
		}
		if got, err := fish.FindIn(s.Fish, f.Name); err != nil || got.Key != f.Key {
			t.Fatalf("%s\nfinds %q, %v", text, got.Key, err)
		}
	})
	// that fishes are taken at all, the tables above show
}

// A fish of one's own has a fly and teeth as written, else those of the fish it is begun from.
func TestOwnFly(t *testing.T) {
	own := ownFishes(t, page(`[[fish]]`, `name = "rainbow"`, `fly_weight = {value = "0.4 g", source = "my box"}`,
		`[[fish]]`, `name = "chain pickerel"`, `like = "pike"`, `fly_weight = "0.8 g"`,
		`[[fish]]`, `name = "tiger musky"`, `like = "muskellunge"`,
		`[[fish]]`, `name = "rock bass"`, `like = "pike"`, `teeth = false`))
	for i, want := range []struct {
		g      float64
		source string
		teeth  bool
	}{{0.4, "my box", false}, {0.8, "your settings", true}, {2, "common practice", true}, {1.5, "common practice", false}} {
		if f := own[i]; math.Abs(f.FlyG.Value-want.g) > 1e-9 || f.FlyG.Source != want.source || f.Teeth != want.teeth {
			t.Errorf("%s: fly %+v, teeth %v; want %+v", f.Key, f.FlyG, f.Teeth, want)
		}
	}
}
