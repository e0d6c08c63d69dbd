package report

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"coldseam/profile/fish"
	"coldseam/profile/unit"
)

// systems are the three ways temperatures of fish are shown.
var systems = []unit.System{{}, {Temp: unit.Celsius}, {Depth: unit.Foot, Temp: unit.Fahrenheit}}

// widest is a fish of an angler's own whose every text is as long as settings allow.
func widest() fish.Fish {
	at := func(v float64) fish.Figure {
		return fish.Figure{Value: v, Known: true, Source: strings.Repeat("source ", 10)[:69]}
	}
	return fish.Fish{
		Key: strings.Repeat("mm", 20), Name: strings.Repeat("MM", 20), Aliases: []string{strings.Repeat("ab ", 13)}, Kind: fish.Warmwater,
		LowerUseC: at(10.1), ComfortLowC: at(18.4), OptimumC: at(22.6), ComfortHighC: at(33.4), UpperUseC: at(37.7), LethalC: fish.Figure{Value: 39.9, Known: true, Source: strings.Repeat("s", 69)}, OxygenLeastMgL: at(2.25), OxygenMgL: at(11.75),
		Note: strings.Repeat("note ", 60),
	}
}

func narrow(t *testing.T, text string) {
	t.Helper()
	for _, line := range strings.Split(text, "\n") {
		if n := utf8.RuneCountInString(line); n > Width || strings.HasSuffix(line, " ") {
			t.Errorf("%d columns, or a blank at the end: %q", n, line)
		}
	}
	if !strings.HasSuffix(text, "\n") || strings.Contains(text, "NaN") || strings.Contains(text, "%!") {
		t.Errorf("%q", text)
	}
}

func TestFishTable(t *testing.T) {
	all := fish.All(widest())
	for _, u := range systems {
		text := FishTable(all, u, Width)
		narrow(t, text)
		lines := strings.Split(text, "\n")
		if len(lines) < len(all)+3 {
			t.Fatalf("%d lines for %d fishes", len(lines), len(all))
		}
		for i, f := range all[:len(all)-1] {
			cells := strings.Fields(strings.TrimPrefix(lines[i+2], f.Key))
			if !strings.HasPrefix(lines[i+2], f.Key+" ") || cells[0] != f.Kind.String() || cells[len(cells)-2] != unit.Exact(f.OxygenMgL.Value) {
				t.Errorf("%s: %q", f.Key, lines[i+2])
			}
		}
		if !strings.Contains(text, "\n"+all[len(all)-1].Key+"\n   ") {
			t.Error("a key too long for its column has no line of its own")
		}
	}
	for _, c := range []struct {
		u    unit.System
		want string // of lake trout: 6 to 12, at most 15, best 11.7 C
	}{
		{systems[0], "6 to 12 43 to 54 15 59 11.5 53 6 4"},
		{systems[1], "6 to 12 15 11.5 6 4"},
		{systems[2], "43 to 54 59 53 6 4"},
	} {
		if got := strings.Join(strings.Fields(FishTable(all, c.u, Width)), " "); !strings.Contains(got, "lake trout coldwater "+c.want+" ") {
			t.Errorf("want %s in\n%s", c.want, FishTable(all, c.u, Width))
		}
	}
}

func TestFishExplained(t *testing.T) {
	for _, f := range fish.All(widest()) {
		for _, u := range systems {
			text := Fish(f, u, Width)
			narrow(t, text)
			flat := strings.Join(strings.Fields(text), " ")
			blank := 0
			for _, g := range f.Figures() {
				name := figureNames[g.Name]
				switch {
				case name == "":
					t.Fatalf("%s has no name for people", g.Name)
				case !g.Known:
					blank++
					if !strings.Contains(flat, name+" not known") {
						t.Errorf("%s: %s is not said to be blank", f.Key, name)
					}
				case !strings.Contains(flat, g.Source) || !strings.Contains(flat, " "+name+" "):
					t.Errorf("%s: %s lacks its source %q in\n%s", f.Key, name, g.Source, text)
				}
			}
			if strings.Count(flat, "not known") != blank {
				t.Errorf("%s: %d are said to be blank, want %d", f.Key, strings.Count(flat, "not known"), blank)
			}
			for what, is := range map[string]bool{
				"It can let gas out": f.CanVent, "It cannot let gas out": !f.CanVent, "salmon family": f.Salmonid, "feeds in open water": f.OpenWater,
				"where the bottom meets its water": !f.OpenWater, "Colder water than it likes best does not": f.Kind == fish.Coldwater,
				"), " + f.Kind.String(): f.Scientific != "", strings.TrimSpace(noteOn(f.Note, u)): true,
			} {
				if strings.Contains(flat, what) != is {
					t.Errorf("%s: %q, want %v, in\n%s", f.Key, what, is, text)
				}
			}
		}
	}
}

// The digits are those of the source: 19.6 C (Bear et al. 2007) is not rounded to 19.5.
func TestFishDigits(t *testing.T) {
	f, err := fish.Find("cutthroat")
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []string{"19.6 C (67 F)  Bear", "19.6 C  ", "67 F  "} {
		flat := strings.ReplaceAll(Fish(f, systems[i], Width), "  ", " ")
		if !strings.Contains(flat, strings.TrimSpace(strings.ReplaceAll(want, "  ", " "))) {
			t.Errorf("want %q in\n%s", want, Fish(f, systems[i], Width))
		}
	}
}

// A note is on the scale that is shown, and keeps everything else.
func TestNoteOn(t *testing.T) {
	for _, c := range []struct{ note, onF, onC string }{
		{"", "", ""},
		{"best at 8 to 15 C, poor from 19 C up (TAFS 136:1113)", "best at 46 to 59 F, poor from 66 F up (TAFS 136:1113)", "best at 8 to 15 C, poor from 19 C up (TAFS 136:1113)"},
		{"17.7, 11.9, 9.9 and 16.3 C", "63.9, 53.4, 49.8 and 61.3 F", "17.7, 11.9, 9.9 and 16.3 C"},
		{"24 C at 8 mg/L, in 1979 Cats", "75 F at 8 mg/L, in 1979 Cats", "24 C at 8 mg/L, in 1979 Cats"},
		{"50 to 60 F; 12 or 15 C with 4 or 6 mg/L", "50 to 60 F; 54 or 59 F with 4 or 6 mg/L", "10 to 16 C; 12 or 15 C with 4 or 6 mg/L"},
	} {
		if got := noteOn(c.note, systems[2]); got != c.onF {
			t.Errorf("%q, want %q", got, c.onF)
		}
		if got := noteOn(c.note, systems[1]); got != c.onC {
			t.Errorf("%q, want %q", got, c.onC)
		}
		if got := noteOn(c.note, systems[0]); got != c.note {
			t.Errorf("%q, want %q", got, c.note)
		}
	}
}

// What an angler wrote cannot move the cursor, whatever let it through.
func TestFishShown(t *testing.T) {
	f := widest()
	f.Key, f.Name, f.Aliases, f.Note, f.ComfortLowC.Source = "a\x1b[2J", "b\x1b", []string{"c\x1b"}, "d\x1b", "e\x1b"
	for _, text := range []string{Fish(f, systems[0], Width), FishTable([]fish.Fish{f}, systems[0], Width)} {
		if strings.ContainsRune(text, 0x1b) {
			t.Errorf("%q", text)
		}
	}
}

func TestFishJSON(t *testing.T) {
	for _, f := range fish.All(widest()) {
		data, err := json.Marshal(FishAsJSON(f))
		if err != nil {
			t.Fatal(err)
		}
		var got map[string]any
		if err := json.Unmarshal(data, &got); err != nil {
			t.Fatal(err)
		}
		sources, _ := got["sources"].(map[string]any)
		if got["key"] != f.Key || got["name"] != f.Name || got["kind"] != f.Kind.String() || got["salmonid"] != f.Salmonid || got["can_vent"] != f.CanVent || got["open_water"] != f.OpenWater || got["teeth"] != f.Teeth {
			t.Errorf("%s: %s", f.Key, data)
		}
		if s, ok := got["scientific"]; ok != (f.Scientific != "") || ok && s != f.Scientific {
			t.Errorf("%s: scientific %v", f.Key, s)
		}
		known := 0
		for _, g := range append(f.Figures(), fish.Named{Name: "fly_g", Figure: f.FlyG}) {
			v, ok := got[g.Name].(float64)
			if ok != g.Known || ok && (math.Abs(v-g.Value) > 5e-4 || fmt.Sprint(sources[g.Name]) != g.Source) {
				t.Errorf("%s, %s: %v, %v of %v, want %+v", f.Key, g.Name, ok, v, sources[g.Name], g.Figure)
			}
			if g.Known {
				known++
			}
		}
		if len(sources) != known {
			t.Errorf("%s: %d sources for %d figures", f.Key, len(sources), known)
		}
	}
}
